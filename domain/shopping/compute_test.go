package shopping_test

import (
	"reflect"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/resupply"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func priced(net int, price units.Money) trip.Package {
	return trip.Package{Net: bagstest.Grams(net), Price: optional.Of(price), Shop: "mill"}
}

// pantry is a trip whose one food is packed into bags of two legs.
func pantry(packages ...trip.Package) (*trip.Trip, bags.Result, resupply.Result) {
	t := &trip.Trip{Settings: trip.DefaultSettings(), Currency: "EUR", Start: 20010}
	t.Settings.PackingNight, t.Settings.ShoppingDay = 20008, 20003
	rice := bagstest.Food(1, "Rice")
	rice.Packages = packages
	t.Foods = []trip.Food{rice}
	t.Crew = []trip.Member{{ID: 1}, {ID: 2}}
	t.Days = make([]trip.Day, 4)
	b := bags.Result{Bags: []bags.Bag{
		{Key: "a", Leg: 0, Contents: []bags.Content{{Food: 1, Mass: bagstest.Grams(300)}}},
		{Key: "b", Leg: 1, Contents: []bags.Content{{Food: 1, Mass: bagstest.Grams(300)}}},
	}}
	r := resupply.Result{Boxes: []resupply.Box{{Point: 5, Leg: 1, Posted: true, SendOn: 20003, Fees: 700}}}
	return t, b, r
}

func buy(t *trip.Trip, b bags.Result, r resupply.Result) shopping.Result {
	return shopping.Compute(t, b, r, cooking.Result{})
}

// The worked example P6 (two deadlines, food keeps): 600 g for 260 cents.
func TestFoodThatKeepsIsBoughtOnceForTheFirstDeadline(t *testing.T) {
	tr, b, r := pantry(priced(500, 200), priced(100, 60))
	tr.Settings.HomeFridge = false
	got := buy(tr, b, r)
	want := []shopping.Line{{
		Food: 1, Deadline: 20003, Needed: bagstest.Grams(600), Bought: bagstest.Grams(600), Cost: 260, CostKnown: true, BestProven: true,
		Buys: []shopping.Buy{{Package: 0, Count: 1, Net: bagstest.Grams(500), Shop: "mill"}, {Package: 1, Count: 1, Net: bagstest.Grams(100), Shop: "mill"}},
	}}
	if !reflect.DeepEqual(got.Lines, want) {
		t.Errorf("%+v", got.Lines)
	}
	// 960 cents for two people on four days.
	if got.Cost != 260 || got.Fees != 700 || got.PerPersonDay != 120 || got.Unpriced != 0 {
		t.Errorf("%+v", got)
	}
}

// P7, the same where it spoils: 360 cents. With a fridge it keeps.
func TestFoodThatSpoilsIsBoughtForEachDeadline(t *testing.T) {
	tr, b, r := pantry(priced(500, 200), priced(100, 60))
	tr.Settings.HomeFridge = false
	tr.Foods[0].Storage.TCS = trip.TCSYes
	got := buy(tr, b, r)
	if len(got.Lines) != 2 || got.Cost != 360 || got.Lines[0].Deadline != 20003 || got.Lines[1].Deadline != 20008 || !got.Lines[1].BestProven {
		t.Errorf("%+v", got.Lines)
	}
	tr.Settings.HomeFridge = true
	if got := buy(tr, b, r); len(got.Lines) != 1 || got.Cost != 260 {
		t.Errorf("%+v", got.Lines)
	}
}

func TestStockAtHomeGoesFirst(t *testing.T) {
	tr, b, r := pantry(priced(500, 200), priced(100, 60))
	tr.Foods[0].AtHome = bagstest.Grams(320)
	line := buy(tr, b, r).Lines[0]
	if line.FromHome != bagstest.Grams(320) || line.Cost != 180 || line.Leftover != bagstest.Grams(20) {
		t.Errorf("%+v", line)
	}
	tr.Foods[0].AtHome = bagstest.Grams(1000)
	line = buy(tr, b, r).Lines[0]
	if line.FromHome != bagstest.Grams(600) || line.Cost != 0 || !line.CostKnown || line.Leftover != 0 || line.Buys != nil {
		t.Errorf("%+v", line)
	}
}

// A price nobody gave is neither zero nor a reason to buy.
func TestUnknownPrices(t *testing.T) {
	unpriced := trip.Package{Net: bagstest.Grams(600)}
	tr, b, r := pantry(unpriced, priced(100, 60))
	got := buy(tr, b, r)
	if l := got.Lines[0]; l.Cost != 360 || !l.CostKnown || l.BestProven {
		t.Errorf("the priced package covers all, not provenly best: %+v", l)
	}
	scarce := priced(100, 60)
	scarce.InStock = optional.Of(2)
	tr, b, r = pantry(unpriced, trip.Package{Net: bagstest.Grams(250)}, scarce)
	got = buy(tr, b, r)
	l := got.Lines[0]
	// Twice 250 g unpriced and 100 g priced: no way needs less of the unpriced.
	if l.CostKnown || got.Unpriced != 1 || l.Leftover != 0 || l.Cost != 60 {
		t.Errorf("%+v", l)
	}
	one(t, got, "price-unknown", findings.Note, "1 line of")
}

