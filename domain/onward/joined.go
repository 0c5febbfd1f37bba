package onward

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// welcome gives those who sit down to a dish without having been portioned for
// the part of a usual eater: who joined on the way, or another cook group the
// dish was moved to. Who may not eat everything that is shared gets nothing of
// it. Those of the group it was moved from no longer eat of it.
func (w *work) welcome(l *lot, due map[trip.MemberID]map[trip.FoodID]units.Mass) {
	for i := range w.trip.Crew {
		if m := &w.trip.Crew[i]; m.Group != l.now.group {
			delete(due, m.ID)
		}
	}
	guests := w.guests(l, due)
	if len(guests) == 0 {
		return
	}
	usual := map[trip.FoodID]units.Mass{}
	if hosts := units.Mass(len(due)); hosts > 0 {
		for _, portion := range due {
			for food, mass := range portion {
				usual[food] += mass / hosts
			}
		}
	}
	for _, bag := range l.bags {
		for _, content := range bag.Contents {
			if bag.Member == 0 && usual[content.Food] == 0 {
				usual[content.Food] = content.Mass / units.Mass(len(guests)+len(due))
			}
		}
	}
	for _, guest := range guests {
		due[guest] = usual
	}
}

func (w *work) guests(l *lot, due map[trip.MemberID]map[trip.FoodID]units.Mass) []trip.MemberID {
	if l.now.meal == trip.Snack {
		return nil
	}
	var list []trip.MemberID
	for i := range w.trip.Crew {
		m := &w.trip.Crew[i]
		if m.Group != l.now.group || due[m.ID] != nil || m.Present(l.home.day) && l.now.group == l.home.group || !w.present(m.ID, l.now.day) {
			continue
		}
		shared := slices.DeleteFunc(slices.Clone(l.bags), func(b *bags.Bag) bool { return b.Member != 0 })
		if len(shared) > 0 && !slices.ContainsFunc(shared, func(b *bags.Bag) bool { return !w.mayEat(m, b) }) {
			list = append(list, m.ID)
		}
	}
	return list
}
