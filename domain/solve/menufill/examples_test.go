package menufill_test

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"sumpter/domain/solve/menufill"
)

// The worked menus of planning_examples.json; their optima were found with two MILP solvers and by full enumeration.

type example struct {
	Name     string
	Instance exampleMenu
	Expect   struct {
		MassG      *int64 `json:"mass_g"`
		Infeasible string
	}
}

type exampleMenu struct {
	Problem string
	Days    int
	Meals   []string
	Classes []struct {
		Name          string
		Count         int
		KcalMin       []int `json:"kcal_min"`
		KcalMax       []int `json:"kcal_max"`
		KcalTotalMin  int   `json:"kcal_total_min"`
		ProteinMinDgs []int `json:"protein_min_dg"`
	}
	Recipes []struct {
		Kind      string
		Kcal      int
		ProteinDg int  `json:"protein_dg"`
		MassG     int  `json:"mass_g"`
		CostCents int  `json:"cost_cents"`
		CookMin   int  `json:"cook_min"`
		LastDay   *int `json:"last_day"`
		Diets     []string
	}
	Pots      map[string]int `json:"max_recipes_per_slot"`
	CookMax   []int          `json:"cook_max_min"`
	RepeatMax map[string]int `json:"repeat_max"`
	GapDays   map[string]int `json:"gap_days"`
}

func (e exampleMenu) problem() menufill.Problem {
	p := menufill.Problem{Days: e.Days, CookMinutes: e.CookMax, Weights: menufill.Weights{Mass: 1}}
	kinds := map[string]int{}
	for i, meal := range e.Meals {
		kinds[meal] = i
	}
	var eaters []int
	for _, c := range e.Classes {
		eaters = append(eaters, c.Count)
		p.Classes = append(p.Classes, menufill.Class{Name: c.Name, EnergyMin: c.KcalMin, EnergyMax: c.KcalMax,
			EnergyTotal: c.KcalTotalMin, ProteinMin: c.ProteinMinDgs})
	}
	for _, r := range e.Recipes {
		recipe := menufill.Recipe{Kinds: []int{kinds[r.Kind]}, CookMinutes: r.CookMin, Repeats: e.RepeatMax[r.Kind], GapDays: e.GapDays[r.Kind]}
		if r.LastDay != nil {
			recipe.LastDay = *r.LastDay
		}
		for _, c := range e.Classes {
			served := strings.Contains(" "+strings.Join(r.Diets, " ")+" ", " "+c.Name+" ")
			recipe.Servings = append(recipe.Servings, menufill.Serving{Served: served, Kcal: r.Kcal, ProteinDg: r.ProteinDg,
				MassDg: 10 * r.MassG, CostCents: r.CostCents})
		}
		p.Recipes = append(p.Recipes, recipe)
	}
	for day := 1; day <= e.Days; day++ {
		for i, meal := range e.Meals {
			p.Slots = append(p.Slots, menufill.Slot{Day: day, Kind: i, Pots: e.Pots[meal], Eaters: eaters})
		}
	}
	return p
}

func readExamples(t *testing.T) []example {
	t.Helper()
	data, err := os.ReadFile("../../../testdata/planning_examples.json")
	if err != nil {
		t.Fatal(err)
	}
	var all, menus []example
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	for _, e := range all {
		if e.Instance.Problem == "menu" {
			menus = append(menus, e)
		}
	}
	if len(menus) != 9 {
		t.Fatalf("%d worked menus, want 9", len(menus))
	}
	return menus
}

func TestWorkedExamples(t *testing.T) {
	for _, e := range readExamples(t) {
		t.Run(e.Name, func(t *testing.T) {
			p := e.Instance.problem()
			plan, err := menufill.Solve(context.Background(), p, menufill.Options{})
			if e.Expect.Infeasible != "" {
				var bad *menufill.Infeasible
				if !errors.As(err, &bad) {
					t.Fatalf("got %v, want infeasible: %s", err, e.Expect.Infeasible)
				}
				if bad.Rule != menufill.RuleEnergyMin || bad.Day != 1 || bad.Reachable != 800 || bad.Asked != 900 || !bad.Proven {
					t.Errorf("got %+v, want %s", bad, e.Expect.Infeasible)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if plan.MassDg != 10**e.Expect.MassG || !plan.Proven || plan.Bound != plan.Value {
				t.Errorf("got %d dg, bound %d, proven %v; want %d g proven", plan.MassDg, plan.Bound, plan.Proven, *e.Expect.MassG)
			}
			checkPlan(t, &p, plan)
		})
	}
}
