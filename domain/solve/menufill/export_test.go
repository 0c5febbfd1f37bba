package menufill

import "context"

// Cool cools the plan in which every slot has its lightest food, and gives the best that keeps every rule: a menu for each slot and class. Same tells
// whether the running sums agree with a count of the last plan.
func Cool(p Problem, seed uint64, steps int64) (cells [][]int, value int64, same bool) {
	m := newModel(&p)
	if m.cannot() != nil {
		return nil, 0, true
	}
	a := newAnnealer(m, &budget{ctx: context.Background(), limit: steps}, seed)
	if len(a.t.cells) == 0 {
		return nil, 0, true
	}
	for i := range m.slots {
		var pick slotPick
		pick.solve(&m.slots[i], newPrices(m), make([]int64, len(p.Recipes)))
		for k, r := range pick.eaten {
			a.t.current[a.t.first[i]+k] = a.t.cells[a.t.first[i]+k].of[r]
		}
	}
	a.run(a.t.menus(a.t.current), steps)
	now, charged := a.t.value, a.t.charged
	a.t.charge(a.t.charges)
	same = now == a.t.value && charged == a.t.charged
	if len(a.best) == 0 {
		return nil, 0, same
	}
	for d, menu := range a.t.menus(a.best) {
		for local := range m.byDay[d] {
			var row []int
			for _, r := range menu.cells[local*len(p.Classes) : (local+1)*len(p.Classes)] {
				row = append(row, int(r))
			}
			cells = append(cells, row)
		}
	}
	return cells, a.value, same
}
