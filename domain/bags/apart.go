package bags

import (
	"slices"
	"strconv"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
)

// apart knows whose part must be sealed by itself: of who is allergic to
// something that the others of their cook group eat. Into what is handed round
// go hands, which have held everything that is eaten that day. Into a store
// goes a spoon, which has been in what is eaten at table on the leg; snacks
// are eaten from the hand.
type apart struct {
	legs    []trip.Leg
	members map[trip.MemberID]*trip.Member // with allergies
	handled map[apartKey]reason            // worst state of all that is eaten on a day
	spooned map[apartKey]reason            // of what is eaten at table
}

type apartKey struct {
	group    trip.GroupID
	day      int
	allergen trip.Allergen
}

// reason is the food that spreads an allergen: the first in the worst state.
type reason struct {
	food  trip.FoodID
	state trip.Presence
}

// newApart looks for what members are allergic to in all that is eaten.
func newApart(k *packer, batches []portions.Batch) *apart {
	a := &apart{legs: k.legs, members: map[trip.MemberID]*trip.Member{}, handled: map[apartKey]reason{}, spooned: map[apartKey]reason{}}
	var allergens []trip.Allergen
	for i := range k.trip.Crew {
		m := &k.trip.Crew[i]
		if len(m.Allergies) == 0 {
			continue
		}
		a.members[m.ID] = m
		for _, allergy := range m.Allergies {
			if !slices.Contains(allergens, allergy.Allergen) {
				allergens = append(allergens, allergy.Allergen)
			}
		}
	}
	for i := range batches {
		b := &batches[i]
		for _, amount := range b.Totals {
			w := k.foods[amount.Food]
			if w == nil || amount.Mass <= 0 {
				continue
			}
			for _, allergen := range allergens {
				found := reason{w.food.ID, w.presence(allergen)}
				if found.state == trip.Free {
					continue
				}
				key := apartKey{b.Group, b.Day, allergen}
				worsen(a.handled, key, found)
				if b.Meal != trip.Snack {
					worsen(a.spooned, key, found)
				}
			}
		}
	}
	return a
}

func worsen(in map[apartKey]reason, key apartKey, found reason) {
	if known, ok := in[key]; !ok || trip.Worse(known.state, found.state) != known.state {
		in[key] = found
	}
}

// cause gives what keeps a member apart from a group on a day: a food that
// contains what they are allergic to or, where traces harm, one that is not
// declared free of it.
func (a *apart) cause(in map[apartKey]reason, member trip.MemberID, group trip.GroupID, day int) (reason, trip.Allergen, bool) {
	m := a.members[member]
	if m == nil {
		return reason{}, "", false
	}
	for _, allergy := range m.Allergies {
		if found, ok := in[apartKey{group, day, allergy.Allergen}]; ok && (found.state == trip.Contains || allergy.Severe) {
			return found, allergy.Allergen, true
		}
	}
	return reason{}, "", false
}

// why gives what keeps a member's own bag apart.
func (a *apart) why(bag *Bag) (reason, trip.Allergen, bool) {
	if cause, allergen, ok := a.cause(a.handled, bag.Member, bag.Group, bag.Day); ok {
		return cause, allergen, true
	}
	for day := a.legs[bag.Leg].FirstDay; day <= a.legs[bag.Leg].LastDay; day++ {
		if cause, allergen, ok := a.cause(a.spooned, bag.Member, bag.Group, day); ok {
			return cause, allergen, true
		}
	}
	return reason{}, "", false
}

// fromHands tells whether a member takes nothing from what is handed round.
func (a *apart) fromHands(member trip.MemberID, group trip.GroupID, day int) bool {
	_, _, yes := a.cause(a.handled, member, group, day)
	return yes
}

// fromSpoons tells whether a member takes nothing from the stores of a leg.
func (a *apart) fromSpoons(member trip.MemberID, group trip.GroupID, leg int) bool {
	if a.members[member] == nil {
		return false
	}
	for day := a.legs[leg].FirstDay; day <= a.legs[leg].LastDay; day++ {
		if _, _, yes := a.cause(a.spooned, member, group, day); yes {
			return true
		}
	}
	return false
}

// eaters names those of a pot who take nothing from the stores, as words of a
// bag key.
func (a *apart) eaters(s *sitting) string {
	names := ""
	for i := range s.Portions {
		if id := s.Portions[i].Member; a.fromSpoons(id, s.Group, s.leg) {
			names += " m" + strconv.FormatInt(int64(id), 10)
		}
	}
	if names == "" {
		return ""
	}
	return "clean" + names
}
