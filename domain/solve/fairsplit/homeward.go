package fairsplit

import "math"

// homeward brings items of the fairest split back to those who had them, first within
// the burdens of nearly that split, then of wider and wider ones. It anneals on the
// count of changes alone, with more and more steps up refused (Kirkpatrick, Gelatt,
// Vecchi 1983); as limits hold firm on the way, it gets on where they leave few splits,
// too. Where no split is within all limits, what they are passed by together holds.
type homeward struct {
	*descent
	away    []int32 // items that are not with who had them
	at      []int32 // place of each item in away, -1 for none
	over    []int64 // above limits, by member
	sum     int64   // of them
	allowed int64   // most that sum may be
}

// slacks are how much heavier the largest burden of each day may get, in thousandths
// of the mean one: 5 is as good as equally fair, 20 what carriers do not feel.
var slacks = []int64{4, 9, 19, 39, 79, 159}

// goHome takes back as many changes of a split as it can. Where the split passes limits,
// which counts before fairness, it does so once without regard to burdens.
func (a *resplit) goHome(s *split) {
	if s.overrun() > 0 {
		h := a.homeward(a.h.in.splitOf(s.carrier))
		free := make([]int64, a.h.in.days)
		for d := range free {
			free[d] = never
		}
		a.widen(h, func(int64) []int64 { return free })
	}
	h := a.homeward(s)
	v := s.score()
	first, _ := a.limits()
	first = max(v.first, first)
	mean := v.sum / a.h.in.hoursTotal
	burden := a.h.in.largestBurdens(s)
	a.widen(h, func(slack int64) []int64 {
		most := make([]int64, len(burden))
		for d := range most {
			most[d] = burden[d] + mean/1000*slack
		}
		most[0] = min(most[0], max(first, burden[0]+burden[0]/1000*slack))
		return most
	})
}

// widen takes back what it can within wider and wider burdens.
func (a *resplit) widen(h *homeward, burdens func(slack int64) []int64) {
	least := h.sum
	for _, slack := range slacks {
		if a.h.ctx.Err() != nil || len(h.away) == 0 {
			return
		}
		h.hold(burdens(slack))
		h.allowed = max(h.sum, least+least/1000*slack)
		before := h.steps
		h.walk(a, a.h.limit/12)
		a.h.steps += h.steps - before
	}
}

func (a *resplit) homeward(s *split) *homeward {
	in := a.h.in
	t := a.descent(s)
	t.free(in.movable)
	h := &homeward{descent: t, at: make([]int32, in.items), over: make([]int64, in.members)}
	for i := range h.over {
		h.over[i] = h.overWith(i, in.none, in.none)
		h.sum += h.over[i]
	}
	for j := range h.at {
		h.at[j] = -1
	}
	for _, j := range in.movable {
		h.note(j)
	}
	return h
}

// largestBurdens are those of each day.
func (in *instance) largestBurdens(s *split) []int64 {
	burden := make([]int64, in.days)
	for d := range burden {
		for i := range in.members {
			burden[d] = max(burden[d], in.burden(i, s.load[i*in.days+d]))
		}
	}
	return burden
}

// hold sets the burdens that may not be passed. Who has more already may keep it.
func (h *homeward) hold(burden []int64) {
	for i, scale := range h.in.scale {
		for d, f := range burden {
			at := i*h.in.days + d
			h.target[at] = max(h.load[at], int32(min(f/scale, int64(1)<<30)))
		}
	}
}

