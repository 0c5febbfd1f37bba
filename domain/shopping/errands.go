package shopping

import (
	"slices"

	"sumpter/domain/prose"
	"sumpter/domain/solve/wholepacks"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Errand is a choice of shops near home that no other beats by cost and number
// of visits.
type Errand struct {
	Shops       []string    `json:"shops"` // that are visited
	Cost        units.Money `json:"cost"`  // of food whose price is known, and visits
	Unpriced    int         `json:"unpriced"`
	Leftover    units.Mass  `json:"leftover_g"`
	Current     bool        `json:"current"` // these are the shops of the list
	Recommended bool        `json:"recommended"`
	Why         prose.Text  `json:"why,omitzero"` // of the recommended one
	Proven      bool        `json:"proven"`       // no other way with so few visits is cheaper
}

// errands weighs every choice of shops near home, those the leader does not use
// among them. The list as it stands is among them, beaten or not.
func errands(t *trip.Trip, waresOf func(*trip.Trip, *counter) []ware, now solved, c *counter, wares []ware) []Errand {
	every := newCounter(t, 0, true)
	if len(every.named()) < 2 {
		return nil
	}
	var list []Errand
	current := errand(c, wares, now.orders[0])
	current.Current = true
	if len(every.shops) == len(c.shops) {
		for _, o := range now.orders {
			list = append(list, errand(c, wares, o))
		}
	} else {
		all := waresOf(t, every)
		for _, o := range every.solve(all).orders {
			list = append(list, errand(every, all, o))
		}
	}
	if at := slices.IndexFunc(list, func(e Errand) bool { return slices.Equal(e.Shops, current.Shops) }); at >= 0 {
		list[at].Current = true
	} else {
		list = append(list, current)
	}
	if len(list) > 0 {
		list[0].Recommended = true
		list[0].Why = whyErrand(t, list)
	}
	return list
}

func errand(c *counter, wares []ware, o wholepacks.Order) Errand {
	e := Errand{Shops: []string{}, Cost: units.Money(o.VisitCents), Proven: o.Proven}
	for _, v := range c.visits(wares, o) {
		e.Shops = append(e.Shops, v.Shop)
	}
	for i := range wares {
		w := &wares[i]
		e.Leftover += units.Mass(o.Purchases[i].LeftGrams) * units.Gram
		known := w.short == 0
		for n, place := range w.packages {
			if count := o.Purchases[i].Counts[n][0]; count > 0 {
				each, priced := priceOf(&w.food.Packages[place], int(count)+w.had[n])
				e.Cost += each * units.Money(count)
				known = known && priced
			}
		}
		if !known {
			e.Unpriced++
		}
	}
	return e
}

// whyErrand says what the cheapest choice saves against one visit fewer.
func whyErrand(t *trip.Trip, list []Errand) prose.Text {
	if len(list) == 1 {
		return prose.Say("No other choice of shops costs less or takes fewer visits.")
	}
	saved := prose.Price{Amount: list[1].Cost - list[0].Cost, Currency: t.Currency}
	if len(list[1].Shops) > len(list[0].Shops) {
		return prose.Say("It costs %s less than the list as it is, with fewer visits.", saved)
	}
	return prose.Say("Least cost, visits paid: %s less than with only %s.", saved, shopList(list[1].Shops))
}

func shopList(names []string) prose.Text {
	if len(names) == 0 {
		return prose.Say("any shop")
	}
	return prose.List(" + ", names)
}
