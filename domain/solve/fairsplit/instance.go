package fairsplit

import (
	"cmp"
	"math/big"
	"math/bits"
	"slices"
)

// nobody is the carrier of an item that no member may carry.
const nobody = int32(-1)

// instance is a problem made ready for search: only members who carry, rows of
// grams per day, and a whole number per member that turns grams into burden.
type instance struct {
	days, items, members, classes int

	member   []int   // place of each carrier in Problem.Crew
	strength []int64 // of each carrier
	scale    []int64 // burden = grams * scale, the same unit for all
	unit     int64   // burden of one gram per unit of strength
	exact    bool    // unit is a common multiple, so equal burdens are equal numbers
	base     []int32
	maxGrams []int32
	room     []int64 // millilitres

	hours      []int64
	hoursTotal int64

	// The arrays of items have one entry more: the empty item that weighs nothing.
	none     int32
	mass     []int32
	residual []int32
	last     []int32 // last day before what is left of it, from 0
	falls    []bool  // it gets lighter before its last day
	bulk     []int64
	energy   []int64
	class    []int32 // -1 for none
	profile  []int32 // grams per item and day
	allowed  [][]int32
	may      []bool // per item and member

	classCap    []int64 // most energy in one pack
	classTotal  []int64
	homeless    []int32 // items that nobody may carry
	movable     []int32 // items with more than one possible carrier
	pinned      []int32 // grams per member and day that cannot move: own kit and items with one carrier
	pinnedBulk  []int64
	pinnedClass []int64 // per member and class
}

func newInstance(p Problem) *instance {
	in := &instance{days: p.Days, items: len(p.Items), classes: len(p.Classes)}
	place := in.addCrew(p)
	in.setHours(p)
	in.addClasses(p)
	in.addItems(p, place)
	in.setPinned()
	in.setScale()
	return in
}

func (in *instance) addCrew(p Problem) []int32 {
	grams := int64(0)
	for _, it := range p.Items {
		grams += it.MassGrams
	}
	place := make([]int32, len(p.Crew))
	for i, m := range p.Crew {
		place[i] = nobody
		if m.Strength == 0 {
			continue
		}
		place[i] = int32(len(in.member))
		in.member = append(in.member, i)
		in.strength = append(in.strength, m.Strength)
		in.base = append(in.base, int32(m.BaseGrams))
		in.maxGrams = append(in.maxGrams, int32(min(m.MaxGrams, m.BaseGrams+grams)))
		in.room = append(in.room, min(m.VolumeMl, most))
	}
	in.members = len(in.member)
	return place
}

func (in *instance) setHours(p Problem) {
	in.hours = append([]int64(nil), p.HoursTenths...)
	for _, h := range in.hours {
		in.hoursTotal += h
	}
	if in.hoursTotal == 0 {
		for d := range in.hours {
			in.hours[d] = 1
		}
		in.hoursTotal = int64(in.days)
	}
}

func (in *instance) addClasses(p Problem) {
	in.classTotal = make([]int64, in.classes)
	for c, class := range p.Classes {
		for _, it := range p.Items {
			if it.Class == class.Name {
				in.classTotal[c] += it.Energy
			}
		}
		hi, lo := bits.Mul64(uint64(class.Share.Num), uint64(in.classTotal[c]))
		limit := in.classTotal[c]
		if hi < uint64(class.Share.Den) {
			quotient, _ := bits.Div64(hi, lo, uint64(class.Share.Den))
			limit = int64(min(quotient, uint64(limit)))
		}
		in.classCap = append(in.classCap, limit)
	}
}

func (in *instance) addItems(p Problem, place []int32) {
	number := map[string]int32{"": -1}
	for c, class := range p.Classes {
		number[class.Name] = int32(c)
	}
	everyone := make([]int32, in.members)
	for i := range everyone {
		everyone[i] = int32(i)
	}
	in.may = make([]bool, in.items*in.members)
	for _, it := range p.Items {
		in.addItem(it, number[it.Class])
		allowed := everyone
		if it.Allowed != nil {
			allowed = carriers(it.Allowed, place, in.members)
		}
		j := len(in.allowed)
		for _, i := range allowed {
			in.may[j*in.members+int(i)] = true
		}
		in.allowed = append(in.allowed, allowed)
		switch len(allowed) {
		case 0:
			in.homeless = append(in.homeless, int32(j))
		case 1:
		default:
			in.movable = append(in.movable, int32(j))
		}
	}
	in.none = int32(in.items)
	in.addItem(Item{GoneAfter: 1}, -1)
}

