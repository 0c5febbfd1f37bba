package packing

import (
	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/trip"
)

// view is how the evening is gone through.
type view int

const (
	byBag  view = iota // bag by bag, as they are closed and labelled
	byFood             // each food taken out once and weighed into all its bags
	byStow             // pack by pack and box by box: the final check
)

// rowKind is what a row of the list is.
type rowKind int

const (
	roundRow   rowKind = iota
	cleanRow           // wash before the round
	stationRow         // where the next foods are handled
	foodRow            // a food taken out
	weighRow           // the food into one bag
	bagRow
	strayRow  // a packed bag that is in the plan no longer
	stowRow   // a pack or box
	stowedRow // a bag in it
)

// row is one line of the list.
type row struct {
	kind     rowKind
	round    int
	station  packing.Station
	bulk     *packing.Bulk
	weighing packing.Weighing
	bag      *bags.Bag
	stray    *trip.PackedBag
	stow     int // place among the packs and boxes
}

// rows lists the evening in the plan's order.
func (w *work) rows(v view, onlyLeft bool) []row {
	if v == byStow {
		return w.stowRows(onlyLeft)
	}
	var list []row
	for i := range w.rounds {
		if onlyLeft && w.rounds[i].done == len(w.rounds[i].bags) {
			continue
		}
		list = append(list, row{kind: roundRow, round: i})
		if w.plan.Packing.Rounds[i].CleanFirst {
			list = append(list, row{kind: cleanRow, round: i})
		}
		if v == byFood {
			list = w.foodRows(list, i, onlyLeft)
			continue
		}
		for _, bag := range w.rounds[i].bags {
			if !onlyLeft || !w.isDone(bag) {
				list = append(list, row{kind: bagRow, round: i, bag: bag})
			}
		}
	}
	for _, stray := range w.strays {
		list = append(list, row{kind: strayRow, stray: stray})
	}
	return list
}

// foodRows adds the foods of a round, each with the bags it goes into.
func (w *work) foodRows(list []row, place int, onlyLeft bool) []row {
	station := packing.Station("")
	for b := range w.plan.Packing.Bulk {
		bulk := &w.plan.Packing.Bulk[b]
		if bulk.Round != place {
			continue
		}
		var into []row
		for _, weighing := range bulk.Into {
			bag := w.bags[weighing.Bag]
			if bag != nil && (!onlyLeft || !w.isIn(bag, bulk.Food)) {
				into = append(into, row{kind: weighRow, round: place, bulk: bulk, weighing: weighing, bag: bag})
			}
		}
		if len(into) == 0 {
			continue
		}
		if at := packing.StationOf(w.foods[bulk.Food]); at != station {
			station = at
			list = append(list, row{kind: stationRow, round: place, station: at})
		}
		list = append(append(list, row{kind: foodRow, round: place, bulk: bulk}), into...)
	}
	return list
}

// isIn tells whether a food is in its bag.
func (w *work) isIn(bag *bags.Bag, food trip.FoodID) bool {
	_, noted := w.weighed(bag.Key, food)
	return noted || w.isDone(bag)
}

// allIn counts how many bags a food is in, of those it goes into.
func (w *work) allIn(bulk *packing.Bulk) (in, all int) {
	for _, weighing := range bulk.Into {
		if bag := w.bags[weighing.Bag]; bag != nil {
			all++
			if w.isIn(bag, bulk.Food) {
				in++
			}
		}
	}
	return in, all
}

// key names a row, so that the cursor stays on it.
func (r row) key() string {
	switch r.kind {
	case bagRow:
		return r.bag.Key
	case stowedRow:
		return r.bag.Key + "\x00in"
	case weighRow:
		return r.bag.Key + "\x00" + foodKey(r.bulk.Food)
	case foodRow:
		return "\x00" + foodKey(r.bulk.Food) + roundKey(r.round)
	case strayRow:
		return "\x00stray" + r.stray.Bag
	default:
		return ""
	}
}

// canStand tells whether the cursor may stand on a row: where there is
// something to tick.
func (r row) canStand() bool { return r.key() != "" }
