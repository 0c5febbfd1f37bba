package bags

import (
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
)

// keptKey is the last snacks of a member on a leg.
type keptKey struct {
	member trip.MemberID
	leg    int
}

// keptSnacks tells from which day on snacks are part of a reserve.
func keptSnacks(list []portions.Reserve) map[keptKey]int {
	from := map[keptKey]int{}
	for i := range list {
		for _, kept := range list[i].Kept {
			from[keptKey{list[i].Member, kept.Leg}] = kept.FromDay
		}
	}
	return from
}

// keptBack tells whether a member's snack is not to be touched before there is
// need. What does not keep is eaten on its day all the same.
func (k *packer) keptBack(s *sitting, w *ware, member trip.MemberID) bool {
	from := k.keptFrom[keptKey{member, s.leg}]
	return from > 0 && s.Day >= from && !w.perishes()
}

// gatherReserve hands a member's reserve on top of all meals to its lots.
func (k *packer) gatherReserve(r *portions.Reserve) {
	member := k.trip.Member(r.Member)
	if member == nil {
		return
	}
	for _, a := range r.Packed {
		w := k.foods[a.Food]
		if w == nil || a.Mass <= 0 {
			continue
		}
		key := lotKey{kind: ReserveBag, day: r.LastDay, group: member.Group, member: r.Member, place: trip.AtBowl}
		key.setHandling(w, w.meltsAt(slices.Max(k.hot[r.FirstDay-1:r.LastDay])))
		l := k.lot(key)
		l.reserve, l.carriedFrom = true, r.FirstDay
		l.lines = append(l.lines, line{member: r.Member, ware: w, mass: a.Mass})
	}
}

// fillReserve writes a part of a reserve into a bag.
func (l *lot) fillReserve(bag *Bag, part []line) {
	bag.Day, bag.LastDay, bag.Place, bag.Eaters = l.key.day, l.key.day, trip.AtBowl, 1
	bag.Contents = contents(part)
	for _, a := range part {
		bag.Kcal += a.ware.food.Kcal(a.mass)
	}
}
