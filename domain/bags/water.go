package bags

import (
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// pour writes the water of each batch, what is poured off with it, on the
// bags: by mass on those for the pot if there are any, of these those that are
// no bottle. Where a batch takes from stores only, it stands with what most is
// taken of.
func (k *packer) pour(batches []portions.Batch) {
	takers := map[runKey][]taker{}
	for i := range k.bags {
		for j := range k.bags[i].Uses {
			u := &k.bags[i].Uses[j]
			key := runKey{dish{slot{u.Day, u.Meal, k.bags[i].Group}, u.Recipe}, u.Batch}
			takers[key] = append(takers[key], taker{&k.bags[i], u})
		}
	}
	runs := map[dish]int{}
	for i := range batches {
		b := &batches[i]
		at := dish{slot{b.Day, b.Meal, b.Group}, b.Recipe}
		runs[at]++
		if b.Water > 0 || b.PourOff > 0 {
			share(b, k.choose(takers[runKey{at, runs[at]}]))
		}
	}
	for i := range k.bags {
		if bag := &k.bags[i]; len(bag.Uses) == 1 {
			bag.Water, bag.PourOff = bag.Uses[0].Water, bag.Uses[0].PourOff
		}
	}
}

type runKey struct {
	dish
	run int
}

// taker is a bag, and what a batch takes from it.
type taker struct {
	bag *Bag
	use *Use
}

// choose gives those on which the water is told.
func (k *packer) choose(all []taker) []taker {
	dry := func(t taker) bool { return t.bag.Kind != StoreBag && !k.shelf.bottle(t.bag.Type) }
	for _, wanted := range []func(taker) bool{
		func(t taker) bool { return t.use.Place == trip.InPot && dry(t) && len(t.bag.Uses) == 1 },
		func(t taker) bool { return dry(t) && len(t.bag.Uses) == 1 },
	} {
		var list []taker
		for _, t := range all {
			if wanted(t) {
				list = append(list, t)
			}
		}
		if list != nil {
			return list
		}
	}
	most := 0
	for i := range all {
		if all[i].use.Mass() > all[most].use.Mass() {
			most = i
		}
	}
	if len(all) == 0 {
		return nil
	}
	return all[most : most+1]
}

// share pours by mass; nothing is lost.
func share(b *portions.Batch, takers []taker) {
	var total, sofar units.Mass
	for _, t := range takers {
		total += t.use.Mass()
	}
	all := b.Water + b.PourOff
	for _, t := range takers {
		before := float64(sofar) / float64(total)
		sofar += t.use.Mass()
		now := float64(sofar) / float64(total)
		t.use.Water = all.Scale(now) - all.Scale(before)
		t.use.PourOff = b.PourOff.Scale(now) - b.PourOff.Scale(before)
	}
}
