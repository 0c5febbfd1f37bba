package menufill

// table is a plan laid out for small changes: who eats what in every slot, with the running sums of every rule. Rules may be broken at a
// charge, those inside a day too, so that a search can pass through plans that break them.
type table struct {
	m       *model
	cells   []cell
	first   []int // of each slot its first cell; one more for the end
	current []int // choice of each cell
	charges charges

	kcal, protein []int   // [day and class]
	amounts       [][]int // [day and class][want]
	total         []int   // kcal of each class over the trip
	minutes       []int   // of each day
	uses          []int   // of each recipe
	onDay         [][]int8
	days          []uint64 // [recipe] days that cook it
	near          [][]uint64
	kinds         [][]int // families of each recipe
	family        [][]int // [family][day] uses
	value         int64   // objective
	plain         int64   // the part of it that is food alone
	charged       int64   // for broken rules; 0 when the plan keeps all

	moved         []int // kcal of each class
	leave, arrive []int // recipes that a change takes off the slot and puts on it
}

// cell is one class at one slot.
type cell struct {
	slot, class int
	at          int // day and class
	choices     []choice
	of          []int // [recipe] its choice, -1 if it is not served
}

// choice is a recipe as the eaters of a cell get it.
type choice struct {
	recipe, kcal, protein int
	amounts               []int
	value                 int64
}

func newTable(m *model) *table {
	days, classes := m.p.Days, len(m.p.Classes)
	t := &table{m: m, kcal: make([]int, days*classes), protein: make([]int, days*classes), total: make([]int, classes), moved: make([]int, classes),
		minutes: make([]int, days), uses: make([]int, len(m.p.Recipes)), days: make([]uint64, len(m.p.Recipes)), near: newAssembly(m).near}
	for range days * classes {
		t.amounts = append(t.amounts, make([]int, len(m.p.Wants)))
	}
	for r := range m.p.Recipes {
		t.onDay = append(t.onDay, make([]int8, days))
		t.kinds = append(t.kinds, append(append([]int(nil), m.inDay[r]...), m.linked[r]...))
	}
	for range m.p.Families {
		t.family = append(t.family, make([]int, days))
	}
	for i := range m.slots {
		t.first = append(t.first, len(t.cells))
		for _, g := range m.slots[i].classes {
			t.cells = append(t.cells, newCell(m, i, g))
		}
	}
	t.first = append(t.first, len(t.cells))
	t.current = make([]int, len(t.cells))
	return t
}

func newCell(m *model, i, g int) cell {
	s := &m.slots[i]
	c := cell{slot: i, class: g, at: s.day*len(m.p.Classes) + g, of: make([]int, len(m.p.Recipes))}
	for r := range c.of {
		c.of[r] = -1
	}
	for _, r := range s.candidates {
		if v := s.serving(r, g); v.Served {
			c.of[r] = len(c.choices)
			c.choices = append(c.choices, choice{r, v.Kcal, v.ProteinDg, v.Amounts, s.cellValue(g, r)})
		}
	}
	return c
}

// row is what the cells of a slot choose; it may be written to only through put.
func (t *table) row(i int) []int { return t.current[t.first[i]:t.first[i+1]] }

// load lays out the plan, with nothing charged for broken rules yet.
func (t *table) load(menus []dayMenu) {
	classes := len(t.m.p.Classes)
	for d, menu := range menus {
		for local, i := range t.m.byDay[d] {
			for k := t.first[i]; k < t.first[i+1]; k++ {
				t.current[k] = t.cells[k].of[menu.cells[local*classes+t.cells[k].class]]
			}
		}
	}
	t.charge(newRates(t.m).times(0))
}

// charge sets what broken rules cost and counts everything anew.
func (t *table) charge(c charges) {
	t.charges = c
	for k := range t.kcal {
		t.kcal[k], t.protein[k] = 0, 0
		clear(t.amounts[k])
	}
	clear(t.total)
	clear(t.minutes)
	clear(t.uses)
	clear(t.days)
	for r := range t.onDay {
		clear(t.onDay[r])
	}
	for f := range t.family {
		clear(t.family[f])
	}
	t.value, t.plain, t.charged = 0, 0, 0
	for i := range t.m.slots {
		for k := t.first[i]; k < t.first[i+1]; k++ {
			t.taste(k, &t.cells[k].choices[t.current[k]], 1)
			t.value += t.cells[k].choices[t.current[k]].value
			t.plain += t.cells[k].choices[t.current[k]].value
		}
		t.leave, t.arrive = t.leave[:0], t.dishes(t.arrive[:0], i)
		value, charged := t.cooking(i)
		t.value, t.charged = t.value+value, t.charged+charged
		t.cook(i)
	}
	for g := range t.m.p.Classes {
		t.charged += t.totalCharge(g, t.total[g])
		for d := range t.m.p.Days {
			if at := d*len(t.m.p.Classes) + g; t.m.eats[g][d] {
				t.charged += t.dayCharge(at, d, g, t.kcal[at], t.protein[at])
				t.value += t.missed(at, d, g, nil, nil)
			}
		}
	}
}

