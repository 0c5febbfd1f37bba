package demo

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/app/library"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func grams(g float64) units.Mass { return units.FromGrams(g) }

// p is one way a food is sold: grams, price in cents, shop, grams of wrapping.
func p(net float64, cents int64, shop string, wrapping float64) trip.Package {
	return trip.Package{Net: grams(net), Price: optional.Of(units.Money(cents)), Shop: shop, Wrapping: grams(wrapping)}
}

func packs(list ...trip.Package) []trip.Package { return list }

func foods() []trip.Food {
	list := make([]trip.Food, 0, len(shelf()))
	for _, bought := range shelf() {
		list = append(list, bought.food())
	}
	slices.SortFunc(list, func(a, b trip.Food) int { return int(a.ID - b.ID) })
	return list
}

// food joins the library's figures and what the label of the demo says.
func (s shelfFood) food() trip.Food {
	food, ok := library.Food(s.number)
	if !ok {
		panic("demo: the library has no food " + s.number)
	}
	food.ID, food.Aisle, food.Packages = s.id, s.aisle, s.sold
	if s.name != "" {
		food.Name = s.name
	}
	notes := []string{}
	if s.gPerMl > 0 && !food.Density.Known() {
		food.Density = optional.Of(s.gPerMl)
		notes = append(notes, fmt.Sprintf("Bulk density %.2f g/mL: weighed by the cupful (invented for the demo).", s.gPerMl))
	}
	food.Allergens, food.Diets = s.label(), s.diets()
	notes = append([]string{s.reading()}, notes...)
	food.Notes = strings.Join(append(notes, food.Notes), " ")
	if s.loose {
		food.PackedAsBought, food.Form = false, trip.Dry
	}
	food.PieceMass, food.PieceHalves = grams(s.piece), s.halves
	s.judge(&food)
	return food
}

// label is what the demo's leader read on the package: what it contains, what
// it may contain, and that it is free of the rest.
func (s shelfFood) label() map[trip.Allergen]trip.Presence {
	states := map[trip.Allergen]trip.Presence{}
	for _, allergen := range trip.DeclaredAllergens() {
		states[allergen] = trip.Free
	}
	for _, allergen := range s.traces {
		states[allergen] = trip.MayContain
	}
	for _, allergen := range s.contains {
		states[allergen] = trip.Contains
	}
	return states
}

func (s shelfFood) reading() string {
	text := "Label read by the leader"
	if len(s.contains) > 0 {
		text += ", contains " + listed(s.contains)
	}
	if len(s.traces) > 0 {
		text += ", may contain " + listed(s.traces)
	}
	return text + ", free of the other allergens (invented for the demo: read your own)."
}

func listed(allergens []trip.Allergen) string {
	words := make([]string, len(allergens))
	for i, allergen := range allergens {
		words[i] = string(allergen)
	}
	return strings.Join(words, ", ")
}

func (s shelfFood) diets() map[trip.Diet]trip.Suitability {
	const suits, not = trip.Suits, trip.DoesNotSuit
	switch s.from {
	case plant:
		return map[trip.Diet]trip.Suitability{trip.Vegan: suits}
	case dairyOrEgg:
		return map[trip.Diet]trip.Suitability{trip.Vegan: not, trip.Vegetarian: suits}
	case fish:
		return map[trip.Diet]trip.Suitability{trip.Vegan: not, trip.Vegetarian: not, trip.Pescatarian: suits, trip.NoPork: suits, trip.NoBeef: suits}
	case poultry:
		return map[trip.Diet]trip.Suitability{trip.Vegan: not, trip.Vegetarian: not, trip.Pescatarian: not, trip.NoPork: suits, trip.NoBeef: suits}
	case beef:
		return map[trip.Diet]trip.Suitability{trip.Vegan: not, trip.Vegetarian: not, trip.Pescatarian: not, trip.NoPork: suits, trip.NoBeef: not}
	default:
		return map[trip.Diet]trip.Suitability{trip.Vegan: not, trip.Vegetarian: not, trip.Pescatarian: not, trip.NoPork: not, trip.NoBeef: not}
	}
}

// judge fills in storage for the one food that the library does not judge.
func (s shelfFood) judge(food *trip.Food) {
	if s.id != rice {
		return
	}
	white, ok := library.Food("20044")
	if !ok {
		panic("demo: the library has no white rice")
	}
	food.Storage = white.Storage
	food.Storage.Basis = "as dry white rice: common practice"
	food.Form = white.Form
}
