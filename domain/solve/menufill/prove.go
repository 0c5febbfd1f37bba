package menufill

// prover looks through every plan that could be better than the best one, over pools that hold every menu such a plan can have.
type prover struct {
	m      *model
	steps  *budget
	mark   int64
	pools  []pool
	rest   []int64 // least priced cost of this day and all later ones
	limit  int64   // priced cost that a better plan stays under
	a      *assembly
	best   score
	answer []dayMenu
}

// prove searches for a plan that costs less than limit until the work mark. It returns the plan, nil if there is none, and whether it looked
// at all; the pools must be complete for such plans.
func prove(m *model, p *prices, pools []pool, limit, mark int64, steps *budget) ([]dayMenu, score, bool) {
	v := &prover{m: m, steps: steps, mark: mark, pools: pools, a: newAssembly(m), best: score{broken: 1, cost: limit}}
	v.rest = make([]int64, len(pools)+1)
	for d := len(pools) - 1; d >= 0; d-- {
		v.rest[d] = v.rest[d+1] + pools[d].bound
	}
	v.limit = limit
	finished := v.descend(0, p.linkConstant(), 0)
	return v.answer, v.best, finished
}

func (v *prover) descend(d int, priced, cost int64) bool {
	if d == len(v.pools) {
		if v.a.short().broken == 0 {
			v.best = score{cost: cost}
			v.limit = cost
			v.answer = append([]dayMenu(nil), v.a.menus...)
		}
		return true
	}
	menus := v.pools[d].menus
	for k := range menus {
		if v.steps.past(v.mark) {
			return false
		}
		v.steps.spend(3)
		if priced+menus[k].reduced+v.rest[d+1] >= v.limit {
			return true
		}
		add := v.a.marginal(d, &menus[k])
		if add.broken > 0 || cost+add.cost >= v.best.cost {
			continue
		}
		v.a.put(d, menus[k])
		finished := v.descend(d+1, priced+menus[k].reduced, cost+add.cost)
		v.a.free(d)
		if !finished {
			return false
		}
	}
	return true
}
