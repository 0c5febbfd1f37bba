package fairsplit

import (
	"cmp"
	"slices"
)

// matcher settles one day to the gram: it hands a few items that leave the packs after
// that day to a few members so that no load is above its target. All splits of one half
// of the items are matched with all splits of the other (Horowitz and Sahni 1974), as
// single exchanges seldom bring several loads to the gram at once.
type matcher struct {
	*descent
	day     int
	members []int    // at most four
	limit   [4]int32 // grams of the free items that each may take
	slack   int32    // grams that the limits leave
	spare   [4]int64 // millilitres that the free items may take of each
	share   []int64  // energy of each class that they may bring each
	energy  []int64  // the same, brought
	end     int64    // of the steps
	halves  [2]half
	heads   []int32 // by hash of a cell, first split of the second half in it
	chain   []int32
}

// half holds all splits of half the items.
type half struct {
	items []int32
	grams [][4]int32 // per member
	bulk  [][4]int64
	hands []uint64 // two bits per item
}

const (
	matchMembers = 4
	matchSize    = 1 << 16 // splits of a half
	matchSlack   = 40      // grams beyond which only the nearest splits are looked at
)

// settle matches the days from the last back to the first until no load is above its
// target, a budget is spent, or it leads no further.
func (t *descent) settle(budget int64, stop func() bool) {
	end := t.steps + budget
	batches, _ := t.in.batches()
	m, q := matcher{descent: t, end: end}, pair{descent: t}
	t.free(t.in.movable)
	least := never
	for idle := 0; idle < 3 && t.steps < end && t.total > 0 && !stop(); idle++ {
		for d := t.in.days - 1; d >= 0 && t.total > 0 && t.steps < end; d-- {
			if t.heavy(d) || t.overrun() > 0 {
				m.settleDay(d, batches[d])
			}
		}
		for range t.in.members {
			a, b := t.pick(), t.below(t.in.members)
			if a >= 0 && a != b && t.steps < end {
				q.settlePair(a, b)
			}
		}
		if t.total < least {
			least, idle = t.total, 0
		}
	}
}

// settleFirst matches the first morning alone, whatever becomes of the other days.
func (t *descent) settleFirst(budget int64) {
	end := t.steps + budget
	m := matcher{descent: t, end: end}
	t.free(t.in.movable)
	for range 6 {
		if t.steps >= end || !t.heavy(0) && t.overrun() == 0 {
			return
		}
		m.settleDay(0, t.in.movable)
	}
}

// heavy tells whether some load of a day is above its target.
func (t *descent) heavy(d int) bool {
	for i := range t.in.members {
		if t.load[i*t.in.days+d] > t.target[i*t.in.days+d] {
			return true
		}
	}
	return false
}

// settleDay matches a choice of the batch's items once and takes the best split found.
func (m *matcher) settleDay(d int, batch []int32) {
	m.day = d
	m.steps += 64
	m.chooseMembers()
	if !m.chooseItems(batch) || !m.setLimits() {
		return
	}
	for n := range m.halves {
		m.halves[n].fill(m)
	}
	m.index()
	if a, b, ok := m.best(); ok {
		m.takeOver(&m.halves[0], a)
		m.takeOver(&m.halves[1], b)
		m.recost()
	}
}

// chooseMembers draws up to four, one with too heavy a load among them.
func (m *matcher) chooseMembers() {
	in := m.in
	m.members = m.members[:0]
	for i := range in.members {
		m.members = append(m.members, i)
	}
	for n := range m.members {
		k := n + m.below(in.members-n)
		m.members[n], m.members[k] = m.members[k], m.members[n]
	}
	slices.SortStableFunc(m.members, func(a, b int) int { return m.heaviness(b) - m.heaviness(a) })
	if len(m.members) > matchMembers {
		m.members = m.members[:matchMembers]
	}
}

// heaviness is 1 for the members above the day's target, else 0.
func (m *matcher) heaviness(i int) int {
	if at := i*m.in.days + m.day; m.load[at] > m.target[at] {
		return 1
	}
	return 0
}

