package plan

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func mustMake(t interface {
	Helper()
	Fatal(...any)
}, on *trip.Trip) *Plan {
	t.Helper()
	p, err := Make(context.Background(), on, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// unsound lists what the independent check found.
func unsound(p *Plan) []string {
	var list []string
	for _, finding := range p.Findings {
		if finding.Stage == findings.Check {
			list = append(list, finding.What.String()+" ("+finding.Why.String()+")")
		}
	}
	return list
}

// Every invariant of a plan holds on random trips: the audit judges them all
// from the trip and the finished plan.
func TestPlansOfRandomTripsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := mustMake(t, triptest.Trip().Draw(t, "trip"))
		if faults := unsound(p); len(faults) > 0 {
			t.Fatalf("%d faults, the first: %s", len(faults), strings.Join(faults[:min(5, len(faults))], "\n"))
		}
	})
}

func TestTheLargeTripIsSound(t *testing.T) {
	p := mustMake(t, triptest.Large(24, 10, 7))
	if faults := unsound(p); len(faults) > 0 {
		t.Fatalf("%d faults, the first: %s", len(faults), strings.Join(faults[:min(5, len(faults))], "\n"))
	}
	if !p.Settled {
		t.Errorf("not settled after %d rounds: a load still changes by %.2f %%", p.Rounds, 100*p.Change)
	}
}

func bytesOf(t interface {
	Helper()
	Fatal(...any)
}, p *Plan) string {
	t.Helper()
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestTheSameTripGivesTheSamePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		on := triptest.Trip().Draw(t, "trip")
		if bytesOf(t, mustMake(t, on)) != bytesOf(t, mustMake(t, on.Clone())) {
			t.Fatal("two plans of one trip differ")
		}
	})
}

// The order of lists and the units shown change nothing; nor do names, but for
// the sentences that use them.
func TestOrderUnitsAndNamesChangeNoFigure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		on := triptest.Trip().Draw(t, "trip")
		other := on.Clone()
		slices.Reverse(other.Crew)
		slices.Reverse(other.Foods)
		slices.Reverse(other.Recipes)
		slices.Reverse(other.Menu)
		slices.Reverse(other.Gear)
		first, second := mustMake(t, on), mustMake(t, other)
		if bytesOf(t, first) != bytesOf(t, second) {
			t.Fatal("the order of a list changed the plan")
		}
		other.Units = units.US
		for i := range other.Crew {
			other.Crew[i].Name = "Walker " + other.Crew[i].Name
		}
		third := mustMake(t, other)
		if a, b := figuresOnly(second), figuresOnly(third); a != b {
			t.Fatalf("names or units changed a figure: %s", firstDifference(a, b))
		}
	})
}

// What was done so far is told, never planned with.
func TestProgressChangesNoPlan(t *testing.T) {
	begun := 0
	for seed := 0; begun < 4 && seed < 100; seed++ {
		done := triptest.Trip().Example(seed)
		if len(done.Progress.Packed) == 0 {
			continue
		}
		begun++
		fresh := done.Clone()
		fresh.Progress = trip.Progress{}
		if a, b := bytesOf(t, mustMake(t, done)), bytesOf(t, mustMake(t, fresh)); a != b {
			t.Fatalf("the plan depends on what was done: %s", firstDifference(a, b))
		}
	}
	if begun < 4 {
		t.Fatal("the generator begins no trips")
	}
}

// figuresOnly takes out the sentences, which speak in the reader's units and
// names.
func figuresOnly(p *Plan) string {
	for i := range p.Needs.Members {
		for d := range p.Needs.Members[i].Days {
			p.Needs.Members[i].Days[d].Steps = nil
		}
	}
	for i := range p.Spoilage.Fates {
		p.Spoilage.Fates[i].Why = prose.Text{}
	}
	p.Findings = nil
	text, _ := json.Marshal(p)
	return string(text)
}

// firstDifference shows where two texts part.
func firstDifference(a, b string) string {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	from := max(0, i-80)
	return a[from:min(len(a), i+40)] + " | " + b[from:min(len(b), i+40)]
}

func TestATripWithoutMeaningIsRefusedInWords(t *testing.T) {
	on := triptest.Large(3, 2, 1)
	on.Crew[0].BodyMass = -5
	p := mustMake(t, on)
	if !p.Refused() || len(p.Findings) == 0 || p.Findings[0].Severity != findings.MustFix || p.Findings[0].Remedy.IsZero() {
		t.Errorf("refused %v, findings %+v", p.Refused(), p.Findings)
	}
}

func TestACancelledPlanIsNoPlan(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if p, err := Make(ctx, triptest.Large(3, 2, 1), Options{}); !errors.Is(err, context.Canceled) || p != nil {
		t.Errorf("got %v, %v", p, err)
	}
}

func TestProgressNamesTheStages(t *testing.T) {
	var heard []string
	if _, err := Make(context.Background(), triptest.Large(3, 2, 1), Options{Progress: func(stage prose.Text) { heard = append(heard, stage.String()) }}); err != nil {
		t.Fatal(err)
	}
	for _, stage := range []string{"needs", "menu", "loads", "check"} {
		if !slices.Contains(heard, stage) {
			t.Errorf("%q was not heard of: %v", stage, heard)
		}
	}
}

func TestSummaryAddsUp(t *testing.T) {
	p := mustMake(t, triptest.Large(6, 4, 3))
	s := p.Summary()
	sum := units.Mass(0)
	for _, intake := range p.Portions.Intakes {
		for _, day := range intake.Days {
			sum += day.Food
		}
	}
	if s.Food != sum || s.PersonDays == 0 || s.FoodPerPersonDay != sum/units.Mass(s.PersonDays) {
		t.Errorf("summary %+v, food %v", s, sum)
	}
	worst := 0.0
	for _, member := range p.Carry.Members {
		for _, day := range member.Days {
			worst = max(worst, day.Share)
		}
	}
	if s.HeaviestShare != worst || s.Heaviest == 0 {
		t.Errorf("heaviest share %v, want %v", s.HeaviestShare, worst)
	}
}

func benchmark(b *testing.B, people, days int) {
	on := triptest.Large(people, days, 11)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Make(context.Background(), on, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPlan12x9(b *testing.B)  { benchmark(b, 12, 9) }
func BenchmarkPlan60x21(b *testing.B) { benchmark(b, 60, 21) }
