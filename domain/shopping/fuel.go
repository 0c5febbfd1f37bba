package shopping

import (
	"cmp"
	"slices"

	"sumpter/domain/cooking"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fuelLines counts containers by where they are bought, fuel and name.
func fuelLines(t *trip.Trip, r resupply.Result, c cooking.Result) []FuelLine {
	there := map[int]trip.PointID{}
	for _, box := range r.Boxes {
		if box.FuelBoughtThere {
			there[box.Leg] = box.Point
		}
	}
	var lines []FuelLine
	for _, leg := range c.Fuel {
		for _, container := range leg.Containers {
			if container.Brought {
				continue // bought for an earlier leg
			}
			same := func(l FuelLine) bool {
				return l.Name == container.Name && l.Fuel == leg.Fuel && l.Point == there[leg.Leg]
			}
			at := slices.IndexFunc(lines, same)
			if at < 0 {
				at = len(lines)
				lines = append(lines, FuelLine{Name: container.Name, Fuel: leg.Fuel, Point: there[leg.Leg]})
			}
			lines[at].Count++
		}
	}
	for i := range lines {
		lines[i].price(t)
	}
	slices.SortFunc(lines, func(a, b FuelLine) int {
		return cmp.Or(cmp.Compare(a.Point, b.Point), cmp.Compare(a.Fuel, b.Fuel), cmp.Compare(a.Name, b.Name))
	})
	return lines
}

func (l *FuelLine) price(t *trip.Trip) {
	for i := range t.Fuels {
		if f := &t.Fuels[i]; f.Fuel == l.Fuel && f.Name == l.Name {
			if price, known := f.Price.Get(); known {
				l.Cost, l.CostKnown = price*units.Money(l.Count), true
			}
			return
		}
	}
}
