package tables

import (
	"cmp"
	"slices"

	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// buyRow is one package of one food to buy; the first row of a line carries
// what the food needs in all.
type buyRow struct {
	line   *shopping.Line
	number int // of the line
	buy    shopping.Buy
	first  bool
}

// where is a shop at a place.
type where struct {
	shop  string
	point trip.PointID
}

func shoppingTable(x *index) Table {
	rows := x.buyRows()
	return groupBy(fill(Table{
		Name: "shopping", Title: "Shopping list",
		About: "Whole packages, by shop and aisle. Change the number of packages or the price where the shop differs: cost and leftover follow.",
		Empty: "There is nothing to buy yet.",
	}, []field[buyRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(buyRow) Value { return open() }},
		{Column{Key: "shop", Heading: "Shop", Width: 14, Wrap: true}, func(r buyRow) Value { return words(r.shopWords()) }},
		{Column{Key: "aisle", Heading: "Aisle", Width: 13, Wrap: true}, func(r buyRow) Value { return words(orNone(x.aisle(r.line.Food), "no aisle given")) }},
		{Column{Key: "number", Heading: "Line", Width: 6}, func(r buyRow) Value { return count(r.number) }},
		{Column{Key: "food", Heading: "Food", Width: 26, Wrap: true}, func(r buyRow) Value { return words(x.foodName(r.line.Food)) }},
		{Column{Key: "package", Heading: "Package (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value {
			if r.buy.Count == 0 {
				return words("none to buy")
			}
			return x.food(r.buy.Net)
		}},
		{Column{Key: "count", Heading: "Packages to buy", Role: Input, Width: 10}, func(r buyRow) Value { return count(r.buy.Count) }},
		{Column{Key: "price", Heading: "Price each (" + x.trip.Currency + ")", Role: Amount, Decimals: x.moneyDecimals(), Width: 10}, x.priceOf},
		{Column{Key: "cost", Heading: "Cost (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 10}, x.costOf},
		{Column{Key: "where", Heading: "Bought", Width: 16, Wrap: true}, func(r buyRow) Value {
			if r.line.Point == 0 {
				return words("near home")
			}
			return words("at " + x.point(r.line.Point))
		}},
		{Column{Key: "deadline", Heading: "Needed by", Width: 15}, func(r buyRow) Value { return dated(r.line.Deadline) }},
		{Column{Key: "bought", Heading: "Bought (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value {
			if r.buy.Count == 0 {
				return words("none to buy")
			}
			return x.food(r.buy.Net * units.Mass(r.buy.Count))
		}},
		{Column{Key: "needed", Heading: "Needed (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value { return r.once(x.food(r.line.Needed)) }},
		{Column{Key: "home", Heading: "From home (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value { return r.once(x.food(r.line.FromHome)) }},
		{Column{Key: "leftover", Heading: "Left over (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value { return r.once(x.food(r.line.Leftover)) }},
	}, rows), rows, func(r buyRow) where { return where{trip.ShopKey(r.buy.Shop), r.line.Point} })
}

func (r buyRow) shopWords() string {
	if r.buy.Count == 0 {
		return "at home"
	}
	return orNone(r.buy.Shop, "any")
}

// once shows a figure of the whole line on its first row only.
func (r buyRow) once(value Value) Value {
	if r.first {
		return value
	}
	return words("see the first row of this line")
}

// buyRows lists packages as they are bought: near home, then on the way; shop
// by shop, any shop last, and in each by aisle, then name of the food. What is
// at home in full comes after all.
func (x *index) buyRows() []buyRow {
	var rows []buyRow
	for i := range x.plan.Shopping.Lines {
		line := &x.plan.Shopping.Lines[i]
		if len(line.Buys) == 0 {
			rows = append(rows, buyRow{line: line, number: i + 1, buy: shopping.Buy{Package: -1}})
		}
		for _, buy := range line.Buys {
			rows = append(rows, buyRow{line: line, number: i + 1, buy: buy})
		}
	}
	rank := func(r buyRow) int {
		switch {
		case r.buy.Count == 0:
			return 2
		case r.line.Point != 0:
			return 1
		default:
			return 0
		}
	}
	shop := func(r buyRow) string { return orNone(trip.ShopKey(r.buy.Shop), "\uffff") }
	slices.SortStableFunc(rows, func(a, b buyRow) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.line.Point, b.line.Point), cmp.Compare(shop(a), shop(b)),
			cmp.Compare(x.aisle(a.line.Food), x.aisle(b.line.Food)), cmp.Compare(x.foodName(a.line.Food), x.foodName(b.line.Food)),
			cmp.Compare(a.number, b.number))
	})
	seen := map[int]bool{}
	for i := range rows {
		rows[i].first = !seen[rows[i].number]
		seen[rows[i].number] = true
	}
	return rows
}

func (x *index) aisle(id trip.FoodID) string {
	if food := x.Food(id); food != nil {
		return food.Aisle
	}
	return ""
}

func (x *index) priceOf(r buyRow) Value {
	if r.buy.Count == 0 {
		return words("none to buy")
	}
	if each, known := r.buy.Each.Get(); known {
		return x.money(each)
	}
	return words(Unknown)
}

func (x *index) costOf(r buyRow) Value {
	price := x.priceOf(r)
	if price.Kind == Figure {
		return figure(price.Number * float64(r.buy.Count))
	}
	return price
}

func fuelTable(x *index) Table {
	rows := make([]*shopping.FuelLine, len(x.plan.Shopping.Fuel))
	for i := range rows {
		rows[i] = &x.plan.Shopping.Fuel[i]
	}
	return fill(Table{
		Name: "fuel_to_buy", Title: "Fuel to buy",
		About: "Canisters and bottles, and where to buy them. Fuel does not travel in ordinary post.",
		Empty: "No fuel is needed.",
	}, []field[*shopping.FuelLine]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(*shopping.FuelLine) Value { return open() }},
		{Column{Key: "name", Heading: "Container", Width: 30, Wrap: true}, func(l *shopping.FuelLine) Value { return words(l.Name) }},
		{Column{Key: "fuel", Heading: "Fuel", Width: 16}, func(l *shopping.FuelLine) Value { return words(string(l.Fuel)) }},
		{Column{Key: "where", Heading: "Buy at", Width: 24, Wrap: true}, func(l *shopping.FuelLine) Value {
			if l.Point == 0 {
				return words("before the start")
			}
			return words(x.point(l.Point))
		}},
		{Column{Key: "count", Heading: "Containers to buy", Role: Input, Width: 12}, func(l *shopping.FuelLine) Value { return count(l.Count) }},
		{Column{Key: "price", Heading: "Price each (" + x.trip.Currency + ")", Role: Amount, Decimals: x.moneyDecimals(), Width: 12}, func(l *shopping.FuelLine) Value {
			if !l.CostKnown || l.Count == 0 {
				return words(Unknown)
			}
			return figure(x.money(l.Cost).Number / float64(l.Count))
		}},
		{Column{Key: "cost", Heading: "Cost (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 12}, func(l *shopping.FuelLine) Value {
			if !l.CostKnown {
				return words(Unknown)
			}
			return x.money(l.Cost)
		}},
	}, rows)
}
