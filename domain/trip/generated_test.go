package trip_test

import (
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func TestGeneratedTripsHaveNoProblem(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		for _, problem := range trip.Validate(triptest.Trip().Draw(rt, "trip")) {
			rt.Errorf("%s [%s]", problem, problem.Where.Field)
		}
	})
}

func TestLargeTripsHaveNoProblem(t *testing.T) {
	for seed := range uint64(5) {
		for _, problem := range trip.Validate(triptest.Large(60, 21, seed)) {
			t.Errorf("seed %d: %s [%s]", seed, problem, problem.Where.Field)
		}
	}
}

func BenchmarkValidateLarge(b *testing.B) {
	large := triptest.Large(60, 21, 1)
	b.ReportAllocs()
	for b.Loop() {
		if len(trip.Validate(large)) > 0 {
			b.Fatal("the large trip has problems")
		}
	}
}
