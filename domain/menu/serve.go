package menu

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// asWritten is the choice of an ingredient itself instead of one of its swaps.
const asWritten = -1

// choice is what one eater gets for one ingredient.
type choice struct {
	swap     int // place among the swaps, or asWritten
	accepted bool
}

// refusal is why an eater gets nothing of a dish.
type refusal struct {
	member trip.MemberID
	food   trip.FoodID // what stands in the way; 0: nothing would be left of the dish
}

// outcome is how a dish turns out for those it is meant for.
type outcome struct {
	dish     Dish
	refused  []refusal
	disliked []refusal // served all the same
}

// serve works out what each eater gets of a dish: the ingredient as written,
// else the first swap they may eat. Eaters are in the order of their IDs.
func (b *table) serve(recipe *trip.Recipe, eaters []trip.MemberID, accepted []trip.Acceptance) outcome {
	out := outcome{dish: Dish{Recipe: recipe.ID}}
	var served []trip.MemberID
	var choices [][]choice
	for _, eater := range eaters {
		row, refused := b.chooseAll(recipe, eater, accepted)
		if refused != nil {
			out.refused = append(out.refused, *refused)
			continue
		}
		served, choices = append(served, eater), append(choices, row)
	}
	for i := range recipe.Ingredients {
		b.sharePot(&recipe.Ingredients[i], i, served, choices)
	}
	for k, eater := range served {
		serving := servingOf(recipe, eater, choices[k])
		if len(serving.Parts) == 0 {
			out.refused = append(out.refused, refusal{member: eater})
			continue
		}
		for _, part := range serving.Parts {
			if b.judge(eater, part.Food) == disliked {
				out.disliked = append(out.disliked, refusal{eater, part.Food})
			}
		}
		out.dish.add(recipe, serving)
	}
	slices.SortStableFunc(out.refused, func(a, b refusal) int { return cmp.Compare(a.member, b.member) })
	slices.SortStableFunc(out.dish.Batches, func(a, b Batch) int { return cmp.Compare(len(b.Servings), len(a.Servings)) })
	return out
}

// chooseAll gives the eater's choice for each ingredient, or why there is none.
func (b *table) chooseAll(recipe *trip.Recipe, eater trip.MemberID, accepted []trip.Acceptance) ([]choice, *refusal) {
	row := make([]choice, len(recipe.Ingredients))
	for i := range recipe.Ingredients {
		chosen, ok := b.choose(&recipe.Ingredients[i], eater, accepted)
		if !ok {
			return nil, &refusal{eater, recipe.Ingredients[i].Food}
		}
		row[i] = chosen
	}
	return row, nil
}

// choose gives what the eater gets for an ingredient. What the leader took on
// by hand is served as decided; else swaps are tried in order, those the eater
// likes first.
func (b *table) choose(ingredient *trip.Ingredient, eater trip.MemberID, accepted []trip.Acceptance) (choice, bool) {
	own := b.judge(eater, ingredient.Food)
	if own == welcome {
		return choice{swap: asWritten}, true
	}
	if own == forbidden && takenOn(accepted, eater, ingredient.Food) && b.food(ingredient.Food) != nil {
		return choice{swap: asWritten, accepted: true}, true
	}
	second := choice{swap: asWritten}
	found := own == disliked
	for k, swap := range ingredient.Swaps {
		switch b.judge(eater, swap.Food) {
		case welcome:
			return choice{swap: k}, true
		case disliked:
			if !found {
				second, found = choice{swap: k}, true
			}
		}
	}
	if found {
		return second, true
	}
	for k, swap := range ingredient.Swaps {
		if takenOn(accepted, eater, swap.Food) && b.food(swap.Food) != nil {
			return choice{swap: k, accepted: true}, true
		}
	}
	return choice{}, false
}

func takenOn(accepted []trip.Acceptance, member trip.MemberID, food trip.FoodID) bool {
	for _, a := range accepted {
		if a.Member == member && a.Food == food {
			return true
		}
	}
	return false
}

// sharePot gives everybody who may eat it the swap that one eater needs, where
// the swap is meant for all; of several the one most may eat.
func (b *table) sharePot(ingredient *trip.Ingredient, at int, eaters []trip.MemberID, choices [][]choice) {
	best, most := asWritten, 0
	for k, swap := range ingredient.Swaps {
		needed := swap.ForAll && slices.ContainsFunc(choices, func(row []choice) bool { return row[at].swap == k })
		if !needed {
			continue
		}
		can := 0
		for _, eater := range eaters {
			if b.judge(eater, swap.Food) != forbidden {
				can++
			}
		}
		if can > most {
			best, most = k, can
		}
	}
	if best == asWritten {
		return
	}
	for i, eater := range eaters {
		if b.judge(eater, ingredient.Swaps[best].Food) != forbidden {
			choices[i][at] = choice{swap: best}
		}
	}
}

func servingOf(recipe *trip.Recipe, eater trip.MemberID, choices []choice) Serving {
	serving := Serving{Member: eater}
	for i := range recipe.Ingredients {
		part := Part{Ingredient: i, Food: recipe.Ingredients[i].Food, Accepted: choices[i].accepted}
		if k := choices[i].swap; k != asWritten {
			part.Food, part.Swapped = recipe.Ingredients[i].Swaps[k].Food, true
		}
		if part.Food != 0 {
			serving.Parts = append(serving.Parts, part)
		}
	}
	return serving
}

// add puts a serving into the batch whose pot holds the same foods.
func (d *Dish) add(recipe *trip.Recipe, serving Serving) {
	for i := range d.Batches {
		if samePot(recipe, d.Batches[i].Servings[0].Parts, serving.Parts) {
			d.Batches[i].Servings = append(d.Batches[i].Servings, serving)
			return
		}
	}
	d.Batches = append(d.Batches, Batch{Servings: []Serving{serving}})
}

func samePot(recipe *trip.Recipe, a, b []Part) bool {
	i, j := 0, 0
	for {
		for i < len(a) && recipe.Ingredients[a[i].Ingredient].Place != trip.InPot {
			i++
		}
		for j < len(b) && recipe.Ingredients[b[j].Ingredient].Place != trip.InPot {
			j++
		}
		if i == len(a) || j == len(b) {
			return i == len(a) && j == len(b)
		}
		if a[i].Ingredient != b[j].Ingredient || a[i].Food != b[j].Food {
			return false
		}
		i, j = i+1, j+1
	}
}

// AmountOf is the carried mass of a part for one standard eater.
func AmountOf(recipe *trip.Recipe, part Part) units.Mass {
	ingredient := &recipe.Ingredients[part.Ingredient]
	if !part.Swapped {
		return ingredient.Amount
	}
	for _, swap := range ingredient.Swaps {
		if swap.Food == part.Food {
			return swap.Amount
		}
	}
	return 0
}
