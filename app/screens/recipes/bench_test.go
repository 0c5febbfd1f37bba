package recipes

import (
	"testing"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/trip/triptest"
)

func largeScreen(b *testing.B) *Screen {
	b.Helper()
	d := benchtest.New(b, triptest.Large(60, 21, 1))
	s := New(d.Bench)
	d.Show(s, 1180, 740)
	return s
}

// BenchmarkRefresh is what an edit costs the screen on 60 people for 21 days.
func BenchmarkRefresh(b *testing.B) {
	s := largeScreen(b)
	for b.Loop() {
		s.kitchen = newKitchen(s.bench.Trip()) // as after an edit: nothing is known yet
		s.Refresh()
		s.Waiting()
	}
}