// walk anneals, from one step up in four to one in some hundred, and tells of each
// split with fewer changes than any before.
func (h *homeward) walk(a *resplit, budget int64) {
	fewest := len(h.away)
	start := h.steps
	for h.steps-start < budget && len(h.away) > 0 {
		h.steps += 4
		rare := 4 + int(124*(h.steps-start)/budget)
		i, found := h.draw()
		if found.k == i {
			continue
		}
		delta := h.gain(found.j, i, found.k)
		if found.l != h.in.none {
			delta += h.gain(found.l, found.k, i)
		}
		if delta > 0 && h.below(rare) > 0 || delta > 1 && h.below(rare) > 0 {
			continue
		}
		if !h.holds(found.k, found.l, found.j) || !h.holds(i, found.j, found.l) {
			continue
		}
		giver, taker := h.overWith(i, found.j, found.l), h.overWith(found.k, found.l, found.j)
		sum := h.sum - h.over[i] - h.over[found.k] + giver + taker
		if sum > h.allowed {
			continue
		}
		h.over[i], h.over[found.k], h.sum = giver, taker, sum
		h.hand(found.j, found.k)
		h.note(found.j)
		if found.l != h.in.none {
			h.hand(found.l, i)
			h.note(found.l)
		}
		if len(h.away) < fewest {
			fewest = len(h.away)
			a.add(h.split)
		}
	}
}

// draw takes an exchange by chance: every other one brings an item back.
func (h *homeward) draw() (int, trial) {
	c := trial{j: h.in.movable[h.below(len(h.in.movable))], l: h.in.none}
	if h.next()&1 == 0 {
		c.j = h.away[h.below(len(h.away))]
		c.k = int(h.old[c.j])
	} else {
		c.k = int(h.in.allowed[c.j][h.below(len(h.in.allowed[c.j]))])
	}
	i := int(h.carrier[c.j])
	if mine := h.own[c.k]; len(mine) > 0 && h.below(8) > 0 {
		apart := int32(math.MaxInt32)
		for range 1 + h.below(mostLooks) {
			l := mine[h.below(len(mine))]
			if more := h.in.mass[l] - h.in.mass[c.j]; max(more, -more) < apart && h.in.canCarry(l, i) {
				c.l, apart = l, max(more, -more)
			}
		}
	}
	return i, c
}

// mostLooks is how many items are looked at for one that weighs about as much: firm
// limits mostly refuse others.
const mostLooks = 8

// gain is by how many an item's way from one member to another changes the count.
func (h *homeward) gain(j int32, from, to int) int {
	switch int(h.old[j]) {
	case from:
		return 1
	case to:
		return -1
	default:
		return 0
	}
}

// note keeps the list of items that are away.
func (h *homeward) note(j int32) {
	gone := h.old[j] != nobody && h.old[j] != h.carrier[j]
	switch at := h.at[j]; {
	case gone && at < 0:
		h.at[j] = int32(len(h.away))
		h.away = append(h.away, j)
	case !gone && at >= 0:
		end := h.away[len(h.away)-1]
		h.away[at] = end
		h.at[end] = at
		h.away = h.away[:len(h.away)-1]
		h.at[j] = -1
	}
}

// holds tells whether a member who gives one item for another stays within the burdens.
func (h *homeward) holds(i int, out, in int32) bool {
	n := h.in.days
	h.steps += int64(n)
	less, more := h.in.mornings(out), h.in.mornings(in)
	target := h.target[i*n : (i+1)*n]
	for d, grams := range h.load[i*n : (i+1)*n] {
		if grams-less[d]+more[d] > target[d] {
			return false
		}
	}
	return true
}

// overWith is what a member who gives one item for another is above limits.
func (h *homeward) overWith(i int, out, in int32) int64 {
	x := h.in
	sum := max(0, int64(h.load[i*x.days]-x.mass[out]+x.mass[in]-x.maxGrams[i]))
	sum += (max(0, h.bulk[i]-x.bulk[out]+x.bulk[in]-x.room[i]) + h.bulkUnit - 1) / h.bulkUnit
	for c := range x.classes {
		energy := h.inClass[i*x.classes+c] - x.classCap[c]
		if x.class[out] == int32(c) {
			energy -= x.energy[out]
		}
		if x.class[in] == int32(c) {
			energy += x.energy[in]
		}
		sum += (max(0, energy) + h.unitOf[c] - 1) / h.unitOf[c]
	}
	return sum
}
