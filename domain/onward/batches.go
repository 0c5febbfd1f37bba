package onward

import (
	"cmp"
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// batchesNow puts each dish that is there at the meal at which it is eaten, as
// it is now portioned. Dishes of days that are over are as they were planned,
// without those who were not there.
func (w *work) batchesNow() []portions.Batch {
	pots := w.potsNow()
	type dish struct {
		portions.Batch
		key string // as it was planned
	}
	var list []dish
	for key, places := range w.batches {
		for run, at := range places {
			batch, planned := w.plan.Portions.Batches[at], dishKey(key.home, key.recipe, run+1)
			if move, ok := w.moved[planned]; ok {
				batch.Day, batch.Meal, batch.Group = move.Day, move.Meal, move.Group
			}
			if pot := pots[planned]; pot != nil {
				list = append(list, dish{pot.batch(batch), planned})
			} else if batch.Day > 0 && batch.Day < w.from {
				batch.Portions = slices.DeleteFunc(slices.Clone(batch.Portions), func(p portions.Portion) bool { return !w.present(p.Member, batch.Day) })
				list = append(list, dish{batch, planned})
			}
		}
	}
	slices.SortFunc(list, func(a, b dish) int {
		return cmp.Or(slot{a.Day, a.Meal, a.Group}.compare(slot{b.Day, b.Meal, b.Group}), cmp.Compare(a.Dish, b.Dish), cmp.Compare(a.Batch.Batch, b.Batch.Batch), cmp.Compare(a.Recipe, b.Recipe), cmp.Compare(a.key, b.key))
	})
	batches := make([]portions.Batch, len(list))
	w.runs = make(map[string]int, len(list))
	pot := map[lotKey]int{}
	for i, d := range list {
		at := lotKey{slot{d.Day, d.Meal, d.Group}, d.Recipe}
		pot[at]++
		batches[i], w.runs[d.key] = d.Batch, pot[at]
	}
	return batches
}

// pot is what is cooked of one dish.
type pot struct {
	now    slot
	held   []portions.Amount // in its bags
	eaters []portions.Portion
}

// potsNow gathers what is in the bags of each dish and who eats of it.
func (w *work) potsNow() map[string]*pot {
	pots := map[string]*pot{}
	for i := range w.lots {
		l := &w.lots[i]
		for _, bag := range l.bags {
			p := pots[dishOf(bag)]
			if p == nil {
				p = &pot{now: l.now}
				pots[dishOf(bag)] = p
			}
			for _, c := range bag.Contents {
				p.held = addAmount(p.held, portions.Amount{Food: c.Food, Place: bag.Place, Mass: c.Mass})
			}
		}
		for _, s := range l.servings {
			p := pots[s.Dish]
			at := slices.IndexFunc(p.eaters, func(e portions.Portion) bool { return e.Member == s.Member })
			if at < 0 {
				at = len(p.eaters)
				p.eaters = append(p.eaters, portions.Portion{Member: s.Member})
			}
			p.eaters[at].Amounts = addAmount(p.eaters[at].Amounts, portions.Amount{Food: s.Food, Place: s.Place, Mass: s.Mass})
			if food := w.foods[s.Food]; food != nil {
				p.eaters[at].Kcal += food.Kcal(s.Mass)
			}
		}
	}
	return pots
}

func addAmount(list []portions.Amount, a portions.Amount) []portions.Amount {
	for i := range list {
		if list[i].Food == a.Food && list[i].Place == a.Place {
			list[i].Mass += a.Mass
			return list
		}
	}
	return append(list, a)
}

// batch is the planned batch with what is there of it: the water follows what
// is in the bags.
func (p *pot) batch(planned portions.Batch) portions.Batch {
	was, is := massOf(planned.Totals), massOf(p.held)
	now := planned
	now.Day, now.Meal, now.Group = p.now.day, p.now.meal, p.now.group
	now.Totals = sortedAmounts(p.held)
	if was > 0 && was != is {
		now.Water, now.PourOff = planned.Water.Scale(float64(is)/float64(was)), planned.PourOff.Scale(float64(is)/float64(was))
	}
	now.Portions = p.eaters
	for i := range now.Portions {
		portion := &now.Portions[i]
		portion.Amounts = sortedAmounts(portion.Amounts)
		at := slices.IndexFunc(planned.Portions, func(q portions.Portion) bool { return q.Member == portion.Member })
		if at >= 0 && planned.Portions[at].Kcal > 0 {
			portion.Scale = planned.Portions[at].Scale * float64(portion.Kcal/planned.Portions[at].Kcal)
		}
	}
	slices.SortFunc(now.Portions, func(a, b portions.Portion) int { return cmp.Compare(a.Member, b.Member) })
	return now
}

func massOf(amounts []portions.Amount) units.Mass {
	var sum units.Mass
	for _, a := range amounts {
		sum += a.Mass
	}
	return sum
}

func sortedAmounts(list []portions.Amount) []portions.Amount {
	slices.SortFunc(list, func(a, b portions.Amount) int {
		return cmp.Or(cmp.Compare(placeOrder(a.Place), placeOrder(b.Place)), cmp.Compare(a.Food, b.Food))
	})
	return list
}

func placeOrder(p trip.Place) int { return slices.Index(trip.Places(), p) }
