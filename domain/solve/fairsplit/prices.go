package fairsplit

import "math"

// state is where a solution of the crumbs stands: shares of the cells, the largest
// burden of each day, and a price for each row.
type state struct {
	share  []float64 // per cell and member
	burden []float64 // per day
	price  []float64 // per row
}

func (k *crumbs) newState() state {
	return state{make([]float64, len(k.cells)*k.in.members), make([]float64, k.days), make([]float64, k.rows)}
}

func (s state) copyTo(t state) {
	copy(t.share, s.share)
	copy(t.burden, s.burden)
	copy(t.price, s.price)
}

// towards moves s by a part of the way to t.
func (s state) towards(t state, part float64) {
	for _, pair := range [3][2][]float64{{s.share, t.share}, {s.burden, t.burden}, {s.price, t.price}} {
		for n, v := range pair[1] {
			pair[0][n] += float64((v - pair[0][n]) * part)
		}
	}
}

// market finds shares and prices that fit each other by the primal-dual hybrid
// gradient method (Chambolle and Pock 2011), restarted from its averages with the
// weight between both sides adapted (Applegate and others 2021). Products are
// rounded before they are added, so that every machine finds the same prices.
type market struct {
	*crumbs
	now, mean, start state
	ahead            state // shares and burdens extrapolated
	sums             []float64
	perGram, perLeft []float64 // price of a gram by last day, then member
	perBulk          []float64
	perEnergy        []float64 // by class, then member
	asked            []float64
	weighing         float64 // of prices against shares
	count            float64 // states in the mean
	best             float64 // largest bound seen, about
	bestPrice        []float64
	steps            int64
}

// newMarket opens a market with the shares of a whole split, or with the shares and
// prices of an earlier market whose days are the first or all of this one.
func newMarket(k *crumbs, carrier []int32, before *market) *market {
	in := k.in
	m := &market{crumbs: k, now: k.newState(), mean: k.newState(), start: k.newState(), ahead: k.newState(), weighing: 1.0 / 8, best: math.Inf(-1)}
	m.sums, m.bestPrice = make([]float64, k.rows), make([]float64, k.rows)
	m.perGram, m.perLeft = make([]float64, k.days*in.members), make([]float64, k.days*in.members)
	m.perBulk, m.perEnergy = make([]float64, in.members), make([]float64, in.classes*in.members)
	m.asked = make([]float64, in.members)
	m.firstPrices()
	if before == nil {
		m.shareOut(func(j int32, share []float64, part float64) { share[carrier[j]] += part })
	} else {
		m.goOn(before)
	}
	m.now.copyTo(m.start)
	return m
}

// shareOut adds up the shares of the cells from those of their items.
func (m *market) shareOut(of func(j int32, share []float64, part float64)) {
	n := m.in.members
	for g := range m.cells {
		c := &m.cells[g]
		for _, j := range c.items {
			part := 1 / float64(len(c.items))
			if c.mass > 0 {
				part = float64(m.in.mass[j]) / c.mass
			}
			of(j, m.now.share[g*n:(g+1)*n], part)
		}
	}
}

// goOn takes over the shares and prices of an earlier market.
func (m *market) goOn(before *market) {
	in := m.in
	n := in.members
	cellOf := make([]int, in.items)
	for g := range before.cells {
		for _, j := range before.cells[g].items {
			cellOf[j] = g
		}
	}
	m.shareOut(func(j int32, share []float64, part float64) {
		for i, v := range before.now.share[cellOf[j]*n : (cellOf[j]+1)*n] {
			share[i] += float64(v * part)
		}
	})
	weight := 1.0
	if before.days < m.days {
		weight = m.weight[0]
	}
	for i := range n {
		for d := range before.days {
			m.now.price[i*m.days+d] = float64(before.now.price[i*before.days+d] * weight)
		}
		m.now.price[m.massRow(i)] = float64(before.now.price[before.massRow(i)] * weight)
		m.now.price[m.bulkRow(i)] = float64(before.now.price[before.bulkRow(i)] * weight)
		for c := range in.classes {
			m.now.price[m.classRow(i, c)] = float64(before.now.price[before.classRow(i, c)] * weight)
		}
	}
	m.now.burden[0] = before.now.burden[0]
}

// firstPrices are those of the water level: a gram costs the same with all who are not
// full.
func (m *market) firstPrices() {
	in := m.in
	for d, weight := range m.weight {
		m.now.burden[d] = 1
		full := func(i int) bool { return d == 0 && m.unit[m.massRow(i)] <= m.unit[i*m.days] }
		open := 0.0 // what the level is for all who set it
		for i := range in.members {
			if m.pinned[i*m.days+d] < 1 && !full(i) {
				open += m.unit[i*m.days+d]
			}
		}
		for i := range in.members {
			switch {
			case m.pinned[i*m.days+d] >= 1 || open == 0:
			case full(i):
				m.now.price[m.massRow(i)] = float64(weight*m.unit[m.massRow(i)]) / open
			default:
				m.now.price[i*m.days+d] = float64(weight*m.unit[i*m.days+d]) / open
			}
		}
	}
}

