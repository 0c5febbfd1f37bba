package fairsplit

import (
	"cmp"
	"slices"
)

// pair shares out anew what two members carry, over all days at once: all splits of one
// half of their items are matched with all splits of the other (Horowitz and Sahni 1974),
// so that loads come to within their targets and volumes and classes to within their
// limits together.
type pair struct {
	*descent
	a, b   int
	days   []int    // at most three, the others are looked at after a match
	low    [3]int32 // grams of the free items that a may take on each day
	high   [3]int32
	wide   [3]int32 // of a cell
	halves [2]pairHalf
	heads  []int32
	chain  []int32
	best   int64   // cost of both
	more   []int32 // grams of each day that a takes more than now
	energy []int64 // of each class, likewise
}

// pairHalf holds all splits of half the items.
type pairHalf struct {
	items []int32
	grams [][3]int32 // a's
	hands []uint32   // a bit per item, set where a takes it
}

const (
	pairItems = 13 // of a half
	pairLooks = 4000
	pairSlack = 30 // grams beyond which not all loads are looked at
)

// settlePair gives two members the best split of what they carry, if it is better.
func (p *pair) settlePair(a, b int) bool {
	p.a, p.b, p.best = a, b, p.costs[a]+p.costs[b]
	if p.best == 0 || !p.chooseItems() {
		return false
	}
	p.setWindow()
	for n := range p.halves {
		p.halves[n].fill(p)
	}
	p.index()
	x, y, ok := p.match()
	if !ok {
		return false
	}
	p.takeOver(&p.halves[0], x)
	p.takeOver(&p.halves[1], y)
	p.recost()
	return true
}

func (p *pair) chooseItems() bool {
	var free []int32
	key := make(map[int32]uint64)
	for _, i := range [2]int{p.a, p.b} {
		for _, j := range p.own[i] {
			if p.in.canCarry(j, p.a) && p.in.canCarry(j, p.b) {
				free = append(free, j)
				key[j] = p.next()
			}
		}
	}
	slices.SortFunc(free, func(x, y int32) int { return cmp.Or(cmp.Compare(key[x], key[y]), cmp.Compare(x, y)) })
	free = free[:min(len(free), 2*pairItems)]
	p.halves[0].items, p.halves[1].items = free[:len(free)/2], free[len(free)/2:]
	return len(free) > 2
}

// setWindow works out what the free items may weigh with a on each day looked at: with
// both within their targets, or with both above where they cannot be.
func (p *pair) setWindow() {
	in := p.in
	p.days = p.days[:0]
	for d := 0; d < in.days && len(p.days) < 3; d++ {
		p.days = append(p.days, d)
	}
	for n, d := range p.days {
		at, bt := p.a*in.days+d, p.b*in.days+d
		most := p.target[at] - p.load[at] // more for a
		least := p.load[bt] - p.target[bt]
		p.low[n], p.high[n] = min(most, least), max(most, least)
		if p.high[n]-p.low[n] > pairSlack {
			middle := min(max(0, p.low[n]+pairSlack/2), p.high[n]-pairSlack/2)
			p.low[n], p.high[n] = middle-pairSlack/2, middle+pairSlack/2
		}
		p.wide[n] = p.high[n] - p.low[n] + 1
		for h := range p.halves {
			for _, j := range p.halves[h].items {
				if int(p.carrier[j]) == p.a {
					p.low[n] += in.grams(j, d)
					p.high[n] += in.grams(j, d)
				}
			}
		}
	}
}

// fill lists all splits of the half's items in which a has not too much.
func (h *pairHalf) fill(p *pair) {
	h.grams = append(h.grams[:0], [3]int32{})
	h.hands = append(h.hands[:0], 0)
	for n, j := range h.items {
		for x := range len(h.hands) {
			g, ok := h.grams[x], true
			for k, d := range p.days {
				g[k] += p.in.grams(j, d)
				ok = ok && g[k] <= p.high[k]
			}
			if ok {
				h.grams, h.hands = append(h.grams, g), append(h.hands, h.hands[x]|1<<n)
			}
		}
	}
	p.steps += 2 * int64(len(h.hands))
}

