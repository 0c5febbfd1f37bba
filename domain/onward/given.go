package onward

import (
	"cmp"
	"math"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Spare is a bag made for one who is not there any more.
type Spare struct {
	Bag    string // key
	Of     trip.MemberID
	MayEat []trip.MemberID // whom neither allergy nor diet keeps from it
}

// Gift is a proposal: a spare bag for somebody, of any cook group, who has less
// than was planned for them and may eat all of it.
type Gift struct {
	Bag      string // key
	From, To trip.MemberID
	Food     units.Mass // on the days the taker is there
	Kcal     units.Kcal
}

// spare lists the own bags of those who went home, and who of the others may
// eat them.
func (w *work) spare() []Spare {
	var list []Spare
	seen := map[string]bool{}
	for _, bag := range w.orphaned {
		if seen[bag.Key] {
			continue
		}
		seen[bag.Key] = true
		one := Spare{Bag: bag.Key, Of: bag.Member}
		for i := range w.trip.Crew {
			member := &w.trip.Crew[i]
			if member.ID != bag.Member && w.present(member.ID, w.from) && w.mayHave(member, bag.Key) {
				one.MayEat = append(one.MayEat, member.ID)
			}
		}
		list = append(list, one)
	}
	return list
}

// gifts proposes who gets spare bags, one after the other to whom it helps
// most, until nobody is short of what was planned.
func (w *work) gifts(days []Day) []Gift {
	hungry := w.hungry(days)
	if len(hungry) == 0 {
		return nil
	}
	parts := map[string][]*bags.Bag{}
	var keys []string
	for _, bag := range w.orphaned {
		if parts[bag.Key] == nil {
			keys = append(keys, bag.Key)
		}
		parts[bag.Key] = append(parts[bag.Key], bag)
	}
	slices.Sort(keys)
	var list []Gift
	for len(keys) > 0 {
		best, place, gain := Gift{}, -1, oneMove
		for i, key := range keys {
			for _, spare := range w.spareTo(parts[key]) {
				if worth := hungry.worth(spare, parts[key], w); worth > gain+1e-9 {
					best, place, gain = spare, i, worth
				}
			}
		}
		if place < 0 {
			break
		}
		hungry.feed(best, parts[best.Bag], w)
		keys = slices.Delete(keys, place, place+1)
		list = append(list, best)
	}
	slices.SortFunc(list, func(a, b Gift) int { return cmp.Compare(a.Bag, b.Bag) })
	return list
}

// spareTo gives the gifts a bag could be.
func (w *work) spareTo(parts []*bags.Bag) []Gift {
	var list []Gift
	for i := range w.trip.Crew {
		member := &w.trip.Crew[i]
		gift := Gift{Bag: parts[0].Key, From: parts[0].Member, To: member.ID}
		if !w.mayHave(member, gift.Bag) {
			continue
		}
		for _, part := range parts {
			if w.present(member.ID, part.Day) {
				gift.Food += part.Food
				gift.Kcal += part.Kcal
			}
		}
		if member.ID != gift.From && gift.Food > 0 {
			list = append(list, gift)
		}
	}
	return list
}

// shortfall is what a member has on a day and should have.
type shortfall struct{ have, want units.Kcal }

// table is the shortfalls of those who are short, by member and day.
type table map[trip.MemberID]map[int]*shortfall

// hungry finds who gets less on a day than was planned for them; who was not
// planned for, less than their need.
func (w *work) hungry(days []Day) table {
	found := table{}
	for _, day := range days {
		for _, e := range day.Members {
			want := e.Planned
			if want <= 0 {
				want = e.Target
			}
			if found[e.Member] == nil {
				found[e.Member] = map[int]*shortfall{}
			}
			found[e.Member][day.Number] = &shortfall{e.Kcal, want}
		}
	}
	for id, days := range found {
		short := false
		for _, s := range days {
			short = short || s.have < s.want*lean
		}
		if !short {
			delete(found, id)
		}
	}
	return found
}

// worth is by how much less a member is short, squared day by day as in the
// moving of dishes.
func (t table) worth(g Gift, parts []*bags.Bag, w *work) float64 {
	worth := 0.0
	for _, part := range parts {
		if s := t[g.To][part.Day]; s != nil && w.present(g.To, part.Day) {
			worth += s.bad(0) - s.bad(part.Kcal)
		}
	}
	return worth
}

func (t table) feed(g Gift, parts []*bags.Bag, w *work) {
	for _, part := range parts {
		if s := t[g.To][part.Day]; s != nil && w.present(g.To, part.Day) {
			s.have += part.Kcal
		}
	}
}

func (s *shortfall) bad(more units.Kcal) float64 {
	if s.want <= 0 {
		return 0
	}
	return math.Pow(max(0, float64((s.want-s.have-more)/s.want)), 2)
}
