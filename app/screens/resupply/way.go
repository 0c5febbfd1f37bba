package resupply

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
)

// showWay draws the days with their points and boxes.
func (s *Screen) showWay() {
	t := s.bench.Trip()
	p := s.bench.Plan()
	points := slices.Clone(t.Points)
	slices.SortStableFunc(points, func(a, b trip.ResupplyPoint) int { return a.AfterDay - b.AfterDay })
	var stops []charts.WayStop
	for i := range points {
		point := &points[i]
		stop := charts.WayStop{Name: point.Name, After: point.AfterDay, Used: point.Use, Chosen: point.ID == s.point}
		stop.Tapped = func() {
			s.table.SelectKey(key(point.ID))
			s.choose(point.ID)
		}
		if point.Use {
			stop.Lines = cardLines(t, p, point)
		}
		stops = append(stops, stop)
	}
	s.way.Set(len(t.Days), stops)
}

// cardLines says what waits at a point, when it is fetched and posted, and
// what is wrong.
func cardLines(t *trip.Trip, p *plan.Plan, point *trip.ResupplyPoint) []charts.WayLine {
	lines := []charts.WayLine{{Text: point.Name}}
	quiet := func(text string) { lines = append(lines, charts.WayLine{Text: text, Tone: look.Quiet}) }
	quiet(fmt.Sprintf("%s, %s %d", lang.L(string(point.Kind)), lang.L("after day"), point.AfterDay))
	box := boxOf(p, point.ID)
	switch {
	case box == nil:
		quiet(lang.L("no box"))
	case didNotCome(t, point.ID):
		lines = append(lines, charts.WayLine{Text: massLine(t, box)}, charts.WayLine{Text: lang.L("The box did not come."), Tone: look.Brick})
	default:
		lines = append(lines, charts.WayLine{Text: massLine(t, box)})
		if box.PickUp.IsSet() {
			quiet(lang.L("fetched") + " " + bench.DayWords(box.PickUp))
		}
		quiet(postingLine(box))
	}
	for _, finding := range findingsOf(p, point.ID) {
		if finding.Severity != findings.Note {
			lines = append(lines, charts.WayLine{Text: lang.L(string(finding.Severity)) + ": " + written.Text(finding.What, t.Units), Tone: look.ToneOf(finding.Severity)})
		}
	}
	return lines
}

// didNotCome tells whether it was noted on the way that a box was not there.
func didNotCome(t *trip.Trip, id trip.PointID) bool {
	return slices.Contains(t.Progress.MissingBoxes, id)
}

func massLine(t *trip.Trip, box *resupply.Box) string {
	parcels := written.Counted(len(box.Parcels), prose.Say("one parcel"), prose.Say("%d parcels", len(box.Parcels)))
	return fmt.Sprintf("%s, %d %s, %s", written.Quantity(box.Mass, t.Units), len(box.Bags), lang.L("bags"), parcels)
}

// postingLine says between which days a box must be posted.
func postingLine(box *resupply.Box) string {
	switch {
	case !box.Posted:
		return lang.L("taken there by somebody")
	case !box.PostBy.IsSet():
		return lang.L("the trip has no start date: no posting days")
	case !box.PostFrom.IsSet():
		return lang.X("post-by", "post by {{.By}}; how early, nobody knows", data{"By": bench.DayWords(box.PostBy)})
	case box.PostFrom > box.PostBy:
		return lang.L("no day is right to post it")
	default:
		return lang.X("post-between", "post {{.From}} to {{.By}}", data{"From": bench.DayWords(box.PostFrom), "By": bench.DayWords(box.PostBy)})
	}
}

func boxOf(p *plan.Plan, id trip.PointID) *resupply.Box {
	if p == nil {
		return nil
	}
	for i := range p.Resupply.Boxes {
		if p.Resupply.Boxes[i].Point == id {
			return &p.Resupply.Boxes[i]
		}
	}
	return nil
}

// findingsOf lists what is to be known about a point, worst first.
func findingsOf(p *plan.Plan, id trip.PointID) []findings.Finding {
	var list []findings.Finding
	if p == nil {
		return nil
	}
	for _, finding := range p.Findings {
		if finding.Place.Point == id {
			list = append(list, finding)
		}
	}
	return list
}
