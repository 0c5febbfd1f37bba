package crew

import (
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// change edits one member in a step of its own, named for the undo menu.
func (s *Screen) change(id trip.MemberID, what string, set func(t *trip.Trip, m *trip.Member) error) error {
	name := lang.X("edit-member", "change {{.What}} of {{.Name}}", map[string]any{"What": what, "Name": s.bench.Trip().Member(id).Name})
	return s.bench.Edit(name, func(t *trip.Trip) error {
		m := t.Member(id)
		if m == nil {
			return errors.New(lang.L("The member is gone."))
		}
		return set(t, m)
	})
}

func (s *Screen) add() (string, error) {
	id := trip.NextID(s.bench.Trip().Crew, func(m *trip.Member) trip.MemberID { return m.ID })
	err := s.bench.Edit(lang.L("add a member"), func(t *trip.Trip) error {
		t.Crew = append(t.Crew, trip.NewMember(id, freeName(t), t.Groups[0].ID))
		return nil
	})
	return key(id), err
}

// freeName gives a new member a name that nobody has.
func freeName(t *trip.Trip) string {
	for n := len(t.Crew) + 1; ; n++ {
		name := fmt.Sprintf("%s %d", lang.L("Member"), n)
		if !slices.ContainsFunc(t.Crew, func(m trip.Member) bool { return m.Name == name }) {
			return name
		}
	}
}

// remove takes a member out of the trip and out of everything that names them.
func (s *Screen) remove(id trip.MemberID) error {
	if len(s.bench.Trip().Crew) == 1 {
		return errors.New(lang.L("The last member stays: a trip needs one."))
	}
	name := s.bench.Trip().Member(id).Name
	return s.bench.Edit(lang.X("remove-member", "remove {{.Name}}", map[string]any{"Name": name}), func(t *trip.Trip) error {
		t.Crew = slices.DeleteFunc(t.Crew, func(m trip.Member) bool { return m.ID == id })
		t.Pins = slices.DeleteFunc(t.Pins, func(p trip.Pin) bool { return p.Member == id })
		for c := range t.Menu {
			for d := range t.Menu[c].Dishes {
				forget(&t.Menu[c].Dishes[d], id)
			}
			t.Menu[c].Dishes = slices.DeleteFunc(t.Menu[c].Dishes, func(d trip.Dish) bool { return d.For != nil && len(d.For) == 0 })
		}
		return nil
	})
}

// forget takes a member out of a dish. A dish that was for them alone is left
// with an empty, not absent, list: it is for nobody and goes.
func forget(dish *trip.Dish, id trip.MemberID) {
	dish.Accepted = slices.DeleteFunc(dish.Accepted, func(a trip.Acceptance) bool { return a.Member == id })
	if len(dish.For) == 0 {
		dish.For = nil
		return
	}
	dish.For = slices.DeleteFunc(dish.For, func(m trip.MemberID) bool { return m == id })
}

// paste stores many cells as one step of undo.
func (s *Screen) paste(cells []grid.Pasted[trip.MemberID]) error {
	return s.bench.Edit(lang.L("paste into the crew"), func(t *trip.Trip) error {
		for _, cell := range cells {
			if err := s.store(t, cell.Row, cell.Column, cell.Text); err != nil {
				return prose.Errorf("%s, %s: %s", t.Member(cell.Row).Name, s.shown[cell.Column].title, err)
			}
		}
		return nil
	})
}

// store puts a text into one field of a member.
func (s *Screen) store(t *trip.Trip, id trip.MemberID, column int, text string) error {
	return s.shown[column].set(t, t.Member(id), text)
}
