package demo_test

import (
	"context"
	"testing"

	"sumpter/app/demo"
	"sumpter/domain/plan"
)

func BenchmarkPlan(b *testing.B) {
	t := demo.Trip()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := plan.Make(context.Background(), &t, plan.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
