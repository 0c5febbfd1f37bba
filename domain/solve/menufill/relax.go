package menufill

// relaxed is the answer to the problem with all rules priced but the choice within each slot.
type relaxed struct {
	bound   int64   // price units
	kcal    [][]int // [class][day]
	protein [][]int
	amounts [][][]int // [want][class][day]
	cook    []int
	uses    []int // of each recipe
	windows []int // uses inside each window
}

func newRelaxed(m *model) relaxed {
	r := relaxed{cook: make([]int, m.p.Days), uses: make([]int, len(m.p.Recipes)), windows: make([]int, len(m.windows))}
	for range m.p.Wants {
		var classes [][]int
		for range m.p.Classes {
			classes = append(classes, make([]int, m.p.Days))
		}
		r.amounts = append(r.amounts, classes)
	}
	for range m.p.Classes {
		r.kcal = append(r.kcal, make([]int, m.p.Days))
		r.protein = append(r.protein, make([]int, m.p.Days))
	}
	return r
}

func (r *relaxed) reset() {
	r.bound = 0
	for g := range r.kcal {
		clear(r.kcal[g])
		clear(r.protein[g])
	}
	for k := range r.amounts {
		for g := range r.amounts[k] {
			clear(r.amounts[k][g])
		}
	}
	clear(r.cook)
	clear(r.uses)
	clear(r.windows)
}

// count notes that recipe r is cooked on day d.
func (r *relaxed) count(m *model, recipe, d int) {
	r.uses[recipe]++
	for _, w := range m.byRecipe[recipe] {
		if m.windows[w].first <= d && d <= m.windows[w].last {
			r.windows[w]++
		}
	}
}

// pickWork is how many looks of a slotPick take the time of one step.
const pickWork = 4

// relaxer evaluates prices slot by slot; its buffers are reused.
type relaxer struct {
	m      *model
	steps  *budget
	use    []int64 // price of using each recipe on the day looked at
	pick   slotPick
	picked int // slot that pick answered last
	out    relaxed
}

func newRelaxer(m *model, steps *budget) *relaxer {
	return &relaxer{m: m, steps: steps, out: newRelaxed(m), use: make([]int64, len(m.p.Recipes))}
}

// evaluate returns the bound that the prices prove and by how much its answer breaks each rule. The result is valid until the
// next call.
func (x *relaxer) evaluate(p *prices) *relaxed {
	x.out.reset()
	x.out.bound = p.linkConstant()
	for d := range x.m.byDay {
		x.day(p, d)
	}
	return &x.out
}

// evaluateDay is evaluate for day d alone, the rules between days apart.
func (x *relaxer) evaluateDay(p *prices, d int) *relaxed {
	x.out.reset()
	x.day(p, d)
	return &x.out
}

func (x *relaxer) day(p *prices, d int) {
	x.out.bound += p.dayConstant(d)
	x.picked = -1
	for _, i := range x.m.byDay[d] {
		for _, r := range x.m.slots[i].candidates {
			x.use[r] = p.allUse(r, d)
		}
		x.slot(p, i)
	}
}

func (x *relaxer) slot(p *prices, i int) {
	s := &x.m.slots[i]
	if s.twin < 0 || s.twin != x.picked { // else the slot just before was exactly alike, and so is the answer
		x.pick.solve(s, p, x.use)
		x.steps.spend(x.pick.work / pickWork)
	}
	x.picked = i
	x.out.bound += x.pick.best
	for _, r := range x.pick.cooked {
		x.out.cook[s.day] += s.offers.minutes[r]
		x.out.count(x.m, r, s.day)
	}
	for k, g := range s.classes {
		v := s.serving(x.pick.eaten[k], g)
		x.out.kcal[g][s.day] += v.Kcal
		x.out.protein[g][s.day] += v.ProteinDg
	}
}

// poolRelaxer evaluates prices between days over the menus of the pools alone.
type poolRelaxer struct {
	m     *model
	pools []pool
	steps *budget
	out   relaxed
}

// pooledMenus is how many menus of each day are looked at.
const pooledMenus = 600

// evaluate is the bound if the pools held every menu.
func (x *poolRelaxer) evaluate(p *prices) *relaxed {
	x.out.reset()
	x.out.bound = p.linkConstant()
	for d := range x.pools {
		use, pick, least := p.linkPrices(d), 0, int64(never)
		menus := x.pools[d].menus
		menus = menus[:min(len(menus), pooledMenus)]
		for k := range menus {
			cost := menus[k].value << scale
			for _, r := range menus[k].cooked {
				cost += use[r]
			}
			for g, kcal := range menus[k].kcal {
				cost -= p.total[g] * int64(kcal)
			}
			if cost < least {
				pick, least = k, cost
			}
		}
		x.steps.spend(int64(3 * len(menus)))
		x.out.bound += least
		for _, r := range menus[pick].cooked {
			x.out.count(x.m, int(r), d)
		}
		for g, kcal := range menus[pick].kcal {
			x.out.kcal[g][d] = int(kcal)
		}
	}
	return &x.out
}
