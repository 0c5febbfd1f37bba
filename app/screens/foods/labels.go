package foods

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// unreadOf lists the allergens a label must declare and of which nothing is
// known yet.
func unreadOf(f *trip.Food) []trip.Allergen { return withPresence(f, trip.NotKnown) }

// withPresence lists the declared allergens of a state.
func withPresence(f *trip.Food, state trip.Presence) []trip.Allergen {
	var list []trip.Allergen
	for _, allergen := range trip.DeclaredAllergens() {
		if f.Presence(allergen) == state {
			list = append(list, allergen)
		}
	}
	return list
}

// allergensInShort names what is in a food, then what may be, in full words.
func allergensInShort(f *trip.Food, system units.System) string {
	contains, may, unread := withPresence(f, trip.Contains), withPresence(f, trip.MayContain), unreadOf(f)
	var parts []string
	if len(contains) > 0 {
		parts = append(parts, named(contains, system))
	}
	if len(may) > 0 {
		parts = append(parts, lang.L("may contain")+" "+named(may, system))
	}
	switch {
	case len(parts) > 0:
		return strings.Join(parts, "; ")
	case len(unread) > 0:
		return lang.L("not known, so not safe")
	default:
		return lang.L("none declared")
	}
}

func named(allergens []trip.Allergen, system units.System) string {
	words := make([]string, len(allergens))
	for i, allergen := range allergens {
		words[i] = bench.AllergenWord(allergen, system)
	}
	return strings.Join(words, ", ")
}

// labelsToRead lists the foods that somebody may not eat only because a label
// was not read, in the order of the trip.
func labelsToRead(t *trip.Trip) []trip.FoodID {
	var list []trip.FoodID
	for i := range t.Foods {
		if blocksSomebody(t, &t.Foods[i]) {
			list = append(list, t.Foods[i].ID)
		}
	}
	return list
}

func blocksSomebody(t *trip.Trip, f *trip.Food) bool {
	for i := range t.Crew {
		for _, allergy := range t.Crew[i].Allergies {
			if f.Presence(allergy.Allergen) == trip.NotKnown {
				return true
			}
		}
	}
	return false
}

// allergicTo names the members an allergen harms, those harmed by traces said
// so.
func allergicTo(t *trip.Trip, allergen trip.Allergen) string {
	var names []string
	for i := range t.Crew {
		for _, allergy := range t.Crew[i].Allergies {
			if allergy.Allergen != allergen {
				continue
			}
			name := t.Crew[i].Name
			if allergy.Severe {
				name += " (" + lang.L("traces") + ")"
			}
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ")
}

// fromLibrary tells whether the figures are the dataset's, which counts the
// energy of each food by factors of its own: spices, bran and cocoa then differ
// honestly from the general ones.
func fromLibrary(f *trip.Food) bool { return strings.HasPrefix(f.Source, "USDA SR28 ") }

// energyCheck is stated energy against that of the nutrients.
type energyCheck struct {
	known    bool // protein, fat and carbohydrate are
	computed float64
	fits     bool
}

// checkEnergy works out the energy of the nutrients by the rule that goes with
// their carbohydrate: the general Atwater factors where fibre is within, those
// of Regulation (EU) 1169/2011 where it is apart.
func checkEnergy(n *trip.Nutrients) energyCheck {
	protein, knownProtein := n.ProteinGrams.Get()
	fat, knownFat := n.FatGrams.Get()
	carbohydrate, knownCarbohydrate := n.CarbGrams.Get()
	if !knownProtein || !knownFat || !knownCarbohydrate {
		return energyCheck{}
	}
	c := foodenergy.Composition{Protein: protein, Fat: fat, Carbohydrate: carbohydrate, Fibre: n.FibreGrams.Or(0)}
	computed := foodenergy.AtwaterKcal(c)
	if n.CarbConvention == trip.AvailableCarbohydrate {
		c.Convention = foodenergy.Available
		computed = foodenergy.EUKcal(c)
	}
	return energyCheck{known: true, computed: computed, fits: foodenergy.Plausible(float64(n.Kcal), computed)}
}
