package tripbook

import (
	"cmp"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func toPoint() codec[trip.PointID] {
	return reference[trip.PointID](func(s *scope) *names { return &s.points })
}

const helpBag = "The key of a bag, as the plan shows it."

func purchaseSheet() sheet {
	type R = trip.Purchase
	t := &table[R]{
		name: sheetPurchases, list: "progress.purchases",
		about: "What has been bought so far, and who paid. One row a purchase: a food, fuel, or anything else the crew shares.",
		fresh: func() R { return R{Count: 1} },
		columns: []column[R]{
			col("Food", "food", func(p *R) *trip.FoodID { return &p.Food }, orBlank(toFood()), "A food of sheet Foods; or").wide(28),
			col("Fuel container", "fuel_container", func(p *R) *string { return &p.Fuel }, line(), "the name of a container of sheet Fuels; or").wide(24),
			col("Other", "other", func(p *R) *string { return &p.Other }, line(), "anything else, in words: car fuel, hut fees.").wide(24),
			col("Net", "net_g", func(p *R) *units.Mass { return &p.Net }, orBlank(exact[units.Mass](foodMass)), "Food: what one package holds."),
			col("Shop", "shop", func(p *R) *string { return &p.Shop }, line(), "Where it was bought.").wide(20),
			col("Count", "count", func(p *R) *int { return &p.Count }, count(), "How many packages. Empty: one.").wide(8),
			col("Paid", "paid", func(p *R) *optional.Value[units.Money] { return &p.Paid }, maybe(money()), "For all of them together. Empty: not noted."),
			col("Paid by", "paid_by", func(p *R) *trip.MemberID { return &p.By }, orBlank(toMember()), "Who paid. Empty: not noted.").wide(22),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.Purchases })
	return t
}

// packedRow is one weighing of a bag; a bag without has one row all the same.
type packedRow struct {
	bag  trip.PackedBag
	food trip.FoodID
	mass optional.Value[units.Mass]
}

func packedSheet() sheet {
	type R = packedRow
	return &table[R]{
		name: sheetPacked, list: "progress.packed",
		about: "The bags of packing night. One row for each food that was weighed into a bag, or one row a bag where no weights were noted.",
		fresh: func() R { return R{} },
		from:  packedRows,
		into:  gatherPacked,
		columns: []column[R]{
			col("Bag", "bag", func(r *R) *string { return &r.bag.Bag }, line(), helpBag).must().wide(34),
			col("Done", "done", func(r *R) *bool { return &r.bag.Done }, yesNo(), "Filled, closed and labelled. Empty: no.").wide(8),
			col("Food", "weighed.food", func(r *R) *trip.FoodID { return &r.food }, orBlank(toFood()), "A food that is in the bag already. Empty: no weights were noted.").wide(28),
			col("On the scale", "weighed.mass_g", func(r *R) *optional.Value[units.Mass] { return &r.mass }, maybe(exact[units.Mass](foodMass)), "What the scale showed of it."),
			col("In box", "in_box", func(r *R) *trip.PointID { return &r.bag.InBox }, orBlank(toPoint()), "The box it was checked into: a point of sheet Resupply; or").wide(22),
			col("In pack", "in_pack", func(r *R) *trip.MemberID { return &r.bag.InPack }, orBlank(toMember()), "the pack: a member of sheet Crew. Both empty: not checked yet.").wide(18),
		},
	}
}

func packedRows(t *trip.Trip) []packedRow {
	var rows []packedRow
	for _, bag := range t.Progress.Packed {
		if len(bag.Weighed) == 0 {
			rows = append(rows, packedRow{bag: bag})
		}
		for _, w := range bag.Weighed {
			rows = append(rows, packedRow{bag, w.Food, optional.Of(w.Mass)})
		}
	}
	return rows
}

func gatherPacked(g *gathered[packedRow]) {
	list := &g.trip.Progress.Packed
	places := map[string]int{}
	for i := range g.rows {
		row := &g.rows[i]
		place, there := places[row.bag.Bag]
		if !there {
			place = len(*list)
			places[row.bag.Bag] = place
			*list = append(*list, row.bag)
			g.comes(i, "progress.packed[%d]", place)
		}
		bag := &(*list)[place]
		bag.Done = bag.Done || row.bag.Done
		bag.InBox, bag.InPack = cmp.Or(bag.InBox, row.bag.InBox), cmp.Or(bag.InPack, row.bag.InPack)
		mass, weighed := row.mass.Get()
		switch {
		case row.food != 0 && !weighed && !g.reading.isFaulty(g.grid, i):
			g.fault(i, "On the scale", "is empty", "what the scale showed of the food")
		case row.food == 0 && weighed && !g.reading.isFaulty(g.grid, i):
			g.fault(i, "Food", "is empty", "the food that was weighed")
		case row.food != 0:
			g.comes(i, "progress.packed[%d].weighed[%d]", place, len(bag.Weighed))
			bag.Weighed = append(bag.Weighed, trip.Weighing{Food: row.food, Mass: mass})
		}
	}
}

func bagEndSheet() sheet {
	type R = trip.BagEnd
	t := &table[R]{
		name: sheetBagEnds, list: "progress.ends",
		about: "What became of bags on the trail. One row a bag that is no longer carried.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Bag", "bag", func(e *R) *string { return &e.Bag }, line(), helpBag).must().wide(34),
			col("End", "end", func(e *R) *trip.End { return &e.End }, word(trip.Ends()), "What became of it.").must().wide(14),
			col("Day", "day", func(e *R) *int { return &e.Day }, count(), "The number of the day.").must().wide(6),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.Ends })
	return t
}

func partGoneSheet() sheet {
	type R = trip.PartGone
	t := &table[R]{
		name: sheetPartsGone, list: "progress.parts_gone",
		about: "Food that is gone out of bags whose rest is still there. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Bag", "bag", func(g *R) *string { return &g.Bag }, line(), helpBag).must().wide(34),
			col("Day", "day", func(g *R) *int { return &g.Day }, count(), "The number of the day on which it happened.").must().wide(6),
			col("End", "end", func(g *R) *trip.End { return &g.End }, word(trip.Ends()), "What became of it.").must().wide(14),
			col("Food", "mass_g", func(g *R) *units.Mass { return &g.Mass }, exact[units.Mass](foodMass), "How much food is gone, wrapping aside.").must(),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.PartsGone })
	return t
}

func fuelNoteSheet() sheet {
	type R = trip.FuelNote
	t := &table[R]{
		name: sheetFuelNotes, list: "progress.fuel_notes",
		about: "What containers of fuel were found to hold on the way. Usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Fuel container", "fuel_container", func(f *R) *string { return &f.Container }, line(), "The key of a container, as the plan shows it.").must().wide(28),
			col("Day", "day", func(f *R) *int { return &f.Day }, count(), "The number of the day on whose morning it was looked at.").must().wide(6),
			col("Left", "left_g", func(f *R) *units.Mass { return &f.Left }, exact[units.Mass](foodMass), "Fuel in it, the container aside. 0: empty, broken or lost."),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.FuelNotes })
	return t
}

func missingBoxSheet() sheet {
	type R = trip.PointID
	t := &table[R]{
		name: sheetMissingBoxes, list: "progress.missing_boxes",
		about: "Resupply points where the box did not come. Usually this sheet is empty.",
		fresh: func() R { return 0 },
		columns: []column[R]{
			col("Resupply point", "resupply_point", func(id *R) *trip.PointID { return id }, toPoint(), "A point of sheet Resupply.").must().wide(26),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Progress.MissingBoxes })
	return t
}
