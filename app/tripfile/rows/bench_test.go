package rows

import (
	"testing"

	"sumpter/domain/trip/triptest"
)

// BenchmarkChanges is what a saving costs before the disk is touched.
func BenchmarkChanges(b *testing.B) {
	large := triptest.Large(60, 21, 1)
	from, err := Dump(large)
	if err != nil {
		b.Fatal(err)
	}
	large.Crew[0].OwnKit++
	b.ReportAllocs()
	for b.Loop() {
		to, err := Dump(large)
		if err != nil {
			b.Fatal(err)
		}
		if changes, err := Changes(from, to); err != nil || len(changes) != 1 {
			b.Fatalf("%d tables change, %v", len(changes), err)
		}
	}
}
