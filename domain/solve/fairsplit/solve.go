package fairsplit

import (
	"context"
	"fmt"
	"sync"
)

// Solve splits the items over the crew. It returns an error only for a problem that
// has no meaning; where nothing fits, the result says why and holds the split that
// breaks the limits least. If ctx ends, the best split found so far is returned.
func Solve(ctx context.Context, p Problem, o Options) (Result, error) {
	if err := p.Validate(); err != nil {
		return Result{}, err
	}
	in := newInstance(p)
	if o.Previous != nil && len(o.Previous) != len(p.Items) {
		return Result{}, fmt.Errorf("fairsplit: %d previous carriers for %d items: give one per item", len(o.Previous), len(p.Items))
	}
	h := newHunt(ctx, in, o)
	h.run()
	again := h.resplit(p)
	r := in.result(p, h.best.carrier, h.bounds)
	again.report(&r)
	r.BestR1 = in.exactBurden(h.leastFirst)
	r.Steps, r.Exhausted, r.Stopped = h.steps, h.exhausted, h.ctx.Err() != nil
	r.Proven = r.Feasible && h.proven()
	if !r.Feasible {
		r.Reasons = in.reasons(p, h.best.overrun > 0, h.exhausted, r.Overruns)
	}
	return r, nil
}

// candidate is a whole split with its score.
type candidate struct {
	carrier []int32
	score
}

// hunt is one search for a good split: rounds of independent attempts, each with a
// seed of its own, of which the best is kept.
type hunt struct {
	ctx        context.Context
	in         *instance
	options    Options
	bounds     bounds
	limit      int64
	steps      int64
	best       candidate
	leastFirst int64 // least R1 of any split within limits
	exhausted  bool
}

func newHunt(ctx context.Context, in *instance, o Options) *hunt {
	h := &hunt{ctx: ctx, in: in, options: o, bounds: newBounds(in), limit: o.Steps}
	if h.limit <= 0 {
		h.limit = defaultSteps(in)
	}
	h.leastFirst = never
	h.best.score = score{overrun: never, first: never, sum: never}
	return h
}

// defaultSteps is a tenth of a second or so for a small crew, a second for a large.
func defaultSteps(in *instance) int64 {
	return 20_000_000 + int64(in.items)*int64(in.days)*1000
}

const lanes = 2 // attempts in a round

func (h *hunt) run() {
	h.branch()
	for round := uint64(0); h.steps < h.limit && (!h.settled() || h.best.carrier == nil) && (round == 0 || h.ctx.Err() == nil); round++ {
		budget := min((h.limit-h.steps)/lanes, h.limit/lanes/2)
		var found [lanes]*descent
		h.parallel(func(lane int) {
			found[lane] = h.attempt(h.options.Seed+round*lanes+uint64(lane), budget)
		})
		for _, t := range found {
			h.steps += t.steps
			h.offer(t)
		}
		h.report()
	}
}

// branch settles problems with few items for good, if a part of the steps suffices.
func (h *hunt) branch() {
	if len(h.in.movable) > branchItems {
		return
	}
	t := newTree(h.ctx, h.in)
	t.firstLimit = never
	done := t.search(h.limit / 8)
	h.steps += t.steps
	if t.found {
		h.leastFirst = t.best.first
		h.best = t.best
	}
	if !done {
		return
	}
	if !t.found {
		h.exhausted = true
		return
	}
	t.steps, t.goal = 0, bySum
	t.firstLimit = t.best.first + t.best.first/200
	h.exhausted = t.search(h.limit / 4)
	h.steps += t.steps
	h.best = t.best
}

const branchItems = 60 // more are not settled by branching

// parallel calls f for each lane, on as many processors as allowed.
func (h *hunt) parallel(f func(lane int)) {
	if h.options.Workers < 2 {
		for lane := range lanes {
			f(lane)
		}
		return
	}
	var group sync.WaitGroup
	for lane := range lanes {
		group.Go(func() { f(lane) })
	}
	group.Wait()
}

// attempt builds a split and improves it.
func (h *hunt) attempt(seed uint64, budget int64) *descent {
	t := newDescent(newSplit(h.in), seed*0x9e3779b97f4a7c15+1)
	t.build(h.bounds, budget/2)
	t.free(h.in.movable)
	t.sampled = len(h.in.movable) > 200
	t.improve(budget/2, 20000)
	return t
}

// offer keeps a split if it is better than the best.
func (h *hunt) offer(t *descent) {
	c := candidate{carrier: t.carrier, score: t.score()}
	if c.overrun == 0 {
		h.leastFirst = min(h.leastFirst, c.first)
	}
	if h.better(c.score, h.best.score) {
		h.best = candidate{carrier: append([]int32(nil), c.carrier...), score: c.score}
	}
}

// better compares two scores by the objective. Among splits whose S cannot be told
// from its bound the smaller R1 wins.
func (h *hunt) better(a, b score) bool {
	if a.overrun != b.overrun {
		return a.overrun < b.overrun
	}
	limit := h.leastFirst + h.leastFirst/200
	if (a.first <= limit) != (b.first <= limit) {
		return a.first <= limit
	}
	if a.first > limit {
		return a.first < b.first
	}
	floor := nearly(h.bounds.sum)
	if x, y := max(a.sum, floor), max(b.sum, floor); x != y {
		return x < y
	}
	if a.first != b.first {
		return a.first < b.first
	}
	return a.sum < b.sum
}

// nearly is the largest value that counts as proven by a bound: 0.01 % above it.
func nearly(bound int64) int64 { return bound + bound/10000 }

// settled tells whether more search is in vain.
func (h *hunt) settled() bool { return h.exhausted || h.proven() }

func (h *hunt) proven() bool {
	if h.best.overrun != 0 {
		return false
	}
	return h.exhausted || h.leastFirst <= nearly(h.bounds.day[0]) && h.best.sum <= nearly(h.bounds.sum)
}

func (h *hunt) report() {
	if h.options.Progress == nil {
		return
	}
	unit := float64(h.in.unit)
	p := Progress{Steps: h.steps, Limit: h.limit, Feasible: h.best.overrun == 0}
	p.R1, p.S = float64(h.best.first)/unit, float64(h.best.sum)/unit/float64(h.in.hoursTotal)
	p.R1Gap = above(h.best.first, h.bounds.day[0])
	p.SGap = above(h.best.sum, h.bounds.sum)
	h.options.Progress(p)
}

func above(value, bound int64) float64 {
	if bound == 0 {
		return 0
	}
	return float64(value-bound) / float64(bound)
}