// run trades for so many steps of work, until shares and prices agree to within a
// tolerance, or a context ends.
func (m *market) run(budget int64, tolerance float64, stop func() bool) {
	const check = 40
	m.sumUp(m.now.share, m.now.burden)
	m.now.copyTo(m.ahead)
	restarted := m.distance(m.now)
	since := 0
	for m.steps < budget && !stop() {
		for range check {
			m.trade()
			m.count++
			m.mean.towards(m.now, 1/m.count)
		}
		since += check
		ofMean, ofNow := m.distance(m.mean), m.distance(m.now)
		nearest, s := ofMean, m.mean
		if ofNow < ofMean {
			nearest, s = ofNow, m.now
		}
		if nearest > 0.4*restarted && since < 1000 && nearest > tolerance {
			m.sumUp(m.ahead.share, m.ahead.burden)
			continue
		}
		m.restart(s)
		restarted, since = nearest, 0
		if nearest <= tolerance {
			return
		}
	}
	m.restart(m.mean)
}

func (m *market) restart(s state) {
	if m.count == 0 {
		return
	}
	s.copyTo(m.now)
	moved, priced := 0.0, 0.0
	for g := range m.cells {
		for i := range m.in.members {
			v := m.now.share[g*m.in.members+i] - m.start.share[g*m.in.members+i]
			moved += float64(v*v) / m.cellStep[g]
		}
	}
	for row, step := range m.rowStep {
		v := m.now.price[row] - m.start.price[row]
		priced += float64(v*v) / step
	}
	if moved > 1e-12 && priced > 1e-12 {
		m.weighing = min(max(0.01, math.Sqrt(float64(m.weighing*math.Sqrt(priced/moved)))), 100)
	}
	m.now.copyTo(m.start)
	m.now.copyTo(m.ahead)
	m.count = 0
	m.sumUp(m.now.share, m.now.burden)
}

// trade is one step: prices follow what is asked for, shares follow the prices.
func (m *market) trade() {
	in := m.in
	n := in.members
	for row, step := range m.rowStep {
		m.now.price[row] = max(0, m.now.price[row]+float64(m.weighing*float64(step*m.sums[row])))
	}
	m.setPrices(m.now.price)
	for g := range m.cells {
		c := &m.cells[g]
		share, ahead := m.now.share[g*n:(g+1)*n], m.ahead.share[g*n:(g+1)*n]
		step := m.cellStep[g] / m.weighing
		m.ask(c)
		for _, i := range c.allowed {
			m.asked[i] = share[i] - float64(step*m.asked[i])
		}
		ontoSimplex(m.asked, c.allowed)
		for _, i := range c.allowed {
			ahead[i] = 2*m.asked[i] - share[i]
			share[i] = m.asked[i]
		}
	}
	for d, weight := range m.weight {
		sum := 0.0
		for i := range n {
			sum += m.now.price[i*m.days+d]
		}
		v := m.now.burden[d] - (weight-sum)/(m.weighing*float64(n))
		v = min(max(0, v), m.ceiling[d])
		m.ahead.burden[d] = 2*v - m.now.burden[d]
		m.now.burden[d] = v
	}
	m.sumUp(m.ahead.share, m.ahead.burden)
	m.steps += 4 * int64(len(m.now.share))
}

// setPrices adds up what a gram costs that is carried to a day.
func (m *market) setPrices(price []float64) {
	in := m.in
	n, days := in.members, m.days
	for i := range n {
		sum := price[m.massRow(i)] / m.unit[m.massRow(i)]
		for d := range days {
			sum += price[i*days+d] / m.unit[i*days+d]
			m.perGram[d*n+i] = sum
		}
		later := 0.0
		for d := days - 1; d >= 0; d-- {
			m.perLeft[d*n+i] = later
			later += price[i*days+d] / m.unit[i*days+d]
		}
		m.perBulk[i] = price[m.bulkRow(i)] / m.unit[m.bulkRow(i)]
		for c := range in.classes {
			m.perEnergy[c*n+i] = price[m.classRow(i, c)] / m.unit[m.classRow(i, c)]
		}
	}
}

