package fairsplit

import (
	"cmp"
	"slices"
)

// beam looks for one good split at a leaf, where layers look at all: of each day's splits
// it keeps those that by the odds leave most splits of the days before.
type beam struct {
	*layers
	odds    *odds
	ceiling int64
	end     int64

	perGram       [][matchMembers]float64 // by the limits of earlier mornings, for each day
	perMl         [matchMembers]float64
	perEnergy     [layerCaps][matchMembers]float64
	perBurden     []float64
	rank          [2][]float32 // of each split of a half
	order         [2][]int32   // those first that leave much
	index, inList gramCells
	list          []layerSplit
	kept          [][]partial // by day
	low, high     [matchMembers]int32
}

// partial is a split of the bags of a day and all later ones.
type partial struct {
	load   [matchMembers]int32
	room   [matchMembers]int64
	share  [layerCaps][matchMembers]int64
	excess int64
	cost   float64
	split  layerSplit // of the day
	turn   int8       // in which it was gone on from
	after  int32      // place among those kept of the next day
}

const (
	beamFirst = 256  // splits of the last day kept
	beamNext  = 4096 // of other days
	beamList  = 1 << 15
	beamWide  = 20 // grams looked at for a member
	rankCells = 256
	beamTurns = 4
	beamJoin  = 1_000_000 // steps of a join of days but the first
)

// find gives the carriers of a split that costs no more than limit, with R1 within a ceiling,
// if it comes upon one until a count of steps.
func (b *beam) find(carriers []int32, limit, ceiling, end int64) []int32 {
	l, in := b.layers, b.in
	if !l.mayHold(carriers, limit, ceiling) {
		return nil
	}
	b.odds.setLimits(ceiling)
	if !b.odds.settle() {
		return nil
	}
	b.ceiling, b.end = ceiling, end
	b.setPrices()
	b.kept = make([][]partial, in.days+1)
	b.kept[in.days] = []partial{{room: l.room, share: l.share, excess: l.excess}}
	if !b.extend(in.days - 1) {
		return nil
	}
	pick := make([]*layerSplit, in.days)
	at := int32(0)
	for d := range pick {
		pick[d] = &b.kept[d][at].split
		at = b.kept[d][at].after
	}
	return l.carriers(carriers, pick)
}

// extend goes on from the partial splits kept of the next day, first from those that are most
// alike, then from others.
func (b *beam) extend(d int) bool {
	for turn := int8(1); turn <= beamTurns && b.steps < b.end; turn++ {
		if !b.window(d, turn) {
			return false
		}
		b.enlist(d)
		b.join(d, turn)
		if len(b.kept[d]) > 0 && (d == 0 || b.extend(d-1)) {
			return true
		}
	}
	return false
}

// setPrices takes what things cost from the odds.
func (b *beam) setPrices() {
	in := b.in
	b.perGram = make([][matchMembers]float64, in.days)
	b.perMl, b.perEnergy = [matchMembers]float64{}, [layerCaps][matchMembers]float64{}
	b.perBurden = make([]float64, in.days)
	for k, r := range b.odds.rows {
		price := b.odds.price[k]
		switch {
		case r.kind == sumRow || r.kind == firstRow:
			for d := range in.days {
				b.perBurden[d] += float64(price*b.odds.weight(r, d)) / b.odds.mean
			}
		case r.kind == loadRow || r.figure == 0:
			first := r.from + 1
			if r.kind == bagRow {
				first = 0
			}
			for d := first; d < in.days; d++ {
				b.perGram[d][r.i] += price
			}
		case r.figure == 1:
			b.perMl[r.i] += price
		default:
			b.perEnergy[r.figure-2][r.i] += price
		}
	}
}

// window chooses the partial splits of a turn so that the loads of a day to look at are not
// too wide.
func (b *beam) window(d int, turn int8) bool {
	after, left := b.kept[d+1], beamNext
	if d > 0 {
		left = beamFirst
	}
	centre := -1
	if d+1 < b.in.days {
		centre = b.centre(after)
	}
	first := true
	look := func(s *partial) {
		if s.turn > 0 || left == 0 {
			return
		}
		low, high, ok := b.windowOf(d, s)
		if !ok {
			s.turn = beamTurns + 1
			return
		}
		least, most := low, high
		for i := range b.in.members {
			if !first {
				least[i], most[i] = min(b.low[i], low[i]), max(b.high[i], high[i])
			}
			ok = ok && (first || most[i]-least[i] <= max(2*beamWide, b.high[i]-b.low[i]))
		}
		if ok {
			b.low, b.high, first = least, most, false
			s.turn = turn
			left--
		}
	}
	if centre >= 0 {
		look(&after[centre])
	}
	for n := range after {
		look(&after[n])
	}
	b.steps += int64(len(after) * 2)
	return !first
}

// centre is the partial split not yet looked at that has most others of about the same loads.
func (b *beam) centre(list []partial) int {
	const centres = 32
	found, most, tried := -1, 0, 0
	for n := range list {
		if list[n].turn > 0 {
			continue
		}
		if tried++; tried > centres {
			break
		}
		count := 0
		for m := range list {
			near := list[m].turn == 0
			for i := range b.in.members {
				near = near && max(list[n].load[i]-list[m].load[i], list[m].load[i]-list[n].load[i]) <= beamWide/2
			}
			if near {
				count++
			}
		}
		if count > most {
			found, most = n, count
		}
	}
	b.steps += int64(centres * len(list) / 2)
	return found
}

