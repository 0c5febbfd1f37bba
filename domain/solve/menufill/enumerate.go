package menufill

import (
	"slices"
)

// enumeration is what a look at the menus of one day found.
type enumeration struct {
	menus []dayMenu
	// least is a proven least priced cost of any menu of the day; never when there is none at all.
	least int64
	// complete is the priced cost up to which every undominated menu is listed; never when all are.
	complete int64
}

// dayEnumerator lists the menus of one day depth first, one dish for each slot, cheapest dishes first, and cuts what must cost
// more than its cutoff.
type dayEnumerator struct {
	m      *model
	p      *prices
	day    int
	steps  *budget
	mark   int64 // work at which the pass ends
	most   int   // menus kept
	places []place
	use    []int64 // price of each recipe through the rules between days
	bound  int64   // least the relaxed day can cost
	cutoff int64
	cut    bool // something was left out for its cost
	ended  bool // the work limit ended the pass
	diving bool // the first menu is enough

	chosen []int
	got    []span
	cook   int
	moved  int64  // by which the chosen dishes cost more than their classes' cheapest plates
	used   []bool // recipes cooked today
	found  []dayMenu
	leaf   dayLeaf
}

// place is a slot in the order of the search.
type place struct {
	s      *slot
	local  int // index among the slots of the day
	lister *dishLister
	list   []dish
	twin   int    // place of the slot exactly alike, -1 if none
	rest   int64  // cheapest dishes of the places after this one
	reach  []span // kcal each class can get in the places after this one
}

// newDayEnumerator prepares to list menus of day d; nil when some slot has no dish for every class.
func newDayEnumerator(m *model, p *prices, d int, steps *budget) *dayEnumerator {
	return newTailoredEnumerator(m, p, d, p.linkPrices(d), nil, steps)
}

// newTailoredEnumerator takes use as the price of each recipe through the rules between days, and leaves the banned recipes out.
func newTailoredEnumerator(m *model, p *prices, d int, use []int64, banned []bool, steps *budget) *dayEnumerator {
	e := &dayEnumerator{m: m, p: p, day: d, steps: steps, use: use, bound: p.dayConstant(d)}
	all := p.withinDay(use, d)
	for local, i := range m.byDay[d] {
		l := newDishLister(m, m.slots[i].without(banned), p, all)
		if !l.served() {
			return nil
		}
		e.bound += l.pick.best
		e.places = append(e.places, place{s: l.s, local: local, lister: l, twin: -1})
	}
	return e
}

// list returns the menus, at most most of them, whose priced cost is at most slack over the bound, unless the work mark ends it early.
func (e *dayEnumerator) list(slack, mark int64, most int) enumeration {
	e.cutoff, e.mark, e.most = e.bound+slack, mark, most
	e.cut, e.ended, e.found = false, false, nil
	for i := range e.places {
		p := &e.places[i]
		p.list = p.lister.run(slack, e.steps)
		e.cut = e.cut || p.lister.cut
	}
	e.prepare()
	e.descend(0, e.p.dayConstant(e.day))
	slices.SortFunc(e.found, byReduced)
	return e.result(e.bound)
}

// dive returns a menu from the dishes that list found, whatever it costs, and better ones as far as the work mark allows: where the rules that
// give way cost much, all that list looks at may lie over its cutoff.
func (e *dayEnumerator) dive(mark int64, most int) enumeration {
	e.cutoff, e.mark, e.most, e.diving = never/2, e.steps.used+diveSteps, 1, true
	e.found = nil
	e.prepare()
	e.descend(0, e.p.dayConstant(e.day))
	e.diving = false
	if len(e.found) == 0 {
		return enumeration{least: e.bound, complete: e.bound - 1}
	}
	slices.SortFunc(e.found, byReduced)
	first := e.found[0]
	found := e.list(first.reduced-e.bound, mark, most)
	found.menus = append(found.menus, first)
	return found
}

func (e *dayEnumerator) result(bound int64) enumeration {
	n := enumeration{menus: e.found, least: bound, complete: bound - 1}
	if e.ended {
		return n
	}
	n.least, n.complete = never, never
	if e.cut {
		n.least, n.complete = e.cutoff, e.cutoff
	}
	if len(e.found) > 0 {
		n.least = min(n.least, e.found[0].reduced)
	}
	return n
}

// without is the slot with the banned recipes left out; a fixed slot keeps its recipes.
func (s *slot) without(banned []bool) *slot {
	if banned == nil || s.fixed {
		return s
	}
	c := *s
	c.candidates = nil
	for _, r := range s.candidates {
		if !banned[r] {
			c.candidates = append(c.candidates, r)
		}
	}
	c.pots = min(s.pots, len(c.candidates))
	return &c
}

