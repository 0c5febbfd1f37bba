package rows

import (
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func theMenu(t *trip.Trip) *[]trip.Cell                { return &t.Menu }
func theDishes(c *trip.Cell) *[]trip.Dish              { return &c.Dishes }
func theGear(t *trip.Trip) *[]trip.Gear                { return &t.Gear }
func theFuels(t *trip.Trip) *[]trip.FuelContainer      { return &t.Fuels }
func theBags(t *trip.Trip) *[]trip.BagType             { return &t.Bags }
func thePoints(t *trip.Trip) *[]trip.ResupplyPoint     { return &t.Points }
func theShops(t *trip.Trip) *[]trip.Shop               { return &t.Shops }
func thePins(t *trip.Trip) *[]trip.Pin                 { return &t.Pins }
func theKept(t *trip.Trip) *[]trip.KeptPacks           { return &t.Kept }
func theKeptThings(k *trip.KeptPacks) *[]trip.HandOver { return &k.Things }

func cellFields(c *trip.Cell) []field {
	return []field{wholeOf("day", &c.Day), textOf("meal", &c.Meal), wholeOf("cook_group", &c.Group), flagOf("locked", &c.Locked)}
}

func acceptanceFields(a *trip.Acceptance) []field {
	return []field{wholeOf("member", &a.Member), wholeOf("food", &a.Food), textOf("reason", &a.Reason)}
}

func menuTables() []Table {
	cell := those([]string{"day", "meal", "cook_group"}, theMenu, func(c *trip.Cell) Row {
		return Row{int64(c.Day), string(c.Meal), int64(c.Group)}
	})
	dish := within(cell, "dish", theDishes)
	return []Table{
		list("cell", 3, theMenu, cellFields),
		items("dish", "place", cell, theDishes, func(d *trip.Dish) []field { return []field{wholeOf("recipe", &d.Recipe)} }),
		items("dish_eater", "place", dish, func(d *trip.Dish) *[]trip.MemberID { return &d.For },
			func(id *trip.MemberID) []field { return []field{wholeOf("member", id)} }),
		items("acceptance", "place", dish, func(d *trip.Dish) *[]trip.Acceptance { return &d.Accepted }, acceptanceFields),
	}
}

func gearFields(g *trip.Gear) []field {
	return []field{
		wholeOf("id", &g.ID), textOf("name", &g.Name), textOf("kind", &g.Kind), referenceTo("cook_group", &g.Group),
		wholeOf("mass_mg", &g.Mass), wholeOf("volume_ul", &g.Volume), textOf("fuel", &g.Fuel), numberOf("power_w", &g.PowerWatts),
		numberOf("efficiency", &g.Efficiency), wholeOf("capacity_ul", &g.Capacity),
		numberOf("heat_capacity_kj_per_kg_k", &g.HeatCapacity),
	}
}

func fuelFields(f *trip.FuelContainer) []field {
	return []field{
		textOf("fuel", &f.Fuel), textOf("name", &f.Name), wholeOf("net_mg", &f.Net), wholeOf("empty_mg", &f.Empty),
		wholeOf("volume_ul", &f.Volume), maybeWhole("price_minor", &f.Price),
	}
}

func bagFields(b *trip.BagType) []field {
	return []field{
		textOf("name", &b.Name), wholeOf("nominal_ul", &b.Nominal), numberOf("fill", &b.Fill), wholeOf("tare_mg", &b.Tare),
		flagOf("liquids", &b.Liquids),
	}
}

func pointFields(p *trip.ResupplyPoint) []field {
	return []field{
		wholeOf("id", &p.ID), textOf("name", &p.Name), textOf("kind", &p.Kind), wholeOf("after_day", &p.AfterDay),
		flagOf("used", &p.Use), textOf("address", &p.Address), wholeOf("transit_days", &p.TransitDays),
		wholeOf("fastest_transit_days", &p.FastestDays), wholeOf("buffer_days", &p.BufferDays),
		maybeWhole("hold_days", &p.HoldDays), wholeOf("hold_margin_days", &p.HoldMargin),
		maybeWhole("max_parcel_mg", &p.MaxParcel), maybeNumber("max_length_and_girth_m", &p.MaxGirth),
		wholeOf("fee_per_parcel_minor", &p.FeePerParcel), wholeOf("visit_fee_minor", &p.VisitFee),
		numberOf("detour_m", &p.Detour), numberOf("detour_hours", &p.DetourHours), maybeNumber("store_low_c", &p.StoreLow),
		maybeNumber("store_high_c", &p.StoreHigh), flagOf("takes_fuel", &p.TakesFuel), flagOf("sells_fuel", &p.SellsFuel),
		flagOf("takes_waste", &p.TakesWaste), textOf("notes", &p.Notes), textOf("addressee", &p.Sending.Addressee),
		textOf("care_of", &p.Sending.CareOf), referenceTo("collector", &p.Sending.Collector),
		referenceTo("sender", &p.Sending.Sender), textOf("helper", &p.Sending.Helper), dateOf("send_on", &p.Sending.SendOn),
	}
}

func postingFields(p *trip.Posting) []field {
	return []field{textOf("return_address", &p.ReturnAddress)}
}

func shopFields(s *trip.Shop) []field {
	return []field{
		textOf("name", &s.Name), flagOf("used", &s.Use), referenceTo("resupply_point", &s.Point), textOf("address", &s.Address),
		wholeOf("visit_fee_minor", &s.VisitFee), wholeOf("least_order_minor", &s.LeastOrder), textOf("notes", &s.Notes),
	}
}

func weekdayFields(day *string) []field   { return []field{textOf("weekday", day)} }
func dateFields(date *units.Date) []field { return []field{dateOf("date", date)} }

func pinFields(p *trip.Pin) []field {
	return []field{
		textOf("bag", &p.Bag), referenceTo("gear", &p.Gear), referenceTo("member", &p.Member), flagOf("forbid", &p.Forbid),
		textOf("fuel_container", &p.Fuel),
	}
}

func keptThingFields(h *trip.HandOver) []field {
	return []field{
		textOf("bag", &h.Bag), referenceTo("gear", &h.Gear), textOf("fuel_container", &h.Fuel),
		referenceTo("from_member", &h.From), referenceTo("to_member", &h.To),
	}
}

func wayTables() []Table {
	point := those([]string{"resupply_point"}, thePoints, func(p *trip.ResupplyPoint) Row { return Row{int64(p.ID)} })
	shop := those([]string{"shop"}, theShops, func(s *trip.Shop) Row { return Row{s.Name} })
	kept := those([]string{"kept_packs"}, theKept, func(k *trip.KeptPacks) Row { return Row{int64(k.Day)} })
	return []Table{
		list("gear", 1, theGear, gearFields),
		items("fuel_container", "place", theTrip(), theFuels, fuelFields),
		items("bag_type", "place", theTrip(), theBags, bagFields),
		list("resupply_point", 1, thePoints, pointFields),
		items("open_day", "place", point, func(p *trip.ResupplyPoint) *[]string { return &p.OpenDays },
			weekdayFields),
		items("closed_date", "place", point, func(p *trip.ResupplyPoint) *[]units.Date { return &p.ClosedDates },
			dateFields),
		single("posting", func(t *trip.Trip) *trip.Posting { return &t.Posting }, postingFields),
		items("posting_open_day", "place", theTrip(), func(t *trip.Trip) *[]string { return &t.Posting.OpenDays }, weekdayFields),
		items("posting_closed_date", "place", theTrip(), func(t *trip.Trip) *[]units.Date { return &t.Posting.ClosedDates }, dateFields),
		list("shop", 1, theShops, shopFields),
		items("shop_open_day", "place", shop, func(s *trip.Shop) *[]string { return &s.OpenDays }, weekdayFields),
		items("shop_closed_date", "place", shop, func(s *trip.Shop) *[]units.Date { return &s.ClosedDates }, dateFields),
		items("pin", "place", theTrip(), thePins, pinFields),
		list("kept_packs", 1, theKept, func(k *trip.KeptPacks) []field { return []field{wholeOf("day", &k.Day)} }),
		items("kept_thing", "place", kept, theKeptThings, keptThingFields),
	}
}

func allTables() []Table {
	return slices.Concat(peopleTables(), larderTables(), menuTables(), wayTables(), progressTables())
}
