package wholepacks

import "slices"

// mostReached is the largest number of least orders that are reached together.
const mostReached = 6

// spending is what is spent on each visit whose least order is to be reached.
type spending [mostReached]int64

// way is one way to buy an item, or the first offers of it: so many packages on
// the visits, the rest elsewhere for the least.
type way struct {
	worth  worth
	spent  spending
	counts []int64 // by offer
	need   []int64 // that the counts leave
	used   []int64 // of each package
	paid   int64   // scaled, less the credits
	rest   *Purchase
}

// waysOf lists the ways to buy an item whose scaled cost with the credits is
// within a limit; what another way beats is left out. Cut tells whether any was
// above the limit; fits is false if the work ran out.
func (t *trial) waysOf(ri *reachItem, limit int64) (list []way, cut, fits bool) {
	r := t.reaching
	list = []way{{need: ri.item.NeedGrams, used: make([]int64, len(ri.item.Packages))}}
	for n := range ri.offers {
		groups := map[string][]way{}
		var keys []string
		for i := range list {
			more, above := t.counted(ri, n, &list[i], limit)
			cut = cut || above
			for _, w := range more {
				key := ri.stateKey(&w)
				if groups[key] == nil {
					keys = append(keys, key)
				}
				groups[key] = append(groups[key], w)
			}
			if r.search.work > t.mostWork {
				return nil, cut, false
			}
		}
		list = list[:0:0]
		for _, key := range keys {
			list = append(list, t.unbeatenWays(groups[key])...)
		}
	}
	whole := list[:0:0]
	for _, w := range list {
		if w.rest = r.restOf(ri, w.need, w.used); w.rest != nil {
			w.worth = w.worth.plus(w.rest.bought())
			for _, q := range ri.item.NeedGrams {
				w.worth.rest -= q << packageBits
			}
			whole = append(whole, w)
		}
	}
	return t.unbeatenWays(whole), cut, r.search.work <= t.mostWork
}

// bought is the worth of a purchase if all of it were left over.
func (p *Purchase) bought() worth { return worth{p.CostCents, p.BoughtGrams<<packageBits + p.Packages} }

// stateKey tells what matters of the first offers for the others.
func (ri *reachItem) stateKey(w *way) string {
	key := keyOf(w.need)
	if len(w.need) > 1 {
		key += keyOf(w.used)
	}
	return key
}

// counted goes on with every number of the next offer.
func (t *trial) counted(ri *reachItem, n int, w *way, limit int64) (list []way, cut bool) {
	r := t.reaching
	off := ri.offers[n]
	pack := ri.item.Packages[off.pack]
	offer := pack.Offers[off.deadline]
	most := off.most
	if pack.OneStock && offer.Available != Unlimited {
		most = min(most, offer.Available-w.used[off.pack])
	}
	for count := int64(0); count <= most; count++ {
		cents := offer.cents(count)
		more := way{need: w.need, used: w.used, spent: w.spent, paid: w.paid + cents*(creditScale-r.credit[off.visit])}
		if more.paid > limit && (offer.ManyFrom == 0 || count >= offer.ManyFrom) {
			return list, true
		}
		r.search.work += 10
		if count > 0 {
			more.need = ri.item.needAfter(w.need, count*pack.NetGrams, off.deadline)
			more.used = slices.Clone(w.used)
			more.used[off.pack] += count
		}
		switch least, ok := r.leastFrom(ri, n+1, more.need); {
		case !ok:
			continue
		case more.paid+least > limit:
			cut = true
			continue
		}
		more.worth = w.worth.plus(worth{cents, count*pack.NetGrams<<packageBits + count})
		more.spent[off.visit] += cents
		more.spent = r.capped(more.spent)
		more.counts = append(slices.Clone(w.counts), count)
		list = append(list, more)
	}
	return list, cut
}

