package fairsplit

import (
	"cmp"
	"slices"
)

// lineup is items in an order in which neighbours are alike, so that swapping
// neighbours changes little.
type lineup struct {
	items []int32
	rank  []int32 // of each item in items
}

func newLineup(in *instance, items []int32, compare func(x, y int32) int) lineup {
	l := lineup{slices.Clone(items), make([]int32, in.items)}
	slices.SortFunc(l.items, func(x, y int32) int { return cmp.Or(compare(x, y), cmp.Compare(x, y)) })
	for r, j := range l.items {
		l.rank[j] = int32(r)
	}
	return l
}

// near draws an item at most reach places from j.
func (l *lineup) near(j int32, reach int, draw *random) int32 {
	r := int(l.rank[j]) + 1 + draw.below(reach)
	if draw.next()&1 == 0 {
		r = int(l.rank[j]) - 1 - draw.below(reach)
	}
	return l.items[min(max(r, 0), len(l.items)-1)]
}
