package fairsplit

import (
	"context"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// nearlyFirst is the largest load of the first morning that counts as nearly as fair as
// the least known, by strength, with so many thousandths on top.
func nearlyFirst(r Result, thousandths int64) func(strength int64) int64 {
	return func(strength int64) int64 {
		most := new(big.Rat).Mul(r.BestR1, big.NewRat(strength*(1000+thousandths), 1000))
		return new(big.Int).Quo(most.Num(), most.Denom()).Int64()
	}
}

// smallChanges draws a crew that can be enumerated, of which some come later, leave
// early, or both, and somebody stays all the time.
func smallChanges(t *rapid.T) changingCrew {
	c := changingCrew{Problem: smallProblem(t)}
	for i := range c.Crew {
		d := days{1, c.Days}
		if i > 0 {
			d.first = rapid.IntRange(1, c.Days).Draw(t, "joins")
			d.last = rapid.IntRange(d.first, c.Days).Draw(t, "leaves")
		}
		c.presence = append(c.presence, d)
	}
	c.Crew[0].Strength = max(1, c.Crew[0].Strength)
	for j := range c.Items {
		it := &c.Items[j]
		it.Mornings = nil
		if it.Class != "" {
			it.Energy++
		}
		c.comes = append(c.comes, rapid.IntRange(1, it.GoneAfter).Draw(t, "comes"))
	}
	return c
}

// TestSmallChangingCrewsAgainstEnumeration: on every stage the split is as fair as the
// fairest of all, with the fewest hand-overs of those nearly as fair, never fewer than
// the bound on hand-overs says; where no split is within the limits none is claimed.
func TestSmallChangingCrewsAgainstEnumeration(t *testing.T) {
	later := 0
	rapid.Check(t, func(t *rapid.T) {
		c := smallChanges(t)
		solve := func(l leg, o Options) Result {
			o.Steps = 2_000_000
			r, err := Solve(context.Background(), l.Problem, o)
			if err != nil {
				t.Fatal(err)
			}
			checkResult(t, l.Problem, r)
			return r
		}
		c.goThrough(solve, func(l leg, r Result) []int {
			want := enumerated(l.Problem, l.previous)
			if r.Feasible != (want.feasible && !slices.Contains(r.Carrier, Nobody)) {
				t.Fatalf("days %v: feasible %v, by enumeration %v; reasons %+v", l.days, r.Feasible, want.feasible, r.Reasons)
			}
			if !r.Feasible {
				return r.Carrier
			}
			if r.BestR1.Cmp(want.r1) != 0 {
				t.Fatalf("days %v: least R1 %v, by enumeration %v", l.days, r.BestR1, want.r1)
			}
			if most := new(big.Rat).Mul(want.s, big.NewRat(1005, 1000)); r.S.Cmp(most) > 0 {
				t.Fatalf("days %v: S %v, by enumeration %v", l.days, r.S, want.s)
			}
			if l.days.first == 1 {
				return r.Carrier
			}
			later++
			if r.Changes != want.changes {
				t.Fatalf("days %v: %d changes, by enumeration %d", l.days, r.Changes, want.changes)
			}
			if least := l.leastHandOvers(nearlyFirst(r, 5)); r.Changes+r.Forced+l.gone < least {
				t.Fatalf("days %v: %d hand-overs, at least %d are said to be needed", l.days, r.Changes+r.Forced+l.gone, least)
			}
			return r.Carrier
		})
	})
	if later == 0 {
		t.Error("nobody joined or left")
	}
}

// TestInventedChangesChange: somebody joins and somebody leaves in each invented crew,
// and for each stage a plan is found or proven not to be there.
func TestInventedChangesChange(t *testing.T) {
	for seed := range uint64(4) {
		for _, tight := range []binding{loose, tightAll} {
			c := inventChanges(seed, 8, 5, tight)
			joins, leaves := 0, 0
			for _, d := range c.presence {
				if d.first > 1 {
					joins++
				}
				if d.last < c.Days {
					leaves++
				}
			}
			if stages := len(c.stages()); joins+leaves == 0 || stages < 2 {
				t.Errorf("seed %d: %d join, %d leave, %d stages", seed, joins, leaves, stages)
			}
			solve := func(l leg, o Options) Result {
				o.Steps = 6_000_000
				r, err := Solve(context.Background(), l.Problem, o)
				if err != nil {
					t.Fatal(err)
				}
				return r
			}
			c.goThrough(solve, func(l leg, r Result) []int {
				checkResult(t, l.Problem, r)
				if !r.Feasible && r.Reasons[0].Rule == NotFound {
					t.Errorf("seed %d, %v, days %v: %v", seed, tight, l.days, r.Overruns)
				}
				if c, ok := nearlyFair(r); ok {
					return c.Carrier
				}
				return r.Carrier
			})
		}
	}
}
