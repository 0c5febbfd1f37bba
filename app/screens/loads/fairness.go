package loads

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fairness is the tab that says how near the split is to the best possible,
// what hangs on pins, and what stands in the way.
type fairness struct {
	screen  *Screen
	stages  *bench.Column // a paragraph each
	found   *bench.Column
	pins    *pinList
	dinners *shareField
	fuel    *shareField
	raise   *raise
	shown   *view // whose words these are
	content fyne.CanvasObject
}

// mostFound is how many findings stand here; the list of all findings, beside
// every screen, has the rest.
const mostFound = 25

func newFairness(s *Screen) *fairness {
	f := &fairness{screen: s, pins: newPinList(s), raise: newRaise(s)}
	var left *bench.Scroll
	later, grown := s.bench.Document.AfterFrame, func() { left.Grown() }
	f.stages, f.found = bench.NewColumn(later, grown), bench.NewColumn(later, grown)
	meaning := look.NewParagraph(lang.L("Fair means: of all ways to share out the load, the pack that is heaviest for its carrier is as light as can be, first on the first morning, then over the days, long ones counting more. Where that leaves a choice, the bags of a dish lie in few packs, one eater's food with the eater, and liquid fuel apart from food. Everybody's load is measured against what they can carry: body mass, at most that of a body mass index of 27, times the strength the leader gave."), look.Caption, look.Ink)
	f.dinners = newShareField(s.bench, lang.L("Dinners in one pack"), "dinner_share", func(on *trip.Trip) *float64 { return &on.Settings.DinnerShare })
	f.fuel = newShareField(s.bench, lang.L("Fuel in one pack"), "fuel_share", func(on *trip.Trip) *float64 { return &on.Settings.FuelShare })
	left = bench.NewScroll(container.NewVBox(look.NewHeading(lang.L("How near to the best possible split?")), meaning, f.stages.Box,
		widget.NewSeparator(), look.NewHeading(lang.L("So that a lost pack does not end the trip")), f.dinners.line, f.fuel.line,
		widget.NewSeparator(), look.NewHeading(lang.L("What to look at")), f.raise.content, f.found.Box))
	split := container.NewHSplit(left, f.pins.content)
	split.Offset = 0.6
	f.content = split
	return f
}

func (f *fairness) show() {
	f.pins.show()
	f.dinners.show()
	f.fuel.show()
	f.raise.show()
	v := f.screen.view
	if v != nil && v == f.shown {
		return
	}
	f.shown = v
	stages, found := []string{lang.L("This comes with the plan.")}, []findings.Finding(nil)
	if v != nil {
		stages = nil
		for _, stage := range v.stages() {
			stages = append(stages, v.stageWords(stage))
		}
		for _, finding := range v.findings() {
			if finding.Stage == findings.Carry {
				found = append(found, finding)
			}
		}
	}
	f.stages.Set(len(stages), func(i int) fyne.CanvasObject {
		return look.NewParagraph(stages[i], look.Body, look.Ink)
	})
	rows := min(len(found), mostFound)
	last := ""
	switch {
	case v != nil && len(found) == 0:
		last = lang.L("Nothing: every limit is kept.")
	case len(found) > mostFound:
		more := len(found) - mostFound
		last = written.Counted(more, prose.Say("One more stands in the list of findings."), prose.Say("%d more stand in the list of findings.", more))
	}
	if last != "" {
		rows++
	}
	f.found.Set(rows, func(i int) fyne.CanvasObject {
		if last != "" && i == rows-1 {
			return look.NewText(last, look.Body, look.Quiet)
		}
		return f.findingRow(found[i])
	})
}

// findingRow shows a finding with its reason, its remedy and the way to its place.
func (f *fairness) findingRow(finding findings.Finding) fyne.CanvasObject {
	system := f.screen.bench.Units()
	words := container.NewVBox(look.NewParagraph(written.Text(finding.What, system), look.Body, look.Ink))
	for _, text := range []prose.Text{finding.Why, finding.Remedy} {
		if !text.IsZero() {
			words.Add(look.NewParagraph(written.Text(text, system), look.Caption, look.Quiet))
		}
	}
	word := look.NewText(lang.L(string(finding.Severity)), look.Caption, look.ToneOf(finding.Severity))
	show := widget.NewButton(lang.L("Show"), func() { f.screen.GoTo(finding.Place) })
	return container.NewBorder(container.NewHBox(look.NewSign(finding.Severity), word), nil, nil, container.NewVBox(show), words)
}

// findings are those of the plan, or of the rest of the trip.
func (v *view) findings() []findings.Finding {
	if v.rest != nil {
		return v.rest.Findings
	}
	return v.plan.Findings
}

func dayRange(s *carry.Stage) string {
	if s.FirstDay == s.LastDay {
		return fmt.Sprintf("%s %d", lang.L("Day"), s.FirstDay)
	}
	return lang.X("day-range", "Days {{.From}} to {{.To}}", data{"From": s.FirstDay, "To": s.LastDay})
}

