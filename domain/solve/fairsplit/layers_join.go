package fairsplit

import (
	"cmp"
	"slices"
)

// findScarce sorts the lists by what they take of the room and the classes that an
// average join would pass, which it has to stay below by most of its spread.
func (l *layers) findScarce() {
	for i := range l.in.members {
		l.makeDear(float64(l.room[i]), func(y *layer, s *layerSplit) float64 { return float64(y.bulkOf(s, i)) })
		for n := range l.caps {
			l.makeDear(float64(l.share[n][i]), func(y *layer, s *layerSplit) float64 { return float64(y.energyOf(n, s, i)) })
		}
	}
	for d := range l.days {
		y := &l.days[d]
		slices.SortFunc(y.list, func(a, b layerSplit) int {
			return cmp.Or(cmp.Compare(a.dear, b.dear), cmp.Compare(a.at[0], b.at[0]), cmp.Compare(a.at[1], b.at[1]))
		})
		l.steps += int64(16 * len(y.list))
		var low [matchMembers]int32
		high := low
		for i := range high {
			high[i] = y.slack
		}
		y.inList.setWidths(l.in.members, low, high)
		y.inList.clear(len(y.list))
		for x := range y.list {
			y.inList.add(&y.list[len(y.list)-1-x].load) // the last is found first
		}
	}
}

func (l *layers) makeDear(limit float64, of func(y *layer, s *layerSplit) float64) {
	mean, variance := 0.0, 1.0
	for d := range l.days {
		y := &l.days[d]
		sum, squares := 0.0, 0.0
		for x := range y.list {
			v := of(y, &y.list[x])
			sum += v
			squares += float64(v * v)
		}
		count := float64(len(y.list))
		sum /= count
		mean += sum
		variance += squares/count - float64(sum*sum)
		l.steps += int64(len(y.list))
	}
	price := (mean - limit) / variance
	if price <= 0 {
		return
	}
	for d := range l.days {
		y := &l.days[d]
		for x := range y.list {
			y.list[x].dear += float32(float64(price * of(y, &y.list[x])))
		}
	}
}

// joiner picks a split of each day, from the last to the first.
type joiner struct {
	*layers
	ceiling    int64
	end        int64
	tries      int // splits of a day looked at for each of the next
	pick       []*layerSplit
	found, cut bool
}

func (j *joiner) join(d int, load [matchMembers]int32, room [matchMembers]int64, share [layerCaps][matchMembers]int64, excess int64) {
	if d < 0 {
		j.found = true
		return
	}
	in := j.in
	y := &j.days[d]
	top := j.top(d, excess)
	if d == 0 {
		top = min(top, j.ceiling)
	}
	var low, high [matchMembers]int32
	for i := range in.members {
		high[i] = min(j.most(i, d, top), y.high[i]) - load[i]
		low[i] = high[i] - y.slack
		if high[i] < 0 {
			return
		}
	}
	tries := 0
	try := func(s *layerSplit) bool {
		if j.steps++; j.steps > j.end {
			j.cut = true
			return false
		}
		for i := range in.members {
			if s.load[i] > high[i] {
				return true
			}
		}
		j.steps += 8
		left, sum, energy, burden := room, load, share, j.level[d]
		for i := range in.members {
			if left[i] -= y.bulkOf(s, i); left[i] < 0 {
				return true
			}
			for n := range j.caps {
				if energy[n][i] -= y.energyOf(n, s, i); energy[n][i] < 0 {
					return true
				}
			}
			sum[i] += s.load[i]
			burden = max(burden, in.burden(i, sum[i]+j.base[i*in.days+d]))
		}
		rest := excess - in.hours[d]*(burden-j.level[d])
		for i := range in.members {
			if !j.leavesRoom(d, i, sum[i], left[i], rest) {
				return true
			}
		}
		j.pick[d] = s
		j.join(d-1, sum, left, energy, rest)
		if tries++; tries >= j.tries {
			j.cut = true
			return false
		}
		return !j.found && !j.out()
	}
	if d == in.days-1 {
		for x := range y.list {
			if !try(&y.list[x]) {
				return
			}
		}
		return
	}
	j.steps += 16
	y.inList.near(&low, &high, func(x int32) bool { return try(&y.list[len(y.list)-1-int(x)]) })
}

func (j *joiner) out() bool {
	j.cut = j.cut || j.steps > j.end
	return j.steps > j.end
}
