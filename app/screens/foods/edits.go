package foods

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/library"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

var errGone = prose.Errorf("the food is gone")

// change edits one food in a step of its own, named for the undo menu.
func (s *Screen) change(id trip.FoodID, what string, set func(f *trip.Food) error) error {
	food := s.bench.Trip().Food(id)
	if food == nil {
		return errGone
	}
	name := lang.X("edit-food", "change {{.What}} of {{.Name}}", map[string]any{"What": what, "Name": food.Name})
	return s.bench.Edit(name, func(t *trip.Trip) error {
		f := t.Food(id)
		if f == nil {
			return errGone
		}
		return set(f)
	})
}

// addFromLibrary copies a food of the library into the trip, or goes to it if
// it is there already.
func (s *Screen) addFromLibrary(entry *library.Entry) (trip.FoodID, error) {
	food := entry.Food()
	if id := withSource(s.bench.Trip(), food.Source); id != 0 {
		s.bench.Say(lang.X("food-there", "{{.Name}} is in the trip already.", map[string]any{"Name": s.bench.Trip().Food(id).Name}))
		return id, nil
	}
	return s.add(food)
}

// withSource finds the food copied from a source, 0 if there is none.
func withSource(t *trip.Trip, source string) trip.FoodID {
	for i := range t.Foods {
		if t.Foods[i].Source == source {
			return t.Foods[i].ID
		}
	}
	return 0
}

// add puts a food into the trip under a fresh ID and a name of its own.
func (s *Screen) add(food trip.Food) (trip.FoodID, error) {
	t := s.bench.Trip()
	food.ID = trip.NextID(t.Foods, func(f *trip.Food) trip.FoodID { return f.ID })
	food.Name = freeName(t, food.Name)
	err := s.bench.Edit(lang.X("add-food", "add {{.Name}}", map[string]any{"Name": lowered(food.Name)}), func(t *trip.Trip) error {
		t.Foods = append(t.Foods, food)
		return nil
	})
	if err != nil {
		return 0, err
	}
	return food.ID, nil
}

// lowered begins a name with a small letter, as within a sentence.
func lowered(name string) string {
	first, size := utf8.DecodeRuneInString(name)
	return string(unicode.ToLower(first)) + name[size:]
}

// freeName gives a name that no other food has: names that differ in capital
// letters only would be mixed up on sheets.
func freeName(t *trip.Trip, wanted string) string {
	taken := func(name string) bool {
		return slices.ContainsFunc(t.Foods, func(f trip.Food) bool { return strings.EqualFold(f.Name, name) })
	}
	name := wanted
	for n := 2; taken(name); n++ {
		end := fmt.Sprintf(" %d", n)
		runes := []rune(wanted)
		name = string(runes[:min(len(runes), trip.MaxNameRunes-len(end))]) + end
	}
	return name
}

// remove takes a food out of the trip. What recipes need stays.
func (s *Screen) remove(id trip.FoodID) error {
	t := s.bench.Trip()
	food := t.Food(id)
	if food == nil {
		return errGone
	}
	if used := recipesWith(t, id); len(used) > 0 {
		return errors.New(lang.X("food-used", "{{.Name}} stays: it is in {{.Recipes}}. Take it out there first.",
			map[string]any{"Name": food.Name, "Recipes": recipeNames(used)}))
	}
	return s.bench.Edit(lang.X("remove-food", "remove {{.Name}}", map[string]any{"Name": food.Name}), func(t *trip.Trip) error {
		t.Foods = slices.DeleteFunc(t.Foods, func(f trip.Food) bool { return f.ID == id })
		for i := range t.Crew {
			t.Crew[i].Dislikes = slices.DeleteFunc(t.Crew[i].Dislikes, func(f trip.FoodID) bool { return f == id })
		}
		for c := range t.Menu {
			for d := range t.Menu[c].Dishes {
				dish := &t.Menu[c].Dishes[d]
				dish.Accepted = slices.DeleteFunc(dish.Accepted, func(a trip.Acceptance) bool { return a.Food == id })
			}
		}
		return nil
	})
}

// recipesWith lists the recipes that need a food, as it is or as a swap.
func recipesWith(t *trip.Trip, id trip.FoodID) []*trip.Recipe {
	var list []*trip.Recipe
	for i := range t.Recipes {
		if slices.ContainsFunc(t.Recipes[i].Ingredients, func(part trip.Ingredient) bool {
			return part.Food == id || slices.ContainsFunc(part.Swaps, func(swap trip.Swap) bool { return swap.Food == id })
		}) {
			list = append(list, &t.Recipes[i])
		}
	}
	return list
}

// recipeNames names a few recipes and counts the rest.
func recipeNames(list []*trip.Recipe) string {
	const most = 3
	var names []string
	for _, recipe := range list[:min(len(list), most)] {
		names = append(names, recipe.Name)
	}
	text := strings.Join(names, ", ")
	if rest := len(list) - most; rest > 0 {
		text += " " + lang.X("and-more", "and {{.Count}} more", map[string]any{"Count": rest})
	}
	return text
}

// setPresence writes what the label says of an allergen. Reading one label is
// one step of undo.
func (s *Screen) setPresence(id trip.FoodID, allergens []trip.Allergen, state trip.Presence) error {
	food := s.bench.Trip().Food(id)
	if food == nil {
		return errGone
	}
	name := lang.X("read-label", "read the label of {{.Name}}", map[string]any{"Name": food.Name})
	err := s.bench.Document.EditMerged(name, "label "+key(id), func(t *trip.Trip) error {
		f := t.Food(id)
		if f.Allergens == nil {
			f.Allergens = map[trip.Allergen]trip.Presence{}
		}
		for _, allergen := range allergens {
			f.Allergens[allergen] = state
		}
		return nil
	})
	if err != nil {
		s.bench.Say(written.Error(err))
	}
	return err
}

func (s *Screen) setDiet(id trip.FoodID, diet trip.Diet, suits trip.Suitability) error {
	return s.change(id, bench.DietWord(diet), func(f *trip.Food) error {
		if f.Diets == nil {
			f.Diets = map[trip.Diet]trip.Suitability{}
		}
		f.Diets[diet] = suits
		return nil
	})
}
