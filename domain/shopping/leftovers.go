package shopping

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Leftover is what stays of whole packages once every bag is filled, and what
// more it would make.
type Leftover struct {
	Food trip.FoodID   `json:"food"`
	Mass units.Mass    `json:"mass_g"`
	Kcal units.Kcal    `json:"kcal"`
	Uses []LeftoverUse `json:"uses"` // most meals first
}

// LeftoverUse is a recipe of the trip in which the food is a main part.
type LeftoverUse struct {
	Recipe   trip.RecipeID `json:"recipe"`
	Meal     trip.Meal     `json:"meal"`     // the first it is eaten at
	Helpings int           `json:"helpings"` // of the recipe as it stands; the rest of it must be bought
	Meals    int           `json:"meals"`    // for the whole crew
}

// mainPart is the least share of a recipe's mass that makes a food a main part
// of it. Design choice.
const mainPart = 0.25

// leftovers lists what is left over near home, by energy. What is left of food
// bought on the way is left there.
func leftovers(t *trip.Trip, lines []Line) []Leftover {
	var list []Leftover
	crew := max(1, largestCrew(t))
	for i := range t.Foods {
		food := &t.Foods[i]
		left := Leftover{Food: food.ID, Uses: []LeftoverUse{}}
		for _, l := range lines {
			if l.Food == food.ID && l.Point == 0 {
				left.Mass += l.Leftover
			}
		}
		if left.Mass <= 0 {
			continue
		}
		left.Kcal = food.Kcal(left.Mass)
		for j := range t.Recipes {
			if use, ok := useOf(&t.Recipes[j], food, left.Mass, crew); ok {
				left.Uses = append(left.Uses, use)
			}
		}
		slices.SortStableFunc(left.Uses, func(a, b LeftoverUse) int {
			return cmp.Or(cmp.Compare(b.Helpings, a.Helpings), cmp.Compare(a.Recipe, b.Recipe))
		})
		list = append(list, left)
	}
	slices.SortStableFunc(list, func(a, b Leftover) int { return cmp.Compare(b.Kcal, a.Kcal) })
	return list
}

func useOf(r *trip.Recipe, food *trip.Food, left units.Mass, crew int) (LeftoverUse, bool) {
	var own, all units.Mass
	for _, ingredient := range r.Ingredients {
		all += ingredient.Amount
		if ingredient.Food == food.ID {
			own += ingredient.Amount
		}
	}
	if own <= 0 || float64(own) < mainPart*float64(all) || left < own || len(r.Meals) == 0 {
		return LeftoverUse{}, false
	}
	helpings := int(left / own)
	return LeftoverUse{Recipe: r.ID, Meal: r.Meals[0], Helpings: helpings, Meals: helpings / crew}, true
}

// largestCrew counts those present on the day with most.
func largestCrew(t *trip.Trip) int {
	most := 0
	for day := 1; day <= len(t.Days); day++ {
		n := 0
		for i := range t.Crew {
			if t.Crew[i].Present(day) {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}
