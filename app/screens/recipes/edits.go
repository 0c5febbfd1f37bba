package recipes

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

var errGone = prose.Errorf("the recipe is gone")

// columns turns the fields into columns of the list.
func (s *Screen) columns() []grid.Column[trip.RecipeID] {
	columns := make([]grid.Column[trip.RecipeID], len(s.fields))
	for i, f := range s.fields {
		columns[i] = grid.Column[trip.RecipeID]{
			Title: f.title, Unit: f.unit, Width: f.width, Right: f.number != nil,
			Text: func(id trip.RecipeID) string { return ofRecipe(s, id, f.text) },
		}
		if f.tone != nil {
			columns[i].Tone = func(id trip.RecipeID) fyne.ThemeColorName { return ofRecipe(s, id, f.tone) }
		}
		if f.number != nil {
			columns[i].Compare = func(a, b trip.RecipeID) int { return cmp.Compare(ofRecipe(s, a, f.number), ofRecipe(s, b, f.number)) }
		}
		if f.set != nil {
			columns[i].Set = func(id trip.RecipeID, text string) error {
				return s.change(id, f.title, func(r *trip.Recipe) error { return f.set(r, text) })
			}
		}
	}
	return columns
}

// ofRecipe asks something of a recipe that may be gone.
func ofRecipe[T any](s *Screen, id trip.RecipeID, ask func(r *trip.Recipe) T) T {
	s.kitchen = s.kitchen.of(s.bench.Trip())
	if recipe := s.bench.Trip().Recipe(id); recipe != nil {
		return ask(recipe)
	}
	var nothing T
	return nothing
}

// change edits one recipe in a step of its own, named for the undo menu.
func (s *Screen) change(id trip.RecipeID, what string, set func(r *trip.Recipe) error) error {
	recipe := s.bench.Trip().Recipe(id)
	if recipe == nil {
		return errGone
	}
	name := lang.X("edit-recipe", "change {{.What}} of {{.Name}}", map[string]any{"What": what, "Name": recipe.Name})
	return s.bench.Edit(name, func(t *trip.Trip) error {
		r := t.Recipe(id)
		if r == nil {
			return errGone
		}
		return set(r)
	})
}

// add begins a recipe with one food, to be written over: a recipe without
// ingredients has no meaning.
func (s *Screen) add() (string, error) {
	t := s.bench.Trip()
	if len(t.Foods) == 0 {
		return "", errors.New(lang.L("A recipe needs foods: add some on the screen Foods first."))
	}
	return s.append(lang.L("add a recipe"), trip.Recipe{
		Name: freeName(t, lang.L("New recipe")), Meals: []trip.Meal{trip.Dinner}, MinScale: 0.5, MaxScale: 2,
		Ingredients: []trip.Ingredient{{Food: t.Foods[0].ID, Amount: 50 * units.Gram, Role: trip.Base, Place: trip.InPot}},
	})
}

// append puts a recipe at the end under a fresh ID.
func (s *Screen) append(name string, recipe trip.Recipe) (string, error) {
	recipe.ID = trip.NextID(s.bench.Trip().Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
	err := s.bench.Edit(name, func(t *trip.Trip) error {
		t.Recipes = append(t.Recipes, recipe)
		return nil
	})
	return key(recipe.ID), err
}

func (s *Screen) duplicate() {
	id, ok := s.table.Selected()
	if !ok || !s.Commit() {
		return
	}
	copied := s.bench.Trip().Clone().Recipe(id)
	name := copied.Name
	copied.Name = freeName(s.bench.Trip(), name)
	made, err := s.append(lang.X("duplicate-recipe", "duplicate {{.Name}}", map[string]any{"Name": name}), *copied)
	if err == nil {
		s.table.SelectKey(made)
	}
}

// freeName gives a name that no other recipe has.
func freeName(t *trip.Trip, wanted string) string {
	name := wanted
	for n := 2; slices.ContainsFunc(t.Recipes, func(r trip.Recipe) bool { return strings.EqualFold(r.Name, name) }); n++ {
		end := fmt.Sprintf(" %d", n)
		runes := []rune(wanted)
		name = string(runes[:min(len(runes), trip.MaxNameRunes-len(end))]) + end
	}
	return name
}

// remove takes a recipe out of the trip and off the menu.
func (s *Screen) remove(id trip.RecipeID) error {
	recipe := s.bench.Trip().Recipe(id)
	if recipe == nil {
		return errGone
	}
	slots := 0
	err := s.bench.Edit(lang.X("remove-recipe", "remove {{.Name}}", map[string]any{"Name": recipe.Name}), func(t *trip.Trip) error {
		t.Recipes = slices.DeleteFunc(t.Recipes, func(r trip.Recipe) bool { return r.ID == id })
		for i := range t.Menu {
			before := len(t.Menu[i].Dishes)
			t.Menu[i].Dishes = slices.DeleteFunc(t.Menu[i].Dishes, func(d trip.Dish) bool { return d.Recipe == id })
			if len(t.Menu[i].Dishes) < before {
				slots++
			}
		}
		if t.Settings.ReserveRecipe == id {
			t.Settings.ReserveRecipe = 0
		}
		return nil
	})
	if err == nil && slots > 0 {
		s.bench.Say(written.Counted(slots, prose.Say("It stood in one slot of the menu, which is open or has a dish less now."),
			prose.Say("It stood in %d slots of the menu; they are open or have a dish less now.", slots)))
	}
	return err
}

// paste stores many cells as one step of undo.
func (s *Screen) paste(cells []grid.Pasted[trip.RecipeID]) error {
	return s.bench.Edit(lang.L("paste into the recipes"), func(t *trip.Trip) error {
		for _, cell := range cells {
			r := t.Recipe(cell.Row)
			if r == nil {
				return errGone
			}
			if err := s.fields[cell.Column].set(r, cell.Text); err != nil {
				return prose.Errorf("%s, %s: %s", r.Name, s.fields[cell.Column].title, err)
			}
		}
		return nil
	})
}