func (p *pair) index() {
	h := &p.halves[1]
	if p.heads == nil {
		p.heads = make([]int32, 2<<pairItems)
	}
	for n := range p.heads {
		p.heads[n] = -1
	}
	p.chain = p.chain[:0]
	for x, g := range h.grams {
		for k := range p.days {
			g[k] /= p.wide[k]
		}
		head := &p.heads[cellHash(g)%(2<<pairItems)]
		p.chain = append(p.chain, *head)
		*head = int32(x)
	}
	p.steps += int64(2 * len(h.grams))
}

// match finds the pair of splits that costs both members least.
func (p *pair) match() (a, b int, ok bool) {
	first, second := &p.halves[0], &p.halves[1]
	looks := 0
	for x, g := range first.grams {
		var low, high, at [3]int32
		for k := range p.days {
			low[k] = max(0, p.low[k]-g[k]) / p.wide[k]
			high[k] = (p.high[k] - g[k]) / p.wide[k]
		}
		for at[0] = low[0]; at[0] <= high[0]; at[0]++ {
			for at[1] = low[1]; at[1] <= high[1]; at[1]++ {
				for at[2] = low[2]; at[2] <= high[2]; at[2]++ {
					p.steps += 2
					for y := p.heads[cellHash(at)%(2<<pairItems)]; y >= 0; y = p.chain[y] {
						p.steps++
						if !p.within(&g, &second.grams[y]) {
							continue
						}
						if cost := p.costOf(first.hands[x], second.hands[y]); cost < p.best {
							p.best, a, b, ok = cost, x, int(y), true
						}
						if looks++; looks > pairLooks || p.best == 0 {
							return a, b, ok
						}
					}
				}
			}
		}
	}
	return a, b, ok
}

func (p *pair) within(x, y *[3]int32) bool {
	for k := range p.days {
		if sum := x[k] + y[k]; sum < p.low[k] || sum > p.high[k] {
			return false
		}
	}
	return true
}

// costOf is what both members cost after a pair of splits.
func (p *pair) costOf(hands ...uint32) int64 {
	in := p.in
	bulk := int64(0)
	if p.more == nil {
		p.more, p.energy = make([]int32, in.days), make([]int64, in.classes)
	}
	more, classes := p.more, p.energy
	clear(more)
	clear(classes)
	for h, bits := range hands {
		for n, j := range p.halves[h].items {
			sign := int32(bits >> n & 1)
			if int(p.carrier[j]) == p.a {
				sign--
			}
			if sign == 0 {
				continue
			}
			for d := range more {
				more[d] += sign * in.grams(j, d)
			}
			bulk += int64(sign) * in.bulk[j]
			if c := in.class[j]; c >= 0 {
				classes[c] += int64(sign) * in.energy[j]
			}
		}
	}
	p.steps += int64(3 * len(more))
	sum := p.hardCost(p.a, int64(more[0]), bulk) + p.hardCost(p.b, -int64(more[0]), -bulk)
	for c, e := range classes {
		if over := p.inClass[p.a*in.classes+c] + e - p.classCap[p.a*in.classes+c]; over > 0 {
			sum += p.penalty(over / p.unitOf[c])
		}
		if over := p.inClass[p.b*in.classes+c] - e - p.classCap[p.b*in.classes+c]; over > 0 {
			sum += p.penalty(over / p.unitOf[c])
		}
	}
	for d := range more {
		at, bt := p.a*in.days+d, p.b*in.days+d
		if over := int64(p.load[at] + more[d] - p.target[at]); over > 0 {
			sum += over * over * p.weight[d]
		}
		if over := int64(p.load[bt] - more[d] - p.target[bt]); over > 0 {
			sum += over * over * p.weight[d]
		}
	}
	return sum
}

func (p *pair) takeOver(h *pairHalf, x int) {
	for n, j := range h.items {
		i := p.b
		if h.hands[x]>>n&1 == 1 {
			i = p.a
		}
		if i != int(p.carrier[j]) {
			p.hand(j, i)
		}
	}
}
