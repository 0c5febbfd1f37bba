package wholepacks

import "slices"

// Limits of the exact filling of least orders.
const (
	mostWork       = 30_000_000 // steps in all, some 0.4 s
	mostTrialWork  = 10_000_000 // of these for one cost
	mostCompared   = 250        // labels that each other is held against
	mostTieWork    = 1_000_000  // of these for what is left over at one cost
	mostCreditCost = 1 << 44    // cents of an order; above it they would not fit
)

// outcome of a search for an order that reaches least orders.
type outcome int

const (
	reached     outcome = iota // the best is found
	unreachable                // there is none, or none within the limit
	unknown                    // too much work; the bound holds
)

// label is a choice of ways for the first items.
type label struct {
	worth worth
	spent spending
	from  int32 // label of the items before
	way   int32
}

// best finds the best order that reaches the least orders, of those that cost
// no more than a limit: first the least cost, going further and further above
// the bound, then the least left over at that cost. Tied is set if the work ran
// out over the second.
func (r *reaching) best(limit int64) (o Order, tied bool, found outcome) {
	if r.fixed.CostCents > mostCreditCost || r.search.work > 2*mostWork {
		return Order{}, false, unknown
	}
	r.raise()
	bound := r.leastCents()
	if bound > limit {
		return Order{}, false, unreachable
	}
	if r.search.work > mostWork || !r.tabulated() {
		return Order{}, false, unknown
	}
	for above := bound/4096 + 1; ; above *= 2 {
		most := min(bound+above, limit)
		if most > mostCreditCost {
			return Order{}, false, unknown
		}
		t := trial{reaching: r, most: most, costOnly: true, mostWork: min(mostWork, r.search.work+mostTrialWork)}
		fits := t.run()
		switch {
		case t.found && (t.best.cents <= most || !t.cut):
			if fits || t.best.cents == bound {
				return r.leastLeft(t.order())
			}
			return t.order(), false, unknown
		case !fits:
			return Order{}, false, unknown
		case !t.cut || most == limit:
			return Order{}, false, unreachable
		case t.found:
			limit = min(limit, t.best.cents)
		}
	}
}

// leastLeft finds what leaves least of the orders that cost as little as one.
func (r *reaching) leastLeft(cheapest Order) (o Order, tied bool, found outcome) {
	t := trial{reaching: r, most: cheapest.CostCents, mostWork: min(mostWork, r.search.work+mostTieWork)}
	fits := t.run()
	if t.found && t.best.less(cheapest.worth()) {
		cheapest = t.order()
	}
	return cheapest, !fits, reached
}

// leastCents is the bound in whole cents.
func (r *reaching) leastCents() int64 { return (r.bound + creditScale - 1) / creditScale }

// tabulated tells whether what may be bought above need is known up to the
// least orders.
func (r *reaching) tabulated() bool {
	for place, n := range r.visits {
		a := r.onVisit[place]
		if len(a.extras) > 0 && a.at(r.search.visits[n].least) >= int64(len(a.cells)) {
			return false
		}
	}
	return true
}

// trial combines the ways that an order within a cost may have.
type trial struct {
	reaching *reaching
	most     int64 // cents
	costOnly bool  // what is left over counts for nothing
	mostWork int
	cut      bool         // something above it was left out
	items    []*reachItem // those with few ways first
	ways     [][]way
	stages   [][]label
	ahead    []ahead // by stage

	found bool
	best  worth
	pick  pick
}

// pick is an order by the label of a stage, the way of the next item, and the
// likely ways of those after.
type pick struct{ stage, label, way int }

// ahead is what is known of the items from one on.
type ahead struct {
	least  int64    // scaled cost, credited, at least
	rest   int64    // of their worth, at least
	can    spending // at most
	likely worth    // in the ways that are cheapest with the credits
	spends spending // in those
	way    int      // of the first of them
}

// run looks for the best order; false if the work ran out before it was sure.
func (t *trial) run() bool {
	r := t.reaching
	slack := t.most*creditScale - r.bound
	for _, ri := range r.items {
		list, cut, fits := t.waysOf(ri, ri.paid+slack)
		t.cut = t.cut || cut
		if !fits {
			return false
		}
		if len(list) == 0 {
			return true
		}
		at := 0
		for at < len(t.items) && len(t.ways[at]) <= len(list) {
			at++
		}
		t.items, t.ways = slices.Insert(t.items, at, ri), slices.Insert(t.ways, at, list)
	}
	t.lookAhead()
	t.stages = [][]label{{{worth: worth{r.fixed.CostCents, r.fixed.LeftGrams<<packageBits + r.fixed.Packages}}}}
	t.finish(0)
	for n := range len(t.items) - 1 {
		if !t.extend(n) {
			return false
		}
		t.finish(n + 1)
	}
	return t.close()
}

// finish completes each label of a stage in the likely way.
func (t *trial) finish(stage int) {
	a := &t.ahead[stage]
	for n := range t.stages[stage] {
		l := &t.stages[stage][n]
		t.offer(l.worth.plus(a.likely), l.spent.plus(a.spends), pick{stage, n, a.way})
	}
}

// offer proposes an order that lacks only what is bought above need.
func (t *trial) offer(sum worth, spent spending, p pick) {
	r := t.reaching
	for place, v := range r.visits {
		w, ok := r.onVisit[place].least(r.search.visits[v].least - spent[place])
		if !ok {
			return
		}
		if sum = sum.plus(w); t.found && !sum.less(t.best) {
			return
		}
	}
	t.found, t.best, t.pick = true, sum, p
}

