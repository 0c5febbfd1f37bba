package menu

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// cellFor finds the leader's cell of a slot and makes it where there is none.
func cellFor(t *trip.Trip, k slot) *trip.Cell {
	if cell := t.Cell(k.day, k.meal, k.group); cell != nil {
		return cell
	}
	t.Menu = append(t.Menu, trip.Cell{Day: k.day, Meal: k.meal, Group: k.group})
	return &t.Menu[len(t.Menu)-1]
}

// tidy takes out cells that decide nothing.
func tidy(t *trip.Trip) {
	t.Menu = slices.DeleteFunc(t.Menu, func(c trip.Cell) bool { return len(c.Dishes) == 0 && !c.Locked })
}

// edit changes what is served in slots as one step of undo. A locked slot
// stays as it is until it is unlocked.
func (s *Screen) edit(name string, slots []slot, change func(t *trip.Trip) error) error {
	for _, k := range slots {
		if s.seen.locked(k) {
			return s.refuse(s.lockedWords(k))
		}
	}
	return s.bench.Edit(name, func(t *trip.Trip) error {
		if err := change(t); err != nil {
			return err
		}
		tidy(t)
		return nil
	})
}

func (s *Screen) refuse(why string) error {
	s.bench.Say(why)
	return errors.New(why)
}

func (s *Screen) lockedWords(k slot) string {
	return lang.X("menu-locked", "{{.Slot}} is locked. Unlock it first.", map[string]any{"Slot": k.words(s.seen.trip)})
}

// name names an edit of one slot: "clear dinner of day 3".
func (s *Screen) name(key, english string, k slot, more ...string) string {
	data := map[string]any{"Slot": k.words(s.seen.trip)}
	for i := 0; i+1 < len(more); i += 2 {
		data[more[i]] = more[i+1]
	}
	return lang.X(key, english, data)
}

func (s *Screen) recipeName(id trip.RecipeID) string {
	if r := s.seen.recipes[id]; r != nil {
		return r.Name
	}
	return lang.L("a recipe")
}

// serve stores what an arrangement makes of a slot with a recipe.
func (s *Screen) serve(k slot, recipe trip.RecipeID, how arrangement) error {
	dishes := how.with(recipe)
	if cell := s.seen.cells[k]; cell != nil && sameServed(cell, &trip.Cell{Dishes: dishes}) {
		return s.refuse(lang.X("menu-there", "{{.Dish}} is served there already.", map[string]any{"Dish": s.recipeName(recipe)}))
	}
	return s.change(s.name(how.key, how.name, k, "Dish", s.recipeName(recipe)), k, func([]trip.Dish) []trip.Dish { return dishes })
}

// remove takes one dish out of a slot.
func (s *Screen) remove(k slot, recipe trip.RecipeID) error {
	name := s.name("menu-remove", "take {{.Dish}} out of {{.Slot}}", k, "Dish", s.recipeName(recipe))
	return s.change(name, k, func(dishes []trip.Dish) []trip.Dish {
		return slices.DeleteFunc(dishes, func(d trip.Dish) bool { return d.Recipe == recipe })
	})
}

// change edits a copy of the dishes of a slot, proposals included.
func (s *Screen) change(name string, k slot, change func([]trip.Dish) []trip.Dish) error {
	return s.edit(name, []slot{k}, func(t *trip.Trip) error {
		cellFor(t, k).Dishes = change(cloneDishes(s.seen.dishes(k)))
		return nil
	})
}

func cloneDishes(dishes []trip.Dish) []trip.Dish {
	list := slices.Clone(dishes)
	for i := range list {
		list[i].For, list[i].Accepted = slices.Clone(list[i].For), slices.Clone(list[i].Accepted)
	}
	return list
}

// clear takes everything out of a slot.
func (s *Screen) clear(k slot) error {
	if cell := s.seen.cells[k]; cell == nil || len(cell.Dishes) == 0 && !cell.Locked {
		return s.refuse(lang.L("Nothing of yours is there to clear."))
	}
	return s.edit(s.name("menu-clear", "clear {{.Slot}}", k), []slot{k}, func(t *trip.Trip) error {
		cellFor(t, k).Dishes = nil
		return nil
	})
}

// keep makes a proposal the leader's own.
func (s *Screen) keep(k slot) error {
	if s.seen.proposal(k) == nil {
		return s.refuse(lang.L("Nothing is proposed there."))
	}
	return s.change(s.name("menu-keep", "keep the proposal for {{.Slot}}", k), k, func(d []trip.Dish) []trip.Dish { return d })
}

// lock locks a slot with what it serves, or unlocks it.
func (s *Screen) lock(k slot) error {
	if s.seen.locked(k) {
		return s.bench.Edit(s.name("menu-unlock", "unlock {{.Slot}}", k), func(t *trip.Trip) error {
			cellFor(t, k).Locked = false
			tidy(t)
			return nil
		})
	}
	if !s.seen.eaten(k) {
		return s.refuse(lang.L("Nobody eats there from the packs."))
	}
	dishes := cloneDishes(s.seen.dishes(k))
	return s.bench.Edit(s.name("menu-lock", "lock {{.Slot}}", k), func(t *trip.Trip) error {
		cell := cellFor(t, k)
		cell.Locked, cell.Dishes = true, dishes
		return nil
	})
}

// serveTo chooses who a dish is for; everybody is nobody named.
func (s *Screen) serveTo(k slot, recipe trip.RecipeID, members []trip.MemberID) error {
	if len(members) == 0 {
		return s.refuse(lang.L("A dish is for somebody. Take it out instead."))
	}
	if len(members) == len(s.seen.trip.Eaters(k.day, k.group)) {
		members = nil
	}
	name := s.name("menu-for", "change who gets {{.Dish}} at {{.Slot}}", k, "Dish", s.recipeName(recipe))
	return s.change(name, k, func(dishes []trip.Dish) []trip.Dish {
		for i := range dishes {
			if dishes[i].Recipe == recipe {
				dishes[i].For = members
			}
		}
		return dishes
	})
}

// accept takes a danger on by hand, in this very slot, or takes it back where
// the reason is empty.
func (s *Screen) accept(k slot, recipe trip.RecipeID, member trip.MemberID, food trip.FoodID, reason string) error {
	who, what := s.seen.trip.Member(member), s.seen.foods[food]
	if who == nil || what == nil {
		return s.refuse(lang.L("The member or the food is gone."))
	}
	key, english := "menu-accept", "serve {{.Who}} {{.Food}} at {{.Slot}} by hand"
	if reason == "" {
		key, english = "menu-accept-back", "no longer serve {{.Who}} {{.Food}} at {{.Slot}}"
	}
	return s.change(s.name(key, english, k, "Who", who.Name, "Food", what.Name), k, func(dishes []trip.Dish) []trip.Dish {
		for i := range dishes {
			if dishes[i].Recipe != recipe {
				continue
			}
			dishes[i].Accepted = slices.DeleteFunc(dishes[i].Accepted, func(a trip.Acceptance) bool { return a.Member == member && a.Food == food })
			if reason != "" {
				dishes[i].Accepted = append(dishes[i].Accepted, trip.Acceptance{Member: member, Food: food, Reason: reason})
			}
		}
		return dishes
	})
}

// errNothing ends an edit that has nothing to do.
func errNothing(t *trip.Trip, k slot) error {
	return prose.Errorf("%s: %s", k.words(t), lang.L("nothing is served there"))
}
