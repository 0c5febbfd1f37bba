package tables

import (
	"strings"

	"sumpter/domain/trip"
)

// decided is one part of what was decided on a morning.
type decided[T any] struct {
	day  int
	what T
}

// decisions lists a part of what was decided, morning by morning.
func decisions[T any](x *index, of func(*trip.Replan) []T) []decided[T] {
	var rows []decided[T]
	for i := range x.trip.Progress.Replans {
		replan := &x.trip.Progress.Replans[i]
		for _, what := range of(replan) {
			rows = append(rows, decided[T]{replan.Day, what})
		}
	}
	return rows
}

// handOversTable is to be read aloud on the morning: who gives what to whom.
func handOversTable(x *index) Table {
	rows := decisions(x, func(r *trip.Replan) []trip.HandOver { return r.HandOvers })
	return groupBy(fill(Table{
		Name: "hand_overs", Title: "Hand-overs, as decided on the way",
		About: "Read it aloud on the morning of the day. What is not listed stays with who has it.",
		Empty: "Nothing changes hands other than planned.",
	}, []field[decided[trip.HandOver]]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(decided[trip.HandOver]) Value { return open() }},
		{Column{Key: "day", Heading: "Day", Width: 5}, func(r decided[trip.HandOver]) Value { return count(r.day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(r decided[trip.HandOver]) Value { return x.date(r.day) }},
		{Column{Key: "from", Heading: "From", Width: 18}, func(r decided[trip.HandOver]) Value {
			if r.what.From == 0 {
				return words("out of the box")
			}
			return words(x.member(r.what.From))
		}},
		{Column{Key: "to", Heading: "To", Width: 18}, func(r decided[trip.HandOver]) Value { return words(x.member(r.what.To)) }},
		{Column{Key: "item", Heading: "Thing", Role: Code, Width: 24, Wrap: true}, func(r decided[trip.HandOver]) Value { return words(x.itemName(itemOf(r.what))) }},
		{Column{Key: "about", Heading: "What it is", Width: 34, Wrap: true}, func(r decided[trip.HandOver]) Value { return words(x.itemAbout(itemOf(r.what))) }},
	}, rows), rows, func(r decided[trip.HandOver]) int { return r.day })
}

func movedDishesTable(x *index) Table {
	rows := decisions(x, func(r *trip.Replan) []trip.DishMove { return r.Moves })
	return groupBy(fill(Table{
		Name: "moved_dishes", Title: "Meals that moved, as decided on the way",
		About: "These bags are eaten at another meal than their label says. Where a dish moved twice, the later decision holds.",
		Empty: "Every bag is eaten at the meal on its label.",
	}, []field[decided[trip.DishMove]]{
		{Column{Key: "decided", Heading: "Decided on day", Width: 9}, func(r decided[trip.DishMove]) Value { return count(r.day) }},
		{Column{Key: "bags", Heading: "Bags", Role: Code, Width: 22, Wrap: true}, func(r decided[trip.DishMove]) Value { return words(x.dishBags(r.what.Dish)) }},
		{Column{Key: "day", Heading: "Eaten on", Width: 22}, func(r decided[trip.DishMove]) Value {
			if r.what.Day == 0 {
				return words("carried on, for no meal yet")
			}
			return x.date(r.what.Day)
		}},
		{Column{Key: "meal", Heading: "Meal", Width: 12}, func(r decided[trip.DishMove]) Value { return words(orNone(mealName(r.what.Meal), "none")) }},
		{Column{Key: "group", Heading: "Cook group", Width: 18}, func(r decided[trip.DishMove]) Value {
			if r.what.Group == 0 {
				return words("none")
			}
			return words(x.group(r.what.Group))
		}},
	}, rows), rows, func(r decided[trip.DishMove]) int { return r.day })
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
