package menufill_test

import (
	"context"
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/solve/menufill"
)

// bruteForce tries every way to fill the slots of a tiny problem. It returns the least value and whether there is a plan at all.
func bruteForce(p *menufill.Problem) (best int64, found bool) {
	cells, cooked := make([][]int, len(p.Slots)), make([][]int, len(p.Slots))
	var fill func(i int)
	fill = func(i int) {
		if i == len(p.Slots) {
			if len(faults(p, cells, cooked)) == 0 {
				if _, _, value := totals(p, cells, cooked); !found || value < best {
					best, found = value, true
				}
			}
			return
		}
		for _, row := range rowsOf(p, i) {
			cells[i], cooked[i] = row, slices.Clone(p.Slots[i].Fixed)
			for _, r := range row {
				if r >= 0 && !slices.Contains(cooked[i], r) {
					cooked[i] = append(cooked[i], r)
				}
			}
			slices.Sort(cooked[i])
			fill(i + 1)
		}
	}
	fill(0)
	return best, found
}

// rowsOf lists the ways the classes of a slot can eat served recipes.
func rowsOf(p *menufill.Problem, i int) [][]int {
	rows := [][]int{nil}
	for g, n := range p.Slots[i].Eaters {
		var longer [][]int
		for _, row := range rows {
			if n == 0 {
				longer = append(longer, append(slices.Clone(row), -1))
				continue
			}
			for r := range p.Recipes {
				if served(p, i, r, g).Served {
					longer = append(longer, append(slices.Clone(row), r))
				}
			}
		}
		rows = longer
	}
	return rows
}

// drawProblem makes a problem small enough for bruteForce with every kind of rule in it.
func drawProblem(t *rapid.T) menufill.Problem {
	number := func(low, high int, what string) int { return rapid.IntRange(low, high).Draw(t, what) }
	p := menufill.Problem{Days: number(1, 3, "days"), Weights: menufill.Weights{Mass: number(0, 2, "mass"), Cost: number(0, 2, "cost")}}
	if p.Weights.Mass+p.Weights.Cost == 0 {
		p.Weights.Mass = 1
	}
	p.Weights.Repeat = number(0, 1, "repeat") * 40
	classes, kinds := number(1, 2, "classes"), number(1, 2, "kinds")
	for range number(0, 2, "wants") {
		p.Wants = append(p.Wants, menufill.Want{Burden: number(0, 30, "want")})
	}
	for range number(1, 4, "recipes") {
		p.Recipes = append(p.Recipes, drawRecipe(number, classes, kinds, p.Days, len(p.Wants)))
	}
	for range number(0, 2, "families") {
		f := menufill.Family{Days: number(1, p.Days, "run"), Burden: 100 * number(0, 30, "alike")}
		for r := range p.Recipes {
			if number(0, 2, "member") > 0 {
				f.Recipes = append(f.Recipes, r)
			}
		}
		p.Families = append(p.Families, f)
	}
	for day := 1; day <= p.Days; day++ {
		p.CookMinutes = append(p.CookMinutes, number(10, 60, "cook"))
		for range number(1, 2, "slots") {
			s := menufill.Slot{Day: day, Kind: number(0, kinds-1, "kind"), Pots: number(1, 2, "pots")}
			for range classes {
				s.Eaters = append(s.Eaters, number(0, 2, "eaters"))
			}
			if number(0, 9, "fixes") == 0 {
				s.Fixed = []int{number(0, len(p.Recipes)-1, "fixed")}
			}
			if number(0, 4, "offers") == 0 {
				for range p.Recipes {
					s.Offers = append(s.Offers, menufill.Offer{CookMinutes: 5 * number(0, 5, "minutes"), Burden: 100 * number(0, 20, "burden"),
						Servings: drawServings(number, classes, len(p.Wants))})
				}
			}
			if number(0, 9, "excludes") == 0 {
				s.Excluded = []int{number(0, len(p.Recipes)-1, "excluded")}
			}
			p.Slots = append(p.Slots, s)
		}
	}
	for range classes {
		p.Classes = append(p.Classes, drawClass(number, p.Days, len(p.Wants)))
	}
	return p
}

