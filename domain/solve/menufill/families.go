package menufill

// windowed says how the uses of a family's recipes lie in the runs of days that it looks at.
type windowed struct {
	burden int64
	days   int      // of a run
	near   []uint64 // [day] the days that share a run with it, itself included
}

// addFamilies sorts families into those that look inside a day and those that tie days together, and turns both into windows.
func (m *model) addFamilies(slotsOn [][]int) {
	m.inDay, m.linked = make([][]int, len(m.p.Recipes)), make([][]int, len(m.p.Recipes))
	for f := range m.p.Families {
		family := &m.p.Families[f]
		if family.Burden == 0 {
			continue
		}
		for _, r := range family.Recipes {
			if family.Days == 1 {
				m.inDay[r] = append(m.inDay[r], f)
			} else {
				m.linked[r] = append(m.linked[r], f)
			}
		}
		for first := 0; first+family.Days <= m.p.Days; first++ {
			m.addWindow(window{first: first, last: first + family.Days - 1, most: int64(family.Burden) << scale}, family.Recipes, slotsOn)
		}
	}
	m.families = make([]windowed, len(m.p.Families))
	for f := range m.families {
		days := m.p.Families[f].Days
		m.families[f] = windowed{burden: int64(m.p.Families[f].Burden), days: days}
		for d := range m.p.Days {
			first, last := max(0, d-days+1), min(m.p.Days-1, d+days-1)
			m.families[f].near = append(m.families[f].near, (1<<(last+1)-1)&^(1<<first-1))
		}
	}
}

// addWindow keeps a window that may be used more than once.
func (m *model) addWindow(w window, recipes []int, slotsOn [][]int) {
	count := 0
	for _, r := range recipes {
		for d := w.first; d <= w.last; d++ {
			count += slotsOn[r][d]
		}
	}
	if count < 2 {
		return
	}
	at := len(m.windows)
	m.windows = append(m.windows, w)
	for _, r := range recipes {
		m.byRecipe[r] = append(m.byRecipe[r], at)
	}
	if w.single() {
		m.singles[w.first] = append(m.singles[w.first], at)
	}
}

// inDayBurden is what the families that look inside a day charge for its recipes.
func (m *model) inDayBurden(cooked []int16) int64 {
	sum := int64(0)
	for i, r := range cooked {
		for _, f := range m.inDay[r] {
			for _, before := range cooked[:i] {
				if contains(m.inDay[before], f) {
					sum += m.families[f].burden
					break
				}
			}
		}
	}
	return sum
}

func contains(list []int, one int) bool {
	for _, x := range list {
		if x == one {
			return true
		}
	}
	return false
}

// familyUse is how often a day's menu uses a family that ties days together.
type familyUse struct{ family, uses int32 }

// familyUses counts the families that a day's recipes use.
func (m *model) familyUses(cooked []int16) []familyUse {
	var list []familyUse
	for _, r := range cooked {
	next:
		for _, f := range m.linked[r] {
			for i := range list {
				if list[i].family == int32(f) {
					list[i].uses++
					continue next
				}
			}
			list = append(list, familyUse{int32(f), 1})
		}
	}
	return list
}

// kinship counts the uses of every family over the days of an assembly.
type kinship struct {
	m    *model
	days []uint64  // [family] days that use it
	uses [][]int32 // [family][day]
}

func newKinship(m *model) kinship {
	k := kinship{m: m, days: make([]uint64, len(m.families)), uses: make([][]int32, len(m.families))}
	for f := range k.uses {
		k.uses[f] = make([]int32, m.p.Days)
	}
	return k
}

func (k *kinship) put(d int, list []familyUse, sign int32) {
	for _, u := range list {
		if k.uses[u.family][d] += sign * u.uses; k.uses[u.family][d] > 0 {
			k.days[u.family] |= 1 << d
		} else {
			k.days[u.family] &^= 1 << d
		}
	}
}

// marginal is what uses on the free day d add.
func (k *kinship) marginal(d int, list []familyUse) int64 {
	sum := int64(0)
	for _, u := range list {
		family := &k.m.families[u.family]
		if u.uses == 1 && k.days[u.family]&family.near[d] == 0 {
			continue
		}
		sum += k.charge(int(u.family), d, u.uses)
	}
	return sum
}

// charge is what n more uses of a family on day d cost.
func (k *kinship) charge(f, d int, n int32) int64 {
	family, uses, more := &k.m.families[f], k.uses[f], int32(0)
	for first := max(0, d-family.days+1); first <= d && first+family.days <= len(uses); first++ {
		inside := int32(0)
		for _, u := range uses[first : first+family.days] {
			inside += u
		}
		more += max(0, inside+n-1) - max(0, inside-1)
	}
	return int64(more) * family.burden
}

// total is what all families charge.
func (k *kinship) total() int64 {
	sum := int64(0)
	for f := range k.uses {
		family := &k.m.families[f]
		if k.days[f] == 0 {
			continue
		}
		for first := 0; first+family.days <= len(k.uses[f]); first++ {
			inside := int32(0)
			for _, u := range k.uses[f][first : first+family.days] {
				inside += u
			}
			sum += int64(max(0, inside-1)) * family.burden
		}
	}
	return sum
}
