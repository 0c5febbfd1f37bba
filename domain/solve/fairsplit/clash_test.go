package fairsplit

import (
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// clashingProblem draws a problem that can be enumerated, its limits of several kinds each
// near what is needed.
func clashingProblem(t *rapid.T) Problem {
	between := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
	p := Problem{Days: 1, HoursTenths: []int64{1}, Classes: []Class{{Name: "dinner", Share: Ratio{int64(between("share", 40, 80)), 100}}}}
	var grams, bulk int64
	for range between("items", 4, 7) {
		it := Item{MassGrams: int64(between("mass", 100, 400)), VolumeMl: int64(between("volume", 100, 900)), GoneAfter: 1}
		if between("dinner", 0, 1) == 1 {
			it.Class, it.Energy = "dinner", it.MassGrams
		}
		if between("choosy", 0, 4) == 0 {
			it.Allowed = []int{0, 1}
		}
		grams, bulk = grams+it.MassGrams, bulk+it.VolumeMl
		p.Items = append(p.Items, it)
	}
	// One has little room for what others have to spare, and the other way round.
	heavy, large := int64(between("grams of the first", 20, 60)), int64(between("millilitres of the first", 20, 60))
	for i := range 3 {
		part, room := (105-heavy)/2, (105-large)/2
		if i == 0 {
			part, room = heavy, large
		}
		p.Crew = append(p.Crew, Member{Strength: 1, MaxGrams: grams*part/100 + 1, VolumeMl: bulk*room/100 + 1})
	}
	return p
}

// TestNothingFitsWhereLimitsAreSaidToClash: enumeration finds no split where limits are
// said to stand in the way together, nor with the limit named raised by less than is said.
func TestNothingFitsWhereLimitsAreSaidToClash(t *testing.T) {
	said := 0
	rapid.Check(t, func(t *rapid.T) {
		p := clashingProblem(t)
		in := newInstance(p)
		if in.plainReasons(p) != nil {
			return
		}
		reasons, _ := in.limitsTogether(p, clashWork)
		if reasons == nil {
			return
		}
		said++
		r := reasons[0]
		if r.Rule != LimitsTogether || r.Need <= r.Have || len(r.Limits) == 0 || len(r.Change) != 1 {
			t.Fatalf("says %+v", r)
		}
		c := r.Change[0]
		if c.Kind == RaiseLimit {
			c.By--
		} else {
			c.Share.Num--
		}
		raised := p
		raised.Crew, raised.Classes = slices.Clone(p.Crew), slices.Clone(p.Classes)
		apply(&raised, c)
		for _, q := range []Problem{p, raised} {
			enumerate(q, func(carrier []int) {
				if len(plainSums(q, carrier).overruns) == 0 {
					t.Fatalf("%v keeps all limits; %+v was said", carrier, r)
				}
			})
		}
	})
	if said == 0 {
		t.Error("limits never clashed: the draw must give some that do")
	}
}

// TestClashingLimitsAreNamed: HiGHS (SciPy 1.10.1, linprog) finds no solution of the
// relaxation of these two crews, and one of the third.
func TestClashingLimitsAreNamed(t *testing.T) {
	for seed, clash := range map[uint64]bool{101: true, 105: true, 102: false} {
		p := inventCrew(seed, 4, 3, tightAll)
		r, err := Solve(context.Background(), p, Options{Steps: 20_000_000})
		if err != nil {
			t.Fatal(err)
		}
		checkResult(t, p, r)
		if got := !r.Feasible && r.Reasons[0].Rule == LimitsTogether; got != clash {
			t.Errorf("seed %d: clash %v, want %v; reasons %+v", seed, got, clash, r.Reasons)
		}
		if !clash {
			continue
		}
		for _, c := range r.Reasons[0].Change {
			apply(&p, c)
		}
		if over := plainSums(p, r.Carrier).overruns; len(over) > 0 {
			t.Errorf("seed %d: with %+v there is still %+v", seed, r.Reasons[0].Change, over)
		}
	}
}
