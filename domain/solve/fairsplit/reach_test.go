package fairsplit

import (
	"context"
	"testing"

	"pgregory.net/rapid"
)

// TestNoSplitIsBelowWhatWholeItemsReach: whatever split is the best so far, what is
// concluded from it about all fairer ones holds. Every split of a small problem is looked at.
func TestNoSplitIsBelowWhatWholeItemsReach(t *testing.T) {
	raised := 0
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t)
		in := newInstance(p)
		h := newHunt(context.Background(), in, Options{Steps: 10_000_000})
		if len(in.homeless) > 0 {
			return
		}
		place := make([]int32, len(p.Crew))
		for i, crew := range in.member {
			place[crew] = int32(i)
		}
		var all []candidate
		enumerate(p, func(carrier []int) {
			inner := make([]int32, len(carrier))
			for j, crew := range carrier {
				inner[j] = place[crew]
			}
			if v := in.splitOf(inner).score(); v.overrun == 0 {
				all = append(all, candidate{inner, v})
				h.leastFirst = min(h.leastFirst, v.first)
			}
		})
		if len(all) == 0 {
			return
		}
		h.best = all[rapid.IntRange(0, len(all)-1).Draw(t, "best so far")]
		before := h.bounds.sum
		h.tighten()
		if h.bounds.sum > before {
			raised++
		}
		for _, c := range all {
			if c.first < h.bounds.day[0] {
				t.Fatalf("R1 of %d is below the bound %d", c.first, h.bounds.day[0])
			}
			if c.first <= h.leastFirst+h.leastFirst/200 && c.sum < h.bounds.sum {
				t.Fatalf("a sum of %d is below the bound %d, before %d", c.sum, h.bounds.sum, before)
			}
		}
	})
	if raised == 0 {
		t.Error("the bound was never raised: the draw must give some")
	}
}