func drawRecipe(number func(int, int, string) int, classes, kinds, days, wants int) menufill.Recipe {
	r := menufill.Recipe{CookMinutes: 5 * number(0, 5, "minutes"), Repeats: number(1, 3, "repeats"), GapDays: number(0, 1, "gap")}
	for k := range kinds {
		if k == 0 || number(0, 1, "suits") == 1 {
			r.Kinds = append(r.Kinds, k)
		}
	}
	if number(0, 3, "keeps") == 0 {
		r.LastDay = number(1, days, "last day")
	}
	r.Servings = drawServings(number, classes, wants)
	return r
}

func drawServings(number func(int, int, string) int, classes, wants int) (list []menufill.Serving) {
	for range classes {
		v := menufill.Serving{Served: number(0, 4, "served") > 0, Kcal: 100 * number(3, 9, "kcal"),
			ProteinDg: 50 * number(1, 6, "protein"), MassDg: 100 * number(5, 30, "mass"), CostCents: 10 * number(5, 30, "cost"),
			Burden: 100 * number(0, 5, "burden")}
		for range wants {
			v.Amounts = append(v.Amounts, 10*number(-5, 20, "amount"))
		}
		list = append(list, v)
	}
	return list
}

func drawClass(number func(int, int, string) int, days, wants int) menufill.Class {
	c := menufill.Class{Name: "class"}
	for range days {
		least := 100 * number(0, 8, "least")
		c.EnergyMin = append(c.EnergyMin, least)
		c.EnergyMax = append(c.EnergyMax, least+100*number(4, 15, "span"))
		c.ProteinMin = append(c.ProteinMin, 50*number(0, 4, "protein"))
	}
	for range wants {
		var least []int
		for range days {
			least = append(least, 10*number(-5, 40, "wanted"))
		}
		c.Wants = append(c.Wants, least)
	}
	c.EnergyTotal = 100 * number(0, 7*days, "total")
	return c
}

func TestAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		best, found := bruteForce(&p)
		plan, err := menufill.Solve(context.Background(), p, menufill.Options{Steps: 5_000_000})
		var bad *menufill.Infeasible
		switch {
		case !found && !errors.As(err, &bad):
			t.Fatalf("got plan %+v and error %v where there is no plan", plan, err)
		case found && err != nil:
			t.Fatalf("got %v where value %d is possible", err, best)
		case !found:
			return
		}
		checkPlan(t, &p, plan)
		if plan.Value != best || !plan.Proven || plan.Bound != best {
			t.Errorf("value %d, bound %d, proven %v; want %d proven", plan.Value, plan.Bound, plan.Proven, best)
		}
	})
}

// TestCoolingKeepsCount: after thousands of changes the running sums are those of a fresh count, and a plan that is said to keep every rule does,
// at the value that is said.
func TestCoolingKeepsCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		cells, value, same := menufill.Cool(p, uint64(len(p.Slots)), 100_000)
		if !same {
			t.Errorf("the running sums differ from a count")
		}
		if cells == nil {
			return
		}
		cooked := make([][]int, len(p.Slots))
		for i, row := range cells {
			cooked[i] = slices.Clone(p.Slots[i].Fixed)
			for _, r := range row {
				if r >= 0 && !slices.Contains(cooked[i], r) {
					cooked[i] = append(cooked[i], r)
				}
			}
		}
		for _, fault := range faults(&p, cells, cooked) {
			t.Errorf("%s", fault.text)
		}
		if _, _, want := totals(&p, cells, cooked); value != want {
			t.Errorf("value %d is said to be %d", want, value)
		}
	})
}

// What is said to be proven to have no plan has none.
func TestInfeasibleIsProvenByCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		_, err := menufill.Solve(context.Background(), p, menufill.Options{Steps: 5_000_000})
		var bad *menufill.Infeasible
		if !errors.As(err, &bad) || !bad.Proven {
			return
		}
		if best, found := bruteForce(&p); found {
			t.Errorf("%v is said to be proven, but value %d is possible", bad, best)
		}
	})
}
