package tables

import (
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/trip"
)

// stepRow is one bag at one station in one round.
type stepRow struct {
	number int
	round  *packing.Round
	step   packing.Step
	bag    *bags.Bag
}

func roundsTable(x *index) Table {
	var rows []stepRow
	for i := range x.plan.Packing.Rounds {
		round := &x.plan.Packing.Rounds[i]
		for _, step := range round.Steps {
			rows = append(rows, stepRow{i + 1, round, step, x.bag(step.Bag)})
		}
	}
	return groupBy(fill(Table{
		Name: "packing_night", Title: "Packing night: stations",
		About: "Rounds go from the strictest allergies to the free ones. Where it says clean, wash hands, table, scoops and scale before the round.",
		Empty: "There is nothing to pack yet.",
	}, []field[stepRow]{
		{Column{Key: "done", Heading: "Done", Role: Tick, Width: 6}, func(stepRow) Value { return open() }},
		{Column{Key: "round", Heading: "Round", Width: 7}, func(r stepRow) Value { return count(r.number) }},
		{Column{Key: "name", Heading: "Round is", Width: 28, Wrap: true}, func(r stepRow) Value { return words(r.round.Name) }},
		{Column{Key: "clean", Heading: "Before it", Width: 14}, func(r stepRow) Value {
			if r.round.CleanFirst {
				return words("CLEAN FIRST")
			}
			return words("go on")
		}},
		{Column{Key: "station", Heading: "Station", Width: 13}, func(r stepRow) Value { return words(string(r.step.Station)) }},
		{Column{Key: "code", Heading: "Label", Role: Code, Width: 11}, func(r stepRow) Value { return words(r.bag.Code) }},
		{Column{Key: "recipe", Heading: "Dish", Width: 30, Wrap: true}, func(r stepRow) Value { return words(x.bagDish(r.bag)) }},
		{Column{Key: "allergens", Heading: "Allergens", Role: Danger, Width: 34, Wrap: true}, func(r stepRow) Value { return words(AllergenWords(r.bag.Allergens)) }},
		{Column{Key: "box", Heading: "Then into", Width: 20, Wrap: true}, func(r stepRow) Value { return words(x.boxOf(r.step.Bag)) }},
	}, rows), rows, func(r stepRow) int { return r.number })
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

// FreeOf lists what a round is free of, for a heading.
func FreeOf(round *packing.Round) string {
	names := make([]string, len(round.FreeOf))
	for i, allergen := range round.FreeOf {
		names[i] = string(allergen)
	}
	return strings.Join(names, ", ")
}
