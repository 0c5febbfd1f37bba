package menufill

import "math/bits"

// change is another row for a slot.
type change struct {
	slot int
	row  []int
}

// change tells by how much value and charges grow if slot i chooses the row, which may cook too much for its pots: then ok is false.
func (t *table) change(i int, row []int) (value, charged int64, ok bool) {
	s, first := &t.m.slots[i], t.first[i]
	for k, to := range row {
		from := t.current[first+k]
		if to == from {
			continue
		}
		c := &t.cells[first+k]
		less, more := &c.choices[from], &c.choices[to]
		value += more.value - less.value
		kcal, protein := more.kcal-less.kcal, more.protein-less.protein
		charged += t.dayCharge(c.at, s.day, c.class, t.kcal[c.at]+kcal, t.protein[c.at]+protein) - t.dayCharge(c.at, s.day, c.class, t.kcal[c.at], t.protein[c.at])
		charged += t.totalChange(c.class, kcal)
		if len(less.amounts) > 0 {
			value += t.missed(c.at, s.day, c.class, less, more) - t.missed(c.at, s.day, c.class, less, less)
		}
	}
	if s.fixed {
		t.leave, t.arrive = t.leave[:0], t.arrive[:0]
		return value, charged, true
	}
	if !t.exchange(i, row) {
		return 0, 0, false
	}
	v, c := t.cooking(i)
	return value + v, charged + c, true
}

// exchange notes which recipes leave slot i and which arrive; false if there would be more than its pots.
func (t *table) exchange(i int, row []int) bool {
	t.leave, t.arrive = t.leave[:0], t.arrive[:0]
	first, cooked := t.first[i], 0
	for k, to := range row {
		r, old := t.cells[first+k].choices[to].recipe, t.cells[first+k].choices[t.current[first+k]].recipe
		if !t.anyEats(first, row[:k], r) {
			cooked++
			if !t.anyEats(first, t.current[first:first+len(row)], r) {
				t.arrive = append(t.arrive, r)
			}
		}
		if !t.anyEats(first, t.current[first:first+k], old) && !t.anyEats(first, row, old) {
			t.leave = append(t.leave, old)
		}
	}
	return cooked <= t.m.slots[i].pots
}

func (t *table) anyEats(first int, row []int, r int) bool {
	for k, c := range row {
		if t.cells[first+k].choices[c].recipe == r {
			return true
		}
	}
	return false
}

// cooking is what the recipes that leave slot i and arrive change.
func (t *table) cooking(i int) (value, charged int64) {
	s := &t.m.slots[i]
	d, minutes := s.day, 0
	for _, r := range t.leave {
		minutes -= s.offers.minutes[r]
		value -= s.offers.burden[r]
		if t.uses[r] > 1 {
			value -= int64(t.m.p.Weights.Repeat)
		}
		charged -= t.crowd(r, d, t.uses[r]-1, int(t.onDay[r][d])-1)
	}
	for _, r := range t.arrive {
		minutes += s.offers.minutes[r]
		value += s.offers.burden[r]
		if t.uses[r] > 0 {
			value += int64(t.m.p.Weights.Repeat)
		}
		charged += t.crowd(r, d, t.uses[r], int(t.onDay[r][d]))
	}
	if minutes != 0 {
		most, now := t.m.p.CookMinutes[d], t.minutes[d]
		charged += int64(max(0, now+minutes-most)-max(0, now-most)) * t.charges.minute
	}
	if len(t.family) > 0 {
		value += t.kinChange(d)
	}
	return value, charged
}

// crowd is what one more use of recipe r on day d is charged beside so many others, some of them that day.
func (t *table) crowd(r, d, others, sameDay int) int64 {
	if others == 0 {
		return 0
	}
	wrong := sameDay
	for rest := t.days[r] & t.near[r][d] &^ (1 << d); rest != 0; rest &= rest - 1 {
		wrong += int(t.onDay[r][bits.TrailingZeros64(rest)])
	}
	if others >= t.m.maxRepeats[r] {
		wrong++
	}
	return int64(wrong) * t.charges.use
}

// kinChange is what families charge for the recipes that leave day d and arrive.
func (t *table) kinChange(d int) int64 {
	sum := int64(0)
	for _, r := range t.leave {
		for _, f := range t.kinds[r] {
			t.family[f][d]--
			sum -= t.kinCharge(f, d)
		}
	}
	for _, r := range t.arrive {
		for _, f := range t.kinds[r] {
			sum += t.kinCharge(f, d)
			t.family[f][d]++
		}
	}
	for _, r := range t.leave {
		for _, f := range t.kinds[r] {
			t.family[f][d]++
		}
	}
	for _, r := range t.arrive {
		for _, f := range t.kinds[r] {
			t.family[f][d]--
		}
	}
	return sum
}

// kinCharge is what one more use of family f on day d costs.
func (t *table) kinCharge(f, d int) int64 {
	family, uses, more := &t.m.families[f], t.family[f], 0
	for first := max(0, d-family.days+1); first <= d && first+family.days <= len(uses); first++ {
		inside := 0
		for _, u := range uses[first : first+family.days] {
			inside += u
		}
		if inside > 0 {
			more++
		}
	}
	return int64(more) * family.burden
}

// least is the least by which value and charges can grow with all the changes: their food and the energy of the trip, everything else that is
// charged now saved.
func (t *table) least(changes []change) int64 {
	sum := t.plain - t.value - t.charged
	clear(t.moved)
	for _, change := range changes {
		first := t.first[change.slot]
		for k, to := range change.row {
			if to != t.current[first+k] {
				value, kcal := t.moves(first+k, to)
				sum += value
				t.moved[t.cells[first+k].class] += kcal
			}
		}
	}
	for g, kcal := range t.moved {
		if kcal != 0 {
			sum += t.totalChange(g, kcal)
		}
	}
	return sum
}

// leastOfCell is least when one cell chooses something else.
func (t *table) leastOfCell(k, to int) int64 {
	value, kcal := t.moves(k, to)
	return t.plain - t.value - t.charged + value + t.totalChange(t.cells[k].class, kcal)
}

// leastOfCells is least when two cells of a class do.
func (t *table) leastOfCells(k, to, l, too int) int64 {
	value, kcal := t.moves(k, to)
	more, also := t.moves(l, too)
	return t.plain - t.value - t.charged + value + more + t.totalChange(t.cells[k].class, kcal+also)
}

// moves is what another choice of a cell adds to the food and its kcal.
func (t *table) moves(k, to int) (value int64, kcal int) {
	less, more := &t.cells[k].choices[t.current[k]], &t.cells[k].choices[to]
	return more.value - less.value, more.kcal - less.kcal
}

func (t *table) totalChange(g, kcal int) int64 {
	return t.totalCharge(g, t.total[g]+kcal) - t.totalCharge(g, t.total[g])
}
