package fairsplit

import (
	"math"
	"slices"
)

// layers share out the bags of each day apart, when the gear has its carriers. All splits
// of a day's bags that could belong to a split as good as looked for are listed, matched
// to the gram from two halves (Horowitz and Sahni 1974), and the lists are joined from
// the last day to the first. Where no list had to be cut short and no join is within all
// limits, there is no such split.
type layers struct {
	in     *instance
	days   []layer
	sums   packSums
	before [matchMembers][]roomBefore // for each day
	caps   []int                      // classes that could bind, at most layerCaps
	steps  int64

	gear   []int32
	base   []int32 // grams per member and day that have a carrier
	room   [matchMembers]int64
	share  [layerCaps][matchMembers]int64 // energy beside the gear
	level  []int64
	excess int64 // of the sum over what the levels make it
}

// layerCaps is how many classes may bind.
const layerCaps = 2

// layer is the bags that leave the packs after one day.
type layer struct {
	halves [2]layerHalf
	grams  int64 // of all
	index  gramCells
	list   []layerSplit
	inList gramCells
	ml     [matchMembers]int64 // that each has to have room for
	high   [matchMembers]int32 // grams of this and all later days that each may have
	from   [matchMembers]int32 // grams of this and all later days that each has in any list
	upTo   [matchMembers]int32
	low    [matchMembers]int32 // window for the bags of this day
	most   [matchMembers]int32
	slack  int32 // what is left of that when all is handed out
}

// layerHalf holds all splits of half a day's bags.
type layerHalf struct {
	items  []int32
	load   [][matchMembers]int32
	bulk   [][matchMembers]int32
	energy [layerCaps][][matchMembers]int32
	hands  []uint64 // two bits per item
}

// layerSplit is a split of a day's bags: one of each half.
type layerSplit struct {
	load [matchMembers]int32
	at   [2]int32
	dear float32 // how much of what is scarce it takes
}

const (
	layerSmall = 14.0 // splits of the first half, as a power of 2
	layerList  = 1 << 16
	layerItems = 32 // of a half
)

// newLayers is nil where there are too many members, classes or bags.
func newLayers(in *instance, gear []int32) *layers {
	l := &layers{in: in, days: make([]layer, in.days), gear: gear}
	for c := range in.classes {
		if in.classCap[c] < in.classTotal[c] {
			l.caps = append(l.caps, c)
		}
	}
	bulk, energy := int64(0), int64(0)
	for j := range in.items {
		bulk, energy = bulk+in.bulk[j], energy+in.energy[j]
	}
	if in.members > matchMembers || len(l.caps) > layerCaps || max(bulk, energy) > math.MaxInt32 {
		return nil
	}
	batches, _ := in.batches()
	for d := range l.days {
		y := &l.days[d]
		ways := 0.0
		for _, j := range batches[d] {
			if slices.Contains(gear, j) {
				continue
			}
			n := 0
			if w := log2(len(in.allowed[j])); ways+w > layerSmall {
				n = 1
			} else {
				ways += w
			}
			y.halves[n].items = append(y.halves[n].items, j)
			y.grams += int64(in.mass[j])
		}
		for n := range y.halves {
			if len(y.halves[n].items) > layerItems {
				return nil
			}
			l.fill(&y.halves[n])
		}
	}
	l.sums = l.newPackSums()
	return l
}

// fill lists all splits of a half.
func (l *layers) fill(h *layerHalf) {
	h.load, h.bulk, h.hands = make([][matchMembers]int32, 1), make([][matchMembers]int32, 1), make([]uint64, 1)
	for n := range l.caps {
		h.energy[n] = make([][matchMembers]int32, 1)
	}
	for n, j := range h.items {
		count := len(h.hands)
		allowed := l.in.allowed[j]
		for k := len(allowed) - 1; k >= 0; k-- {
			to := count * k // the first carrier takes the place of the old ones, last
			if k > 0 && len(h.hands) < count*len(allowed) {
				h.grow(count * len(allowed))
			}
			i := allowed[k]
			copy(h.load[to:], h.load[:count])
			copy(h.bulk[to:], h.bulk[:count])
			copy(h.hands[to:], h.hands[:count])
			for x := to; x < to+count; x++ {
				h.load[x][i] += l.in.mass[j]
				h.bulk[x][i] += int32(l.in.bulk[j])
				h.hands[x] |= uint64(i) << (2 * n)
			}
			for m, c := range l.caps {
				copy(h.energy[m][to:], h.energy[m][:count])
				if int(l.in.class[j]) != c {
					continue
				}
				for x := to; x < to+count; x++ {
					h.energy[m][x][i] += int32(l.in.energy[j])
				}
			}
		}
	}
	l.steps += int64(3 * len(h.hands))
}

func (h *layerHalf) grow(size int) {
	more := size - len(h.hands)
	h.load = append(h.load, make([][matchMembers]int32, more)...)
	h.bulk = append(h.bulk, make([][matchMembers]int32, more)...)
	h.hands = append(h.hands, make([]uint64, more)...)
	for n := range h.energy {
		if h.energy[n] != nil {
			h.energy[n] = append(h.energy[n], make([][matchMembers]int32, more)...)
		}
	}
}

