package menufill

// Work of a move in steps.
const (
	weighWork  = 3
	changeWork = 6
)

// move tries one change: what a class eats, a recipe of a slot, two slots that trade, or two of the first or second together, so that one may make good
// what the other takes.
func (a *annealer) move() {
	a.changes[0].row, a.changes[1].row = a.changes[0].row[:0], a.changes[1].row[:0]
	switch n := a.rand.below(16); {
	case n < 4:
		a.try(a.another(&a.changes[0], a.rand.below(len(a.t.cells))), false)
	case n < 7:
		a.try(a.replace(&a.changes[0]), false)
	case n < 10:
		a.try(a.trade(), true)
	case n < 14:
		k := a.rand.below(len(a.t.cells))
		mates := a.mates[a.t.cells[k].class]
		a.try(a.another(&a.changes[0], k) && a.another(&a.changes[1], mates[a.rand.below(len(mates))]), true)
	default:
		a.try(a.replace(&a.changes[0]) && a.replace(&a.changes[1]), true)
	}
}

// try makes the change, or both, if they cost at most what the temperature allows.
func (a *annealer) try(proposed, both bool) {
	if !proposed || both && a.changes[0].slot == a.changes[1].slot {
		return
	}
	a.work += weighWork
	threshold := a.threshold()
	changes := a.changes[:1]
	if both {
		changes = a.changes[:2]
	}
	if a.t.least(changes) > threshold {
		return
	}
	a.work += changeWork
	one, two := &a.changes[0], &a.changes[1]
	value, charged, ok := a.t.change(one.slot, one.row)
	if !ok || !both && value+charged > threshold {
		return
	}
	if !both {
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

// another lets one class eat something else.
func (a *annealer) another(c *change, k int) bool {
	choices := len(a.t.cells[k].choices)
	if choices < 2 {
		return false
	}
	c.slot = a.t.cells[k].slot
	c.row = append(c.row, a.t.row(c.slot)...)
	at := k - a.t.first[c.slot]
	to := a.rand.below(choices - 1)
	if to >= c.row[at] {
		to++
	}
	c.row[at] = to
	return true
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
	return from != to
}

// trade lets two slots of different days trade a recipe each.
func (a *annealer) trade() bool {
	i := a.rand.below(len(a.t.m.slots))
	if len(a.kinds[i]) == 0 {
		return false
	}
	j := a.kinds[i][a.rand.below(len(a.kinds[i]))]
	a.changes[0].slot, a.changes[1].slot = i, j
	from, to := a.eaten(i), a.eaten(j)
	return a.replaced(&a.changes[0], from, to) && a.replaced(&a.changes[1], to, from)
}
