package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/menu"
	"sumpter/domain/trip"
)

// menuRow is a day of one cook group.
type menuRow struct {
	day   int
	group trip.GroupID
}

func menuTable(x *index) Table {
	slots := map[menuRow]map[trip.Meal]*menu.Slot{}
	for i := range x.plan.Menu.Slots {
		slot := &x.plan.Menu.Slots[i]
		row := menuRow{slot.Day, slot.Group}
		if slots[row] == nil {
			slots[row] = map[trip.Meal]*menu.Slot{}
		}
		slots[row][slot.Meal] = slot
	}
	var rows []menuRow
	for day := 1; day <= len(x.trip.Days); day++ {
		for _, group := range x.trip.Groups {
			if row := (menuRow{day, group.ID}); slots[row] != nil {
				rows = append(rows, row)
			}
		}
	}
	fields := []field[menuRow]{
		{Column{Key: "day", Heading: "Day", Width: 5}, func(r menuRow) Value { return count(r.day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(r menuRow) Value { return x.date(r.day) }},
		{Column{Key: "where", Heading: "Where", Width: 24, Wrap: true}, func(r menuRow) Value { return words(x.day(r.day).Name) }},
		{Column{Key: "group", Heading: "Cook group", Width: 13, Wrap: true}, func(r menuRow) Value { return words(x.group(r.group)) }},
	}
	for _, meal := range trip.Meals() {
		fields = append(fields, field[menuRow]{
			Column{Key: string(meal), Heading: strings.ToUpper(mealName(meal)[:1]) + mealName(meal)[1:], Width: 27, Wrap: true},
			func(r menuRow) Value { return words(x.slotWords(r, meal, slots[r][meal])) },
		})
	}
	fields = append(fields, field[menuRow]{
		Column{Key: "notes", Heading: "Mind", Width: 18, Wrap: true},
		func(r menuRow) Value { return words(x.dayCautions(r.day)) },
	})
	return groupBy(fill(Table{
		Name: "menu", Title: "Menu by day",
		About: "What each cook group eats. (filled) marks what the program put into an open slot; names in brackets have a pot or bag of their own.",
		Empty: "Nothing is on the menu yet.",
	}, fields, rows), rows, func(r menuRow) int { return r.day })
}

func (x *index) slotWords(r menuRow, meal trip.Meal, slot *menu.Slot) string {
	if slot == nil {
		if x.day(r.day).Eats(meal) {
			return "nobody of this group eats"
		}
		return "not from the packs"
	}
	var lines []string
	for _, dish := range slot.Dishes {
		line := x.recipe(dish.Recipe)
		if apart := x.ownPots(dish); apart != "" {
			line += " (" + apart + ")"
		}
		lines = append(lines, line)
	}
	if len(lines) == 0 {
		return "open: nothing chosen"
	}
	if slot.Proposed {
		lines[len(lines)-1] += " (filled)"
	}
	return strings.Join(lines, "\n")
}

// ownPots names the eaters of every batch but the largest, which comes first.
func (x *index) ownPots(dish menu.Dish) string {
	var pots []string
	for i, batch := range dish.Batches {
		if i == 0 {
			continue
		}
		pots = append(pots, x.memberNames(eatersOf(batch)))
	}
	if len(pots) == 0 {
		return ""
	}
	return "apart: " + strings.Join(pots, "; ")
}

func eatersOf(batch menu.Batch) []trip.MemberID {
	eaters := make([]trip.MemberID, len(batch.Servings))
	for i, serving := range batch.Servings {
		eaters[i] = serving.Member
	}
	return eaters
}

func (x *index) dayCautions(number int) string {
	day := x.day(number)
	var texts []string
	if day.NoFlame {
		texts = append(texts, "no flame allowed")
	}
	if day.DryCamp {
		texts = append(texts, "dry camp: carry water in")
	}
	if day.SnowWater {
		texts = append(texts, "water from snow")
	}
	return strings.Join(texts, "\n")
}

// dishRow is one pot of one dish.
type dishRow struct {
	slot  *menu.Slot
	dish  menu.Dish
	batch menu.Batch
	pot   int
}

func dishesTable(x *index) Table {
	var rows []dishRow
	for i := range x.plan.Menu.Slots {
		slot := &x.plan.Menu.Slots[i]
		for _, dish := range slot.Dishes {
			for j, batch := range dish.Batches {
				rows = append(rows, dishRow{slot, dish, batch, j + 1})
			}
		}
	}
	return groupBy(fill(Table{
		Name: "dishes", Title: "Dishes and who eats them",
		About: "A row for each pot of each dish. Swapped foods are for that pot only.",
		Empty: "Nothing is on the menu yet.",
	}, []field[dishRow]{
		{Column{Key: "day", Heading: "Day", Width: 5}, func(r dishRow) Value { return count(r.slot.Day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(r dishRow) Value { return x.date(r.slot.Day) }},
		{Column{Key: "meal", Heading: "Meal", Width: 10}, func(r dishRow) Value { return words(mealName(r.slot.Meal)) }},
		{Column{Key: "group", Heading: "Cook group", Width: 14}, func(r dishRow) Value { return words(x.group(r.slot.Group)) }},
		{Column{Key: "dish", Heading: "Dish", Width: 28, Wrap: true}, func(r dishRow) Value { return words(x.recipe(r.dish.Recipe)) }},
		{Column{Key: "pot", Heading: "Pot", Width: 5}, func(r dishRow) Value { return count(r.pot) }},
		{Column{Key: "eaters", Heading: "Eaters", Width: 34, Wrap: true}, func(r dishRow) Value { return words(x.memberNames(eatersOf(r.batch))) }},
		{Column{Key: "swaps", Heading: "Swapped or accepted", Width: 40, Wrap: true}, func(r dishRow) Value { return words(x.swapWords(r)) }},
		{Column{Key: "chosen", Heading: "Chosen by", Width: 11}, func(r dishRow) Value {
			if r.slot.Proposed {
				return words("program")
			}
			return words("leader")
		}},
	}, rows), rows, func(r dishRow) int { return r.slot.Day })
}

// swapWords tells what is different from the recipe as written, and what the
// leader took on by hand.
func (x *index) swapWords(r dishRow) string {
	var texts []string
	said := map[string]bool{}
	for _, serving := range r.batch.Servings {
		for _, part := range serving.Parts {
			text := ""
			switch {
			case part.Accepted:
				text = fmt.Sprintf("accepted by hand: %s for %s", x.foodName(part.Food), x.member(serving.Member))
			case part.Swapped:
				text = fmt.Sprintf("%s instead of %s", x.foodName(part.Food), x.ingredient(r.dish.Recipe, part.Ingredient))
			}
			if text != "" && !said[text] {
				said[text] = true
				texts = append(texts, text)
			}
		}
	}
	return orNone(strings.Join(texts, "\n"), "none")
}

func (x *index) ingredient(id trip.RecipeID, place int) string {
	recipe := x.Recipe(id)
	if recipe == nil || place < 0 || place >= len(recipe.Ingredients) {
		return Unknown
	}
	return x.foodName(recipe.Ingredients[place].Food)
}
