package shopping

import (
	"errors"
	"slices"

	"sumpter/domain/optional"
	"sumpter/domain/solve/wholepacks"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// loose is the Package of a Buy for which the food has no package.
const loose = -1

// unpricedPerGram stands for a price nobody gave: dearer than anything sold, so
// that such packages come last, and by the gram, so that least is left over.
const unpricedPerGram = 100_000

// ware is a line put before the solver.
type ware struct {
	line     *Line
	food     *trip.Food
	packages []int // places in the food's packages
	had      []int // how many of each are bought already
	item     wholepacks.Item
	short    units.Mass // what no shop has
	exact    bool       // all packages, all priced: its best is the best
	rounded  bool       // some package holds no whole grams, as those in ounces: the solver took less
}

// counter is the shops of one place: near home, or at a resupply point.
type counter struct {
	trip  *trip.Trip
	point trip.PointID
	all   bool // shops that the leader does not use as well
	shops []wholepacks.Shop
	names []string // as packages and the list have them
	at    map[string]int
	had   map[goods]int // bought already: not in stock any more, and counted to a price by the many
}

// newCounter finds the shops of a place. They stand in the order in which
// foods name them, so that a name decides nothing.
func newCounter(t *trip.Trip, point trip.PointID, all bool) *counter {
	c := &counter{trip: t, point: point, all: all, at: map[string]int{}}
	for i := range t.Foods {
		for _, sold := range t.Foods[i].Packages {
			c.open(sold.Shop)
		}
	}
	return c
}

// open tells whether a shop is one of these, and which.
func (c *counter) open(name string) (int, bool) {
	key := trip.ShopKey(name)
	if place, known := c.at[key]; known {
		return place, place >= 0
	}
	shop := c.trip.Shop(name)
	here := shop == nil && c.point == 0 || shop != nil && shop.Point == c.point && (shop.Use || c.all)
	if !here {
		c.at[key] = -1
		return -1, false
	}
	s := wholepacks.Shop{Name: name, VisitCents: []int64{0}, LeastCents: []int64{0}, Everywhere: key == ""}
	if shop != nil {
		s.Name, s.VisitCents[0], s.LeastCents[0] = shop.Name, int64(shop.VisitFee), int64(shop.LeastOrder)
	}
	c.at[key] = len(c.shops)
	c.shops, c.names = append(c.shops, s), append(c.names, s.Name)
	return len(c.shops) - 1, true
}

// named lists the shops that have a name.
func (c *counter) named() []string {
	return slices.DeleteFunc(slices.Clone(c.names), func(name string) bool { return name == "" })
}

// ware states a line for the solver: with the packages whose price is known, if
// they suffice, else with all. A net that is not whole grams counts as the
// grams below.
func (c *counter) ware(l *Line, f *trip.Food) ware {
	grams := l.missing().CeilGrams()
	priced := c.offer(l, f, grams, false)
	if priced.short == 0 {
		return priced
	}
	all := c.offer(l, f, grams, true)
	all.item.NeedGrams[0] -= all.short.CeilGrams()
	return all
}

func (c *counter) offer(l *Line, f *trip.Food, grams int64, unpriced bool) ware {
	w := ware{line: l, food: f, exact: true, item: wholepacks.Item{Name: f.Name, NeedGrams: []int64{grams}, Keeps: true}}
	missing := grams
	for p := range f.Packages {
		pack := &f.Packages[p]
		shop, open := c.open(pack.Shop)
		if !open {
			continue
		}
		net := int64(pack.Net / units.Gram)
		price, known := pack.Price.Get()
		w.exact = w.exact && known
		w.rounded = w.rounded || pack.Net%units.Gram != 0
		if net <= 0 || !known && !unpriced {
			continue
		}
		o := wholepacks.Offer{PriceCents: int64(price), Available: wholepacks.Unlimited, ManyFrom: int64(pack.ManyFrom), ManyCents: int64(pack.ManyPrice.Or(price))}
		if !known {
			o.PriceCents, o.ManyFrom, o.ManyCents = min(net*unpricedPerGram, wholepacks.MostPriceCents), 0, 0
		}
		had := c.had[goodsOf(f.ID, pack.Net, pack.Shop)]
		if stock, limited := pack.InStock.Get(); limited {
			o.Available = int64(max(0, stock-had))
		}
		if o.ManyFrom > 0 && had > 0 {
			if o.ManyFrom -= int64(had); o.ManyFrom <= 0 {
				o.PriceCents, o.ManyFrom = o.ManyCents, 0
			}
		}
		missing -= min(missing, min(o.Available, missing/net+1)*net)
		w.packages, w.had = append(w.packages, p), append(w.had, had)
		w.item.Packages = append(w.item.Packages, wholepacks.Package{NetGrams: net, Shop: shop, OneStock: true, Offers: []wholepacks.Offer{o}})
	}
	w.short = units.Mass(missing) * units.Gram
	return w
}

// buy enters a purchase in the line of a ware.
func (w *ware) buy(p wholepacks.Purchase, proven bool) {
	l := w.line
	for i, place := range w.packages {
		count := p.Counts[i][0]
		if count == 0 {
			continue
		}
		pack := &w.food.Packages[place]
		b := Buy{Package: place, Count: int(count), Net: pack.Net, Shop: pack.Shop}
		each, known := priceOf(pack, b.Count+w.had[i])
		if known {
			b.Each = optional.Of(each)
		}
		l.Buys = append(l.Buys, b)
		l.Bought += pack.Net * units.Mass(count)
		l.Cost += each * units.Money(count)
		l.CostKnown = l.CostKnown && known
	}
	l.BestProven = proven && w.exact && w.short == 0 && (!w.rounded || w.isCheapest())
	if rest := l.missing() - l.Bought; rest > 0 {
		l.Buys = append(l.Buys, Buy{Package: loose, Count: 1, Net: rest})
		l.Bought += rest
		l.CostKnown, l.BestProven = false, false
	}
	l.Leftover = l.FromHome + l.Had + l.Bought - l.Needed
}

// solved is what a counter sells for all its wares.
type solved struct {
	orders []wholepacks.Order // that nothing beats by cost and visits, cheapest first
	missed []string           // shops whose least order no purchase reaches
}

// solve buys all wares together. Least orders that cannot be reached are told
// and set aside. What the solver cannot take is bought by weight.
func (c *counter) solve(wares []ware) solved {
	b := wholepacks.Basket{Shops: c.shops}
	for i := range wares {
		if _, err := wholepacks.Solve(wares[i].item); err != nil {
			wares[i].item.NeedGrams = []int64{0} // beyond any trip: all of it loose
		}
		b.Items = append(b.Items, wares[i].item)
	}
	orders, err := wholepacks.Unbeaten(b)
	if err == nil {
		return solved{orders: orders}
	}
	b.Shops = slices.Clone(c.shops)
	for i := range b.Shops {
		b.Shops[i].LeastCents = nil
	}
	if orders, err = wholepacks.Unbeaten(b); err != nil {
		return solved{}
	}
	s := solved{orders: orders[:1]}
	for _, v := range c.visits(wares, orders[0]) {
		if shop := c.trip.Shop(v.Shop); shop != nil && v.Spent < shop.LeastOrder {
			s.missed = append(s.missed, v.Shop)
		}
	}
	return s
}

// visits lists the shops that an order buys at, in their order.
func (c *counter) visits(wares []ware, o wholepacks.Order) []Visit {
	visits := make([]Visit, len(c.shops))
	used := make([]bool, len(c.shops))
	for i := range wares {
		for n, pack := range wares[i].item.Packages {
			count := o.Purchases[i].Counts[n][0]
			if count == 0 {
				continue
			}
			used[pack.Shop] = true
			visits[pack.Shop].Lines++
			if each, known := priceOf(&wares[i].food.Packages[wares[i].packages[n]], int(count)+wares[i].had[n]); known {
				visits[pack.Shop].Spent += each * units.Money(count)
			}
		}
	}
	var list []Visit
	for i, name := range c.names {
		if used[i] && name != "" {
			v := visits[i]
			v.Shop, v.Point, v.Fee = name, c.point, units.Money(c.shops[i].VisitCents[0])
			list = append(list, v)
		}
	}
	return list
}

// priceOf is what each of so many packages costs, if anybody said.
func priceOf(p *trip.Package, count int) (units.Money, bool) {
	if many, known := p.ManyPrice.Get(); known && p.ManyFrom > 0 && count >= p.ManyFrom {
		return many, true
	}
	return p.Price.Get()
}

// share shares out what there is of a food that is bought for several deadlines
// and of which they took more: the best for that food alone.
func share(wares []ware, purchases []wholepacks.Purchase) bool {
	first := wares[0].item
	for p, pack := range first.Packages {
		var taken int64
		for i := range purchases {
			taken += purchases[i].Counts[p][0]
		}
		if taken > pack.Offers[0].Available {
			return shareOut(wares, purchases)
		}
	}
	return false
}

func shareOut(wares []ware, purchases []wholepacks.Purchase) bool {
	item := wholepacks.Item{Name: wares[0].item.Name}
	for i := range wares {
		item.NeedGrams = append(item.NeedGrams, wares[i].item.NeedGrams[0])
	}
	for _, pack := range wares[0].item.Packages {
		offers := make([]wholepacks.Offer, len(wares))
		for i := range offers {
			offers[i] = pack.Offers[0]
		}
		pack.Offers = offers
		item.Packages = append(item.Packages, pack)
	}
	whole, err := wholepacks.Solve(item)
	var short *wholepacks.ShortError
	for errors.As(err, &short) && item.NeedGrams[short.Deadline] > 0 {
		// The latest goes short: its need is cut to what is left.
		k := short.Deadline
		item.NeedGrams[k] -= min(item.NeedGrams[k], max(1, short.ShortGrams))
		wares[k].short += units.Mass(short.ShortGrams) * units.Gram
		whole, err = wholepacks.Solve(item)
	}
	if err != nil {
		return false
	}
	for i := range wares {
		counts := make([][]int64, len(whole.Counts))
		for p := range counts {
			counts[p] = []int64{whole.Counts[p][i]}
		}
		purchases[i].Counts = counts
	}
	return true
}
