package portions

import (
	"cmp"
	"slices"

	"sumpter/domain/menu"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Shares cuts a whole number of steps among weights, each within a step of its
// proportional part, with nothing left over: the largest remainders get the
// odd steps, ties the earlier. Negative weights count as zero; without any
// weight all get nothing but the first, who gets the whole.
func Shares(total, step units.Mass, weights []float64) []units.Mass {
	shares := make([]units.Mass, len(weights))
	if len(weights) == 0 || step <= 0 {
		return shares
	}
	sum := 0.0
	for _, w := range weights {
		sum += max(0, w)
	}
	if sum <= 0 {
		shares[0] = total
		return shares
	}
	rest := make([]float64, len(weights))
	left := total
	for i, w := range weights {
		exact := float64(total) * max(0, w) / sum
		shares[i] = units.Mass(exact) / step * step
		rest[i] = exact - float64(shares[i])
		left -= shares[i]
	}
	order := make([]int, len(weights))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rest[b], rest[a]) })
	for _, i := range order {
		if left < step {
			break
		}
		shares[i] += step
		left -= step
	}
	shares[order[0]] += left // less than a step: total was no whole number of steps
	return shares
}

// A share below so many steps of the scale is measured by the spoon, in tenths
// of a step (common practice, no source).
const (
	spoonBelow = 5
	spoonParts = 10
)

// stepFor is what a share of about this size is rounded to.
func stepFor(share float64, step units.Mass) units.Mass {
	if share < spoonBelow*float64(step) {
		return max(units.Milligram, step/spoonParts)
	}
	return max(units.Milligram, step)
}

// weigh rounds a batch: each food of the batch to what can be weighed, then its portions so that they add up to that.
func (s *sizer) weigh(p *pot) Batch {
	out := Batch{Day: p.day, Meal: p.meal, Group: p.group, Dish: p.dish, Batch: p.batch, Recipe: p.recipe.ID}
	scales := 0.0
	out.Portions = make([]Portion, 0, len(p.servings))
	for _, o := range p.servings {
		out.Portions = append(out.Portions, Portion{Member: o.member, Scale: o.scale, Amounts: make([]Amount, 0, len(o.parts))})
		scales += o.scale
	}
	if p.hasSeconds() {
		scales *= 1 + s.trip.Settings.Seconds
	}
	out.Water, out.PourOff = p.recipe.Water.Scale(scales), p.recipe.PourOff.Scale(scales)
	for i := range p.recipe.Ingredients {
		for _, food := range foodsOf(p, i) {
			s.weighFood(p, i, food, &out)
		}
	}
	for i := range out.Portions {
		for _, amount := range out.Portions[i].Amounts {
			out.Portions[i].Kcal += s.foods[amount.Food].Kcal(amount.Mass)
		}
	}
	return out
}

// foodsOf lists the foods that stand for an ingredient in the batch, in order of their IDs: a bowl may hold a swap.
func foodsOf(p *pot, ingredient int) []trip.FoodID {
	var list []trip.FoodID
	for _, o := range p.servings {
		if part, ok := o.part(ingredient); ok && !slices.Contains(list, part.Food) {
			list = append(list, part.Food)
		}
	}
	slices.Sort(list)
	return list
}

func (o *serving) part(ingredient int) (menu.Part, bool) {
	for _, part := range o.parts {
		if part.Ingredient == ingredient {
			return part, true
		}
	}
	return menu.Part{}, false
}

// weighFood rounds what the eaters of a batch get of one food for one ingredient.
func (s *sizer) weighFood(p *pot, at int, food trip.FoodID, out *Batch) {
	ingredient := &p.recipe.Ingredients[at]
	eaters, exact := make([]int, 0, len(p.servings)), make([]float64, 0, len(p.servings))
	sum := 0.0
	for k, o := range p.servings {
		part, ok := o.part(at)
		if !ok || part.Food != food {
			continue
		}
		mass := o.massOf(p.recipe, part)
		eaters, exact = append(eaters, k), append(exact, mass)
		sum += mass
	}
	fine, piece := stepFor(sum/float64(len(eaters)), s.trip.Settings.ScaleStep), s.foods[food].PieceStep()
	if piece > 0 {
		fine = units.Milligram // whole pieces already
	}
	total := units.Mass(sum/float64(fine)+0.5) * fine
	if total == 0 {
		total = fine // a pinch is never nothing
	}
	for i, mass := range Shares(total, fine, exact) {
		if mass > 0 {
			addAmount(&out.Portions[eaters[i]].Amounts, food, ingredient.Place, mass)
		}
	}
	if more := s.seconds(p, at, total, max(fine, piece)); more > 0 {
		addAmount(&out.Seconds, food, ingredient.Place, more)
		total += more
	}
	addAmount(&out.Totals, food, ingredient.Place, total)
}

// seconds is what goes into the pot of a hot meal above the portions.
func (s *sizer) seconds(p *pot, at int, total, step units.Mass) units.Mass {
	if !p.hasSeconds() || !p.shared(at) {
		return 0
	}
	return units.Mass(float64(total)*s.trip.Settings.Seconds/float64(step)+0.5) * step
}

// hasSeconds tells whether there is a pot to take a second helping from.
func (p *pot) hasSeconds() bool { return p.meal != trip.Snack && p.recipe.NeedsFlame() }

// addAmount adds to the amount of the food at its place, so that a food that comes twice is told once.
func addAmount(list *[]Amount, food trip.FoodID, place trip.Place, mass units.Mass) {
	for i := range *list {
		if a := &(*list)[i]; a.Food == food && a.Place == place {
			a.Mass += mass
			return
		}
	}
	*list = append(*list, Amount{Food: food, Place: place, Mass: mass})
}
