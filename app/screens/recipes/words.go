package recipes

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/menu"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func number(value float64, decimals int) string {
	return written.Number(value, decimals)
}

// atLeast writes a sum, with a sign where a part of it is not known.
func (s sum) atLeast(decimals int) string {
	text := number(s.amount, decimals)
	if s.unknown > 0 {
		return "≥ " + text
	}
	return text
}

func allergenNames(list []trip.Allergen, system units.System) string {
	words := make([]string, len(list))
	for i, allergen := range list {
		words[i] = bench.AllergenWord(allergen, system)
	}
	return strings.Join(words, ", ")
}

// allergensInShort names what is in a recipe as written, the worst first.
func (f *facts) allergensInShort(system units.System) string {
	var parts []string
	if list := f.with(trip.Contains); len(list) > 0 {
		parts = append(parts, allergenNames(list, system))
	}
	if list := f.with(trip.MayContain); len(list) > 0 {
		parts = append(parts, lang.L("may contain")+" "+allergenNames(list, system))
	}
	if list := f.with(trip.NotKnown); len(list) > 0 {
		parts = append(parts, lang.X("allergens-unknown", "{{.Count}} not known, not safe", map[string]any{"Count": strconv.Itoa(len(list))}))
	}
	if len(parts) == 0 {
		return lang.L("none declared")
	}
	return strings.Join(parts, "; ")
}

// allergensInFull is the same with every name.
func (f *facts) allergensInFull(system units.System) string {
	var parts []string
	for _, one := range []struct {
		state trip.Presence
		words string
	}{
		{trip.Contains, lang.L("Contains")}, {trip.MayContain, lang.L("May contain")}, {trip.NotKnown, lang.L("Not known, so not safe:")},
	} {
		if list := f.with(one.state); len(list) > 0 {
			parts = append(parts, one.words+" "+allergenNames(list, system)+".")
		}
	}
	if len(parts) == 0 {
		return lang.L("None of the allergens that must be declared is in it.")
	}
	return strings.Join(parts, " ")
}

func (f *facts) allergenTone() fyne.ThemeColorName {
	switch {
	case len(f.with(trip.Contains))+len(f.with(trip.MayContain)) > 0:
		return look.Plum
	case len(f.with(trip.NotKnown)) > 0:
		return look.Ochre
	default:
		return look.Quiet
	}
}

func (f *facts) dietWords() string {
	if len(f.diets) == 0 {
		return lang.L("no diet for sure")
	}
	words := make([]string, len(f.diets))
	for i, diet := range f.diets {
		words[i] = bench.DietWord(diet)
	}
	return strings.Join(words, ", ")
}

// refusedNames names who cannot be served, and counts the rest of many.
func refusedNames(t *trip.Trip, f *tasting) string {
	const most = 8
	var names []string
	for _, one := range f.refused[:min(len(f.refused), most)] {
		names = append(names, t.Member(one.Member).Name)
	}
	text := strings.Join(names, ", ")
	if rest := len(f.refused) - most; rest > 0 {
		text += " " + lang.X("and-more", "and {{.Count}} more", map[string]any{"Count": rest})
	}
	return text
}

// whyNot says what stands in the way of serving a member.
func whyNot(t *trip.Trip, one menu.Tasting) string {
	food := t.Food(one.Refused)
	if food == nil {
		return lang.L("nothing of it would be left")
	}
	var reasons []string
	for _, o := range t.Member(one.Member).Objections(food) {
		switch {
		case o.Allergen != "" && o.Presence == trip.NotKnown:
			reasons = append(reasons, lang.X("objection-unknown", "whether {{.Food}} holds {{.Allergen}} is not known", map[string]any{"Food": food.Name, "Allergen": bench.AllergenWord(o.Allergen, t.Units)}))
		case o.Allergen != "" && o.Presence == trip.MayContain:
			reasons = append(reasons, lang.X("objection-may", "{{.Food}} may contain {{.Allergen}}", map[string]any{"Food": food.Name, "Allergen": bench.AllergenWord(o.Allergen, t.Units)}))
		case o.Allergen != "":
			reasons = append(reasons, lang.X("objection-contains", "{{.Food}} contains {{.Allergen}}", map[string]any{"Food": food.Name, "Allergen": bench.AllergenWord(o.Allergen, t.Units)}))
		case o.Diet != "" && o.Suits == trip.DoesNotSuit:
			reasons = append(reasons, lang.X("objection-diet", "{{.Food}} does not suit {{.Diet}}", map[string]any{"Food": food.Name, "Diet": bench.DietWord(o.Diet)}))
		case o.Diet != "":
			reasons = append(reasons, lang.X("objection-diet-unknown", "whether {{.Food}} suits {{.Diet}} is not known", map[string]any{"Food": food.Name, "Diet": bench.DietWord(o.Diet)}))
		}
	}
	return lang.X("no-safe-swap", "{{.Reasons}}, and no swap is safe", map[string]any{"Reasons": strings.Join(reasons, "; ")})
}

// swapsOf names what a member gets instead.
func swapsOf(t *trip.Trip, recipe *trip.Recipe, one menu.Tasting) string {
	var words []string
	served := map[int]bool{}
	for _, part := range one.Parts {
		served[part.Ingredient] = true
		if part.Swapped {
			words = append(words, lang.X("instead", "{{.New}} for {{.Old}}", map[string]any{
				"New": foodName(t, part.Food), "Old": foodName(t, recipe.Ingredients[part.Ingredient].Food)}))
		}
	}
	for i := range recipe.Ingredients {
		if !served[i] {
			words = append(words, lang.X("without", "without {{.Old}}", map[string]any{"Old": foodName(t, recipe.Ingredients[i].Food)}))
		}
	}
	for _, id := range one.Dislike {
		words = append(words, lang.X("dislikes", "does not like {{.Food}}", map[string]any{"Food": foodName(t, id)}))
	}
	return strings.Join(words, ", ")
}

func foodName(t *trip.Trip, id trip.FoodID) string {
	if food := t.Food(id); food != nil {
		return food.Name
	}
	return "–"
}
