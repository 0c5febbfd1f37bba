package demo

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Heat capacity of aluminium in kJ/(kg K): handbook value, from memory.
const aluminium = 0.897

func gear() []trip.Gear {
	stove := func(id trip.GearID, name string, group trip.GroupID) trip.Gear {
		return trip.Gear{
			ID: id, Name: name, Kind: trip.Stove, Group: group, Mass: grams(190), Volume: litres(0.6),
			Fuel: trip.GasMix, PowerWatts: 2200, Efficiency: 0.5,
		}
	}
	pot := func(id trip.GearID, name string, group trip.GroupID, mass, holds float64) trip.Gear {
		return trip.Gear{
			ID: id, Name: name, Kind: trip.Pot, Group: group, Mass: grams(mass), Volume: litres(holds * 0.4),
			Capacity: litres(holds), HeatCapacity: aluminium,
		}
	}
	thing := func(id trip.GearID, kind trip.GearKind, name string, group trip.GroupID, mass, volume float64) trip.Gear {
		return trip.Gear{ID: id, Name: name, Kind: kind, Group: group, Mass: grams(mass), Volume: litres(volume)}
	}
	sack := func(id trip.GearID, name string, group trip.GroupID) trip.Gear {
		s := thing(id, trip.FoodStorage, name, group, 160, 0.5)
		s.Capacity = litres(30)
		return s
	}
	return []trip.Gear{
		stove(1, "Larch stove, first", larch), stove(2, "Larch stove, second", larch),
		stove(3, "Rowan stove, first", rowan), stove(4, "Rowan stove, second", rowan),
		pot(5, "Larch pot, 5 L", larch, 560, 5), pot(6, "Larch pot, 3 L", larch, 380, 3),
		pot(7, "Rowan pot, 4 L", rowan, 470, 4), pot(8, "Rowan pot, 3 L", rowan, 380, 3),
		thing(9, trip.Shelter, "Larch tent, three places", larch, 2900, 9),
		thing(10, trip.Shelter, "Larch tent, three places, second", larch, 2900, 9),
		thing(11, trip.Shelter, "Rowan tent, three places", rowan, 2900, 9),
		thing(12, trip.Shelter, "Rowan tent, two places", rowan, 2100, 7),
		sack(13, "Larch food sack and line", larch), sack(14, "Larch food sack and line, second", larch),
		sack(15, "Rowan food sack and line", rowan), sack(16, "Rowan food sack and line, second", rowan),
		thing(17, trip.OtherGear, "First-aid kit", 0, 850, 3),
		thing(18, trip.OtherGear, "Repair kit and spare cord", 0, 520, 1.2),
		thing(19, trip.OtherGear, "Water filter, Larch", larch, 310, 1.2),
		thing(20, trip.OtherGear, "Water filter, Rowan", rowan, 310, 1.2),
		thing(21, trip.OtherGear, "Larch ladle, sponge and soap", larch, 240, 0.8),
		thing(22, trip.OtherGear, "Rowan ladle, sponge and soap", rowan, 240, 0.8),
		thing(23, trip.OtherGear, "Marit's own small pot, spoon and cloth", larch, 170, 1),
	}
}

// fuels are the usual sizes of screw-on gas canisters; masses of empty ones
// are common practice, no source.
func fuels() []trip.FuelContainer {
	can := func(name string, net, empty, volume float64, cents units.Money) trip.FuelContainer {
		return trip.FuelContainer{Fuel: trip.GasMix, Name: name, Net: grams(net), Empty: grams(empty), Volume: litres(volume), Price: optional.Of(cents)}
	}
	return []trip.FuelContainer{
		can("Gas canister, small", 100, 100, 0.35, 590),
		can("Gas canister, medium", 230, 150, 0.75, 890),
		can("Gas canister, large", 450, 210, 1.4, 1390),
	}
}

// bagTypes: flat bags as sold, filled to three quarters; common practice, no
// source.
func bagTypes() []trip.BagType {
	return []trip.BagType{
		{Name: "Bag 0.3 L", Nominal: litres(0.3), Fill: 0.75, Tare: grams(2)},
		{Name: "Bag 1 L", Nominal: litres(1), Fill: 0.75, Tare: grams(5.5)},
		{Name: "Bag 3 L", Nominal: litres(3), Fill: 0.75, Tare: grams(10)},
		{Name: "Bag 6 L", Nominal: litres(6), Fill: 0.75, Tare: grams(17)},
		{Name: "Jar 0.1 L", Nominal: litres(0.1), Fill: 0.9, Tare: grams(11), Liquids: true},
		{Name: "Jar 0.25 L", Nominal: litres(0.25), Fill: 0.9, Tare: grams(20), Liquids: true},
		{Name: "Wide-neck bottle 0.5 L", Nominal: litres(0.5), Fill: 0.95, Tare: grams(28), Liquids: true},
	}
}
