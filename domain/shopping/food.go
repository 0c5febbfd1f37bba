package shopping

import (
	"errors"

	"sumpter/domain/findings"
	"sumpter/domain/solve/wholepacks"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// loose is the Package of a Buy for which the food has no package.
const loose = -1

// buyFood covers the needs of one food, stock at home first.
func buyFood(t *trip.Trip, f *trip.Food, needs []need) ([]Line, []findings.Finding) {
	if len(needs) > 1 && keeps(t, f) {
		together := need{by: needs[0].by}
		for _, n := range needs {
			together.mass += n.mass
		}
		needs = []need{together}
	}
	var lines []Line
	var list []findings.Finding
	home := max(0, f.AtHome)
	shelf := newShelf(f)
	for _, n := range needs {
		line := Line{Food: f.ID, Deadline: n.by, Needed: n.mass, FromHome: min(home, n.mass)}
		home -= line.FromHome
		list = append(list, line.buy(f, shelf)...)
		// Stock that an earlier deadline takes might have served a later one better.
		line.BestProven = line.BestProven && (len(needs) == 1 || !shelf.limited)
		lines = append(lines, line)
	}
	return lines, list
}

// shelf is the packages of a food that are still to be had.
type shelf struct {
	stock   []int64
	limited bool
}

func newShelf(f *trip.Food) *shelf {
	s := &shelf{}
	for _, p := range f.Packages {
		left := int64(wholepacks.Unlimited)
		if n, known := p.InStock.Get(); known {
			left, s.limited = max(0, int64(n)), true
		}
		s.stock = append(s.stock, left)
	}
	return s
}

// buy fills in what a line buys.
func (l *Line) buy(f *trip.Food, s *shelf) []findings.Finding {
	missing := l.Needed - l.FromHome
	l.CostKnown, l.BestProven = true, true
	if missing <= 0 {
		return nil
	}
	if len(f.Packages) == 0 {
		l.addLoose(missing)
		return []findings.Finding{noPackage(f, missing)}
	}
	offer, purchase, short := choose(f, s, missing.CeilGrams())
	for i, p := range offer.packages {
		count := purchase.Counts[i][0]
		if count == 0 {
			continue
		}
		pack := &f.Packages[p]
		if s.stock[p] != wholepacks.Unlimited {
			s.stock[p] -= count
		}
		l.Buys = append(l.Buys, Buy{Package: p, Count: int(count), Net: pack.Net, Shop: pack.Shop})
		l.Bought += pack.Net * units.Mass(count)
		price, known := pack.Price.Get()
		l.Cost += price * units.Money(count)
		l.CostKnown = l.CostKnown && known
	}
	l.BestProven = offer.exact && short == 0
	var list []findings.Finding
	if rest := missing - l.Bought; short > 0 && rest > 0 {
		l.addLoose(rest)
		list = append(list, outOfStock(f, l, rest))
	}
	l.Leftover = l.FromHome + l.Bought - l.Needed
	return list
}

// addLoose adds what no package covers: its cost is not known.
func (l *Line) addLoose(mass units.Mass) {
	l.Buys = append(l.Buys, Buy{Package: loose, Count: 1, Net: mass})
	l.Bought += mass
	l.CostKnown, l.BestProven = false, false
	l.Leftover = l.FromHome + l.Bought - l.Needed
}

// offer is the packages put before the solver.
type offer struct {
	packages []int // places in the food's packages
	item     wholepacks.Item
	exact    bool // all packages, all priced, whole grams: its best is the best
}

// choose finds the best purchase of the packages whose price is known; only if
// these do not suffice, of all of them, as few grams as can be of the unpriced.
// What all of them cannot cover is short, in grams.
func choose(f *trip.Food, s *shelf, grams int64) (offer, wholepacks.Purchase, int64) {
	priced := offerOf(f, s, grams, false)
	if purchase, err := wholepacks.Solve(priced.item); err == nil {
		return priced, purchase, 0
	}
	all := offerOf(f, s, grams, true)
	purchase, err := wholepacks.Solve(all.item)
	var lack *wholepacks.ShortError
	switch {
	case err == nil:
		return all, purchase, 0
	case errors.As(err, &lack):
		all.item.NeedGrams[0] -= lack.ShortGrams
		if purchase, err = wholepacks.Solve(all.item); err == nil {
			return all, purchase, lack.ShortGrams
		}
	}
	// Beyond any trip (see the limits of wholepacks): all of it loose.
	return offer{}, wholepacks.Purchase{}, grams
}

// unpricedPerGram stands for a price nobody gave: dearer than anything sold, so
// that such packages come last, and by the gram, so that least is left over.
const unpricedPerGram = 100_000

// offerOf states the food for the solver. A net that is not whole grams counts
// as the grams below.
func offerOf(f *trip.Food, s *shelf, grams int64, unpriced bool) offer {
	o := offer{exact: true, item: wholepacks.Item{Name: f.Name, NeedGrams: []int64{grams}, Keeps: true}}
	for p := range f.Packages {
		pack := &f.Packages[p]
		net := int64(pack.Net / units.Gram)
		price, known := pack.Price.Get()
		if !known || pack.Net%units.Gram != 0 {
			o.exact = false
		}
		if net <= 0 || !known && !unpriced || known && price < 0 {
			continue
		}
		cents := int64(price)
		if !known {
			cents = min(net*unpricedPerGram, wholepacks.MostPriceCents)
		}
		o.packages = append(o.packages, p)
		o.item.Packages = append(o.item.Packages, wholepacks.Package{
			NetGrams: net, Offers: []wholepacks.Offer{{PriceCents: cents, Available: s.stock[p]}},
		})
	}
	return o
}
