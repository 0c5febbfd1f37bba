package menu

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/trip"
)

// refusal says why the dishes of one slot cannot go to another; empty if
// they can.
func (s *Screen) refusal(from, to slot) string {
	switch {
	case s.seen.locked(to):
		return lang.L("locked")
	case !s.seen.eaten(to):
		return lang.L("nobody eats there")
	case s.how() != copying && s.seen.locked(from):
		return lang.L("locked")
	default:
		return ""
	}
}

// transfer swaps, moves or copies the dishes of two slots in one step.
// Dangers that were accepted by hand hold in their own slot only and do not
// come along.
func (s *Screen) transfer(from, to slot, how transfer) error {
	dishes := s.seen.dishes(from)
	if len(dishes) == 0 {
		return s.refuse(written.Error(errNothing(s.seen.trip, from)))
	}
	if !s.seen.eaten(to) {
		return s.refuse(lang.X("menu-nobody", "Nobody eats {{.Slot}} from the packs.", map[string]any{"Slot": to.words(s.seen.trip)}))
	}
	slots := []slot{from, to}
	if how == copying {
		slots = []slot{to}
	}
	back := s.seen.dishes(to)
	return s.edit(s.transferName(from, to, how), slots, func(t *trip.Trip) error {
		cellFor(t, to).Dishes = fitted(t, dishes, from, to)
		switch how {
		case swapping:
			cellFor(t, from).Dishes = fitted(t, back, to, from)
		case moving:
			cellFor(t, from).Dishes = nil
		}
		return nil
	})
}

func (s *Screen) transferName(from, to slot, how transfer) string {
	data := map[string]any{"From": from.words(s.seen.trip), "To": to.words(s.seen.trip)}
	switch how {
	case copying:
		return lang.X("menu-copy", "copy {{.From}} to {{.To}}", data)
	case moving:
		return lang.X("menu-move", "move {{.From}} to {{.To}}", data)
	default:
		return lang.X("menu-swap", "swap {{.From}} with {{.To}}", data)
	}
}

// fitted gives dishes for another slot: only for those who eat there, and
// without what was accepted by hand in the old one.
func fitted(t *trip.Trip, dishes []trip.Dish, from, to slot) []trip.Dish {
	eaters := t.Eaters(to.day, to.group)
	var list []trip.Dish
	for _, dish := range cloneDishes(dishes) {
		named := len(dish.For) > 0
		dish.Accepted = nil
		dish.For = slices.DeleteFunc(dish.For, func(id trip.MemberID) bool { return !slices.Contains(eaters, id) })
		if named && len(dish.For) == 0 && from.group == to.group {
			continue // those it was for are not there that day
		}
		list = append(list, dish)
	}
	if len(list) == 0 && len(dishes) > 0 {
		return []trip.Dish{{Recipe: dishes[0].Recipe}}
	}
	return list
}

// clipboard is what was copied or cut, and from where.
type clipboard struct {
	from   slot
	dishes []trip.Dish
	cut    bool
}

// take copies or cuts the dishes of a slot for pasting. Cut dishes stay until
// they are pasted.
func (s *Screen) take(k slot, cut bool) {
	dishes := s.seen.dishes(k)
	if len(dishes) == 0 {
		s.bench.Say(written.Error(errNothing(s.seen.trip, k)))
		return
	}
	s.held = &clipboard{from: k, dishes: cloneDishes(dishes), cut: cut}
	names := s.namesOfDishes(dishes)
	if s.bench.Clipboard != nil {
		s.bench.Clipboard().SetContent(names)
	}
	data := map[string]any{"Names": names, "Slot": k.words(s.seen.trip)}
	if cut {
		s.bench.Say(lang.X("menu-cut", "Cut: {{.Names}} ({{.Slot}}). It stays there until you paste it into another slot.", data))
		return
	}
	s.bench.Say(lang.X("menu-held", "Copied: {{.Names}} ({{.Slot}}). Paste it into another slot.", data))
}

func (s *Screen) namesOfDishes(dishes []trip.Dish) string {
	names := make([]string, len(dishes))
	for i, dish := range dishes {
		names[i] = s.recipeName(dish.Recipe)
	}
	return strings.Join(names, ", ")
}

// paste serves what was copied, or moves what was cut.
func (s *Screen) paste(k slot) error {
	held := s.held
	if held == nil {
		return s.refuse(lang.L("Copy a slot first."))
	}
	if held.cut {
		if held.from == k {
			return nil
		}
		s.held = nil
		return s.transfer(held.from, k, moving)
	}
	if !s.seen.eaten(k) {
		return s.refuse(lang.X("menu-nobody", "Nobody eats {{.Slot}} from the packs.", map[string]any{"Slot": k.words(s.seen.trip)}))
	}
	return s.edit(s.transferName(held.from, k, copying), []slot{k}, func(t *trip.Trip) error {
		dishes := slices.DeleteFunc(cloneDishes(held.dishes), func(d trip.Dish) bool { return t.Recipe(d.Recipe) == nil })
		if len(dishes) == 0 {
			return errNothing(t, held.from)
		}
		cellFor(t, k).Dishes = fitted(t, dishes, held.from, k)
		return nil
	})
}
