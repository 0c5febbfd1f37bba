package fairsplit

// level spreads what the objective leaves open: it lowers the larger of two burdens
// of the first morning by handing over or swapping, as long as one can, without
// raising any day's largest burden or breaking a limit. Every such step makes the
// sorted list of burdens smaller, so it ends.
func (h *hunt) level() {
	if h.best.overrun > 0 {
		return
	}
	t := newDescent(h.in.splitOf(h.best.carrier), 0)
	tops := make([]int64, h.in.days)
	for d := range tops {
		for i := range h.in.members {
			tops[d] = max(tops[d], h.in.burden(i, t.load[i*h.in.days+d]))
		}
	}
	t.setTargets(tops)
	t.free(h.in.movable)
	end := t.steps + h.limit/10
	for changed := true; changed && t.steps < end; {
		changed = false
		for i := range h.in.members {
			for t.steps < end && t.relieve(i) {
				changed = true
			}
		}
	}
	h.steps += t.steps
	copy(h.best.carrier, t.carrier)
	h.best.score = t.score()
}

// relieve makes the step that lowers the larger burden of member i and another most.
func (t *descent) relieve(i int) bool {
	in := t.in
	n := in.days
	mine := in.burden(i, t.load[i*n])
	found, foundTop := trial{}, mine
	for _, j := range t.own[i] {
		for _, k32 := range in.allowed[j] {
			k := int(k32)
			if k == i || in.burden(k, t.load[k*n]) >= mine {
				continue
			}
			t.relieveBy(i, trial{j: j, l: in.none, k: k}, &found, &foundTop)
			for _, l := range t.own[k] {
				if in.mass[l] < in.mass[j] && in.canCarry(l, i) {
					t.relieveBy(i, trial{j: j, l: l, k: k}, &found, &foundTop)
				}
			}
		}
	}
	if foundTop == mine {
		return false
	}
	t.apply(i, found)
	return true
}

func (t *descent) relieveBy(i int, c trial, found *trial, foundTop *int64) {
	in := t.in
	given := in.mass[c.j] - in.mass[c.l]
	t.steps++
	top := max(in.burden(i, t.load[i*in.days]-given), in.burden(c.k, t.load[c.k*in.days]+given))
	if top >= *foundTop || t.costWith(i, c.j, c.l)+t.costWith(c.k, c.l, c.j) > 0 {
		return
	}
	*found, *foundTop = c, top
}