func one(t *testing.T, r shopping.Result, code string, severity findings.Severity, says string) {
	t.Helper()
	for _, f := range r.Findings {
		if f.Code == code {
			if f.Severity != severity || !strings.Contains(f.What.String()+f.Why.String()+f.Remedy.String(), says) {
				t.Errorf("%+v does not say %q", f, says)
			}
			return
		}
	}
	t.Errorf("no finding %s in %+v", code, r.Findings)
}

func TestShortageIsLooseAndTold(t *testing.T) {
	scarce := priced(100, 60)
	scarce.InStock = optional.Of(4)
	tr, b, r := pantry(scarce)
	got := buy(tr, b, r)
	l := got.Lines[0]
	if len(l.Buys) != 2 || l.Buys[1].Package != -1 || l.Buys[1].Net != bagstest.Grams(200) || l.CostKnown || l.BestProven || l.Leftover != 0 {
		t.Errorf("%+v", l)
	}
	one(t, got, "out-of-stock", findings.MustFix, "Rice is 200 g short by")
	tr, b, r = pantry()
	got = buy(tr, b, r)
	if l := got.Lines[0]; l.Buys[0].Package != -1 || l.Bought != bagstest.Grams(600) || l.CostKnown {
		t.Errorf("%+v", l)
	}
	one(t, got, "no-package", findings.LookAt, "600 g")
}

// 453.592 g and 28.35 g: nets that are not whole grams still cover the need.
func TestNetsInOunces(t *testing.T) {
	pound := trip.Package{Net: units.FromGrams(453.59237), Price: optional.Of(units.Money(300))}
	ounce := trip.Package{Net: units.FromGrams(28.349523), Price: optional.Of(units.Money(30))}
	tr, b, r := pantry(pound, ounce)
	l := buy(tr, b, r).Lines[0]
	if l.Cost != 300+6*30 || l.Leftover < 0 || l.Leftover > 30*units.Gram || l.BestProven {
		t.Errorf("%+v", l)
	}
}

func TestBudget(t *testing.T) {
	tr, b, r := pantry(priced(600, 250))
	tr.Settings.Budget = optional.Of(units.Money(900))
	one(t, buy(tr, b, r), "over-budget", findings.LookAt, "9.50 EUR, 0.50 EUR over")
	tr.Settings.Budget = optional.Of(units.Money(950))
	for _, f := range buy(tr, b, r).Findings {
		t.Errorf("within budget: %+v", f)
	}
	tr, b, r = pantry()
	tr.Settings.Budget = optional.Of(units.Money(950))
	one(t, buy(tr, b, r), "budget-unsure", findings.Note, "1 line is not")
}

func TestShoppingAfterTheFirstDeadline(t *testing.T) {
	tr, b, r := pantry(priced(600, 250))
	tr.Settings.ShoppingDay = 20006
	one(t, buy(tr, b, r), "shopping-late", findings.MustFix, "at least 3 days earlier")
	tr.Settings.ShoppingDay = 20003
	for _, f := range buy(tr, b, r).Findings {
		t.Errorf("in time: %+v", f)
	}
}

func TestFuelIsCountedWhereItIsBought(t *testing.T) {
	tr, b, r := pantry(priced(600, 250))
	r.Boxes[0].FuelBoughtThere = true
	tr.Fuels = []trip.FuelContainer{{Fuel: trip.GasMix, Name: "large", Price: optional.Of(units.Money(900))}, {Fuel: trip.GasMix, Name: "small"}}
	can := func(name string) cooking.Container { return cooking.Container{Name: name} }
	c := cooking.Result{Fuel: []cooking.LegFuel{
		{Leg: 0, Group: 1, Fuel: trip.GasMix, Containers: []cooking.Container{can("large"), can("small")}},
		{Leg: 0, Group: 2, Fuel: trip.GasMix, Containers: []cooking.Container{can("large")}},
		{Leg: 1, Group: 1, Fuel: trip.GasMix, Containers: []cooking.Container{can("large")}},
	}}
	got := shopping.Compute(tr, b, r, c)
	want := []shopping.FuelLine{
		{Name: "large", Fuel: trip.GasMix, Count: 2, Cost: 1800, CostKnown: true},
		{Name: "small", Fuel: trip.GasMix, Count: 1},
		{Name: "large", Fuel: trip.GasMix, Count: 1, Point: 5, Cost: 900, CostKnown: true},
	}
	if !reflect.DeepEqual(got.Fuel, want) || got.Cost != 250+2700 || got.Unpriced != 1 {
		t.Errorf("%+v", got)
	}
}
