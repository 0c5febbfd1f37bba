package fairsplit

import (
	"cmp"
	"slices"
)

// resplit keeps what was found between a previous split and the fairest one.
type resplit struct {
	h      *hunt
	place  []int32 // of each member of the crew among those who carry
	old    []int32 // per item; nobody if it is new or its carrier had to change
	forced int
	front  []step // by changes, each fairer than the one before
}

// step is a split on the way from the previous to the fairest.
type step struct {
	changes int
	candidate
}

// resplit looks for splits with few changes of carrier, and makes the one that the
// options ask for the best. Without a previous split it spreads what the objective
// leaves open.
func (h *hunt) resplit(p Problem) *resplit {
	if h.options.Previous == nil {
		h.level()
		return &resplit{h: h}
	}
	a := &resplit{h: h}
	a.setOld(p)
	h.best.carrier = a.relabel(h.best.carrier)
	a.add(h.in.splitOf(h.best.carrier))
	a.forward()
	a.known()
	a.backward()
	a.exact()
	h.best = a.chosen().candidate
	return a
}

func (a *resplit) setOld(p Problem) {
	in := a.h.in
	a.place = make([]int32, len(p.Crew))
	for i := range a.place {
		a.place[i] = nobody
	}
	for i, crew := range in.member {
		a.place[crew] = int32(i)
	}
	a.old, a.forced = a.inner(a.h.options.Previous)
}

// inner names carriers as the instance does, nobody where there is none; forced are
// those who may not carry their item.
func (a *resplit) inner(carrier []int) (list []int32, forced int) {
	in := a.h.in
	list = make([]int32, in.items)
	for j, crew := range carrier {
		list[j] = nobody
		if crew < 0 || crew >= len(a.place) {
			continue
		}
		if i := a.place[crew]; i != nobody && in.canCarry(int32(j), int(i)) {
			list[j] = i
		} else {
			forced++
		}
	}
	return list, forced
}

// relabel exchanges interchangeable items so that as many as possible stay with
// their old carriers. No load changes.
func (a *resplit) relabel(carrier []int32) []int32 {
	in := a.h.in
	carrier = slices.Clone(carrier)
	order := slices.Clone(in.movable)
	slices.SortStableFunc(order, in.compareItems)
	for from := 0; from < len(order); {
		to := from + 1
		for to < len(order) && in.compareItems(order[from], order[to]) == 0 {
			to++
		}
		run := order[from:to]
		for x, j := range run {
			if carrier[j] == a.old[j] {
				continue
			}
			for _, k := range run[x+1:] {
				if carrier[k] == a.old[j] && carrier[k] != a.old[k] {
					carrier[j], carrier[k] = carrier[k], carrier[j]
					break
				}
			}
			for _, k := range run[:x] {
				if carrier[k] == a.old[j] && carrier[k] != a.old[k] {
					carrier[j], carrier[k] = carrier[k], carrier[j]
					break
				}
			}
		}
		from = to
	}
	return carrier
}

// whole is a split of given carriers, with the items that have none put where they
// weigh least.
func (a *resplit) whole(carrier []int32) *descent {
	in := a.h.in
	s := newSplit(in)
	var loose []int32
	for j, allowed := range in.allowed {
		switch {
		case len(allowed) == 1:
			s.put(int32(j), int(allowed[0]))
		case len(allowed) > 1 && carrier[j] != nobody:
			s.put(int32(j), int(carrier[j]))
		case len(allowed) > 1:
			loose = append(loose, int32(j))
		}
	}
	t := a.descent(s)
	slices.SortStableFunc(loose, in.compareItems)
	for _, j := range loose {
		t.put(j, t.lightest(j, int(in.last[j])))
	}
	a.add(t.split)
	t.free(in.movable)
	return t
}

// forward starts at the previous split and lets changes get cheaper.
func (a *resplit) forward() {
	t := a.whole(a.old)
	for t.change = max(1, t.total/2); t.change > 1; t.change /= 3 {
		a.walk(t)
	}
}

// known looks at the split that the options name: it is improved as it is, and what
// it changes is taken back as far as can be.
func (a *resplit) known() {
	if len(a.h.options.Known) != a.h.in.items {
		return
	}
	carrier, _ := a.inner(a.h.options.Known)
	t := a.whole(carrier)
	a.walk(t)
	a.add(t.split)
	a.goHome(t.split)
}

