package menu

import (
	"context"
	"slices"

	"sumpter/domain/needs"
	"sumpter/domain/trip"
)

// Fill proposes dishes for every slot that is eaten from the packs, open and
// not locked: recipes meant for the meal that everybody can be served, that
// can be made on that day, in turn rather than again, dense before heavy.
// Where no recipe serves all, further dishes are for those left over.
func Fill(ctx context.Context, t *trip.Trip, _ needs.Result) ([]trip.Cell, error) {
	f := &filler{resolver: resolver{trip: t, foods: map[trip.FoodID]*trip.Food{}, recipes: map[trip.RecipeID]*trip.Recipe{}}, last: map[use]int{}}
	for i := range t.Foods {
		f.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	for i := range t.Recipes {
		f.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	var cells []trip.Cell
	for day := 1; day <= len(t.Days); day++ {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		for _, meal := range trip.Meals() {
			if !t.Days[day-1].Eats(meal) {
				continue
			}
			for _, group := range t.Groups {
				if cell, ok := f.fill(day, meal, group.ID); ok {
					cells = append(cells, cell)
				}
			}
		}
	}
	return cells, nil
}

// use is a recipe eaten by a group.
type use struct {
	group  trip.GroupID
	recipe trip.RecipeID
}

type filler struct {
	resolver
	last map[use]int // day a recipe was last eaten
	day  int
}

// fill remembers what the leader chose, or proposes.
func (f *filler) fill(day int, meal trip.Meal, group trip.GroupID) (trip.Cell, bool) {
	f.day = day
	cell := f.trip.Cell(day, meal, group)
	if cell != nil && (len(cell.Dishes) > 0 || cell.Locked) {
		for _, dish := range cell.Dishes {
			f.last[use{group, dish.Recipe}] = day
		}
		return trip.Cell{}, false
	}
	waiting := f.trip.Eaters(day, group)
	proposal := trip.Cell{Day: day, Meal: meal, Group: group}
	for len(waiting) > 0 {
		recipe, served := f.best(meal, group, waiting, proposal.Dishes)
		if recipe == 0 {
			break
		}
		dish := trip.Dish{Recipe: recipe}
		if len(proposal.Dishes) > 0 || len(served) < len(waiting) {
			dish.For = served
		}
		proposal.Dishes = append(proposal.Dishes, dish)
		f.last[use{group, recipe}] = day
		waiting = slices.DeleteFunc(slices.Clone(waiting), func(id trip.MemberID) bool { return slices.Contains(served, id) })
	}
	return proposal, len(proposal.Dishes) > 0
}

// best gives the recipe that serves most of those waiting; among equals the
// one with the best score, then the lowest ID.
func (f *filler) best(meal trip.Meal, group trip.GroupID, waiting []trip.MemberID, chosen []trip.Dish) (trip.RecipeID, []trip.MemberID) {
	var best trip.RecipeID
	var bestServed []trip.MemberID
	bestScore := 0.0
	for i := range f.trip.Recipes {
		recipe := &f.trip.Recipes[i]
		if !suitsMeal(recipe, meal) || f.trip.Days[f.day-1].NoFlame && recipe.NeedsFlame() || alreadyIn(chosen, recipe.ID) {
			continue
		}
		served := f.servable(recipe, waiting)
		score := f.score(recipe, meal, group)
		if len(served) > len(bestServed) || len(served) == len(bestServed) && len(served) > 0 && score > bestScore {
			best, bestServed, bestScore = recipe.ID, served, score
		}
	}
	return best, bestServed
}

func alreadyIn(dishes []trip.Dish, recipe trip.RecipeID) bool {
	return slices.ContainsFunc(dishes, func(d trip.Dish) bool { return d.Recipe == recipe })
}

// servable lists who of those waiting can be served the recipe.
func (f *filler) servable(recipe *trip.Recipe, waiting []trip.MemberID) []trip.MemberID {
	var served []trip.MemberID
	for _, id := range waiting {
		member := f.trip.Member(id)
		possible := !slices.ContainsFunc(recipe.Ingredients, func(ingredient trip.Ingredient) bool {
			return f.option(&ingredient, trip.Dish{}, member) == impossible
		})
		if possible {
			served = append(served, id)
		}
	}
	return served
}

// Weights of the score: a recipe eaten a day ago loses as much as three kcal
// a gram can win, so that variety comes before weight.
const (
	freshDays     = 7
	varietyWeight = 3.0
	gapPenalty    = 20.0
)

// score prefers what was not eaten lately and what gives most energy for its
// weight.
func (f *filler) score(recipe *trip.Recipe, meal trip.Meal, group trip.GroupID) float64 {
	score := f.density(recipe)
	if last, eaten := f.last[use{group, recipe.ID}]; eaten {
		ago := f.day - last
		score -= varietyWeight * max(0, 1-float64(ago-1)/freshDays)
		if meal == trip.Dinner && ago <= f.trip.Settings.RepeatGap {
			score -= gapPenalty
		}
	}
	return score
}

// density is kcal per gram as carried.
func (f *filler) density(recipe *trip.Recipe) float64 {
	kcal, grams := 0.0, 0.0
	for _, ingredient := range recipe.Ingredients {
		if food := f.foods[ingredient.Food]; food != nil {
			kcal += float64(food.Kcal(ingredient.Amount))
			grams += ingredient.Amount.Grams()
		}
	}
	if grams == 0 {
		return 0
	}
	return kcal / grams
}
