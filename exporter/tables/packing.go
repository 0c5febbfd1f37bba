package tables

import (
	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/trip"
)

// packRow is one bag in one round, with the stations it passes.
type packRow struct {
	number   int
	round    *packing.Round
	bag      *bags.Bag
	stations map[packing.Station]bool
}

// stationKeys are what the columns of the stations are called for programs.
var stationKeys = map[packing.Station]string{
	packing.WeighDry: "weigh_dry", packing.CountOut: "count", packing.Wet: "wet", packing.Label: "label", packing.Check: "check",
}

func roundsTable(x *index) Table {
	rows := x.packRows()
	fields := []field[packRow]{
		{Column{Key: "round", Heading: "Round", Width: 6}, func(r packRow) Value { return count(r.number) }},
		{Column{Key: "name", Heading: "Round is", Width: 26, Wrap: true}, func(r packRow) Value { return words(x.text(r.round.Name)) }},
		{Column{Key: "clean", Heading: "Before it", Width: 13}, func(r packRow) Value {
			if r.round.CleanFirst {
				return words("CLEAN FIRST")
			}
			return words("go on")
		}},
		{Column{Key: "code", Heading: "Label", Role: Code, Width: 9}, func(r packRow) Value { return words(r.bag.Code) }},
		{Column{Key: "recipe", Heading: "Dish", Width: 26, Wrap: true}, func(r packRow) Value { return words(x.bagDish(r.bag)) }},
	}
	for _, station := range packing.Stations() {
		fields = append(fields, field[packRow]{Column{Key: stationKeys[station], Heading: station.Name().String(), Role: Tick, Width: 8}, func(r packRow) Value {
			if r.stations[station] {
				return open()
			}
			return words("–")
		}})
	}
	fields = append(fields,
		field[packRow]{Column{Key: "allergens", Heading: "Allergens", Role: Danger, Width: 28, Wrap: true}, func(r packRow) Value { return words(allergenWords(r.bag.Allergens)) }},
		field[packRow]{Column{Key: "box", Heading: "Then into", Width: 16, Wrap: true}, func(r packRow) Value { return words(x.boxOf(r.bag.Key)) }},
	)
	return groupBy(fill(Table{
		Name: "packing_night", Title: "Packing night: stations",
		About: "A row a bag, a tick box for each station it passes. Where it says clean, wash hands, table, scoops and scale before the round, and take care never to go back.",
		Empty: "There is nothing to pack yet.",
	}, fields, rows), rows, func(r packRow) int { return r.number })
}

// packRows gathers the steps of each bag in a round, in the order of the
// bag's first step.
func (x *index) packRows() []packRow {
	var rows []packRow
	for i := range x.plan.Packing.Rounds {
		round := &x.plan.Packing.Rounds[i]
		at := map[string]int{}
		for _, step := range round.Steps {
			place, seen := at[step.Bag]
			if !seen {
				place = len(rows)
				at[step.Bag] = place
				rows = append(rows, packRow{i + 1, round, x.bag(step.Bag), map[packing.Station]bool{}})
			}
			rows[place].stations[step.Station] = true
		}
	}
	return rows
}

// weighRow is one portion of one food into one bag.
type weighRow struct {
	bulk     *packing.Bulk
	weighing packing.Weighing
}

func weighingTable(x *index) Table {
	var rows []weighRow
	for i := range x.plan.Packing.Bulk {
		bulk := &x.plan.Packing.Bulk[i]
		for _, weighing := range bulk.Into {
			rows = append(rows, weighRow{bulk, weighing})
		}
	}
	decimals := max(1, x.foodDecimals())
	return groupBy(fill(Table{
		Name: "weighing", Title: "Packing night: weighing",
		About: "One food at a time into many bags. Write what the scale shows; the difference follows.",
		Empty: "There is nothing to weigh yet.",
	}, []field[weighRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(weighRow) Value { return open() }},
		{Column{Key: "round", Heading: "Round", Width: 7}, func(r weighRow) Value { return count(r.bulk.Round + 1) }},
		{Column{Key: "food", Heading: "Food", Width: 34, Wrap: true}, func(r weighRow) Value { return words(x.foodName(r.bulk.Food)) }},
		{Column{Key: "total", Heading: "Take in all (" + x.foodUnit() + ")", Decimals: decimals, Width: 11}, func(r weighRow) Value { return x.food(r.bulk.Total) }},
		{Column{Key: "code", Heading: "Into bag", Role: Code, Width: 11}, func(r weighRow) Value { return words(x.bag(r.weighing.Bag).Code) }},
		{Column{Key: "mass", Heading: "Weigh (" + x.foodUnit() + ")", Decimals: decimals, Width: 10}, func(r weighRow) Value { return x.food(r.weighing.Mass) }},
		{Column{Key: "weighed", Heading: "Weighed (" + x.foodUnit() + ")", Role: Input, Decimals: decimals, Width: 11}, func(weighRow) Value { return open() }},
		{Column{Key: "difference", Heading: "Difference (" + x.foodUnit() + ")", Decimals: decimals, Width: 12}, func(weighRow) Value { return open() }},
	}, rows), rows, func(r weighRow) weighGroup { return weighGroup{r.bulk.Round, r.bulk.Food} })
}

// weighGroup is a food in a round: what is weighed in one go.
type weighGroup struct {
	round int
	food  trip.FoodID
}