// windowOf is that of a partial split.
func (b *beam) windowOf(d int, s *partial) (low, high [matchMembers]int32, ok bool) {
	in := b.in
	top := b.top(d, s.excess)
	if d == 0 {
		top = min(top, b.ceiling)
	}
	slack := -int32(b.days[d].grams)
	for i := range in.members {
		high[i] = min(min(b.most(i, d, top), b.days[d].high[i])-s.load[i], int32(b.days[d].grams))
		if high[i] < 0 {
			return low, high, false
		}
		slack += high[i]
	}
	for i := range in.members {
		low[i] = max(0, high[i]-slack)
		if slack >= 0 && !b.reaches(d, i, low[i], high[i], s.room[i]) {
			return low, high, false
		}
	}
	if slack > 2*beamWide {
		b.narrow(d, s, &low, &high)
	}
	return low, high, slack >= 0
}

// reaches tells whether bags of a day can weigh from low to high with a member.
func (b *beam) reaches(d, i int, low, high int32, room int64) bool {
	for _, ml := range b.sums[d][i][low : high+1] {
		if int64(ml) <= room {
			return true
		}
	}
	return false
}

// narrow looks about where most splits are, by the odds. What a member with few bags can carry
// is far apart, so only one of the others is held to it then.
func (b *beam) narrow(d int, s *partial, low, high *[matchMembers]int32) {
	var centre [matchMembers]int32
	bags := 0
	for _, h := range b.days[d].halves {
		bags += len(h.items)
	}
	bag := int32(b.days[d].grams / int64(max(1, bags)))
	most, few := 0, false
	for i := range b.in.members {
		centre[i] = int32(b.odds.uses[d][i*oddsFigures]) - s.load[i]
		few = few || centre[i] < 3*bag
		if centre[i] > centre[most] {
			most = i
		}
	}
	for i := range b.in.members {
		if !few || i == most {
			low[i], high[i] = max(low[i], centre[i]-beamWide/2), min(high[i], centre[i]+beamWide/2)
		}
	}
}

// join adds the day's splits to the partial splits of the next day and keeps the best; of the
// first day's the first that fits.
func (b *beam) join(d int, turn int8) {
	in := b.in
	var low, high [matchMembers]int32
	for n := range b.kept[d+1] {
		if s := &b.kept[d+1][n]; s.turn == turn {
			low, high, _ = b.windowOf(d, s)
			break
		}
	}
	b.inList.setWidths(in.members, low, high)
	b.inList.clear(len(b.list))
	for x := range b.list {
		b.inList.add(&b.list[x].load)
	}
	b.steps += int64(len(b.list))
	alive := 0
	for n := range b.kept[d+1] {
		if b.kept[d+1][n].turn == turn {
			alive++
		}
	}
	var kept []partial
	for n := range b.kept[d+1] {
		s := &b.kept[d+1][n]
		if s.turn != turn {
			continue
		}
		low, high, ok := b.windowOf(d, s)
		if !ok {
			continue
		}
		most, stop := len(kept)+1+8*beamNext/alive, b.steps+int64(beamJoin/alive)
		b.steps += 16 + b.inList.near(&low, &high, func(x int32) bool {
			b.steps++
			if p, ok := b.add(d, s, &b.list[x], &low, &high); ok {
				p.after = int32(n)
				kept = append(kept, p)
			}
			return b.steps <= b.end && (d == 0 && len(kept) == 0 || d > 0 && len(kept) < most && b.steps < stop)
		})
		if b.steps > b.end || d == 0 && len(kept) > 0 {
			break
		}
	}
	b.kept[d] = b.best(kept)
}

func (b *beam) best(kept []partial) []partial {
	slices.SortFunc(kept, func(x, y partial) int {
		return cmp.Or(cmp.Compare(x.cost, y.cost), cmp.Compare(x.after, y.after), cmp.Compare(x.split.at[0], y.split.at[0]), cmp.Compare(x.split.at[1], y.split.at[1]))
	})
	b.steps += int64(len(kept) * 8)
	return kept[:min(len(kept), beamNext)]
}

// add is a partial split with one more day, if it is within all limits.
func (b *beam) add(d int, s *partial, v *layerSplit, low, high *[matchMembers]int32) (p partial, ok bool) {
	in := b.in
	for i := range in.members {
		if v.load[i] < low[i] || v.load[i] > high[i] {
			return p, false
		}
	}
	b.steps += 8
	y := &b.days[d]
	p = partial{load: s.load, room: s.room, share: s.share, cost: s.cost, split: *v}
	burden := b.level[d]
	for i := range in.members {
		bulk := y.bulkOf(v, i)
		if p.room[i] -= bulk; p.room[i] < 0 {
			return p, false
		}
		p.cost += float64(b.perMl[i] * float64(bulk))
		for n := range b.caps {
			energy := y.energyOf(n, v, i)
			if p.share[n][i] -= energy; p.share[n][i] < 0 {
				return p, false
			}
			p.cost += float64(b.perEnergy[n][i] * float64(energy))
		}
		p.cost += float64(b.perGram[d][i] * float64(v.load[i]))
		p.load[i] += v.load[i]
		burden = max(burden, in.burden(i, p.load[i]+b.base[i*in.days+d]))
	}
	p.excess = s.excess - in.hours[d]*(burden-b.level[d])
	p.cost += float64(b.perBurden[d] * float64(burden-b.level[d]))
	if p.excess < 0 {
		return p, false
	}
	for i := range in.members {
		if !b.leavesRoom(d, i, p.load[i], p.room[i], p.excess) {
			return p, false
		}
	}
	if d > 0 {
		b.steps += 4
		_, _, ok = b.windowOf(d-1, &p)
		return p, ok
	}
	return p, true
}