// backward starts at the fairest split and takes back as many changes as it can.
func (a *resplit) backward() { a.goHome(a.h.in.splitOf(a.h.best.carrier)) }

func (a *resplit) descent(s *split) *descent {
	t := newDescent(s, a.h.options.Seed+99)
	t.old = a.old
	t.setTargets(a.h.bounds.day)
	t.sampled = len(a.h.in.movable) > 200
	t.seen = a.add
	return t
}

func (a *resplit) walk(t *descent) {
	if a.h.ctx.Err() != nil {
		return
	}
	t.recost()
	before := t.steps
	t.improve(a.h.limit/24, 400)
	a.h.steps += t.steps - before
}

// exact settles the fewest changes of small problems for good.
func (a *resplit) exact() {
	h := a.h
	if !h.exhausted || a.h.options.MaxChanges > 0 || len(h.in.movable) > branchItems {
		return
	}
	t := newTree(h.ctx, h.in)
	t.goal, t.old = byChanges, a.old
	t.firstLimit, t.sumLimit = a.limits()
	t.fewest = a.chosen().changes
	t.search(h.limit / 8)
	h.steps += t.steps
	if t.found {
		a.add(h.in.splitOf(t.best.carrier))
	}
}

// add keeps a split if no other has as few changes and is as fair.
func (a *resplit) add(s *split) {
	n := step{changes: a.count(s.carrier)}
	n.score = s.score()
	at, _ := slices.BinarySearchFunc(a.front, n, func(x, y step) int { return cmp.Compare(x.changes, y.changes) })
	if at > 0 && !a.fairer(n.score, a.front[at-1].score) {
		return
	}
	if at < len(a.front) && a.front[at].changes == n.changes && !a.fairer(n.score, a.front[at].score) {
		return
	}
	end := at
	for end < len(a.front) && !a.fairer(a.front[end].score, n.score) {
		end++
	}
	n.carrier = slices.Clone(s.carrier)
	a.front = slices.Replace(a.front, at, end, n)
}

func (a *resplit) count(carrier []int32) int {
	changes := 0
	for j, i := range a.old {
		if i != nobody && carrier[j] != i {
			changes++
		}
	}
	return changes
}

// fairer compares by the first two rules of the objective.
func (a *resplit) fairer(x, y score) bool {
	first, _ := a.limits()
	return cmp.Or(
		cmp.Compare(x.overrun, y.overrun),
		cmp.Compare(max(x.first, first), max(y.first, first)),
		cmp.Compare(x.sum, y.sum),
	) < 0
}

// limits are the largest R1 and sum that count as nearly as fair as the fairest.
func (a *resplit) limits() (first, sum int64) {
	h := a.h
	first = h.best.first
	if h.leastFirst < never {
		first = min(first, h.leastFirst)
	}
	first += first / 200
	tolerance := h.options.Tolerance
	if tolerance.Den <= 0 {
		tolerance = Ratio{1, 200}
	}
	return first, h.best.sum + h.best.sum/tolerance.Den*tolerance.Num
}

// chosen is the split that the options ask for.
func (a *resplit) chosen() step {
	first, sum := a.limits()
	last := len(a.front) - 1
	found := a.front[0]
	for n, s := range a.front {
		if limit := a.h.options.MaxChanges; limit > 0 {
			if s.changes <= limit {
				found = s
			}
			continue
		}
		if n == last || s.overrun == a.front[last].overrun && s.first <= first && s.sum <= sum {
			return s
		}
	}
	return found
}

// report adds what is known about changes to a result.
func (a *resplit) report(r *Result) {
	if a.old == nil {
		return
	}
	in := a.h.in
	r.Forced = a.forced
	r.Changes = a.count(a.h.best.carrier)
	for _, s := range a.front {
		if s.overrun > 0 && r.Feasible {
			continue
		}
		whole := in.splitOf(s.carrier)
		c := Resplit{Changes: s.changes, R1: in.exactBurden(s.first), S: in.meanBurden(whole), Over: s.overrun, Overruns: in.overruns(a.h.problem, whole)}
		c.Carrier = in.places(s.carrier)
		r.Choices = append(r.Choices, c)
	}
}
