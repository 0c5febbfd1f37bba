package shopping

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func finding(severity findings.Severity, code string, food trip.FoodID, what, why, remedy prose.Text) findings.Finding {
	return findings.Finding{
		Severity: severity, Stage: findings.Shopping, Code: code,
		Place: findings.Place{Food: food}, What: what, Why: why, Remedy: remedy,
	}
}

// findings speaks of what the shops of a counter do not have.
func (w *ware) findings() []findings.Finding {
	l := w.line
	rest := units.Mass(0)
	for _, b := range l.Buys {
		if b.Package == loose {
			rest += b.Net
		}
	}
	switch {
	case rest == 0:
		return nil
	case len(w.food.Packages) == 0:
		return []findings.Finding{noPackage(w.food, rest)}
	case len(w.item.Packages) == 0:
		return []findings.Finding{notSold(w.food, rest)}
	default:
		return []findings.Finding{outOfStock(w.food, l, rest)}
	}
}

func noPackage(f *trip.Food, mass units.Mass) findings.Finding {
	return finding(findings.LookAt, "no-package", f.ID,
		prose.Say("Nobody entered how %s is sold: %s stands on the list by weight, at no known price.", f.Name, mass),
		prose.Say("Only whole packages can be bought, and their sizes decide what is left over."),
		prose.Say("Enter its packages, with net weight and price."))
}

func notSold(f *trip.Food, mass units.Mass) findings.Finding {
	return finding(findings.LookAt, "not-sold", f.ID,
		prose.Say("No shop that is used near home sells %s: %s stands on the list by weight, at no known price.", f.Name, mass),
		prose.Say("The shops that are used, and where they stand."),
		prose.Say("Use one of the shops that sell it, or enter another package."))
}

func leastOrder(t *trip.Trip, s *trip.Shop) findings.Finding {
	price := prose.Price{Amount: s.LeastOrder, Currency: t.Currency}
	return finding(findings.LookAt, "least-order", 0,
		prose.Say("%s sells nothing below %s, and no purchase there reaches it.", s.Name, price),
		prose.Say("The least order entered for the shop, what is needed, and what it has."),
		prose.Say("Do not use the shop, buy more there for other trips, or ask it."))
}

func outOfStock(f *trip.Food, l *Line, mass units.Mass) findings.Finding {
	what := prose.Say("%s is %s short: the shops entered do not have enough.", f.Name, mass)
	if l.Deadline.IsSet() {
		what = prose.Say("%s is %s short by %s: the shops entered do not have enough.", f.Name, mass, l.Deadline)
	}
	return finding(findings.MustFix, "out-of-stock", f.ID, what,
		prose.Say("Needed %s, at home %s, to be had in packages %s.", l.Needed, l.FromHome, l.Bought-mass),
		prose.Say("Find another shop or package, or swap the food in some meals."))
}

// findings speaks of the list as a whole.
func (r *Result) findings(t *trip.Trip) []findings.Finding {
	var list []findings.Finding
	if r.Unpriced > 0 {
		list = append(list, finding(findings.Note, "price-unknown", 0,
			prose.Plural(r.Unpriced,
				prose.Say("%d line of the shopping list has no price: the cost shown is a lower bound.", r.Unpriced),
				prose.Say("%d lines of the shopping list have no price: the cost shown is a lower bound.", r.Unpriced)),
			prose.Say("A price that nobody gave is not zero."), prose.Say("Enter the prices, or round the budget up.")))
	}
	list = append(list, r.budgetFindings(t)...)
	list = append(list, r.closedFindings(t)...)
	return append(list, r.lateFindings(t)...)
}

func (r *Result) budgetFindings(t *trip.Trip) []findings.Finding {
	budget, known := t.Settings.Budget.Get()
	if !known {
		return nil
	}
	total := r.Cost + r.Fees
	price := func(amount units.Money) prose.Price { return prose.Price{Amount: amount, Currency: t.Currency} }
	switch {
	case total > budget:
		what := prose.Say("Food, fuel and fees cost %s, %s over the budget of %s.", price(total), price(total-budget), price(budget))
		if r.Unpriced > 0 {
			what = prose.Say("Food, fuel and fees cost at least %s, %s over the budget of %s.", price(total), price(total-budget), price(budget))
		}
		return []findings.Finding{finding(findings.LookAt, "over-budget", 0, what,
			prose.Say("Packages %s, parcels and visits %s.", price(r.Cost), price(r.Fees)),
			prose.Say("Swap the dearest foods, share leftovers with another trip, or raise the budget."))}
	case r.Unpriced > 0:
		return []findings.Finding{finding(findings.Note, "budget-unsure", 0,
			prose.Plural(r.Unpriced,
				prose.Say("Whether the budget of %s holds is not known: %s is priced, %d line is not.", price(budget), price(total), r.Unpriced),
				prose.Say("Whether the budget of %s holds is not known: %s is priced, %d lines are not.", price(budget), price(total), r.Unpriced)),
			prose.Say("A price that nobody gave is not zero."), prose.Say("Enter the prices."))}
	default:
		return nil
	}
}

// closedFindings: a shop that is shut on shopping day.
func (r *Result) closedFindings(t *trip.Trip) []findings.Finding {
	var list []findings.Finding
	for _, v := range r.Visits {
		shop := t.Shop(v.Shop)
		if v.Point != 0 || shop == nil || !v.On.IsSet() || shop.OpenOn(t.Settings.ShoppingDay) {
			continue
		}
		remedy := prose.Say("Go there on %s, the last open day before, or move the shopping day.", v.On)
		if !shop.OpenOn(v.On) {
			remedy = prose.Say("Enter its opening days, or do not use it.")
		}
		list = append(list, finding(findings.LookAt, "shop-shut", 0,
			prose.Say("%s is closed on %s, the shopping day.", shop.Name, t.Settings.ShoppingDay),
			prose.Say("The opening days and closed dates entered for the shop."), remedy))
	}
	return list
}

// lateFindings: shopping after the first food is needed.
func (r *Result) lateFindings(t *trip.Trip) []findings.Finding {
	day := t.Settings.ShoppingDay
	var first *Line
	for i := range r.Lines {
		l := &r.Lines[i]
		if l.Point == 0 && l.Deadline.IsSet() && l.Bought > 0 && (first == nil || l.Deadline < first.Deadline) {
			first = l
		}
	}
	if !day.IsSet() || first == nil || day <= first.Deadline {
		return nil
	}
	return []findings.Finding{finding(findings.MustFix, "shopping-late", first.Food,
		prose.Say("Shopping is on %s, but food is needed by %s.", day, first.Deadline),
		prose.Say("The packing night, or the last day on which a box can be posted."),
		prose.Plural(int(day-first.Deadline), prose.Say("Shop at least %d day earlier.", int(day-first.Deadline)),
			prose.Say("Shop at least %d days earlier.", int(day-first.Deadline))))}
}
