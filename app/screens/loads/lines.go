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
	fair, worst := make([]float64, len(days)), make([]float64, len(days))
	for d := range days {
		days[d], fair[d], worst[d] = strconv.Itoa(d+1), 100*v.fair(d+1), 100*v.worst(d+1)
	}
	var series []charts.Series
	all := len(v.order) <= mostLines
	if !all {
		series = append(series, charts.Series{Name: lang.L("heaviest"), Values: worst})
	}
	for _, i := range v.order {
		id := v.plan.Trip.Crew[i].ID
		if all || id == s.member || len(series) < mostLines && v.inGroup(id, s.member) {
			line := lineOf(v.plan.Trip.Crew[i].Name, v.plan.Carry.Members[i].Days)
			line.Strong, line.Tapped = id == s.member, func() { s.showMember(id) }
			series = append(series, line)
		}
	}
	s.lines.Set(days, series, fair)
	s.lines.Mark(s.day - 1)
}

func lineOf(name string, days []carry.Day) charts.Series {
	line := charts.Series{Name: name}
	for _, d := range days {
		line.Values, line.Gaps = append(line.Values, 100*d.Share), append(line.Gaps, !d.Present)
	}
	return line
}
