package fairsplit

import (
	"cmp"
	"math"
	"slices"
)

// gear is a branch and bound over the things that weigh on several days or are heavy: who
// carries which of them decides most of what whole items cost beyond crumbs. What is
// left to share out when they have carriers are many small bags, for which the
// relaxation is nearly right. Each node has an exact bound by its prices.
type gear struct {
	h       *hunt
	k       *crumbs // a cell for each item
	hours   []int64
	ceiling int64 // largest R1 looked at, or 0
	need    int64 // a bound as good as proof
	order   []int32
	cellOf  []int32
	open    [][]int32 // carriers of each item
	tables  [][]*simplex
	price   []float64
	least   int64 // bound on what was left out
	leaves  []leaf
	layers  *layers
	beam    *beam
	steps   int64
	budget  int64
}

// leaf is a way to hand out the things of the gear.
type leaf struct {
	carrier []int32 // in the order of the gear
	bound   int64
	level   int  // how far above its bound was looked, as a power of 2
	stuck   bool // where whole lists were too long
}

// The plain search settles most small splits. Gear is looked at after so many rounds.
const gearRound = 1

// What it takes about to list the halves of all days' bags and to look at a leaf, and what a
// beam may take at one.
const (
	layersWork = 6_000_000
	beamWork   = 4_000_000
)

// mostLeaves is how many leaves are kept, as each is a search of its own.
const mostLeaves = 400

// matchWays is how many splits of a day's bags can be matched, as a power of 2.
const matchWays = 32.0

// newGear looks for splits better than value; hours and ceiling as for the crumbs.
func (h *hunt) newGear(hours []int64, value, ceiling, budget int64) *gear {
	in := h.in
	g := &gear{h: h, hours: hours, ceiling: ceiling, budget: budget, least: never}
	g.need = provenAbove(value)
	g.k = newCrumbs(in, h.bounds, hours, 1<<30)
	if ceiling > 0 {
		g.k.ceiling[0] = float64(ceiling) / float64(h.bounds.day[0])
	}
	g.cellOf = make([]int32, in.items)
	for c := range g.k.cells {
		g.cellOf[g.k.cells[c].items[0]] = int32(c)
	}
	g.order = in.gearOrder()
	g.open = slices.Clone(in.allowed)
	g.price = make([]float64, g.k.rows)
	return g
}

// provenAbove is the least bound by which a value counts as proven.
func provenAbove(value int64) int64 {
	bound := value - value/10001
	for bound > 0 && nearly(bound-1) >= value {
		bound--
	}
	for nearly(bound) < value {
		bound++
	}
	return bound
}

// gearOrder lists the items to branch on, those that weigh most over the days first: what
// weighs on days after its own, and heavy items until the rest of each day can be
// matched.
func (in *instance) gearOrder() []int32 {
	batches, order := in.batches()
	for _, batch := range batches {
		batch = slices.DeleteFunc(batch, func(j int32) bool {
			if in.falls[j] {
				order = append(order, j)
			}
			return in.falls[j]
		})
		slices.SortFunc(batch, in.compareItems)
		ways := 0.0
		for _, j := range batch {
			ways += log2(len(in.allowed[j]))
		}
		for n := 0; ways > matchWays; n++ {
			ways -= log2(len(in.allowed[batch[n]]))
			order = append(order, batch[n])
		}
	}
	weight := func(j int32) int64 {
		sum := int64(0)
		for d, hours := range in.hours {
			sum += hours * int64(in.grams(j, d))
		}
		return sum
	}
	slices.SortFunc(order, func(a, b int32) int {
		return cmp.Or(cmp.Compare(weight(b), weight(a)), in.compareItems(a, b), cmp.Compare(a, b))
	})
	return order
}

// log2 is rounded to a sixteenth, up to 16.
func log2(n int) float64 {
	return [17]float64{0, 0, 1, 1.625, 2, 2.375, 2.625, 2.8125, 3, 3.1875, 3.375, 3.5, 3.625, 3.75, 3.8125, 3.9375, 4}[min(n, 16)]
}

// search finds the leaves that are a little above the root's bound, or if there are none a
// little more, as the best split known may be far from the best there is.
func (g *gear) search() {
	proof := g.need
	root := newSimplex(g.k, g.h.best.carrier, &random{state: 1})
	g.tables = make([][]*simplex, len(g.order)+1)
	bound, _ := g.solve(root)
	for above := max(1, bound/1000); ; above *= 2 {
		g.need, g.least, g.leaves = min(proof, bound+above), never, nil
		if bound >= proof {
			g.least = bound
			return
		}
		g.descend(root, 0, bound, nil)
		if len(g.leaves) > 0 || g.need == proof || g.steps > g.budget {
			break
		}
	}
	slices.SortStableFunc(g.leaves, func(a, b leaf) int { return cmp.Compare(a.bound, b.bound) })
}

