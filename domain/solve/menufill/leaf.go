package menufill

import "slices"

// dayLeaf decides who eats which recipe once the dishes of a day are chosen: each class apart, since only the dishes tie them.
type dayLeaf struct {
	options [][]classDay // of each class
	current classDay
	combo   []int
	rest    []span // kcal of the places from each on
	cooked  []int16
	least   int // kcal the class must get that day
	most    int
	work    int64
}

// classDay is what one class eats in the places of a day.
type classDay struct {
	recipes []int16 // of each place, -1 where the class has no eaters
	amounts []int64 // of each want
	value   int64
	kcal    int
	protein int
	cost    int64 // value less what the trip's energy pays
}

// menus adds to e.found the day menus of the chosen dishes: one, or one for each way the trip's energy could prefer. A class may
// eat up to slack dearer than its cheapest plates.
func (l *dayLeaf) menus(e *dayEnumerator, slack int64) {
	if l.options == nil {
		l.options = make([][]classDay, len(e.m.p.Classes))
		l.current.recipes, l.current.amounts = make([]int16, len(e.places)), make([]int64, len(e.m.p.Wants))
		l.combo = make([]int, len(e.m.p.Classes))
		l.rest = make([]span, len(e.places)+1)
	}
	for g := range e.m.p.Classes {
		l.options[g] = l.options[g][:0]
		l.current.value, l.current.kcal, l.current.protein = 0, 0, 0
		clear(l.current.amounts)
		l.prepareRest(e, g)
		l.least, l.most = 0, maxFigure*maxDays
		if e.m.eats[g][e.day] {
			l.least, l.most = e.m.p.Classes[g].EnergyMin[e.day], e.m.p.Classes[g].EnergyMax[e.day]
		}
		l.choose(e, g, 0, slack)
		if len(l.options[g]) == 0 {
			return
		}
	}
	l.combine(e, 0)
}

// prepareRest sums the kcal that the places from each on can give class g.
func (l *dayLeaf) prepareRest(e *dayEnumerator, g int) {
	for i := len(e.places) - 1; i >= 0; i-- {
		kcal := e.places[i].list[e.chosen[i]].kcal[g]
		l.rest[i] = span{l.rest[i+1].least + kcal.least, l.rest[i+1].most + kcal.most}
	}
}

// choose lists what class g can eat from place i on, at most slack dearer than the cheapest plates.
func (l *dayLeaf) choose(e *dayEnumerator, g, i int, slack int64) {
	if i == len(e.places) {
		l.keep(e, g)
		return
	}
	if l.current.kcal+l.rest[i].most < l.least || l.current.kcal+l.rest[i].least > l.most {
		return
	}
	p := &e.places[i]
	plates := p.list[e.chosen[i]].plates[g]
	if len(plates) == 0 {
		l.current.recipes[i] = -1
		l.choose(e, g, i+1, slack)
		return
	}
	value, kcal, protein := l.current.value, l.current.kcal, l.current.protein
	for _, o := range plates {
		dearer := o.cost - plates[0].cost
		if dearer > slack {
			e.cut = true
			break
		}
		l.work++
		l.current.recipes[i] = o.recipe
		l.current.value = value + o.value
		l.current.kcal = kcal + o.serving.Kcal
		l.current.protein = protein + o.serving.ProteinDg
		l.current.taste(o.serving, 1)
		l.choose(e, g, i+1, slack-dearer)
		l.current.taste(o.serving, -1)
	}
	l.current.value, l.current.kcal, l.current.protein = value, kcal, protein
}

// taste adds the amounts of a serving, or takes them back.
func (c *classDay) taste(v *Serving, sign int64) {
	for k, amount := range v.Amounts {
		c.amounts[k] += sign * int64(amount)
	}
}

// keep adds the current choice of class g if it keeps the day's rules and no other choice is as good.
func (l *dayLeaf) keep(e *dayEnumerator, g int) {
	now := l.current
	if now.kcal < l.least || now.kcal > l.most || e.m.eats[g][e.day] && now.protein < e.m.p.Classes[g].ProteinMin[e.day] {
		return
	}
	if e.m.eats[g][e.day] {
		now.value += e.m.missed(g, e.day, now.amounts)
	}
	now.cost = now.value<<scale - e.p.total[g]*int64(now.kcal)
	kept := l.options[g][:0]
	for _, o := range l.options[g] {
		if o.value <= now.value && (o.kcal >= now.kcal || !e.m.totalBinds[g]) {
			return
		}
		if !(now.value <= o.value && (now.kcal >= o.kcal || !e.m.totalBinds[g])) {
			kept = append(kept, o)
		}
	}
	now.recipes, now.amounts = slices.Clone(now.recipes), nil
	l.options[g] = append(kept, now)
}

// combine joins one choice of each class into day menus.
func (l *dayLeaf) combine(e *dayEnumerator, g int) {
	if g == len(l.options) {
		l.add(e)
		return
	}
	for i := range l.options[g] {
		l.combo[g] = i
		l.combine(e, g+1)
	}
}

func (l *dayLeaf) add(e *dayEnumerator) {
	l.work += int64(len(l.options))
	var reduced, value int64
	for g, i := range l.combo {
		reduced += l.options[g][i].cost
		value += l.options[g][i].value
	}
	l.cooked = l.cooked[:0]
	for i, p := range e.places {
		dish := &p.list[e.chosen[i]]
		for _, r := range dish.recipes {
			if !p.s.fixed && !l.eaten(i, r) {
				return // the menu without r is listed on its own
			}
			reduced += e.use[r]
			l.cooked = append(l.cooked, int16(r))
		}
		reduced += dish.burden << scale
		value += dish.burden
	}
	kin := e.m.inDayBurden(l.cooked)
	if reduced += kin << scale; reduced > e.cutoff {
		e.cut = true
		return
	}
	e.found = append(e.found, l.build(e, value+kin, reduced))
}

func (l *dayLeaf) eaten(place, r int) bool {
	for g, i := range l.combo {
		if int(l.options[g][i].recipes[place]) == r {
			return true
		}
	}
	return false
}

func (l *dayLeaf) build(e *dayEnumerator, value, reduced int64) dayMenu {
	n := len(l.combo)
	menu := dayMenu{cells: make([]int16, len(e.places)*n), value: value, reduced: reduced, kcal: make([]int32, n)}
	for i, p := range e.places {
		for g, o := range l.combo {
			menu.cells[p.local*n+g] = l.options[g][o].recipes[i]
		}
	}
	menu.cooked = slices.Clone(l.cooked)
	slices.Sort(menu.cooked)
	menu.kin = e.m.familyUses(menu.cooked)
	for g, o := range l.combo {
		if e.m.totalBinds[g] {
			menu.kcal[g] = int32(l.options[g][o].kcal)
		}
	}
	return menu
}
