package tripbook

import (
	"sumpter/domain/trip"
)

// menuRow is one dish of a cell, or a cell without dishes.
type menuRow struct {
	cell trip.Cell // without its dishes
	dish trip.Dish // Recipe 0: none
}

// slot is what a cell belongs to.
type slot struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

func slotOf(c *trip.Cell) slot { return slot{c.Day, c.Meal, c.Group} }

func menuSheet() sheet {
	type R = menuRow
	return &table[R]{
		name: sheetMenu, list: "menu",
		about: "What is served. One row a dish; a meal may have several. What is left out is open: the program fills it if the trip says so.",
		fresh: func() R { return R{} },
		from: func(t *trip.Trip) []R {
			var rows []R
			for _, cell := range t.Menu {
				dishes := cell.Dishes
				cell.Dishes = nil
				if len(dishes) == 0 {
					rows = append(rows, R{cell: cell})
				}
				for _, dish := range dishes {
					rows = append(rows, R{cell, dish})
				}
			}
			return rows
		},
		into: gatherMenu,
		columns: []column[R]{
			col("Day", "day", func(r *R) *int { return &r.cell.Day }, count(), "Its number: 1 for the first.").must().wide(6),
			col("Meal", "meal", func(r *R) *trip.Meal { return &r.cell.Meal }, word(trip.Meals()), "Which meal of the day.").must().wide(11),
			col("Cook group", "group", func(r *R) *trip.GroupID { return &r.cell.Group }, toGroup(), "Who eats it.").must(),
			col("Recipe", "dishes.recipe", func(r *R) *trip.RecipeID { return &r.dish.Recipe }, orBlank(toRecipe()), "A recipe of sheet Recipes. Empty: nothing yet.").wide(30),
			col("Only for", "dishes.for", func(r *R) *[]trip.MemberID { return &r.dish.For }, listOf(toMember(), "members"), "Members of the crew, with ; between. Empty: everybody of the group.").wide(26),
			col("Locked", "locked", func(r *R) *bool { return &r.cell.Locked }, yesNo(), "Filling the menu leaves this meal alone, even when it is empty.").wide(8),
		},
	}
}

func gatherMenu(g *gathered[menuRow]) {
	places := map[slot]int{}
	for i := range g.rows {
		row := &g.rows[i]
		place, there := places[slotOf(&row.cell)]
		if !there {
			place = len(g.trip.Menu)
			places[slotOf(&row.cell)] = place
			g.trip.Menu = append(g.trip.Menu, row.cell)
			g.comes(i, "menu[%d]", place)
		}
		cell := &g.trip.Menu[place]
		cell.Locked = cell.Locked || row.cell.Locked
		if row.dish.Recipe != 0 {
			g.comes(i, "menu[%d].dishes[%d]", place, len(cell.Dishes))
			cell.Dishes = append(cell.Dishes, row.dish)
		}
	}
}

// acceptedRow is a danger the leader took on in one dish.
type acceptedRow struct {
	slot   slot
	recipe trip.RecipeID
	number int // which of several dishes of one recipe in the meal, from 1; 0: the first
	trip.Acceptance
}

func acceptedSheet() sheet {
	type R = acceptedRow
	return &table[R]{
		name: sheetAccepted, list: "accepted",
		about: "Dangers the leader took on by hand: a member is served a food in this very dish though an allergy or diet speaks against it. Each stays a finding. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		from:  acceptedRows,
		into:  gatherAccepted,
		columns: []column[R]{
			col("Day", "day", func(r *R) *int { return &r.slot.day }, count(), "Its number.").must().wide(6),
			col("Meal", "meal", func(r *R) *trip.Meal { return &r.slot.meal }, word(trip.Meals()), "Which meal of the day.").must().wide(11),
			col("Cook group", "group", func(r *R) *trip.GroupID { return &r.slot.group }, toGroup(), "Whose meal it is.").must(),
			col("Recipe", "recipe", func(r *R) *trip.RecipeID { return &r.recipe }, toRecipe(), "A recipe that stands on sheet Menu for this meal.").must().wide(30),
			col("Member", "member", func(r *R) *trip.MemberID { return &r.Member }, toMember(), "Who is served it.").must().wide(22),
			col("Food", "food", func(r *R) *trip.FoodID { return &r.Food }, toFood(), "The food that something speaks against.").must().wide(28),
			col("Reason", "reason", func(r *R) *string { return &r.Reason }, notes(), "Why it may be served: the label was read, the member was asked.").must(),
			col("Dish number", "dish", func(r *R) *int { return &r.number }, orBlank(count()), "Only where the recipe stands in the meal more than once: which of them.").wide(8),
		},
	}
}

func acceptedRows(t *trip.Trip) []acceptedRow {
	var rows []acceptedRow
	for i := range t.Menu {
		cell := &t.Menu[i]
		seen := map[trip.RecipeID]int{}
		for _, dish := range cell.Dishes {
			seen[dish.Recipe]++
			number := seen[dish.Recipe]
			if number == 1 {
				number = 0
			}
			for _, accepted := range dish.Accepted {
				rows = append(rows, acceptedRow{slotOf(cell), dish.Recipe, number, accepted})
			}
		}
	}
	return rows
}

func gatherAccepted(g *gathered[acceptedRow]) {
	places := placesOf(g.trip.Menu, slotOf)
	for i := range g.rows {
		row := &g.rows[i]
		if g.reading.isFaulty(g.grid, i) {
			continue
		}
		place, ok := places[row.slot]
		dish := -1
		if ok {
			dish = dishOf(&g.trip.Menu[place], row.recipe, max(1, row.number))
		}
		if dish < 0 {
			g.fault(i, "Recipe", "is not served at this meal", "a recipe that sheet Menu has for this day, meal and cook group")
			continue
		}
		served := &g.trip.Menu[place].Dishes[dish]
		g.comes(i, "menu[%d].dishes[%d].accepted[%d]", place, dish, len(served.Accepted))
		served.Accepted = append(served.Accepted, row.Acceptance)
	}
}

// dishOf finds the place of the number-th dish of a recipe in a cell, or -1.
func dishOf(cell *trip.Cell, recipe trip.RecipeID, number int) int {
	for i := range cell.Dishes {
		if cell.Dishes[i].Recipe == recipe {
			if number--; number == 0 {
				return i
			}
		}
	}
	return -1
}
