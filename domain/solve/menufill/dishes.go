package menufill

import (
	"cmp"
	"slices"
)

// dish is a set of recipes cooked together in one slot, with the least it can cost at the current prices.
type dish struct {
	recipes []int
	cost    int64 // with every recipe eaten by some class
	base    int64 // with every class at its cheapest plate
	cook    int
	burden  int64     // of cooking its recipes
	kcal    []span    // of each class of the problem, zero where it does not eat here
	plates  [][]plate // what each class of the problem can eat from the dish, cheapest first
}

// plate is one recipe as one class eats it.
type plate struct {
	recipe  int16
	serving *Serving
	value   int64
	cost    int64 // priced
}

// span is the least and most kcal a class can eat.
type span struct{ least, most int }

// dishLister lists the sets of recipes of a slot that cost at most cutoff.
type dishLister struct {
	m      *model
	s      *slot
	pick   slotPick // its cells and uses are those of the slot
	cutoff int64
	later  [][]int64 // [class][candidate]: cheapest cell of this candidate and all later ones
	chosen []int     // candidates
	work   int64
	list   []dish
	cut    bool // some dish cost more than cutoff
}

func newDishLister(m *model, s *slot, p *prices, use []int64) *dishLister {
	l := &dishLister{m: m, s: s}
	l.pick.solve(s, p, use)
	return l
}

// served tells whether some dish serves every class of the slot.
func (l *dishLister) served() bool { return l.idle() || len(l.pick.cooked) > 0 }

// idle tells that nobody eats here, so nothing is cooked.
func (l *dishLister) idle() bool { return len(l.s.classes) == 0 && !l.s.fixed }

// run lists the dishes that cost at most slack more than the cheapest, cheapest first.
func (l *dishLister) run(slack int64, steps *budget) []dish {
	if l.idle() {
		return []dish{{kcal: make([]span, len(l.m.p.Classes)), plates: make([][]plate, len(l.m.p.Classes))}}
	}
	l.cutoff, l.list, l.chosen, l.cut, l.work = l.pick.best+slack, nil, nil, false, 0
	if l.s.fixed {
		for c := range l.s.candidates {
			l.chosen = append(l.chosen, c)
		}
		l.keep(l.pick.best, l.pick.best)
	} else {
		l.prepareLater()
		l.extend(0, 0, slices.Repeat([]int64{never}, len(l.s.classes)))
	}
	steps.spend(l.work)
	slices.SortFunc(l.list, func(a, b dish) int {
		if c := cmp.Compare(a.cost, b.cost); c != 0 {
			return c
		}
		return slices.Compare(a.recipes, b.recipes)
	})
	return l.list
}

func (l *dishLister) prepareLater() {
	n := len(l.s.candidates)
	l.later = nil
	for i := range l.s.classes {
		later := make([]int64, n+1)
		later[n] = never
		for c := n - 1; c >= 0; c-- {
			later[c] = min(later[c+1], l.pick.cost[i][c])
		}
		l.later = append(l.later, later)
	}
}

// extend adds each candidate from the index on to the chosen ones, whose use costs sum and whose cheapest cells are least.
func (l *dishLister) extend(from int, sum int64, least []int64) {
	cheapest := make([]int64, len(least))
	for c := from; c < len(l.s.candidates); c++ {
		l.work += int64(len(least) + 1)
		bound, cost, served := sum, sum+l.pick.use[c], true
		for i, v := range least {
			bound += min(v, l.later[i][c])
			cheapest[i] = min(v, l.pick.cost[i][c])
			served = served && cheapest[i] < never
			cost += min(cheapest[i], never/int64(len(least)))
		}
		if bound > l.cutoff {
			l.cut = true // no later candidate can do better
			return
		}
		l.chosen = append(l.chosen, c)
		if served {
			l.weigh(cost, cheapest)
		}
		if len(l.chosen) < l.s.pots {
			l.extend(c+1, sum+l.pick.use[c], slices.Clone(cheapest))
		}
		l.chosen = l.chosen[:len(l.chosen)-1]
	}
}

// weigh keeps the chosen recipes if they cost little enough with each of them eaten: a dish with a recipe that nobody eats is a smaller
// dish. Base is their cost with every class at its cheapest plate. A recipe that is nobody's cheapest moves at least one class.
func (l *dishLister) weigh(base int64, cheapest []int64) {
	cost := base
	for _, c := range l.chosen {
		move := int64(never)
		for i, v := range cheapest {
			move = min(move, l.pick.cost[i][c]-v)
		}
		cost += move
	}
	if cost > l.cutoff {
		l.cut = true
		return
	}
	l.keep(cost, base)
}

func (l *dishLister) keep(cost, base int64) {
	classes := len(l.m.p.Classes)
	d := dish{cost: cost, base: base, kcal: make([]span, classes), plates: make([][]plate, classes)}
	for _, c := range l.chosen {
		r := l.s.candidates[c]
		d.recipes = append(d.recipes, r)
		d.cook += l.s.offers.minutes[r]
		d.burden += l.s.offers.burden[r]
	}
	for i, g := range l.s.classes {
		d.plates[g] = l.platesOf(i, g)
		d.kcal[g] = reach(d.plates[g])
	}
	l.work += int64(len(d.recipes) * classes)
	l.list = append(l.list, d)
}

// platesOf lists what class g, the slot's i-th, can eat of the chosen recipes.
func (l *dishLister) platesOf(i, g int) []plate {
	var plates []plate
	for _, c := range l.chosen {
		r := l.s.candidates[c]
		if v := l.s.serving(r, g); v.Served {
			plates = append(plates, plate{int16(r), v, l.s.cellValue(g, r), l.pick.cost[i][c]})
		}
	}
	slices.SortStableFunc(plates, func(a, b plate) int { return cmp.Compare(a.cost, b.cost) })
	return plates
}

// reach is the least and most kcal of the plates.
func reach(plates []plate) span {
	s := span{maxFigure + 1, -1}
	for _, p := range plates {
		s.least, s.most = min(s.least, p.serving.Kcal), max(s.most, p.serving.Kcal)
	}
	return s
}
