package tables

import (
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/shopping"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
)

func at(t *testing.T, table *Table, row int, key string) Value {
	t.Helper()
	place := table.Column(key)
	if place < 0 || row >= len(table.Rows) {
		t.Fatalf("%s has no %q in row %d", table.Name, key, row)
	}
	return table.Rows[row][place]
}

func wantText(t *testing.T, table *Table, row int, key, want string) {
	t.Helper()
	if got := at(t, table, row, key); got.Kind != Words || got.Text != want {
		t.Errorf("%s row %d %s is %+v, want %q", table.Name, row, key, got, want)
	}
}

func wantNumber(t *testing.T, table *Table, row int, key string, want float64) {
	t.Helper()
	if got := at(t, table, row, key); got.Kind != Figure || got.Number < want-1e-9 || got.Number > want+1e-9 {
		t.Errorf("%s row %d %s is %+v, want %v", table.Name, row, key, got, want)
	}
}

func TestBags(t *testing.T) {
	table := &From(plantest.Small()).Bags
	wantText(t, table, 0, "code", "1D-A")
	wantText(t, table, 0, "contents", "rice 300 g; +peanuts 80 g")
	wantText(t, table, 0, "allergens", "CONTAINS peanuts\nNOT KNOWN: soybeans")
	wantText(t, table, 0, "carrier", plantest.FormulaName)
	wantText(t, table, 0, "box", "from the start")
	wantNumber(t, table, 0, "water", 600)
	wantNumber(t, table, 0, "mass", 390)
	wantText(t, table, 1, "for", plantest.WideName+" only")
	wantText(t, table, 1, "allergens", "none of the declared ones")
	wantText(t, table, 2, "box", "Valley post")
}

func TestUnitsOfTheReader(t *testing.T) {
	p := plantest.Small()
	p.Trip.Units = units.US
	all := From(p)
	wantText(t, &all.Bags, 0, "contents", "rice 10.6 oz (300 g); +peanuts 2.8 oz (80 g)")
	wantNumber(t, &all.Bags, 0, "mass", 390/28.349523125)   // NIST SP 811
	wantNumber(t, &all.Loads, 0, "own_kit", 8/0.45359237)   // NIST SP 811
	wantNumber(t, &all.Bags, 0, "water", 600/236.5882365)   // NIST Handbook 44: US cup
	wantNumber(t, &all.Water, 0, "drinking", 4/0.946352946) // NIST Handbook 44: quart
	wantNumber(t, &all.Cooking, 0, "height", 1200/0.3048)   // NIST Handbook 44: foot
	wantNumber(t, &all.Cooking, 0, "boils", 96*1.8+32)      // definition
	if heading := all.Bags.Columns[all.Bags.Column("mass")].Heading; heading != "With tare (oz)" {
		t.Errorf("heading %q", heading)
	}
}

func TestWeighedMasses(t *testing.T) {
	us := measure{system: units.US}
	for mass, want := range map[units.Mass]string{
		1200 * units.Milligram: "0.04 oz (1.2 g)", 25 * units.Gram: "0.88 oz (25 g)", 300 * units.Gram: "10.6 oz (300 g)",
	} {
		if got := us.weighed(mass); got != want {
			t.Errorf("%v is %q, want %q", mass, got, want)
		}
	}
}

// A full container on its way to a later leg is planned with its whole mass,
// which is not fuel.
func TestFuelOnItsWayToALaterLeg(t *testing.T) {
	p := plantest.Small()
	p.Trip.Fuels = []trip.FuelContainer{{Name: "small canister", Fuel: trip.GasMix, Net: 100 * units.Gram, Empty: 80 * units.Gram}}
	p.Cooking.Fuel[0].Containers = append(p.Cooking.Fuel[0].Containers, cooking.Container{Name: "small canister", Fuel: 180 * units.Gram, Ahead: true})
	table := &From(p).FuelByLeg
	wantNumber(t, table, 0, "carried", 200)
	wantText(t, table, 0, "containers", "small canister, 100 g of fuel\nsmall canister, 100 g of fuel, for a later leg")
}

