package menu_test

import (
	"context"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// TestRankBeginsWithWhatFillProposes: in a menu with one open slot, the first
// dish that Fill puts there is the best of the ranking.
func TestRankBeginsWithWhatFillProposes(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Trip().Draw(t, "trip").Canonical()
		n := needs.Compute(tr, nil)
		cells, err := menu.Fill(context.Background(), tr, n)
		if err != nil {
			t.Fatal(err)
		}
		if len(cells) == 0 {
			return
		}
		open := cells[rapid.IntRange(0, len(cells)-1).Draw(t, "open")]
		for _, cell := range cells {
			if !sameSlot(cell, open) {
				tr.Menu = slices.DeleteFunc(tr.Menu, func(c trip.Cell) bool { return sameSlot(c, cell) })
				tr.Menu = append(tr.Menu, cell)
			}
		}
		tr = tr.Canonical()
		again, err := menu.Fill(context.Background(), tr, n)
		if err != nil || len(again) != 1 {
			t.Fatalf("one slot is open, %d are filled; %v", len(again), err)
		}
		ranked := menu.Rank(tr, n, open.Day, open.Meal, open.Group)
		if len(ranked) == 0 || ranked[0].Recipe != again[0].Dishes[0].Recipe {
			t.Fatalf("filled with recipe %d, ranked %v", again[0].Dishes[0].Recipe, ranked)
		}
		compared++
	})
	if compared == 0 {
		t.Error("no random trip had an open slot")
	}
}

func sameSlot(a, b trip.Cell) bool {
	return a.Day == b.Day && a.Meal == b.Meal && a.Group == b.Group
}

// TestRankDoesNotDependOnWhatStandsThere: only the other slots count.
func TestRankDoesNotDependOnWhatStandsThere(t *testing.T) {
	tr := triptest.Large(6, 4, 3).Canonical()
	tr.Days[1].NoFlame = false
	n := needs.Compute(tr, nil)
	before := menu.Rank(tr, n, 2, trip.Dinner, tr.Groups[0].ID)
	other := tr.Clone()
	for i := range other.Menu {
		if c := &other.Menu[i]; c.Day == 2 && c.Meal == trip.Dinner && c.Group == tr.Groups[0].ID {
			c.Dishes = []trip.Dish{{Recipe: before[len(before)-1].Recipe}}
		}
	}
	if after := menu.Rank(other, n, 2, trip.Dinner, tr.Groups[0].ID); !reflect.DeepEqual(before, after) {
		t.Error("what stands in the slot changed the ranking of its recipes")
	}
	if len(before) < 10 {
		t.Errorf("only %d of 120 recipes are dinners", len(before))
	}
	if !slices.IsSortedFunc(before, func(a, b menu.Ranked) int {
		if a.Penalty > b.Penalty {
			return 1
		}
		return -1
	}) {
		t.Error("not the best first")
	}
}

func TestRankNamesWhoGoesWithout(t *testing.T) {
	tr := kitchen(trip.Recipe{Ingredients: []trip.Ingredient{part(1, trip.InPot)}}, anyone, coeliac).Canonical()
	ranked := menu.Rank(tr, needs.Compute(tr, nil), 1, trip.Dinner, 1)
	if len(ranked) != 1 || !slices.Equal(ranked[0].Without, []trip.MemberID{2}) {
		t.Errorf("got %v, want the coeliac to go without", ranked)
	}
	if none := menu.Rank(tr, needs.Compute(tr, nil), 1, trip.Lunch, 1); len(none) != 0 {
		t.Errorf("a dinner is ranked for lunch: %v", none)
	}
	if none := menu.Rank(tr, needs.Compute(tr, nil), 1, trip.Dinner, 9); none != nil {
		t.Errorf("a group without people: %v", none)
	}
}
