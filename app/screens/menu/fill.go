package menu

import (
	"context"

	"fyne.io/fyne/v2/lang"

	menus "sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
)

// fill serves something in every open slot that is not locked, in one step:
// what the plan proposes stays as it is shown, the rest is chosen now, away
// from the screen.
func (s *Screen) fill() {
	shown := s.proposals()
	t := s.bench.Trip().Clone()
	put(t, shown)
	t = t.Canonical()
	var found []trip.Cell
	var failed error
	p := s.bench.Plan()
	s.bench.Document.Background(func() {
		var n needs.Result
		if p != nil && len(p.Needs.Members) == len(t.Crew) && len(p.Needs.Walks) == len(t.Days) {
			n = p.Needs
		} else {
			n = needs.Compute(t, nil)
		}
		found, failed = menus.Fill(context.Background(), t, n)
	}, func() {
		if failed == nil {
			s.filled(append(shown, found...))
		}
	})
}

// filled stores what was found, where the slot is still open.
func (s *Screen) filled(cells []trip.Cell) {
	n := 0
	_ = s.bench.Edit(lang.L("fill the open slots"), func(t *trip.Trip) error {
		n = put(t, cells)
		return nil
	})
	if n == 0 {
		s.bench.Say(lang.L("No open slot could be filled: all are decided or locked, or no recipe suits them."))
	}
}

// put stores cells where nothing is decided or locked and counts them.
func put(t *trip.Trip, cells []trip.Cell) int {
	n := 0
	for _, proposal := range cells {
		cell := cellFor(t, slotOfCell(&proposal))
		if cell.Locked || len(cell.Dishes) > 0 {
			continue
		}
		cell.Dishes = cloneDishes(proposal.Dishes)
		n++
	}
	return n
}

// proposals lists the slots the plan fills by itself.
func (s *Screen) proposals() []trip.Cell {
	var cells []trip.Cell
	if s.seen.plan == nil {
		return nil
	}
	for i := range s.seen.plan.Menu.Slots {
		k := slotOfMenu(&s.seen.plan.Menu.Slots[i])
		if s.seen.proposal(k) != nil {
			cells = append(cells, trip.Cell{Day: k.day, Meal: k.meal, Group: k.group, Dishes: s.seen.dishes(k)})
		}
	}
	return cells
}
