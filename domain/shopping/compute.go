package shopping

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/resupply"
	"sumpter/domain/solve/wholepacks"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute lists what to buy for the bags of a canonical trip: at home in one
// round of the shops, on the way where a shop stands. Food that keeps is bought
// once, for all boxes and the start together; of food that does not, every
// deadline gets packages of its own. All foods of a place are bought together,
// so that a visit, or a least order, is weighed against what it saves.
func Compute(t *trip.Trip, b bags.Result, r resupply.Result, c cooking.Result) Result {
	var result Result
	needs := gather(t, b, r)
	places := []trip.PointID{0}
	for i := range t.Foods {
		for _, n := range needs[t.Foods[i].ID] {
			if !slices.Contains(places, n.point) {
				places = append(places, n.point)
			}
		}
		result.Lines = append(result.Lines, linesOf(t, &t.Foods[i], needs[t.Foods[i].ID])...)
	}
	for _, place := range places {
		result.buyAt(t, place)
	}
	result.Fuel = fuelLines(t, r, c)
	result.Leftovers = leftovers(t, result.Lines)
	result.addUp(t, r)
	result.Findings = append(result.Findings, result.findings(t)...)
	findings.Sort(result.Findings)
	return result
}

// buyAt buys all lines of one place together.
func (r *Result) buyAt(t *trip.Trip, place trip.PointID) {
	c := newCounter(t, place, false)
	wares := r.waresOf(t, c)
	s := c.solve(wares)
	if len(s.orders) == 0 {
		for i := range wares {
			wares[i].buy(wholepacks.Purchase{Counts: noCounts(&wares[i])}, false)
		}
		return
	}
	best := s.orders[0]
	shared := shareStock(wares, best.Purchases)
	for i := range wares {
		wares[i].buy(best.Purchases[i], best.Proven && !shared[i])
		r.Findings = append(r.Findings, wares[i].findings()...)
	}
	for _, v := range c.visits(wares, best) {
		r.Visits = append(r.Visits, v.onDay(t, r.pickUp(place)))
	}
	for _, name := range s.missed {
		r.Findings = append(r.Findings, leastOrder(t, t.Shop(name)))
	}
	if place == 0 {
		r.Errands = errands(t, r.waresOf, s, c, wares)
	}
}

// waresOf states the lines of a counter's place that need buying.
func (r *Result) waresOf(t *trip.Trip, c *counter) []ware {
	foods := make(map[trip.FoodID]*trip.Food, len(t.Foods))
	for i := range t.Foods {
		foods[t.Foods[i].ID] = &t.Foods[i]
	}
	var wares []ware
	for i := range r.Lines {
		if l := &r.Lines[i]; l.Point == c.point && l.missing() > 0 {
			wares = append(wares, c.ware(l, foods[l.Food]))
		}
	}
	return wares
}

func noCounts(w *ware) [][]int64 {
	counts := make([][]int64, len(w.packages))
	for i := range counts {
		counts[i] = []int64{0}
	}
	return counts
}

// shareStock looks for foods of which several deadlines took more than there
// is, and tells which wares were bought anew because of it.
func shareStock(wares []ware, purchases []wholepacks.Purchase) []bool {
	shared := make([]bool, len(wares))
	for i := 0; i < len(wares); {
		j := i + 1
		for j < len(wares) && wares[j].food == wares[i].food {
			j++
		}
		if j > i+1 && share(wares[i:j], purchases[i:j]) {
			for k := i; k < j; k++ {
				shared[k] = true
			}
		}
		i = j
	}
	return shared
}

// pickUp is when food is bought at a point.
func (r *Result) pickUp(place trip.PointID) units.Date {
	for i := range r.Lines {
		if r.Lines[i].Point == place && place != 0 {
			return r.Lines[i].Deadline
		}
	}
	return 0
}

// onDay says when a visit is made: on the way at the pick-up, near home on
// shopping day or the last day before it on which the shop is open.
func (v Visit) onDay(t *trip.Trip, pickUp units.Date) Visit {
	v.On = t.Settings.ShoppingDay
	if v.Point != 0 {
		v.On = pickUp
		return v
	}
	if shop := t.Shop(v.Shop); shop != nil && v.On.IsSet() {
		if open, found := shop.LastOpen(v.On); found {
			v.On = open
		}
	}
	return v
}

// addUp sums the money.
func (r *Result) addUp(t *trip.Trip, boxes resupply.Result) {
	for _, line := range r.Lines {
		r.Cost += line.Cost
		if !line.CostKnown {
			r.Unpriced++
		}
	}
	for _, line := range r.Fuel {
		r.Cost += line.Cost
		if !line.CostKnown {
			r.Unpriced++
		}
	}
	for _, box := range boxes.Boxes {
		r.Fees += box.Fees
	}
	for _, v := range r.Visits {
		r.Fees += v.Fee
	}
	if n := personDays(t); n > 0 {
		r.PerPersonDay = (r.Cost + r.Fees + n/2) / n
	}
	slices.SortStableFunc(r.Visits, func(a, b Visit) int { return cmp.Compare(a.Point, b.Point) })
}

// personDays counts members on days they are there.
func personDays(t *trip.Trip) units.Money {
	n := 0
	for i := range t.Crew {
		n += daysOf(t, &t.Crew[i])
	}
	return units.Money(n)
}
