package menufill_test

import (
	"context"
	"testing"

	"sumpter/domain/solve/menufill"
)

// sizes are the trips of the speed goals; the seeds are those of the first three for which a plan is found.
var sizes = []struct {
	days, recipes int
	steps         int64
	seeds         []uint64
}{
	{7, 48, menufill.DefaultSteps, []uint64{0, 1, 3}},
	{14, 80, 200_000_000, []uint64{0, 1, 2}},
	{21, 120, 200_000_000, []uint64{0, 1, 2}},
}

func benchmarkSolve(b *testing.B, size int) {
	gap, runs, s := 0.0, 0.0, sizes[size]
	for i := 0; b.Loop(); i++ {
		plan, err := menufill.Solve(context.Background(), generate(s.days, s.recipes, s.seeds[i%len(s.seeds)]), menufill.Options{Steps: s.steps})
		if err != nil {
			b.Fatal(err)
		}
		gap += plan.Gap()
		runs++
	}
	b.ReportMetric(100*gap/runs, "%gap")
}

func BenchmarkWeek(b *testing.B)       { benchmarkSolve(b, 0) }
func BenchmarkTwoWeeks(b *testing.B)   { benchmarkSolve(b, 1) }
func BenchmarkThreeWeeks(b *testing.B) { benchmarkSolve(b, 2) }