// linkPrices is the price of each recipe on day d through the rules between days.
func (p *prices) linkPrices(d int) []int64 {
	use := make([]int64, len(p.m.p.Recipes))
	for r := range use {
		use[r] = p.use(r, d)
	}
	return use
}

// withinDay adds to the price of each recipe what the rules between the slots of day d charge.
func (p *prices) withinDay(use []int64, d int) []int64 {
	all := slices.Clone(use)
	for r := range all {
		for _, w := range p.m.byRecipe[r] {
			if v := p.m.windows[w]; v.single() && v.first == d {
				all[r] += p.window[w]
			}
		}
	}
	return all
}

func (e *dayEnumerator) prepare() {
	slices.SortStableFunc(e.places, func(a, b place) int { return len(a.list) - len(b.list) })
	for i := range e.places {
		e.places[i].twin = -1
		for j := range i {
			if t := e.places[i].s.twin; t >= 0 && t == e.m.byDay[e.day][e.places[j].local] {
				e.places[i].twin = j
			}
		}
	}
	rest, reach := int64(0), make([]span, len(e.m.p.Classes))
	for i := len(e.places) - 1; i >= 0; i-- {
		p := &e.places[i]
		p.rest, p.reach = rest, slices.Clone(reach)
		rest += p.list[0].cost
		for g := range reach {
			all := p.list[0].kcal[g]
			for _, d := range p.list {
				all = span{min(all.least, d.kcal[g].least), max(all.most, d.kcal[g].most)}
			}
			reach[g].least += all.least
			reach[g].most += all.most
		}
	}
	e.leaf = dayLeaf{}
	e.chosen = make([]int, len(e.places))
	e.got = make([]span, len(e.m.p.Classes))
	e.used = make([]bool, len(e.m.p.Recipes))
}

func (e *dayEnumerator) descend(i int, sum int64) {
	if i == len(e.places) {
		e.finish(e.cutoff - sum + e.moved)
		return
	}
	p := &e.places[i]
	from := 0
	if p.twin >= 0 {
		from = e.chosen[p.twin] + 1
	}
	for k := from; k < len(p.list); k++ {
		d := &p.list[k]
		if e.over() {
			e.ended = true
			return
		}
		if sum+d.cost+p.rest > e.cutoff {
			e.cut = true
			return
		}
		e.steps.spend(int64(2 + len(e.got)))
		if !e.fits(d, p) {
			continue
		}
		e.chosen[i] = k
		e.take(d, 1)
		e.descend(i+1, sum+d.cost)
		e.take(d, -1)
	}
}

// over tells that the pass must end. A dive ends with its first menu, and has work of its own: without a menu there is no plan.
func (e *dayEnumerator) over() bool {
	if e.diving {
		return len(e.found) > 0 || e.steps.stopped || e.steps.used >= e.mark
	}
	return e.steps.past(e.mark)
}

// fits tells whether dish d leaves the day's rules within reach.
func (e *dayEnumerator) fits(d *dish, p *place) bool {
	if e.cook+d.cook > e.m.p.CookMinutes[e.day] {
		return false
	}
	for _, r := range d.recipes {
		if e.used[r] {
			return false
		}
	}
	for g := range e.got {
		class := &e.m.p.Classes[g]
		if !e.m.eats[g][e.day] {
			continue
		}
		if e.got[g].least+d.kcal[g].least+p.reach[g].least > class.EnergyMax[e.day] ||
			e.got[g].most+d.kcal[g].most+p.reach[g].most < class.EnergyMin[e.day] {
			return false
		}
	}
	return true
}

func (e *dayEnumerator) take(d *dish, sign int) {
	e.cook += sign * d.cook
	e.moved += int64(sign) * (d.cost - d.base)
	for _, r := range d.recipes {
		e.used[r] = sign > 0
	}
	for g := range e.got {
		e.got[g].least += sign * d.kcal[g].least
		e.got[g].most += sign * d.kcal[g].most
	}
}

// finish keeps the menus of the chosen dishes, at most slack over their cost, and lowers the cutoff when there are too many.
func (e *dayEnumerator) finish(slack int64) {
	e.leaf.menus(e, slack)
	e.steps.spend(e.leaf.work)
	e.leaf.work = 0
	if len(e.found) < 2*e.most {
		return
	}
	slices.SortFunc(e.found, byReduced)
	e.found = e.found[:e.most]
	e.cutoff, e.cut = e.found[e.most-1].reduced-1, true // others may cost the same as the last
}
