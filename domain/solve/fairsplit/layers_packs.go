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
// bags and those of later days. There is no more to a nil than that it was not worked out.
type roomBefore struct {
	low int32
	ml  []int32
}

// leavesRoom tells whether a member with so many grams of the bags of a day and later has room
// enough left for those of the days before.
func (l *layers) leavesRoom(d, i int, grams int32, room int64) bool {
	b := &l.before[i]
	if len(*b) == 0 {
		return true
	}
	at := grams - (*b)[d].low
	return at >= 0 && int(at) < len((*b)[d].ml) && int64((*b)[d].ml[at]) <= room
}

// packLooks limits the pairs of loads of two days looked at for a member.
const packLooks = 20_000

// tightenPack gives the most that a member can have on each day.
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
		l.steps += int64(width[d])*int64(width[d+1])/2 + 8
	}
	// later: the fewest millilitres of the bags of a day and later; sooner: of the days before.
	later, sooner := make([][]int32, days+1), make([][]int32, days+1)
	later[days] = []int32{0}
	each := func(d int, f func(now, next int, ml int32)) {
		sums := l.sums[d][i]
		for now := range int(width[d]) {
			for next := range int(width[d+1]) {
				if g := int(low[d]-low[d+1]) + now - next; g >= 0 && g < len(sums) && sums[g] < noPack {
					f(now, next, sums[g])
				}
			}
		}
	}
	for d := days - 1; d >= 0; d-- {
		later[d] = slices.Repeat([]int32{noPack}, int(width[d]))
		each(d, func(now, next int, ml int32) { later[d][now] = min(later[d][now], min(noPack, later[d+1][next]+ml)) })
	}
	sooner[0] = make([]int32, width[0])
	for d := range days {
		sooner[d+1] = slices.Repeat([]int32{noPack}, int(width[d+1]))
		each(d, func(now, next int, ml int32) {
			sooner[d+1][next] = min(sooner[d+1][next], min(noPack, sooner[d][now]+ml))
		})
	}
	for d := range days {
		at := int(width[d]) - 1
		for ; at >= 0; at-- {
			if later[d][at] < noPack && sooner[d][at] < noPack && int64(later[d][at]+sooner[d][at]) <= l.room[i] {
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
