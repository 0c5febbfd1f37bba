package wholepacks

import (
	"math"
	"slices"
)

// mostGapCents bounds the table with which a missing amount is filled exactly.
const mostGapCents = 1 << 20

// topUp returns the order with more packages bought on each visit that misses
// its least order, at the least extra cost that whole packages allow; where
// nothing can be added the order stays as it is.
func (s *search) topUp(o Order, spent []int64) Order {
	o.Purchases = slices.Clone(o.Purchases)
	for n, v := range s.visits {
		if gap := v.least - spent[n]; spent[n] >= 0 && gap > 0 && gap <= mostGapCents {
			s.fill(&o, v, int(gap))
		}
	}
	return o
}

// extra is one package that may be bought above need.
type extra struct {
	item, pack int
	cents, net int64
}

// fill covers gap cents with packages of one visit: least cents, then fewest
// grams.
func (s *search) fill(o *Order, v visit, gap int) {
	extras := s.extras(v)
	if s.work += gap * len(extras); s.work > mostFillWork {
		o.fillWithOne(extras, v, int64(gap))
		return
	}
	type cell struct {
		cents, grams int64
		from, add    int32 // add: place among the extras
	}
	table := make([]cell, gap+1)
	for c := 1; c <= gap; c++ {
		table[c].cents = math.MaxInt64
	}
	for n, x := range extras {
		for c := range gap {
			to := min(c+int(min(x.cents, int64(gap))), gap)
			sum := cell{table[c].cents + x.cents, table[c].grams + x.net, int32(c), int32(n)}
			if table[c].cents == math.MaxInt64 {
				continue
			}
			if sum.cents < table[to].cents || sum.cents == table[to].cents && sum.grams < table[to].grams {
				table[to] = sum
			}
		}
	}
	if table[gap].cents == math.MaxInt64 {
		return
	}
	for c := gap; c > 0; c = int(table[c].from) {
		o.add(extras[table[c].add], v.deadline)
	}
}

// fillWithOne covers a gap with one kind of package, the one that does it for
// the least.
func (o *Order) fillWithOne(extras []extra, v visit, gap int64) {
	best, least := -1, worth{}
	for n, x := range extras {
		count := (gap + x.cents - 1) / x.cents
		if sum := (worth{count * x.cents, count * x.net}); best < 0 || sum.less(least) {
			best, least = n, sum
		}
	}
	if best < 0 {
		return
	}
	for missing := gap; missing > 0; missing -= extras[best].cents {
		o.add(extras[best], v.deadline)
	}
}

// extras lists what can be bought without end on a visit, in order of item;
// what may run out, or costs less by the many, is not bought above need.
func (s *search) extras(v visit) []extra {
	var list []extra
	for i, it := range s.basket.Items {
		for p, pack := range it.Packages {
			offer := pack.Offers[v.deadline]
			if pack.Shop == v.shop && offer.PriceCents > 0 && offer.Available == Unlimited && offer.ManyFrom == 0 {
				list = append(list, extra{i, p, offer.PriceCents, pack.NetGrams})
			}
		}
	}
	return list
}

// add buys one more package, leaving the purchases of other orders untouched.
func (o *Order) add(x extra, deadline int) {
	p := o.Purchases[x.item]
	p.Counts = slices.Clone(p.Counts)
	p.Counts[x.pack] = slices.Clone(p.Counts[x.pack])
	p.Counts[x.pack][deadline]++
	p.CostCents += x.cents
	p.BoughtGrams += x.net
	p.LeftGrams += x.net
	p.Packages++
	p.BoundCents += x.cents
	o.Purchases[x.item] = p
	o.CostCents += x.cents
	o.LeftGrams += x.net
	o.Packages++
}
