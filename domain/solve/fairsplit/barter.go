package fairsplit

// barter exchanges one heavy item that is carried to the end for small ones of about
// the same mass, of those that are carried longest, so that no morning's load changes
// much (an ejection chain, Glover 1996). Exchanges of one or two items stop moving heavy
// ones long before the small ones have found their places.
type barter struct {
	heavy  []int32
	byDay  [][]int32 // the other member's items, by last day
	smalls []int32   // given for the heavy item
	more   []int32   // grams that the heavy item's carrier gets more, per day
	bulk   int64     // millilitres, likewise
	energy []int64   // of each class, likewise
}

const (
	barterEvery = 32 // exchanges among which one is a barter
	barterGap   = 12 // grams by which the small items may differ from the heavy one
	heavyPart   = 40 // a heavy item is more than this part of the mean load on the last morning
)

// newBarter is nil where no item is heavy, loads being about those of a level per day.
func newBarter(in *instance, level []int64) *barter {
	b := &barter{byDay: make([][]int32, in.days), more: make([]int32, in.days), energy: make([]int64, in.classes)}
	load, d := int64(0), in.days-1
	for _, scale := range in.scale {
		load += level[d] / scale
	}
	for _, j := range in.movable {
		if int64(in.grams(j, d))*heavyPart*int64(in.members) > load {
			b.heavy = append(b.heavy, j)
		}
	}
	if b.heavy == nil {
		return nil
	}
	return b
}

// tryBarter makes a barter drawn at random, unless it costs too much.
func (a *annealer) tryBarter() bool {
	b := a.barter
	j := b.heavy[a.below(len(b.heavy))]
	i := int(a.carrier[j])
	k := int(a.in.allowed[j][a.below(len(a.in.allowed[j]))])
	if i == k || !b.collect(a, j, i, k) {
		return false
	}
	from, to := b.costs(a, i, k)
	change := from + to - a.costs[i] - a.costs[k]
	if change+b.toll(a, j, i, k) > a.rise() {
		return false
	}
	a.hand(j, k)
	for _, l := range b.smalls {
		a.hand(l, i)
	}
	a.total += change
	a.costs[i], a.costs[k] = from, to
	return true
}

// collect chooses what k gives for item j of i, and tells whether that comes out even.
func (b *barter) collect(a *annealer, j int32, i, k int) bool {
	in := a.in
	for d := range b.byDay {
		b.byDay[d] = b.byDay[d][:0]
	}
	for _, l := range a.own[k] {
		if in.canCarry(l, i) {
			b.byDay[in.last[l]] = append(b.byDay[in.last[l]], l)
		}
	}
	a.steps += int64(len(a.own[k]))
	b.smalls, b.bulk = b.smalls[:0], -in.bulk[j]
	clear(b.energy)
	if c := in.class[j]; c >= 0 {
		b.energy[c] = -in.energy[j]
	}
	for d, grams := range in.mornings(j) {
		b.more[d] = -grams
	}
	for d := in.days - 1; d >= 0; d-- {
		list := b.byDay[d]
		for len(list) > 0 {
			at := a.below(len(list))
			l := list[at]
			list[at] = list[len(list)-1]
			list = list[:len(list)-1]
			if in.mass[l] > barterGap-b.more[0] || !b.inClass(a, l, i) {
				continue
			}
			b.add(in, l)
			if b.more[0] >= -barterGap {
				return true
			}
		}
	}
	return false
}

// inClass tells whether i has room for one more item in its class.
func (b *barter) inClass(a *annealer, l int32, i int) bool {
	in := a.in
	c := int(in.class[l])
	return c < 0 || a.inClass[i*in.classes+c]+b.energy[c]+in.energy[l] <= a.classCap[i*in.classes+c]
}

func (b *barter) add(in *instance, l int32) {
	b.smalls = append(b.smalls, l)
	for d, grams := range in.mornings(l) {
		b.more[d] += grams
	}
	b.bulk += in.bulk[l]
	if c := in.class[l]; c >= 0 {
		b.energy[c] += in.energy[l]
	}
}

// costs are what both members cost after the barter.
func (b *barter) costs(a *annealer, i, k int) (from, to int64) {
	days, classes := a.in.days, a.in.classes
	from, to = a.hardCost(i, int64(b.more[0]), b.bulk), a.hardCost(k, -int64(b.more[0]), -b.bulk)
	for c, energy := range b.energy {
		if over := a.inClass[i*classes+c] + energy - a.classCap[i*classes+c]; over > 0 {
			from += a.penalty((over + a.unitOf[c] - 1) / a.unitOf[c])
		}
		if over := a.inClass[k*classes+c] - energy - a.classCap[k*classes+c]; over > 0 {
			to += a.penalty((over + a.unitOf[c] - 1) / a.unitOf[c])
		}
	}
	for d, grams := range b.more {
		if over := int64(a.load[i*days+d] + grams - a.target[i*days+d]); over > 0 {
			from += over * over * a.weight[d]
		}
		if over := int64(a.load[k*days+d] - grams - a.target[k*days+d]); over > 0 {
			to += over * over * a.weight[d]
		}
	}
	a.steps += int64(2 * (days + len(b.smalls)))
	return from, to
}

// toll is how much more the barter makes all items cost.
func (b *barter) toll(a *annealer, j int32, i, k int) int64 {
	if a.toll == nil {
		return 0
	}
	n := a.in.members
	sum := a.toll[int(j)*n+k] - a.toll[int(j)*n+i]
	for _, l := range b.smalls {
		sum += a.toll[int(l)*n+i] - a.toll[int(l)*n+k]
	}
	return sum
}
