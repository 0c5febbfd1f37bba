package cooking

import (
	"fmt"
	"math"

	"sumpter/domain/science/stovefuel"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fuel works out what each group carries on each leg. Where a leg begins at a
// point without fuel, its containers come along from the last place that has
// some.
func (c *cook) fuel() {
	for leg := range c.legs {
		for g := range c.trip.Groups {
			burnt := c.burntOn(leg, g)
			if burnt.total == 0 {
				continue
			}
			c.legFuel(leg, g, burnt)
		}
	}
	c.carryAhead()
}

// burn is what a group burns on a leg.
type burn struct {
	total units.Mass
	byDay []units.Mass // from the first day of the leg
}

func (c *cook) burntOn(leg, group int) burn {
	first, last := c.legs[leg].FirstDay, c.legs[leg].LastDay
	b := burn{byDay: make([]units.Mass, max(0, last-first+1))}
	for _, meal := range c.result.Meals {
		if meal.Group == c.trip.Groups[group].ID && meal.Day >= first && meal.Day <= last {
			b.byDay[meal.Day-first] += meal.FuelMass
			b.total += meal.FuelMass
		}
	}
	return b
}

func (c *cook) legFuel(leg, group int, burnt burn) {
	k, id := &c.kitchens[group], c.trip.Groups[group].ID
	needed := units.Mass(math.Ceil(burnt.total.Scale(1+max(0, c.trip.Settings.FuelReserve)).Grams())) * units.Gram
	entry := LegFuel{Leg: leg, Group: id, Fuel: k.fuel, Needed: needed}
	rest := ColdRest(c.trip.Days, c.legs[leg], k.fuel)
	chosen := chooseContainers(c.trip.Fuels, k.fuel, needed, rest)
	if len(chosen) == 0 {
		c.lookAtNoContainer(leg, group, needed)
	}
	brought := !c.hasFuel(leg)
	left := needed
	for i, container := range chosen {
		held := container.Net
		if !gas(k.fuel) {
			held = min(held, left)
		}
		left -= min(left, held-rest)
		entry.Containers = append(entry.Containers, Container{
			Key:  fmt.Sprintf("leg%d group%d %s %d", leg+1, id, k.fuel, i+1),
			Name: container.Name, Fuel: held, Empty: container.Empty, Volume: container.Volume, Brought: brought,
		})
	}
	markEmpty(entry.Containers, burnt, c.legs[leg].FirstDay, rest)
	c.result.Fuel = append(c.result.Fuel, entry)
	c.lookAtCold(leg, group)
}

// markEmpty says from which morning each container is empty, burning one
// after the other at the planned rate.
func markEmpty(containers []Container, burnt burn, firstDay int, rest units.Mass) {
	until := units.Mass(0)
	for i := range containers {
		until += containers[i].Fuel - rest
		gone := units.Mass(0)
		for d, mass := range burnt.byDay {
			gone += mass
			if gone >= until && d+1 < len(burnt.byDay) {
				containers[i].EmptyFrom = firstDay + d + 1
				break
			}
		}
	}
}

// ColdRest is what a gas canister does not give up on a leg with frost.
func ColdRest(days []trip.Day, leg trip.Leg, fuel trip.FuelKind) units.Mass {
	if !gas(fuel) {
		return 0
	}
	for day := leg.FirstDay; day <= leg.LastDay; day++ {
		if days[day-1].Low < 0 {
			return units.FromGrams(stovefuel.CanisterRest)
		}
	}
	return 0
}

// hasFuel tells whether fuel can be taken on where a leg begins.
func (c *cook) hasFuel(leg int) bool {
	from := c.legs[leg].From
	if from == 0 {
		return true
	}
	point := c.trip.Point(from)
	return point != nil && (point.TakesFuel || point.SellsFuel)
}

// carryAhead puts the containers of legs that begin without fuel into the
// packs of the legs before.
func (c *cook) carryAhead() {
	own := len(c.result.Fuel)
	for i := range own {
		entry := c.result.Fuel[i]
		if c.hasFuel(entry.Leg) {
			continue
		}
		for leg := entry.Leg - 1; leg >= 0; leg-- {
			c.addAhead(leg, entry)
			if c.hasFuel(leg) {
				c.lookAtCarriedAhead(leg, entry)
				break
			}
		}
	}
	sortFuel(c.result.Fuel)
}

func (c *cook) addAhead(leg int, later LegFuel) {
	at := -1
	for i := range c.result.Fuel {
		if f := &c.result.Fuel[i]; f.Leg == leg && f.Group == later.Group && f.Fuel == later.Fuel {
			at = i
		}
	}
	if at < 0 {
		c.result.Fuel = append(c.result.Fuel, LegFuel{Leg: leg, Group: later.Group, Fuel: later.Fuel})
		at = len(c.result.Fuel) - 1
	}
	for i, container := range later.Containers {
		container.Key = fmt.Sprintf("leg%d group%d %s for leg%d %d", leg+1, later.Group, later.Fuel, later.Leg+1, i+1)
		container.Fuel += container.Empty
		container.Empty, container.EmptyFrom = 0, 0
		container.Ahead, container.Brought = true, !c.hasFuel(leg)
		c.result.Fuel[at].Containers = append(c.result.Fuel[at].Containers, container)
	}
}
