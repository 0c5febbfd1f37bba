package fairsplit

import (
	"math/big"
	"slices"
)

// partsOfAll is Have where limits stand in the way together: ten thousand parts of what
// they leave.
const partsOfAll = 10_000

// lever is a limit that could be raised: of one member, or of a class in every pack.
type lever struct {
	limit         Limit
	member, class int
}

// limitsTogether looks for a proof that the limits of mass, volume and classes cannot all
// be kept even if items could be cut up, though each alone could: prices of the limits at
// which the least that all items cost is more than the limits are worth (Farkas 1902). The
// proof is exact, as prices are whole numbers. It names the limits that have a price, and
// the least by which one of them has to be raised if the others stay, as far as the
// steps suffice.
func (in *instance) limitsTogether(p Problem, budget int64) (reasons []Reason, steps int64) {
	c := newClash(in)
	c.budget = budget
	price := c.prices()
	if price == nil {
		return nil, c.steps
	}
	short, _ := c.rows.leastCost(price)
	r := Reason{Rule: LimitsTogether, Have: partsOfAll, Need: partsOfAll + 1}
	worth := new(big.Int)
	for _, l := range c.levers() {
		worth.Add(worth, new(big.Int).Mul(big.NewInt(c.priceOf(price, l)), big.NewInt(max(0, c.left(l)))))
	}
	if worth.Sign() > 0 {
		part := new(big.Int).Mul(big.NewInt(short), big.NewInt(partsOfAll))
		r.Need = max(r.Need, partsOfAll+part.Quo(part, worth).Int64())
	}
	best, least := lever{}, 0.0
	for _, l := range c.levers() {
		value := c.priceOf(price, l)
		if value == 0 {
			continue
		}
		if l.limit != ClassLimit {
			r.Members = append(r.Members, in.member[l.member])
		}
		r.Limits = append(r.Limits, l.limit)
		if part := float64(short) / float64(value) / float64(max(1, in.limitOf(l))); least == 0 || part < least {
			best, least = l, part
		}
	}
	slices.Sort(r.Members)
	slices.Sort(r.Limits)
	r.Members, r.Limits = slices.Compact(r.Members), slices.Compact(r.Limits)
	r.Limit = best.limit
	by := c.leastRaise(best, price)
	if best.limit == ClassLimit {
		r.Class = p.Classes[best.class].Name
		r.Change = []Change{in.shareChange(p, r.Class, by)}
	} else {
		r.Change = []Change{{Kind: RaiseLimit, Member: in.member[best.member], Item: Nobody, Limit: best.limit, By: by}}
	}
	return []Reason{r}, c.steps
}

// leastRaise raises one limit until nothing is proven any more. Each proof shows that
// less does not help.
func (c *clash) leastRaise(l lever, price []int64) int64 {
	by := int64(0)
	for range 8 {
		short, _ := c.rows.leastCost(price)
		value := c.priceOf(price, l)
		if value <= 0 {
			break // more of this limit alone does not help
		}
		by += (short + value - 1) / value
		next := newClash(c.in.raised(l, by))
		next.steps, next.budget = c.steps, c.budget
		price = next.prices()
		c.rows, c.steps = next.rows, next.steps
		if price == nil {
			break
		}
	}
	return by
}

// raised is the instance with a limit raised.
func (in *instance) raised(l lever, by int64) *instance {
	other := *in
	other.maxGrams, other.room, other.classCap = slices.Clone(in.maxGrams), slices.Clone(in.room), slices.Clone(in.classCap)
	switch l.limit {
	case MassLimit:
		other.maxGrams[l.member] += int32(by)
	case VolumeLimit:
		other.room[l.member] += by
	default:
		other.classCap[l.class] += by
	}
	return &other
}

func (in *instance) limitOf(l lever) int64 {
	switch l.limit {
	case MassLimit:
		return int64(in.maxGrams[l.member])
	case VolumeLimit:
		return in.room[l.member]
	default:
		return in.classCap[l.class]
	}
}

func (c *clash) levers() []lever {
	var list []lever
	for i := range c.in.members {
		list = append(list, lever{MassLimit, i, 0}, lever{VolumeLimit, i, 0})
	}
	for class := range c.in.classes {
		list = append(list, lever{ClassLimit, 0, class})
	}
	return list
}

// priceOf is what a unit more of a limit is worth.
func (c *clash) priceOf(price []int64, l lever) int64 {
	switch l.limit {
	case MassLimit:
		return price[c.rows.massRow(l.member)]
	case VolumeLimit:
		return price[c.rows.bulkRow(l.member)]
	default:
		sum := int64(0)
		for i := range c.in.members {
			sum += price[c.rows.classRow(i, l.class)]
		}
		return sum
	}
}

// left is what a limit leaves beside what cannot move, of a class on average.
func (c *clash) left(l lever) int64 {
	in := c.in
	switch l.limit {
	case MassLimit:
		return int64(in.maxGrams[l.member] - in.pinned[l.member*in.days])
	case VolumeLimit:
		return in.room[l.member] - in.pinnedBulk[l.member]
	default:
		return in.classCap[l.class]
	}
}
