package portions

import (
	"cmp"
	"math"
	"slices"

	"sumpter/domain/menu"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// portionSlot writes the batches of a slot in amounts a scale can weigh.
func (s *sizing) portionSlot(slot *menu.Slot) {
	for d, dish := range slot.Dishes {
		for b, cooked := range dish.Batches {
			batch := Batch{Day: slot.Day, Meal: slot.Meal, Group: slot.Group, Dish: d, Batch: b, Recipe: dish.Recipe}
			s.fillBatch(&batch, cooked)
			s.result.Batches = append(s.result.Batches, batch)
		}
	}
}

// shareKey is one ingredient as one food of a batch.
type shareKey struct {
	ingredient int
	food       trip.FoodID
}

func (s *sizing) fillBatch(batch *Batch, cooked menu.Batch) {
	recipe := s.recipes[batch.Recipe]
	wanted := map[shareKey][]float64{} // milligrams per serving, 0 where it is not served
	var order []shareKey
	for i, serving := range cooked.Servings {
		scale := s.scaleOf(batch, serving.Member)
		batch.Portions = append(batch.Portions, Portion{Member: serving.Member, Scale: scale})
		batch.Water += recipe.Water.Scale(scale)
		batch.PourOff += recipe.PourOff.Scale(scale)
		for _, part := range serving.Parts {
			key := shareKey{part.Ingredient, part.Food}
			if wanted[key] == nil {
				wanted[key] = make([]float64, len(cooked.Servings))
				order = append(order, key)
			}
			factor := scale
			if recipe.Ingredients[part.Ingredient].Role == trip.ToTaste {
				factor = 1
			}
			wanted[key][i] = float64(amountOf(recipe, part)) * factor
		}
	}
	slices.SortStableFunc(order, func(a, b shareKey) int {
		return cmp.Or(cmp.Compare(a.ingredient, b.ingredient), cmp.Compare(a.food, b.food))
	})
	for _, key := range order {
		place := recipe.Ingredients[key.ingredient].Place
		for i, mass := range apportion(wanted[key], s.trip.Settings.ScaleStep) {
			addAmount(&batch.Portions[i].Amounts, Amount{Food: key.food, Place: place, Mass: mass})
			addAmount(&batch.Totals, Amount{Food: key.food, Place: place, Mass: mass})
		}
	}
	for i := range batch.Portions {
		for _, amount := range batch.Portions[i].Amounts {
			batch.Portions[i].Kcal += s.foods[amount.Food].Kcal(amount.Mass)
		}
	}
}

func (s *sizing) scaleOf(batch *Batch, member trip.MemberID) float64 {
	key := plateKey{batch.Day, batch.Meal, batch.Group, batch.Dish, member}
	if scale, ok := s.scale[key]; ok {
		return scale
	}
	recipe := s.recipes[batch.Recipe]
	return clamp(1, recipe.MinScale, recipe.MaxScale)
}

// fewSteps is how many steps of the scale a portion must have for each eater
// to get whole steps; smaller amounts are weighed for the batch as a whole.
const fewSteps = 5

// apportion turns wanted milligrams into masses whose sum is a whole number
// of steps of the scale. Each share is as near to what is wanted as its unit
// allows, the remainders going to the largest fractions, ties to the first
// (method of largest remainder).
func apportion(wanted []float64, step units.Mass) []units.Mass {
	if step < 1 {
		step = 1
	}
	sum, least := 0.0, math.Inf(1)
	for _, w := range wanted {
		sum += w
		if w > 0 {
			least = math.Min(least, w)
		}
	}
	shares := make([]units.Mass, len(wanted))
	if sum <= 0 {
		return shares
	}
	total := units.Mass(math.Round(sum/float64(step))) * step
	if total == 0 {
		total = step
	}
	unit := step
	if least < fewSteps*float64(step) {
		unit = 1
	}
	factor := float64(total) / sum
	type fraction struct {
		place int
		rest  float64
	}
	var fractions []fraction
	left := int64(total / unit)
	for i, w := range wanted {
		if w <= 0 {
			continue
		}
		exact := w * factor / float64(unit)
		whole := math.Floor(exact + 1e-9)
		shares[i] = units.Mass(whole) * unit
		left -= int64(whole)
		fractions = append(fractions, fraction{i, exact - whole})
	}
	slices.SortStableFunc(fractions, func(a, b fraction) int { return compareFloats(b.rest, a.rest) })
	for i := 0; left > 0; i = (i + 1) % len(fractions) {
		shares[fractions[i].place] += unit
		left--
	}
	return shares
}

// addAmount adds to the amount of the same food in the same place.
func addAmount(list *[]Amount, amount Amount) {
	if amount.Mass == 0 {
		return
	}
	for i := range *list {
		if (*list)[i].Food == amount.Food && (*list)[i].Place == amount.Place {
			(*list)[i].Mass += amount.Mass
			return
		}
	}
	*list = append(*list, amount)
}
