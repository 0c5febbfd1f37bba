package onward

import (
	"fmt"
	"maps"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// dishKey names a pot as bags.Use.Dish does.
func dishKey(home slot, recipe trip.RecipeID, batch int) string {
	return fmt.Sprintf("d%d %s g%d r%d b%d", home.day, home.meal, home.group, recipe, batch)
}

// welcome gives those who sit down to a dish without having been portioned for
// the part of a usual eater: who joined on the way, or another cook group the
// dish was moved to. Each eats from the first pot of which they may eat all
// that is shared; who may eat from none gets nothing. Those of the group it was
// moved from no longer eat of it.
func (w *work) welcome(l *lot, pots map[string]dues) {
	usual := map[string]map[trip.FoodID]units.Mass{}
	for dish, pot := range pots {
		usual[dish] = usualPart(pot)
	}
	if l.now.group != l.home.group {
		for _, pot := range pots {
			for id := range pot {
				if m := w.trip.Member(id); m == nil || m.Group != l.now.group {
					delete(pot, id)
				}
			}
		}
	}
	if l.now.meal == trip.Snack || l.home.meal == trip.Snack {
		return
	}
	for i := range w.trip.Crew {
		m := &w.trip.Crew[i]
		if m.Group != l.now.group || !w.present(m.ID, l.now.day) || portionedFor(pots, m.ID) || m.Present(l.home.day) && l.now.group == l.home.group {
			continue
		}
		pot, shared := w.potFor(l, m)
		switch {
		case pot != "":
			if pots[pot] == nil {
				pots[pot] = dues{}
			}
			pots[pot][m.ID] = maps.Clone(usual[pot])
		case shared:
			l.refused = append(l.refused, m.ID)
		}
	}
}

func portionedFor(pots map[string]dues, id trip.MemberID) bool {
	for _, pot := range pots {
		if pot[id] != nil {
			return true
		}
	}
	return false
}

// potFor gives the first pot from which a guest may eat all that is shared, and
// whether there is any pot to share.
func (w *work) potFor(l *lot, guest *trip.Member) (dish string, shares bool) {
	for _, dish := range l.dishes {
		shared, may := false, true
		for _, bag := range l.bags {
			if bag.Member == 0 && dishOf(bag) == dish {
				shared = true
				may = may && w.mayEat(guest, bag)
			}
		}
		if shared && may {
			return dish, true
		}
		shares = shares || shared
	}
	return "", shares
}

// usualPart is the mean of the portions of a pot, by food.
func usualPart(pot dues) map[trip.FoodID]units.Mass {
	usual := map[trip.FoodID]units.Mass{}
	for _, portion := range pot {
		for food, mass := range portion {
			usual[food] += mass
		}
	}
	for food := range usual {
		usual[food] /= units.Mass(max(1, len(pot)))
	}
	return usual
}

// allMayEat tells whether everybody of a group who is there on a day may eat
// what the pots of a dish share.
func (w *work) allMayEat(l *lot, group trip.GroupID, day int) bool {
	for i := range w.trip.Crew {
		m := &w.trip.Crew[i]
		if m.Group != group || !w.present(m.ID, day) {
			continue
		}
		if slices.ContainsFunc(l.bags, func(b *bags.Bag) bool { return b.Member == 0 && !w.mayEat(m, b) }) {
			return false
		}
	}
	return true
}
