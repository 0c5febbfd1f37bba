package tables

import (
	"strings"

	"sumpter/domain/shopping"
)

// visitsTable lists the shops to go to.
func visitsTable(x *index) Table {
	return fill(Table{
		Name: "shops", Title: "Shops to go to",
		About: "Where something is bought, on which day, and what the way there costs.",
		Empty: "There is no shop to go to.",
	}, []field[shopping.Visit]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(shopping.Visit) Value { return open() }},
		{Column{Key: "shop", Heading: "Shop", Width: 22, Wrap: true}, func(v shopping.Visit) Value { return words(v.Shop) }},
		{Column{Key: "where", Heading: "Stands", Width: 22, Wrap: true}, func(v shopping.Visit) Value {
			if v.Point == 0 {
				return words("near home")
			}
			return words("at " + x.point(v.Point))
		}},
		{Column{Key: "address", Heading: "Address", Width: 26, Wrap: true}, func(v shopping.Visit) Value {
			if shop := x.trip.Shop(v.Shop); shop != nil {
				return words(orNone(shop.Address, "none given"))
			}
			return words("none given")
		}},
		{Column{Key: "on", Heading: "On", Width: 15}, func(v shopping.Visit) Value { return dated(v.On) }},
		{Column{Key: "lines", Heading: "Lines", Width: 7}, func(v shopping.Visit) Value { return count(v.Lines) }},
		{Column{Key: "spent", Heading: "Spent, as priced (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 12}, func(v shopping.Visit) Value { return x.money(v.Spent) }},
		{Column{Key: "fee", Heading: "Visit (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 10}, func(v shopping.Visit) Value { return x.money(v.Fee) }},
	}, x.plan.Shopping.Visits)
}

// errandsTable lists the choices of shops that nothing beats.
func errandsTable(x *index) Table {
	return fill(Table{
		Name: "shop_choices", Title: "Which shops? Cost against visits",
		About: "Choices of shops near home that no other beats by cost and number of visits.",
		Empty: "There is one way to shop.",
	}, []field[shopping.Errand]{
		{Column{Key: "shops", Heading: "Shops", Width: 34, Wrap: true}, func(e shopping.Errand) Value { return words(orNone(strings.Join(e.Shops, " + "), "any shop")) }},
		{Column{Key: "visits", Heading: "Visits", Width: 7}, func(e shopping.Errand) Value { return count(len(e.Shops)) }},
		{Column{Key: "cost", Heading: "Food and visits (" + x.trip.Currency + ")", Decimals: x.moneyDecimals(), Width: 14}, func(e shopping.Errand) Value { return x.money(e.Cost) }},
		{Column{Key: "unpriced", Heading: "Without a price", Width: 9}, func(e shopping.Errand) Value { return count(e.Unpriced) }},
		{Column{Key: "leftover", Heading: "Left over (" + x.loadUnit() + ")", Decimals: 2, Width: 10}, func(e shopping.Errand) Value { return x.load(e.Leftover) }},
		{Column{Key: "current", Heading: "On the list", Width: 8}, func(e shopping.Errand) Value { return yesNo(e.Current) }},
		{Column{Key: "advised", Heading: "Advised", Width: 44, Wrap: true}, func(e shopping.Errand) Value {
			if e.Recommended {
				return words(x.text(e.Why))
			}
			return words("no")
		}},
	}, x.plan.Shopping.Errands)
}

// leftoversTable lists what stays of whole packages.
func leftoversTable(x *index) Table {
	return fill(Table{
		Name: "leftovers", Title: "Left over from whole packages",
		About: "What stays once every bag is filled, and what more it would make. Helpings count the recipe as it stands; the rest of it must be bought.",
		Empty: "Nothing is left over.",
	}, []field[shopping.Leftover]{
		{Column{Key: "food", Heading: "Food", Width: 30, Wrap: true}, func(l shopping.Leftover) Value { return words(x.foodName(l.Food)) }},
		{Column{Key: "mass", Heading: "Left over (" + x.foodUnit() + ")", Decimals: x.foodDecimals(), Width: 11}, func(l shopping.Leftover) Value { return x.food(l.Mass) }},
		{Column{Key: "energy", Heading: "Energy (kcal)", Width: 9}, func(l shopping.Leftover) Value { return figure(float64(l.Kcal)) }},
		{Column{Key: "recipe", Heading: "Would make more of", Width: 34, Wrap: true}, func(l shopping.Leftover) Value {
			if len(l.Uses) == 0 {
				return words("too little for a helping, or no main part of a recipe")
			}
			return words(x.recipe(l.Uses[0].Recipe))
		}},
		{Column{Key: "helpings", Heading: "Helpings", Width: 9}, func(l shopping.Leftover) Value {
			if len(l.Uses) == 0 {
				return count(0)
			}
			return count(l.Uses[0].Helpings)
		}},
		{Column{Key: "meals", Heading: "Meals for all", Width: 9}, func(l shopping.Leftover) Value {
			if len(l.Uses) == 0 {
				return count(0)
			}
			return count(l.Uses[0].Meals)
		}},
	}, x.plan.Shopping.Leftovers)
}
