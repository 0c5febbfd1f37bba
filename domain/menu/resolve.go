package menu

import (
	"context"
	"fmt"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
)

// Resolve serves every slot that is eaten from the packs: the leader's dishes,
// or what Fill proposes where the slot is open and the trip wants it filled.
func Resolve(ctx context.Context, t *trip.Trip, n needs.Result) (Result, error) {
	r := &resolver{trip: t, foods: map[trip.FoodID]*trip.Food{}, recipes: map[trip.RecipeID]*trip.Recipe{}, beside: map[contact][]int{}}
	for i := range t.Foods {
		r.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	for i := range t.Recipes {
		r.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	proposed := map[slotKey][]trip.Dish{}
	if t.Settings.FillOpenSlots {
		cells, err := Fill(ctx, t, n)
		if err != nil {
			return Result{}, err
		}
		for _, cell := range cells {
			proposed[slotKey{cell.Day, cell.Meal, cell.Group}] = cell.Dishes
		}
	}
	for day := 1; day <= len(t.Days); day++ {
		if err := ctx.Err(); err != nil {
			return Result{}, err
		}
		for _, meal := range trip.Meals() {
			if t.Days[day-1].Eats(meal) {
				r.sit(day, meal, proposed)
			}
		}
	}
	r.sayBeside()
	return r.result, nil
}

type slotKey struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

type resolver struct {
	trip    *trip.Trip
	foods   map[trip.FoodID]*trip.Food
	recipes map[trip.RecipeID]*trip.Recipe
	beside  map[contact][]int // days on which a harmful food is eaten cold beside a member
	result  Result
}

// sit serves one meal to every group.
func (r *resolver) sit(day int, meal trip.Meal, proposed map[slotKey][]trip.Dish) {
	for _, group := range r.trip.Groups {
		eaters := r.trip.Eaters(day, group.ID)
		if len(eaters) == 0 {
			continue
		}
		slot := Slot{Day: day, Meal: meal, Group: group.ID, Eaters: eaters}
		var dishes []trip.Dish
		if cell := r.trip.Cell(day, meal, group.ID); cell != nil {
			dishes = cell.Dishes
		}
		if len(dishes) == 0 {
			dishes = proposed[slotKey{day, meal, group.ID}]
			slot.Proposed = len(dishes) > 0
		}
		for _, dish := range dishes {
			slot.Dishes = append(slot.Dishes, r.serve(&slot, dish))
		}
		r.reviewSlot(&slot, len(dishes))
		r.result.Slots = append(r.result.Slots, slot)
	}
}

// serve gives a dish to everybody it is for who can eat it.
func (r *resolver) serve(slot *Slot, dish trip.Dish) Dish {
	served := Dish{Recipe: dish.Recipe}
	recipe := r.recipes[dish.Recipe]
	if recipe == nil {
		return served
	}
	var wanted []*trip.Member
	for _, id := range slot.Eaters {
		if len(dish.For) == 0 || slices.Contains(dish.For, id) {
			wanted = append(wanted, r.trip.Member(id))
		}
	}
	choices := r.choose(recipe, dish, wanted)
	var servings []Serving
	for i, member := range wanted {
		if blocked := slices.Index(choices[i], impossible); blocked >= 0 {
			r.cannotServe(slot, recipe, recipe.Ingredients[blocked].Food, member)
			continue
		}
		servings = append(servings, r.serving(slot, recipe, dish, member, choices[i]))
	}
	served.Batches = batchesOf(recipe, servings)
	r.reviewPots(slot, recipe, served.Batches)
	return served
}

// Options for an ingredient: the food itself, a swap by its place from 1 on,
// or none that may be served.
const (
	asWritten  = 0
	impossible = -1
)

// choose finds for every eater and ingredient the first food they may be
// served; liked foods come before disliked ones. A swap for all is taken by
// everybody who can eat it once one eater needs it.
func (r *resolver) choose(recipe *trip.Recipe, dish trip.Dish, eaters []*trip.Member) [][]int {
	choices := make([][]int, len(eaters))
	for i, member := range eaters {
		for k := range recipe.Ingredients {
			choices[i] = append(choices[i], r.option(&recipe.Ingredients[k], dish, member))
		}
	}
	for k := range recipe.Ingredients {
		r.shareSwap(&recipe.Ingredients[k], k, eaters, choices)
	}
	return choices
}

func (r *resolver) option(ingredient *trip.Ingredient, dish trip.Dish, member *trip.Member) int {
	if accepted(dish, member.ID, ingredient.Food) {
		return asWritten
	}
	liked, edible := impossible, impossible
	for option := range 1 + len(ingredient.Swaps) {
		food := optionFood(ingredient, option)
		if food != 0 && r.foods[food] == nil {
			continue
		}
		dangerous, disliked := r.against(member, food)
		switch {
		case dangerous:
		case disliked && edible == impossible:
			edible = option
		case !disliked && liked == impossible:
			liked = option
		}
	}
	if liked != impossible {
		return liked
	}
	return edible
}

// against tells what speaks against a food; leaving out endangers nobody.
func (r *resolver) against(member *trip.Member, food trip.FoodID) (dangerous, disliked bool) {
	if food == 0 {
		return false, false
	}
	for _, objection := range member.Objections(r.foods[food]) {
		if objection.Dangerous() {
			dangerous = true
		} else {
			disliked = true
		}
	}
	return dangerous, disliked
}

func optionFood(ingredient *trip.Ingredient, option int) trip.FoodID {
	if option == asWritten {
		return ingredient.Food
	}
	return ingredient.Swaps[option-1].Food
}

// shareSwap lets all take a swap that is meant for all, if all can eat it.
func (r *resolver) shareSwap(ingredient *trip.Ingredient, k int, eaters []*trip.Member, choices [][]int) {
	for i := range eaters {
		option := choices[i][k]
		if option <= asWritten || !ingredient.Swaps[option-1].ForAll {
			continue
		}
		food := ingredient.Swaps[option-1].Food
		everybody := true
		for _, member := range eaters {
			dangerous, _ := r.against(member, food)
			everybody = everybody && !dangerous
		}
		if everybody {
			for j := range eaters {
				choices[j][k] = option
			}
			return
		}
	}
}

func accepted(dish trip.Dish, member trip.MemberID, food trip.FoodID) bool {
	return slices.ContainsFunc(dish.Accepted, func(a trip.Acceptance) bool { return a.Member == member && a.Food == food })
}

// serving writes down what one eater gets.
func (r *resolver) serving(slot *Slot, recipe *trip.Recipe, dish trip.Dish, member *trip.Member, options []int) Serving {
	serving := Serving{Member: member.ID}
	for k, option := range options {
		food := optionFood(&recipe.Ingredients[k], option)
		if food == 0 {
			continue
		}
		part := Part{Ingredient: k, Food: food, Swapped: option != asWritten}
		if dangerous, disliked := r.against(member, food); dangerous {
			part.Accepted = true
			r.takenOn(slot, recipe, dish, r.foods[food], member)
		} else if disliked {
			r.disliked(slot, recipe, r.foods[food], member)
		}
		serving.Parts = append(serving.Parts, part)
	}
	return serving
}

// batchesOf puts eaters whose pot holds the same foods together, the largest
// batch first.
func batchesOf(recipe *trip.Recipe, servings []Serving) []Batch {
	var batches []Batch
	for _, serving := range servings {
		at := slices.IndexFunc(batches, func(b Batch) bool { return samePot(recipe, b.Servings[0], serving) })
		if at < 0 {
			batches = append(batches, Batch{})
			at = len(batches) - 1
		}
		batches[at].Servings = append(batches[at].Servings, serving)
	}
	slices.SortStableFunc(batches, func(a, b Batch) int { return len(b.Servings) - len(a.Servings) })
	return batches
}

func samePot(recipe *trip.Recipe, a, b Serving) bool {
	return slices.Equal(potFoods(recipe, a), potFoods(recipe, b))
}

func potFoods(recipe *trip.Recipe, s Serving) []trip.FoodID {
	var foods []trip.FoodID
	for _, part := range s.Parts {
		if recipe.Ingredients[part.Ingredient].Place == trip.InPot {
			foods = append(foods, part.Food)
		}
	}
	return foods
}

func (r *resolver) find(severity findings.Severity, code string, place findings.Place, what, why, remedy string) {
	r.result.Findings = append(r.result.Findings, findings.Finding{
		Severity: severity, Stage: findings.Menu, Code: code, Place: place, What: what, Why: why, Remedy: remedy,
	})
}

// when writes a slot as a person would: "Dinner on day 4".
func when(slot *Slot) string {
	return fmt.Sprintf("%s on day %d", titleOf(slot.Meal), slot.Day)
}

func titleOf(meal trip.Meal) string {
	switch meal {
	case trip.Breakfast:
		return "Breakfast"
	case trip.Lunch:
		return "Lunch"
	case trip.Dinner:
		return "Dinner"
	default:
		return "The snack share"
	}
}