// capped counts nothing above a least order.
func (r *reaching) capped(spent spending) spending {
	for place, n := range r.visits {
		spent[place] = min(spent[place], r.search.visits[n].least)
	}
	return spent
}

// leastFrom is what the rest of a need costs at least with the credits, the
// offers from one on being open; false if it cannot be had.
func (r *reaching) leastFrom(ri *reachItem, from int, need []int64) (int64, bool) {
	key := keyOf(need)
	cents, known := ri.least[from][key]
	if !known {
		it := ri.after[from]
		it.NeedGrams = need
		r.search.work += it.size()
		cents = -1
		if p, err := it.buy(); err == nil {
			cents = p.BoundCents
		}
		ri.least[from][key] = cents
	}
	return cents, cents >= 0
}

// restOf buys the rest of a need away from the visits; nil if it cannot be had.
func (r *reaching) restOf(ri *reachItem, need, used []int64) *Purchase {
	it := ri.rest
	key := keyOf(need)
	for p, pack := range it.Packages {
		if pack.OneStock && len(need) > 1 && pack.first().Available != Unlimited && used[p] > 0 {
			it = it.drawn(p, used[p])
			key += keyOf([]int64{int64(p), used[p]})
		}
	}
	rest, known := ri.rests[key]
	if !known {
		it.NeedGrams = need
		r.search.work += it.size()
		if p, err := it.buy(); err == nil {
			rest = &p
		}
		ri.rests[key] = rest
	}
	return rest
}

// drawn is the item after so many of a package's one stock are gone.
func (it Item) drawn(p int, count int64) Item {
	it = it.without(func(int, int) bool { return false })
	for k := range it.Packages[p].Offers {
		o := &it.Packages[p].Offers[k]
		o.Available = max(0, o.Available-count)
	}
	return it
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

// needAfter is what is still needed for each deadline once so many grams are
// bought for one of them.
func (it Item) needAfter(before []int64, grams int64, deadline int) []int64 {
	need := slices.Clone(before)
	if !it.Keeps {
		need[deadline] = max(0, need[deadline]-grams)
		return need
	}
	var due, covered int64
	for k := range need {
		due += before[k]
		still := due
		if k >= deadline {
			still = max(0, due-grams)
		}
		need[k] = max(0, still-covered)
		covered += need[k]
	}
	return need
}

// unbeatenWays drops what another way beats.
func (t *trial) unbeatenWays(list []way) []way {
	slices.SortStableFunc(list, func(a, b way) int { return a.worth.compare(b.worth) })
	var kept []way
	for i := range list {
		w := &list[i]
		t.reaching.search.work += len(kept)
		if !slices.ContainsFunc(kept, func(k way) bool { return t.beats(k.worth, k.spent, w.worth, w.spent) }) {
			kept = append(kept, *w)
		}
	}
	return kept
}

func (a spending) plus(b spending) spending {
	for n := range a {
		a[n] += b[n]
	}
	return a
}

// beats tells whether a choice need not be followed because another, with what
// it lacks on the visits bought above need, is as good.
func (t *trial) beats(a worth, spentA spending, b worth, spentB spending) bool {
	for place, above := range t.reaching.onVisit {
		lacks := spentB[place] - spentA[place]
		if lacks <= 0 {
			continue
		}
		if a.cents+lacks > b.cents {
			return false
		}
		w, ok := above.least(lacks)
		if !ok {
			return false
		}
		a = a.plus(w)
	}
	if t.costOnly {
		return a.cents <= b.cents
	}
	return !b.less(a)
}

// purchase is that of an item in one of its ways.
func (ri *reachItem) purchase(w *way) Purchase {
	p := ri.item.nothing()
	for i := range p.Counts {
		copy(p.Counts[i], w.rest.Counts[i])
	}
	for n, off := range ri.offers {
		p.Counts[off.pack][off.deadline] = w.counts[n]
	}
	p = ri.item.priced(p)
	p.BoundCents -= w.rest.CostCents - w.rest.BoundCents
	return p
}