// chooseItems draws as many items as two halves can hold.
func (m *matcher) chooseItems(batch []int32) bool {
	var free []int32
	for _, j := range batch {
		if slices.Contains(m.members, int(m.carrier[j])) {
			free = append(free, j)
		}
	}
	// Light items bring loads to the gram; now and then a heavy one makes way for others.
	key := make(map[int32]int, len(free))
	for _, j := range free {
		key[j] = int(m.in.mass[j]) * (64 + m.below(64))
	}
	slices.SortFunc(free, func(a, b int32) int { return cmp.Or(cmp.Compare(key[a], key[b]), cmp.Compare(a, b)) })
	size := [2]int{1, 1}
	for n := range m.halves {
		m.halves[n].items = m.halves[n].items[:0]
	}
	for _, j := range free {
		ways := 0
		for _, i := range m.members {
			if m.in.canCarry(j, i) {
				ways++
			}
		}
		n := 0
		if size[1] < size[0] {
			n = 1
		}
		if ways < 2 || size[n]*ways > matchSize || len(m.halves[n].items) == 32 {
			continue
		}
		size[n] *= ways
		m.halves[n].items = append(m.halves[n].items, j)
	}
	return len(m.halves[1].items) > 0
}

// setLimits works out what the free items may bring each member.
func (m *matcher) setLimits() bool {
	in := m.in
	slack := int32(0)
	m.share, m.energy = m.share[:0], make([]int64, matchMembers*in.classes)
	for n, i := range m.members {
		at := i*in.days + m.day
		m.limit[n] = m.target[at] - m.load[at]
		slack += m.limit[n]
		m.spare[n] = m.room[i] - m.bulk[i]
		for c := range in.classes {
			m.share = append(m.share, m.classCap[i*in.classes+c]-m.inClass[i*in.classes+c])
		}
	}
	for h := range m.halves {
		for _, j := range m.halves[h].items {
			n := slices.Index(m.members, int(m.carrier[j]))
			m.limit[n] += in.grams(j, m.day)
			m.spare[n] += in.bulk[j]
			if c := in.class[j]; c >= 0 {
				m.share[n*in.classes+int(c)] += in.energy[j]
			}
		}
	}
	m.slack = min(slack, matchSlack)
	return slack >= 0 && slices.Min(m.limit[:len(m.members)]) >= 0
}

// fill lists all splits of the half's items within the limits of grams.
func (h *half) fill(m *matcher) {
	h.grams = append(h.grams[:0], [4]int32{})
	h.bulk = append(h.bulk[:0], [4]int64{})
	h.hands = append(h.hands[:0], 0)
	for n, j := range h.items {
		count := len(h.hands)
		grams, bulk := m.in.grams(j, m.day), m.in.bulk[j]
		kept := 0 // members after the first add to the end, the first goes in place
		first := -1
		for k, i := range m.members {
			if !m.in.canCarry(j, i) {
				continue
			}
			if first < 0 {
				first = k
				continue
			}
			for x := range count {
				g := h.grams[x]
				if g[k] += grams; g[k] > m.limit[k] {
					continue
				}
				v := h.bulk[x]
				v[k] += bulk
				h.grams, h.bulk, h.hands = append(h.grams, g), append(h.bulk, v), append(h.hands, h.hands[x]|uint64(k)<<(2*n))
			}
		}
		for x := range h.hands {
			if x < count {
				if h.grams[x][first] += grams; h.grams[x][first] > m.limit[first] {
					continue
				}
				h.bulk[x][first] += bulk
				h.hands[x] |= uint64(first) << (2 * n)
			}
			h.grams[kept], h.bulk[kept], h.hands[kept] = h.grams[x], h.bulk[x], h.hands[x]
			kept++
		}
		h.grams, h.bulk, h.hands = h.grams[:kept], h.bulk[:kept], h.hands[:kept]
		m.steps += int64(kept)
	}
}

