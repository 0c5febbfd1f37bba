package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/trail"
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

// eatenElse is a dish or a bag that is eaten otherwise than its label says.
type eatenElse struct {
	bags  string // codes
	on    Value
	meal  string
	group string
	eater string
}

func movedDishesTable(x *index) Table {
	var rows []decided[eatenElse]
	for i := range x.trip.Progress.Replans {
		replan := &x.trip.Progress.Replans[i]
		for _, move := range replan.Moves {
			rows = append(rows, decided[eatenElse]{replan.Day, x.moved(move)})
		}
		for _, given := range replan.Given {
			rows = append(rows, decided[eatenElse]{replan.Day, x.given(given)})
		}
	}
	text := func(of func(*eatenElse) string) func(decided[eatenElse]) Value {
		return func(r decided[eatenElse]) Value { return words(of(&r.what)) }
	}
	return groupBy(fill(Table{
		Name: "moved_dishes", Title: "Meals that moved and bags that were given away, as decided on the way",
		About: "These bags are eaten at another meal, or by somebody else, than their label says. Where one moved twice, the later decision holds.",
		Empty: "Every bag is eaten at the meal and by those on its label.",
	}, []field[decided[eatenElse]]{
		{Column{Key: "decided", Heading: "Decided on day", Width: 9}, func(r decided[eatenElse]) Value { return count(r.day) }},
		{Column{Key: "bags", Heading: "Bags", Role: Code, Width: 22, Wrap: true}, text(func(e *eatenElse) string { return e.bags })},
		{Column{Key: "day", Heading: "Eaten on", Width: 22}, func(r decided[eatenElse]) Value { return r.what.on }},
		{Column{Key: "meal", Heading: "Meal", Width: 12}, text(func(e *eatenElse) string { return e.meal })},
		{Column{Key: "group", Heading: "Cook group", Width: 18}, text(func(e *eatenElse) string { return e.group })},
		{Column{Key: "for", Heading: "For", Width: 30, Wrap: true}, text(func(e *eatenElse) string { return e.eater })},
	}, rows), rows, func(r decided[eatenElse]) int { return r.day })
}

func (x *index) moved(move trip.DishMove) eatenElse {
	row := eatenElse{bags: x.dishBags(move.Dish), on: x.date(move.Day), meal: orNone(mealName(move.Meal), "none"), group: "none", eater: "all of the cook group"}
	if move.Day == 0 {
		row.on, row.eater = words("carried on, for no meal yet"), "nobody yet"
	}
	if move.Group != 0 {
		row.group = x.group(move.Group)
	}
	return row
}

// given tells of an own bag that somebody else eats from, whose cook group may
// be another.
func (x *index) given(given trip.GivenBag) eatenElse {
	bag := x.bag(given.Bag)
	row := eatenElse{bags: bag.Code, on: words("as on its label"), meal: bagMeal(bag), group: "none", eater: x.member(given.To)}
	if bag.Member != 0 {
		row.eater = fmt.Sprintf("%s, packed for %s", x.member(given.To), x.member(bag.Member))
	}
	if taker := x.Member(given.To); taker != nil {
		row.group = x.group(taker.Group)
	}
	return row
}

// happenedTable tells what the leader noted and decided on the way.
func happenedTable(x *index) Table {
	rows := trail.Facts(x.plan, &x.trip.Progress)
	return groupBy(fill(Table{
		Name: "on_the_way", Title: "What happened on the way, other than packed",
		About: "What was found, lost, thrown away, given away or moved, and who came and went. Plans and lists beside this one are those of packing night.",
		Empty: "Nothing is other than packed.",
	}, []field[trail.Fact]{
		{Column{Key: "day", Heading: "Day", Width: 5}, func(f trail.Fact) Value { return count(f.Day) }},
		{Column{Key: "date", Heading: "Date", Width: 15}, func(f trail.Fact) Value { return x.date(f.Day) }},
		{Column{Key: "what", Heading: "What", Width: 70, Wrap: true}, func(f trail.Fact) Value { return words(x.text(f.What)) }},
	}, rows), rows, func(f trail.Fact) int { return f.Day })
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
