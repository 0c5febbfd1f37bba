package foods

import (
	"testing"

	"sumpter/app/library"
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

// BenchmarkKeystroke is one more letter in the search, results shown.
func BenchmarkKeystroke(b *testing.B) {
	s := largeScreen(b)
	library.Search("oats", 1)
	words := []string{"o", "oa", "oat", "oats", "oats r"}
	for i := 0; b.Loop(); i++ {
		s.search.look(words[i%len(words)])
	}
}

// BenchmarkRefresh is what an edit costs the screen on 60 people for 21 days.
func BenchmarkRefresh(b *testing.B) {
	s := largeScreen(b)
	for b.Loop() {
		s.Refresh()
	}
}
