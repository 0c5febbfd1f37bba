package onward

import (
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
)

// handOvers compares who had each thing last night with who has it now.
func (w *work) handOvers(now *plan.Plan) []trail.HandOver {
	carriers := carriersOn(now, w.from)
	return w.changes(now, func(item carry.Item) trip.MemberID { return carriers[carry.Thing{Kind: item.Kind, Key: item.Key}] })
}

// changes lists what was with another last night than a split gives it to.
// What is taken out of a box has no giver and is left out; so is rubbish, which
// who leaves takes along.
func (w *work) changes(now *plan.Plan, to func(carry.Item) trip.MemberID) []trail.HandOver {
	if w.from == 1 {
		return nil
	}
	before := carriersOn(now, w.from-1)
	for key := range w.given { // the own share was with whom it was for
		thing := carry.Thing{Kind: carry.BagItem, Key: key}
		if bag := w.planned(key); bag != nil && before[thing] != 0 {
			before[thing] = w.eaterOf(bag, w.from-1)
		}
	}
	gone := map[string]bool{}
	for key, end := range w.ends {
		gone[key] = end.Day < w.from
	}
	byKey := map[string]*bags.Bag{}
	for i := range now.Bags.Bags {
		byKey[now.Bags.Bags[i].Key] = &now.Bags.Bags[i]
	}
	var list []trail.HandOver
	for _, item := range itemsOn(now, w.from) {
		if bag := byKey[item.Key]; item.Kind == carry.WasteItem || item.Kind == carry.BagItem && (bag == nil || bag.LastDay < w.from || gone[item.Key]) {
			continue
		}
		item.Carrier = to(item)
		if from, had := before[carry.Thing{Kind: item.Kind, Key: item.Key}]; had && from != item.Carrier {
			list = append(list, trail.HandOver{Item: item, From: from, To: item.Carrier})
		}
	}
	return list
}

func itemsOn(p *plan.Plan, day int) []carry.Item {
	for _, stage := range p.Carry.Stages {
		if stage.FirstDay <= day && day <= stage.LastDay {
			return stage.Items
		}
	}
	return nil
}

func carriersOn(p *plan.Plan, day int) map[carry.Thing]trip.MemberID {
	found := map[carry.Thing]trip.MemberID{}
	for _, item := range itemsOn(p, day) {
		found[carry.Thing{Kind: item.Kind, Key: item.Key}] = item.Carrier
	}
	return found
}
