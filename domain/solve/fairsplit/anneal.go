package fairsplit

import (
	"cmp"
	"math/bits"
)

// annealer lowers the cost of a split by random exchanges between two members,
// accepting steps up less and less (simulated annealing, Kirkpatrick, Gelatt and
// Vecchi 1983). Most exchanges are of items that leave the packs on the same day and
// weigh nearly the same, or of items of one class, mass and volume that leave on
// different days, so that they mend one limit without upsetting the others.
type annealer struct {
	*descent
	peers   lineup // items that may move, by last day, then mass
	kin     lineup // the same by class, then mass, then volume, whatever their last day
	x       exchange
	barter  *barter // nil if heavy items are not to be bartered
	heat    int64
	toll    toll     // nil if prices are not known
	margins *margins // nil where limits get harder instead

	kept     candidate // best split seen
	value    func() score
	compare  func(a, b score) bool
	improved bool
	noted    int64 // least cost noted
}

func newAnnealer(t *descent, items []int32, compare func(a, b score) bool) *annealer {
	in := t.in
	a := &annealer{descent: t, compare: compare, value: t.score}
	lost := func(j int32) int32 { return in.mass[j] - in.residual[j] }
	a.peers = newLineup(in, items, func(x, y int32) int {
		return cmp.Or(cmp.Compare(in.last[x], in.last[y]), cmp.Compare(lost(x), lost(y)))
	})
	a.kin = newLineup(in, items, func(x, y int32) int {
		return cmp.Or(cmp.Compare(in.class[x], in.class[y]), cmp.Compare(lost(x), lost(y)), cmp.Compare(in.bulk[x], in.bulk[y]))
	})
	a.x.energy = make([]int64, in.classes)
	a.noted = never
	a.kept.score = score{overrun: never, first: never, sum: never}
	return a
}

// run cools from one temperature to another, in cost, over a budget of steps. It
// ends early if done says that the best split will do.
func (a *annealer) run(hot, cold, budget int64, done func(score) bool) {
	const blocks = 64
	a.note()
	if len(a.peers.items) == 0 || done(a.kept.score) {
		return
	}
	a.heat = hot
	factor := coolingFactor(hot, cold, blocks)
	for block := range blocks {
		parts := int64(8)
		if a.margins == nil {
			a.hard, parts = 8<<(block/7), 1
			a.recost()
		}
		for range parts {
			if a.margins != nil {
				a.margins.adapt(a.descent, block >= blocks*7/8)
			}
			a.noted = never
			if a.explore(budget / blocks / parts) {
				return
			}
		}
		a.note()
		if done(a.kept.score) {
			return
		}
		a.heat = max(1, a.heat*factor>>16)
	}
}

// explore makes exchanges for a budget of steps, and tells whether the cost is nil.
func (a *annealer) explore(budget int64) bool {
	for end := a.steps + budget; a.steps < end; a.steps += 4 {
		if a.exchangeOnce() && a.total < a.noted {
			a.note()
			if a.total == 0 {
				return true
			}
		}
	}
	return false
}

// exchangeOnce tries an exchange and tells whether it was made.
func (a *annealer) exchangeOnce() bool {
	if a.barter != nil && a.below(barterEvery) == 0 {
		return a.tryBarter()
	}
	if !a.propose() || !a.weigh(&a.x, a.rise()-a.toll.rise(&a.x, a.in.members)) {
		return false
	}
	a.exchangeNow(&a.x)
	return true
}

// coolingFactor is (cold/hot)^(1/blocks) in 1/65536, found without floats.
func coolingFactor(hot, cold int64, blocks int) int64 {
	low, high := int64(1), int64(1<<16)
	for low < high {
		mid := (low + high + 1) / 2
		heat := hot << 8
		for range blocks {
			heat = heat * mid >> 16
		}
		if heat>>8 > cold {
			high = mid - 1
		} else {
			low = mid
		}
	}
	return low
}

// rise draws by how much the cost may rise with the next step.
func (a *annealer) rise() int64 {
	// An exponential variate in 1/64 by the leading zeros of a random number: exact at
	// powers of two, linear between.
	r := a.next() | 1
	zeros := bits.LeadingZeros64(r)
	part := int64(r<<zeros>>57) & 63
	return a.heat * (int64(zeros)*64 + 63 - part) * 45 >> 12 // 45/64 is ln 2 rounded
}

// propose draws an exchange; it may come to nothing.
func (a *annealer) propose() bool {
	in := a.in
	none := in.none
	a.x.gives, a.x.takes = [2]int32{none, none}, [2]int32{none, none}
	r := a.next()
	kind := r & 15
	items := a.peers.items
	j := items[int((r>>8)%uint64(len(items)))]
	i := int(a.carrier[j])
	for range 3 {
		if a.costs[i] > 0 {
			break
		}
		// Prefer members above a limit.
		j = items[a.below(len(items))]
		i = int(a.carrier[j])
	}
	a.x.from, a.x.gives[0] = i, j
	switch {
	case kind < 1: // hand over
		k := int(in.allowed[j][a.below(len(in.allowed[j]))])
		a.x.to = k
		return k != i
	case kind < 7:
		return a.swapWith(a.kin.near(j, 3+len(items)/64, &a.random))
	case kind < 10:
		return a.swapWith(a.peers.near(j, 3+len(items)/(8*in.days), &a.random))
	case kind < 12: // swap with anything
		return a.swapWith(items[a.below(len(items))])
	default: // two for one or two
		if !a.swapWith(a.peers.near(j, 6+len(items)/in.days, &a.random)) {
			return false
		}
		if kind < 14 {
			return a.addGive()
		}
		return a.addTake() && (kind < 15 || a.addGive())
	}
}

func (a *annealer) swapWith(l int32) bool {
	k := int(a.carrier[l])
	if k == a.x.from || !a.in.canCarry(a.x.gives[0], k) || !a.in.canCarry(l, a.x.from) {
		return false
	}
	a.x.to, a.x.takes[0] = k, l
	return true
}

func (a *annealer) addGive() bool {
	mine := a.own[a.x.from]
	j := mine[a.below(len(mine))]
	a.x.gives[1] = j
	return j != a.x.gives[0] && a.in.canCarry(j, a.x.to)
}

func (a *annealer) addTake() bool {
	theirs := a.own[a.x.to]
	l := theirs[a.below(len(theirs))]
	a.x.takes[1] = l
	return l != a.x.takes[0] && a.in.canCarry(l, a.x.from)
}

// note keeps the split if it is the best seen.
func (a *annealer) note() {
	a.noted = min(a.noted, a.total)
	if v := a.value(); a.compare(v, a.kept.score) {
		a.kept.score = v
		a.kept.carrier = append(a.kept.carrier[:0], a.carrier...)
		a.improved = true
	}
}
