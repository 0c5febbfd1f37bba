package fairsplit

import (
	"cmp"
	"math"
	"math/big"
	"slices"
)

// reach tells which loads whole items can make up: for a member and a day, the largest
// sum of items that the member may carry, at most so many grams, and no more
// millilitres than the pack has room for. Where room is small against the items this is
// well below the room.
type reach struct {
	in   *instance
	most [][]int32 // per member and day, by grams; nil where it was not worked out
	work int64     // sums looked at
}

// reachWork limits the sums looked at per member and day; where there are more, loads
// are as good as reached.
const reachWork = 1 << 18

// newReach works sums out up to a little above the burdens given, one per day.
func newReach(in *instance, burden []int64) *reach {
	top := make([]int64, in.days)
	for d, f := range burden {
		top[d] = f + f/16
	}
	return in.reachWithin(top, false)
}

// reachWithin works sums out up to burdens given. If kept, these are burdens that no day
// passes, so that what a member carries on to a later day has to be within that day's.
func (in *instance) reachWithin(burden []int64, kept bool) *reach {
	r := &reach{in: in, most: make([][]int32, in.members*in.days)}
	for i := range in.members {
		p := pack{in: in, free: in.room[i] - in.pinnedBulk[i], kept: kept}
		bulk := int64(0)
		for d := range in.days {
			p.top = append(p.top, int(in.capacityOf(i, d, burden[d])))
		}
		for _, j := range in.movable {
			if in.canCarry(j, i) && p.takes(j) {
				p.items = append(p.items, j)
				bulk += in.bulk[j]
			}
		}
		p.roomy = bulk <= p.free
		slices.SortStableFunc(p.items, func(a, b int32) int { return cmp.Compare(p.until(b), p.until(a)) })
		for d := range in.days {
			work := p.top[d] * len(p.items)
			if p.roomy {
				work /= 4 // bits, not millilitres
			}
			if work > 0 && work <= reachWork {
				r.work += int64(work)
				r.most[i*in.days+d] = p.sums(d)
			}
		}
	}
	return r
}

// pack is what one member may carry.
type pack struct {
	in    *instance
	items []int32 // those carried longest first
	top   []int   // grams of items looked at on each day
	kept  bool    // no day goes above them
	free  int64   // millilitres
	roomy bool    // there is room for all items
}

// until is the last day on which an item weighs what it did on the first, or -1 if it
// weighs less later.
func (p *pack) until(j int32) int {
	if p.in.falls[j] || p.in.residual[j] > 0 && int(p.in.last[j]) < p.in.days-1 {
		return -1
	}
	return int(p.in.last[j])
}

// takes tells whether the item alone is within every day's burden.
func (p *pack) takes(j int32) bool {
	for d, top := range p.top {
		if p.kept && int(p.in.grams(j, d)) > max(0, top) {
			return false
		}
	}
	return true
}

// sums gives for each number of grams up to a day's most the largest sum that items
// make up on it without going above.
func (p *pack) sums(d int) []int32 {
	if p.roomy {
		made := p.made(d)
		return nearestBelow(p.top[d], func(x int) bool { return made.Bit(x) == 1 })
	}
	least := p.least(d)
	return nearestBelow(p.top[d], func(x int) bool { return least[x] <= max(0, p.free) })
}

func nearestBelow(top int, reached func(x int) bool) []int32 {
	list := make([]int32, top+1)
	for x := 1; x <= top; x++ {
		list[x] = list[x-1]
		if reached(x) {
			list[x] = int32(x)
		}
	}
	return list
}

// made tells which sums items make up on a day, a bit for each number of grams.
func (p *pack) made(d int) *big.Int {
	made, more := big.NewInt(1), new(big.Int)
	p.each(d, func(j int32, m int) {
		made.Or(made, more.Lsh(made, uint(m)))
	}, func(top int) {
		if made.BitLen() > top+1 {
			made.And(made, more.Sub(more.Lsh(big.NewInt(1), uint(top+1)), big.NewInt(1)))
		}
	})
	return made
}

// least gives the millilitres that go at least with each sum of a day.
func (p *pack) least(d int) []int64 {
	least := slices.Repeat([]int64{math.MaxInt64 / 2}, p.top[d]+1)
	least[0] = 0
	high := 0
	p.each(d, func(j int32, m int) {
		for x := min(len(least)-1, high+m); x >= m; x-- {
			least[x] = min(least[x], least[x-m]+p.in.bulk[j])
		}
		high += m
	}, func(top int) {
		for high = min(high, len(least)-1); high > top; high-- {
			least[high] = math.MaxInt64 / 2
		}
	})
	return least
}

// each goes through the items that weigh on a day, and tells the most that may be there of
// those so far: what is carried on to a later day is within that day's.
func (p *pack) each(d int, add func(j int32, grams int), most func(grams int)) {
	day := p.in.days - 1
	for _, j := range p.items {
		for ; p.kept && day > d && p.until(j) < day; day-- {
			most(max(0, p.top[day]))
		}
		if m := int(p.in.grams(j, d)); m > 0 {
			add(j, m)
			most(p.top[d])
		}
	}
}

// capacity is what whole items can bring a member on a day within a burden, a multiple
// of piece where no more is known.
func (r *reach) capacity(i, d int, burden, piece int64) int64 {
	grams := r.in.capacityOf(i, d, burden)
	if most := r.most[i*r.in.days+d]; grams < int64(len(most)) {
		return int64(most[grams])
	}
	return grams / piece * piece
}

// tighten raises the bound on the sum by looking only at splits fairer than the best: on
// none of their days is the largest burden above what the bounds of the other days leave
// it, so that who has no room on a later day takes nothing that is carried to it.
func (h *hunt) tighten() {
	in := h.in
	const dear = 2_000_000 // steps below which the search needs them all
	if h.best.overrun != 0 || h.best.sum == h.tightened || h.limit < dear {
		return
	}
	h.tightened = h.best.sum
	for range 3 {
		least, top := int64(0), make([]int64, in.days)
		for d, burden := range h.aim {
			least += in.hours[d] * burden
		}
		if least >= h.best.sum {
			break
		}
		for d, hours := range in.hours {
			top[d] = never
			if hours > 0 {
				top[d] = h.aim[d] + (h.best.sum-1-least)/hours
			}
		}
		top[0] = max(h.aim[0], min(top[0], h.leastFirst+h.leastFirst/200))
		whole, sum := in.reachWithin(top, true), int64(0)
		h.steps += whole.work / 4
		for d := range in.days {
			h.aim[d] = in.wholeLevel(d, everyone(in.members), in.movable, h.aim[d], whole)
			sum += in.hours[d] * h.aim[d]
		}
		if sum == least {
			break
		}
		h.bounds.raiseSum(min(sum, h.best.sum))
	}
}