// index puts the splits of the second half into cells as wide as the slack, in grams
// of all members but the last, whose load follows from the others'.
func (m *matcher) index() {
	h := &m.halves[1]
	if m.heads == nil {
		m.heads = make([]int32, 2*matchSize)
	}
	for n := range m.heads {
		m.heads[n] = -1
	}
	m.chain = m.chain[:0]
	for x, g := range h.grams {
		var at [3]int32
		for k := range len(m.members) - 1 {
			at[k] = g[k] / (m.slack + 1)
		}
		head := &m.heads[cellHash(at)]
		m.chain = append(m.chain, *head)
		*head = int32(x)
	}
	m.steps += int64(2 * len(h.grams))
}

func cellHash(at [3]int32) uint32 {
	x := uint32(at[0])*0x9e3779b1 + uint32(at[1])*0x85ebca77 + uint32(at[2])*0xc2b2ae3d
	return (x ^ x>>15) * 0x2c1b3c6d >> 15 // 2*matchSize heads
}

// best finds the pair of splits that leaves the hard limits most room.
func (m *matcher) best() (a, b int, ok bool) {
	first, second := &m.halves[0], &m.halves[1]
	free := len(m.members) - 1
	found := matched{cost: never, spare: -never}
	for x := range first.grams {
		var low, high, at [3]int32
		for k := range free {
			most := m.limit[k] - first.grams[x][k]
			high[k] = most / (m.slack + 1)
			low[k] = max(0, most-m.slack) / (m.slack + 1)
		}
		for at[0] = low[0]; at[0] <= high[0]; at[0]++ {
			for at[1] = low[1]; at[1] <= high[1]; at[1]++ {
				for at[2] = low[2]; at[2] <= high[2]; at[2]++ {
					m.steps += 2
					for y := m.heads[cellHash(at)]; y >= 0; y = m.chain[y] {
						m.steps++
						if !m.fitsBoth(&first.grams[x], &second.grams[y]) {
							continue
						}
						if v := m.value(x, int(y)); v.better(found) {
							found, a, b, ok = v, x, int(y), true
						}
					}
				}
			}
		}
		if found.cost == 0 && (m.day == 0 || found.spare > most/2) || m.steps > m.end {
			break // nothing to gain for the days to come, or no time
		}
	}
	return a, b, ok
}

func (m *matcher) fitsBoth(a, b *[4]int32) bool {
	for k := range m.members {
		if a[k]+b[k] > m.limit[k] {
			return false
		}
	}
	return true
}

// matched is what a pair of splits is worth: what it costs above hard limits, then the
// least millilitres that it leaves in a pack.
type matched struct{ cost, spare int64 }

func (v matched) better(w matched) bool {
	return v.cost < w.cost || v.cost == w.cost && v.spare > w.spare
}

func (m *matcher) value(x, y int) matched {
	m.steps += 4
	v := matched{spare: never}
	for k, spare := range m.spare[:len(m.members)] {
		spare -= m.halves[0].bulk[x][k] + m.halves[1].bulk[y][k]
		if spare < 0 {
			v.cost += m.penalty(-spare / m.bulkUnit)
		}
		v.spare = min(v.spare, spare)
	}
	if m.in.classes > 0 {
		v.cost += m.classesWith(x, y)
	}
	return v
}

// classesWith is what the classes cost with a pair of splits.
func (m *matcher) classesWith(x, y int) int64 {
	n := m.in.classes
	m.steps += int64(len(m.halves[0].items))
	clear(m.energy)
	for h, at := range [2]int{x, y} {
		hands := m.halves[h].hands[at]
		for _, j := range m.halves[h].items {
			if c := m.in.class[j]; c >= 0 {
				m.energy[int(hands&3)*n+int(c)] += m.in.energy[j]
			}
			hands >>= 2
		}
	}
	sum := int64(0)
	for k := range m.members {
		for c := range n {
			if over := m.energy[k*n+c] - m.share[k*n+c]; over > 0 {
				sum += m.penalty(over / m.unitOf[c])
			}
		}
	}
	return sum
}

// takeOver carries a split of a half out.
func (m *matcher) takeOver(h *half, x int) {
	for n, j := range h.items {
		if i := m.members[h.hands[x]>>(2*n)&3]; i != int(m.carrier[j]) {
			m.hand(j, i)
		}
	}
}
