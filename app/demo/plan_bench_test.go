package demo_test

import (
	"context"
	"testing"

	"sumpter/app/demo"
	"sumpter/domain/boosters"
	"sumpter/domain/fill"
	"sumpter/domain/plan"
	"sumpter/domain/trial"
	"sumpter/domain/trip"
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

// The ten best other dishes of a cell, each with what it would change.
func BenchmarkTenSwaps(b *testing.B) {
	t := demo.Trip()
	p, err := plan.Make(context.Background(), &t, plan.Options{})
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		ranked := fill.Rank(p.Trip, p.Needs, 5, trip.Dinner, p.Trip.Groups[0].ID)
		day := trial.NewDay(p.Trip, p.Needs, 5, p.Trip.Groups[0].ID)
		for _, choice := range ranked[:10] {
			day.With(trip.Dinner, []trip.Dish{{Recipe: choice.Recipe}})
		}
	}
}

// The dense food proposed at a meal of a heavy day, each with what it would change.
func BenchmarkBoosters(b *testing.B) {
	t := demo.Trip()
	p, err := plan.Make(context.Background(), &t, plan.Options{})
	if err != nil {
		b.Fatal(err)
	}
	day := heaviest(p)
	for b.Loop() {
		boosters.Propose(p.Trip, p.Needs, p.Portions, day, trip.Dinner, p.Trip.Groups[0].ID)
	}
}

// heaviest gives the day on which a member carries out of the packs most food to eat.
func heaviest(p *plan.Plan) int {
	day := 0
	for d := range p.Trip.Days {
		if p.Portions.Intakes[0].Days[d].Food > p.Portions.Intakes[0].Days[day].Food {
			day = d
		}
	}
	return day + 1
}
