package rows

import "sumpter/domain/trip"

func thePurchases(t *trip.Trip) *[]trip.Purchase      { return &t.Progress.Purchases }
func thePackedBags(t *trip.Trip) *[]trip.PackedBag    { return &t.Progress.Packed }
func theBagEnds(t *trip.Trip) *[]trip.BagEnd          { return &t.Progress.Ends }
func theMissingBoxes(t *trip.Trip) *[]trip.PointID    { return &t.Progress.MissingBoxes }
func theDepartures(t *trip.Trip) *[]trip.Departure    { return &t.Progress.Departures }
func theMoves(t *trip.Trip) *[]trip.BagMove           { return &t.Progress.Moves }
func theWeighings(b *trip.PackedBag) *[]trip.Weighing { return &b.Weighed }

func purchaseFields(p *trip.Purchase) []field {
	return []field{
		referenceTo("food", &p.Food), textOf("fuel_container", &p.Fuel), textOf("other", &p.Other), wholeOf("net_mg", &p.Net),
		textOf("shop", &p.Shop), wholeOf("count", &p.Count), maybeWhole("paid_minor", &p.Paid), referenceTo("paid_by", &p.By),
	}
}

func packedBagFields(b *trip.PackedBag) []field {
	return []field{textOf("bag", &b.Bag), flagOf("done", &b.Done)}
}

func weighingFields(w *trip.Weighing) []field {
	return []field{wholeOf("food", &w.Food), wholeOf("mass_mg", &w.Mass)}
}

func bagEndFields(e *trip.BagEnd) []field {
	return []field{textOf("bag", &e.Bag), textOf("end_of_bag", &e.End), wholeOf("day", &e.Day)}
}

func departureFields(d *trip.Departure) []field {
	return []field{wholeOf("member", &d.Member), wholeOf("day", &d.Day)}
}

func bagMoveFields(m *trip.BagMove) []field {
	return []field{textOf("bag", &m.Bag), wholeOf("day", &m.Day), textOf("meal", &m.Meal)}
}

func progressTables() []Table {
	bag := those([]string{"bag"}, thePackedBags, func(b *trip.PackedBag) Row { return Row{b.Bag} })
	return []Table{
		items("purchase", "place", theTrip(), thePurchases, purchaseFields),
		list("packed_bag", 1, thePackedBags, packedBagFields),
		items("weighing", "place", bag, theWeighings, weighingFields),
		list("bag_end", 1, theBagEnds, bagEndFields),
		items("missing_box", "place", theTrip(), theMissingBoxes,
			func(id *trip.PointID) []field { return []field{wholeOf("resupply_point", id)} }),
		list("departure", 1, theDepartures, departureFields),
		list("bag_move", 1, theMoves, bagMoveFields),
	}
}
