package fairsplit

import (
	"cmp"
	"context"
	"slices"
)

// tree searches all splits, leaving out those that a bound or a symmetry shows to be
// no better than the best known (branch and bound, depth first). It settles small
// problems for good.
type tree struct {
	*split
	ctx      context.Context
	order    []int32
	same     []bool    // item at a depth is interchangeable with the one before
	left     [][]int64 // grams of the items from a depth on, per day
	piece    [][]int64 // mass they are all multiples of, per day
	leftBulk []int64
	everyone []bool
	twins    [][]bool // members that differ in nothing fixed

	budget     int64
	goal       goal
	firstLimit int64 // largest R1 looked for
	sumLimit   int64 // for byChanges: largest sum looked for
	old        []int32
	changes    int
	fewest     int // changes of the best
	best       candidate
	found      bool
	nodes      int
	cut        bool // the budget ended the search
}

// goal is what a tree minimises.
type goal int

const (
	byFirst   goal = iota // R1
	bySum                 // S, then R1, with R1 within a limit
	byChanges             // changes of carrier, with R1 and S within limits
)

func newTree(ctx context.Context, in *instance) *tree {
	t := &tree{split: newSplit(in), ctx: ctx, order: slices.Clone(in.movable)}
	slices.SortStableFunc(t.order, in.compareItems)
	for j, allowed := range in.allowed {
		if len(allowed) == 1 {
			t.put(int32(j), int(allowed[0]))
		}
	}
	n := len(t.order)
	t.same = make([]bool, n)
	t.left, t.piece, t.leftBulk = make([][]int64, n+1), make([][]int64, n+1), make([]int64, n+1)
	for depth := n; depth >= 0; depth-- {
		t.left[depth], t.piece[depth] = make([]int64, in.days), make([]int64, in.days)
		for d := range in.days {
			t.left[depth][d], t.piece[depth][d] = in.freeGrams(t.order[depth:], d)
		}
		if depth < n {
			t.leftBulk[depth] = t.leftBulk[depth+1] + in.bulk[t.order[depth]]
			t.same[depth] = depth > 0 && in.compareItems(t.order[depth-1], t.order[depth]) == 0
		}
	}
	for range in.members {
		t.everyone = append(t.everyone, true)
	}
	t.findTwins()
	return t
}

func (t *tree) findTwins() {
	in := t.in
	for i := range in.members {
		row := make([]bool, in.members)
		for k := range i {
			row[k] = in.strength[i] == in.strength[k] && in.maxGrams[i] == in.maxGrams[k] && in.room[i] == in.room[k]
			for _, j := range in.movable {
				row[k] = row[k] && in.canCarry(j, i) == in.canCarry(j, k)
			}
		}
		t.twins = append(t.twins, row)
	}
}

// search looks for a split better than the best and reports whether it could rule
// out all others within its budget.
func (t *tree) search(budget int64) bool {
	t.budget, t.cut = t.steps+budget, false
	t.descend(0)
	return !t.cut
}

func (t *tree) descend(depth int) {
	if t.steps > t.budget || t.cut {
		t.cut = true
		return
	}
	if t.nodes++; t.nodes&0xfff == 0 && t.ctx.Err() != nil {
		t.cut = true
		return
	}
	if !t.promising(depth) {
		return
	}
	if depth == len(t.order) {
		t.keep()
		return
	}
	j := t.order[depth]
	from := int32(0)
	if t.same[depth] && t.goal != byChanges {
		from = t.carrier[t.order[depth-1]]
	}
	for _, i := range t.ranked(j, from) {
		if t.repeats(j, i, from) {
			continue
		}
		changed := 0
		if t.goal == byChanges && t.old[j] != nobody && t.old[j] != i {
			changed = 1
		}
		t.changes += changed
		t.put(j, int(i))
		t.descend(depth + 1)
		t.take(j)
		t.changes -= changed
	}
}

// ranked lists the members who can still take item j, least burdened first.
func (t *tree) ranked(j, from int32) []int32 {
	in := t.in
	var list []int32
	for _, i := range in.allowed[j] {
		if i >= from && t.within(j, int(i)) {
			list = append(list, i)
		}
	}
	t.steps += 32 * int64(len(list))
	d := int(in.last[j])
	slices.SortStableFunc(list, func(a, b int32) int {
		if t.goal == byChanges && a != b && t.old[j] == a {
			return -1
		}
		if t.goal == byChanges && a != b && t.old[j] == b {
			return 1
		}
		return cmp.Compare(in.burden(int(a), t.load[int(a)*in.days+d]), in.burden(int(b), t.load[int(b)*in.days+d]))
	})
	return list
}

