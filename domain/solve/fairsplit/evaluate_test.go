package fairsplit

import (
	"context"
	"testing"

	"pgregory.net/rapid"
)

// Measuring what was found gives what was found.
func TestEvaluateAgreesWithSolve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Problem{Days: rapid.IntRange(1, 4).Draw(t, "days")}
		for range p.Days {
			p.HoursTenths = append(p.HoursTenths, 10)
		}
		for range rapid.IntRange(1, 4).Draw(t, "crew") {
			p.Crew = append(p.Crew, Member{Strength: rapid.Int64Range(1, 9).Draw(t, "strength"), MaxGrams: Unlimited, VolumeMl: Unlimited})
		}
		for range rapid.IntRange(0, 12).Draw(t, "items") {
			p.Items = append(p.Items, Item{MassGrams: rapid.Int64Range(0, 900).Draw(t, "grams"), GoneAfter: rapid.IntRange(1, p.Days).Draw(t, "gone")})
		}
		solved, err := Solve(context.Background(), p, Options{Steps: 20_000})
		if err != nil {
			t.Fatal(err)
		}
		measured, err := Evaluate(p, solved.Carrier)
		if err != nil {
			t.Fatal(err)
		}
		if measured.R1.Cmp(solved.R1) != 0 || measured.S.Cmp(solved.S) != 0 || measured.R1Bound.Cmp(solved.R1Bound) > 0 {
			t.Fatalf("solved %v %v, measured %v %v", solved.R1, solved.S, measured.R1, measured.S)
		}
	})
}

func TestEvaluateRefusesWhoMayNotCarry(t *testing.T) {
	p := Problem{Days: 1, HoursTenths: []int64{10}, Crew: []Member{{Strength: 1}, {Strength: 1}}, Items: []Item{{MassGrams: 1, GoneAfter: 1, Allowed: []int{1}}}}
	if _, err := Evaluate(p, []int{0}); err == nil {
		t.Error("a forbidden carrier was measured")
	}
	if _, err := Evaluate(p, nil); err == nil {
		t.Error("a split without the item was measured")
	}
}
