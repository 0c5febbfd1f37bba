package fairsplit

// descent lowers the cost of a split by handing over and swapping items, always of
// a member above a limit. It takes the best step it sees even when that is a step
// up, and forbids the items just moved for a while (tabu search, Glover 1989).
type descent struct {
	*split
	random
	own     [][]int32 // items that may move, per carrier
	place   []int32   // of each item in own
	costs   []int64
	total   int64
	tabu    []int64 // step until which an item stays, per item
	step    int64
	sampled bool // look at a sample of the steps only
	over    []int

	old    []int32      // carrier whose loss is a change, nobody if it is none; nil to ignore
	change int64        // cost of a change
	seen   func(*split) // told of every split on the way

	leastFirst int64 // least R1 met within the limits, if it was looked for apart
}

func newDescent(s *split, seed uint64) *descent {
	return &descent{
		split:  s,
		random: random{state: seed}, leastFirst: never,
		own:   make([][]int32, s.in.members),
		place: make([]int32, s.in.items),
		costs: make([]int64, s.in.members),
		tabu:  make([]int64, s.in.items+1),
	}
}

// free lets these items move, and no others.
func (t *descent) free(items []int32) {
	for i := range t.own {
		t.own[i] = t.own[i][:0]
	}
	for _, j := range items {
		i := t.carrier[j]
		t.place[j] = int32(len(t.own[i]))
		t.own[i] = append(t.own[i], j)
	}
	t.recost()
}

// recost works out all costs after a change of limits or days.
func (t *descent) recost() {
	t.total = 0
	for i := range t.costs {
		t.costs[i] = t.cost(i)
		t.total += t.costs[i]
	}
	for j, i := range t.carrier {
		t.total += t.changeCost(int32(j), i)
	}
}

// changeCost is what it costs that member i carries item j instead of its old carrier.
func (t *descent) changeCost(j, i int32) int64 {
	if t.old == nil || j == t.in.none || t.old[j] == nobody || t.old[j] == i {
		return 0
	}
	return t.change
}

// trial is a hand-over of item j to member k, who gives item l (or nothing) back.
type trial struct {
	j, l  int32
	k     int
	delta int64
}

const never = int64(1) << 62

// improve runs until the cost is nil, the budget of steps is spent, or stale tries
// in a row found no lower cost. It leaves the split with the lowest cost seen.
func (t *descent) improve(budget int64, stale int) {
	best := t.total
	var undo []trial // since the best
	end := t.steps + budget
	for idle := 0; t.total > 0 && t.steps < end && idle < stale; idle++ {
		i, found := t.choose(best)
		if found.delta == never {
			continue
		}
		t.step++
		t.apply(i, found)
		undo = append(undo, trial{j: found.j, l: found.l, k: i})
		hold := 2 + int64(t.below(4+min(8, len(t.own[i])/4)))
		t.tabu[found.j], t.tabu[found.l] = t.step+hold, t.step+hold
		if t.total < best {
			best, idle, undo = t.total, 0, undo[:0]
		}
		if t.seen != nil {
			t.seen(t.split)
		}
	}
	for n := len(undo) - 1; n >= 0; n-- {
		u := undo[n]
		t.apply(int(t.carrier[u.j]), u)
	}
}

// choose finds the next step: one that relieves a member above a limit, or one that
// undoes a change.
func (t *descent) choose(best int64) (int, trial) {
	found := trial{delta: never}
	i := t.pick()
	if t.old != nil && len(t.in.movable) > 0 && (i < 0 || t.next()&1 == 0) {
		j := t.in.movable[t.below(len(t.in.movable))]
		for range 64 {
			if t.changeCost(j, t.carrier[j]) > 0 {
				i = int(t.carrier[j])
				t.tryAgainst(i, j, int(t.old[j]), best, &found)
				return i, found
			}
			j = t.in.movable[t.below(len(t.in.movable))]
		}
	}
	if i >= 0 {
		found = t.bestTrial(i, best)
	}
	return i, found
}

// pick chooses a member above a limit: the worst, or now and then any of them. It
// gives -1 if there is none.
func (t *descent) pick() int {
	t.over = t.over[:0]
	t.steps += int64(len(t.costs))
	worst := 0
	for i, c := range t.costs {
		if c > 0 {
			t.over = append(t.over, i)
		}
		if c > t.costs[worst] {
			worst = i
		}
	}
	if len(t.over) == 0 {
		return -1
	}
	if t.next()&3 == 0 {
		return t.over[t.below(len(t.over))]
	}
	return worst
}

// bestTrial looks at the steps that relieve member i.
func (t *descent) bestTrial(i int, best int64) trial {
	found := trial{delta: never}
	items := t.own[i]
	if !t.sampled {
		for _, j := range items {
			for _, k := range t.in.allowed[j] {
				t.tryAgainst(i, j, int(k), best, &found)
			}
		}
		return found
	}
	if len(items) == 0 {
		return found
	}
	for range 4 {
		j := items[t.below(len(items))]
		allowed := t.in.allowed[j]
		for range 2 {
			t.tryAgainst(i, j, int(allowed[t.below(len(allowed))]), best, &found)
		}
	}
	return found
}

// tryAgainst looks at giving item j of member i to member k, for nothing and for
// each of k's items.
func (t *descent) tryAgainst(i int, j int32, k int, best int64, found *trial) {
	if k == i {
		return
	}
	before := t.costs[i] + t.costs[k]
	t.consider(i, trial{j: j, l: t.in.none, k: k}, before, best, found)
	for _, l := range t.own[k] {
		if t.in.canCarry(l, i) {
			t.consider(i, trial{j: j, l: l, k: k}, before, best, found)
		}
	}
}

func (t *descent) consider(i int, c trial, before, best int64, found *trial) {
	c.delta = t.costWith(i, c.j, c.l) - before
	if t.old != nil {
		c.delta += t.changeCost(c.j, int32(c.k)) - t.changeCost(c.j, int32(i))
		c.delta += t.changeCost(c.l, int32(i)) - t.changeCost(c.l, int32(c.k))
	}
	if c.delta >= found.delta {
		return
	}
	c.delta += t.costWith(c.k, c.l, c.j)
	if c.delta >= found.delta {
		return
	}
	held := t.tabu[c.j] > t.step || c.l != t.in.none && t.tabu[c.l] > t.step
	if held && t.total+c.delta >= best {
		return
	}
	*found = c
}

// apply carries a trial of member i out.
func (t *descent) apply(i int, c trial) {
	t.hand(c.j, c.k)
	if c.l != t.in.none {
		t.hand(c.l, i)
	}
	for _, m := range [2]int{i, c.k} {
		now := t.cost(m)
		t.total += now - t.costs[m]
		t.costs[m] = now
	}
}

// hand moves item j and keeps the lists of what each member carries.
func (t *descent) hand(j int32, i int) {
	from := t.carrier[j]
	t.total += t.changeCost(j, int32(i)) - t.changeCost(j, from)
	list := t.own[from]
	end := list[len(list)-1]
	list[t.place[j]] = end
	t.place[end] = t.place[j]
	t.own[from] = list[:len(list)-1]
	t.place[j] = int32(len(t.own[i]))
	t.own[i] = append(t.own[i], j)
	t.move(j, i)
}
