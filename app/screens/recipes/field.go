package recipes

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// field is one thing known of a recipe. The list and the side panel show the
// same fields.
type field struct {
	title, unit string
	width       float32
	number      func(r *trip.Recipe) float64 // what it sorts by; nil: its text
	text        func(r *trip.Recipe) string
	set         func(r *trip.Recipe, text string) error // nil: worked out
	choices     func() []string
	tone        func(r *trip.Recipe) fyne.ThemeColorName
}

// listFields lists the columns of the list.
func (s *Screen) listFields() []field {
	of := func(r *trip.Recipe) *facts { return s.kitchen.facts(r) }
	quiet := func(*trip.Recipe) fyne.ThemeColorName { return look.Quiet }
	u := s.bench.Units()
	figure := func(title, unit string, width float32, value func(r *trip.Recipe) float64, text func(r *trip.Recipe) string) field {
		return field{title: title, unit: unit, width: width, number: value, text: text, tone: quiet}
	}
	return []field{
		nameField(),
		figure(lang.L("Energy"), "kcal", 88, func(r *trip.Recipe) float64 { return float64(of(r).kcal) }, func(r *trip.Recipe) string { return number(float64(of(r).kcal), 0) }),
		figure(lang.L("Protein"), "g", 80, func(r *trip.Recipe) float64 { return of(r).protein.amount }, func(r *trip.Recipe) string { return of(r).protein.atLeast(0) }),
		figure(lang.L("Mass"), typed.MassUnit(u, false), 66, func(r *trip.Recipe) float64 { return float64(of(r).mass) }, func(r *trip.Recipe) string { return massText(of(r).mass, u) }),
		figure(densityUnit(u), "", 66, func(r *trip.Recipe) float64 { return of(r).density() }, func(r *trip.Recipe) string { return densityText(of(r).density(), u) }),
		figure(lang.L("Time"), "min", 74, minutes, func(r *trip.Recipe) string { return number(minutes(r), 0) }),
		mealsField(),
		{title: lang.L("Cannot eat it"), width: 150, text: func(r *trip.Recipe) string { return refusedNames(s.bench.Trip(), s.kitchen.taste(r)) },
			tone: func(*trip.Recipe) fyne.ThemeColorName { return look.Brick }},
		{title: lang.L("Allergens"), width: 230, text: func(r *trip.Recipe) string { return of(r).allergensInShort(u) },
			tone: func(r *trip.Recipe) fyne.ThemeColorName { return of(r).allergenTone() }},
		{title: lang.L("Suits, swaps taken"), width: 260, text: func(r *trip.Recipe) string { return of(r).dietWords() }, tone: quiet},
	}
}

// massText has whole grams, or tenths of an ounce.
func massText(mass units.Mass, u units.System) string {
	if u == units.US {
		return number(mass.Ounces(), 1)
	}
	return number(mass.Grams(), 0)
}

const gramsPerOunce = 28.349523125 // exact, NIST Handbook 44, Appendix C

func densityUnit(u units.System) string { return "kcal/" + typed.MassUnit(u, false) }

func densityText(kcalPerGram float64, u units.System) string {
	if u == units.US {
		return number(kcalPerGram*gramsPerOunce, 0)
	}
	return number(kcalPerGram, 1)
}

func nameField() field {
	return field{
		title: lang.L("Name"), width: 186, text: func(r *trip.Recipe) string { return r.Name },
		set: func(r *trip.Recipe, text string) error { r.Name = strings.TrimSpace(text); return nil },
	}
}

// mealsField reads meals by their words, each by its beginning.
func mealsField() field {
	return field{
		title: lang.L("Meals"), width: 140,
		text: func(r *trip.Recipe) string {
			words := make([]string, len(r.Meals))
			for i, meal := range r.Meals {
				words[i] = lang.L(string(meal))
			}
			return strings.Join(words, ", ")
		},
		set: func(r *trip.Recipe, text string) error {
			wanted := map[trip.Meal]bool{}
			for _, word := range typed.List(text) {
				meal, ok := mealOf(word)
				if !ok {
					return prose.Errorf("%s: %s", lang.L("Some of"), mealWords())
				}
				wanted[meal] = true
			}
			r.Meals = nil
			for _, meal := range trip.Meals() {
				if wanted[meal] {
					r.Meals = append(r.Meals, meal)
				}
			}
			return nil
		},
	}
}

