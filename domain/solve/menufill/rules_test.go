package menufill_test

import (
	"slices"
	"testing"

	"sumpter/domain/solve/menufill"
)

// checkPlan judges a plan by the rules of the package comment alone.
func checkPlan(t interface {
	Helper()
	Errorf(string, ...any)
}, p *menufill.Problem, plan menufill.Plan) {
	t.Helper()
	for _, fault := range faults(p, plan.Cells, plan.Cooked) {
		t.Errorf("%s", fault.text)
	}
	mass, cost, value := totals(p, plan.Cells, plan.Cooked)
	if mass != plan.MassDg || cost != plan.CostCents || value != plan.Value {
		t.Errorf("plan says %d dg, %d cents, value %d; its cells give %d, %d, %d", plan.MassDg, plan.CostCents, plan.Value, mass, cost, value)
	}
	if plan.Bound > plan.Value {
		t.Errorf("bound %d over value %d", plan.Bound, plan.Value)
	}
}

// served is recipe r as slot i serves it to class g; minutes and burden are of cooking it there.
func served(p *menufill.Problem, i, r, g int) menufill.Serving {
	if offers := p.Slots[i].Offers; len(offers) > 0 {
		return offers[r].Servings[g]
	}
	return p.Recipes[r].Servings[g]
}

func cooking(p *menufill.Problem, i, r int) (minutes, burden int) {
	if offers := p.Slots[i].Offers; len(offers) > 0 {
		return offers[r].CookMinutes, offers[r].Burden
	}
	return p.Recipes[r].CookMinutes, 0
}

type fault struct {
	rule menufill.Rule
	text string
}

func totals(p *menufill.Problem, cells, cooked [][]int) (mass, cost, value int64) {
	uses := make([]int64, len(p.Recipes))
	for i, s := range p.Slots {
		for g, r := range cells[i] {
			if r >= 0 {
				v := served(p, i, r, g)
				mass += int64(s.Eaters[g]) * int64(v.MassDg)
				cost += int64(s.Eaters[g]) * int64(v.CostCents)
				value += int64(s.Eaters[g]) * int64(v.Burden)
			}
		}
		for _, r := range cooked[i] {
			uses[r]++
			_, burden := cooking(p, i, r)
			value += int64(burden)
		}
	}
	value += int64(p.Weights.Mass)*mass + int64(p.Weights.Cost)*cost + missed(p, cells) + alike(p, cooked)
	for _, n := range uses {
		value += int64(p.Weights.Repeat) * max(0, n-1)
	}
	return mass, cost, value
}

// missed is what all classes miss of their wants.
func missed(p *menufill.Problem, cells [][]int) (sum int64) {
	for k, want := range p.Wants {
		for g, c := range p.Classes {
			for day := 1; day <= p.Days; day++ {
				got, eaters := 0, 0
				for i, s := range p.Slots {
					if s.Day == day && s.Eaters[g] > 0 {
						got += served(p, i, cells[i][g], g).Amounts[k]
						eaters = max(eaters, s.Eaters[g])
					}
				}
				if eaters > 0 {
					sum += int64(want.Burden) * int64(eaters) * int64(max(0, c.Wants[k][day-1]-got))
				}
			}
		}
	}
	return sum
}

// alike is what families charge.
func alike(p *menufill.Problem, cooked [][]int) (sum int64) {
	for _, family := range p.Families {
		for first := 1; first+family.Days-1 <= p.Days; first++ {
			uses := 0
			for i, s := range p.Slots {
				for _, r := range cooked[i] {
					if s.Day >= first && s.Day < first+family.Days && slices.Contains(family.Recipes, r) {
						uses++
					}
				}
			}
			sum += int64(family.Burden) * int64(max(0, uses-1))
		}
	}
	return sum
}

