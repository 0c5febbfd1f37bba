package tables

import (
	"fmt"

	"sumpter/domain/trip"
)

// passedOnTable lists what goes from one pack into another in the course of the
// trip, by giver and taker, to be read out on the morning.
func passedOnTable(x *index) Table {
	var rows []itemRow
	for i := range x.plan.Carry.Stages {
		stage := &x.plan.Carry.Stages[i]
		over := stage.HandedOver()
		for _, giver := range x.trip.Crew {
			for _, taker := range x.trip.Crew {
				for _, item := range over {
					if item.From == giver.ID && item.Carrier == taker.ID {
						rows = append(rows, itemRow{stage, item})
					}
				}
			}
		}
	}
	return groupBy(fill(Table{
		Name: "to_hand_over", Title: "Planned hand-overs",
		About: "What goes into another pack where somebody joins or leaves or food is taken on, by the plan of packing night. Rubbish stays where it is.",
		Empty: "Nothing changes hands.",
	}, []field[itemRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(itemRow) Value { return open() }},
		{Column{Key: "when", Heading: "When", Width: 24, Wrap: true}, func(r itemRow) Value { return words(x.handOverTime(r)) }},
		{Column{Key: "from", Heading: "Out of the pack of", Width: 22}, func(r itemRow) Value { return words(x.member(r.item.From)) }},
		{Column{Key: "to", Heading: "Into the pack of", Width: 22}, func(r itemRow) Value { return words(x.member(r.item.Carrier)) }},
		{Column{Key: "thing", Heading: "Thing", Role: Code, Width: 24, Wrap: true}, func(r itemRow) Value { return words(x.itemName(r.item)) }},
		{Column{Key: "about", Heading: "What it is", Width: 34, Wrap: true}, func(r itemRow) Value { return words(x.itemAbout(r.item)) }},
		{Column{Key: "mass", Heading: "Mass (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 9}, func(r itemRow) Value { return x.food(r.item.Mass) }},
	}, rows), rows, func(r itemRow) passing { return passing{r.stage.FirstDay, r.item.From, r.item.Carrier} })
}

// passing is who gives to whom on a morning.
type passing struct {
	day      int
	from, to trip.MemberID
}

// handOverTime is the morning, or the evening before where the giver has gone by
// then.
func (x *index) handOverTime(r itemRow) string {
	before := r.stage.FirstDay - 1
	switch gone := !x.isThere(r.item.From, r.stage.FirstDay); {
	case gone && !x.isThere(r.item.Carrier, before):
		return fmt.Sprintf("evening of day %d, kept by who stays until day %d", before, r.stage.FirstDay)
	case gone:
		return fmt.Sprintf("evening of day %d", before)
	}
	return fmt.Sprintf("morning of day %d", r.stage.FirstDay)
}

// isThere tells whether a member is there on a day, by the plan's loads.
func (x *index) isThere(id trip.MemberID, day int) bool {
	for i := range x.plan.Carry.Members {
		if m := &x.plan.Carry.Members[i]; m.Member == id && day <= len(m.Days) {
			return m.Days[day-1].Present
		}
	}
	return false
}
