package shopping

import (
	"slices"
	"strconv"

	"sumpter/domain/plan"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// rowKind is what a row of the list is.
type rowKind int

const (
	headRow  rowKind = iota // heads a group: a shop, a date, an aisle
	buyRow                  // one package of one food
	homeRow                 // a food of which enough is at home
	fuelRow                 // containers of one fuel at one place
	extraRow                // bought, though the list does not ask for it
	otherRow                // what else the crew shares
)

// goods is what tells purchases apart: packages of a food in a shop, or fuel.
type goods struct {
	food trip.FoodID
	net  units.Mass
	shop string
	fuel string
}

func goodsOf(p *trip.Purchase) goods { return goods{p.Food, p.Net, p.Shop, p.Fuel} }

// row is one line of the list.
type row struct {
	kind  rowKind
	key   string
	group string // word of the group it stands in
	rank  int    // of the group; rows of a group stand one behind its head

	line     *shopping.Line
	buy      shopping.Buy
	fuel     *shopping.FuelLine
	goods    goods
	purchase int  // otherRow: its place among the purchases
	count    int  // packages the list asks for, those bought among them
	bought   int  // of them, so many are bought
	needless bool // planned, and enough of the food is bought in other packages
	settled  bool // it is noted what was paid for what is bought
	sum      total

	paid      units.Money
	paidKnown bool // something was paid
	by        trip.MemberID
}

// total is what a head adds up.
type total struct {
	cost     units.Money
	unpriced int // rows whose cost nobody knows
	rows     int
	done     int
}

// done tells whether nothing is left to buy of a row.
func (r *row) done() bool {
	return r.needless || r.count > 0 && r.bought >= r.count || r.kind >= extraRow
}

// list is what to buy as it stands: what the plan asks for beside what is
// bought. It is made anew whenever either changes.
type list struct {
	trip  *trip.Trip
	plan  *plan.Plan
	rest  shopping.Rest
	rows  []*row
	total total
	paid  units.Money
}

func newList(t *trip.Trip, p *plan.Plan, by grouping) *list {
	l := &list{trip: t, plan: p, rest: shopping.RestOf(t, &p.Shopping)}
	l.addFoods()
	l.addFuel()
	l.addPurchases()
	l.addRest()
	for _, r := range l.rows {
		l.total.add(l, r)
	}
	l.rows = l.grouped(by)
	return l
}

// addFoods makes a row for each package that is planned, or still to be bought
// because others than planned were.
func (l *list) addFoods() {
	for i := range l.plan.Shopping.Lines {
		planned, now := &l.plan.Shopping.Lines[i], &l.rest.Lines[i]
		prefix := "food " + strconv.FormatInt(int64(now.Food), 10) + " " + now.Deadline.String()
		if len(planned.Buys) == 0 {
			l.rows = append(l.rows, &row{kind: homeRow, key: prefix, line: now, goods: goods{food: now.Food}})
		}
		add := func(buy shopping.Buy, count int) {
			l.rows = append(l.rows, &row{
				kind: buyRow, key: prefix + " " + strconv.Itoa(buy.Package), line: now, buy: buy, count: count,
				goods: goods{food: now.Food, net: buy.Net, shop: buy.Shop},
			})
		}
		for _, buy := range planned.Buys {
			add(buy, buy.Count)
		}
		for _, buy := range now.Buys {
			if !slices.ContainsFunc(planned.Buys, func(b shopping.Buy) bool { return b.Package == buy.Package }) {
				add(buy, 0)
			}
		}
	}
}

// addRest makes every row ask for what is bought and what still is to be.
func (l *list) addRest() {
	for _, r := range l.rows {
		if r.kind != buyRow {
			continue
		}
		still := 0
		for _, buy := range r.line.Buys {
			if buy.Package == r.buy.Package {
				still = buy.Count
				r.buy.Each, r.buy.Net = buy.Each, buy.Net
			}
		}
		r.count = r.bought + still
		r.needless = r.count == 0
	}
}

func (l *list) addFuel() {
	for i := range l.plan.Shopping.Fuel {
		fuel := &l.plan.Shopping.Fuel[i]
		l.rows = append(l.rows, &row{
			kind: fuelRow, key: "fuel " + fuel.Name + " " + strconv.FormatInt(int64(fuel.Point), 10),
			fuel: fuel, count: fuel.Count, goods: goods{fuel: fuel.Name, shop: l.placeName(fuel.Point)},
		})
	}
}

// addPurchases gives each purchase to the rows that ask for its goods, the
// earliest first, and what no row asks for a row of its own. More than asked
// for stays with the last.
func (l *list) addPurchases() {
	asks := map[goods][]*row{}
	for _, r := range l.rows {
		if r.kind == buyRow || r.kind == fuelRow {
			asks[r.goods] = append(asks[r.goods], r)
		}
	}
	for i := range l.trip.Progress.Purchases {
		p := &l.trip.Progress.Purchases[i]
		rows := asks[goodsOf(p)]
		if len(rows) == 0 {
			rows = []*row{l.extra(i, p)}
			if p.Other == "" {
				asks[goodsOf(p)] = rows
			}
		}
		left := p.Count
		for j, r := range rows {
			take := left
			if j < len(rows)-1 {
				take = min(left, max(0, r.count-r.bought))
			}
			r.bought += take
			r.settled = r.settled || p.Paid.Known()
			left -= take
		}
		paid, known := p.Paid.Get()
		rows[0].paid += paid
		rows[0].paidKnown = rows[0].paidKnown || known
		if p.By != 0 {
			rows[0].by = p.By
		}
		l.paid += paid
	}
}

// extra makes the row of a purchase that the list does not ask for.
func (l *list) extra(place int, p *trip.Purchase) *row {
	r := &row{kind: extraRow, goods: goodsOf(p), purchase: place, key: "extra " + strconv.FormatInt(int64(p.Food), 10) + " " + p.Fuel + " " + p.Net.String() + " " + p.Shop}
	if p.Other != "" {
		r.kind, r.key = otherRow, "other "+strconv.Itoa(place)
	}
	l.rows = append(l.rows, r)
	return r
}

// add counts a row into a total.
func (t *total) add(l *list, r *row) {
	if r.count == 0 {
		return
	}
	t.rows++
	if r.done() {
		t.done++
	}
	cost, known := l.cost(r)
	t.cost += cost
	if !known {
		t.unpriced++
	}
}

// price gives what one package costs, if anybody said.
func (l *list) price(r *row) (units.Money, bool) {
	switch r.kind {
	case buyRow:
		return r.buy.Each.Get()
	case fuelRow:
		for i := range l.trip.Fuels {
			if l.trip.Fuels[i].Name == r.fuel.Name {
				return l.trip.Fuels[i].Price.Get()
			}
		}
	}
	return 0, false
}

// cost is what was paid for what is bought, where that is noted, and the price
// of all else.
func (l *list) cost(r *row) (units.Money, bool) {
	price, known := l.price(r)
	if r.settled {
		left := max(0, r.count-r.bought)
		return r.paid + price*units.Money(left), known || left == 0
	}
	return price * units.Money(r.count), known
}

func (l *list) placeName(id trip.PointID) string {
	if point := l.trip.Point(id); point != nil {
		return point.Name
	}
	return ""
}
