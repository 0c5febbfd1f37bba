package wholepacks

import (
	"math"
	"slices"
)

// Limits of the exact filling of a least order.
const (
	mostFillCents = 1 << 17    // a least order above it is only topped up
	mostOptions   = 2_000      // ways to buy one item on one visit
	mostFillWork  = 40_000_000 // steps in all, some 100 ms
)

// option is one way to buy an item, by what is bought of it on one visit.
type option struct {
	spend    int64 // on that visit
	worth    worth
	purchase Purchase
}

// reach finds the best order that spends at least the least order on a visit,
// the visits refused aside: a knapsack over the items, each of which offers the
// best purchase for every number of its packages on that visit. Known is false
// if there are too many ways; ok is false if no purchase reaches it.
func (s *search) reach(relaxed Order, state []decision, v visit) (o Order, known, ok bool) {
	if v.least > mostFillCents {
		return Order{}, false, false
	}
	var ways [][]option
	var selling []int
	work := 0
	for i, it := range s.basket.Items {
		if !it.sells(v) {
			continue
		}
		list, complete := s.options(i, state, v)
		if !complete {
			return Order{}, false, false
		}
		ways, selling = append(ways, list), append(selling, i)
		work += len(list) * int(v.least+1)
	}
	if s.work += work; s.work > mostFillWork {
		return Order{}, false, false
	}
	chosen, extra, ok := fillVisit(ways, s.extras(v), int(v.least))
	if !ok {
		return Order{}, true, false
	}
	for i, p := range relaxed.Purchases {
		if at := slices.Index(selling, i); at >= 0 {
			p = ways[at][chosen[at]].purchase
		}
		o.take(p)
	}
	for _, x := range extra {
		o.add(x, v.deadline)
	}
	return o, true, true
}

// fillVisit chooses a way for each item, and packages above need, that together
// spend at least so much, at the least worth.
func fillVisit(ways [][]option, extras []extra, least int) (chosen []int, above []extra, ok bool) {
	best := make([]worth, least+1)
	for c := 1; c <= least; c++ {
		best[c] = never
	}
	took := make([][]int16, len(ways))
	from := make([][]int32, len(ways))
	for i, list := range ways {
		next := make([]worth, least+1)
		took[i], from[i] = make([]int16, least+1), make([]int32, least+1)
		for c := range next {
			next[c] = never
		}
		for c, w := range best {
			if w.cents == never.cents {
				continue
			}
			for n := range list {
				way := &list[n]
				to := int(min(int64(c)+way.spend, int64(least)))
				if sum := (worth{w.cents + way.worth.cents, w.rest + way.worth.rest}); sum.less(next[to]) {
					next[to], took[i][to], from[i][to] = sum, int16(n), int32(c)
				}
			}
		}
		best = next
	}
	type step struct{ from, add int32 } // add: place among the extras, from 1
	steps := make([]step, least+1)
	for n := range extras {
		x := &extras[n]
		for c := range least {
			if best[c].cents == never.cents {
				continue
			}
			to := min(c+int(min(x.cents, int64(least))), least)
			if sum := (worth{best[c].cents + x.cents, best[c].rest + x.net<<packageBits + 1}); sum.less(best[to]) {
				best[to], steps[to] = sum, step{int32(c), int32(n + 1)}
			}
		}
	}
	if best[least].cents == math.MaxInt64 {
		return nil, nil, false
	}
	at := least
	for steps[at].add > 0 {
		above = append(above, extras[steps[at].add-1])
		at = int(steps[at].from)
	}
	chosen = make([]int, len(ways))
	for i := len(ways) - 1; i >= 0; i-- {
		chosen[i] = int(took[i][at])
		at = int(from[i][at])
	}
	return chosen, above, true
}

