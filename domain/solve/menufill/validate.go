package menufill

import (
	"errors"
	"fmt"
	"slices"
)

// maxDays keeps the days of a recipe in one machine word.
const maxDays = 62

// maxFigure and maxBurden keep every sum of the search inside 64 bits.
const (
	maxFigure = 100_000
	maxBurden = 10_000_000
)

// validate names every fault of the input that is not a matter of choice of recipes.
func (p *Problem) validate() error {
	var faults []error
	add := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	if p.Days < 1 || p.Days > maxDays {
		add("%d days: give 1 to %d", p.Days, maxDays)
		return errors.Join(faults...)
	}
	if len(p.CookMinutes) != p.Days {
		add("cook minutes for %d days: give one for each of the %d days", len(p.CookMinutes), p.Days)
	}
	w := p.Weights
	if w.Mass < 0 || w.Cost < 0 || w.Repeat < 0 || w.Mass+w.Cost == 0 || max(w.Mass, w.Cost) > 100 || w.Repeat > maxFigure {
		add("weights %+v: give mass and cost from 0 to 100, not both 0, and repeat from 0 to %d", w, maxFigure)
	}
	for i, s := range p.Slots {
		faults = append(faults, p.slotFaults(i, s)...)
	}
	for _, c := range p.Classes {
		faults = append(faults, p.classFaults(c)...)
	}
	for i, r := range p.Recipes {
		faults = append(faults, p.recipeFaults(i, r)...)
	}
	for i, f := range p.Families {
		faults = append(faults, p.familyFaults(i, f)...)
	}
	for i, w := range p.Wants {
		if w.Burden < 0 || w.Burden > maxBurden {
			add("want %d (%s): burden %d: give 0 to %d", i, w.Name, w.Burden, maxBurden)
		}
	}
	return errors.Join(faults...)
}

func (p *Problem) slotFaults(i int, s Slot) (faults []error) {
	add := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("slot %d: "+format, append([]any{i}, args...)...))
	}
	if s.Day < 1 || s.Day > p.Days {
		add("day %d: give 1 to %d", s.Day, p.Days)
	}
	if s.Pots < 1 {
		add("%d pots: give at least 1", s.Pots)
	}
	if len(s.Eaters) != len(p.Classes) {
		add("eaters for %d classes: give one count for each of the %d classes", len(s.Eaters), len(p.Classes))
	}
	all := 0
	for _, n := range s.Eaters {
		if n < 0 || n > 1000 {
			add("%d eaters: give 0 to 1000", n)
		}
		all += n
	}
	if all > 1000 {
		add("%d eaters in all: give at most 1000", all)
	}
	if n := len(s.Offers); n > 0 && n != len(p.Recipes) {
		add("%d offers: give none, or one for each of the %d recipes", n, len(p.Recipes))
	}
	for r, o := range s.Offers {
		if outside(o.CookMinutes) || o.Burden < 0 || o.Burden > maxBurden {
			add("offer of recipe %d: cook minutes and burden cannot be negative or over %d and %d", r, maxFigure, maxBurden)
		}
		for _, fault := range p.servingFaults(o.Servings) {
			add("offer of recipe %d: %w", r, fault)
		}
	}
	seen := map[int]bool{}
	for _, r := range s.Fixed {
		if r < 0 || r >= len(p.Recipes) || seen[r] {
			add("fixed recipe %d: give each recipe once, by its index below %d", r, len(p.Recipes))
		}
		seen[r] = true
	}
	return faults
}

func (p *Problem) classFaults(c Class) (faults []error) {
	add := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("class %s: "+format, append([]any{c.Name}, args...)...))
	}
	if len(c.EnergyMin) != p.Days || len(c.EnergyMax) != p.Days || len(c.ProteinMin) != p.Days {
		add("give energy minimum, energy maximum and protein minimum for each of the %d days", p.Days)
		return faults
	}
	for d := range c.EnergyMin {
		if c.EnergyMin[d] > c.EnergyMax[d] {
			add("day %d: energy minimum %d is over the maximum %d kcal", d+1, c.EnergyMin[d], c.EnergyMax[d])
		}
		if outside(c.EnergyMin[d]) || outside(c.EnergyMax[d]) || outside(c.ProteinMin[d]) {
			add("day %d: give figures from 0 to %d", d+1, maxFigure)
		}
	}
	if len(c.Wants) != len(p.Wants) {
		add("give what it should get of each of the %d wants", len(p.Wants))
	}
	for k, least := range c.Wants {
		if len(least) != p.Days {
			add("want %d: give a figure for each of the %d days", k, p.Days)
		}
		for _, figure := range least {
			if outside(max(figure, -figure)) {
				add("want %d: %d: give figures from -%d to %d", k, figure, maxFigure, maxFigure)
			}
		}
	}
	if c.EnergyTotal < 0 || c.EnergyTotal > maxDays*maxFigure {
		add("energy of the trip %d kcal: give 0 to %d", c.EnergyTotal, maxDays*maxFigure)
	}
	return faults
}

func (p *Problem) recipeFaults(i int, r Recipe) (faults []error) {
	add := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("recipe %d (%s): "+format, append([]any{i, r.Name}, args...)...))
	}
	if outside(r.CookMinutes) || r.LastDay < 0 || r.Repeats < 0 || r.GapDays < 0 {
		add("cook minutes, last day, repeats and gap days cannot be negative or over %d", maxFigure)
	}
	for _, fault := range p.servingFaults(r.Servings) {
		add("%w", fault)
	}
	return faults
}

func (p *Problem) servingFaults(servings []Serving) (faults []error) {
	add := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	if len(servings) != len(p.Classes) {
		add("servings for %d classes: give one for each of the %d classes", len(servings), len(p.Classes))
	}
	for _, v := range servings {
		if outside(v.Kcal) || outside(v.ProteinDg) || outside(v.MassDg) || outside(v.CostCents) || outside(v.Burden) {
			add("serving %+v: give figures from 0 to %d", v, maxFigure)
		}
		if len(v.Amounts) != len(p.Wants) {
			add("serving %+v: give an amount of each of the %d wants", v, len(p.Wants))
		}
		for _, amount := range v.Amounts {
			if outside(max(amount, -amount)) {
				add("serving %+v: give amounts from -%d to %d", v, maxFigure, maxFigure)
			}
		}
	}
	return faults
}

func (p *Problem) familyFaults(i int, f Family) (faults []error) {
	if f.Days < 1 || f.Days > p.Days || f.Burden < 0 || f.Burden > maxBurden {
		faults = append(faults, fmt.Errorf("family %d: give days from 1 to %d and a burden from 0 to %d", i, p.Days, maxBurden))
	}
	for at, r := range f.Recipes {
		if r < 0 || r >= len(p.Recipes) || slices.Contains(f.Recipes[:at], r) {
			faults = append(faults, fmt.Errorf("family %d: recipe %d: give each recipe once, by its index below %d", i, r, len(p.Recipes)))
		}
	}
	return faults
}

func outside(figure int) bool { return figure < 0 || figure > maxFigure }
