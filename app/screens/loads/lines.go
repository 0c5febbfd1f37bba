package loads

import (
	"strconv"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/charts"
	"sumpter/domain/carry"
)

// mostLines is how many members' lines can be told apart. In a larger crew
// the chosen member's cook group is shown, and the heaviest pack of each day.
const mostLines = 15

// showLines draws the shares over the days.
func (s *Screen) showLines() {
	v := s.view
	days := make([]string, len(v.plan.Trip.Days))
	fair := make([]float64, len(days))
	for d := range days {
		days[d], fair[d] = strconv.Itoa(d+1), 100*v.fair(d+1)
	}
	s.lines.Set(days, s.linesOf(), fair)
	s.lines.Mark(s.day - 1)
}

// linesOf gives a line for each member, or for those that can be told apart.
func (s *Screen) linesOf() []charts.Series {
	v := s.view
	var series []charts.Series
	all := len(v.order) <= mostLines
	if !all {
		worst := charts.Series{Name: lang.L("heaviest")}
		for d := range v.plan.Trip.Days {
			share := v.worst(d + 1)
			worst.Values, worst.OnTop = append(worst.Values, 100*share), append(worst.OnTop, 100*max(0, v.worstWithWater(d+1)-share))
		}
		series = append(series, worst)
	}
	for _, i := range v.order {
		id := v.plan.Trip.Crew[i].ID
		if all || id == s.member || len(series) < mostLines && v.inGroup(id, s.member) {
			line := lineOf(v.plan.Trip.Crew[i].Name, &v.plan.Carry.Members[i])
			line.Strong, line.Tapped = id == s.member, func() { s.showMember(id) }
			series = append(series, line)
		}
	}
	return series
}

// lineOf is the shares of a member, the water to dry camps on top.
func lineOf(name string, m *carry.Member) charts.Series {
	line := charts.Series{Name: name}
	for _, d := range m.Days {
		water := max(0, withWater(d, m.Capability)-d.Share)
		line.Values, line.OnTop, line.Gaps = append(line.Values, 100*d.Share), append(line.OnTop, 100*water), append(line.Gaps, !d.Present)
	}
	return line
}