func (t *tree) within(j int32, i int) bool {
	in := t.in
	first := t.load[i*in.days] + in.mass[j]
	if first > in.maxGrams[i] || in.burden(i, first) > t.firstLimit || t.bulk[i]+in.bulk[j] > in.room[i] {
		return false
	}
	c := int(in.class[j])
	return c < 0 || t.inClass[i*in.classes+c]+in.energy[j] <= in.classCap[c]
}

// repeats tells whether an earlier member in the same state would lead to the same
// splits with two members' names exchanged.
func (t *tree) repeats(j, i, from int32) bool {
	if t.goal == byChanges {
		return false
	}
	for k := from; k < i; k++ {
		if t.twins[i][k] && t.alike(int(i), int(k)) && t.in.canCarry(j, int(k)) {
			// Interchangeable items are handed out in order of carriers, so the exchange
			// is only free where the run of such items starts.
			if from == 0 {
				return true
			}
		}
	}
	return false
}

func (t *tree) alike(i, k int) bool {
	n, c := t.in.days, t.in.classes
	return t.bulk[i] == t.bulk[k] &&
		slices.Equal(t.load[i*n:(i+1)*n], t.load[k*n:(k+1)*n]) &&
		slices.Equal(t.inClass[i*c:(i+1)*c], t.inClass[k*c:(k+1)*c])
}

// promising tells whether the items from a depth on can be added to the split so
// that it beats the best known.
func (t *tree) promising(depth int) bool {
	in := t.in
	t.steps += 8 * int64(in.members)
	limit := t.firstLimit
	if t.goal == byFirst && t.found {
		limit = min(limit, t.best.first-1)
	}
	room, bulk := int64(0), int64(0)
	for i := range in.members {
		load := int64(t.load[i*in.days])
		if in.burden(i, int32(load)) > limit {
			return false
		}
		grams := min(limit/in.scale[i], int64(in.maxGrams[i])) - load
		room += max(0, grams) / t.piece[depth][0] * t.piece[depth][0]
		bulk += in.room[i] - t.bulk[i]
	}
	if room < t.left[depth][0] || bulk < t.leftBulk[depth] {
		return false
	}
	if t.goal == byChanges {
		return t.changes < t.fewest && t.bound(depth).sum <= t.sumLimit
	}
	if t.goal == byFirst || !t.found {
		return true
	}
	v := t.bound(depth)
	return v.sum < t.best.sum || v.sum == t.best.sum && v.first < t.best.first
}

// bound is a score that no completion of the split can beat.
func (t *tree) bound(depth int) score {
	in := t.in
	var v score
	for d := range in.days {
		t.steps += 16 * int64(in.members)
		top := int64(0)
		for i := range in.members {
			top = max(top, in.burden(i, t.load[i*in.days+d]))
		}
		top = t.level(d, depth, top)
		if d == 0 {
			v.first = top
		}
		v.sum += in.hours[d] * top
	}
	return v
}

// level is the water level over the loads so far.
func (t *tree) level(d, depth int, floor int64) int64 {
	free, piece := t.left[depth][d], t.piece[depth][d]
	if free == 0 || t.capacity(d, floor, piece) >= free {
		return floor
	}
	low, high := floor, 2*floor+t.in.unit
	for t.capacity(d, high, piece) < free {
		if high > 1<<60 {
			return floor
		}
		low, high = high, 2*high
	}
	for low+1 < high {
		mid := low + (high-low)/2
		if t.capacity(d, mid, piece) < free {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

func (t *tree) capacity(d int, burden, piece int64) int64 {
	in := t.in
	sum := int64(0)
	for i := range in.members {
		room := min(burden/in.scale[i], int64(in.maxGrams[i])) - int64(t.load[i*in.days+d])
		if room > 0 {
			sum += room / piece * piece
		}
	}
	return sum
}

func (t *tree) keep() {
	v := t.score()
	if v.overrun > 0 {
		return
	}
	t.found, t.fewest = true, t.changes
	t.best = candidate{carrier: slices.Clone(t.carrier), score: v}
}
