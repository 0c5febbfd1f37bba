package fairsplit

import (
	"cmp"
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// lastingProblem draws a problem that can be enumerated, of members with much and little
// own kit and items of which many are carried to a late day.
func lastingProblem(t *rapid.T) Problem {
	between := func(name string, low, high int) int64 { return int64(rapid.IntRange(low, high).Draw(t, name)) }
	p := Problem{Days: int(between("days", 2, 3))}
	for range p.Days {
		p.HoursTenths = append(p.HoursTenths, between("hours", 0, 9))
	}
	for range 3 {
		m := Member{Strength: between("strength", 2, 4), BaseGrams: between("kit", 0, 40), MaxGrams: Unlimited, VolumeMl: Unlimited}
		if between("full", 0, 3) == 0 {
			m.VolumeMl = between("room", 5, 30)
		}
		p.Crew = append(p.Crew, m)
	}
	for range between("items", 5, 7) {
		it := Item{MassGrams: between("mass", 4, 16), VolumeMl: between("volume", 1, 9), GoneAfter: int(between("gone", 1, p.Days))}
		if between("empties", 0, 5) == 0 {
			it.ResidualGrams = it.MassGrams / 2
		}
		p.Items = append(p.Items, it)
	}
	return p
}

// TestNoSplitIsBelowWhatWholeItemsReach: whatever split is the best so far, what is
// concluded from it about all fairer ones holds. Every split of a small problem is looked at.
func TestNoSplitIsBelowWhatWholeItemsReach(t *testing.T) {
	raised := 0
	rapid.Check(t, func(t *rapid.T) {
		p := lastingProblem(t)
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
		slices.SortFunc(all, func(a, b candidate) int { return cmp.Compare(a.sum, b.sum) })
		for _, best := range all[:min(len(all), 30)] { // the nearer to the bound, the more follows
			g := newHunt(context.Background(), in, Options{Steps: 10_000_000})
			g.leastFirst, g.best = h.leastFirst, best
			g.tighten()
			if g.bounds.sum > h.bounds.sum {
				raised++
			}
			for _, c := range all {
				if c.first < g.bounds.day[0] {
					t.Fatalf("R1 of %d is below the bound %d", c.first, g.bounds.day[0])
				}
				if c.first <= h.leastFirst+h.leastFirst/200 && c.sum < g.bounds.sum {
					t.Fatalf("a sum of %d is below the bound %d, before %d", c.sum, g.bounds.sum, h.bounds.sum)
				}
			}
		}
	})
	if raised == 0 {
		t.Error("the bound was never raised: the draw must give some")
	}
}
