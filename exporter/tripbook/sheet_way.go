package tripbook

import "sumpter/domain/trip"

func crewChangeSheet() sheet {
	type R = trip.CrewChange
	t := &table[R]{
		name: sheetCrewChanges, list: "progress.crew_changes",
		about: "Who left or joined on the way, other than planned. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Member", "member", func(c *R) *trip.MemberID { return &c.Member }, toMember(), "Somebody of sheet Crew.").must().wide(22),
			col("Day", "day", func(c *R) *int { return &c.Day }, count(), "The number of the day on whose morning it holds first.").must().wide(6),
			col("There", "there", func(c *R) *bool { return &c.There }, yesNo(), "Yes: joined. No, or empty: left.").wide(8),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.CrewChanges })
	return t
}

func replanSheet() sheet {
	type R = trip.Replan
	t := &table[R]{
		name: sheetReplans, list: "progress.replans",
		about: "Mornings on which it was decided to go on other than planned. What was decided stands on the next two sheets. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Day", "day", func(r *R) *int { return &r.Day }, count(), "The number of the day. One row a day.").must().wide(6),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.Replans })
	return t
}

// decided is a part of what was decided on a morning.
type decided[T any] struct {
	day  int
	what T
}

func decidedOn[T any]() column[decided[T]] {
	return col("Decided on", "replan", func(d *decided[T]) *int { return &d.day }, count(), "The number of a day of sheet Decisions.").must().wide(9)
}

// decidedList is the from and into of a sheet whose rows are parts of what was
// decided.
func decidedList[T any](name string, list func(*trip.Replan) *[]T) (func(*trip.Trip) []decided[T], func(*gathered[decided[T]])) {
	from := func(t *trip.Trip) []decided[T] {
		var rows []decided[T]
		for i := range t.Progress.Replans {
			r := &t.Progress.Replans[i]
			for _, what := range *list(r) {
				rows = append(rows, decided[T]{r.Day, what})
			}
		}
		return rows
	}
	into := func(g *gathered[decided[T]]) {
		places := placesOf(g.trip.Progress.Replans, func(r *trip.Replan) int { return r.Day })
		for i, row := range g.rows {
			if g.reading.isFaulty(g.grid, i) {
				continue
			}
			place, ok := places[row.day]
			if !ok {
				g.fault(i, "Decided on", "is no morning of decision", "a day of sheet Decisions")
				continue
			}
			parts := list(&g.trip.Progress.Replans[place])
			g.comes(i, "progress.replans[%d].%s[%d]", place, name, len(*parts))
			*parts = append(*parts, row.what)
		}
	}
	return from, into
}

func dishMoveSheet() sheet {
	type R = decided[trip.DishMove]
	t := &table[R]{
		name: sheetDishMoves, list: "progress.replans.moves",
		about: "What is eaten at another meal than it was packed for. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			decidedOn[trip.DishMove](),
			col("Dish", "dish", func(m *R) *string { return &m.what.Dish }, line(), "The key of the dish: what the keys of its bags begin with.").must().wide(30),
			col("Day", "day", func(m *R) *int { return &m.what.Day }, orBlank(count()), "The number of the day on which it is eaten. Empty: carried on, for no meal yet.").wide(6),
			col("Meal", "meal", func(m *R) *trip.Meal { return &m.what.Meal }, orBlank(word(trip.Meals())), "The meal at which it is eaten.").wide(12),
			col("Cook group", "group", func(m *R) *trip.GroupID { return &m.what.Group }, orBlank(toGroup()), "Who eat it.").wide(20),
		},
	}
	t.from, t.into = decidedList("moves", func(r *trip.Replan) *[]trip.DishMove { return &r.Moves })
	return t
}

func handOverSheet() sheet {
	type R = decided[trip.HandOver]
	t := &table[R]{
		name: sheetHandOvers, list: "progress.replans.hand_overs",
		about: "What changes hands on a morning of decision. One row a bag, piece of gear or fuel container. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			decidedOn[trip.HandOver](),
			col("Bag", "bag", func(h *R) *string { return &h.what.Bag }, line(), helpBag+" Or").wide(34),
			col("Gear", "gear", func(h *R) *trip.GearID { return &h.what.Gear }, orBlank(toGear()), "a thing of sheet Gear; or").wide(26),
			col("Fuel container", "fuel_container", func(h *R) *string { return &h.what.Fuel }, line(), "the key of a container, as the plan shows it.").wide(28),
			col("From", "from", func(h *R) *trip.MemberID { return &h.what.From }, orBlank(toMember()), "Who had it. Empty: it comes out of a box.").wide(22),
			col("To", "to", func(h *R) *trip.MemberID { return &h.what.To }, toMember(), "Who has it now.").must().wide(22),
		},
	}
	t.from, t.into = decidedList("hand_overs", func(r *trip.Replan) *[]trip.HandOver { return &r.HandOvers })
	return t
}

func givenBagSheet() sheet {
	type R = decided[trip.GivenBag]
	t := &table[R]{
		name: sheetGivenBags, list: "progress.replans.given",
		about: "Bags packed for one eater that another eats from a morning of decision on. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			decidedOn[trip.GivenBag](),
			col("Bag", "bag", func(g *R) *string { return &g.what.Bag }, line(), helpBag).must().wide(34),
			col("To", "to", func(g *R) *trip.MemberID { return &g.what.To }, toMember(), "Who eats it now.").must().wide(22),
		},
	}
	t.from, t.into = decidedList("given", func(r *trip.Replan) *[]trip.GivenBag { return &r.Given })
	return t
}
