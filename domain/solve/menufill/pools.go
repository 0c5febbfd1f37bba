package menufill

// Sizes of the pools.
const (
	poolWanted = 500    // menus of a day after which the slack is not widened
	poolMost   = 1500   // menus kept for each day
	proofMost  = 20_000 // menus kept for each day while proving
	diveMost   = 40     // menus kept of a day that has none near its bound
	diveSteps  = 400_000
)

// fillPools lists the menus of each day, widening the slack until there are enough; false if a day has none.
func (s *solver) fillPools(p *prices) bool {
	share := s.steps.limit * poolShare / 100 / int64(s.m.p.Days)
	for d := range s.pools {
		s.fillPool(p, d, share)
		if len(s.pools[d].menus) == 0 {
			s.fillPool(p, d, share*8) // a hard day is worth more work: without it there is no plan
		}
		if len(s.pools[d].menus) == 0 {
			s.emptyDay, s.impossible = d+1, s.pools[d].bound == never
			return false
		}
	}
	return true
}

func (s *solver) fillPool(p *prices, d int, share int64) {
	pool := &s.pools[d]
	e := newDayEnumerator(s.m, p, d, s.steps)
	if e == nil {
		pool.bound = never
		return
	}
	mark := s.steps.used + share
	for slack := s.slack(d); ; slack *= 2 {
		found := e.list(slack, mark, poolMost)
		pool.take(found, poolMost)
		if found.complete == never || len(found.menus) >= poolWanted || slack > never/4 {
			return
		}
		if s.steps.past(mark) {
			if len(pool.menus) == 0 {
				pool.take(e.dive(mark+share, diveMost), poolMost)
			}
			return
		}
	}
}

// slack is a small part of what day d costs.
func (s *solver) slack(d int) int64 {
	least := int64(0)
	for _, i := range s.m.byDay[d] {
		slot := &s.m.slots[i]
		for _, g := range slot.classes {
			least += slot.cellValue(g, slot.candidates[0])
		}
	}
	return max(1, least/1000) << scale
}

// finish tries to prove the best plan: it widens the pools until they hold every menu a better plan could have, and looks at all of
// them. True when it is certain that there is no better plan, or none at all.
func (s *solver) finish(p *prices) bool {
	limit := int64(never)
	if s.search.found.broken == 0 {
		limit = s.search.found.cost
	}
	if limit-s.bound < 1<<scale {
		s.proven = true
		return true
	}
	wide := s.widen(p, limit)
	if wide == nil {
		return false
	}
	answer, best, finished := prove(s.m, p, wide, limit, s.steps.used+s.steps.limit*proofShare/100, s.steps)
	if answer != nil {
		s.search.best, s.search.found = answer, best
		s.search.restore()
	}
	s.proven = finished && s.search.found.broken == 0
	s.impossible = finished && s.search.found.broken > 0
	return finished
}

// widen returns pools with every menu that a plan under limit can have, nil if they would be too large.
func (s *solver) widen(p *prices, limit int64) []pool {
	gap := limit - p.linkConstant()
	for d := range s.pools {
		gap -= s.pools[d].bound
	}
	wide := make([]pool, len(s.pools))
	for d := range s.pools {
		wide[d] = s.pools[d]
		if wide[d].complete == never || wide[d].complete >= wide[d].bound+gap {
			continue
		}
		if limit == never {
			return nil
		}
		mark := s.steps.used + s.steps.limit*proofShare/100/int64(s.m.p.Days)
		e := newDayEnumerator(s.m, p, d, s.steps)
		found := e.list(wide[d].bound+gap-e.bound, mark, proofMost)
		wide[d] = pool{menus: found.menus, bound: max(found.least, wide[d].bound), complete: found.complete}
		if wide[d].complete < wide[d].bound+gap {
			return nil
		}
	}
	return wide
}
