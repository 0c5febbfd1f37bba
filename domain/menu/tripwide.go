package menu

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// lookAtContact warns where somebody whom traces harm eats beside food that holds them.
func (r *resolver) lookAtContact() {
	for i := range r.trip.Crew {
		member := &r.trip.Crew[i]
		for _, allergy := range member.Allergies {
			if !allergy.Severe {
				continue
			}
			meals, first := r.mealsBeside(member, allergy.Allergen)
			if len(meals) == 0 {
				continue
			}
			r.tell(findings.LookAt, "contact", findings.Place{Day: first.day, Meal: first.meal, Group: first.group, Member: member.ID},
				fmt.Sprintf("Traces of %s harm %s, and others at the same stove eat food that holds or may hold it: %s.", allergy.Allergen, member.Name, strings.Join(meals, ", ")),
				"Pots, spoons and hands carry traces.",
				fmt.Sprintf("Make %s's food first, in a pot and with a spoon of its own, wash hands before; or serve everybody food that is free of %s.", member.Name, allergy.Allergen))
		}
	}
}

// mealsBeside lists the cooked meals at which others are served what is not free of the allergen.
func (r *resolver) mealsBeside(member *trip.Member, allergen trip.Allergen) (meals []string, first slotKey) {
	for i := range r.slots {
		slot := &r.slots[i]
		if slot.Meal == trip.Snack || !slices.Contains(slot.Eaters, member.ID) || !r.othersEat(slot, member.ID, allergen) {
			continue
		}
		if len(meals) == 0 {
			first = slotKey{slot.Day, slot.Meal, slot.Group}
		}
		meals = append(meals, fmt.Sprintf("%s of day %d", slot.Meal, slot.Day))
	}
	return meals, first
}

func (r *resolver) othersEat(slot *Slot, member trip.MemberID, allergen trip.Allergen) bool {
	for _, dish := range slot.Dishes {
		for _, batch := range dish.Batches {
			for _, serving := range batch.Servings {
				if serving.Member == member {
					continue
				}
				for _, part := range serving.Parts {
					if food := r.food(part.Food); food.Presence(allergen) != trip.Free {
						return true
					}
				}
			}
		}
	}
	return false
}

// lookAtRepeats notes dinners that come again too soon.
func (r *resolver) lookAtRepeats() {
	type dinner struct {
		group  trip.GroupID
		recipe trip.RecipeID
	}
	last := map[dinner]int{}
	for i := range r.slots {
		slot := &r.slots[i]
		if slot.Meal != trip.Dinner || len(slot.Dishes) == 0 {
			continue
		}
		main := r.mainDish(slot)
		served := dinner{slot.Group, main.ID}
		if before, ok := last[served]; ok && slot.Day-before <= r.trip.Settings.RepeatGap {
			r.tell(findings.Note, "dinner-again", findings.Place{Day: slot.Day, Meal: slot.Meal, Group: slot.Group, Recipe: main.ID},
				fmt.Sprintf("%s is dinner on day %d and again on day %d.", main.Name, before, slot.Day),
				fmt.Sprintf("The settings ask for %d days between equal dinners.", r.trip.Settings.RepeatGap), "Exchange one of the two with another day.")
		}
		last[served] = slot.Day
	}
}

// mainDish is the dish of the slot with most energy.
func (r *resolver) mainDish(slot *Slot) *trip.Recipe {
	main, most := r.recipes[slot.Dishes[0].Recipe], -1.0
	for _, dish := range slot.Dishes {
		recipe := r.recipes[dish.Recipe]
		kcal := 0.0
		for _, ingredient := range recipe.Ingredients {
			if food := r.food(ingredient.Food); food != nil {
				kcal += float64(food.Kcal(ingredient.Amount))
			}
		}
		if kcal > most {
			main, most = recipe, kcal
		}
	}
	return main
}

// lookAtUnused notes cells for meals that nobody eats from the packs.
func (r *resolver) lookAtUnused() {
	used := map[slotKey]bool{}
	for i := range r.slots {
		used[slotKey{r.slots[i].Day, r.slots[i].Meal, r.slots[i].Group}] = true
	}
	for i := range r.trip.Menu {
		cell := &r.trip.Menu[i]
		if len(cell.Dishes) == 0 || used[keyOf(cell)] {
			continue
		}
		r.tell(findings.Note, "cell-unused", keyOf(cell).place(),
			fmt.Sprintf("The menu decides %s on day %d, but nobody of the group eats that meal from the packs.", cell.Meal, cell.Day),
			"Meals are eaten from the packs where the day says so and somebody of the group is there.", "Add the meal to the day, or take it out of the menu.")
	}
}