// ask works out what a cell costs with each member.
func (m *market) ask(c *cell) {
	n := m.in.members
	perGram, perLeft, perBulk := m.perGram[c.last*n:(c.last+1)*n], m.perLeft[c.last*n:(c.last+1)*n], m.perBulk
	if c.class < 0 && c.left == 0 && c.drops == nil {
		for _, i := range c.allowed {
			m.asked[i] = float64(c.mass*perGram[i]) + float64(c.bulk*perBulk[i])
		}
		return
	}
	class := max(0, c.class)
	mass := func(i int32) float64 { return float64(c.mass * perGram[i]) }
	if c.drops != nil {
		mass = func(i int32) float64 {
			sum := 0.0
			for d, drop := range c.drops {
				sum += float64(drop * m.perGram[d*n+int(i)])
			}
			return sum
		}
	}
	perEnergy, energy := perBulk, 0.0
	if c.class >= 0 {
		perEnergy, energy = m.perEnergy[class*n:(class+1)*n], c.energy
	}
	for _, i := range c.allowed {
		m.asked[i] = mass(i) + float64(c.bulk*perBulk[i]) + float64(c.left*perLeft[i]) + float64(energy*perEnergy[i])
	}
}

// sumUp works out by how much shares are above the rows' limits and the days' burdens.
func (m *market) sumUp(share, burden []float64) {
	in := m.in
	n, days := in.members, m.days
	clear(m.sums)
	for g := range m.cells {
		c := &m.cells[g]
		for _, i32 := range c.allowed {
			part := share[g*n+int(i32)]
			if part == 0 {
				continue
			}
			i := int(i32)
			if c.drops == nil {
				m.sums[i*days+c.last] += float64(c.mass * part)
			}
			for d, drop := range c.drops {
				m.sums[i*days+d] += float64(drop * part)
			}
			m.sums[m.bulkRow(i)] += float64(c.bulk * part)
			if c.class >= 0 {
				m.sums[m.classRow(i, c.class)] += float64(c.energy * part)
			}
			if c.left > 0 {
				// On the days up to the last the residue is part of the mass.
				m.sums[i*days+c.last] -= float64(c.left * part)
				m.sums[i*days+days-1] += float64(c.left * part)
			}
		}
	}
	for i := range n {
		sum := 0.0
		for d := days - 1; d >= 0; d-- {
			sum += m.sums[i*days+d]
			m.sums[i*days+d] = sum
		}
		m.sums[m.massRow(i)] = sum
	}
	for row := range m.sums {
		m.sums[row] = m.sums[row]/m.unit[row] + m.pinned[row]
	}
	for i := range n {
		for d := range days {
			m.sums[i*days+d] -= burden[d]
		}
	}
}

// distance tells how far a state is from the optimum: what its shares cost, limits
// passed included, less what its prices show to be needed.
func (m *market) distance(s state) float64 {
	in := m.in
	m.sumUp(s.share, s.burden)
	cost, passed := 0.0, 0.0
	for d, weight := range m.weight {
		over := 0.0
		for i := range in.members {
			over = max(over, m.sums[i*m.days+d])
		}
		cost += float64(weight * (s.burden[d] + over))
		passed = max(passed, over, s.burden[d]+over-m.ceiling[d])
	}
	for _, v := range m.sums[in.members*m.days:] {
		passed = max(passed, v)
	}
	bound := m.bound(s.price)
	if bound > m.best {
		m.best = bound
		copy(m.bestPrice, s.price)
	}
	return math.Abs(cost-m.best) + passed
}

// bound is what prices show to be needed, about; priceBound gives it exactly.
func (m *market) bound(price []float64) float64 {
	in := m.in
	value, scale := 0.0, math.Inf(1)
	for d, weight := range m.weight {
		sum := 0.0
		for i := range in.members {
			sum += price[i*m.days+d]
		}
		if m.ceiling[d] < 1e6 && sum > weight {
			value -= float64((sum - weight) * m.ceiling[d])
		} else if sum > 0 {
			scale = min(scale, weight/sum)
		}
	}
	if math.IsInf(scale, 1) {
		return math.Inf(-1)
	}
	m.setPrices(price)
	for row, v := range m.pinned {
		value += float64(price[row] * v)
	}
	for g := range m.cells {
		c := &m.cells[g]
		m.ask(c)
		least := math.Inf(1)
		for _, i := range c.allowed {
			least = min(least, m.asked[i])
		}
		value += least
	}
	if scale < 1 {
		value *= scale
	}
	return value
}

// ontoSimplex moves the named entries of z to the nearest that are not negative and
// add up to 1.
func ontoSimplex(z []float64, named []int32) {
	sum, count := -1.0, float64(len(named))
	for _, i := range named {
		sum += z[i]
	}
	level := sum / count
	for {
		sum, kept := -1.0, 0.0
		for _, i := range named {
			if z[i] > level {
				sum += z[i]
				kept++
			}
		}
		// The level only rises. Rounding could make it fall and rise for ever.
		if kept == 0 || kept == count || sum/kept <= level {
			break
		}
		level, count = sum/kept, kept
	}
	for _, i := range named {
		z[i] = max(0, z[i]-level)
	}
}
