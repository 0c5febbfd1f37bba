package trip

import (
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// NewPoint gives a resupply point that is used, with three days of transit,
// three in hand and a margin of two on the hold (common practice, no source:
// ask the carrier), where a box lies in a room that nobody cools, 15 to 30 °C
// (common practice, no source: ask there). How long it holds a box is unknown
// until somebody asks.
func NewPoint(id PointID, name string, afterDay int) ResupplyPoint {
	return ResupplyPoint{
		ID: id, Name: name, Kind: PostOffice, AfterDay: afterDay, Use: true,
		TransitDays: 3, FastestDays: 1, BufferDays: 3, HoldMargin: 2,
		StoreLow: optional.Of[units.Celsius](15), StoreHigh: optional.Of[units.Celsius](30),
	}
}

// Heat capacities of what pots are made of, in kJ/(kg K): handbook values,
// from memory.
const (
	Aluminium = 0.897
	Steel     = 0.50
	Titanium  = 0.52
)

// NewGear gives a piece of gear of a kind with figures to be filled in: a
// stove that burns gas, a pot of aluminium (common practice, no source: weigh
// your own and read what the maker says).
func NewGear(id GearID, name string, kind GearKind, group GroupID) Gear {
	item := Gear{ID: id, Name: name, Group: group}
	item.Become(kind)
	return item
}

// Become makes gear of another kind: what the new kind cannot do without gets
// a usual figure where there is none, what it has no use for is forgotten.
func (g *Gear) Become(kind GearKind) {
	g.Kind = kind
	if kind != Stove {
		g.Fuel, g.PowerWatts, g.Efficiency = "", 0, 0
	} else if g.Fuel == "" {
		g.Fuel, g.PowerWatts, g.Efficiency = GasMix, 2000, 0.5
	}
	if kind != Pot {
		g.HeatCapacity = 0
	} else if g.HeatCapacity == 0 {
		g.HeatCapacity = Aluminium
	}
	if kind != Pot && kind != FoodStorage {
		g.Capacity = 0
	}
	usual := usualOf(kind)
	if g.Mass == 0 {
		g.Mass = usual.mass
	}
	if g.Volume == 0 {
		g.Volume = usual.volume
	}
	if g.Capacity == 0 {
		g.Capacity = usual.capacity
	}
}

// potPerEater is what a pot holds for one (common practice, no source).
const potPerEater = 800 * units.Millilitre

// HoldMealsFor makes a pot large enough to be filled once for so many eaters;
// its mass and the room it takes grow with it. A pot is never made smaller.
func (g *Gear) HoldMealsFor(eaters int) {
	needed := units.Volume(eaters) * potPerEater
	if needed <= g.Capacity || g.Capacity <= 0 {
		return
	}
	half := units.Litre / 2
	needed = (needed + half - 1) / half * half
	factor := needed.Litres() / g.Capacity.Litres()
	g.Mass, g.Volume, g.Capacity = g.Mass.Scale(factor), units.FromMillilitres(g.Volume.Millilitres()*factor), needed
}

type usualGear struct {
	mass             units.Mass
	volume, capacity units.Volume
}

func usualOf(kind GearKind) usualGear {
	switch kind {
	case Stove:
		return usualGear{mass: 200 * units.Gram, volume: 600 * units.Millilitre}
	case Pot:
		return usualGear{mass: 350 * units.Gram, volume: units.Litre, capacity: 3 * units.Litre}
	case Shelter:
		return usualGear{mass: 2500 * units.Gram, volume: 8 * units.Litre}
	case FoodStorage:
		return usualGear{mass: 200 * units.Gram, volume: units.Litre / 2, capacity: 25 * units.Litre}
	default:
		return usualGear{}
	}
}
