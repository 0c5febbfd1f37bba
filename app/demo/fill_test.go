package demo

import (
	"context"
	"slices"
	"testing"

	"sumpter/domain/fill"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// checkMenu holds a menu of the demo against what it must do: every member 95 to 110 % of the need and at least the protein target every
// day, at most 0.75 kg of food for a person and day, nothing unsafe, no dinner again within four days.
func checkMenu(t *testing.T, p *plan.Plan) {
	t.Helper()
	for i, intake := range p.Portions.Intakes {
		name := p.Trip.Crew[i].Name
		for d, day := range intake.Days {
			need := p.Needs.Members[i].Days[d]
			if !need.Present {
				continue
			}
			if share := float64(day.Kcal / need.TargetKcal); share < 0.95 || share > 1.10001 {
				t.Errorf("day %d brings %s %.1f %% of the energy", d+1, name, 100*share)
			}
			if day.ProteinGrams < need.ProteinGrams {
				t.Errorf("day %d brings %s %.1f of %.1f g protein", d+1, name, day.ProteinGrams, need.ProteinGrams)
			}
		}
	}
	if perDay := p.Summary().FoodPerPersonDay.Kilograms(); perDay > 0.75 {
		t.Errorf("%.3f kg for a person and day", perDay)
	}
	for _, f := range p.Findings {
		if f.Severity == findings.MustFix || f.Code == "food-not-safe" || f.Code == "food-not-known" || f.Code == "dinner-again" {
			t.Errorf("%s: %s", f.Code, f.What)
		}
	}
	if gap := p.Trip.Settings.RepeatGap; gap < 4 {
		t.Errorf("dinners may come again after %d days", gap)
	}
}

func TestMenuDoesWhatItMust(t *testing.T) {
	p := planned(t)
	checkMenu(t, p)
	for _, f := range p.Findings {
		switch f.Code { // light food is rich in fat: that one finding stays
		case "main-meal-small", "fibre-low", "salt-low", "fat-low", "day-short", "day-over", "protein-short":
			t.Errorf("%s: %s", f.Code, f.What)
		}
	}
}

// The menu of the demo emptied and filled anew, by each aim: light is lightest, cheap cheapest, varied has the most dishes.
func TestEmptiedMenuIsFilledAsWell(t *testing.T) {
	byAim, dishes := map[float64]plan.Summary{}, map[float64]int{}
	for _, aim := range []float64{-1, 0, 1} {
		demo := Trip()
		needs := planned(t).Needs
		demo.Menu, demo.Settings.MenuAim = nil, aim
		c := demo.Canonical()
		filled, err := fill.Menu(context.Background(), c, needs, fill.Options{Steps: 12_000_000})
		if err != nil {
			t.Fatal(err)
		}
		if gap := filled.Gap(); gap > 0.15 {
			t.Errorf("aim %g: the menu may be %.1f %% from the best", aim, 100*gap)
		}
		demo.Menu = filled.Cells
		p, err := plan.Make(context.Background(), &demo, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		checkMenu(t, p)
		byAim[aim], dishes[aim] = p.Summary(), differentDishes(filled.Cells)
		t.Logf("aim %+g: %v a person-day, %v with fuel, %v, %d different dishes, %d dinners", aim, byAim[aim].FoodPerPersonDay,
			byAim[aim].Food+byAim[aim].Fuel, byAim[aim].Cost, dishes[aim], differentDishes(filled.Cells, trip.Dinner))
	}
	carried := func(aim float64) units.Mass { return byAim[aim].Food + byAim[aim].Fuel }
	if carried(0) > carried(-1) || carried(0) > carried(1) || byAim[-1].Cost > byAim[0].Cost || byAim[-1].Cost > byAim[1].Cost {
		t.Errorf("cheap %v for %v, light %v for %v, varied %v for %v", carried(-1), byAim[-1].Cost, carried(0), byAim[0].Cost, carried(1), byAim[1].Cost)
	}
	if dishes[1] <= dishes[0] || dishes[1] <= dishes[-1] {
		t.Errorf("different dishes: cheap %d, light %d, varied %d", dishes[-1], dishes[0], dishes[1])
	}
}

// differentDishes counts the recipes of a menu, or of some meals of it.
func differentDishes(cells []trip.Cell, meals ...trip.Meal) int {
	seen := map[trip.RecipeID]bool{}
	for _, cell := range cells {
		for _, dish := range cell.Dishes {
			if len(meals) == 0 || slices.Contains(meals, cell.Meal) {
				seen[dish.Recipe] = true
			}
		}
	}
	return len(seen)
}
