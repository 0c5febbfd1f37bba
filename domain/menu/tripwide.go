package menu

import (
	"slices"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// lookAtContact warns where somebody whom traces harm eats beside food that
// holds them: where it is cooked, and more gently where it is only eaten.
func (r *resolver) lookAtContact() {
	for i := range r.trip.Crew {
		member := &r.trip.Crew[i]
		for _, allergy := range member.Allergies {
			if !allergy.Severe {
				continue
			}
			if meals, first := r.mealsBeside(member, allergy.Allergen, true); len(meals) > 0 {
				r.tell(findings.LookAt, "cooked-beside", findings.Place{Day: first.day, Meal: first.meal, Group: first.group, Member: member.ID},
					prose.Say("Traces of %s harm %s, and food that holds or may hold it is cooked at the same stove: %s.", allergy.Allergen, member.Name, prose.List(", ", meals)),
					prose.Say("Pots, spoons and hands carry traces; heat and rinsing do not remove them (common practice, no source)."),
					prose.Say("Cook %s's food first, in a pot, with a spoon and a cloth of its own, or choose dishes without %s for all.", member.Name, allergy.Allergen))
			}
			if meals, first := r.mealsBeside(member, allergy.Allergen, false); len(meals) > 0 {
				r.tell(findings.Note, "eaten-beside", findings.Place{Day: first.day, Meal: first.meal, Group: first.group, Member: member.ID},
					prose.Say("Traces of %s harm %s, and others eat food beside them that holds or may hold it: %s.", allergy.Allergen, member.Name, prose.List(", ", meals)),
					prose.Say("Crumbs and hands carry traces (common practice, no source)."),
					prose.Say("Wash hands after eating, share no knives, bags or boards, and ask %s what they need.", member.Name))
			}
		}
	}
}

// mealsBeside lists the meals at which others are served what is not free of the allergen, cooked or only eaten.
func (r *resolver) mealsBeside(member *trip.Member, allergen trip.Allergen, cooked bool) (meals []prose.Text, first slotKey) {
	for i := range r.slots {
		slot := &r.slots[i]
		if !slices.Contains(slot.Eaters, member.ID) || !r.othersEat(slot, member.ID, allergen, cooked) {
			continue
		}
		if len(meals) == 0 {
			first = slotKey{slot.Day, slot.Meal, slot.Group}
		}
		meals = append(meals, prose.Say("%s of day %d", slot.Meal, slot.Day))
	}
	return meals, first
}

func (r *resolver) othersEat(slot *Slot, member trip.MemberID, allergen trip.Allergen, cooked bool) bool {
	for _, dish := range slot.Dishes {
		if isCooked(r.recipes[dish.Recipe]) != cooked {
			continue
		}
		for _, batch := range dish.Batches {
			for _, serving := range batch.Servings {
				if serving.Member != member && r.holds(serving, allergen) {
					return true
				}
			}
		}
	}
	return false
}

// isCooked tells whether pots and spoons meet the food; a recipe soaked in cold water counts.
func isCooked(recipe *trip.Recipe) bool {
	return recipe.Water > 0 || recipe.PourOff > 0 || recipe.Simmer > 0
}

// holds tells whether some food of the serving is not plainly free of the allergen.
func (r *resolver) holds(serving Serving, allergen trip.Allergen) bool {
	for _, part := range serving.Parts {
		if r.food(part.Food).Presence(allergen) != trip.Free {
			return true
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
				prose.Say("%s is dinner on day %d and again on day %d.", main.Name, before, slot.Day),
				prose.Say("Days between equal dinners that the settings ask for: %d.", r.trip.Settings.RepeatGap), prose.Say("Exchange one of the two with another day."))
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
			prose.Say("The menu decides %s on day %d, but nobody of the group eats that meal from the packs.", cell.Meal, cell.Day),
			prose.Say("Meals are eaten from the packs where the day says so and somebody of the group is there."), prose.Say("Add the meal to the day, or take it out of the menu."))
	}
}