func (t *trial) lookAhead() {
	r := t.reaching
	t.ahead = make([]ahead, len(t.ways)+1)
	for n := len(t.ways) - 1; n >= 0; n-- {
		a, next := &t.ahead[n], &t.ahead[n+1]
		a.least = next.least + t.items[n].paid
		leastRest, leastCost := t.ways[n][0].worth.rest, int64(0)
		for i := range t.ways[n] {
			w := &t.ways[n][i]
			leastRest = min(leastRest, w.worth.rest)
			cost := w.worth.cents * creditScale
			for place := range r.visits {
				a.can[place] = max(a.can[place], w.spent[place])
				cost -= w.spent[place] * r.credit[place]
			}
			if i == 0 || cost < leastCost {
				a.way, leastCost = i, cost
			}
		}
		a.rest = next.rest + leastRest
		a.likely = next.likely.plus(t.ways[n][a.way].worth)
		for place := range r.visits {
			a.can[place] += next.can[place]
			a.spends[place] = next.spends[place] + t.ways[n][a.way].spent[place]
		}
	}
}

// close tries every way of the last item.
func (t *trial) close() bool {
	last := len(t.items) - 1
	if last < 0 {
		return true
	}
	for n := range t.stages[last] {
		l := &t.stages[last][n]
		if t.reaching.search.work += 2 * len(t.ways[last]); t.reaching.search.work > t.mostWork {
			return false
		}
		for i := range t.ways[last] {
			w := &t.ways[last][i]
			more := label{worth: l.worth.plus(w.worth), spent: t.reaching.capped(l.spent.plus(w.spent))}
			if t.mayFit(&more, last+1) {
				t.offer(more.worth, more.spent, pick{last, n, i})
			}
		}
	}
	return true
}

// extend adds the next item to the labels; false if there are too many.
func (t *trial) extend(n int) bool {
	r := t.reaching
	var next []label
	best := map[spending]int{}
	for from := range t.stages[n] {
		l := &t.stages[n][from]
		r.search.work += 5 * len(t.ways[n])
		for i := range t.ways[n] {
			w := &t.ways[n][i]
			more := label{l.worth.plus(w.worth), r.capped(l.spent.plus(w.spent)), int32(from), int32(i)}
			if !t.mayFit(&more, n+1) {
				continue
			}
			if at, known := best[more.spent]; !known {
				best[more.spent] = len(next)
				next = append(next, more)
			} else if more.worth.less(next[at].worth) {
				next[at] = more
			}
		}
		if r.search.work > t.mostWork {
			return false
		}
	}
	t.stages = append(t.stages, t.unbeaten(next))
	return r.search.work <= t.mostWork
}

// mayFit tells whether an order within the cost may begin so.
func (t *trial) mayFit(l *label, n int) bool {
	r := t.reaching
	a := &t.ahead[n]
	cost := l.worth.cents*creditScale + a.least
	for place, at := range r.visits {
		missing := r.search.visits[at].least - l.spent[place]
		cost += missing * r.credit[place]
		if above := missing - a.can[place]; above > 0 {
			if len(r.onVisit[place].extras) == 0 {
				return false
			}
			cost += above * (creditScale - r.credit[place])
		}
	}
	if cost > t.most*creditScale {
		t.cut = true
		return false
	}
	switch {
	case !t.found || t.best.cents > t.most:
		return true
	case t.costOnly:
		return cost <= (t.best.cents-1)*creditScale
	default: // no order costs less than the best
		return l.worth.rest+a.rest < t.best.rest
	}
}

// unbeaten drops labels that another beats.
func (t *trial) unbeaten(list []label) []label {
	slices.SortStableFunc(list, func(a, b label) int { return a.worth.compare(b.worth) })
	var kept []label
	for i := range list {
		l := &list[i]
		beaten := false
		for k := range min(len(kept), mostCompared) {
			if t.reaching.search.work++; t.beats(kept[k].worth, kept[k].spent, l.worth, l.spent) {
				beaten = true
				break
			}
		}
		if t.reaching.search.work > t.mostWork {
			return nil
		}
		if !beaten {
			kept = append(kept, *l)
		}
	}
	return kept
}

// order puts together the best.
func (t *trial) order() Order {
	r := t.reaching
	p := t.pick
	spent := t.stages[p.stage][p.label].spent
	chosen := map[int]Purchase{}
	for n := p.stage; n < len(t.items); n++ {
		w := &t.ways[n][t.ahead[n].way]
		if n == p.stage {
			w = &t.ways[n][p.way]
		}
		chosen[t.items[n].index] = t.items[n].purchase(w)
		spent = spent.plus(w.spent)
	}
	for n, at := p.stage-1, p.label; n >= 0; n-- {
		l := t.stages[n+1][at]
		chosen[t.items[n].index] = t.items[n].purchase(&t.ways[n][l.way])
		at = int(l.from)
	}
	o := r.assemble(chosen)
	for place, n := range r.visits {
		v := r.search.visits[n]
		if missing := v.least - spent[place]; missing > 0 {
			for _, x := range r.onVisit[place].packages(missing) {
				o.add(x, v.deadline)
			}
		}
	}
	return o
}
