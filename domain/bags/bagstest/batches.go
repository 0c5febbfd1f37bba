// Package bagstest makes sized batches straight from a trip's menu, so that
// the stages after portions can be tested without those before: every eater
// gets the recipe times a factor of their own, less what they must not eat.
package bagstest

import (
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Batches sizes the menu of a canonical trip. Its amounts are whole steps of
// the scale, its totals exact sums.
func Batches(t *trip.Trip) portions.Result {
	var result portions.Result
	for day := range t.Days {
		for _, meal := range trip.Meals() {
			if !t.Days[day].Eats(meal) {
				continue
			}
			for _, group := range t.Groups {
				if cell := t.Cell(day+1, meal, group.ID); cell != nil {
					result.Batches = append(result.Batches, slot(t, cell)...)
				}
			}
		}
	}
	return result
}

func slot(t *trip.Trip, cell *trip.Cell) []portions.Batch {
	var batches []portions.Batch
	for d, dish := range cell.Dishes {
		recipe := t.Recipe(dish.Recipe)
		var pots []portions.Batch
		for _, id := range t.Eaters(cell.Day, cell.Group) {
			if len(dish.For) > 0 && !slices.Contains(dish.For, id) {
				continue
			}
			portion := serve(t, recipe, t.Member(id))
			if len(portion.Amounts) == 0 {
				continue
			}
			at := slices.IndexFunc(pots, func(b portions.Batch) bool { return samePot(b.Portions[0], portion) })
			if at < 0 {
				at = len(pots)
				pots = append(pots, portions.Batch{
					Day: cell.Day, Meal: cell.Meal, Group: cell.Group, Dish: d, Batch: at, Recipe: dish.Recipe,
				})
			}
			pots[at].Portions = append(pots[at].Portions, portion)
			pots[at].Water += recipe.Water.Scale(portion.Scale)
			for _, a := range portion.Amounts {
				add(&pots[at].Totals, a)
			}
		}
		batches = append(batches, pots...)
	}
	return batches
}

// serve gives a member the recipe less what speaks against it for them.
func serve(t *trip.Trip, r *trip.Recipe, m *trip.Member) portions.Portion {
	p := portions.Portion{Member: m.ID, Scale: 0.8 + 0.05*float64(m.ID%9)}
	step := max(t.Settings.ScaleStep, 1)
	for _, ingredient := range r.Ingredients {
		food := t.Food(ingredient.Food)
		if slices.ContainsFunc(m.Objections(food), trip.Objection.Dangerous) {
			continue
		}
		mass := ingredient.Amount
		if ingredient.Role == trip.Base {
			mass = mass.Scale(p.Scale)
		}
		mass = max(1, (mass+step/2)/step) * step
		add(&p.Amounts, portions.Amount{Food: food.ID, Place: ingredient.Place, Mass: mass})
		p.Kcal += food.Kcal(mass)
	}
	return p
}

func samePot(a, b portions.Portion) bool { return slices.Equal(potOf(a), potOf(b)) }

func potOf(p portions.Portion) []trip.FoodID {
	var ids []trip.FoodID
	for _, a := range p.Amounts {
		if a.Place == trip.InPot {
			ids = append(ids, a.Food)
		}
	}
	return ids
}

func add(list *[]portions.Amount, a portions.Amount) {
	for i := range *list {
		if (*list)[i].Food == a.Food && (*list)[i].Place == a.Place {
			(*list)[i].Mass += a.Mass
			return
		}
	}
	*list = append(*list, a)
}

// Food is a dry food free of every declared allergen.
func Food(id trip.FoodID, name string) trip.Food {
	f := trip.Food{ID: id, Name: name, Form: trip.Dry, Allergens: map[trip.Allergen]trip.Presence{}}
	f.Storage.TCS = trip.TCSNo
	for _, a := range trip.DeclaredAllergens() {
		f.Allergens[a] = trip.Free
	}
	return f
}

// Grams is a mass.
func Grams(g int) units.Mass { return units.Mass(g) * units.Gram }
