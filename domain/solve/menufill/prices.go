package menufill

// scale is the fixed-point unit of prices: one unit of the objective is 1<<scale. Prices are integers so that bounds are exact and
// the same on every machine.
const scale = 10

// prices are the Lagrangean multipliers of all rules but the choice within a slot. Any prices give a valid bound.
type prices struct {
	m *model
	// floor[g][d] is paid for each kcal of class g on day d up to the minimum, ceiling charged for each up to the maximum.
	floor, ceiling [][]int64
	// protein[g][d] is paid for each tenth of a gram, at least 0.
	protein [][]int64
	want    [][][]int64 // [want][class][day] paid for each unit that is wanted, from 0 to what missing it costs
	cook    []int64     // charged for each cook minute of a day, at least 0
	total   []int64     // paid for each kcal of a class on any day, at least 0
	repeat  []int64     // charged for each use of a recipe, at least 0
	window  []int64     // charged for each use of the window's recipe on its days, at least 0
}

func newPrices(m *model) *prices {
	p := &prices{m: m, cook: make([]int64, m.p.Days), total: make([]int64, len(m.p.Classes)),
		repeat: make([]int64, len(m.p.Recipes)), window: make([]int64, len(m.windows))}
	for range m.p.Wants {
		var classes [][]int64
		for range m.p.Classes {
			classes = append(classes, make([]int64, m.p.Days))
		}
		p.want = append(p.want, classes)
	}
	for range m.p.Classes {
		p.floor = append(p.floor, make([]int64, m.p.Days))
		p.ceiling = append(p.ceiling, make([]int64, m.p.Days))
		p.protein = append(p.protein, make([]int64, m.p.Days))
	}
	return p
}

func (p *prices) clone() *prices {
	c := newPrices(p.m)
	copy(c.cook, p.cook)
	copy(c.total, p.total)
	copy(c.repeat, p.repeat)
	copy(c.window, p.window)
	for k := range p.want {
		for g := range p.want[k] {
			copy(c.want[k][g], p.want[k][g])
		}
	}
	for g := range p.floor {
		copy(c.floor[g], p.floor[g])
		copy(c.ceiling[g], p.ceiling[g])
		copy(c.protein[g], p.protein[g])
	}
	return c
}

// use is what cooking recipe r on day d costs through the rules that tie days together.
func (p *prices) use(r, d int) int64 {
	cost := p.repeat[r]
	for _, w := range p.m.byRecipe[r] {
		if v := p.m.windows[w]; v.first <= d && d <= v.last && !v.single() {
			cost += p.window[w]
		}
	}
	return cost
}

// hardUse is use without the families, which may be used again at a charge.
func (p *prices) hardUse(r, d int) int64 {
	cost := p.repeat[r]
	for _, w := range p.m.byRecipe[r] {
		if v := p.m.windows[w]; v.most == 0 && v.first <= d && d <= v.last && !v.single() {
			cost += p.window[w]
		}
	}
	return cost
}

// allUse is what cooking recipe r on day d costs through the rules that tie days or slots together.
func (p *prices) allUse(r, d int) int64 {
	cost := p.repeat[r]
	for _, w := range p.m.byRecipe[r] {
		if v := p.m.windows[w]; v.first <= d && d <= v.last {
			cost += p.window[w]
		}
	}
	return cost
}

// cooking is what cooking recipe r in the slot costs besides its use: its minutes and its burden.
func (p *prices) cooking(s *slot, r int) int64 {
	return p.cook[s.day]*int64(s.offers.minutes[r]) + s.offers.burden[r]<<scale
}

// linkConstant is what the bound gains from the rules that tie days together, whatever is cooked.
func (p *prices) linkConstant() int64 {
	var sum int64
	for r, price := range p.repeat {
		if price > 0 {
			sum -= price * p.freeUses(r)
			sum += p.repeatCost(p.freeUses(r))
		}
	}
	for w, price := range p.window {
		if !p.m.windows[w].single() {
			sum -= price
		}
	}
	for g, price := range p.total {
		sum += price * int64(p.m.p.Classes[g].EnergyTotal)
	}
	return sum
}

// freeUses is the number of uses of r that earns most at its price: all of them once the price passes the cost of a repeat.
func (p *prices) freeUses(r int) int64 {
	if p.repeat[r] > int64(p.m.p.Weights.Repeat)<<scale {
		return int64(p.m.maxRepeats[r])
	}
	return int64(min(1, p.m.maxRepeats[r]))
}

// repeatCost is the cost of repeats of a recipe with so many uses, in price units.
func (p *prices) repeatCost(uses int64) int64 {
	return max(0, uses-1) * int64(p.m.p.Weights.Repeat) << scale
}

// dayConstant is what the bound of day d gains from the rules inside the day.
func (p *prices) dayConstant(d int) int64 {
	sum := -p.cook[d] * int64(p.m.p.CookMinutes[d])
	for _, w := range p.m.singles[d] {
		sum -= p.window[w]
	}
	for g := range p.floor {
		if !p.m.eats[g][d] {
			continue
		}
		class := &p.m.p.Classes[g]
		sum += p.floor[g][d]*int64(class.EnergyMin[d]) - p.ceiling[g][d]*int64(class.EnergyMax[d])
		sum += p.protein[g][d] * int64(class.ProteinMin[d])
		for k := range p.want {
			sum += p.want[k][g][d] * int64(class.Wants[k][d])
		}
	}
	return sum
}

// cell is the priced cost of class g eating r in slot s.
func (p *prices) cell(s *slot, g, r int) int64 {
	v := s.serving(r, g)
	cost := s.cellValue(g, r)<<scale - (p.floor[g][s.day]-p.ceiling[g][s.day]+p.total[g])*int64(v.Kcal) - p.protein[g][s.day]*int64(v.ProteinDg)
	for k := range p.want {
		cost -= p.want[k][g][s.day] * int64(v.Amounts[k])
	}
	return cost
}
