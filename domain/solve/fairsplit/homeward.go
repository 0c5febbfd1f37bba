package fairsplit

// homeward brings items of the fairest split back to those who had them, within
// limits and burdens that hold firm: first those of nearly the fairest split, then
// wider and wider ones. It anneals on the count of changes alone, with more and more
// steps up refused (Kirkpatrick, Gelatt, Vecchi 1983); as nothing passes a limit on
// the way, it gets on where limits leave few splits, too.
type homeward struct {
	*descent
	away []int32 // items that are not with who had them
	at   []int32 // place of each item in away, -1 for none
}

// slacks are how much heavier the largest burden of each day may get, in thousandths
// of the mean one: 5 is as good as equally fair, 20 what carriers do not feel.
var slacks = []int64{4, 9, 19, 39, 79, 159}

// goHome takes back as many changes of a split as it can.
func (a *resplit) goHome(s *split) {
	in := a.h.in
	t := a.descent(s)
	t.free(in.movable)
	h := &homeward{descent: t, at: make([]int32, in.items)}
	for j := range h.at {
		h.at[j] = -1
	}
	for _, j := range in.movable {
		h.note(j)
	}
	burden := make([]int64, in.days)
	for d := range burden {
		for i := range in.members {
			burden[d] = max(burden[d], in.burden(i, t.load[i*in.days+d]))
		}
	}
	first, _ := a.limits()
	mean := a.h.best.sum / in.hoursTotal
	for _, slack := range slacks {
		if a.h.ctx.Err() != nil || len(h.away) == 0 {
			return
		}
		most := make([]int64, in.days)
		for d := range most {
			most[d] = burden[d] + mean/1000*slack
		}
		most[0] = max(burden[0], min(most[0], max(first, burden[0]+burden[0]/1000*slack)))
		h.hold(most)
		before := t.steps
		h.walk(a, a.h.limit/12)
		a.h.steps += t.steps - before
	}
}

// hold sets what may not be passed. What is passed already, as no split is within all
// limits, may stay but not get more.
func (h *homeward) hold(burden []int64) {
	in := h.in
	h.setTargets(burden)
	for at, grams := range h.load {
		h.target[at] = max(h.target[at], grams)
	}
	for i := range in.members {
		h.room[i] = max(h.room[i], h.bulk[i])
	}
	for at, energy := range h.inClass {
		h.classCap[at] = max(h.classCap[at], energy)
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
		if l := mine[h.below(len(mine))]; h.in.canCarry(l, i) {
			c.l = l
		}
	}
	return i, c
}

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

// holds tells whether a member may give one item for another.
func (h *homeward) holds(i int, out, in int32) bool {
	n := h.in.days
	h.steps += int64(n)
	if h.bulk[i]-h.in.bulk[out]+h.in.bulk[in] > h.room[i] {
		return false
	}
	less, more := h.in.mornings(out), h.in.mornings(in)
	target := h.target[i*n : (i+1)*n]
	for d, grams := range h.load[i*n : (i+1)*n] {
		if grams-less[d]+more[d] > target[d] {
			return false
		}
	}
	c := h.in.class[in]
	if c < 0 {
		return true
	}
	at := i*h.in.classes + int(c)
	energy := h.inClass[at] + h.in.energy[in]
	if h.in.class[out] == c {
		energy -= h.in.energy[out]
	}
	return energy <= h.classCap[at]
}
