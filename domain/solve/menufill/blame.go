package menufill

import (
	"context"
	"fmt"
	"slices"
)

// relaxation drops one rule of a problem; the copy it returns shares nothing that it changed.
type relaxation struct {
	rule Rule
	drop func(Problem) Problem
}

// relaxations lists the rules that blame drops, one at a time, in the order of the page of rules.
var relaxations = []relaxation{
	{RuleFixed, func(p Problem) Problem { return eachSlot(p, func(s *Slot) { s.Fixed = nil }) }},
	{RulePots, func(p Problem) Problem { return eachSlot(p, func(s *Slot) { s.Pots = len(p.Classes) }) }},
	{RuleEnergyMin, func(p Problem) Problem {
		return eachClass(p, func(c *Class) { c.EnergyMin = make([]int, p.Days) })
	}},
	{RuleEnergyMax, func(p Problem) Problem {
		return eachClass(p, func(c *Class) { c.EnergyMax = slices.Repeat([]int{maxFigure}, p.Days) })
	}},
	{RuleProtein, func(p Problem) Problem {
		return eachClass(p, func(c *Class) { c.ProteinMin = make([]int, p.Days) })
	}},
	{RuleCook, func(p Problem) Problem {
		p.CookMinutes = slices.Repeat([]int{maxFigure * maxDays}, p.Days)
		return p
	}},
	{RuleRepeats, func(p Problem) Problem { return eachRecipe(p, func(r *Recipe) { r.Repeats = p.Days }) }},
	{RuleGap, func(p Problem) Problem { return eachRecipe(p, func(r *Recipe) { r.GapDays = 0 }) }},
	{RuleEnergyTotal, func(p Problem) Problem { return eachClass(p, func(c *Class) { c.EnergyTotal = 0 }) }},
}

func eachSlot(p Problem, change func(*Slot)) Problem {
	p.Slots = slices.Clone(p.Slots)
	for i := range p.Slots {
		change(&p.Slots[i])
	}
	return p
}

func eachClass(p Problem, change func(*Class)) Problem {
	p.Classes = slices.Clone(p.Classes)
	for i := range p.Classes {
		change(&p.Classes[i])
	}
	return p
}

func eachRecipe(p Problem, change func(*Recipe)) Problem {
	p.Recipes = slices.Clone(p.Recipes)
	for i := range p.Recipes {
		change(&p.Recipes[i])
	}
	return p
}

// blame drops one rule at a time and reports the first that lets a plan be found. Broken is what the best attempt broke; day is one
// that has no menu at all, 0 if each has. Proven tells that there is no plan, not just that none was found.
func blame(ctx context.Context, p *Problem, broken, day int, proven bool, o Options) *Infeasible {
	none := "no plan was found that keeps every rule"
	if proven {
		none = "no plan keeps every rule"
	}
	for _, r := range relaxations {
		if ctx.Err() != nil {
			break
		}
		eased := r.drop(*p)
		m := newModel(&eased)
		if m.cannot() != nil {
			continue
		}
		s := newSolver(ctx, m, Options{Steps: o.Steps / 8, Seed: o.Seed})
		s.untilFound = true
		if s.run(); s.search != nil && s.search.best != nil && s.search.found.broken == 0 {
			return &Infeasible{Rule: r.rule, Day: day, Slot: -1, Class: -1, Reachable: broken, Proven: proven, text: fmt.Sprintf(
				"%s: %s, but one is found without %s; ease that first", where(day), none, r.rule)}
		}
	}
	return &Infeasible{Rule: RuleNone, Day: day, Slot: -1, Class: -1, Reachable: broken, Proven: proven, text: fmt.Sprintf(
		"%s: %s, and dropping any one rule does not help; the best attempt breaks %d rules", where(day), none, broken)}
}

func where(day int) string {
	if day > 0 {
		return fmt.Sprintf("day %d", day)
	}
	return "the trip"
}