func TestNeeds(t *testing.T) {
	all := From(plantest.Small())
	wantNumber(t, &all.Needs, 2, "days", 2)
	wantNumber(t, &all.Needs, 0, "need", 3000)
	wantNumber(t, &all.Needs, 0, "lowest", 0.95) // 2660 / 2800
	wantText(t, &all.Needs, 0, "unknown", "fibre of 1 food")
	if got := len(all.NeedsByDay.Rows); got != 8 {
		t.Errorf("%d member-days, want 8: one member leaves after day 2", got)
	}
	wantNumber(t, &all.NeedsByDay, 0, "share", 0.95)
}

func TestUnknownIsSaidInWords(t *testing.T) {
	all := From(plantest.Small())
	row := -1
	for i := range all.Shopping.Rows {
		if at(t, &all.Shopping, i, "food").Text == "+peanuts" {
			row = i
		}
	}
	wantText(t, &all.Shopping, row, "price", Unknown)
	wantText(t, &all.Shopping, row, "cost", Unknown)
	wantText(t, &all.Keeping, 1, "verdict", "NOT KNOWN")
	wantText(t, &all.Keeping, 1, "used", Unknown)
	wantText(t, &all.Keeping, 1, "left", Unknown)
	wantText(t, &all.Keeping, 1, "latest", "none")
	for _, table := range all.List() {
		for i, values := range table.Rows {
			for j, value := range values {
				key := table.Columns[j].Key
				if value.Kind == Words && value.Text == "" && key != "notes" && key != "where" {
					t.Errorf("%s row %d %s is blank", table.Name, i, key)
				}
			}
		}
	}
}

func TestLoadsAddUp(t *testing.T) {
	p := plantest.Small()
	table := &From(p).Loads
	for i := range table.Rows {
		sum := 0.0
		for _, key := range []string{"own_kit", "food", "gear", "fuel", "waste"} {
			sum += at(t, table, i, key).Number
		}
		wantNumber(t, table, i, "load", sum)
	}
	wantNumber(t, table, 0, "fair", 0.15)
	wantNumber(t, table, 2, "fair", 0.16)
	grid := &From(p).LoadGrid
	wantText(t, grid, 2, dayKey(3), "away")
	wantNumber(t, grid, 0, dayKey(1), 8.39)
}

func TestMenuSaysWhoEatsApart(t *testing.T) {
	all := From(plantest.Small())
	wantText(t, &all.Menu, 0, "dinner", "Rice pot (apart: "+plantest.WideName+")")
	wantText(t, &all.Menu, 1, "dinner", "Rice pot (apart: "+plantest.WideName+") (filled)")
	wantText(t, &all.Menu, 0, "breakfast", "not from the packs")
	wantText(t, &all.Menu, 1, "notes", "no flame allowed\ndry camp: carry water in")
	wantText(t, &all.Dishes, 1, "swaps", "rice instead of +peanuts")
}

func TestFindingsComeWorstFirst(t *testing.T) {
	table := &From(plantest.Small()).Findings
	wantText(t, table, 0, "severity", "▲ must fix")
	wantText(t, table, 0, "where", "day 1, dinner, North pot, "+plantest.WideName)
	wantText(t, table, 1, "severity", "· note")
}

func TestBagsThatChangeHands(t *testing.T) {
	p := plantest.Small()
	p.Carry.Stages[1].Items = append(p.Carry.Stages[1].Items, p.Carry.Stages[0].Items[0])
	p.Carry.Stages[1].Items[1].Carrier = 2
	wantText(t, &From(p).Bags, 0, "carrier", plantest.FormulaName+", from day 3 "+plantest.WideName)
}

