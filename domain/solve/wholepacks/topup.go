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
	type cell struct {
		cents, grams int64
		from         int
		add          *extra
	}
	table := make([]cell, gap+1)
	for c := 1; c <= gap; c++ {
		table[c].cents = math.MaxInt64
	}
	for _, x := range s.extras(v) {
		for c := range gap {
			to := min(c+int(min(x.cents, int64(gap))), gap)
			sum := cell{table[c].cents + x.cents, table[c].grams + x.net, c, &x}
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
	for c := gap; c > 0; c = table[c].from {
		o.add(*table[c].add, v.deadline)
	}
}

// extras lists what can be bought without end on a visit, in order of item;
// what may run out is not bought above need.
func (s *search) extras(v visit) []extra {
	var list []extra
	for i, it := range s.basket.Items {
		for p, pack := range it.Packages {
			offer := pack.Offers[v.deadline]
			if pack.Shop == v.shop && offer.PriceCents > 0 && offer.Available == Unlimited {
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
	o.Purchases[x.item] = p
	o.CostCents += x.cents
	o.LeftGrams += x.net
	o.Packages++
}
