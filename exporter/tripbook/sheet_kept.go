package tripbook

import "sumpter/domain/trip"

// keptSheet is the packs that the plan stays near to, a row a thing.
func keptSheet() sheet {
	type R = decided[trip.HandOver]
	t := &table[R]{
		name: sheetKept, list: "kept_packs",
		about: "In whose packs things were when the split was last changed by hand: the plan stays near it. Written by the program; usually this sheet is empty.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("From day", "day", func(h *R) *int { return &h.day }, count(), "The number of the day from whose morning on it holds.").must().wide(9),
			col("Bag", "bag", func(h *R) *string { return &h.what.Bag }, line(), helpBag+" Or").wide(34),
			col("Gear", "gear", func(h *R) *trip.GearID { return &h.what.Gear }, orBlank(toGear()), "a thing of sheet Gear; or").wide(26),
			col("Fuel container", "fuel_container", func(h *R) *string { return &h.what.Fuel }, line(), "the key of a container, as the plan shows it.").wide(28),
			col("Was with", "from", func(h *R) *trip.MemberID { return &h.what.From }, orBlank(toMember()), "In whose pack it was. Empty: in none.").wide(22),
			col("Chosen for", "to", func(h *R) *trip.MemberID { return &h.what.To }, orBlank(toMember()), "Into whose pack the leader's choice puts it. Empty: nothing is chosen.").wide(22),
		},
	}
	t.from = func(t *trip.Trip) []R {
		var rows []R
		for i := range t.Kept {
			for _, thing := range t.Kept[i].Things {
				rows = append(rows, R{t.Kept[i].Day, thing})
			}
		}
		return rows
	}
	t.into = func(g *gathered[R]) {
		places := map[int]int{}
		for i, row := range g.rows {
			if g.reading.isFaulty(g.grid, i) {
				continue
			}
			place, known := places[row.day]
			if !known {
				place = len(g.trip.Kept)
				places[row.day] = place
				g.trip.Kept = append(g.trip.Kept, trip.KeptPacks{Day: row.day})
			}
			kept := &g.trip.Kept[place]
			g.comes(i, "kept_packs[%d].things[%d]", place, len(kept.Things))
			kept.Things = append(kept.Things, row.what)
		}
	}
	return t
}
