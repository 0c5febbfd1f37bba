package fairsplit

import "math/big"

// grain is how fine prices are when a bound is taken from them: what the whole of the
// objective costs.
const grain = 1 << 50

// priceBound gives a number that the sum over the days of hours times largest burden
// cannot be below, in the unit of burdens, by the prices of the crumbs' rows (Lagrangian
// relaxation, Geoffrion 1974): whatever the prices, no item can be carried for less
// than its least cost, and the limits are worth at most what they cost. It is exact:
// prices are rounded to whole numbers first. ceiling, if positive, is a burden that
// the first day's largest need not pass.
func (k *crumbs) priceBound(price []float64, hours []int64, ceiling int64) int64 {
	bound := k.priceBoundOf(price, hours, ceiling, k.in.allowed)
	if bound == never {
		return 0 // for another to say that nothing fits
	}
	return bound
}

// priceBoundOf is the bound where of the carriers of each item only some are open, never
// if it is beyond all burdens.
func (k *crumbs) priceBoundOf(price []float64, hours []int64, ceiling int64, open [][]int32) int64 {
	in := k.in
	whole := k.wholePrices(price)
	value, ok := k.leastCostOf(whole, open)
	if !ok || value <= 0 {
		return 0
	}
	// value <= sum over d of R_d * worth[d], R in grams per unit of strength.
	worth := make([]*big.Int, k.days)
	for d := range worth {
		worth[d] = new(big.Int)
		for i := range in.members {
			worth[d].Add(worth[d], new(big.Int).Mul(big.NewInt(whole[i*k.days+d]), big.NewInt(in.strength[i])))
		}
	}
	best := k.scaledBound(value, worth, hours, nil)
	if ceiling > 0 && k.days > 1 {
		if with := k.scaledBound(value, worth, hours, big.NewRat(ceiling, in.unit)); with > best {
			best = with
		}
	}
	return best
}

// scaledBound scales prices so that no day's worth is above its hours, and pays for
// the first day's surplus by its ceiling if there is one.
func (k *crumbs) scaledBound(value int64, worth []*big.Int, hours []int64, ceiling *big.Rat) int64 {
	var scale *big.Rat
	for d, w := range worth {
		if w.Sign() == 0 || d == 0 && ceiling != nil {
			continue
		}
		if part := new(big.Rat).SetFrac(big.NewInt(hours[d]), w); scale == nil || part.Cmp(scale) < 0 {
			scale = part
		}
	}
	if scale == nil {
		return 0
	}
	bound := new(big.Rat).Mul(new(big.Rat).SetInt64(value), scale)
	if ceiling != nil {
		surplus := new(big.Rat).Mul(new(big.Rat).SetInt(worth[0]), scale)
		surplus.Sub(surplus, new(big.Rat).SetInt64(hours[0]))
		if surplus.Sign() > 0 {
			bound.Sub(bound, surplus.Mul(surplus, ceiling))
		}
	}
	bound.Mul(bound, new(big.Rat).SetInt64(k.in.unit))
	if bound.Sign() <= 0 {
		return 0
	}
	floor := new(big.Int).Quo(bound.Num(), bound.Denom())
	if !floor.IsInt64() || floor.Int64() > never {
		return never // nothing is as much as that
	}
	return floor.Int64()
}

// wholePrices turns prices of rows into whole prices of a gram, a millilitre, or a
// unit of energy.
func (k *crumbs) wholePrices(price []float64) []int64 {
	whole := make([]int64, k.rows)
	for row, v := range price {
		if row < k.in.members*k.days && k.weight[row%k.days] == 0 {
			continue // a day of no weight may pay nothing
		}
		whole[row] = int64(min(v, 8) / k.unit[row] * grain)
	}
	return whole
}

// leastCost is what the limits leave of the least that all items cost. ok is false
// where the numbers get too large.
func (k *crumbs) leastCost(whole []int64) (value int64, ok bool) {
	return k.leastCostOf(whole, k.in.allowed)
}

// leastCostOf is the same where of the carriers of each item only some are open.
func (k *crumbs) leastCostOf(whole []int64, open [][]int32) (value int64, ok bool) {
	in := k.in
	n, days := in.members, k.days
	perGram, perLeft := make([]int64, n*days), make([]int64, n*days)
	for i := range n {
		mass, bulk := whole[k.massRow(i)], whole[k.bulkRow(i)]
		value += mass*int64(in.pinned[i*in.days]-in.maxGrams[i]) - bulk*(in.room[i]-in.pinnedBulk[i])
		for c := range in.classes {
			value -= whole[k.classRow(i, c)] * (in.classCap[c] - in.pinnedClass[i*in.classes+c])
		}
		sum, later := mass, int64(0)
		for d := range days {
			value += whole[i*days+d] * int64(in.pinned[i*in.days+d])
			sum += whole[i*days+d]
			perGram[d*n+i] = sum
		}
		for d := days - 1; d >= 0; d-- {
			perLeft[d*n+i] = later
			later += whole[i*days+d]
		}
	}
	for _, j := range in.movable {
		last, c := min(int(in.last[j]), days-1), int(in.class[j])
		m, r, v, e := int64(in.mass[j]), int64(in.residual[j]), in.bulk[j], in.energy[j]
		least := never
		for _, i := range open[j] {
			cost := m*perGram[last*n+int(i)] + r*perLeft[last*n+int(i)] + v*whole[k.bulkRow(int(i))]
			if in.falls[j] {
				cost = v * whole[k.bulkRow(int(i))]
				for d := range days {
					cost += int64(in.drop(j, d, days)) * perGram[d*n+int(i)]
				}
			}
			if c >= 0 {
				cost += e * whole[k.classRow(int(i), c)]
			}
			least = min(least, cost)
		}
		if value += least; value > never/2 || value < -never/2 {
			return 0, false
		}
	}
	return value, true
}
