package fairsplit

import "slices"

// Up to so many items many attempts beat few long ones, but none should be shorter.
const (
	smallItems   = 100
	shortAttempt = 100_000
)

// matchWork is about what it takes to match a few days.
const matchWork = 500_000

// small is an attempt at a split of few items: it cools towards the burdens that the
// bounds or the relaxation leave, then settles the loads to the gram.
func (h *hunt) small(round, lane int, budget int64) *descent {
	var t *descent
	part := budget
	if budget >= matchWork {
		part = budget * 3 / 8
	}
	if h.guide != nil && (round+lane)%2 == 0 {
		t = h.guided(round, lane, part)
	} else {
		t = h.attempt(round, lane, part)
	}
	best := candidate{carrier: slices.Clone(t.carrier), score: t.score()}
	if h.suffices(best.score) || budget < matchWork {
		return t
	}
	aim := h.aims(t, round+lane)
	best = h.match(t, best, aim, budget-t.steps)
	h.polish(t, &best, aim, budget, 100)
	t.reset(best.carrier, aim)
	return t
}

// aims are the burdens to come within: those that count as proven, or now and then some
// nearer to those of the best split, as whole items may not do better on every day.
func (h *hunt) aims(t *descent, turn int) []int64 {
	aim := slices.Clone(h.aim)
	if h.guide != nil {
		for d, burden := range h.guide.burden {
			aim[d] = max(aim[d], burden)
		}
	}
	for d := range aim {
		aim[d] = nearly(aim[d])
	}
	if turn%4 < 2 || h.best.carrier == nil || h.best.overrun > 0 {
		return aim
	}
	s := h.in.splitOf(h.best.carrier)
	for d := range aim {
		for i := range h.in.members {
			aim[d] = max(aim[d], aim[d]+(h.in.burden(i, s.load[i*h.in.days+d])-aim[d])*int64(t.below(4))/4)
		}
	}
	if h.gear != nil {
		aim[0] = min(aim[0], h.firstLimit())
	}
	return aim
}

// match brings loads to within burdens, where it can, the first morning also apart.
func (h *hunt) match(t *descent, best candidate, aim []int64, budget int64) candidate {
	t.setHardLimits()
	if h.leastFirst > nearly(h.bounds.day[0]) {
		now, steps := slices.Clone(t.carrier), t.steps
		t.setTargets([]int64{nearly(h.bounds.day[0])})
		t.lo, t.hi = 0, 1
		t.settleFirst(budget / 4)
		if v := t.score(); v.overrun == 0 {
			t.leastFirst = v.first
		}
		t.reset(now, aim)
		budget -= t.steps - steps
	}
	t.setTargets(aim)
	t.settle(budget, func() bool { return h.ctx.Err() != nil })
	if v := t.score(); h.better(v, best.score) {
		best = candidate{carrier: slices.Clone(t.carrier), score: v}
	}
	return best
}
