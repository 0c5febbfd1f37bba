package fill_test

import (
	"context"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/fill"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// TestOneOpenSlotGetsTheBestOfTheRanking: where one slot is open and gets one dish for all, no other dish for all is ranked before it.
func TestOneOpenSlotGetsTheBestOfTheRanking(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Trip().Draw(t, "trip").Canonical()
		tr.Settings.CookMinutes = 0 // a menu keeps to them, a ranking only counts what is over
		n := needs.Compute(tr, nil)
		first := oneTry(t, tr, n)
		if len(first.Cells) == 0 {
			return
		}
		open := first.Cells[rapid.IntRange(0, len(first.Cells)-1).Draw(t, "open")]
		for _, cell := range first.Cells {
			if !sameSlot(cell, open) {
				tr.Menu = slices.DeleteFunc(tr.Menu, func(c trip.Cell) bool { return sameSlot(c, cell) })
				tr.Menu = append(tr.Menu, cell)
			}
		}
		tr = tr.Canonical()
		again := oneTry(t, tr, n)
		i := slices.IndexFunc(again.Cells, func(c trip.Cell) bool { return sameSlot(c, open) })
		if i < 0 || !again.Groups[0].Proven || len(again.Cells[i].Dishes) != 1 || len(again.Cells[i].Dishes[0].For) > 0 {
			return
		}
		ranked := fill.Rank(tr, n, open.Day, open.Meal, open.Group)
		chosen := slices.IndexFunc(ranked, func(r fill.Ranked) bool { return r.Recipe == again.Cells[i].Dishes[0].Recipe })
		if chosen < 0 {
			t.Fatalf("recipe %d is chosen and not ranked: %v", again.Cells[i].Dishes[0].Recipe, ranked)
		}
		for _, better := range ranked[:chosen] {
			if len(better.Without) == 0 && better.Penalty < ranked[chosen].Penalty-1e-9 {
				t.Fatalf("%+v is chosen, %+v is ranked before it", ranked[chosen], better)
			}
		}
		compared++
	})
	if compared == 0 {
		t.Error("no random trip had one dish for an open slot")
	}
}

func filled(t interface{ Fatal(...any) }, tr *trip.Trip, n needs.Result) fill.Proposal {
	p, err := fill.Menu(context.Background(), tr, n, fill.Options{Steps: 100_000})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// oneTry fills by the measure of Rank, without corrections.
func oneTry(t interface{ Fatal(...any) }, tr *trip.Trip, n needs.Result) fill.Proposal {
	p, err := fill.Menu(context.Background(), tr, n, fill.Options{Steps: 100_000, Tries: 1})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func sameSlot(a, b trip.Cell) bool {
	return a.Day == b.Day && a.Meal == b.Meal && a.Group == b.Group
}

// TestRankDoesNotDependOnWhatStandsThere: only the other slots count.
func TestRankDoesNotDependOnWhatStandsThere(t *testing.T) {
	tr := triptest.Large(6, 4, 3).Canonical()
	tr.Days[1].NoFlame = false
	n := needs.Compute(tr, nil)
	before := fill.Rank(tr, n, 2, trip.Dinner, tr.Groups[0].ID)
	other := tr.Clone()
	for i := range other.Menu {
		if c := &other.Menu[i]; c.Day == 2 && c.Meal == trip.Dinner && c.Group == tr.Groups[0].ID {
			c.Dishes = []trip.Dish{{Recipe: before[len(before)-1].Recipe}}
		}
	}
	if after := fill.Rank(other, n, 2, trip.Dinner, tr.Groups[0].ID); !reflect.DeepEqual(before, after) {
		t.Error("what stands in the slot changed the ranking of its recipes")
	}
	if len(before) < 10 {
		t.Errorf("only %d of 120 recipes are dinners", len(before))
	}
	last, unsafe := math.Inf(-1), false
	for _, r := range before {
		if !unsafe && len(r.Unsafe) > 0 {
			last, unsafe = math.Inf(-1), true
		}
		if r.Penalty < last || unsafe != (len(r.Unsafe) > 0) {
			t.Errorf("not the best first, or unsafe ones among the safe: %+v", r)
		}
		last = r.Penalty
	}
}

func TestRankNamesWhoGoesWithout(t *testing.T) {
	tr := evening(member(1), member(2, allergicTo(trip.Gluten)))
	tr.Recipes = []trip.Recipe{supper(1, "Pasta", 400, wheat)}
	tr = tr.Canonical()
	n := needs.Compute(tr, nil)
	ranked := fill.Rank(tr, n, 1, trip.Dinner, 1)
	if len(ranked) != 1 || !slices.Equal(ranked[0].Without, []trip.MemberID{2}) {
		t.Errorf("got %v, want the coeliac to go without", ranked)
	}
	if none := fill.Rank(tr, n, 1, trip.Lunch, 1); len(none) != 0 {
		t.Errorf("a dinner is ranked for lunch: %v", none)
	}
	if none := fill.Rank(tr, n, 1, trip.Dinner, 9); none != nil {
		t.Errorf("a group without people: %v", none)
	}
}

func BenchmarkRank(b *testing.B) {
	tr := triptest.Large(60, 21, 11).Canonical()
	n := needs.Compute(tr, nil)
	for b.Loop() {
		fill.Rank(tr, n, 9, trip.Dinner, tr.Groups[0].ID)
	}
}
