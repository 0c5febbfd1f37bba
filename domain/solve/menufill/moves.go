package menufill

// Work of a move in steps: a look at what classes eat, at dishes, and at all that a slot changes.
const (
	cellWork   = 1
	dishWork   = 3
	changeWork = 5
)

// move tries one change: what a class eats, a recipe of a slot, two slots that trade, or two of the first or second together, so that one
// may make good what the other takes.
func (a *annealer) move() {
	one, two := &a.changes[0], &a.changes[1]
	one.row, two.row = one.row[:0], two.row[:0]
	switch n := a.rand.below(16); {
	case n < 3:
		a.eatAnother()
	case n < 6:
		a.try(a.replace(one), 1)
	case n < 12:
		a.try(a.trade(one, two), 2)
	case n < 15:
		a.eatTwoOthers()
	default:
		a.try(a.replace(one) && a.replace(two), 2)
	}
}

// try makes so many changes if they were proposed and cost at most what the temperature allows.
func (a *annealer) try(proposed bool, count int) {
	a.work += dishWork
	if !proposed || count == 2 && a.changes[0].slot == a.changes[1].slot {
		return
	}
	if threshold := a.threshold(); a.t.least(a.changes[:count]) <= threshold {
		a.weigh(count, threshold)
	}
}

// weigh makes the changes if they cost at most the threshold.
func (a *annealer) weigh(count int, threshold int64) {
	a.work += changeWork
	one, two := &a.changes[0], &a.changes[1]
	value, charged, ok := a.t.change(one.slot, one.row)
	if !ok || count == 1 && value+charged > threshold {
		return
	}
	if count == 1 {
		a.t.put(one.slot, one.row, value, charged)
		a.note()
		return
	}
	a.work += 2 * changeWork
	a.before = append(a.before[:0], a.t.row(one.slot)...)
	a.t.put(one.slot, one.row, value, charged)
	more, moreCharged, ok := a.t.change(two.slot, two.row)
	if ok && value+charged+more+moreCharged <= threshold {
		a.t.put(two.slot, two.row, more, moreCharged)
		a.note()
		return
	}
	value, charged, _ = a.t.change(one.slot, a.before)
	a.t.put(one.slot, a.before, value, charged)
}

// eatAnother lets one class eat something else in one slot.
func (a *annealer) eatAnother() {
	a.work += cellWork
	k := a.rand.below(len(a.t.cells))
	to := a.anotherChoice(k)
	if to < 0 {
		return
	}
	if threshold := a.threshold(); a.t.leastOfCell(k, to) <= threshold {
		a.rowWith(&a.changes[0], k, to)
		a.weigh(1, threshold)
	}
}

// eatTwoOthers lets one class eat something else in two slots.
func (a *annealer) eatTwoOthers() {
	a.work += cellWork
	k := a.rand.below(len(a.t.cells))
	mates := a.mates[a.t.cells[k].class]
	l := mates[a.rand.below(len(mates))]
	if a.t.cells[k].slot == a.t.cells[l].slot {
		return
	}
	to, too := a.anotherChoice(k), a.anotherChoice(l)
	if to < 0 || too < 0 {
		return
	}
	if threshold := a.threshold(); a.t.leastOfCells(k, to, l, too) <= threshold {
		a.rowWith(&a.changes[0], k, to)
		a.rowWith(&a.changes[1], l, too)
		a.weigh(2, threshold)
	}
}

// anotherChoice is a random choice of a cell that is not its own, -1 if there is none.
func (a *annealer) anotherChoice(k int) int {
	choices := len(a.t.cells[k].choices)
	if choices < 2 {
		return -1
	}
	to := a.rand.below(choices - 1)
	if to >= a.t.current[k] {
		to++
	}
	return to
}

// rowWith is the row of a cell's slot with another choice for the cell.
func (a *annealer) rowWith(c *change, k, to int) {
	c.slot = a.t.cells[k].slot
	c.row = append(c.row, a.t.row(c.slot)...)
	c.row[k-a.t.first[c.slot]] = to
}

// replace cooks another recipe instead of one of a slot, for all who ate that; who cannot eat the new one takes another of the slot.
func (a *annealer) replace(c *change) bool {
	c.slot = a.rand.below(len(a.t.m.slots))
	s := &a.t.m.slots[c.slot]
	if s.fixed || len(s.classes) == 0 {
		return false
	}
	return a.replaced(c, a.eaten(c.slot), s.candidates[a.rand.below(len(s.candidates))])
}

// eaten is a random recipe eaten in slot i.
func (a *annealer) eaten(i int) int {
	k := a.rand.below(len(a.t.row(i)))
	return a.t.cells[a.t.first[i]+k].choices[a.t.row(i)[k]].recipe
}

// replaced makes the row of a slot with one recipe in place of another.
func (a *annealer) replaced(c *change, from, to int) bool {
	if from == to {
		return false
	}
	row, first := a.t.row(c.slot), a.t.first[c.slot]
	for k, at := range row {
		cell := &a.t.cells[first+k]
		if cell.choices[at].recipe == from {
			at = cell.of[to]
			for j := 0; at < 0 && j < len(row); j++ {
				if r := a.t.cells[first+j].choices[row[j]].recipe; r != from {
					at = cell.of[r]
				}
			}
			if at < 0 {
				return false
			}
		}
		c.row = append(c.row, at)
	}
	return true
}

// copied makes the row of a slot what another slot has.
func (a *annealer) copied(c *change, from int) bool {
	first, other := a.t.first[c.slot], a.t.first[from]
	if len(a.t.row(c.slot)) != len(a.t.row(from)) {
		return false
	}
	for k, at := range a.t.row(from) {
		there, here := &a.t.cells[other+k], &a.t.cells[first+k]
		if there.class != here.class || here.of[there.choices[at].recipe] < 0 {
			return false
		}
		c.row = append(c.row, here.of[there.choices[at].recipe])
	}
	return true
}

// trade lets two slots of different days trade a recipe each, or all they have.
func (a *annealer) trade(one, two *change) bool {
	i := a.rand.below(len(a.t.m.slots))
	if len(a.kinds[i]) == 0 {
		return false
	}
	j := a.kinds[i][a.rand.below(len(a.kinds[i]))]
	one.slot, two.slot = i, j
	if a.rand.below(3) == 0 {
		return a.copied(one, j) && a.copied(two, i)
	}
	from, to := a.eaten(i), a.eaten(j)
	return a.replaced(one, from, to) && a.replaced(two, to, from)
}
