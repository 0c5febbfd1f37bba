package menufill

import "context"

// Solve returns the best plan found within the work limit, with a bound on how much better any plan could be. The error is an
// *Infeasible when no plan was found, or lists what is wrong with the problem. When the context ends early the best plan so far
// comes back, Stopped; before there is one, the context's error.
func Solve(ctx context.Context, p Problem, o Options) (Plan, error) {
	if err := p.validate(); err != nil {
		return Plan{}, err
	}
	if o.Steps <= 0 {
		o.Steps = DefaultSteps
	}
	m := newModel(&p)
	if e := m.cannot(); e != nil {
		return Plan{}, e
	}
	s := newSolver(ctx, m, o)
	s.run()
	if s.search != nil && s.search.best != nil && s.search.found.broken == 0 {
		return s.plan(), nil
	}
	if s.steps.stopped {
		return Plan{}, ctx.Err()
	}
	broken := 1
	if s.search != nil && s.search.best != nil {
		broken = s.search.found.broken
	}
	return Plan{}, blame(ctx, &p, broken, s.emptyDay, s.impossible, o)
}

// solver holds the state of one run.
type solver struct {
	m          *model
	seed       uint64
	steps      *budget
	relax      *relaxer
	pools      []pool
	search     *search
	bound      int64 // best proven, in price units
	proven     bool
	untilFound bool // stop at the first plan that keeps every rule
	impossible bool // some day has no menu, proven
	emptyDay   int  // a day without a menu, from 1
}

func newSolver(ctx context.Context, m *model, o Options) *solver {
	steps := &budget{ctx: ctx, limit: o.Steps}
	s := &solver{m: m, seed: o.Seed, steps: steps, relax: newRelaxer(m, steps), pools: make([]pool, m.p.Days), bound: -never}
	if o.Progress != nil {
		steps.report = func() { o.Progress(s.progress()) }
	}
	for d := range s.pools {
		s.pools[d].forget()
	}
	return s
}

// Shares of the work limit, in hundredths, and the lengths of the climbs.
const (
	climbShare   = 40
	poolShare    = 10
	sketchShare  = 4  // a first search, so that there is a plan early
	plightShare  = 20 // and how far it goes on while there is none
	coolShare    = 20 // of a first cooling
	coolings     = 2  // more of them
	warmShare    = 88 // when they end
	tightenShare = 40 // prices between days, moved to what the menus of the days say
	proofShare   = 7
	lastShare    = 95   // the last search may go on to here; the rest is for a proof
	firstClimb   = 2000 // steps of the prices
	pooledClimb  = 250
	localClimb   = 120
	// trustShare of a day's food is how far prices between days may move at first on the word of the pools alone; patient is how many trials
	// in a row may prove nothing more.
	trustShare = 0.02
	patient    = 2
	// worthListing: prices between days are moved where listing the days' menus proved at least one part in so many of the gap; else the prices of the
	// slots were as good.
	worthListing = 8
	// closeGap is close enough.
	closeGap = 0.003
)

func (s *solver) run() {
	prices, bound := s.climb(newClimber(s.m, s.relax.evaluate, s.steps), newPrices(s.m), firstClimb, climbShare)
	if s.bound = bound; bound > s.m.dearest()<<scale {
		s.impossible, s.emptyDay = true, s.hopelessDay()
		return
	}
	if !s.fillPools(prices) {
		return
	}
	s.raise(prices)
	gained := s.bound - bound
	if s.assemble(prices, false) || s.steps.done() || s.untilFound && s.search.found.broken == 0 {
		return
	}
	s.anneal(1, s.steps.used+s.steps.limit*coolShare/100)
	if s.untilFound && s.search.found.broken == 0 {
		return
	}
	if s.search.found.broken > 0 {
		prices = s.reprice(prices, trustShare) // other menus may go together
		if !s.fillPools(prices) {
			return
		}
		s.raise(prices)
	} else if gained >= (s.search.found.cost-s.bound)/worthListing {
		prices = s.tighten(prices)
	}
	s.search.begin(prices, s.steps.used)
	s.anneal(coolings, s.steps.limit*warmShare/100)
	s.assemble(prices, true)
}

// anneal cools the best plan so far, so many times until the work mark, and gives the search what comes of it.
func (s *solver) anneal(times int64, mark int64) {
	for ; times > 0; times-- {
		a := newAnnealer(s.m, s.steps, s.seed+uint64(times))
		a.run(s.search.best, s.steps.used+(mark-s.steps.used)/times)
		if len(a.best) > 0 {
			s.search.adopt(a.t.menus(a.best))
		}
	}
}

// tighten moves the prices between days to where the menus of the days, and not only their slots, prove most: the pools say where that
// might be, listing the days' menus at those prices tells, and adds what the pools lacked.
func (s *solver) tighten(center *prices) *prices {
	best, trust, idle := s.pooledBound(center), trustShare, 0
	mark := s.steps.used + s.steps.limit*tightenShare/100
	for !s.steps.past(mark) && idle < patient && s.progress().gap() > closeGap {
		trial := s.reprice(center, trust)
		if !s.fillPools(trial) {
			break
		}
		s.raise(trial)
		if bound := s.pooledBound(trial); bound > best {
			center, best, trust, idle = trial, bound, min(2*trust, 4*trustShare), 0
		} else {
			trust, idle = trust/3, idle+1
			s.repricePools(center)
		}
	}
	s.repricePools(center)
	s.fillPools(center)
	return center
}

