package packing

import (
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// noted gives the record of a bag, made if there is none yet.
func noted(t *trip.Trip, key string) *trip.PackedBag {
	if bag := t.Progress.PackedBag(key); bag != nil {
		return bag
	}
	t.Progress.Packed = append(t.Progress.Packed, trip.PackedBag{Bag: key})
	return &t.Progress.Packed[len(t.Progress.Packed)-1]
}

// tidy drops records that say nothing.
func tidy(t *trip.Trip) {
	p := &t.Progress
	p.Packed = slices.DeleteFunc(p.Packed, func(b trip.PackedBag) bool { return !b.Done && len(b.Weighed) == 0 && b.InBox == 0 && b.InPack == 0 })
	if len(p.Packed) == 0 {
		p.Packed = nil
	}
}

func setWeight(bag *trip.PackedBag, food trip.FoodID, mass units.Mass) {
	for i := range bag.Weighed {
		if bag.Weighed[i].Food == food {
			bag.Weighed[i].Mass = mass
			return
		}
	}
	bag.Weighed = append(bag.Weighed, trip.Weighing{Food: food, Mass: mass})
}

func dropWeight(bag *trip.PackedBag, drop func(trip.Weighing) bool) {
	bag.Weighed = slices.DeleteFunc(bag.Weighed, drop)
	if len(bag.Weighed) == 0 {
		bag.Weighed = nil
	}
}

// tickBag closes a bag, or opens it again. Closing notes what the plan asked
// for where nothing was weighed, so that a later plan can be compared with
// what is in the bag; opening forgets that.
func (s *Screen) tickBag(bag *bags.Bag) error {
	if s.work.isDone(bag) {
		return s.bench.Edit(lang.X("untick-bag", "open bag {{.Code}} again", data{"Code": bag.Code}), func(t *trip.Trip) error {
			record := noted(t, bag.Key)
			record.Done, record.InBox, record.InPack = false, 0, 0
			dropWeight(record, func(w trip.Weighing) bool { return slices.Contains(bag.Contents, bags.Content(w)) })
			tidy(t)
			return nil
		})
	}
	return s.bench.Edit(lang.X("tick-bag", "tick off bag {{.Code}}", data{"Code": bag.Code}), func(t *trip.Trip) error {
		record := noted(t, bag.Key)
		record.Done = true
		for _, c := range bag.Contents {
			if _, weighed := record.WeighedMass(c.Food); !weighed {
				setWeight(record, c.Food, c.Mass)
			}
		}
		return nil
	})
}

// tickWeighing notes that a food is in a bag as planned, or takes that back.
func (s *Screen) tickWeighing(bag *bags.Bag, food trip.FoodID, mass units.Mass) error {
	words := data{"Food": s.work.foodName(food), "Code": bag.Code}
	if s.work.isIn(bag, food) {
		return s.bench.Edit(lang.X("untick-weighing", "take {{.Food}} out of bag {{.Code}}", words), func(t *trip.Trip) error {
			record := noted(t, bag.Key)
			record.Done = false
			dropWeight(record, func(w trip.Weighing) bool { return w.Food == food })
			tidy(t)
			return nil
		})
	}
	return s.bench.Edit(lang.X("tick-weighing", "put {{.Food}} into bag {{.Code}}", words), func(t *trip.Trip) error {
		setWeight(noted(t, bag.Key), food, mass)
		return nil
	})
}

// tickFood notes that a food is in all its bags of the round, or takes that back.
func (s *Screen) tickFood(bulk *packing.Bulk) error {
	in, all := s.work.allIn(bulk)
	food := s.work.foodName(bulk.Food)
	if in == all {
		name := written.Counted(all, prose.Say("take %s out of one bag", food), prose.Say("take %s out of %d bags", food, all))
		return s.bench.Edit(name, func(t *trip.Trip) error {
			for _, weighing := range bulk.Into {
				record := noted(t, weighing.Bag)
				record.Done = false
				dropWeight(record, func(w trip.Weighing) bool { return w.Food == bulk.Food })
			}
			tidy(t)
			return nil
		})
	}
	name := written.Counted(all, prose.Say("put %s into one bag", food), prose.Say("put %s into %d bags", food, all))
	return s.bench.Edit(name, func(t *trip.Trip) error {
		for _, weighing := range bulk.Into {
			record := noted(t, weighing.Bag)
			if _, weighed := record.WeighedMass(bulk.Food); !weighed && !record.Done {
				setWeight(record, bulk.Food, weighing.Mass)
			}
		}
		tidy(t)
		return nil
	})
}

// weigh notes what the scale showed of a food in a bag.
func (s *Screen) weigh(bag *bags.Bag, food trip.FoodID, mass units.Mass) error {
	words := data{"Food": s.work.foodName(food), "Code": bag.Code}
	return s.bench.Edit(lang.X("weigh", "note the weight of {{.Food}} in bag {{.Code}}", words), func(t *trip.Trip) error {
		setWeight(noted(t, bag.Key), food, mass)
		return nil
	})
}

// unweigh forgets the weight of a food in a bag.
func (s *Screen) unweigh(bag *bags.Bag, food trip.FoodID) error {
	words := data{"Food": s.work.foodName(food), "Code": bag.Code}
	return s.bench.Edit(lang.X("unweigh", "forget the weight of {{.Food}} in bag {{.Code}}", words), func(t *trip.Trip) error {
		dropWeight(noted(t, bag.Key), func(w trip.Weighing) bool { return w.Food == food })
		tidy(t)
		return nil
	})
}

// dropStray takes a bag that is in the plan no longer off the list.
func (s *Screen) dropStray(key string) error {
	return s.bench.Edit(lang.L("take a bag off the list that is in the plan no longer"), func(t *trip.Trip) error {
		t.Progress.Packed = slices.DeleteFunc(t.Progress.Packed, func(b trip.PackedBag) bool { return b.Bag == key })
		tidy(t)
		return nil
	})
}