// dishes appends the recipes cooked in slot i.
func (t *table) dishes(list []int, i int) []int {
	if t.m.slots[i].fixed {
		return append(list, t.m.slots[i].candidates...)
	}
	from := len(list)
	for k := t.first[i]; k < t.first[i+1]; k++ {
		if r := t.cells[k].choices[t.current[k]].recipe; !contains(list[from:], r) {
			list = append(list, r)
		}
	}
	return list
}

func (t *table) taste(k int, c *choice, sign int) {
	cell := &t.cells[k]
	t.kcal[cell.at] += sign * c.kcal
	t.protein[cell.at] += sign * c.protein
	t.total[cell.class] += sign * c.kcal
	for want, amount := range c.amounts {
		t.amounts[cell.at][want] += sign * amount
	}
}

// dayCharge is what a class is charged for a day with so much.
func (t *table) dayCharge(at, d, g, kcal, protein int) int64 {
	class := &t.m.p.Classes[g]
	wrong := max(0, class.EnergyMin[d]-kcal, kcal-class.EnergyMax[d])
	return int64(wrong)*t.charges.kcal[at] + int64(max(0, class.ProteinMin[d]-protein))*t.charges.protein[at]
}

func (t *table) totalCharge(g, kcal int) int64 {
	return int64(max(0, t.m.p.Classes[g].EnergyTotal-kcal)) * t.charges.total[g]
}

// missed is what a class misses of its wants on a day with one choice less and one more.
func (t *table) missed(at, d, g int, less, more *choice) int64 {
	sum := int64(0)
	for k, amount := range t.amounts[at] {
		if less != nil {
			amount += more.amounts[k] - less.amounts[k]
		}
		if short := t.m.p.Classes[g].Wants[k][d] - amount; short > 0 {
			sum += int64(short) * t.m.wantBurden(k, g, d)
		}
	}
	return sum
}

// put makes the change that change has just weighed.
func (t *table) put(i int, row []int, value, charged int64) {
	first := t.first[i]
	for k, to := range row {
		if from := t.current[first+k]; to != from {
			less, more := &t.cells[first+k].choices[from], &t.cells[first+k].choices[to]
			t.taste(first+k, less, -1)
			t.taste(first+k, more, 1)
			t.plain += more.value - less.value
			t.current[first+k] = to
		}
	}
	t.cook(i)
	t.value, t.charged = t.value+value, t.charged+charged
}

// cook counts the recipes that leave slot i and arrive.
func (t *table) cook(i int) {
	s := &t.m.slots[i]
	for _, r := range t.leave {
		t.count(s, r, -1)
	}
	for _, r := range t.arrive {
		t.count(s, r, 1)
	}
}

func (t *table) count(s *slot, r, sign int) {
	t.minutes[s.day] += sign * s.offers.minutes[r]
	t.uses[r] += sign
	t.onDay[r][s.day] += int8(sign)
	if t.onDay[r][s.day] > 0 {
		t.days[r] |= 1 << s.day
	} else {
		t.days[r] &^= 1 << s.day
	}
	for _, f := range t.kinds[r] {
		t.family[f][s.day] += sign
	}
}

// menus writes the plan out as a menu for each day.
func (t *table) menus(current []int) []dayMenu {
	menus := make([]dayMenu, t.m.p.Days)
	classes := len(t.m.p.Classes)
	for d := range menus {
		cells := make([]int16, len(t.m.byDay[d])*classes)
		for local, i := range t.m.byDay[d] {
			for g := range classes {
				cells[local*classes+g] = -1
			}
			for k := t.first[i]; k < t.first[i+1]; k++ {
				cells[local*classes+t.cells[k].class] = int16(t.cells[k].choices[current[k]].recipe)
			}
		}
		menus[d] = t.m.dayMenu(d, cells)
	}
	return menus
}
