package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func gearSheet() sheet {
	type R = trip.Gear
	t := &table[R]{
		name: sheetGear, list: "gear", names: func(s *scope) *names { return &s.gear },
		about: "Shared kit that somebody carries. One row a piece.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Name", "name", func(g *R) *string { return &g.Name }, line(), "A name that no other piece has.").must().wide(26),
			col("Kind", "kind", func(g *R) *trip.GearKind { return &g.Kind }, word(trip.GearKinds()), "What it is for. Food storage keeps food from animals.").must().wide(13),
			col("Cook group", "group", func(g *R) *trip.GroupID { return &g.Group }, orBlank(toGroup()), "Whose it is and who carries it. Empty: anybody's."),
			col("Mass", "mass_g", func(g *R) *units.Mass { return &g.Mass }, exact[units.Mass](foodMass), "As carried, without fuel.").must(),
			col("Volume", "volume_ml", func(g *R) *units.Volume { return &g.Volume }, exact[units.Volume](packVolume), "In the pack."),
			col("Fuel", "fuel", func(g *R) *trip.FuelKind { return &g.Fuel }, word(trip.FuelKinds()), "Stoves: what it burns.").wide(12),
			col("Power", "power_w", func(g *R) *float64 { return &g.PowerWatts }, orBlank(number[float64](same("W"))), "Stoves: heat at full flame."),
			col("Efficiency", "efficiency", func(g *R) *float64 { return &g.Efficiency }, orBlank(number[float64](share)), "Stoves: part of the fuel's heat that gets into the water."),
			col("Capacity", "capacity_ml", func(g *R) *units.Volume { return &g.Capacity }, orBlank(exact[units.Volume](packVolume)), "Pots: to the brim. Food storage: inside."),
			col("Heat capacity", "heat_capacity_kj_per_kg_k", func(g *R) *float64 { return &g.HeatCapacity }, orBlank(number[float64](same("kJ/kg K"))), "Pots: aluminium 0.897, steel 0.50, titanium 0.52."),
			idColumn(func(g *R) *trip.GearID { return &g.ID }),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Gear })
	return t
}

func fuelSheet() sheet {
	type R = trip.FuelContainer
	t := &table[R]{
		name: sheetFuels, list: "fuels",
		about: "The sizes of canister or bottle in which fuel is sold or carried.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Name", "name", func(f *R) *string { return &f.Name }, line(), "What it is called in the shop.").must().wide(26),
			col("Fuel", "fuel", func(f *R) *trip.FuelKind { return &f.Fuel }, word(trip.FuelKinds()), "What is in it.").must().wide(14),
			col("Net", "net_g", func(f *R) *units.Mass { return &f.Net }, exact[units.Mass](foodMass), "Fuel in a full one.").must(),
			col("Empty", "empty_g", func(f *R) *units.Mass { return &f.Empty }, exact[units.Mass](foodMass), "The container alone: carried out after the fuel is gone.").must(),
			col("Volume", "volume_ml", func(f *R) *units.Volume { return &f.Volume }, exact[units.Volume](packVolume), "In the pack."),
			col("Price", "price", func(f *R) *optional.Value[units.Money] { return &f.Price }, maybe(money()), "In the trip's currency. Empty: not known."),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Fuels })
	return t
}

func bagTypeSheet() sheet {
	type R = trip.BagType
	t := &table[R]{
		name: sheetBagTypes, list: "bag_types",
		about: "The kinds of bag and bottle for packing night.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Name", "name", func(b *R) *string { return &b.Name }, line(), "What it is called.").must().wide(26),
			col("Nominal volume", "nominal_ml", func(b *R) *units.Volume { return &b.Nominal }, exact[units.Volume](packVolume), "As the maker says.").must(),
			col("Usable part", "fill", func(b *R) *float64 { return &b.Fill }, number[float64](share), "What may be filled so that it still seals.").must(),
			col("Tare", "tare_g", func(b *R) *units.Mass { return &b.Tare }, exact[units.Mass](foodMass), "Empty, with its label.").must(),
			col("For liquids", "liquids", func(b *R) *bool { return &b.Liquids }, yesNo(), "A bottle or jar that holds liquids and spreads.").wide(10),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Bags })
	return t
}

// What a pin says, in words.
const (
	pinOnly = "carries it"
	pinNot  = "must not carry it"
)

func pinSheet() sheet {
	type R = trip.Pin
	t := &table[R]{
		name: sheetPins, list: "pins",
		about: "Who must or must not carry a piece of gear, a bag or a fuel container. Usually short.",
		fresh: func() R { return R{} },
		columns: []column[R]{
			col("Gear", "gear", func(p *R) *trip.GearID { return &p.Gear }, orBlank(toGear()), "A piece of sheet Gear; or").wide(26),
			col("Bag", "bag", func(p *R) *string { return &p.Bag }, line(), "the key of a bag, as the plan shows it.").wide(30),
			col("Member", "member", func(p *R) *trip.MemberID { return &p.Member }, toMember(), "A member of the crew.").must().wide(22),
			colOf("Rule", "forbid",
				func(p *R) string {
					if p.Forbid {
						return pinNot
					}
					return pinOnly
				},
				func(p *R, rule string) { p.Forbid = rule == pinNot },
				word([]string{pinOnly, pinNot}), "Carries it: this member only.").must().wide(18),
			col("Fuel container", "fuel_container", func(p *R) *string { return &p.Fuel }, line(), "Instead of gear and bag: the key of a container, as the plan shows it.").wide(28),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Pins })
	return t
}
