package fairsplit

import (
	"cmp"
	"slices"
)

// guide is what the relaxation shows a search: where a split of crumbs puts what, and
// the burdens that go with it.
type guide struct {
	crumbs *crumbs
	state  state
	burden []int64 // of each day
	toll   toll
	start  []int32 // carriers of whole items within all limits; nil if none were found
}

// How often each market trades at most: the first morning on few cells and on many, then
// all days.
const (
	roughTrades   = 2000
	morningTrades = 1000
	dayTrades     = 1500
)

// affordsRelaxing tells whether the relaxation leaves most of the steps to the search.
// On a small budget the search does better without it.
func (h *hunt) affordsRelaxing() bool {
	n := h.in.members
	morning := int64(len(h.in.cells(1, 6)))*roughTrades + int64(len(h.in.cells(1, 24)))*morningTrades
	days := int64(len(h.in.cells(h.in.days, 3))) * dayTrades
	return 4*int64(n)*(morning+days) <= h.limit/2
}

// relax solves the relaxation, raises the bounds by its prices, and keeps its shares
// to start from. The first morning alone comes first, on few cells and then on many.
func (h *hunt) relax() {
	in := h.in
	morning := []int64{1}
	rough := newMarket(newCrumbs(in, h.bounds, morning, 6), h.best.carrier, nil)
	h.trade(rough, roughTrades)
	first := newMarket(newCrumbs(in, h.bounds, morning, 24), nil, rough)
	h.trade(first, morningTrades)
	h.bounds.raiseFirst(in, first.priceBound(first.bestPrice, morning, 0))
	start := h.leaveWell(&guide{crumbs: first.crumbs, state: first.now, toll: first.toll()})

	all := newCrumbs(in, h.bounds, in.hours, 3)
	all.ceiling[0] = 1.003
	m := newMarket(all, nil, first)
	h.trade(m, dayTrades)
	ceiling := int64(0)
	if h.leastFirst < never {
		ceiling = h.firstLimit()
	}
	h.bounds.raiseSum(m.priceBound(m.bestPrice, in.hours, ceiling))
	g := &guide{crumbs: all, state: m.now, toll: m.toll(), start: start}
	for d, level := range m.now.burden {
		g.burden = append(g.burden, max(h.bounds.day[d], int64(float64(level*float64(h.bounds.day[d])))))
	}
	h.guide = g
}

// leaveWell looks for the least R1 along the relaxation of the first morning, and gives
// the carriers found that are the best to go on from. One lane looks at the first and
// the last morning only, as what is carried to the end is coarse; the other at all.
func (h *hunt) leaveWell(g *guide) []int32 {
	var found [lanes]candidate
	var steps [lanes]int64
	h.parallel(func(lane int) {
		t := newDescent(newSplit(h.in), h.options.Seed*0x9e3779b97f4a7c15+uint64(lane)+7)
		g.round(t)
		aim := slices.Clone(h.bounds.day)
		for d := 1; d < len(aim); d++ {
			aim[d] += aim[d] / 500
			if lane == 0 && d < len(aim)-1 {
				t.weight[d] = 0
			}
		}
		t.weight[0] <<= 2 + 2*lane
		t.setTargets(aim)
		t.free(h.in.movable)
		a := newAnnealer(t, h.in.movable, func(a, b score) bool {
			return cmp.Or(cmp.Compare(a.overrun, b.overrun), cmp.Compare(a.first, b.first)) < 0
		})
		a.toll, a.barter, a.margins = g.toll, newBarter(h.in, h.bounds.day), newMargins(t)
		a.run(warm*warm*8, 8, h.limit/40, func(score) bool { return h.ctx.Err() != nil })
		found[lane], steps[lane] = a.kept, t.steps
	})
	var start []int32
	for lane, c := range found {
		h.steps += steps[lane]
		h.keep(c)
		if c.overrun == 0 {
			start = slices.Clone(c.carrier)
		}
	}
	return start
}

func (h *hunt) trade(m *market, times int64) {
	m.run(times*4*int64(len(m.now.share)), 0.0002, func() bool { return h.ctx.Err() != nil })
	h.steps += m.steps
}

// round makes the shares whole: each item goes to whoever of those with a share of its
// cell lacks most. What a member got too much or too little goes on to the next cell,
// the most alike first, so that the sums come out near.
func (g *guide) round(t *descent) {
	in := g.crumbs.in
	for j, allowed := range in.allowed {
		if len(allowed) == 1 {
			t.put(int32(j), int(allowed[0]))
		}
	}
	order := make([]int, len(g.crumbs.cells))
	for n := range order {
		order[n] = n
	}
	slices.SortStableFunc(order, func(a, b int) int {
		x, y := &g.crumbs.cells[a], &g.crumbs.cells[b]
		return cmp.Or(cmp.Compare(x.class, y.class), cmp.Compare(x.density, y.density), cmp.Compare(y.last, x.last))
	})
	lack := make([]float64, in.members)
	for _, n := range order {
		c := &g.crumbs.cells[n]
		share := g.state.share[n*in.members : (n+1)*in.members]
		for _, i := range c.allowed {
			lack[i] += float64(share[i] * c.mass * float64(980+t.below(40)) / 1000)
		}
		items := slices.Clone(c.items)
		slices.SortFunc(items, func(a, b int32) int { return cmp.Or(cmp.Compare(in.mass[b], in.mass[a]), cmp.Compare(a, b)) })
		for _, j := range items {
			most := nobody
			for _, i := range c.allowed {
				if share[i] > 0.02 && (most == nobody || lack[i] > lack[most]) {
					most = i
				}
			}
			if most == nobody {
				most = c.allowed[0]
			}
			t.put(j, int(most))
			lack[most] -= float64(in.mass[j])
		}
	}
}