// settle looks for splits at the leaves: first for one that proves itself, where the odds are
// best, then where the bound is least and only a little above it, and raises the bounds of
// those that have none.
func (g *gear) settle(budget int64) {
	h := g.h
	raise := func() { h.bounds.raiseSum(min(g.bound(), h.best.sum)) }
	defer raise()
	if !g.prepare() {
		return
	}
	end := g.layers.steps + budget
	g.raiseByPacks(g.layers.steps + budget/4)
	raise()
	part := max(1, h.bounds.sum/10000)
	for !g.guess(h.bounds.sum+part, (g.layers.steps+end)/2) && h.bounds.sum+2*part < h.best.sum {
		part *= 2
	}
	for g.layers.steps < end && h.ctx.Err() == nil {
		raise()
		if h.best.sum <= nearly(h.bounds.sum) {
			return
		}
		n := g.next(provenAbove(h.best.sum))
		if n < 0 {
			return
		}
		l := &g.leaves[n]
		limit := min(h.best.sum-1, l.bound+l.bound/20000<<min(l.level, 12))
		carrier, whole := g.layers.search(l.carrier, limit, h.firstLimit(), min(end, g.layers.steps+budget/12))
		switch {
		case carrier != nil:
			h.keep(candidate{carrier, h.in.splitOf(carrier).score()})
		case whole:
			l.bound = limit + 1
			l.level++
		default:
			l.stuck = true
		}
	}
}

// raiseByPacks raises the least bounds as far as what whole bags make up in each pack does.
func (g *gear) raiseByPacks(end int64) {
	need := provenAbove(g.h.best.sum)
	for part := int64(20_000); part <= 320_000 && g.layers.steps < end; {
		n := g.next(need)
		if n < 0 {
			return
		}
		l := &g.leaves[n]
		limit := min(need-1, l.bound+l.bound/part)
		if g.layers.mayHold(l.carrier, limit, g.h.firstLimit()) {
			part *= 4
		} else {
			l.bound = limit + 1
		}
	}
}

// prepare is false where there is too much for layers.
func (g *gear) prepare() bool {
	if g.layers == nil {
		if g.layers = newLayers(g.h.in, g.order); g.layers == nil {
			return false
		}
		g.beam = &beam{layers: g.layers, odds: newOdds(g.layers)}
	}
	return true
}

// chance is a leaf at which a split may be found.
type chance struct {
	leaf    *leaf
	limits  []float64
	odds    float64 // at most the logarithm of about how many splits there are, and a constant
	settled bool    // no more than that is known
	count   float64 // about the logarithm of how many there are
}

// rare is the logarithm of the number of splits of which it is not worth while to look for one.
const rare = -7.0

// guess looks for a split of a sum of at most limit where the odds are best, and tells
// whether it found one.
func (g *gear) guess(limit, end int64) bool {
	h := g.h
	ceiling := h.firstLimit()
	if first := nearly(h.bounds.day[0]); h.leastFirst > first {
		ceiling = first
	}
	odds := g.beam.odds
	list := g.chances(limit, ceiling, end)
	for g.layers.steps < end && h.ctx.Err() == nil && (h.best.sum > limit || h.leastFirst > ceiling) {
		var c *chance
		for n := range list {
			if l := &list[n]; !math.IsInf(l.odds, -1) && (c == nil || l.odds > c.odds) {
				c = l
			}
		}
		switch {
		case c == nil || c.settled && c.count < rare:
			return false
		case c.settled:
			c.odds = math.Inf(-1)
			if carrier := g.beam.find(c.leaf.carrier, limit, ceiling, min(end, g.layers.steps+beamWork)); carrier != nil {
				h.keep(candidate{carrier, h.in.splitOf(carrier).score()})
			}
		default:
			copy(odds.limit, c.limits)
			if !odds.settle() {
				c.odds = math.Inf(-1)
				continue
			}
			c.settled, c.count = true, odds.count
			// By prices the odds are the same for all but for their limits, and nowhere less than these.
			rest := odds.value - odds.dot(odds.price, odds.limit)
			for n := range list {
				list[n].odds = min(list[n].odds, rest+odds.dot(odds.price, list[n].limits))
			}
			g.layers.steps += int64(8 * len(list))
		}
	}
	return h.best.sum <= limit && h.leastFirst <= ceiling
}

// chances are the leaves that may have a split of a sum of at most limit.
func (g *gear) chances(limit, ceiling, end int64) []chance {
	var list []chance
	for n := range g.leaves {
		l := &g.leaves[n]
		if g.layers.steps > end || l.bound > limit || !g.layers.mayHold(l.carrier, limit, ceiling) {
			continue
		}
		g.beam.odds.setLimits(ceiling)
		list = append(list, chance{leaf: l, limits: slices.Clone(g.beam.odds.limit), odds: math.Inf(1)})
		g.layers.steps += 200
	}
	return list
}

