package wholepacks

import "slices"

// mostGapSteps bounds the table of what is bought above need on a visit.
const mostGapSteps = 1 << 18

// extra is one package that may be bought above need.
type extra struct {
	item, pack int
	cents, net int64
}

// above tells, for one visit, the cheapest packages above need that spend a
// missing amount: least cents, then grams, then packages. The amounts stand in
// steps of the greatest common divisor of the prices.
type above struct {
	extras []extra
	step   int64
	cells  []aboveCell // by the amount in steps
}

type aboveCell struct {
	worth worth
	add   int32 // place of an extra; the rest is the cell that many steps below
}

// aboveOn makes the table of a visit, once for all nodes.
func (s *search) aboveOn(n int) *above {
	if s.above[n] == nil {
		a := &above{extras: s.extras(s.visits[n])}
		for _, x := range a.extras {
			a.step = commonDivisor(a.step, x.cents)
		}
		if a.step > 0 {
			a.tabulate(min(mostGapSteps, (s.visits[n].least+a.step-1)/a.step))
		}
		s.above[n] = a
	}
	return s.above[n]
}

func (a *above) tabulate(steps int64) {
	a.cells = make([]aboveCell, steps+1)
	for c := int64(1); c <= steps; c++ {
		a.cells[c].worth = never
		for n, x := range a.extras {
			w := a.cells[max(0, c-x.cents/a.step)].worth.plus(x.worth())
			if w.less(a.cells[c].worth) {
				a.cells[c] = aboveCell{w, int32(n)}
			}
		}
	}
}

// least is the worth of spending a missing amount; false if that is not to be had.
func (a *above) least(cents int64) (worth, bool) {
	if cents <= 0 {
		return worth{}, true
	}
	if at := a.at(cents); at < int64(len(a.cells)) {
		return a.cells[at].worth, true
	}
	return worth{}, false
}

// at is the cell of a missing amount.
func (a *above) at(cents int64) int64 {
	if a.step == 0 {
		return int64(len(a.cells))
	}
	return (cents + a.step - 1) / a.step
}

// packages lists what spends a missing amount. Beyond the table it is one kind
// of package, the one that does it for the least.
func (a *above) packages(cents int64) []extra {
	var list []extra
	if a.at(cents) >= int64(len(a.cells)) {
		return a.alike(cents)
	}
	for at := a.at(cents); at > 0; {
		x := a.extras[a.cells[at].add]
		list = append(list, x)
		at = max(0, at-x.cents/a.step)
	}
	return list
}

func (a *above) alike(cents int64) []extra {
	best, least, times := -1, worth{}, int64(0)
	for n, x := range a.extras {
		count := (cents + x.cents - 1) / x.cents
		if w := (worth{count * x.cents, count * x.worth().rest}); best < 0 || w.less(least) {
			best, least, times = n, w, count
		}
	}
	if best < 0 {
		return nil
	}
	return slices.Repeat([]extra{a.extras[best]}, int(times))
}

func (x extra) worth() worth { return worth{x.cents, x.net<<packageBits + 1} }

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

// topUp returns the order with more packages bought on each visit that misses
// its least order; where nothing can be added the order stays as it is.
func (s *search) topUp(o Order, spent []int64) Order {
	o.Purchases = slices.Clone(o.Purchases)
	for n, v := range s.visits {
		if spent[n] < 0 || spent[n] >= v.least {
			continue
		}
		for _, x := range s.aboveOn(n).packages(v.least - spent[n]) {
			o.add(x, v.deadline)
		}
	}
	return o
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
