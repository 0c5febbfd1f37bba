package foods

import (
	"regexp"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/typed"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// addPasted adds a food for a line of a pasted table. What the table does not
// tell stays unknown: allergens it does not name, diets and how it keeps.
func (s *Screen) addPasted() (string, error) {
	food := foodOfLabel(s.bench.Units())
	food.Name, food.Source = lang.L("New food"), lang.L("pasted table")
	id, err := s.add(food)
	return key(id), err
}

// foodOfLabel is a food of which only a label will tell something. How it keeps
// is not known, and so not safe, until somebody says. What its carbohydrate
// includes is by the labels of the leader's country.
func foodOfLabel(u units.System) trip.Food {
	food := trip.Food{
		Source: lang.L("label"), Form: trip.Dry, Per100g: trip.Nutrients{CarbConvention: trip.AvailableCarbohydrate},
		Storage: trip.Storage{TCS: trip.TCSUnknown, Q10: usualQ10, Basis: lang.L("not judged: ask the maker or keep it cold")},
	}
	if u == units.US {
		food.Per100g.CarbConvention = trip.TotalCarbohydrate
	}
	return food
}

// saidOfPasted tells what a table of foods leaves open.
func (s *Screen) saidOfPasted() string {
	said := lang.L("Figures are taken as for 100 g, carbohydrate without its fibre. Allergens that the table does not name, diets and how they keep are not known: read each label.")
	if s.bench.Units() == units.US {
		said = lang.L("Figures are taken as for 100 g, carbohydrate with its fibre. Allergens that the table does not name, diets and how they keep are not known: read each label.")
	}
	return said
}

// paste stores many cells as one step of undo.
func (s *Screen) paste(cells []grid.Pasted[trip.FoodID]) error {
	return s.bench.Edit(lang.L("paste into the foods"), func(t *trip.Trip) error {
		for _, cell := range cells {
			f, into := t.Food(cell.Row), s.fields[cell.Column]
			if f == nil {
				return errGone
			}
			if (into.choices != nil || into.title == lang.L("Allergens")) && isBlank(cell.Text) {
				continue // nothing is no choice, and says nothing of a label
			}
			if err := into.set(f, cell.Text); err != nil {
				return prose.Errorf("%s, %s: %s", f.Name, into.title, err)
			}
		}
		return nil
	})
}

// What people write about a figure in its head, besides its name.
var (
	perHundred = regexp.MustCompile(`(?i)\s*\(?\s*(?:per|je|pro|/)\s*100\s*g\s*\)?\s*$`)
	unitInHead = regexp.MustCompile(`(?i)^(.+?)[\s,;:]+(?:in\s+)?(kcal|kJ|mg|g)$`)
)

// headOfLabel brings a head to a name with the unit in brackets: "Fat, g per
// 100 g" is "Fat (g)". A head of figures for a serving stays as it is: nothing
// here is told so.
func headOfLabel(head string) string {
	head = strings.NewReplacer("[", "(", "]", ")").Replace(strings.TrimLeft(strings.TrimSpace(head), "-–—• "))
	head = perHundred.ReplaceAllString(head, "")
	if strings.Count(head, "(") > strings.Count(head, ")") {
		head += ")" // it stood within the brackets of the unit
	}
	if found := unitInHead.FindStringSubmatch(head); found != nil {
		head = found[1] + " (" + found[2] + ")"
	}
	return head
}

func headed(f field, also string) field {
	f.also = also
	return f
}

func nameField() field {
	return headed(line(lang.L("Name"), 170, func(f *trip.Food) *string { return &f.Name }), lang.X("heads-food", "Food, Product, Item, Ingredient"))
}

// Words behind a figure of carbohydrate that say what it includes.
const (
	totalWord     = "total"
	availableWord = "available"
)

// readAs lets figures below these heads be read as if the word stood behind them.
func (f *field) readAs(heads, word string) {
	if f.alsoIn == nil {
		f.alsoIn = map[string]string{}
	}
	for _, head := range typed.List(heads) {
		f.alsoIn[head] = word
	}
}

// carbohydrateField reads a bare figure as what the food's label means by it.
func carbohydrateField() field {
	f := figure(lang.L("Carb."), "g", 72, 1, func(f *trip.Food) *optional.Value[float64] { return &f.Per100g.CarbGrams })
	f.also = lang.X("heads-carbohydrate", "Carbohydrate, Carbohydrates, Carbs, Carb")
	f.readAs(lang.X("heads-carbohydrate-total", "Total carbohydrate, Total carbohydrates, Total carbs"), totalWord)
	f.readAs(lang.X("heads-carbohydrate-available", "Available carbohydrate, Net carbohydrate, Net carbs"), availableWord)
	bare := f.set
	f.set = func(food *trip.Food, text string) error {
		if plain, total := strings.CutSuffix(text, totalWord); total {
			text, food.Per100g.CarbConvention = plain, trip.TotalCarbohydrate
		} else if plain, available := strings.CutSuffix(text, availableWord); available {
			text, food.Per100g.CarbConvention = plain, trip.AvailableCarbohydrate
		}
		return bare(food, text)
	}
	return f
}

// saltWord stands behind a figure of salt, which European labels give in grams
// where others give sodium in milligrams.
const saltWord = "salt"

func sodiumField() field {
	f := figure(lang.L("Sodium"), "mg", 84, 0, func(f *trip.Food) *optional.Value[float64] { return &f.Per100g.SodiumMilligrams })
	f.also = lang.X("heads-sodium", "Na")
	f.readAs(lang.X("heads-salt", "Salt, Salt equivalent"), saltWord)
	f.set = func(food *trip.Food, text string) error {
		value, err := sodium(text)
		if err == nil {
			food.Per100g.SodiumMilligrams = value
		}
		return err
	}
	return f
}

// sodium reads milligrams of sodium, grams where they are written, or salt,
// which counts in grams: "400", "0.4 g", "1 g salt", "1 salt".
func sodium(text string) (optional.Value[float64], error) {
	plain, ofSalt := strings.CutSuffix(strings.ToLower(strings.TrimSpace(text)), saltWord)
	if plain = strings.TrimSpace(plain); isBlank(plain) {
		return optional.Unknown[float64](), nil
	}
	factor := 1.0
	if ofSalt {
		factor = 1000
	}
	if rest, ok := strings.CutSuffix(plain, "mg"); ok {
		plain, factor = rest, 1
	} else if rest, ok := strings.CutSuffix(plain, "g"); ok {
		plain, factor = rest, 1000
	}
	if ofSalt {
		factor /= foodenergy.SaltPerSodium
	}
	value, err := typed.Number(plain)
	if err != nil {
		return optional.Unknown[float64](), err
	}
	return optional.Of(value * factor), nil
}