func (in *instance) addItem(it Item, class int32) {
	in.mass = append(in.mass, int32(it.MassGrams))
	in.residual = append(in.residual, int32(it.ResidualGrams))
	in.last = append(in.last, int32(it.GoneAfter-1))
	in.falls = append(in.falls, it.Mornings != nil)
	in.bulk = append(in.bulk, it.VolumeMl)
	in.energy = append(in.energy, it.Energy)
	in.class = append(in.class, class)
	for d := range in.days {
		in.profile = append(in.profile, int32(it.grams(d+1)))
	}
}

// carriers gives the distinct carriers named by places in the crew, in order.
func carriers(crew []int, place []int32, members int) []int32 {
	named := make([]bool, members)
	for _, i := range crew {
		if place[i] != nobody {
			named[place[i]] = true
		}
	}
	var list []int32
	for i, yes := range named {
		if yes {
			list = append(list, int32(i))
		}
	}
	return list
}

func (in *instance) setPinned() {
	in.pinned = make([]int32, in.members*in.days)
	in.pinnedBulk = make([]int64, in.members)
	in.pinnedClass = make([]int64, in.members*in.classes)
	for i := range in.members {
		for d := range in.days {
			in.pinned[i*in.days+d] = in.base[i]
		}
	}
	for j, allowed := range in.allowed {
		if len(allowed) != 1 {
			continue
		}
		i := int(allowed[0])
		for d := range in.days {
			in.pinned[i*in.days+d] += in.grams(int32(j), d)
		}
		in.pinnedBulk[i] += in.bulk[j]
		if c := in.class[j]; c >= 0 {
			in.pinnedClass[i*in.classes+int(c)] += in.energy[j]
		}
	}
}

// setScale chooses the unit of burden. A common multiple of the strengths makes
// every comparison exact; where that is too large, a power of two keeps distinct
// burdens apart to better than one part in 2^20 of a gram.
func (in *instance) setScale() {
	if in.members == 0 {
		return
	}
	heaviest := int64(1)
	for i := range in.members {
		heaviest += int64(in.base[i])
	}
	for _, m := range in.mass {
		heaviest += int64(m)
	}
	room := min(1<<40, 1<<60/heaviest/in.hoursTotal) // largest scale without overflow in S
	common := int64(1)
	for _, w := range in.strength {
		step := w / gcd(common, w)
		if common > room*minimum(in.strength)/step {
			common = 0
			break
		}
		common *= step
	}
	in.exact = common > 0
	if !in.exact {
		common = 1 << 62
		for common > 1 && common/minimum(in.strength) >= room {
			common >>= 1
		}
	}
	in.unit = common
	for _, w := range in.strength {
		in.scale = append(in.scale, max(1, (common+w-1)/w))
	}
}

// drop is what an item loses between a day and the next of those looked at; on
// the last of them, all that is left.
func (in *instance) drop(j int32, d, days int) int32 {
	if d == days-1 {
		return in.grams(j, d)
	}
	return in.grams(j, d) - in.grams(j, d+1)
}

// mornings are an item's grams on each day.
func (in *instance) mornings(j int32) []int32 { return in.profile[int(j)*in.days : int(j+1)*in.days] }

func (in *instance) grams(j int32, d int) int32 { return in.profile[int(j)*in.days+d] }

func (in *instance) canCarry(j int32, i int) bool { return in.may[int(j)*in.members+i] }

// burden turns a load into the common unit.
func (in *instance) burden(i int, grams int32) int64 { return int64(grams) * in.scale[i] }

// perStrength is the exact burden of a load.
func (in *instance) perStrength(i int, grams int64) *big.Rat {
	return big.NewRat(grams, in.strength[i])
}

// compareItems orders items by how long and how heavy they are, largest first. It is
// 0 only for interchangeable items.
func (in *instance) compareItems(a, b int32) int {
	return cmp.Or(
		cmp.Compare(in.last[b], in.last[a]),
		cmp.Compare(in.mass[b], in.mass[a]),
		cmp.Compare(in.residual[b], in.residual[a]),
		slices.Compare(in.mornings(b), in.mornings(a)),
		cmp.Compare(in.bulk[b], in.bulk[a]),
		cmp.Compare(in.class[b], in.class[a]),
		cmp.Compare(in.energy[b], in.energy[a]),
		slices.Compare(in.allowed[a], in.allowed[b]),
	)
}

func minimum(values []int64) int64 {
	least := int64(1) << 62
	for _, v := range values {
		least = min(least, v)
	}
	return least
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