// options lists the ways to buy an item by what is bought of it on one visit;
// false if there are too many. Ways that cost more and spend no more there are
// left out.
func (s *search) options(i int, state []decision, v visit) ([]option, bool) {
	it := s.basket.Items[i]
	key := string(append(s.refusedKey(it, state), byte(v.shop), byte(v.deadline)))
	if list, known := s.bare[i][key]; known {
		return list, list != nil
	}
	open := it.without(func(pack, deadline int) bool { return s.isRefused(it, state, pack, deadline) })
	var packs []int
	ways := 1
	for p, pack := range open.Packages {
		if pack.Shop == v.shop && pack.Offers[v.deadline].Available > 0 {
			packs = append(packs, p)
			ways *= int(min(open.mostHere(p, v), mostOptions)) + 1
			if ways > mostOptions {
				s.bare[i][key] = nil
				return nil, false
			}
		}
	}
	var list []option
	counts := make([]int64, len(packs))
	for {
		if way, ok := open.buyHere(packs, counts, v); ok {
			list = append(list, way)
		}
		n := 0
		for ; n < len(packs); n++ {
			if counts[n]++; counts[n] <= open.mostHere(packs[n], v) {
				break
			}
			counts[n] = 0
		}
		if n == len(packs) {
			break
		}
	}
	list = unbeatenWays(list, v.least)
	s.bare[i][key] = list
	return list, list != nil
}

// mostHere is how many of a package it can make sense to buy on a visit: what
// covers the need, what the price of many asks for, and, of what cannot be
// bought above need on its own, what reaches the least order.
func (it Item) mostHere(p int, v visit) int64 {
	pack := it.Packages[p]
	offer := pack.Offers[v.deadline]
	need := it.NeedGrams[v.deadline]
	if it.Keeps {
		need = 0
		for _, q := range it.NeedGrams {
			need += q
		}
	}
	most := max((need+pack.NetGrams-1)/pack.NetGrams, offer.ManyFrom)
	if cheapest := offer.cheapest(); cheapest > 0 && (offer.Available != Unlimited || offer.ManyFrom > 0) {
		most = max(most, (v.least+cheapest-1)/cheapest)
	}
	return min(most, offer.Available)
}

// cheapest is the lowest price of one package.
func (o Offer) cheapest() int64 {
	if o.ManyFrom > 0 {
		return min(o.PriceCents, o.ManyCents)
	}
	return o.PriceCents
}

// buyHere buys given numbers of packages on a visit and the rest of the need,
// at best, on other visits; false if the others do not sell it.
func (it Item) buyHere(packs []int, counts []int64, v visit) (option, bool) {
	var here, spend int64
	rest := it.without(func(pack, deadline int) bool { return it.Packages[pack].Shop == v.shop && deadline == v.deadline })
	for n, p := range packs {
		here += counts[n] * it.Packages[p].NetGrams
		spend += it.Packages[p].Offers[v.deadline].cents(counts[n])
		if rest.Packages[p].OneStock {
			for k := range rest.Packages[p].Offers {
				if o := &rest.Packages[p].Offers[k]; o.Available > 0 && o.Available != Unlimited {
					o.Available = max(0, o.Available-counts[n])
				}
			}
		}
	}
	rest.NeedGrams = it.lessNeed(here, v.deadline)
	bought, err := Solve(rest)
	if err != nil {
		return option{}, false
	}
	bound := bought.BoundCents
	for n, p := range packs {
		bought.Counts[p][v.deadline] = counts[n]
	}
	cost := bought.CostCents
	bought = it.priced(bought)
	bought.BoundCents = bought.CostCents - (cost - bound)
	return option{spend: spend, worth: bought.worth(), purchase: bought}, true
}

// lessNeed is what is still needed for each deadline once so many grams are
// bought for one of them.
func (it Item) lessNeed(grams int64, deadline int) []int64 {
	need := slices.Clone(it.NeedGrams)
	if !it.Keeps {
		need[deadline] = max(0, need[deadline]-grams)
		return need
	}
	var due, covered int64
	for k := range need {
		due += it.NeedGrams[k]
		still := due
		if k >= deadline {
			still = max(0, due-grams)
		}
		need[k] = max(0, still-covered)
		covered += need[k]
	}
	return need
}

// unbeatenWays keeps, by rising worth, what spends more than all that are
// better; more than the least order counts for nothing.
func unbeatenWays(list []option, least int64) []option {
	slices.SortStableFunc(list, func(a, b option) int {
		switch {
		case a.worth.less(b.worth):
			return -1
		case b.worth.less(a.worth):
			return 1
		default:
			return 0
		}
	})
	var kept []option
	most := int64(-1)
	for _, way := range list {
		if spend := min(way.spend, least); spend > most {
			most = spend
			kept = append(kept, way)
		}
	}
	return kept
}
