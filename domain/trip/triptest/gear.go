package triptest

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func (b *builder) gear() {
	ids := b.ids(4*len(b.trip.Groups) + 1)
	fuel := oneOf(b, trip.GasMix, trip.GasMix, trip.WhiteGas, trip.Ethanol)
	for _, group := range b.trip.Groups {
		eaters := 0
		for _, member := range b.trip.Crew {
			if member.Group == group.ID {
				eaters++
			}
		}
		b.kitchen(group.ID, fuel, max(1, eaters), ids[:4])
		ids = ids[4:]
	}
	if b.chance(50) {
		b.addGear(trip.Gear{ID: trip.GearID(ids[0]), Name: "Map and first aid", Kind: trip.OtherGear, Mass: 900 * units.Gram, Volume: 2 * units.Litre})
	}
	b.fuels(fuel)
}

// kitchen equips a cook group: a stove and a pot for the number who eat, a
// shelter, sometimes a food sack. Odd groups may lack any of it.
func (b *builder) kitchen(group trip.GroupID, fuel trip.FuelKind, eaters int, ids []int64) {
	if b.rarely() {
		return
	}
	name := func(word string, place int) (trip.GearID, string) {
		return trip.GearID(ids[place]), named(word, ids[place])
	}
	var gear [4]trip.Gear
	for i, word := range []string{"Stove", "Pot", "Tarp", "Food sack"} {
		gear[i].ID, gear[i].Name = name(word, i)
		gear[i].Group = group
		gear[i].Mass = units.Mass(b.pick(20, 120)*10) * units.Gram
		gear[i].Volume = units.Volume(b.pick(1, 6)) * units.Litre
	}
	gear[0].Kind, gear[0].Fuel, gear[0].PowerWatts, gear[0].Efficiency = trip.Stove, fuel, float64(b.pick(10, 40)*100), b.hundredths(35, 65)
	gear[1].Kind, gear[1].HeatCapacity = trip.Pot, oneOf(b, 0.897, 0.50, 0.52)
	gear[1].Capacity = units.Volume(eaters*b.pick(7, 12)) * 100 * units.Millilitre
	gear[2].Kind, gear[3].Kind = trip.Shelter, trip.FoodStorage
	gear[3].Capacity = units.Volume(b.pick(8, 20)) * units.Litre
	for _, item := range gear[:b.pick(3, 4)] {
		b.addGear(item)
	}
	if b.rarely() {
		b.trip.Gear[len(b.trip.Gear)-1].Group = 0
	}
}

func (b *builder) addGear(item trip.Gear) { b.trip.Gear = append(b.trip.Gear, item) }

func (b *builder) fuels(fuel trip.FuelKind) {
	for _, net := range []int{100, 230, 450}[:b.pick(1, 3)] {
		b.trip.Fuels = append(b.trip.Fuels, trip.FuelContainer{
			Fuel: fuel, Name: named("Can", int64(net)), Net: units.Mass(net) * units.Gram,
			Empty: units.Mass(90+net/5) * units.Gram, Volume: units.Volume(net*2) * units.Millilitre,
			Price: unsure(b, units.Money(b.pick(300, 1200))),
		})
	}
	if b.rarely() {
		b.trip.Fuels = nil
	}
}

func (b *builder) bags() {
	for _, litres := range []int{1, 3, 6}[:b.pick(1, 3)] {
		b.trip.Bags = append(b.trip.Bags, trip.BagType{
			Name: named("Zip bag", int64(litres)), Nominal: units.Volume(litres) * units.Litre,
			Fill: b.hundredths(60, 90), Tare: units.Mass(4+3*litres) * units.Gram,
		})
	}
	if !b.rarely() {
		b.trip.Bags = append(b.trip.Bags, trip.BagType{
			Name: "Bottle", Nominal: 500 * units.Millilitre, Fill: 0.95, Tare: 25 * units.Gram, Liquids: true,
		})
	}
}

// pins ties odd pieces of gear to members, or keeps them from some.
func (b *builder) pins() {
	for _, item := range b.trip.Gear {
		if b.rarely() {
			b.trip.Pins = append(b.trip.Pins, trip.Pin{
				Gear: item.ID, Member: oneOf(b, b.trip.Crew...).ID, Forbid: b.chance(50),
			})
		}
	}
	if b.rarely() {
		b.trip.Pins = append(b.trip.Pins, trip.Pin{Fuel: "leg1 group1 gas mix 1", Member: oneOf(b, b.trip.Crew...).ID, Forbid: b.chance(50)})
	}
	if b.rarely() && len(b.trip.Recipes) > 0 {
		b.trip.Pins = append(b.trip.Pins, trip.Pin{Bag: "d1 dinner g1 r1 b1 pot 1", Member: b.trip.Crew[0].ID})
	}
}
