package tables

import (
	"strings"

	"sumpter/domain/trip"
)

// handOverRow is one thing that changes hands on a morning of decision.
type handOverRow struct {
	day  int
	over trip.HandOver
}

// handOversTable is to be read aloud on the morning: who gives what to whom.
func handOversTable(x *index) Table {
	var rows []handOverRow
	for _, replan := range x.trip.Progress.Replans {
		for _, over := range replan.HandOvers {
			rows = append(rows, handOverRow{replan.Day, over})
		}
	}
	return groupBy(fill(Table{
		Name: "hand_overs", Title: "Hand-overs, as decided on the way",
		About: "Read it aloud on the morning of the day. What is not listed stays with who has it.",
		Empty: "Nothing changes hands other than planned.",
	}, []field[handOverRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(handOverRow) Value { return open() }},
		{Column{Key: "day", Heading: "Day", Width: 5}, func(r handOverRow) Value { return count(r.day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(r handOverRow) Value { return x.date(r.day) }},
		{Column{Key: "from", Heading: "From", Width: 18}, func(r handOverRow) Value {
			if r.over.From == 0 {
				return words("out of the box")
			}
			return words(x.member(r.over.From))
		}},
		{Column{Key: "to", Heading: "To", Width: 18}, func(r handOverRow) Value { return words(x.member(r.over.To)) }},
		{Column{Key: "item", Heading: "Thing", Role: Code, Width: 24, Wrap: true}, func(r handOverRow) Value { return words(x.itemName(itemOf(r.over))) }},
		{Column{Key: "about", Heading: "What it is", Width: 34, Wrap: true}, func(r handOverRow) Value { return words(x.itemAbout(itemOf(r.over))) }},
	}, rows), rows, func(r handOverRow) int { return r.day })
}

// moveRow is one dish that is eaten elsewhere.
type moveRow struct {
	day  int
	move trip.DishMove
}

func movedDishesTable(x *index) Table {
	var rows []moveRow
	for _, replan := range x.trip.Progress.Replans {
		for _, move := range replan.Moves {
			rows = append(rows, moveRow{replan.Day, move})
		}
	}
	return groupBy(fill(Table{
		Name: "moved_dishes", Title: "Meals that moved, as decided on the way",
		About: "These bags are eaten at another meal than their label says. Where a dish moved twice, the later decision holds.",
		Empty: "Every bag is eaten at the meal on its label.",
	}, []field[moveRow]{
		{Column{Key: "decided", Heading: "Decided on day", Width: 9}, func(r moveRow) Value { return count(r.day) }},
		{Column{Key: "bags", Heading: "Bags", Role: Code, Width: 22, Wrap: true}, func(r moveRow) Value { return words(x.dishBags(r.move.Dish)) }},
		{Column{Key: "day", Heading: "Eaten on", Width: 22}, func(r moveRow) Value {
			if r.move.Day == 0 {
				return words("carried on, for no meal yet")
			}
			return x.date(r.move.Day)
		}},
		{Column{Key: "meal", Heading: "Meal", Width: 12}, func(r moveRow) Value { return words(orNone(mealName(r.move.Meal), "none")) }},
		{Column{Key: "group", Heading: "Cook group", Width: 18}, func(r moveRow) Value {
			if r.move.Group == 0 {
				return words("none")
			}
			return words(x.group(r.move.Group))
		}},
	}, rows), rows, func(r moveRow) int { return r.day })
}

// dishBags lists the codes of the bags of a dish, or its key where the plan no
// longer has them.
func (x *index) dishBags(dish string) string {
	var codes []string
	for i := range x.plan.Bags.Bags {
		if bag := &x.plan.Bags.Bags[i]; strings.HasPrefix(bag.Key, dish+" ") {
			codes = append(codes, bag.Code)
		}
	}
	return orNone(strings.Join(codes, ", "), dish)
}
