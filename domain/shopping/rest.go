package shopping

import (
	"slices"

	"sumpter/domain/solve/wholepacks"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Rest is the list in the middle of shopping: what is still to buy once what
// was bought counts, whatever its packages and prices.
type Rest struct {
	Lines     []Line      // as the plan has them; Had is bought, Buys are still to buy
	Fuel      []FuelLine  // still to buy
	Spent     units.Money // for what was bought: as paid, else as priced
	ToPay     units.Money // for what is still to buy, as far as prices are known
	Fees      units.Money // parcels and visits, those made among them
	Unpriced  int         // purchases and lines of which nobody knows the price
	Leftovers []Leftover  // most energy first
}

// Expected is what all of it comes to, as far as prices are known.
func (r *Rest) Expected() units.Money { return r.Spent + r.ToPay + r.Fees }

// goods tells packages of food apart.
type goods struct {
	food trip.FoodID
	net  units.Mass
	shop string
}

func goodsOf(food trip.FoodID, net units.Mass, shop string) goods {
	return goods{food, net, trip.ShopKey(shop)}
}

// RestOf takes what is noted as bought off the planned list. What was bought as
// planned leaves the rest of the plan. Of a food of which something else was
// bought, or more, what is then missing is bought anew at least cost, in the
// shops that are visited anyway or at the price of another visit; if all that
// is left costs less when bought anew, it is.
func RestOf(t *trip.Trip, planned *Result) Rest {
	k := newRest(t, planned)
	for _, place := range k.places() {
		k.buyAt(place)
	}
	k.addFuel(planned.Fuel)
	k.addUp(planned)
	k.Leftovers = leftovers(t, k.Lines)
	return k.Rest
}

// rest is the list on the way to what is left of it.
type rest struct {
	Rest
	trip  *trip.Trip
	had   map[goods]int
	spent map[string]units.Money // by shop
	anew  []bool                 // lines for which something else was bought
}

func newRest(t *trip.Trip, planned *Result) *rest {
	k := &rest{trip: t, had: map[goods]int{}, spent: map[string]units.Money{}, anew: make([]bool, len(planned.Lines))}
	for i := range t.Progress.Purchases {
		p := &t.Progress.Purchases[i]
		amount, known := k.paid(planned, p)
		k.Spent += amount
		if !known {
			k.Unpriced++
		}
		if p.Food != 0 {
			k.had[goodsOf(p.Food, p.Net, p.Shop)] += p.Count
			k.spent[trip.ShopKey(p.Shop)] += amount
		}
	}
	k.Lines = slices.Clone(planned.Lines)
	for i := range k.Lines {
		k.Lines[i].Buys = slices.Clone(k.Lines[i].Buys)
	}
	k.takeOff()
	return k
}

// paid is what a purchase cost: as noted, else as planned, else as sold.
func (k *rest) paid(planned *Result, p *trip.Purchase) (units.Money, bool) {
	if amount, known := p.Paid.Get(); known || p.Other != "" {
		return amount, known
	}
	if p.Fuel != "" {
		for i := range k.trip.Fuels {
			if price, known := k.trip.Fuels[i].Price.Get(); known && k.trip.Fuels[i].Name == p.Fuel {
				return price * units.Money(p.Count), true
			}
		}
		return 0, false
	}
	bought := goodsOf(p.Food, p.Net, p.Shop)
	for _, l := range planned.Lines {
		for _, b := range l.Buys {
			if each, known := b.Each.Get(); known && goodsOf(l.Food, b.Net, b.Shop) == bought {
				return each * units.Money(p.Count), true
			}
		}
	}
	if food := k.trip.Food(p.Food); food != nil {
		for i := range food.Packages {
			sold := &food.Packages[i]
			if each, known := priceOf(sold, p.Count); known && goodsOf(food.ID, sold.Net, sold.Shop) == bought {
				return each * units.Money(p.Count), true
			}
		}
	}
	return 0, false
}

// takeOff takes what was bought off the lines: first as planned, the earliest
// deadline first; then what else was bought of the food, by mass, what is over
// with the last.
func (k *rest) takeOff() {
	left := make(map[goods]int, len(k.had))
	for g, n := range k.had {
		left[g] = n
	}
	for i := range k.Lines {
		l := &k.Lines[i]
		for j := range l.Buys {
			b := &l.Buys[j]
			g := goodsOf(l.Food, b.Net, b.Shop)
			taken := min(b.Count, left[g])
			b.Count -= taken
			left[g] -= taken
			l.took(b, taken)
		}
		l.Buys = slices.DeleteFunc(l.Buys, func(b Buy) bool { return b.Count == 0 })
	}
	other := map[trip.FoodID]map[trip.PointID]units.Mass{}
	for g, n := range left {
		if n > 0 {
			at := k.boughtFor(g)
			if other[g.food] == nil {
				other[g.food] = map[trip.PointID]units.Mass{}
			}
			other[g.food][at] += units.Mass(n) * g.net
		}
	}
	for food, masses := range other {
		for point, mass := range masses {
			k.takeOther(food, point, mass)
		}
	}
	for i := range k.Lines {
		if l := &k.Lines[i]; k.anew[i] {
			l.Buys, l.Bought, l.Cost, l.CostKnown = nil, 0, 0, true
			l.Leftover = l.FromHome + l.Had - l.Needed
		}
	}
}

// took moves packages from what is to be bought to what is.
func (l *Line) took(b *Buy, count int) {
	mass := b.Net * units.Mass(count)
	l.Had += mass
	l.Bought -= mass
	if each, known := b.Each.Get(); known {
		l.Cost -= each * units.Money(count)
	}
}

// boughtFor is the place whose lines a purchase serves: where its shop stands,
// or, if nothing of the food is asked for there, where it is.
func (k *rest) boughtFor(g goods) trip.PointID {
	stands := trip.PointID(0)
	if shop := k.trip.Shop(g.shop); shop != nil {
		stands = shop.Point
	}
	first := trip.PointID(-1)
	for _, l := range k.Lines {
		if l.Food == g.food && (first < 0 || l.Point == stands) {
			first = l.Point
		}
	}
	return max(0, first)
}

func (k *rest) takeOther(food trip.FoodID, point trip.PointID, mass units.Mass) {
	last := -1
	for i := range k.Lines {
		l := &k.Lines[i]
		if l.Food != food || l.Point != point {
			continue
		}
		last = i
		if open := min(mass, l.missing()); open > 0 {
			l.Had += open
			mass -= open
			k.anew[i] = true
		}
	}
	if last >= 0 && mass > 0 {
		k.Lines[last].Had += mass
		k.anew[last] = true
	}
}

// places lists those of lines for which something else was bought.
func (k *rest) places() []trip.PointID {
	var list []trip.PointID
	for i := range k.Lines {
		if k.anew[i] && !slices.Contains(list, k.Lines[i].Point) {
			list = append(list, k.Lines[i].Point)
		}
	}
	return list
}

// buyAt buys what is missing at a place.
func (k *rest) buyAt(place trip.PointID) {
	only, onlyCost := k.try(place, func(i int) bool { return k.anew[i] })
	all, allCost := k.try(place, func(int) bool { return true })
	if allCost < onlyCost {
		only = all
	}
	for i, l := range only {
		if l != nil {
			k.Lines[i] = *l
		}
	}
}

// try buys some lines of a place anew and tells what all of the place then
// costs, visits that are still to be made among it. It changes nothing.
func (k *rest) try(place trip.PointID, anew func(line int) bool) (bought []*Line, cost units.Money) {
	c := newCounter(k.trip, place, false)
	c.had = k.had
	spent := map[string]units.Money{}
	for shop, amount := range k.spent {
		spent[shop] += amount
	}
	var r Result
	var from []int
	for i, l := range k.Lines {
		switch {
		case l.Point != place:
		case anew(i):
			l.Buys, l.Bought, l.Cost, l.CostKnown = nil, 0, 0, true
			r.Lines, from = append(r.Lines, l), append(from, i)
		default:
			cost += l.Cost
			for _, b := range l.Buys {
				spent[trip.ShopKey(b.Shop)] += b.Each.Or(0) * units.Money(b.Count)
				if _, visited := k.spent[trip.ShopKey(b.Shop)]; !visited {
					k.payVisit(c, b.Shop, &cost)
				}
			}
		}
	}
	for i := range c.shops {
		if amount, visited := spent[trip.ShopKey(c.names[i])]; visited {
			c.shops[i].VisitCents = []int64{0}
			c.shops[i].LeastCents = []int64{max(0, c.shops[i].LeastCents[0]-int64(amount))}
		}
	}
	wares := r.waresOf(k.trip, c)
	s := c.solve(wares)
	if len(s.orders) == 0 {
		for i := range wares {
			wares[i].buy(wholepacks.Purchase{Counts: noCounts(&wares[i])}, false)
		}
	} else {
		best := s.orders[0]
		shared := shareStock(wares, best.Purchases)
		for i := range wares {
			wares[i].buy(best.Purchases[i], best.Proven && !shared[i])
		}
		cost += units.Money(best.VisitCents)
	}
	bought = make([]*Line, len(k.Lines))
	for i := range r.Lines {
		l := &r.Lines[i]
		l.Leftover = l.FromHome + l.Had + l.Bought - l.Needed
		cost += l.Cost
		bought[from[i]] = l
	}
	return bought, cost
}

// payVisit adds the fee of a shop that is still to be visited, once.
func (k *rest) payVisit(c *counter, name string, cost *units.Money) {
	if at, here := c.open(name); here {
		*cost += units.Money(c.shops[at].VisitCents[0])
		c.shops[at].VisitCents = []int64{0}
	}
}

// addFuel takes the containers that were bought off the fuel lines: of their
// place, or of any if none of their name is asked for where they were bought.
func (k *rest) addFuel(planned []FuelLine) {
	type container struct{ name, place string }
	k.Fuel = slices.Clone(planned)
	asked := make([]container, len(k.Fuel))
	for i, l := range k.Fuel {
		asked[i].name = l.Name
		if point := k.trip.Point(l.Point); point != nil {
			asked[i].place = point.Name
		}
	}
	bought, elsewhere := map[container]int{}, map[string]int{}
	for i := range k.trip.Progress.Purchases {
		switch p := &k.trip.Progress.Purchases[i]; {
		case p.Fuel == "":
		case slices.Contains(asked, container{p.Fuel, p.Shop}):
			bought[container{p.Fuel, p.Shop}] += p.Count
		default:
			elsewhere[p.Fuel] += p.Count
		}
	}
	for i := range k.Fuel {
		l := &k.Fuel[i]
		bought[asked[i]] -= l.take(bought[asked[i]])
		elsewhere[l.Name] -= l.take(elsewhere[l.Name])
	}
	k.Fuel = slices.DeleteFunc(k.Fuel, func(l FuelLine) bool { return l.Count == 0 })
}

// take takes bought containers off a line, and tells how many it asked for.
func (l *FuelLine) take(bought int) int {
	taken := min(l.Count, bought)
	if l.Count > 0 {
		l.Cost = l.Cost / units.Money(l.Count) * units.Money(l.Count-taken)
	}
	l.Count -= taken
	return taken
}

// addUp sums the money.
func (k *rest) addUp(planned *Result) {
	visited := map[string]bool{}
	for shop := range k.spent {
		visited[shop] = true
	}
	for _, l := range k.Lines {
		k.ToPay += l.Cost
		if len(l.Buys) > 0 && slices.ContainsFunc(l.Buys, func(b Buy) bool { return !b.Each.Known() }) {
			k.Unpriced++
		}
		for _, b := range l.Buys {
			visited[trip.ShopKey(b.Shop)] = true
		}
	}
	for _, l := range k.Fuel {
		k.ToPay += l.Cost
		if !l.CostKnown {
			k.Unpriced++
		}
	}
	k.Fees = planned.Fees
	for _, v := range planned.Visits {
		k.Fees -= v.Fee
	}
	for i := range k.trip.Shops {
		if s := &k.trip.Shops[i]; visited[trip.ShopKey(s.Name)] {
			k.Fees += s.VisitFee
		}
	}
}
