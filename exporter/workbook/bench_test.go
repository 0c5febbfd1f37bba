package workbook

import (
	"context"
	"io"
	"sync"
	"testing"

	"sumpter/domain/plan"
	"sumpter/domain/trip/triptest"
)

// largePlan is planned once: 60 people for 21 days.
var largePlan = sync.OnceValues(func() (*plan.Plan, error) {
	return plan.Make(context.Background(), triptest.Large(60, 21, 1), plan.Options{})
})

// BenchmarkWriteLarge has the goal of 2 s and 300 MB.
func BenchmarkWriteLarge(b *testing.B) {
	p, err := largePlan()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(len(p.Bags.Bags)), "bags")
	b.ReportAllocs()
	b.ResetTimer()
	for b.Loop() {
		if err := Write(context.Background(), io.Discard, p); err != nil {
			b.Fatal(err)
		}
	}
}
