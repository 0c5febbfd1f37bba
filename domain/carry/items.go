package carry

import (
	"slices"
	"strconv"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// piece is one thing to carry on a stage.
type piece struct {
	kind    ItemKind
	key     string
	mass    units.Mass   // on the first morning
	left    units.Mass   // once it is eaten or empty
	until   int          // last day carried before that
	falling []units.Mass // on each morning until then, of what is eaten by and by; nil: all of it
	volume  units.Volume
	empty   units.Volume // room of what is left
	class   string
	energy  int64
	allowed []int // places in the crew, never more than those present
	byHand  []int // who may carry it too if the leader says so: an own share in another pack
	why     prose.Text
	bag     *bags.Bag
	liquid  bool // a container of liquid fuel
}

// wasteHeap is the wrappings and empty containers one member holds at the end
// of a stage.
type wasteHeap struct {
	key    string
	holder trip.MemberID
	mass   units.Mass
	room   units.Volume
}

// pieces lists what has to be carried on a stage, by kind and key.
func (c *calculation) pieces(r run) []piece {
	var list []piece
	for i := range c.Bags.Bags {
		if bag := &c.Bags.Bags[i]; bag.Leg <= r.leg && c.lastDayOf(bag) >= r.first {
			list = append(list, c.bagPiece(bag, r))
		}
	}
	for i := range c.Trip.Gear {
		list = append(list, c.gearPiece(&c.Trip.Gear[i], r))
	}
	for _, fuel := range c.Cooking.Fuel {
		if fuel.Leg != r.leg {
			continue
		}
		for i := range fuel.Containers {
			list = append(list, c.fuelPiece(&fuel, &fuel.Containers[i], r))
		}
	}
	for _, heap := range c.waste {
		list = append(list, piece{
			kind: WasteItem, key: heap.key, mass: heap.mass, left: heap.mass, until: r.last, empty: heap.room,
			allowed: c.holders(heap, r), why: prose.Say("wrappings and empty containers are carried out"),
		})
	}
	return list
}

// holders are who may carry a heap of rubbish: who has it, as handing it on is
// not worth the trouble. Where they are gone it counts as left with anybody, which
// errs on the side of those who stay.
func (c *calculation) holders(heap wasteHeap, r run) []int {
	if holder := c.place[heap.holder]; slices.Contains(r.present, holder) && c.capability[holder] > 0 {
		return []int{holder}
	}
	return r.present
}

func (c *calculation) bagPiece(bag *bags.Bag, r run) piece {
	p := piece{
		kind: BagItem, key: bag.Key, mass: bag.On(r.first), left: bag.Tare, until: min(c.lastDayOf(bag), r.last),
		volume: bag.Volume, empty: c.emptied(bag), bag: bag,
	}
	if _, gone := c.Gone[bag.Key]; gone {
		p.left, p.empty = 0, 0
	}
	if bag.LastDay > bag.Day {
		for day := r.first; day <= p.until; day++ {
			p.falling = append(p.falling, bag.On(day))
		}
	}
	if energy := dinnerEnergy(bag, r); energy > 0 {
		p.class, p.energy = dinnersOf+strconv.FormatInt(int64(bag.Group), 10), energy
	}
	for _, place := range r.present {
		if c.mayCarry(&c.Trip.Crew[place], bag) {
			p.allowed = append(p.allowed, place)
		}
	}
	if eater, ok := c.place[bag.Member]; ok && slices.Contains(r.present, eater) {
		p.byHand, p.allowed, p.why = p.allowed, []int{eater}, prose.Say("own share: carried by who eats it")
		return p
	}
	if len(p.allowed) < len(r.present) {
		p.why = prose.Say("kept from those who are allergic to what is in it")
	}
	return p
}

// lastDayOf is the last day on which something of a bag is carried that is
// still to be eaten.
func (c *calculation) lastDayOf(bag *bags.Bag) int {
	if last, gone := c.Gone[bag.Key]; gone {
		return min(last, bag.LastDay)
	}
	return bag.LastDay
}

// dinnerEnergy is what a bag brings to the dinners that are still to come, at
// least 1, or 0 if it serves none.
func dinnerEnergy(bag *bags.Bag, r run) int64 {
	var energy units.Kcal
	dinners := 0
	for i := range bag.Uses {
		if use := &bag.Uses[i]; use.Meal == trip.Dinner && use.Day >= r.first {
			energy += use.Kcal
			dinners++
		}
	}
	if dinners == 0 {
		return 0
	}
	return max(1, int64(energy))
}

// on is what the piece weighs on a day of the stage.
func (p *piece) on(day, first int) units.Mass {
	switch {
	case day > p.until:
		return p.left
	case p.falling != nil:
		return p.falling[day-first]
	default:
		return p.mass
	}
}

// mayCarry keeps an allergen from the pack of whom it harms.
func (c *calculation) mayCarry(member *trip.Member, bag *bags.Bag) bool {
	return harm(member, bag, func(id trip.FoodID) *trip.Food { return c.food[id] }).Kind == ""
}

func (c *calculation) gearPiece(gear *trip.Gear, r run) piece {
	p := piece{
		kind: GearItem, key: strconv.FormatInt(int64(gear.ID), 10), mass: gear.Mass, left: gear.Mass,
		until: r.last, volume: gear.Volume,
	}
	p.allowed, p.why = c.groupCarriers(gear.Group, r)
	return p
}

// fuelPiece is a container; its fuel counts as carried in full until the day
// it is empty, which errs on the side of the carrier.
func (c *calculation) fuelPiece(fuel *cooking.LegFuel, container *cooking.Container, r run) piece {
	p := piece{
		kind: FuelItem, key: container.Key, mass: container.Fuel + container.Empty, left: container.Empty,
		until: r.last, volume: container.Volume, empty: container.Volume,
		class: fuelOf + strconv.FormatInt(int64(fuel.Group), 10), energy: max(1, container.Fuel.CeilGrams()),
	}
	p.liquid = c.liquid[container.Key]
	if from := container.EmptyFrom; from > 0 {
		p.until = min(from-1, r.last)
	}
	if p.until < r.first {
		p.mass, p.until = container.Empty, r.last
	}
	p.allowed, p.why = c.groupCarriers(fuel.Group, r)
	return p
}

// isLiquid tells whether a fuel can leak out of its bottle and into food.
func isLiquid(fuel trip.FuelKind) bool {
	return slices.Contains([]trip.FuelKind{trip.WhiteGas, trip.Kerosene, trip.Ethanol, trip.Methanol, trip.Propanol}, fuel)
}

// groupCarriers gives the members of a cook group who are there, or everybody
// where the group has nobody, or the thing belongs to all.
func (c *calculation) groupCarriers(group trip.GroupID, r run) ([]int, prose.Text) {
	var own []int
	for _, place := range r.present {
		if c.Trip.Crew[place].Group == group {
			own = append(own, place)
		}
	}
	if group == 0 || len(own) == 0 {
		return r.present, prose.Text{}
	}
	return own, prose.Say("stays with its cook group")
}