func (s *solver) repricePools(p *prices) {
	for d := range s.pools {
		s.pools[d].reprice(p, d)
	}
}

// pooledBound is what the pools, listed at the prices, prove.
func (s *solver) pooledBound(p *prices) int64 {
	bound := p.linkConstant()
	for d := range s.pools {
		bound += s.pools[d].bound
	}
	return bound
}

// hopelessDay gives a day, from 1, of which prices alone prove that it has no menu; 0 if there is none.
func (s *solver) hopelessDay() int {
	for d := range s.m.p.Days {
		inside := func(q *prices) *relaxed { return s.relax.evaluateDay(q, d) }
		if _, bound := s.climb(newDayClimber(s.m, inside, d, s.steps), newPrices(s.m), localClimb, 1); bound > s.m.dearest()<<scale {
			return d + 1
		}
	}
	return 0
}

// climb spends at most a share of the limit.
func (s *solver) climb(c *climber, from *prices, steps int, share int64) (*prices, int64) {
	c.mark, c.ceiling = s.steps.used+s.steps.limit*share/100, 4*s.m.dearest()<<scale
	return c.climb(from, steps)
}

// raise takes the bound that the pools prove.
func (s *solver) raise(p *prices) { s.bound = max(s.bound, s.pooledBound(p)) }

// assemble searches for a plan and tells whether it is certain that there is no better one. The last search gets all that is left.
func (s *solver) assemble(p *prices, last bool) bool {
	if s.search == nil {
		s.search = newSearch(s.m, s.pools, s.seed, s.steps)
	}
	mark, enough := s.steps.used+s.steps.limit*plightShare/100, s.steps.used+s.steps.limit*sketchShare/100
	if last {
		mark = max(mark, s.steps.limit*lastShare/100)
		enough = mark
	}
	s.search.begin(p, mark)
	if s.finish(p) {
		return true
	}
	s.search.run(mark, enough)
	return s.finish(p)
}

// reprice moves the prices between days to what the pools say, within the trust, then those inside the days to match.
func (s *solver) reprice(p *prices, trust float64) *prices {
	pooled := &poolRelaxer{m: s.m, pools: s.pools, steps: s.steps, out: newRelaxed(s.m)}
	c := newLinkClimber(s.m, pooled.evaluate, s.steps)
	c.trust = trust * float64(s.search.dayValue()) * (1 << scale)
	next, _ := s.climb(c, p, pooledClimb, proofShare)
	next = s.climbDays(next)
	s.repricePools(next)
	return next
}

// climbDays moves the prices inside each day to match those between days.
func (s *solver) climbDays(p *prices) *prices {
	for d := range s.m.p.Days {
		inside := func(q *prices) *relaxed { return s.relax.evaluateDay(q, d) }
		p, _ = s.climb(newDayClimber(s.m, inside, d, s.steps), p, localClimb, proofShare)
	}
	return p
}

// progress tells how far the run is.
func (s *solver) progress() Progress {
	p := Progress{Steps: s.steps.used, Limit: s.steps.limit, Bound: max(0, s.bound>>scale)}
	if s.search != nil && s.search.best != nil && s.search.found.broken == 0 {
		p.Found, p.Value = true, s.search.found.cost>>scale
	}
	return p
}

// gap is how far the best plan may be above the best possible.
func (p Progress) gap() float64 { return Plan{Value: p.Value, Bound: p.Bound}.Gap() }

// plan writes the best plan out.
func (s *solver) plan() Plan {
	m, classes := s.m, len(s.m.p.Classes)
	out := Plan{Value: s.search.found.cost >> scale, Proven: s.proven, Steps: s.steps.used, Stopped: s.steps.stopped,
		Cells: make([][]int, len(m.slots)), Cooked: make([][]int, len(m.slots))}
	for d, menu := range s.search.best {
		for local, i := range m.byDay[d] {
			out.Cells[i] = make([]int, classes)
			for g := range classes {
				r := int(menu.cells[local*classes+g])
				out.Cells[i][g] = r
				if r >= 0 {
					out.MassDg += int64(m.slots[i].eaters[g]) * int64(m.slots[i].serving(r, g).MassDg)
					out.CostCents += int64(m.slots[i].eaters[g]) * int64(m.slots[i].serving(r, g).CostCents)
				}
			}
			out.Cooked[i] = m.cookedIn(i, out.Cells[i])
		}
	}
	out.Bound = s.boundOf(out.Value)
	out.Proven = out.Proven || out.Bound == out.Value
	return out
}

// boundOf is the proven bound in the units of the objective; a proven plan is its own.
func (s *solver) boundOf(value int64) int64 {
	if s.proven {
		return value
	}
	bound := s.bound >> scale
	if bound<<scale < s.bound {
		bound++
	}
	return min(value, max(0, bound))
}

// cookedIn lists the recipes cooked in a slot with these cells, ascending.
func (m *model) cookedIn(i int, cells []int) []int {
	if m.slots[i].fixed {
		return append([]int(nil), m.slots[i].candidates...)
	}
	var cooked []int
	for _, r := range m.slots[i].candidates {
		for _, c := range cells {
			if c == r {
				cooked = append(cooked, r)
				break
			}
		}
	}
	return cooked
}
