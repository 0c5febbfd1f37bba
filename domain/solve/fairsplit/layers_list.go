package fairsplit

import (
	"cmp"
	"slices"
)

// enlist lists all splits of a day's bags that leave the other days what they need. all
// is false if there were too many, or the steps did not suffice.
func (l *layers) enlist(d int, end int64) (all bool) {
	in := l.in
	y := &l.days[d]
	slack := y.slack
	for all = true; ; all = false {
		y.low, y.most = [matchMembers]int32{}, y.high
		for i := range in.members {
			y.low[i] = max(0, y.high[i]-slack)
			if d+1 < in.days {
				// What the later days bring is known from their lists.
				y.low[i] = max(0, y.low[i]-l.days[d+1].upTo[i])
				y.most[i] -= l.days[d+1].from[i]
			}
		}
		if l.match(d, end) {
			break
		}
		if slack -= 1 + slack/3; slack < 0 || l.steps > end {
			return false
		}
	}
	y.from, y.upTo = y.most, [matchMembers]int32{}
	for i := range in.members {
		y.ml[i] = never
		for x := range y.list {
			v := &y.list[x]
			y.from[i], y.upTo[i] = min(y.from[i], v.load[i]), max(y.upTo[i], v.load[i])
			y.ml[i] = min(y.ml[i], y.bulkOf(v, i))
		}
		if d+1 < in.days {
			y.from[i] = max(y.from[i]+l.days[d+1].from[i], y.high[i]-y.slack)
			y.upTo[i] = min(y.upTo[i]+l.days[d+1].upTo[i], y.high[i])
		}
	}
	l.steps += int64(2 * len(y.list))
	return all
}

// leastBulk is what the bags of a day take at least of a member's room, if they weigh so
// much, were the densest cut up.
func (l *layers) leastBulk(d, i int, grams int32) int64 {
	in := l.in
	var bags []int32
	for _, h := range l.days[d].halves {
		for _, j := range h.items {
			if in.canCarry(j, i) && in.mass[j] > 0 {
				bags = append(bags, j)
			}
		}
	}
	slices.SortFunc(bags, func(a, b int32) int {
		return cmp.Or(cmp.Compare(in.bulk[a]*int64(in.mass[b]), in.bulk[b]*int64(in.mass[a])), cmp.Compare(a, b))
	})
	sum := int64(0)
	for _, j := range bags {
		if grams <= in.mass[j] {
			return sum + max(0, int64(grams))*in.bulk[j]/int64(in.mass[j])
		}
		grams -= in.mass[j]
		sum += in.bulk[j]
	}
	return sum
}

// match lists all splits of a day's bags within its windows of grams. It gives up where
// they are too many.
func (l *layers) match(d int, end int64) bool {
	in := l.in
	y := &l.days[d]
	y.list = y.list[:0]
	a, b := &y.halves[0], &y.halves[1]
	if y.index.setWidths(in.members, y.low, y.most) {
		y.index.clear(len(b.load))
		for x := range b.load {
			y.index.add(&b.load[x])
		}
		l.steps += int64(len(b.load))
	}
	spare := l.spareFor(d)
	fits := true
	for x := range a.load {
		var from, to [matchMembers]int32
		least := int32(0)
		for i := range in.members {
			from[i], to[i] = y.low[i]-a.load[x][i], y.most[i]-a.load[x][i]
			least = min(least, to[i])
			if int64(a.bulk[x][i]) > spare[i] {
				least = -1
			}
		}
		l.steps++
		if least < 0 {
			continue
		}
		l.steps += y.index.near(&from, &to, func(z int32) bool {
			if l.steps++; l.steps > end {
				fits = false
				return false
			}
			load := &b.load[z]
			for i := range in.members {
				if load[i] < from[i] || load[i] > to[i] {
					return true
				}
			}
			if !l.hasRoom(y, x, int(z), &spare) || d == in.days-1 && !l.lastLeavesRoom(y, x, int(z)) {
				return true
			}
			if fits = len(y.list) < layerList; fits {
				s := layerSplit{at: [2]int32{int32(x), z}}
				for i := range load {
					s.load[i] = a.load[x][i] + load[i]
				}
				y.list = append(y.list, s)
			}
			return fits
		})
		if !fits {
			return false
		}
	}
	return true
}

// lastLeavesRoom tells whether a split of the last day leaves each member room for the others.
func (l *layers) lastLeavesRoom(y *layer, x, z int) bool {
	a, b := &y.halves[0], &y.halves[1]
	for i := range l.in.members {
		if !l.leavesRoom(l.in.days-1, i, a.load[x][i]+b.load[z][i], l.room[i]-int64(a.bulk[x][i]+b.bulk[z][i]), l.excess) {
			return false
		}
	}
	return true
}

// spareFor is the room that the other days leave for the bags of a day.
func (l *layers) spareFor(d int) [matchMembers]int64 {
	spare := l.room
	for i := range l.in.members {
		for k := range l.days {
			if k != d {
				spare[i] -= l.days[k].ml[i]
			}
		}
	}
	return spare
}

// weed takes out of the lists what leaves the other days too little room.
func (l *layers) weed() {
	for again := true; again; {
		again = false
		for d := range l.days {
			y := &l.days[d]
			spare := l.spareFor(d)
			var ml [matchMembers]int64
			for i := range ml {
				ml[i] = never
			}
			count := len(y.list)
			l.steps += int64(count)
			y.list = slices.DeleteFunc(y.list, func(s layerSplit) bool {
				for i := range l.in.members {
					if y.bulkOf(&s, i) > spare[i] {
						return true
					}
				}
				for i := range l.in.members {
					ml[i] = min(ml[i], y.bulkOf(&s, i))
				}
				return false
			})
			if len(y.list) == 0 {
				return
			}
			again = again || len(y.list) < count*15/16
			y.ml = ml
		}
	}
}

func (l *layers) hasRoom(y *layer, x, z int, spare *[matchMembers]int64) bool {
	a, b := &y.halves[0], &y.halves[1]
	for i, room := range spare {
		if int64(a.bulk[x][i]+b.bulk[z][i]) > room {
			return false
		}
	}
	for n := range l.caps {
		for i, share := range l.share[n] {
			if int64(a.energy[n][x][i]+b.energy[n][z][i]) > share {
				return false
			}
		}
	}
	return true
}

// bulkOf is the millilitres that a split brings a member.
func (y *layer) bulkOf(s *layerSplit, i int) int64 {
	return int64(y.halves[0].bulk[s.at[0]][i] + y.halves[1].bulk[s.at[1]][i])
}

func (y *layer) energyOf(n int, s *layerSplit, i int) int64 {
	return int64(y.halves[0].energy[n][s.at[0]][i] + y.halves[1].energy[n][s.at[1]][i])
}
