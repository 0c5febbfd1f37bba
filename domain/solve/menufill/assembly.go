package menufill

import "math/bits"

// assembly is one menu for every day, with what the rules between days count.
type assembly struct {
	m       *model
	menus   []dayMenu  // of each day; cells nil while the day is free
	cooked  []uint64   // [recipe] days that cook it, one bit a day
	kcal    []int64    // of each class whose trip total binds
	near    [][]uint64 // [recipe][day] days too close to that day, itself included
	repeats int64      // objective of one repeat
	kin     kinship

	penalty      int64   // cost of a broken rule, in price units
	shortPenalty []int64 // cost of each kcal a class misses over the trip, in price units
}

// score tells how good a plan is: the rules between days it breaks, and its cost in price units, each broken rule paid for.
type score struct {
	broken int
	cost   int64
}

func (s score) plus(t score) score { return score{s.broken + t.broken, s.cost + t.cost} }

// beats tells that s is the better plan to return: plans that keep all rules first.
func (s score) beats(t score) bool {
	if (s.broken == 0) != (t.broken == 0) {
		return s.broken == 0
	}
	return s.cost < t.cost
}

func newAssembly(m *model) *assembly {
	a := &assembly{m: m, menus: make([]dayMenu, m.p.Days), cooked: make([]uint64, len(m.p.Recipes)),
		kcal: make([]int64, len(m.p.Classes)), repeats: int64(m.p.Weights.Repeat), kin: newKinship(m), shortPenalty: make([]int64, len(m.p.Classes))}
	for r := range m.p.Recipes {
		gap, near := m.p.Recipes[r].GapDays, make([]uint64, m.p.Days)
		for d := range near {
			first, last := max(0, d-gap), min(m.p.Days-1, d+gap)
			near[d] = (1<<(last+1) - 1) &^ (1<<first - 1)
		}
		a.near = append(a.near, near)
	}
	return a
}

func (a *assembly) put(d int, menu dayMenu) {
	a.menus[d] = menu
	for _, r := range menu.cooked {
		a.cooked[r] |= 1 << d
	}
	for g, k := range menu.kcal {
		a.kcal[g] += int64(k)
	}
	a.kin.put(d, menu.kin, 1)
}

func (a *assembly) free(d int) {
	for _, r := range a.menus[d].cooked {
		a.cooked[r] &^= 1 << d
	}
	for g, k := range a.menus[d].kcal {
		a.kcal[g] -= int64(k)
	}
	a.kin.put(d, a.menus[d].kin, -1)
	a.menus[d] = dayMenu{}
}

// marginal is what putting the menu on the free day d adds, the trip's energy apart.
func (a *assembly) marginal(d int, menu *dayMenu) score {
	value, broken := menu.value+a.kin.marginal(d, menu.kin), 0
	for _, r := range menu.cooked {
		days := a.cooked[r]
		if days == 0 {
			continue
		}
		value += a.repeats
		broken += bits.OnesCount64(days & a.near[r][d])
		if bits.OnesCount64(days) >= a.m.maxRepeats[r] {
			broken++
		}
	}
	return score{broken, value<<scale + int64(broken)*a.penalty}
}

// short is what the missing energy of the trip costs.
func (a *assembly) short() score {
	var s score
	for g, binds := range a.m.totalBinds {
		if missing := int64(a.m.p.Classes[g].EnergyTotal) - a.kcal[g]; binds && missing > 0 {
			s.broken++
			s.cost += missing * a.shortPenalty[g]
		}
	}
	return s
}

// links is the score of the plan as it stands, the trip's energy apart.
func (a *assembly) links() score {
	value, broken := a.kin.total(), 0
	for r, days := range a.cooked {
		uses := bits.OnesCount64(days)
		value += a.repeats * int64(max(0, uses-1))
		broken += max(0, uses-a.m.maxRepeats[r])
		for rest := days; rest != 0; rest &= rest - 1 {
			d := bits.TrailingZeros64(rest)
			broken += bits.OnesCount64(rest & a.near[r][d] &^ (1 << d))
		}
	}
	for d := range a.menus {
		value += a.menus[d].value
	}
	return score{broken, value<<scale + int64(broken)*a.penalty}
}

func (a *assembly) score() score { return a.links().plus(a.short()) }

// setPenalties makes each broken rule between days cost a third of a day's food, and each missing kcal more than any food costs, times
// factor.
func (a *assembly) setPenalties(p *prices, dayValue int64, factor int64) {
	a.penalty = factor * max(1, dayValue/3) << scale
	for g := range a.shortPenalty {
		daily := max(1, int64(a.m.p.Classes[g].EnergyTotal/a.m.p.Days))
		a.shortPenalty[g] = factor * max(1, 2*p.total[g], dayValue<<scale/daily)
	}
}
