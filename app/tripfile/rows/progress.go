package rows

import "sumpter/domain/trip"

func thePurchases(t *trip.Trip) *[]trip.Purchase      { return &t.Progress.Purchases }
func thePackedBags(t *trip.Trip) *[]trip.PackedBag    { return &t.Progress.Packed }
func theBagEnds(t *trip.Trip) *[]trip.BagEnd          { return &t.Progress.Ends }
func thePartsGone(t *trip.Trip) *[]trip.PartGone      { return &t.Progress.PartsGone }
func theFuelNotes(t *trip.Trip) *[]trip.FuelNote      { return &t.Progress.FuelNotes }
func theMissingBoxes(t *trip.Trip) *[]trip.PointID    { return &t.Progress.MissingBoxes }
func theCrewChanges(t *trip.Trip) *[]trip.CrewChange  { return &t.Progress.CrewChanges }
func theReplans(t *trip.Trip) *[]trip.Replan          { return &t.Progress.Replans }
func theDishMoves(r *trip.Replan) *[]trip.DishMove    { return &r.Moves }
func theHandOvers(r *trip.Replan) *[]trip.HandOver    { return &r.HandOvers }
func theGivenBags(r *trip.Replan) *[]trip.GivenBag    { return &r.Given }
func theWeighings(b *trip.PackedBag) *[]trip.Weighing { return &b.Weighed }

func purchaseFields(p *trip.Purchase) []field {
	return []field{
		referenceTo("food", &p.Food), textOf("fuel_container", &p.Fuel), textOf("other", &p.Other), wholeOf("net_mg", &p.Net),
		textOf("shop", &p.Shop), wholeOf("count", &p.Count), maybeWhole("paid_minor", &p.Paid), referenceTo("paid_by", &p.By),
	}
}

func packedBagFields(b *trip.PackedBag) []field {
	return []field{textOf("bag", &b.Bag), flagOf("done", &b.Done), referenceTo("in_box", &b.InBox), referenceTo("in_pack", &b.InPack)}
}

func weighingFields(w *trip.Weighing) []field {
	return []field{wholeOf("food", &w.Food), wholeOf("mass_mg", &w.Mass)}
}

func bagEndFields(e *trip.BagEnd) []field {
	return []field{textOf("bag", &e.Bag), textOf("end_of_bag", &e.End), wholeOf("day", &e.Day)}
}

func crewChangeFields(c *trip.CrewChange) []field {
	return []field{wholeOf("member", &c.Member), wholeOf("day", &c.Day), flagOf("there", &c.There)}
}

func dishMoveFields(m *trip.DishMove) []field {
	return []field{
		textOf("dish", &m.Dish), wholeOf("day", &m.Day), textOf("meal", &m.Meal), referenceTo("cook_group", &m.Group),
	}
}

func handOverFields(h *trip.HandOver) []field {
	return []field{
		textOf("bag", &h.Bag), referenceTo("gear", &h.Gear), textOf("fuel_container", &h.Fuel),
		referenceTo("from_member", &h.From), wholeOf("to_member", &h.To),
	}
}

func progressTables() []Table {
	bag := those([]string{"bag"}, thePackedBags, func(b *trip.PackedBag) Row { return Row{b.Bag} })
	replan := those([]string{"replan"}, theReplans, func(r *trip.Replan) Row { return Row{int64(r.Day)} })
	return []Table{
		items("purchase", "place", theTrip(), thePurchases, purchaseFields),
		list("packed_bag", 1, thePackedBags, packedBagFields),
		items("weighing", "place", bag, theWeighings, weighingFields),
		list("bag_end", 1, theBagEnds, bagEndFields),
		list("part_gone", 2, thePartsGone, func(g *trip.PartGone) []field {
			return []field{textOf("bag", &g.Bag), wholeOf("day", &g.Day), textOf("end_of_food", &g.End), wholeOf("mass_mg", &g.Mass)}
		}),
		list("fuel_note", 2, theFuelNotes, func(f *trip.FuelNote) []field {
			return []field{textOf("fuel_container", &f.Container), wholeOf("day", &f.Day), wholeOf("left_mg", &f.Left)}
		}),
		items("missing_box", "place", theTrip(), theMissingBoxes,
			func(id *trip.PointID) []field { return []field{wholeOf("resupply_point", id)} }),
		items("crew_change", "place", theTrip(), theCrewChanges, crewChangeFields),
		list("replan", 1, theReplans, func(r *trip.Replan) []field { return []field{wholeOf("day", &r.Day)} }),
		items("dish_move", "place", replan, theDishMoves, dishMoveFields),
		items("hand_over", "place", replan, theHandOvers, handOverFields),
		items("given_bag", "place", replan, theGivenBags,
			func(g *trip.GivenBag) []field { return []field{textOf("bag", &g.Bag), wholeOf("to_member", &g.To)} }),
	}
}