// search looks for a split with the gear handed out that costs no more than limit, with
// R1 within a ceiling, until a count of steps. whole tells whether all were looked at.
func (l *layers) search(carriers []int32, limit, ceiling, end int64) (carrier []int32, whole bool) {
	in := l.in
	if !l.mayHold(carriers, limit, ceiling) {
		return nil, true
	}
	for d := range l.days {
		for i := range in.members {
			least := l.days[d].high[i] - l.days[d].slack
			if d+1 < in.days {
				least -= l.days[d+1].high[i]
			}
			l.days[d].ml[i] = l.leastBulk(d, i, least)
		}
	}
	whole = true
	for d := in.days - 1; d >= 0; d-- {
		all := l.enlist(d, end)
		whole = whole && all
		if len(l.days[d].list) == 0 || l.steps > end {
			return nil, whole && l.steps <= end
		}
	}
	l.weed()
	for d := range l.days {
		if len(l.days[d].list) == 0 {
			return nil, whole
		}
	}
	l.findScarce()
	j := joiner{layers: l, ceiling: ceiling, pick: make([]*layerSplit, in.days)}
	for j.tries = 16; ; j.tries *= 16 {
		j.cut, j.end = false, min(end, l.steps+max(100_000, (end-l.steps)/2))
		j.join(in.days-1, [matchMembers]int32{}, l.room, l.share, l.excess)
		if j.found || !j.cut || l.steps >= end || j.tries > layerList {
			break
		}
	}
	if !j.found {
		return nil, whole && !j.cut
	}
	return l.carriers(carriers, j.pick), false
}

// mayHold hands the gear out and sets the limits of the bags. It is false where no split of them
// keeps them.
func (l *layers) mayHold(carriers []int32, limit, ceiling int64) bool {
	l.steps += 200
	return l.handOut(carriers) && l.setLevels(limit) && l.setHigh(ceiling) && l.tightenPacks()
}

// handOut takes what has a carrier out of the limits, and tells whether they hold.
func (l *layers) handOut(carriers []int32) bool {
	in := l.in
	l.base = append(l.base[:0], in.pinned...)
	for i := range in.members {
		l.room[i] = in.room[i] - in.pinnedBulk[i]
		for n, c := range l.caps {
			l.share[n][i] = in.classCap[c] - in.pinnedClass[i*in.classes+c]
		}
	}
	for k, j := range l.gear {
		i := int(carriers[k])
		for d := range in.days {
			l.base[i*in.days+d] += in.grams(j, d)
		}
		l.room[i] -= in.bulk[j]
		for n, c := range l.caps {
			if int(in.class[j]) == c {
				l.share[n][i] -= in.energy[j]
			}
		}
	}
	for i := range in.members {
		if l.room[i] < 0 {
			return false
		}
		for n := range l.caps {
			if l.share[n][i] < 0 {
				return false
			}
		}
	}
	return true
}

// setLevels finds the water level of each day above the gear, and tells whether they leave
// a sum within limit.
func (l *layers) setLevels(limit int64) bool {
	in := l.in
	l.level = make([]int64, in.days)
	l.excess = limit
	bags := int64(0)
	for d := in.days - 1; d >= 0; d-- {
		bags += l.days[d].grams
		floor := int64(0)
		for i := range in.members {
			floor = max(floor, in.burden(i, l.base[i*in.days+d]))
		}
		l.level[d] = in.waterLevel(everyone(in.members), bags, floor, func(i int, burden int64) int64 {
			return max(0, min(burden/in.scale[i], int64(in.maxGrams[i]))-int64(l.base[i*in.days+d]))
		})
		l.excess -= in.hours[d] * l.level[d]
	}
	return l.excess >= 0
}

// top is the largest burden of a day that an excess of the sum allows.
func (l *layers) top(d int, excess int64) int64 {
	if l.in.hours[d] == 0 {
		return never
	}
	return l.level[d] + excess/l.in.hours[d]
}

// most is what a member may have of the bags of a day and later at a burden.
func (l *layers) most(i, d int, burden int64) int32 {
	in := l.in
	return int32(min(burden/in.scale[i], int64(in.maxGrams[i]))) - l.base[i*in.days+d]
}

func (l *layers) setHigh(ceiling int64) bool {
	in := l.in
	bags := int64(0)
	for d := in.days - 1; d >= 0; d-- {
		y := &l.days[d]
		bags += y.grams
		top := l.top(d, l.excess)
		if d == 0 {
			top = min(top, ceiling)
		}
		all := int64(0)
		for i := range in.members {
			y.high[i] = l.most(i, d, top)
			if y.high[i] < 0 {
				return false
			}
			y.high[i] = int32(min(int64(y.high[i]), bags))
			all += int64(y.high[i])
		}
		if all < bags {
			return false
		}
		y.slack = int32(all - bags)
	}
	return true
}

// carriers are those of all items.
func (l *layers) carriers(gear []int32, pick []*layerSplit) []int32 {
	carrier := slices.Repeat([]int32{nobody}, l.in.items)
	for j, allowed := range l.in.allowed {
		if len(allowed) == 1 {
			carrier[j] = allowed[0]
		}
	}
	for k, j := range l.gear {
		carrier[j] = gear[k]
	}
	for d := range l.days {
		for n := range l.days[d].halves {
			h := &l.days[d].halves[n]
			for k, j := range h.items {
				carrier[j] = int32(h.hands[pick[d].at[n]] >> (2 * k) & 3)
			}
		}
	}
	return carrier
}
