package tables

import (
	"sumpter/domain/plan"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
)

// Tables is the whole plan as tables.
type Tables struct {
	Crew         Table // who comes, what they must not eat, what they can carry
	Menu         Table // a row a day and cook group
	Dishes       Table // a row a dish and pot
	Needs        Table // a row a member
	NeedsByDay   Table // a row a member and day
	Shopping     Table // a row a package to buy
	Visits       Table // a row a shop to go to
	Errands      Table // a row a choice of shops
	Leftovers    Table // a row a food that is left over
	Parts        Table // a row a member: their part of the cost
	Payments     Table // who pays whom
	Fuel         Table // fuel to buy
	Rounds       Table // packing night: a row a bag and station
	Weighing     Table // packing night: a row a food and bag
	Bags         Table // a row a bag
	Boxes        Table // a row a box
	BoxBags      Table // a row a bag in a box
	Missing      Table // what if a box does not come
	Stops        Table // a row a choice of points
	LoadGrid     Table // a row a member, a column a day: loads
	ShareGrid    Table // the same: loads as shares of capability
	Loads        Table // a row a member and day
	Carriers     Table // a row a thing carried
	Splits       Table // a row a stretch of days with one split
	SplitChoices Table // a row a choice between few hand-overs and a fair load
	PackChanges  Table // a row a thing that changes packs after a change by hand
	PassedOn     Table // a row a thing that changes hands on a morning of the trip, as planned
	Cooking      Table // a row a meal
	FuelByLeg    Table // a row a leg, group and fuel
	Water        Table // a row a member and day
	Keeping      Table // a row a food and slot

	HandOvers   Table // a row a thing, as decided on the way
	MovedDishes Table // a row a dish or bag, as decided on the way
	Happened    Table // a row a thing that happened on the way
	Findings    Table
}

// From lays out the plan. Figures are in the units of the trip.
func From(p *plan.Plan) *Tables {
	x := newIndex(p)
	rest := shopping.RestOf(x.trip, &p.Shopping)
	money := shopping.Reckon(x.trip, rest.Expected())
	return &Tables{
		Crew:         crewTable(x),
		Menu:         menuTable(x),
		Dishes:       dishesTable(x),
		Needs:        needsTable(x),
		NeedsByDay:   needsByDayTable(x),
		Shopping:     shoppingTable(x),
		Visits:       visitsTable(x),
		Errands:      errandsTable(x),
		Leftovers:    leftoversTable(x),
		Parts:        partsTable(x, money),
		Payments:     paymentsTable(x, money),
		Fuel:         fuelTable(x),
		Rounds:       roundsTable(x),
		Weighing:     weighingTable(x),
		Bags:         bagsTable(x),
		Boxes:        boxesTable(x),
		BoxBags:      boxBagsTable(x),
		Missing:      missingTable(x),
		Stops:        stopsTable(x),
		LoadGrid:     loadGridTable(x),
		ShareGrid:    shareGridTable(x),
		Loads:        loadsTable(x),
		Carriers:     carriersTable(x),
		Splits:       splitsTable(x),
		SplitChoices: splitChoicesTable(x),
		PackChanges:  packChangesTable(x),
		PassedOn:     passedOnTable(x),
		Cooking:      cookingTable(x),
		FuelByLeg:    fuelByLegTable(x),
		Water:        waterTable(x),
		Keeping:      keepingTable(x),

		HandOvers:   handOversTable(x),
		MovedDishes: movedDishesTable(x),
		Happened:    happenedTable(x),
		Findings:    findingsTable(x),
	}
}

// List gives the tables in the order a leader works with them.
func (t *Tables) List() []*Table {
	return []*Table{
		&t.Findings, &t.Crew, &t.Menu, &t.Dishes, &t.Needs, &t.NeedsByDay,
		&t.Shopping, &t.Fuel, &t.Visits, &t.Errands, &t.Leftovers, &t.Parts, &t.Payments,
		&t.Rounds, &t.Weighing, &t.Bags, &t.Boxes, &t.BoxBags, &t.Missing, &t.Stops,
		&t.LoadGrid, &t.ShareGrid, &t.Loads, &t.Carriers, &t.Splits, &t.SplitChoices, &t.PackChanges, &t.PassedOn, &t.Cooking, &t.FuelByLeg, &t.Water, &t.Keeping,
		&t.HandOvers, &t.MovedDishes, &t.Happened,
	}
}

// mealName is a meal as a heading or cell names it.
func mealName(meal trip.Meal) string {
	switch meal {
	case trip.Snack:
		return "snacks"
	default:
		return string(meal)
	}
}
