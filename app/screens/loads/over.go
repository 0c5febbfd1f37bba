package loads

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fairWords sets a load beside the fair load of the day.
func (v *view) fairWords(id trip.MemberID, day int) string {
	d, capability := v.load(id, day)
	level := v.fair(day)
	words := lang.X("fair-share", "fair: {{.Load}}, {{.Fair}}", data{"Load": v.kilograms(capability.Scale(level)), "Fair": percent(level)})
	const even = 10 * units.Gram // less is nothing to speak of
	switch off := d.Load - capability.Scale(level); {
	case level == 0 || capability == 0:
		return words
	case off > even:
		return words + lang.X("fair-over", ", {{.Off}} over", data{"Off": written.Quantity(off, v.plan.Trip.Units)})
	case off < -even:
		return words + lang.X("fair-under", ", {{.Off}} under", data{"Off": written.Quantity(-off, v.plan.Trip.Units)})
	default:
		return words
	}
}

// over finds why somebody is over the fair level on a day, nil where they are
// not.
func (v *view) over(id trip.MemberID, day int) *carry.Excess {
	s := v.stage(day)
	if s == nil {
		return nil
	}
	for i := range s.Over {
		if over := &s.Over[i]; over.Member == id && over.Day == day {
			return over
		}
	}
	return nil
}

// overWords names who is over the fair level on a stage, those with the same
// reason together.
func (v *view) overWords(s *carry.Stage) string {
	if len(s.Over) == 0 {
		if s.Worst == 0 {
			return ""
		}
		return lang.L("Nobody is over a fair load by more than 2 %, on any day.")
	}
	var reasons []string
	names := map[string][]string{}
	for _, over := range s.Over {
		why := written.Text(over.Why, v.plan.Trip.Units)
		if names[why] == nil {
			reasons = append(reasons, why)
		}
		names[why] = append(names[why], lang.X("over-fair", "{{.Name}} {{.Off}} ({{.Part}}) on day {{.Day}}", data{
			"Name": v.memberName(over.Member), "Off": written.Quantity(over.Over, v.plan.Trip.Units), "Part": percent(over.Part()), "Day": over.Day,
		}))
	}
	lines := []string{lang.L("Over a fair load by more than 2 %, each on their worst morning:")}
	for _, why := range reasons {
		lines = append(lines, lang.X("over-why", "{{.Names}}. {{.Why}}", data{"Names": strings.Join(names[why], ", "), "Why": why}))
	}
	return strings.Join(lines, "\n")
}
