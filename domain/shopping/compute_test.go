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
		Buys: []shopping.Buy{
			{Package: 0, Count: 1, Net: bagstest.Grams(500), Shop: "mill", Each: optional.Of(units.Money(200))},
			{Package: 1, Count: 1, Net: bagstest.Grams(100), Shop: "mill", Each: optional.Of(units.Money(60))},
		},
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
	if l.Cost != 300+6*30 || l.Leftover < 0 || l.Leftover > 30*units.Gram || !l.BestProven { // two pounds are 600, ounces alone 660
		t.Errorf("%+v", l)
	}
	// Seven of 85.8 g are enough, but not seven of the 85 g that the solver takes them for.
	tr, b, r = pantry(trip.Package{Net: units.FromGrams(85.8), Price: optional.Of(units.Money(100))})
	if l := buy(tr, b, r).Lines[0]; l.Cost != 800 || l.BestProven {
		t.Errorf("one too many is called the cheapest: %+v", l)
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

// The dearer shop nearby is worth it: a trip to the mill costs more than it
// saves. With more to buy it pays, and the choice between them is told.
func TestAVisitIsWeighedAgainstWhatItSaves(t *testing.T) {
	at := func(shop string, net int, price units.Money) trip.Package {
		p := priced(net, price)
		p.Shop = shop
		return p
	}
	tr, b, r := pantry(at("corner", 100, 100), at("mill", 100, 60))
	tr.Shops = []trip.Shop{{Name: "Mill", Use: true, VisitFee: 300}}
	got := buy(tr, b, r)
	if len(got.Visits) != 1 || got.Visits[0].Shop != "corner" || got.Cost != 600 || got.Fees != 700 {
		t.Errorf("%+v", got)
	}
	tr.Shops[0].VisitFee = 200
	got = buy(tr, b, r)
	want := []shopping.Visit{{Shop: "Mill", On: 20003, Lines: 1, Spent: 360, Fee: 200}}
	if !reflect.DeepEqual(got.Visits, want) || got.Cost != 360 || got.Fees != 900 {
		t.Errorf("%+v", got.Visits)
	}
	// Another food is sold in the corner shop only: both must be visited, or all
	// is bought there.
	salt := bagstest.Food(2, "Salt")
	salt.Packages = []trip.Package{at("corner", 500, 50)}
	tr.Foods = append(tr.Foods, salt)
	b.Bags[0].Contents = append(b.Bags[0].Contents, bags.Content{Food: 2, Mass: bagstest.Grams(50)})
	got = buy(tr, b, r)
	if len(got.Errands) != 2 || got.Errands[0].Cost != 610 || got.Errands[1].Cost != 650 || !got.Errands[0].Current || len(got.Errands[1].Shops) != 1 {
		t.Errorf("%+v", got.Errands)
	}
	if why := got.Errands[0].Why.String(); why != "Least cost, visits paid: 0.40 EUR less than with only corner." {
		t.Error(why)
	}
	tr.Shops[0].Use = false
	got = buy(tr, b, r)
	if got.Cost != 650 || len(got.Errands) != 2 || !got.Errands[1].Current {
		t.Errorf("without the mill: %d, %+v", got.Cost, got.Errands)
	}
}

func TestLeastOrdersAndPricesByTheMany(t *testing.T) {
	tr, b, r := pantry(trip.Package{Net: bagstest.Grams(100), Price: optional.Of(units.Money(100)), Shop: "mill", ManyFrom: 6, ManyPrice: optional.Of(units.Money(70))})
	got := buy(tr, b, r)
	if l := got.Lines[0]; l.Cost != 420 || l.Buys[0].Each != optional.Of(units.Money(70)) || !l.BestProven {
		t.Errorf("%+v", l)
	}
	tr.Shops = []trip.Shop{{Name: "mill", Use: true, LeastOrder: 500}}
	if l := buy(tr, b, r).Lines[0]; l.Cost != 560 || l.Leftover != bagstest.Grams(200) || !l.BestProven {
		t.Errorf("%+v", l)
	}
	tr.Foods[0].Packages[0].InStock = optional.Of(6)
	got = buy(tr, b, r)
	if got.Lines[0].Cost != 420 {
		t.Errorf("%+v", got.Lines[0])
	}
	one(t, got, "least-order", findings.LookAt, "mill sells nothing below 5.00 EUR")
}

// What a shop on the way sells is bought there on the day of the pick-up, with
// no stock of home, and what is left of it stays there.
func TestFoodIsBoughtOnTheWay(t *testing.T) {
	kiosk := priced(200, 150)
	kiosk.Shop = "kiosk"
	tr, b, r := pantry(priced(500, 200), kiosk)
	tr.Foods[0].AtHome = bagstest.Grams(1000)
	tr.Shops = []trip.Shop{{Name: "Kiosk", Use: true, Point: 5, VisitFee: 20}}
	r.Boxes[0].PickUp = 20012
	r.Boxes[0].BoughtThere = []resupply.Bought{{Bag: "b", Food: 1, Mass: bagstest.Grams(300)}}
	got := buy(tr, b, r)
	if len(got.Lines) != 2 || got.Lines[0].FromHome != bagstest.Grams(300) || got.Lines[0].Bought != 0 {
		t.Fatalf("%+v", got.Lines)
	}
	if l := got.Lines[1]; l.Point != 5 || l.Deadline != 20012 || l.FromHome != 0 || l.Cost != 300 || l.Leftover != bagstest.Grams(100) {
		t.Errorf("%+v", l)
	}
	if want := []shopping.Visit{{Shop: "Kiosk", Point: 5, On: 20012, Lines: 1, Spent: 300, Fee: 20}}; !reflect.DeepEqual(got.Visits, want) || got.Fees != 720 {
		t.Errorf("%+v", got.Visits)
	}
	if len(got.Leftovers) != 0 {
		t.Errorf("%+v", got.Leftovers)
	}
}

func TestAShopThatIsShutOnShoppingDay(t *testing.T) {
	tr, b, r := pantry(priced(600, 250))
	sunday := units.Date(20003) // 2024-10-07 is a Monday
	tr.Shops = []trip.Shop{{Name: "Mill", Use: true, Opening: trip.Opening{OpenDays: []string{"Fri"}}}}
	got := buy(tr, b, r)
	if got.Visits[0].On != sunday-3 {
		t.Errorf("%+v is a %s", got.Visits, got.Visits[0].On.Weekday().Short())
	}
	one(t, got, "shop-shut", findings.LookAt, "Go there on Fri 4 Oct 2024")
	tr.Shops[0].OpenDays = []string{"Mon"}
	for _, f := range buy(tr, b, r).Findings {
		t.Errorf("open: %+v", f)
	}
}

func TestNoShopThatIsUsedSellsIt(t *testing.T) {
	tr, b, r := pantry(priced(600, 250))
	tr.Shops = []trip.Shop{{Name: "mill"}}
	got := buy(tr, b, r)
	if l := got.Lines[0]; l.Buys[0].Package != -1 || l.CostKnown {
		t.Errorf("%+v", l)
	}
	one(t, got, "not-sold", findings.LookAt, "No shop that is used near home sells Rice")
}

// Two deadlines of what spoils share six packages: the first takes what the
// second can do without.
func TestDeadlinesShareAStock(t *testing.T) {
	scarce := priced(100, 10)
	scarce.InStock = optional.Of(4)
	tr, b, r := pantry(scarce, priced(300, 100))
	tr.Settings.HomeFridge, tr.Foods[0].Storage.TCS = false, trip.TCSYes
	got := buy(tr, b, r)
	if len(got.Lines) != 2 || got.Cost != 30+100 {
		t.Errorf("%+v", got.Lines)
	}
	tr.Foods[0].Packages = tr.Foods[0].Packages[:1]
	got = buy(tr, b, r)
	if got.Lines[0].Bought+got.Lines[1].Bought != bagstest.Grams(600) || got.Cost != 40 {
		t.Errorf("%+v", got.Lines)
	}
	one(t, got, "out-of-stock", findings.MustFix, "Rice is 200 g short")
}

func TestLeftoversSayWhatTheyWouldMake(t *testing.T) {
	tr, b, r := pantry(priced(1000, 250))
	tr.Recipes = []trip.Recipe{
		{ID: 1, Meals: []trip.Meal{trip.Dinner}, Ingredients: []trip.Ingredient{{Food: 1, Amount: bagstest.Grams(90)}, {Food: 2, Amount: bagstest.Grams(10)}}},
		{ID: 2, Meals: []trip.Meal{trip.Breakfast}, Ingredients: []trip.Ingredient{{Food: 1, Amount: bagstest.Grams(20)}, {Food: 2, Amount: bagstest.Grams(80)}}},
		{ID: 3, Meals: []trip.Meal{trip.Lunch}, Ingredients: []trip.Ingredient{{Food: 1, Amount: bagstest.Grams(500)}}},
	}
	got := buy(tr, b, r).Leftovers
	want := []shopping.LeftoverUse{{Recipe: 1, Meal: trip.Dinner, Helpings: 4, Meals: 2}}
	if len(got) != 1 || got[0].Mass != bagstest.Grams(400) || !reflect.DeepEqual(got[0].Uses, want) {
		t.Errorf("%+v", got)
	}
}