func faults(p *menufill.Problem, cells, cooked [][]int) (found []fault) {
	add := func(rule menufill.Rule, text string) { found = append(found, fault{rule, text}) }
	for i, s := range p.Slots {
		if len(s.Fixed) > 0 {
			want := slices.Clone(s.Fixed)
			slices.Sort(want)
			if !slices.Equal(want, cooked[i]) {
				add(menufill.RuleFixed, "fixed slot cooks something else")
			}
			for _, r := range want {
				if last := p.Recipes[r].LastDay; last > 0 && s.Day > last {
					add(menufill.RuleFixed, "fixed slot cooks what is no longer fresh")
				}
			}
		} else if len(cooked[i]) > s.Pots {
			add(menufill.RulePots, "too many pots")
		}
		for g, n := range s.Eaters {
			r := cells[i][g]
			if n == 0 {
				if r != -1 {
					add(menufill.RuleSlot, "a class without eaters eats")
				}
				continue
			}
			if r < 0 || !served(p, i, r, g).Served || !slices.Contains(cooked[i], r) {
				add(menufill.RuleSlot, "a class eats what it is not served or nobody cooked")
				continue
			}
			fresh := p.Recipes[r].LastDay == 0 || s.Day <= p.Recipes[r].LastDay
			suits := slices.Contains(p.Recipes[r].Kinds, s.Kind) && !slices.Contains(s.Excluded, r) || len(s.Fixed) > 0
			if !fresh || !suits {
				add(menufill.RuleSlot, "a recipe does not suit the slot")
			}
		}
	}
	found = append(found, dayFaults(p, cells, cooked)...)
	return append(found, tripFaults(p, cells, cooked)...)
}

func dayFaults(p *menufill.Problem, cells, cooked [][]int) (found []fault) {
	for day := 1; day <= p.Days; day++ {
		cook := 0
		for i, s := range p.Slots {
			if s.Day == day {
				for _, r := range cooked[i] {
					minutes, _ := cooking(p, i, r)
					cook += minutes
				}
			}
		}
		if cook > p.CookMinutes[day-1] {
			found = append(found, fault{menufill.RuleCook, "too many cook minutes"})
		}
		for g, c := range p.Classes {
			kcal, protein, eats := 0, 0, false
			for i, s := range p.Slots {
				if s.Day == day && s.Eaters[g] > 0 && cells[i][g] >= 0 {
					eats = true
					kcal += served(p, i, cells[i][g], g).Kcal
					protein += served(p, i, cells[i][g], g).ProteinDg
				}
			}
			switch {
			case !eats:
			case kcal < c.EnergyMin[day-1]:
				found = append(found, fault{menufill.RuleEnergyMin, "too little energy"})
			case kcal > c.EnergyMax[day-1]:
				found = append(found, fault{menufill.RuleEnergyMax, "too much energy"})
			case protein < c.ProteinMin[day-1]:
				found = append(found, fault{menufill.RuleProtein, "too little protein"})
			}
		}
	}
	return found
}

func tripFaults(p *menufill.Problem, cells, cooked [][]int) (found []fault) {
	for r, recipe := range p.Recipes {
		var days []int
		for i, s := range p.Slots {
			if slices.Contains(cooked[i], r) {
				days = append(days, s.Day)
			}
		}
		if len(days) > recipe.Repeats {
			found = append(found, fault{menufill.RuleRepeats, "too many repeats"})
		}
		for i, a := range days {
			for _, b := range days[:i] {
				if max(a-b, b-a) <= recipe.GapDays {
					found = append(found, fault{menufill.RuleGap, "repeated too soon"})
				}
			}
		}
	}
	for g, c := range p.Classes {
		kcal := 0
		for i, s := range p.Slots {
			if s.Eaters[g] > 0 && cells[i][g] >= 0 {
				kcal += served(p, i, cells[i][g], g).Kcal
			}
		}
		if kcal < c.EnergyTotal {
			found = append(found, fault{menufill.RuleEnergyTotal, "too little energy over the trip"})
		}
	}
	return found
}

func TestCheckerSeesFaults(t *testing.T) {
	p := readExamples(t)[0].Instance.problem()
	if got := faults(&p, [][]int{{0}, {0}}, [][]int{{0}, {0}}); len(got) != 1 || got[0].rule != menufill.RuleGap {
		t.Errorf("the same dinner twice running: %v", got)
	}
}
