package fairsplit

import "slices"

// packSums tells for each day, member and number of grams the fewest millilitres that bags of
// the day take which weigh so much and which the member may carry; noPack if there are none.
type packSums [][matchMembers][]int32

const noPack = int32(1) << 30

func (l *layers) newPackSums() packSums {
	sums := make(packSums, len(l.days))
	for d := range l.days {
		for i := range l.in.members {
			least := slices.Repeat([]int32{noPack}, int(l.days[d].grams)+1)
			least[0] = 0
			most := int32(0)
			for _, h := range l.days[d].halves {
				for _, j := range h.items {
					if !l.in.canCarry(j, i) {
						continue
					}
					grams, bulk := l.in.mass[j], int32(l.in.bulk[j])
					most += grams
					for g := most; g >= grams; g-- {
						least[g] = min(least[g], least[g-grams]+bulk)
					}
				}
			}
			sums[d][i] = least
			l.steps += int64(len(least) * 4)
		}
	}
	return sums
}

// tightenPacks lowers what each member may have of the bags of a day and later to what whole
// bags can make up in the room there is, while the others take no more than they may. It
// is false where that is too little for all bags.
func (l *layers) tightenPacks() bool {
	in := l.in
	for again := true; again; {
		again = false
		for i := range in.members {
			highest, ok := l.tightenPack(i)
			if !ok {
				return false
			}
			for d, high := range highest {
				y := &l.days[d]
				lower := y.high[i] - high
				if lower > 0 {
					y.high[i] = high
					y.slack -= lower
					again = true
				}
				if y.slack < 0 {
					return false
				}
			}
		}
	}
	return true
}

// roomBefore is what a member needs for the bags of the days before one, by what they have of its
// bags and those of later days, and by how many parts of the excess those days may use.
type roomBefore struct {
	low int32
	ml  [][packParts]int32
}

// leavesRoom tells whether a member with so many grams of the bags of a day and later has room
// enough left for those of the days before, with so much of the excess left.
func (l *layers) leavesRoom(d, i int, grams int32, room, excess int64) bool {
	if len(l.before[i]) == 0 {
		return true
	}
	b := &l.before[i][d]
	at := grams - b.low
	if at < 0 || int(at) >= len(b.ml) {
		return false
	}
	parts := packParts - 1
	if l.excess > 0 {
		parts = max(0, int((excess*packParts+l.excess-1)/l.excess)-1)
	}
	return int64(b.ml[at][parts]) <= room
}

const (
	packLooks = 1_500 // pairs of loads of two days looked at for a member
	packParts = 12    // of the excess of the sum
)

// tightenPack gives the most that a member can have on each day, with the room there is and
// without the days' burdens passing the sum together.
func (l *layers) tightenPack(i int) (highest []int32, ok bool) {
	days := len(l.days)
	l.before[i] = l.before[i][:0]
	low, width := make([]int32, days+1), make([]int32, days+1)
	highest = make([]int32, days)
	width[days] = 1
	for d := range l.days {
		y := &l.days[d]
		low[d] = max(0, y.high[i]-y.slack)
		width[d] = y.high[i] - low[d] + 1
		highest[d] = y.high[i]
	}
	for d := range l.days {
		if int64(width[d])*int64(width[d+1]) > packLooks {
			return highest, true
		}
		l.steps += int64(width[d])*int64(width[d+1])*packParts/4 + 16
	}
	// later: the fewest millilitres of the bags of a day and later; sooner: of the days before.
	later, sooner, cost := make([][][packParts]int32, days+1), make([][][packParts]int32, days+1), make([][]int, days)
	later[days], sooner[0] = make([][packParts]int32, 1), make([][packParts]int32, width[0])
	each := func(d int, f func(now, next int, ml int32)) {
		sums := l.sums[d][i]
		for now := range int(width[d]) {
			for next := range int(width[d+1]) {
				if g := int(low[d]-low[d+1]) + now - next; cost[d][now] < packParts && g >= 0 && g < len(sums) && sums[g] < noPack {
					f(now, next, sums[g])
				}
			}
		}
	}
	for d := days - 1; d >= 0; d-- {
		cost[d] = l.packCosts(d, i, low[d], width[d])
		later[d] = noPacks(width[d])
		each(d, func(now, next int, ml int32) {
			c, to, from := cost[d][now], &later[d][now], &later[d+1][next]
			for b := c; b < packParts; b++ {
				to[b] = min(to[b], from[b-c]+ml)
			}
		})
	}
	for d := range days {
		sooner[d+1] = noPacks(width[d+1])
		each(d, func(now, next int, ml int32) {
			c, to, from := cost[d][now], &sooner[d+1][next], &sooner[d][now]
			for b := c; b < packParts; b++ {
				to[b] = min(to[b], from[b-c]+ml)
			}
		})
	}
	for d := range days {
		at := int(width[d]) - 1
		for ; at >= 0; at-- {
			least := int64(noPack)
			for b, ml := range later[d][at] {
				least = min(least, int64(ml)+int64(sooner[d][at][packParts-1-b]))
			}
			if least < int64(noPack) && least <= l.room[i] {
				break
			}
		}
		if at < 0 {
			return nil, false
		}
		highest[d] = low[d] + int32(at)
		l.before[i] = append(l.before[i], roomBefore{low[d], sooner[d]})
	}
	return highest, true
}

func noPacks(width int32) [][packParts]int32 {
	list := make([][packParts]int32, width)
	for n := range list {
		for b := range list[n] {
			list[n][b] = noPack
		}
	}
	return list
}

// packCosts tells how many whole parts of the excess a day uses at least if a member has so
// much: the burden has to leave the others enough, too.
func (l *layers) packCosts(d, i int, low, width int32) []int {
	in := l.in
	bags := int64(0)
	for k := d; k < len(l.days); k++ {
		bags += l.days[k].grams
	}
	costs := make([]int, width)
	own, others := make([]int64, packParts+1), make([]int64, packParts+1)
	for b := range own {
		top := l.top(d, l.excess*int64(b)/packParts)
		own[b] = int64(l.most(i, d, top))
		for k := range in.members {
			if k != i {
				others[b] += int64(min(l.most(k, d, top), l.days[d].high[k]))
			}
		}
	}
	for n := range costs {
		b := 0
		for b <= packParts && (own[b] < int64(low)+int64(n) || others[b]+int64(low)+int64(n) < bags) {
			b++
		}
		costs[n] = max(0, b-1)
	}
	return costs
}