func TestWhoCarriesWhat(t *testing.T) {
	table := &From(plantest.Small()).Carriers
	if len(table.Rows) != 5 {
		t.Fatalf("%d rows, want each of the 5 things", len(table.Rows))
	}
	wantText(t, table, 1, "item", "stove")
	wantNumber(t, table, 1, "mass", 400)
	wantNumber(t, table, 3, "mass", 180) // canister: 100 g of fuel, 80 g of steel
}

// A plan that names things the trip does not have still prints.
func TestBrokenPlanStillPrints(t *testing.T) {
	p := plantest.Small()
	p.Trip = &trip.Trip{Units: units.Metric, Currency: "EUR"}
	for _, table := range From(p).List() {
		for _, column := range table.Columns {
			if column.Heading == "" || column.Key == "" {
				t.Errorf("%s has a column without a name", table.Name)
			}
		}
	}
	wantText(t, &From(p).Bags, 0, "contents", "unknown 300 g; unknown 80 g")
	Cards(p)
	Cards(&plan.Plan{})
}

func TestTablesAreWellFormed(t *testing.T) {
	for name, p := range map[string]*plan.Plan{"small": plantest.Small(), "empty": plantest.Empty(), "none": {}} {
		names := map[string]bool{}
		for _, table := range From(p).List() {
			if names[table.Name] {
				t.Errorf("%s: two tables are called %s", name, table.Name)
			}
			names[table.Name] = true
			checkTable(t, name, table)
		}
	}
}

func checkTable(t *testing.T, name string, table *Table) {
	t.Helper()
	if table.Title == "" || table.About == "" || table.Empty == "" {
		t.Errorf("%s: %s lacks a title, an explanation or a sentence for no rows", name, table.Name)
	}
	headings := map[string]bool{}
	for _, column := range table.Columns {
		if headings[strings.ToLower(column.Heading)] {
			t.Errorf("%s: %s has two columns %q", name, table.Name, column.Heading)
		}
		headings[strings.ToLower(column.Heading)] = true
		if column.Width <= 0 {
			t.Errorf("%s: %s %s has no width", name, table.Name, column.Key)
		}
	}
	for _, values := range table.Rows {
		if len(values) != len(table.Columns) {
			t.Errorf("%s: %s has a row of %d values under %d headings", name, table.Name, len(values), len(table.Columns))
		}
	}
}

func TestCards(t *testing.T) {
	cards := Cards(plantest.Small())
	if len(cards) != 1 || len(cards[0].Pots) != 6 {
		t.Fatalf("cards %+v", cards)
	}
	card := cards[0]
	if got := card.Pots[0].Bags; got != "1D-A" {
		t.Errorf("the shared pot of day 1 is in bags %q", got)
	}
	if got := card.Pots[1].Bags; got != "1D-B" {
		t.Errorf("the pot apart of day 1 is in bags %q: never the bags with what its eater must not have", got)
	}
	rice, nuts := card.Ingredients[0], card.Ingredients[1]
	if rice.Food != "rice" || rice.Pots[0] != "300 g" || rice.Pots[1] != "150 g" {
		t.Errorf("rice %+v", rice)
	}
	if nuts.Pots[0] != "80 g" || nuts.Pots[1] != "" || len(nuts.Pots) != 6 {
		t.Errorf("peanuts %+v", nuts)
	}
	if card.Pots[0].Minutes != "16 min" || card.Pots[2].Minutes != "no flame" || card.Pots[4].Minutes != Unknown {
		t.Errorf("flame %q, on the day without flame %q, where cooking says nothing %q", card.Pots[0].Minutes, card.Pots[2].Minutes, card.Pots[4].Minutes)
	}
	if want := "Simmer 12 min at sea level, longer higher up. Soak 5 min off the flame."; card.Cooking != want {
		t.Errorf("cooking %q, want %q", card.Cooking, want)
	}
	if card.Allergens != "CONTAINS peanuts\nNOT KNOWN: soybeans" {
		t.Errorf("allergens %q", card.Allergens)
	}
}

