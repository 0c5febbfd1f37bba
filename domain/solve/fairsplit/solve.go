package fairsplit

import (
	"context"
	"fmt"
	"slices"
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
	h.problem, h.hopeless = p, in.plainReasons(p)
	h.run()
	again := h.resplit(p)
	r := in.result(p, h.best.carrier, h.bounds)
	again.report(&r)
	if least := in.exactBurden(h.leastFirst); least.Cmp(r.R1) < 0 {
		r.BestR1 = least
	}
	r.Steps, r.Exhausted, r.Stopped = h.steps, h.exhausted, h.ctx.Err() != nil
	r.Proven = r.Feasible && h.proven()
	if !r.Feasible {
		r.Reasons = h.reasons(p, r.Overruns)
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
	aim        []int64 // burden of each day that a split fairer than the best has at least
	tightened  int64   // sum of the best split when aim was last raised
	guide      *guide  // nil before the relaxation was solved
	gear       *gear   // nil before it was branched on
	left       bool    // the first morning was looked at apart
	limit      int64
	steps      int64
	best       candidate
	leastFirst int64 // least R1 of any split within limits
	round      int64
	exhausted  bool
	problem    Problem
	hopeless   []Reason // why no split can be within the limits
}

func newHunt(ctx context.Context, in *instance, o Options) *hunt {
	h := &hunt{ctx: ctx, in: in, options: o, bounds: newBounds(in), limit: o.Steps}
	if h.limit <= 0 {
		h.limit = defaultSteps(in)
	}
	h.leastFirst = never
	h.aim = slices.Clone(h.bounds.day)
	h.best.score = score{overrun: never, first: never, sum: never}
	return h
}

// defaultSteps is a fraction of a second for a small crew, a few seconds for a large
// one whose limits bind.
func defaultSteps(in *instance) int64 {
	root := int64(1)
	for root*root < int64(in.members*in.days) {
		root++
	}
	return 40_000_000 * root
}

const lanes = 2 // attempts in a round

// rounds are the parts of all steps that an attempt of each round may take. The first
// is enough for most crews whose limits leave room; the third takes what is left, as
// one long cooling finds fairer splits than several short ones.
var rounds = []struct{ part, of int64 }{{1, 40}, {1, 8}, {1, 1}}

func (h *hunt) run() {
	few := len(h.in.movable) <= fewItems && h.hopeless == nil
	if few {
		h.branch()
	}
	for h.best.overrun == never || h.steps < h.limit && !h.settled() && h.ctx.Err() == nil {
		round := int(h.round)
		budget := h.limit * rounds[min(round, 2)].part / rounds[min(round, 2)].of
		if len(h.in.movable) <= smallItems {
			budget = max(h.limit/16, min(h.limit/4, shortAttempt))
		}
		budget = min(budget, (h.limit-h.steps)/lanes)
		var found [lanes]*descent
		h.parallel(func(lane int) {
			switch {
			case len(h.in.movable) <= smallItems:
				found[lane] = h.small(round, lane, budget)
			case h.guide != nil:
				found[lane] = h.guided(round, lane, budget)
			default:
				found[lane] = h.attempt(round, lane, budget)
			}
		})
		for _, t := range found {
			h.steps += t.steps
			h.offer(t)
		}
		if h.guide != nil && h.best.overrun == 0 {
			h.guide.start = slices.Clone(h.best.carrier)
		}
		if len(h.in.movable) <= smallItems && !h.settled() {
			h.tighten()
		}
		if round == 0 && !few && len(h.in.movable) <= branchItems && !h.settled() {
			h.branch()
		}
		if round == 0 && h.hopeless == nil && !h.settled() && h.ctx.Err() == nil && h.affordsRelaxing() {
			h.relax()
		}
		if (round == gearRound || round == gearRound+4) && h.worthBranching() {
			h.branchGear()
		}
		if round == 1 && h.best.overrun > 0 && h.hopeless == nil {
			reasons, steps := h.in.limitsTogether(h.problem, max(clashWork, h.limit/8))
			h.hopeless, h.steps = reasons, h.steps+steps
		}
		h.round++
		h.report()
	}
}

// branch settles problems with few items for good, if a part of the steps suffices:
// first the least R1, then the least S with R1 near it.
func (h *hunt) branch() {
	t := newTree(h.ctx, h.in)
	t.firstLimit = never
	t.found, t.best = h.best.overrun == 0, candidate{score: score{first: h.leastFirst}}
	done := t.search(h.limit / 16)
	if t.best.carrier != nil {
		h.keep(t.best)
	}
	if done && h.best.overrun == 0 {
		t.goal, t.found, t.best = bySum, true, h.best
		t.firstLimit = h.leastFirst + h.leastFirst/200
		if t.best.first > t.firstLimit {
			t.found = false
		}
		done = t.search(h.limit / 8)
		h.keep(t.best)
	}
	h.exhausted = done
	if done && t.goal == bySum {
		h.best = t.best
	}
	h.steps += t.steps
}

const (
	fewItems    = 14 // up to so many are settled by branching at once
	branchItems = 60 // up to so many are worth trying
)

// clashWork is what it takes to find out that limits of a small crew stand in the way together.
const clashWork = 3_000_000

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

// attempt builds a split and improves it. Refining what was built is enough where
// limits leave room; else everything is annealed first.
func (h *hunt) attempt(round, lane int, budget int64) *descent {
	seed := h.options.Seed*0x9e3779b97f4a7c15 + uint64(round*lanes+lane)
	t := newDescent(newSplit(h.in), seed*0xd1342543de82ef95+1)
	t.build(h.bounds, budget/4)
	best := candidate{carrier: slices.Clone(t.carrier), score: t.score()}
	tight := best.overrun > 0 || above(best.sum, h.bounds.sum) > 0.01
	h.polish(t, &best, h.bounds.day, budget/4, 1)
	if round > 0 || tight {
		t.reset(best.carrier, h.bounds.day)
		if len(h.in.movable) <= smallItems {
			if h.gear != nil {
				h.limitFirst(t)
			}
			t.keepRoom((round + lane) / 2 % 3)
		}
		t.free(h.in.movable)
		a := newAnnealer(t, h.in.movable, h.better)
		a.run(hot*hot*8, 8, (budget-t.steps)*3/4, func(v score) bool { return h.suffices(v) || h.ctx.Err() != nil })
		if h.better(a.kept.score, best.score) {
			best = a.kept
		}
	}
	h.polish(t, &best, h.bounds.day, budget, 100)
	t.reset(best.carrier, h.bounds.day)
	return t
}

// guided cools a split towards the burdens of the crumbs and a little more, with R1 as
// one more hard limit. One lane starts from the split of crumbs, made whole, the other
// from the best split known.
func (h *hunt) guided(round, lane int, budget int64) *descent {
	seed := h.options.Seed*0x9e3779b97f4a7c15 + uint64(round*lanes+lane)
	t := newDescent(newSplit(h.in), seed*0xd1342543de82ef95+1)
	if lane == 1 && h.guide.start != nil {
		t.split = h.in.splitOf(h.guide.start)
	} else {
		h.guide.round(t)
	}
	h.limitFirst(t)
	aim := make([]int64, h.in.days)
	for d, burden := range h.guide.burden {
		aim[d] = burden + burden/2000
	}
	first := t.weight[0]
	t.weight[0] <<= 2 * lane
	t.setTargets(aim)
	t.free(h.in.movable)
	a := newAnnealer(t, h.in.movable, h.better)
	a.toll, a.barter, a.margins = h.guide.toll, newBarter(h.in, h.bounds.day), newMargins(t)
	a.run(warm*warm*8, 2*2*8, budget*7/8, func(v score) bool { return h.suffices(v) || h.ctx.Err() != nil })
	best := a.kept
	t.weight[0] = first
	h.polish(t, &best, h.guide.burden, budget, 100)
	t.reset(best.carrier, h.guide.burden)
	return t
}

// firstLimit is the largest R1 that counts as near the least known.
func (h *hunt) firstLimit() int64 {
	if h.leastFirst == never {
		return never
	}
	return h.leastFirst + h.leastFirst/200
}

// limitFirst makes it one more hard limit.
func (h *hunt) limitFirst(t *descent) {
	for i, scale := range h.in.scale {
		t.most[i] = int32(min(int64(t.most[i]), h.firstLimit()/scale))
	}
}

// polish refines a split again and again and keeps what is better.
func (h *hunt) polish(t *descent, best *candidate, target []int64, budget int64, passes int) {
	batches, _ := h.in.batches()
	share := max(1, (budget-t.steps)/4)
	for n := 0; n < passes && t.steps < budget && !h.suffices(best.score) && h.ctx.Err() == nil; n++ {
		t.reset(best.carrier, target)
		t.refine(h.ctx, batches, share)
		if v := t.score(); h.better(v, best.score) {
			*best = candidate{carrier: append(best.carrier[:0], t.carrier...), score: v}
		}
	}
}

// reset starts again from an assignment, keeping count of steps.
func (t *descent) reset(carrier []int32, target []int64) {
	steps := t.steps
	t.split = t.in.splitOf(carrier)
	t.steps = steps
	t.setTargets(target)
}

// Grams by which a load may at first be raised: of a split made from nothing, and of
// one that follows the crumbs.
const (
	hot  = 100
	warm = 50
)

// suffices tells whether a split cannot be told from the bounds.
func (h *hunt) suffices(v score) bool {
	return v.overrun == 0 && v.first <= nearly(h.bounds.day[0]) && v.sum <= nearly(h.bounds.sum)
}

// offer keeps a split if it is better than the best.
func (h *hunt) offer(t *descent) {
	h.leastFirst = min(h.leastFirst, t.leastFirst)
	h.keep(candidate{carrier: slices.Clone(t.carrier), score: t.score()})
}

func (h *hunt) keep(c candidate) {
	if c.overrun == 0 {
		h.leastFirst = min(h.leastFirst, c.first)
	}
	if h.better(c.score, h.best.score) {
		h.best = c
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

// settled tells whether more search is in vain, or not worth it: a large split is good
// enough within 0.1 % of its bounds after the first round, 0.2 % after the second.
func (h *hunt) settled() bool {
	if h.exhausted || h.hopeless != nil || h.proven() {
		return true
	}
	slack := func(bound int64) int64 { return bound + bound/1000*h.round }
	return len(h.in.movable) > smallItems && h.best.overrun == 0 &&
		h.leastFirst <= slack(h.bounds.day[0]) && h.best.sum <= slack(h.bounds.sum)
}

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
