package tables

import (
	"cmp"
	"slices"

	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// buyRow is one package of one food to buy; the first row of a food carries
// what the food needs in all.
type buyRow struct {
	line  *shopping.Line
	buy   shopping.Buy
	first bool
}

func shoppingTable(x *index) Table {
	rows := x.buyRows()
	return groupBy(fill(Table{
		Name: "shopping", Title: "Shopping list",
		About: "Whole packages. Change the number of packages or the price where the shop differs: cost and leftover follow.",
		Empty: "There is nothing to buy yet.",
	}, []field[buyRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(buyRow) Value { return open() }},
		{Column{Key: "deadline", Heading: "Home by", Width: 15}, func(r buyRow) Value { return dated(r.line.Deadline) }},
		{Column{Key: "aisle", Heading: "Aisle", Width: 13, Wrap: true}, func(r buyRow) Value { return words(orNone(x.aisle(r.line.Food), "no aisle given")) }},
		{Column{Key: "number", Heading: "Food no.", Width: 6}, func(r buyRow) Value { return count(int(r.line.Food)) }},
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
		{Column{Key: "shop", Heading: "Shop", Width: 12, Wrap: true}, func(r buyRow) Value { return words(orNone(r.buy.Shop, "any")) }},
		{Column{Key: "bought", Heading: "Bought (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value {
			if r.buy.Count == 0 {
				return words("none to buy")
			}
			return x.food(r.buy.Net * units.Mass(r.buy.Count))
		}},
		{Column{Key: "needed", Heading: "Needed (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value { return r.once(x.food(r.line.Needed)) }},
		{Column{Key: "home", Heading: "From home (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value { return r.once(x.food(r.line.FromHome)) }},
		{Column{Key: "leftover", Heading: "Left over (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 10}, func(r buyRow) Value { return r.once(x.food(r.line.Leftover)) }},
	}, rows), rows, func(r buyRow) trip.FoodID { return r.line.Food })
}

// once shows a figure of the whole food on its first row only.
func (r buyRow) once(value Value) Value {
	if r.first {
		return value
	}
	return words("see above")
}

// buyRows lists packages in the order of a walk through the shop: by
// deadline, aisle, then name of the food.
func (x *index) buyRows() []buyRow {
	lines := make([]*shopping.Line, len(x.plan.Shopping.Lines))
	for i := range lines {
		lines[i] = &x.plan.Shopping.Lines[i]
	}
	slices.SortStableFunc(lines, func(a, b *shopping.Line) int {
		return cmp.Or(cmp.Compare(a.Deadline, b.Deadline), cmp.Compare(x.aisle(a.Food), x.aisle(b.Food)),
			cmp.Compare(x.foodName(a.Food), x.foodName(b.Food)), cmp.Compare(a.Food, b.Food))
	})
	var rows []buyRow
	for _, line := range lines {
		if len(line.Buys) == 0 {
			rows = append(rows, buyRow{line, shopping.Buy{Package: -1}, true})
		}
		for i, buy := range line.Buys {
			rows = append(rows, buyRow{line, buy, i == 0})
		}
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
	food := x.Food(r.line.Food)
	if food != nil && r.buy.Package >= 0 && r.buy.Package < len(food.Packages) {
		if price, known := food.Packages[r.buy.Package].Price.Get(); known {
			return x.money(price)
		}
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
