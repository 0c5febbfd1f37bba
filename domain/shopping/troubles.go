package shopping

import (
	"fmt"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func finding(severity findings.Severity, code string, food trip.FoodID, what, why, remedy string) findings.Finding {
	return findings.Finding{
		Severity: severity, Stage: findings.Shopping, Code: code,
		Place: findings.Place{Food: food}, What: what, Why: why, Remedy: remedy,
	}
}

func noPackage(t *trip.Trip, f *trip.Food, mass units.Mass) findings.Finding {
	return finding(findings.LookAt, "no-package", f.ID,
		fmt.Sprintf("Nobody entered how %s is sold: %s stands on the list by weight, at no known price.", f.Name, mass.Format(t.Units)),
		"Only whole packages can be bought, and their sizes decide what is left over.",
		"Enter its packages, with net weight and price.")
}

func outOfStock(t *trip.Trip, f *trip.Food, l *Line, mass units.Mass) findings.Finding {
	by := ""
	if l.Deadline.IsSet() {
		by = " by " + l.Deadline.Spoken()
	}
	return finding(findings.MustFix, "out-of-stock", f.ID,
		fmt.Sprintf("%s is %s short%s: the shops entered do not have enough.", f.Name, mass.Format(t.Units), by),
		fmt.Sprintf("Needed %s, at home %s, to be had in packages %s.", l.Needed.Format(t.Units), l.FromHome.Format(t.Units), (l.Bought-mass).Format(t.Units)),
		"Find another shop or package, or swap the food in some meals.")
}

// findings speaks of the list as a whole.
func (r *Result) findings(t *trip.Trip) []findings.Finding {
	var list []findings.Finding
	if r.Unpriced > 0 {
		list = append(list, finding(findings.Note, "price-unknown", 0,
			fmt.Sprintf("%d lines of the shopping list have no price: the cost shown is a lower bound.", r.Unpriced),
			"A price that nobody gave is not zero.", "Enter the prices, or round the budget up."))
	}
	list = append(list, r.budgetFindings(t)...)
	return append(list, r.lateFindings(t)...)
}

func (r *Result) budgetFindings(t *trip.Trip) []findings.Finding {
	budget, known := t.Settings.Budget.Get()
	if !known {
		return nil
	}
	total := r.Cost + r.Fees
	bound := ""
	if r.Unpriced > 0 {
		bound = "at least "
	}
	switch {
	case total > budget:
		return []findings.Finding{finding(findings.LookAt, "over-budget", 0,
			fmt.Sprintf("Food, fuel and fees cost %s%s, %s over the budget of %s.", bound, total.Format(t.Currency), (total-budget).Format(t.Currency), budget.Format(t.Currency)),
			fmt.Sprintf("Packages %s, parcels and visits %s.", r.Cost.Format(t.Currency), r.Fees.Format(t.Currency)),
			"Swap the dearest foods, share leftovers with another trip, or raise the budget.")}
	case r.Unpriced > 0:
		return []findings.Finding{finding(findings.Note, "budget-unsure", 0,
			fmt.Sprintf("Whether the budget of %s holds is not known: %s is priced, %d lines are not.", budget.Format(t.Currency), total.Format(t.Currency), r.Unpriced),
			"A price that nobody gave is not zero.", "Enter the prices.")}
	default:
		return nil
	}
}

// lateFindings: shopping after the first food is needed.
func (r *Result) lateFindings(t *trip.Trip) []findings.Finding {
	day := t.Settings.ShoppingDay
	var first *Line
	for i := range r.Lines {
		l := &r.Lines[i]
		if l.Deadline.IsSet() && l.Bought > 0 && (first == nil || l.Deadline < first.Deadline) {
			first = l
		}
	}
	if !day.IsSet() || first == nil || day <= first.Deadline {
		return nil
	}
	return []findings.Finding{finding(findings.MustFix, "shopping-late", first.Food,
		fmt.Sprintf("Shopping is on %s, but food is needed by %s.", day.Spoken(), first.Deadline.Spoken()),
		"The packing night, or the last day on which a box can be posted.",
		fmt.Sprintf("Shop at least %d days earlier.", int(day-first.Deadline)))}
}
