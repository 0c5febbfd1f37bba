package carry

import (
	"math"

	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Estimate gives the loads of an ideal split into crumbs: everybody's own kit
// and own share, and of the rest what brings all to one level. The needs of
// the first rounds are worked out on it; it costs no search, and a small
// change of food changes it a little.
func Estimate(w Work) needs.Loads {
	loads := make(needs.Loads, len(w.Trip.Crew))
	for i := range loads {
		loads[i] = make([]units.Mass, len(w.Trip.Days))
	}
	for day := 1; day <= len(w.Trip.Days); day++ {
		estimateDay(w, day, loads)
	}
	shares := w.shareWater(func(place, day int) filled { return filled{load: loads[place][day-1]} })
	for at, share := range shares {
		loads[at.place][at.day-1] += share.drink + share.toCook
	}
	return loads
}

func estimateDay(w Work, day int, loads needs.Loads) {
	pinned, free := make([]units.Mass, len(w.Trip.Crew)), freeMass(w, day)
	for i := range w.Trip.Crew {
		if w.there(i, day) {
			pinned[i] = w.Trip.Crew[i].OwnKit
		}
	}
	leg := trip.LegOf(w.Legs, day)
	for b := range w.Bags.Bags {
		bag := &w.Bags.Bags[b]
		if bag.Leg > leg || trip.LegOf(w.Legs, bag.LastDay) < leg {
			continue
		}
		mass := bag.On(day)
		if i := w.ownerOn(bag.Member, day); i >= 0 {
			pinned[i] += mass
		} else {
			free += mass
		}
	}
	level := w.fairLevel(day, pinned, free)
	for i := range w.Trip.Crew {
		if w.there(i, day) {
			loads[i][day-1] = atLevel(&w.Trip.Crew[i], pinned[i], level)
		}
	}
}

// freeMass is gear and fuel: what anybody may carry beside bags.
func freeMass(w Work, day int) units.Mass {
	free, leg := units.Mass(0), trip.LegOf(w.Legs, day)
	for i := range w.Trip.Gear {
		free += w.Trip.Gear[i].Mass
	}
	for _, fuel := range w.Cooking.Fuel {
		if fuel.Leg != leg {
			continue
		}
		for _, container := range fuel.Containers {
			free += container.Empty
			if container.EmptyFrom == 0 || day < container.EmptyFrom {
				free += container.Fuel
			}
		}
	}
	return free
}

func (w *Work) ownerOn(member trip.MemberID, day int) int {
	if member == 0 {
		return -1
	}
	for i := range w.Trip.Crew {
		if w.Trip.Crew[i].ID == member && w.there(i, day) {
			return i
		}
	}
	return -1
}

// atLevel is a member's load where the common share is level.
func atLevel(member *trip.Member, pinned units.Mass, level float64) units.Mass {
	load := units.Mass(math.Round(level * float64(capabilityMass(member))))
	if limit, limited := member.LoadLimit.Get(); limited {
		load = min(load, limit)
	}
	return max(load, pinned)
}

// fairLevel is the least common share at which the free mass is carried; at
// limits that leave no room for all, the share at which only the limits hold.
func (w *Work) fairLevel(day int, pinned []units.Mass, free units.Mass) float64 {
	held := func(level float64) units.Mass {
		sum := units.Mass(0)
		for i := range w.Trip.Crew {
			if w.there(i, day) {
				sum += atLevel(&w.Trip.Crew[i], pinned[i], level) - pinned[i]
			}
		}
		return sum
	}
	low, high := 0.0, 1.0
	for range 8 {
		if held(high) >= free {
			break
		}
		high *= 2
	}
	for range 50 {
		if middle := (low + high) / 2; held(middle) < free {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}