// next is the leaf of the least bound that promises a split better than need.
func (g *gear) next(need int64) int {
	found := -1
	for n := range g.leaves {
		if l := &g.leaves[n]; !l.stuck && l.bound < need && (found < 0 || l.bound < g.leaves[found].bound) {
			found = n
		}
	}
	return found
}

// bound is what no split is below.
func (g *gear) bound() int64 {
	bound := min(g.least, g.need)
	for n := range g.leaves {
		bound = min(bound, g.leaves[n].bound)
	}
	return bound
}

// solve gives a node's bound, and whether the node stays open.
func (g *gear) solve(t *simplex) (bound int64, open bool) {
	t.steps = 0
	t.prices(t.run(g.limit()), g.price)
	bound = g.k.priceBoundOf(g.price, g.hours, g.ceiling, g.open)
	g.steps += t.steps + int64(4*len(g.h.in.movable)*g.h.in.members)
	return bound, bound < g.need
}

// limit is the relaxation's cost at which a node need not be looked at further.
func (g *gear) limit() float64 {
	sum := 0.0
	for d, hours := range g.hours {
		sum += float64(float64(hours) * float64(g.h.bounds.day[d]))
	}
	return float64(g.need)/sum + 2e-6
}

func (g *gear) descend(t *simplex, depth int, bound int64, carriers []int32) {
	if g.steps > g.budget || len(g.leaves) == mostLeaves || g.h.ctx.Err() != nil {
		g.least = min(g.least, bound)
		return
	}
	if depth == len(g.order) {
		g.leaves = append(g.leaves, leaf{carrier: slices.Clone(carriers), bound: bound})
		return
	}
	j := g.order[depth]
	in := g.h.in
	allowed := in.allowed[j]
	from := int32(0)
	if depth > 0 && in.compareItems(g.order[depth-1], j) == 0 {
		from = carriers[depth-1]
	}
	for len(g.tables[depth]) < len(allowed) {
		g.tables[depth] = append(g.tables[depth], new(simplex))
	}
	type child struct {
		table *simplex
		i     int32
		bound int64
	}
	var children []child
	for n, i := range allowed {
		if i < from {
			continue
		}
		u := g.tables[depth][n]
		t.copyTo(u)
		g.steps += int64(len(t.table) / 16)
		u.give(int(g.cellOf[j]), i)
		g.open[j] = allowed[n : n+1]
		b, open := g.solve(u)
		if open {
			children = append(children, child{u, i, max(b, bound)})
		} else {
			g.least = min(g.least, b)
		}
	}
	slices.SortStableFunc(children, func(a, b child) int { return cmp.Compare(a.bound, b.bound) })
	for _, c := range children {
		g.open[j] = []int32{c.i}
		g.descend(c.table, depth+1, c.bound, append(carriers, c.i))
	}
	g.open[j] = allowed
}

// branchGear searches by the gear for a part of the steps, from where it stopped.
func (h *hunt) branchGear() {
	if h.in.days > 1 && !h.left && h.leastFirst > nearly(h.bounds.day[0]) {
		h.left = true
		h.leave()
	}
	if h.best.sum <= nearly(h.bounds.sum) && h.leastFirst <= nearly(h.bounds.day[0]) || h.steps >= h.limit {
		return
	}
	if h.gear == nil {
		h.gear = h.newGear(h.in.hours, h.best.sum, h.firstLimit(), h.limit/6)
		h.gear.search()
		h.steps += h.gear.steps
	}
	if h.limit-h.steps < layersWork {
		return
	}
	before := h.gear.stepsAtLeaves()
	h.gear.settle((h.limit - h.steps) * 3 / 4)
	h.steps += h.gear.stepsAtLeaves() - before
}

func (g *gear) stepsAtLeaves() int64 {
	if g.layers == nil {
		return 0
	}
	return g.layers.steps
}

// worthBranching tells whether a small crew's split is not yet proven and gear can help.
func (h *hunt) worthBranching() bool {
	return len(h.in.movable) <= smallItems && h.best.overrun == 0 && h.bounds.day[0] > 0 &&
		!h.settled() && h.ctx.Err() == nil && h.affordsRelaxing()
}

// leave looks for the least R1 apart, as if the trip ended after its first day.
func (h *hunt) leave() {
	p := h.problem
	p.Days, p.HoursTenths, p.Items = 1, []int64{1}, slices.Clone(p.Items)
	for j := range p.Items {
		it := &p.Items[j]
		it.MassGrams, it.GoneAfter, it.ResidualGrams, it.Mornings = it.grams(1), 1, 0, nil
	}
	o := h.options
	o.Steps, o.Progress = h.limit/12, nil
	other := newHunt(h.ctx, newInstance(p), o)
	other.problem = p
	other.run()
	h.steps += other.steps
	if other.best.carrier != nil {
		h.keep(candidate{other.best.carrier, h.in.splitOf(other.best.carrier).score()})
	}
	if other.in.unit == h.in.unit {
		h.bounds.raiseFirst(h.in, other.bounds.sum)
	}
}
