package fairsplit

import "math"

// clash is a game between shares of the items, which try to keep every limit, and prices
// of the limits, which try to make the items dear. Its value is the part by which limits
// are passed at least, if items could be cut up; the primal-dual method of the market
// finds it.
type clash struct {
	in     *instance
	rows   *crumbs // of the first morning
	active []int32 // rows that could bind
	limit  []float64
	share  []float64
	steps  int64
	budget int64
}

func newClash(in *instance) *clash {
	b := bounds{day: make([]int64, in.days)}
	for d := range b.day {
		b.day[d] = in.unit
	}
	c := &clash{in: in, rows: newCrumbs(in, b, []int64{1}, 24)}
	c.limit = make([]float64, c.rows.rows)
	grams, bulk := 0.0, 0.0
	energy := make([]float64, in.classes)
	for _, j := range in.movable {
		grams, bulk = grams+float64(in.mass[j]), bulk+float64(in.bulk[j])
		if class := in.class[j]; class >= 0 {
			energy[class] += float64(in.energy[j])
		}
	}
	set := func(row int, limit int64, all float64) {
		if float64(limit) < all {
			c.limit[row] = max(float64(limit), all/1000)
			c.active = append(c.active, int32(row))
		}
	}
	for i := range in.members {
		set(c.rows.massRow(i), int64(in.maxGrams[i]-in.pinned[i*in.days]), grams)
		set(c.rows.bulkRow(i), in.room[i]-in.pinnedBulk[i], bulk)
		for class, cap := range in.classCap {
			set(c.rows.classRow(i, class), cap-in.pinnedClass[i*in.classes+class], energy[class])
		}
	}
	return c
}

// each calls f for the limits that a cell counts for with a member, with the part of them that
// it takes.
func (c *clash) each(g, i int, f func(row int, part float64)) {
	cell := &c.rows.cells[g]
	if row := c.rows.massRow(i); c.limit[row] > 0 {
		f(row, cell.mass/c.limit[row])
	}
	if row := c.rows.bulkRow(i); c.limit[row] > 0 {
		f(row, cell.bulk/c.limit[row])
	}
	if cell.class >= 0 {
		if row := c.rows.classRow(i, cell.class); c.limit[row] > 0 {
			f(row, cell.energy/c.limit[row])
		}
	}
}

// prices gives whole prices that prove that the limits cannot be kept together, or nil.
func (c *clash) prices() []int64 {
	const most, block = 6000, 50
	if len(c.active) == 0 || len(c.rows.cells) == 0 {
		return nil
	}
	n := c.in.members
	c.share = make([]float64, len(c.rows.cells)*n)
	meanShare, ahead := make([]float64, len(c.share)), make([]float64, len(c.share))
	price, mean, used := make([]float64, c.rows.rows), make([]float64, c.rows.rows), make([]float64, c.rows.rows)
	for _, row := range c.active {
		price[row] = 1 / float64(len(c.active))
	}
	for g := range c.rows.cells {
		for _, i := range c.rows.cells[g].allowed {
			c.share[g*n+int(i)] = 1 / float64(len(c.rows.cells[g].allowed))
		}
	}
	copy(ahead, c.share)
	rowStep, cellStep := c.stepSizes()
	cost := make([]float64, n)
	count := 0.0
	for round := 1; round <= most; round++ {
		c.use(ahead, used)
		for _, row := range c.active {
			price[row] += float64(rowStep * used[row])
		}
		ontoSimplex(price, c.active)
		for g := range c.rows.cells {
			share := c.share[g*n : (g+1)*n]
			for _, i := range c.rows.cells[g].allowed {
				sum := 0.0
				c.each(g, int(i), func(row int, part float64) { sum += float64(price[row] * part) })
				cost[i] = share[i] - float64(cellStep*sum)
			}
			ontoSimplex(cost, c.rows.cells[g].allowed)
			for _, i := range c.rows.cells[g].allowed {
				ahead[g*n+int(i)] = 2*cost[i] - share[i]
				share[i] = cost[i]
			}
		}
		count++
		for x, v := range c.share {
			meanShare[x] += float64((v - meanShare[x]) / count)
		}
		for x, v := range price {
			mean[x] += float64((v - mean[x]) / count)
		}
		c.steps += int64(2 * len(c.share))
		if round%block != 0 {
			continue
		}
		c.use(meanShare, used)
		over := math.Inf(-1)
		for _, row := range c.active {
			over = max(over, used[row])
		}
		if over <= 1 {
			return nil // cut up, the items keep all limits
		}
		if whole := c.whole(mean); whole != nil && (round >= 20*block || c.steps >= c.budget) {
			return whole
		}
		if c.steps >= c.budget {
			return nil
		}
		if int(count) >= 4*block && round%(8*block) == 0 {
			copy(c.share, meanShare)
			copy(price, mean)
			copy(ahead, meanShare)
			count = 0
		}
	}
	return nil
}

// use sums up which part of each limit shares take.
func (c *clash) use(share, used []float64) {
	clear(used)
	n := c.in.members
	for g := range c.rows.cells {
		for _, i := range c.rows.cells[g].allowed {
			if v := share[g*n+int(i)]; v != 0 {
				c.each(g, int(i), func(row int, part float64) { used[row] += float64(v * part) })
			}
		}
	}
}

// stepSizes are small enough for both sides to settle.
func (c *clash) stepSizes() (row, cell float64) {
	sums := make([]float64, c.rows.rows)
	widest, tallest := 0.0, 0.0
	for g := range c.rows.cells {
		for _, i := range c.rows.cells[g].allowed {
			sum := 0.0
			c.each(g, int(i), func(row int, part float64) {
				sum += part
				sums[row] += part
			})
			widest = max(widest, sum)
		}
	}
	for _, sum := range sums {
		tallest = max(tallest, sum)
	}
	norm := math.Sqrt(float64(widest * tallest))
	spread := math.Sqrt(float64(len(c.rows.cells)))
	return 0.9 / (norm * spread), 0.9 * spread / norm
}

// whole makes prices whole, and gives them if they prove something.
func (c *clash) whole(price []float64) []int64 {
	whole := make([]int64, len(price))
	for _, row := range c.active {
		if price[row] > 1e-9 {
			whole[row] = int64(price[row] / c.limit[row] * grain)
		}
	}
	if short, ok := c.rows.leastCost(whole); ok && short > 0 {
		return whole
	}
	return nil
}