func mealOf(word string) (trip.Meal, bool) {
	for _, meal := range trip.Meals() {
		for _, name := range []string{lang.L(string(meal)), string(meal)} {
			if strings.HasPrefix(strings.ToLower(name), strings.ToLower(word)) {
				return meal, true
			}
		}
	}
	return "", false
}

func mealWords() string {
	var words []string
	for _, meal := range trip.Meals() {
		words = append(words, lang.L(string(meal)))
	}
	return strings.Join(words, ", ")
}

// makingFields lists how a recipe is made.
func makingFields(u units.System) []field {
	return []field{
		nameField(),
		mealsField(),
		volume(lang.L("Water that stays in the food"), u, func(r *trip.Recipe) *units.Volume { return &r.Water }),
		volume(lang.L("Water boiled and poured off"), u, func(r *trip.Recipe) *units.Volume { return &r.PourOff }),
		duration(lang.L("On the flame after the boil"), func(r *trip.Recipe) *units.Minutes { return &r.Simmer }),
		duration(lang.L("Soaking off the flame"), func(r *trip.Recipe) *units.Minutes { return &r.Soak }),
		yesNo(lang.L("Dry beans or lentils"), func(r *trip.Recipe) *bool { return &r.Pulses }),
		yesNo(lang.L("Can be made cold"), func(r *trip.Recipe) *bool { return &r.ColdOK }),
		line(lang.L("Staple"), func(r *trip.Recipe) *string { return &r.Staple }),
		line(lang.L("Texture"), func(r *trip.Recipe) *string { return &r.Texture }),
		share(lang.L("Smallest portion"), func(r *trip.Recipe) *float64 { return &r.MinScale }),
		share(lang.L("Largest portion"), func(r *trip.Recipe) *float64 { return &r.MaxScale }),
	}
}

func volume(title string, u units.System, of func(r *trip.Recipe) *units.Volume) field {
	return field{
		title: title, unit: typed.VolumeUnit(u, false), text: func(r *trip.Recipe) string { return written.Bare(typed.VolumeText(*of(r), u, false)) },
		set: func(r *trip.Recipe, text string) (err error) {
			*of(r), err = typed.Volume(orNought(text), u, false)
			return err
		},
	}
}

// orNought lets an emptied cell mean none.
func orNought(text string) string {
	if strings.TrimSpace(text) == "" {
		return "0"
	}
	return text
}

func duration(title string, of func(r *trip.Recipe) *units.Minutes) field {
	return field{
		title: title, unit: "min", text: func(r *trip.Recipe) string { return number(float64(*of(r)), 0) },
		set: func(r *trip.Recipe, text string) error {
			value, err := typed.Number(strings.TrimSuffix(strings.TrimSpace(orNought(text)), "min"))
			if err == nil {
				*of(r) = units.Minutes(value)
			}
			return err
		},
	}
}

func yesNo(title string, of func(r *trip.Recipe) *bool) field {
	words := []string{lang.L("yes"), lang.L("no")}
	return field{
		title: title, choices: func() []string { return words },
		text: func(r *trip.Recipe) string {
			if *of(r) {
				return words[0]
			}
			return words[1]
		},
		set: func(r *trip.Recipe, text string) (err error) {
			*of(r), err = typed.Yes(text)
			return err
		},
	}
}

func line(title string, of func(r *trip.Recipe) *string) field {
	return field{
		title: title, text: func(r *trip.Recipe) string { return *of(r) },
		set: func(r *trip.Recipe, text string) error { *of(r) = strings.TrimSpace(text); return nil },
	}
}

func share(title string, of func(r *trip.Recipe) *float64) field {
	return field{
		title: title, unit: "%", text: func(r *trip.Recipe) string { return typed.PercentText(*of(r)) },
		set: func(r *trip.Recipe, text string) (err error) {
			*of(r), err = typed.Percent(text)
			return err
		},
	}
}
