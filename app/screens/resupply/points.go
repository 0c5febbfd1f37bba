package resupply

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

var errGone = prose.Errorf("the point is gone")

// add makes a point half-way along the longest leg.
func (s *Screen) add() (string, error) {
	id := trip.NextID(s.bench.Trip().Points, func(p *trip.ResupplyPoint) trip.PointID { return p.ID })
	err := s.bench.Edit(lang.L("add a point"), func(t *trip.Trip) error {
		t.Points = append(t.Points, trip.NewPoint(id, freeName(t), middleOfLongestLeg(t)))
		return nil
	})
	s.Refresh()
	return key(id), err
}

// middleOfLongestLeg gives the day after which one more point helps most.
func middleOfLongestLeg(t *trip.Trip) int {
	longest := trip.Leg{FirstDay: 1, LastDay: 1}
	for _, leg := range t.Legs() {
		if leg.LastDay-leg.FirstDay > longest.LastDay-longest.FirstDay {
			longest = leg
		}
	}
	return (longest.FirstDay + longest.LastDay) / 2
}

// freeName gives a new point a name that no other has.
func freeName(t *trip.Trip) string {
	for n := len(t.Points) + 1; ; n++ {
		name := fmt.Sprintf("%s %d", lang.L("Point"), n)
		if !slices.ContainsFunc(t.Points, func(p trip.ResupplyPoint) bool { return p.Name == name }) {
			return name
		}
	}
}

func (s *Screen) remove(id trip.PointID) error {
	p := s.bench.Trip().Point(id)
	if p == nil {
		return errGone
	}
	return s.bench.Edit(lang.X("remove-point", "remove {{.Name}}", data{"Name": p.Name}), func(t *trip.Trip) error {
		t.Points = slices.DeleteFunc(t.Points, func(p trip.ResupplyPoint) bool { return p.ID == id })
		return nil
	})
}

// change edits one point in a step of its own, named for the undo menu.
func (s *Screen) change(id trip.PointID, what string, set func(p *trip.ResupplyPoint) error) error {
	p := s.bench.Trip().Point(id)
	if p == nil {
		return errGone
	}
	return s.bench.Edit(lang.X("edit-point", "change {{.What}} of {{.Name}}", data{"What": what, "Name": p.Name}), func(t *trip.Trip) error {
		return set(t.Point(id))
	})
}

// paste stores many cells as one step of undo.
func (s *Screen) paste(cells []grid.Pasted[trip.PointID]) error {
	fields := s.fields()
	return s.bench.Edit(lang.L("paste into the points"), func(t *trip.Trip) error {
		for _, cell := range cells {
			p := t.Point(cell.Row)
			if p == nil {
				return errGone
			}
			if err := fields[cell.Column].set(p, cell.Text); err != nil {
				return prose.Errorf("%s, %s: %s", p.Name, fields[cell.Column].title, err)
			}
		}
		return nil
	})
}
