package fairsplit

import (
	"context"
	"math/big"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// smallProblem draws a problem that can be enumerated, limits often too tight.
func smallProblem(t *rapid.T) Problem {
	var p Problem
	between := func(name string, low, high int) int { return rapid.IntRange(low, high).Draw(t, name) }
	members := between("members", 1, 3)
	p.Days = between("days", 1, 3)
	for range p.Days {
		p.HoursTenths = append(p.HoursTenths, int64(between("hours", 0, 9)))
	}
	grain := int64(rapid.SampledFrom([]int{1, 50, 500}).Draw(t, "grain"))
	for range members {
		m := Member{Strength: int64(between("strength", 0, 4)), BaseGrams: grain * int64(between("kit", 0, 9)), MaxGrams: Unlimited, VolumeMl: Unlimited}
		if between("mass limit", 0, 2) == 0 {
			m.MaxGrams = grain * int64(between("most", 4, 40))
		}
		if between("room", 0, 2) == 0 {
			m.VolumeMl = int64(between("ml", 0, 30))
		}
		p.Crew = append(p.Crew, m)
	}
	if between("classes", 0, 1) == 1 {
		p.Classes = []Class{{Name: "dinner", Share: Ratio{int64(between("share", 3, 10)), 10}}}
	}
	for range between("items", 0, 7) {
		it := Item{MassGrams: grain * int64(between("mass", 0, 12)), VolumeMl: int64(between("volume", 0, 8)), GoneAfter: between("gone", 1, p.Days)}
		if between("empties", 0, 3) == 0 {
			it.ResidualGrams = it.MassGrams / 2
		}
		if between("eaten by and by", 0, 2) == 0 {
			for left := it.MassGrams; len(it.Mornings) < it.GoneAfter; left -= (left - it.ResidualGrams) * int64(between("eaten", 0, 4)) / 4 {
				it.Mornings = append(it.Mornings, left)
			}
		}
		if len(p.Classes) > 0 && between("dinner", 0, 1) == 1 {
			it.Class, it.Energy = "dinner", int64(between("energy", 0, 5))
		}
		if between("choosy", 0, 2) == 0 {
			it.Allowed = rapid.SliceOfNDistinct(rapid.IntRange(0, members-1), 0, members, rapid.ID).Draw(t, "allowed")
		}
		p.Items = append(p.Items, it)
	}
	return p
}

// enumerate calls f with every assignment to possible carriers.
func enumerate(p Problem, f func(carrier []int)) {
	carrier := make([]int, len(p.Items))
	var next func(j int)
	next = func(j int) {
		if j == len(carrier) {
			f(carrier)
			return
		}
		possible := plainCarriers(p, j)
		if len(possible) == 0 {
			possible = []int{Nobody}
		}
		for _, i := range possible {
			carrier[j] = i
			next(j + 1)
		}
	}
	next(0)
}

// optimum is the objective's first three rules by enumeration.
type optimum struct {
	feasible bool
	r1, s    *big.Rat // R1 and the least S with R1 within 0.5 %
	changes  int      // fewest, S within 0.5 %
}

func enumerated(p Problem, previous []int) optimum {
	var all []sums
	var changes []int
	best := optimum{changes: 1 << 30}
	enumerate(p, func(carrier []int) {
		s := plainSums(p, carrier)
		if len(s.overruns) > 0 {
			return
		}
		all = append(all, s)
		changes = append(changes, plainChanges(p, previous, carrier))
		if best.r1 == nil || s.r1.Cmp(best.r1) < 0 {
			best.r1 = s.r1
		}
	})
	if best.r1 == nil {
		return best
	}
	best.feasible = true
	limit := new(big.Rat).Mul(best.r1, big.NewRat(1005, 1000))
	for _, s := range all {
		if s.r1.Cmp(limit) <= 0 && (best.s == nil || s.s.Cmp(best.s) < 0) {
			best.s = s.s
		}
	}
	most := new(big.Rat).Mul(best.s, big.NewRat(1005, 1000))
	for n, s := range all {
		if s.r1.Cmp(limit) <= 0 && s.s.Cmp(most) <= 0 {
			best.changes = min(best.changes, changes[n])
		}
	}
	return best
}

func plainChanges(p Problem, previous, carrier []int) int {
	n := 0
	for j, i := range previous {
		for _, k := range plainCarriers(p, j) {
			if k == i && carrier[j] != i {
				n++
			}
		}
	}
	return n
}

func TestSmallProblemsAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t)
		r, err := Solve(context.Background(), p, Options{Steps: 2_000_000})
		if err != nil {
			t.Fatal(err)
		}
		checkResult(t, p, r)
		want := enumerated(p, nil)
		homeless := false
		for j := range p.Items {
			homeless = homeless || len(plainCarriers(p, j)) == 0
		}
		if r.Feasible != (want.feasible && !homeless) {
			t.Fatalf("feasible %v, by enumeration %v; reasons %+v", r.Feasible, want.feasible, r.Reasons)
		}
		if !r.Feasible {
			return
		}
		if !r.Proven || r.BestR1.Cmp(want.r1) != 0 || r.S.Cmp(want.s) != 0 {
			t.Fatalf("proven %v, best R1 %v, S %v; by enumeration %v, %v", r.Proven, r.BestR1, r.S, want.r1, want.s)
		}
	})
}

func TestFewestChangesAgainstEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := smallProblem(t)
		previous := make([]int, len(p.Items))
		for j := range previous {
			previous[j] = rapid.IntRange(-1, len(p.Crew)-1).Draw(t, "previous")
		}
		r, err := Solve(context.Background(), p, Options{Steps: 2_000_000, Previous: previous})
		if err != nil {
			t.Fatal(err)
		}
		checkResult(t, p, r)
		if !r.Feasible {
			checkPassed(t, p, previous, r)
			return
		}
		want := enumerated(p, previous)
		if got := plainChanges(p, previous, r.Carrier); got != r.Changes || got != want.changes {
			t.Fatalf("%d changes, said to be %d, by enumeration %d", got, r.Changes, want.changes)
		}
		for n, c := range r.Choices {
			s := plainSums(p, c.Carrier)
			if c.Changes != plainChanges(p, previous, c.Carrier) || c.R1.Cmp(s.r1) != 0 || c.S.Cmp(s.s) != 0 {
				t.Errorf("choice %d says %d, %v, %v", n, c.Changes, c.R1, c.S)
			}
			if n > 0 && c.Changes <= r.Choices[n-1].Changes {
				t.Errorf("choice %d has no more changes than the one before", n)
			}
		}
	})
}

// checkPassed: where limits are passed each choice says how, and more changes pass them
// by less, or as little and are fairer; the last is the split of the result.
func checkPassed(t *rapid.T, p Problem, previous []int, r Result) {
	for n, c := range r.Choices {
		s := plainSums(p, c.Carrier)
		if c.Changes != plainChanges(p, previous, c.Carrier) || c.R1.Cmp(s.r1) != 0 || c.S.Cmp(s.s) != 0 || !slices.Equal(c.Overruns, s.overruns) {
			t.Errorf("choice %d says %d, %v, %v, %v; plainly %v, %v, %v", n, c.Changes, c.R1, c.S, c.Overruns, s.r1, s.s, s.overruns)
		}
		if n == 0 {
			continue
		}
		before := r.Choices[n-1]
		fairer := c.R1.Cmp(before.R1) < 0 || c.S.Cmp(before.S) < 0
		if c.Changes <= before.Changes || c.Over > before.Over || c.Over == before.Over && !fairer {
			t.Errorf("choice %d: %d changes, %d over; the one before %d and %d", n, c.Changes, c.Over, before.Changes, before.Over)
		}
	}
	if last := len(r.Choices) - 1; last >= 0 && r.Choices[last].Over != r.Over {
		t.Errorf("the least over is %d, the split is %d over", r.Choices[last].Over, r.Over)
	}
}
