package triptest

import (
	"fmt"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// progress notes some of what is done of an odd trip; plausible ones have not
// begun.
func (b *builder) progress() {
	if !b.odd || b.chance(60) {
		return
	}
	p := &b.trip.Progress
	for range b.pick(0, 3) {
		p.Purchases = append(p.Purchases, b.purchase())
	}
	for i := range b.pick(0, 3) {
		bag := trip.PackedBag{Bag: bagKey(i), Done: b.chance(50)}
		if b.chance(50) {
			bag.Weighed = []trip.Weighing{{Food: oneOf(b, b.trip.Foods...).ID, Mass: units.Mass(b.pick(0, 900_000))}}
		}
		if b.chance(30) {
			bag.InPack = oneOf(b, b.trip.Crew...).ID
		} else if len(b.trip.Points) > 0 && b.chance(30) {
			bag.InBox = oneOf(b, b.trip.Points...).ID
		}
		p.Packed = append(p.Packed, bag)
	}
	for i := range b.pick(0, 3) {
		p.Ends = append(p.Ends, trip.BagEnd{Bag: bagKey(i), End: oneOf(b, trip.Ends()...), Day: b.pick(1, len(b.trip.Days))})
	}
	for i := range b.pick(0, 3) {
		p.PartsGone = append(p.PartsGone, trip.PartGone{Bag: bagKey(i), End: oneOf(b, trip.Ends()...), Day: b.pick(1, len(b.trip.Days)), Mass: units.Mass(b.pick(1, 900_000))})
		p.FuelNotes = append(p.FuelNotes, trip.FuelNote{Container: "leg1 group1 gas mix " + fmt.Sprint(i+1), Day: b.pick(1, len(b.trip.Days)), Left: units.Mass(b.pick(0, 230_000))})
	}
	b.way()
	turn(b, p.PartsGone)
	turn(b, p.FuelNotes)
	turn(b, p.Packed)
	turn(b, p.Ends)
	for i := range b.trip.Points {
		if b.chance(30) {
			p.MissingBoxes = append(p.MissingBoxes, b.trip.Points[i].ID)
		}
	}
}

func bagKey(place int) string { return fmt.Sprintf("d%d dinner g1 r1 b1 pot 1", place+1) }

func (b *builder) purchase() trip.Purchase {
	bought := trip.Purchase{Count: b.pick(1, 20), Paid: unsure(b, units.Money(b.pick(0, 5000)))}
	if b.chance(70) {
		bought.By = oneOf(b, b.trip.Crew...).ID
	}
	switch food := oneOf(b, b.trip.Foods...); {
	case b.chance(60):
		bought.Food, bought.Net, bought.Shop = food.ID, units.Mass(b.pick(1, 900))*units.Gram, oneOf(b, "", "village shop")
	case b.chance(50):
		bought.Fuel = "Can 230"
	default:
		bought.Other, bought.Paid = "car fuel", optional.Of(units.Money(b.pick(0, 9000)))
	}
	return bought
}

func dishKey(place int) string { return fmt.Sprintf("d%d dinner g1 r1 b1", place+1) }

// way notes who left and joined, and what was decided.
func (b *builder) way() {
	t, p := b.trip, &b.trip.Progress
	for i := range t.Crew {
		if b.chance(30) {
			p.CrewChanges = append(p.CrewChanges, trip.CrewChange{Member: t.Crew[i].ID, Day: b.pick(1, len(t.Days)), There: b.chance(40)})
		}
	}
	for day := 1; day <= len(t.Days); day++ {
		if b.chance(30) {
			p.Replans = append(p.Replans, b.replan(day))
		}
	}
	turn(b, p.CrewChanges)
	turn(b, p.Replans)
}

// kept notes in whose packs some things are to stay.
func (b *builder) kept() {
	t := b.trip
	for day := 1; day <= len(t.Days); day++ {
		if !b.rarely() {
			continue
		}
		packs := trip.KeptPacks{Day: day, Things: b.handOvers()}
		for i := range packs.Things {
			if h := &packs.Things[i]; h.From != 0 && b.chance(50) {
				h.To = 0
			}
		}
		if len(packs.Things) > 0 {
			t.Kept = append(t.Kept, packs)
		}
	}
	turn(b, t.Kept)
}

func (b *builder) replan(day int) trip.Replan {
	t, made := b.trip, trip.Replan{Day: day}
	for i := range b.pick(0, 3) {
		move := trip.DishMove{Dish: dishKey(i)}
		if b.chance(70) {
			move.Day, move.Meal, move.Group = b.pick(1, len(t.Days)), oneOf(b, trip.Meals()...), oneOf(b, t.Groups...).ID
		}
		made.Moves = append(made.Moves, move)
	}
	made.HandOvers = b.handOvers()
	for i := range b.pick(0, 2) {
		made.Given = append(made.Given, trip.GivenBag{Bag: bagKey(i), To: oneOf(b, t.Crew...).ID})
	}
	turn(b, made.Given)
	turn(b, made.Moves)
	return made
}

func (b *builder) handOvers() []trip.HandOver {
	t := b.trip
	var list []trip.HandOver
	for i := range b.pick(0, 3) {
		over := trip.HandOver{To: oneOf(b, t.Crew...).ID}
		if b.chance(70) {
			over.From = oneOf(b, t.Crew...).ID
		}
		switch {
		case i == 0 && len(t.Gear) > 0:
			over.Gear = oneOf(b, t.Gear...).ID
		case i == 1:
			over.Fuel = "leg1 group1 gas mix 1"
		default:
			over.Bag = bagKey(i)
		}
		list = append(list, over)
	}
	turn(b, list)
	return list
}