// A pot that is only brought to the boil is not one without flame.
func TestBoilOnly(t *testing.T) {
	p := plantest.Small()
	p.Trip.Recipes[0].Simmer, p.Trip.Recipes[0].Water = 0, 300*units.Millilitre
	for i := range p.Bags.Bags {
		p.Bags.Bags[i].Minutes = 0
	}
	if got := Cards(p)[0].Pots[0].Minutes; got != "boil only" {
		t.Errorf("the card says %q", got)
	}
	wantText(t, &From(p).Bags, 0, "minutes", "boil")
	p.Bags.Bags[0].Place = trip.AtBowl
	wantText(t, &From(p).Bags, 0, "minutes", "none")
}

func TestAllergenWords(t *testing.T) {
	list := []bags.Allergen{{Allergen: trip.Milk, Presence: trip.MayContain}, {Allergen: trip.Gluten, Presence: trip.Contains}, {Allergen: trip.Wheat, Presence: trip.Contains}, {Allergen: trip.Celery, Presence: trip.NotKnown}}
	want := "CONTAINS gluten, wheat\nmay contain milk\nNOT KNOWN: celery"
	if got := allergenWords(list); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestMoneyAndWhatIfTables(t *testing.T) {
	p := plantest.Small()
	p.Trip.Progress.Purchases = []trip.Purchase{{Other: "bus", Count: 1, Paid: optional.Of(units.Money(900)), By: 1}}
	tables := From(p)
	// 8 person-days: member 1 and 2 three days each, member 3 two.
	wantNumber(t, &tables.Parts, 0, "paid", 9)
	wantNumber(t, &tables.Parts, 0, "to_pay", 3.38-9)
	wantNumber(t, &tables.Payments, 0, "amount", 3.37)
	wantText(t, &tables.Payments, 0, "to", p.Trip.Crew[0].Name)
	if len(tables.Payments.Rows) != 2 {
		t.Errorf("%d payments", len(tables.Payments.Rows))
	}
	// The box after day 2 is missing: nothing is left on that evening.
	wantText(t, &tables.Missing, 0, "turn_back", "no such day")
	wantNumber(t, &tables.Missing, 0, "evening", 2)
	wantNumber(t, &tables.Missing, 0, "missing", 0.5)
	wantText(t, &tables.Missing, 0, "reaches", "no")
}

func TestShoppingIsSortedByPlaceShopAndAisle(t *testing.T) {
	p := plantest.Small()
	p.Trip.Foods[0].Aisle, p.Trip.Foods[1].Aisle = "z", "a"
	first := p.Shopping.Lines[0]
	second := first
	second.Point, second.Buys = 1, []shopping.Buy{{Package: 0, Count: 1, Net: 500 * units.Gram, Shop: "kiosk"}}
	p.Shopping.Lines[1].Buys[0].Shop = "@MARKET"
	p.Shopping.Lines = append([]shopping.Line{second}, p.Shopping.Lines...)
	table := shoppingTable(newIndex(p))
	for row, want := range []string{"near home", "near home", "at Valley post"} {
		wantText(t, &table, row, "where", want)
	}
	wantText(t, &table, 0, "aisle", "a")
	wantNumber(t, &table, 2, "number", 1)
	if !slices.Equal(table.Groups, []int{2}) {
		t.Errorf("groups begin at %v", table.Groups)
	}
}

// Who has only their own dishes is named with what they do not eat.
func TestWhoWouldLiveOnThePacks(t *testing.T) {
	p := plantest.Small()
	x := newIndex(p)
	first, second := &p.Trip.Crew[0], &p.Trip.Crew[1]
	first.Diets, first.Allergies = []trip.Diet{"vegan"}, []trip.Allergy{{Allergen: trip.Peanuts}}
	second.Diets, second.Allergies = nil, nil
	got := x.eaters([]trail.Eater{{Member: first.ID, Lasts: 1.25}, {Member: second.ID, Lasts: 2}, {Member: 999}})
	if want := first.Name + " (vegan, no peanuts) 1.2; " + second.Name + " 2.0"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
