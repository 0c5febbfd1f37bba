package fairsplit

import (
	"context"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// TestNoSplitIsBelowTheGear: enumeration finds no split of a small problem below the
// bound by the gear, and what is found at its leaves is within all limits.
func TestNoSplitIsBelowTheGear(t *testing.T) {
	bounded := 0
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t)
		in := newInstance(p)
		h := newHunt(context.Background(), in, Options{Steps: 200_000})
		h.problem = p
		h.offer(h.attempt(0, 0, 2000))
		if len(in.movable) == 0 || len(in.homeless) > 0 || h.bounds.day[0] == 0 || h.bounds.sum == 0 || h.best.overrun > 0 {
			return
		}
		h.leave()
		g := h.newGear(in.hours, h.best.sum, h.firstLimit(), h.limit)
		g.search()
		if g.bound() > 0 {
			bounded++
		}
		g.settle(h.limit)
		if v := in.splitOf(h.best.carrier).score(); v != h.best.score || v.overrun > 0 {
			t.Fatalf("found %+v, said to be %+v", v, h.best.score)
		}
		want := enumerated(p, make([]int, len(p.Items)))
		if got := big.NewRat(h.bounds.day[0], in.unit); got.Cmp(want.r1) > 0 {
			t.Fatalf("R1 bound %v, least R1 %v", got, want.r1)
		}
		if got := big.NewRat(h.bounds.sum, in.unit*in.hoursTotal); got.Cmp(want.s) > 0 {
			t.Fatalf("S bound %v, least S %v", got, want.s)
		}
	})
	if bounded == 0 {
		t.Error("no bound was found: the draw must give some")
	}
}

// TestGearRaisesTheBound: HiGHS (SciPy 1.10.1, linprog) finds the relaxation of this crew
// at 17.7571 (S), and at 17.9846 with the best carriers of its gear; its MILP has a split
// of 18.0131.
func TestGearRaisesTheBound(t *testing.T) {
	in := newInstance(inventCrew(6, 4, 3, tightAll))
	h := newHunt(context.Background(), in, Options{})
	h.offer(h.attempt(0, 0, 100_000))
	unit := float64(in.unit)
	hours := float64(in.hoursTotal)
	g := h.newGear(in.hours, int64(18.0131*unit*hours), int64(18.992026*1.005*unit), 20_000_000)
	g.search()
	if got := float64(g.bound()) / unit / hours; got < 17.9845 || got > 17.9847 {
		t.Errorf("bound %.5f, want 17.9846", got)
	}
}
