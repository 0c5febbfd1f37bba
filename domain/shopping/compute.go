package shopping

import (
	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute lists what to buy for the bags of a canonical trip. Food that keeps
// is bought once, for all boxes and the start together; food that does not is
// bought for each deadline. Prices do not change with the date, so buying
// together is never dearer.
func Compute(t *trip.Trip, b bags.Result, r resupply.Result, c cooking.Result) Result {
	var result Result
	var list []findings.Finding
	needs := gather(t, b, r)
	for i := range t.Foods {
		food := &t.Foods[i]
		lines, trouble := buyFood(t, food, needs[food.ID])
		result.Lines = append(result.Lines, lines...)
		list = append(list, trouble...)
	}
	result.Fuel = fuelLines(t, r, c)
	result.addUp(t, r)
	list = append(list, result.findings(t)...)
	findings.Sort(list)
	result.Findings = list
	return result
}

// need is what must be at home by a date.
type need struct {
	by   units.Date
	mass units.Mass
}

// gather adds up the bags' contents by food and deadline, earliest first.
func gather(t *trip.Trip, b bags.Result, r resupply.Result) map[trip.FoodID][]need {
	by := map[int]units.Date{}
	for _, box := range r.Boxes {
		by[box.Leg] = deadline(t, &box)
	}
	needs := map[trip.FoodID][]need{}
	for i := range b.Bags {
		date, boxed := by[b.Bags[i].Leg]
		if !boxed {
			date = t.Settings.PackingNight
		}
		for _, c := range b.Bags[i].Contents {
			needs[c.Food] = addNeed(needs[c.Food], need{date, c.Mass})
		}
	}
	return needs
}

// deadline of a box: packing night, or the day it leaves home if that is
// earlier.
func deadline(t *trip.Trip, box *resupply.Box) units.Date {
	night := t.Settings.PackingNight
	if box.SendOn.IsSet() && (!night.IsSet() || box.SendOn < night) {
		return box.SendOn
	}
	return night
}

func addNeed(list []need, n need) []need {
	for i := range list {
		if list[i].by == n.by {
			list[i].mass += n.mass
			return list
		}
		if list[i].by > n.by {
			return append(list[:i], append([]need{n}, list[i:]...)...)
		}
	}
	return append(list, n)
}

// keeps tells whether what is left of one deadline may serve the next: the
// food is stable, or there is a fridge at home.
func keeps(t *trip.Trip, f *trip.Food) bool {
	return t.Settings.HomeFridge || f.Storage.Control() == trip.TCSNo && !f.Storage.TCSWhenOpen
}

// addUp sums the money.
func (r *Result) addUp(t *trip.Trip, boxes resupply.Result) {
	for _, line := range r.Lines {
		r.Cost += line.Cost
		if !line.CostKnown {
			r.Unpriced++
		}
	}
	for _, line := range r.Fuel {
		r.Cost += line.Cost
		if !line.CostKnown {
			r.Unpriced++
		}
	}
	for _, box := range boxes.Boxes {
		r.Fees += box.Fees
	}
	if n := personDays(t); n > 0 {
		r.PerPersonDay = (r.Cost + r.Fees + n/2) / n
	}
}

// personDays counts members on days they are there.
func personDays(t *trip.Trip) units.Money {
	n := 0
	for day := 1; day <= len(t.Days); day++ {
		for i := range t.Crew {
			if t.Crew[i].Present(day) {
				n++
			}
		}
	}
	return units.Money(n)
}