// stageLine says in one line how fair the stage of a day is.
func (v *view) stageLine(s *carry.Stage) string {
	if s == nil {
		return ""
	}
	return fmt.Sprintf("%s. %s %s", dayRange(s), v.nearness(s), v.handOvers(s))
}

// stageWords tells of one stage in full.
func (v *view) stageWords(s *carry.Stage) string {
	who := v.heaviestName(s.FirstDay)
	values := data{"Days": dayRange(s), "Worst": percent(s.Worst), "Who": who, "Bound": percent(s.WorstBound), "Mean": percent(s.Mean), "MeanBound": percent(s.MeanBound)}
	words := lang.X("stage-bare", "{{.Days}}. On the first morning the heaviest pack for its carrier is {{.Who}}'s, with {{.Worst}} of what they can carry. Over the days, by hours of walking, the heaviest is {{.Mean}}.", values)
	if s.WorstBound > 0 && s.MeanBound > 0 && !v.passesLimit(s) {
		words = lang.X("stage-words", "{{.Days}}. On the first morning the heaviest pack for its carrier is {{.Who}}'s, with {{.Worst}} of what they can carry; nobody could split it below {{.Bound}}. Over the days, by hours of walking, the heaviest is {{.Mean}}; nobody could split it below {{.MeanBound}}.", values)
	}
	words += " " + strings.Join(slices.DeleteFunc([]string{v.nearness(s), v.handOvers(s), v.dishPacks(s)}, func(words string) bool { return words == "" }), " ")
	return strings.TrimSuffix(words+"\n"+v.overWords(s), "\n")
}

// dishPacks says how far a dish is spread.
func (v *view) dishPacks(s *carry.Stage) string {
	if s.DishPacks == 0 {
		return ""
	}
	return lang.X("dish-packs", "A dish of several bags lies in {{.Packs}} packs in the mean.", data{"Packs": written.Number(s.DishPacks, 1)})
}

// nearness says how far a stage is from the best possible split.
func (v *view) nearness(s *carry.Stage) string {
	const equal = 1e-9
	first, later := overBound(s.Worst, s.WorstBound), overBound(s.Mean, s.MeanBound)
	switch {
	case s.Worst == 0:
		return lang.L("Nothing is carried.")
	case v.passesLimit(s):
		return lang.L("No split was found that keeps every limit: this one passes them least.")
	case !s.Proven && (s.WorstBound <= 0 || s.Mean > 0 && s.MeanBound <= 0):
		return lang.L("How near it is to the best possible split is not known.")
	case s.Proven || max(first, later) < equal:
		return lang.L("Proven: nobody could lighten the heaviest packs any further.")
	}
	gain := written.Quantity(v.heaviestLoad(s.FirstDay).Scale(first/(1+first)), v.plan.Trip.Units)
	values := data{"Mass": gain, "Gap": percent(later / (1 + later))}
	switch {
	case later < equal:
		return lang.X("near-first", "The best that was found: nobody could lighten the heaviest pack of the first morning by more than {{.Mass}}.", values)
	case first < equal:
		return lang.X("near-later", "The best that was found: proven for the first morning; nobody could lighten the heaviest packs of all days by more than {{.Gap}}.", values)
	default:
		return lang.X("near-best", "The best that was found: nobody could lighten the heaviest pack of the first morning by more than {{.Mass}}, nor those of all days by more than {{.Gap}}.", values)
	}
}

// passesLimit tells whether no split of a stage keeps every limit.
func (v *view) passesLimit(s *carry.Stage) bool {
	return slices.ContainsFunc(v.plan.Carry.Findings, func(f findings.Finding) bool {
		return f.Code == "over-limit" && f.Place.Day == s.FirstDay
	})
}

func overBound(value, bound float64) float64 {
	if bound <= 0 {
		return 0
	}
	return max(0, value/bound-1)
}

func (v *view) handOvers(s *carry.Stage) string {
	switch {
	case s.FirstDay == 1:
		return ""
	case s.HandOvers == 0:
		return lang.L("Nothing changes packs at its start.")
	default:
		return written.Counted(s.HandOvers, prose.Say("One thing changes packs at its start."), prose.Say("%d things change packs at its start.", s.HandOvers))
	}
}

// heaviest gives the place in the crew of who has the largest share of a
// morning, -1 for nobody.
func (v *view) heaviest(day int) int {
	place, worst := -1, -1.0
	for i, member := range v.plan.Carry.Members {
		if day <= len(member.Days) && member.Days[day-1].Share > worst {
			place, worst = i, member.Days[day-1].Share
		}
	}
	return place
}

func (v *view) heaviestName(day int) string {
	if i := v.heaviest(day); i >= 0 {
		return v.plan.Trip.Crew[i].Name
	}
	return "–"
}

func (v *view) heaviestLoad(day int) units.Mass {
	if i := v.heaviest(day); i >= 0 {
		return v.plan.Carry.Members[i].Days[day-1].Load
	}
	return 0
}
