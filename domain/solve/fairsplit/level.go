package fairsplit

import (
	"math/big"
	"slices"
)

// bounds are burdens that no split can beat, found without any search.
type bounds struct {
	level []int64 // water level per day
	day   []int64 // best bound known on the largest burden of each day
	sum   int64   // on the sum over days of hours times largest burden
	price int64   // the same by prices, exact; 0 if not looked for
}

// raiseFirst takes up a better bound on the first day's largest burden.
func (b *bounds) raiseFirst(in *instance, burden int64) {
	if burden <= b.day[0] {
		return
	}
	b.day[0] = burden
	sum := int64(0)
	for d, hours := range in.hours {
		sum += hours * b.day[d]
	}
	b.sum = max(b.sum, sum)
}

// raiseSum takes up a better bound on the sum.
func (b *bounds) raiseSum(sum int64) {
	b.price = max(b.price, sum)
	b.sum = max(b.sum, sum)
}

func newBounds(in *instance) bounds {
	b := bounds{level: make([]int64, in.days), day: make([]int64, in.days)}
	groups := in.carrierGroups()
	all := everyone(in.members)
	for d := range in.days {
		free, _ := in.freeGrams(in.movable, d)
		crumbs := func(i int, burden int64) int64 { return in.capacityOf(i, d, burden) }
		b.level[d] = in.waterLevel(all, free, in.pinnedBurden(d), crumbs)
	}
	whole := newReach(in, b.level)
	for d := range in.days {
		b.day[d] = max(in.pinnedBurden(d), in.itemBurden(d))
		b.day[d] = in.wholeLevel(d, all, in.movable, b.day[d], whole)
		b.day[d] = in.subsetLevel(d, groups, b.day[d], whole)
		b.sum += in.hours[d] * b.day[d]
	}
	return b
}

// everyone is the set of all members.
func everyone(members int) []bool { return slices.Repeat([]bool{true}, members) }

// wholeLevel is the water level over a set of members who take only whole items.
func (in *instance) wholeLevel(d int, set []bool, items []int32, floor int64, r *reach) int64 {
	free, piece := in.freeGrams(items, d)
	return in.waterLevel(set, free, floor, func(i int, burden int64) int64 { return r.capacity(i, d, burden, piece) })
}

// pinnedBurden is the largest burden of a day that no choice can lower.
func (in *instance) pinnedBurden(d int) int64 {
	most := int64(0)
	for i := range in.members {
		most = max(most, in.burden(i, in.pinned[i*in.days+d]))
	}
	return most
}

// freeGrams sums what the items weigh on a day and gives the largest mass of which
// every one of them is a multiple.
func (in *instance) freeGrams(items []int32, d int) (sum, piece int64) {
	for _, j := range items {
		m := int64(in.grams(j, d))
		sum += m
		piece = gcd(piece, m)
	}
	return sum, max(1, piece)
}

// waterLevel is the least burden, at least floor, at which the members of the set
// can hold free grams beyond what is pinned to them, capacity being what one can. It is
// a lower bound for a day on which each holds no more than that at a burden. If the set
// has no room for all at any burden, floor is returned.
func (in *instance) waterLevel(set []bool, free, floor int64, capacity func(i int, burden int64) int64) int64 {
	all := func(burden int64) int64 {
		sum := int64(0)
		for i, isIn := range set {
			if isIn {
				sum += capacity(i, burden)
			}
		}
		return sum
	}
	if free == 0 || all(1<<61) < free {
		return floor
	}
	low, high := floor-1, floor // capacity at low is too small or low is below the floor
	for all(high) < free {
		low, high = high, 2*high+in.unit
	}
	for low+1 < high {
		mid := low + (high-low)/2
		if all(mid) < free {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// capacityOf is the mass that a member can take on a day, on top of what is pinned to
// them, without exceeding a burden or their mass limit.
func (in *instance) capacityOf(i, d int, burden int64) int64 {
	return max(0, min(burden/in.scale[i], int64(in.maxGrams[i]))-int64(in.pinned[i*in.days+d]))
}

// itemBurden is the largest burden that a single item forces on whoever takes it.
func (in *instance) itemBurden(d int) int64 {
	most := int64(0)
	for _, j := range in.movable {
		m := in.grams(j, d)
		if m == 0 {
			continue
		}
		least := int64(1) << 62
		for _, i := range in.allowed[j] {
			least = min(least, in.burden(int(i), in.pinned[int(i)*in.days+d]+m))
		}
		most = max(most, least)
	}
	return most
}

// exactBurden gives the fraction behind a burden that is some member's load.
func (in *instance) exactBurden(burden int64) *big.Rat {
	for i, scale := range in.scale {
		if burden%scale == 0 {
			return in.perStrength(i, burden/scale)
		}
	}
	return big.NewRat(burden, max(1, in.unit))
}
