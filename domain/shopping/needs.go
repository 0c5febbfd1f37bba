package shopping

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// need is what must be bought of one food for one place by a date.
type need struct {
	point trip.PointID // bought there on the way; 0: near home
	by    units.Date
	mass  units.Mass
}

// gather adds up the bags' contents by food, place and deadline: what is needed
// at home, earliest first, then what is bought on the way.
func gather(t *trip.Trip, b bags.Result, r resupply.Result) map[trip.FoodID][]need {
	type bagFood struct {
		bag  string
		food trip.FoodID
	}
	by, there := map[int]units.Date{}, map[bagFood]need{}
	for _, box := range r.Boxes {
		by[box.Leg] = deadline(t, &box)
		for _, bought := range box.BoughtThere {
			there[bagFood{bought.Bag, bought.Food}] = need{point: box.Point, by: box.PickUp}
		}
	}
	needs := map[trip.FoodID][]need{}
	for i := range b.Bags {
		bag := &b.Bags[i]
		home := need{by: t.Settings.PackingNight}
		if date, boxed := by[bag.Leg]; boxed {
			home.by = date
		}
		for _, c := range bag.Contents {
			n, onTheWay := there[bagFood{bag.Key, c.Food}]
			if !onTheWay {
				n = home
			}
			n.mass = c.Mass
			needs[c.Food] = addNeed(needs[c.Food], n)
		}
	}
	for _, list := range needs {
		slices.SortFunc(list, func(a, b need) int { return cmp.Or(cmp.Compare(a.point, b.point), cmp.Compare(a.by, b.by)) })
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
		if list[i].point == n.point && list[i].by == n.by {
			list[i].mass += n.mass
			return list
		}
	}
	return append(list, n)
}

// linesOf makes the lines of a food, stock at home taken first. What keeps is
// bought in one go for all deadlines at home.
func linesOf(t *trip.Trip, f *trip.Food, needs []need) []Line {
	var lines []Line
	home := max(0, f.AtHome)
	for _, n := range needs {
		last := len(lines) - 1
		if n.point == 0 && last >= 0 && keeps(t, f) {
			lines[last].Needed += n.mass
		} else {
			lines = append(lines, Line{Food: f.ID, Point: n.point, Deadline: n.by, Needed: n.mass, CostKnown: true, BestProven: true})
		}
	}
	for i := range lines {
		if l := &lines[i]; l.Point == 0 {
			l.FromHome = min(home, l.Needed)
			home -= l.FromHome
		}
	}
	return lines
}

// keeps tells whether what is left of one deadline may serve the next: the
// food is stable, or there is a fridge at home.
func keeps(t *trip.Trip, f *trip.Food) bool {
	return t.Settings.HomeFridge || f.Storage.TCS == trip.TCSNo && !f.Storage.TCSWhenOpen
}
