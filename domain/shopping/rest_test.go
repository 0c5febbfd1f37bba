package shopping_test

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/optional"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// buyAsPlanned notes purchases of the plan's packages, a part of each drawn.
func buyAsPlanned(rt *rapid.T, planned *shopping.Result, all bool) []trip.Purchase {
	var list []trip.Purchase
	for _, l := range planned.Lines {
		for _, b := range l.Buys {
			count := b.Count
			if !all {
				count = rapid.IntRange(0, b.Count).Draw(rt, "bought")
			}
			if count > 0 {
				list = append(list, trip.Purchase{Food: l.Food, Net: b.Net, Shop: b.Shop, Count: count})
			}
		}
	}
	return list
}

// What is bought as planned leaves the rest of the plan, and in the end
// nothing; money and mass stay what the plan said.
func TestWhatIsBoughtAsPlannedLeavesTheRestOfThePlan(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, planned := plan(tr)
		tr.Progress = trip.Progress{}
		if rest := shopping.RestOf(tr, &planned); !sameLines(rest.Lines, planned.Lines) || rest.Expected() != planned.Cost+planned.Fees || rest.Unpriced != planned.Unpriced {
			rt.Fatalf("nothing bought, and the rest is %+v of %+v", rest, planned)
		}
		tr.Progress.Purchases = buyAsPlanned(rt, &planned, false)
		rest := shopping.RestOf(tr, &planned)
		for i, l := range rest.Lines {
			if l.Had+l.Bought != planned.Lines[i].Bought || l.Leftover != planned.Lines[i].Leftover {
				rt.Fatalf("line %+v of %+v", l, planned.Lines[i])
			}
		}
		if rest.Expected() != planned.Cost+planned.Fees {
			rt.Fatalf("expected %d, planned %d: %+v", rest.Expected(), planned.Cost+planned.Fees, rest)
		}
		tr.Progress.Purchases = buyAsPlanned(rt, &planned, true)
		if rest := shopping.RestOf(tr, &planned); rest.ToPay > fuelCost(&planned) || stillToBuy(&rest) {
			rt.Fatalf("all bought, and there is still %+v", rest)
		}
	})
}

func sameLines(a, b []shopping.Line) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		x, y := a[i], b[i]
		if len(x.Buys) == 0 && len(y.Buys) == 0 {
			x.Buys, y.Buys = nil, nil
		}
		if !reflect.DeepEqual(x, y) {
			return false
		}
	}
	return true
}

func fuelCost(r *shopping.Result) (sum units.Money) {
	for _, f := range r.Fuel {
		sum += f.Cost
	}
	return sum
}

func stillToBuy(r *shopping.Rest) bool {
	for _, l := range r.Lines {
		if len(l.Buys) > 0 {
			return true
		}
	}
	return false
}

// Whatever was bought, in any packages, at any price: mass adds up, nothing is
// bought that the stock has not, and what was paid counts as it was paid.
func TestTheRestAddsUpWhateverWasBought(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, planned := plan(tr)
		tr.Progress = trip.Progress{}
		var paid units.Money
		had := map[trip.FoodID]units.Mass{}
		for range rapid.IntRange(0, 6).Draw(rt, "purchases") {
			food := &tr.Foods[rapid.IntRange(0, len(tr.Foods)-1).Draw(rt, "food")]
			p := trip.Purchase{Food: food.ID, Net: units.Mass(rapid.IntRange(1, 3000).Draw(rt, "net")) * units.Gram, Count: rapid.IntRange(1, 4).Draw(rt, "count")}
			if len(food.Packages) > 0 && rapid.Bool().Draw(rt, "as sold") {
				p.Net, p.Shop = food.Packages[0].Net, food.Packages[0].Shop
			}
			amount := units.Money(rapid.IntRange(0, 5000).Draw(rt, "paid"))
			p.Paid = optional.Of(amount)
			paid += amount
			had[p.Food] += p.Net * units.Mass(p.Count)
			tr.Progress.Purchases = append(tr.Progress.Purchases, p)
		}
		rest := shopping.RestOf(tr, &planned)
		if rest.Spent != paid {
			rt.Fatalf("paid %d, spent %d", paid, rest.Spent)
		}
		counted, wanted := map[trip.FoodID]units.Mass{}, map[trip.FoodID]bool{}
		for i, l := range rest.Lines {
			counted[l.Food] += l.Had
			wanted[l.Food] = true
			var bought units.Mass
			for _, b := range l.Buys {
				bought += b.Net * units.Mass(b.Count)
			}
			if bought != l.Bought || l.FromHome+l.Had+l.Bought-l.Leftover != l.Needed || l.Leftover < 0 || l.Needed != planned.Lines[i].Needed {
				rt.Fatalf("line %+v does not add up", l)
			}
			if l.FromHome+l.Had >= l.Needed && len(l.Buys) > 0 {
				rt.Fatalf("enough is bought, and still to buy is %+v", l)
			}
		}
		for food := range wanted {
			if counted[food] != had[food] {
				rt.Fatalf("%v of food %d bought, counted %v", had[food], food, counted[food])
			}
		}
		if again := shopping.RestOf(tr, &planned); !reflect.DeepEqual(again, rest) {
			rt.Fatal("the rest is another one the second time")
		}
	})
}

// After another size was bought, what is missing is bought at least cost: by
// trying all counts.
func TestTheRestIsBoughtAtLeastCost(t *testing.T) {
	met := 0
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		tr.Shops = nil
		_, planned := plan(tr)
		line := rapid.SampledFrom(append([]shopping.Line{{}}, planned.Lines...)).Draw(rt, "line")
		if line.Bought <= 0 {
			return
		}
		tr.Progress = trip.Progress{Purchases: []trip.Purchase{{Food: line.Food, Net: line.Bought/3 + 1, Shop: "farm gate", Count: 1}}}
		rest := shopping.RestOf(tr, &planned)
		for _, l := range rest.Lines {
			if l.Food != line.Food || !l.CostKnown || l.Had == 0 || l.Leftover == l.Had {
				continue
			}
			l.FromHome += l.Had
			if best, possible := cheapest(tr, l, tr.ShopNames()); possible && best != l.Cost {
				rt.Fatalf("%+v costs %d, best %d", l, l.Cost, best)
			}
			met++
		}
	})
	if met == 0 {
		t.Error("no line was bought in part")
	}
}

// Bought in another size: the list asks for what is then missing; a visit that
// is paid is not paid again, and packages bought count to the price by the many.
func TestTheRestKnowsVisitsAndPricesByTheMany(t *testing.T) {
	food := trip.Food{ID: 1, Name: "Rice", Packages: []trip.Package{
		{Net: 500 * units.Gram, Price: optional.Of[units.Money](300), Shop: "near"},
		{Net: units.Kilogram, Price: optional.Of[units.Money](400), Shop: "far", ManyFrom: 3, ManyPrice: optional.Of[units.Money](350)},
	}}
	tr := &trip.Trip{Settings: trip.DefaultSettings(), Foods: []trip.Food{food}, Shops: []trip.Shop{{Name: "near", Use: true}, {Name: "far", Use: true, VisitFee: 500}}}
	planned := shopping.Result{
		Lines:  []shopping.Line{{Food: 1, Needed: 3 * units.Kilogram, Bought: 3 * units.Kilogram, Buys: []shopping.Buy{{Package: 1, Count: 3, Net: units.Kilogram, Shop: "far", Each: optional.Of[units.Money](350)}}, Cost: 1050, CostKnown: true}},
		Visits: []shopping.Visit{{Shop: "far", Fee: 500}}, Cost: 1050, Fees: 500,
	}
	tr.Progress.Purchases = []trip.Purchase{{Food: 1, Net: 500 * units.Gram, Shop: "near", Count: 4, Paid: optional.Of[units.Money](1111)}}
	rest := shopping.RestOf(tr, &planned)
	if l := rest.Lines[0]; l.Cost != 600 || len(l.Buys) != 1 || l.Buys[0].Count != 2 || l.Buys[0].Shop != "near" || rest.Expected() != 1711 {
		t.Errorf("one kilogram is missing: %+v, expected %d", l, rest.Expected())
	}
	tr.Progress.Purchases = []trip.Purchase{
		{Food: 1, Net: units.Kilogram, Shop: "far", Count: 2, Paid: optional.Of[units.Money](800)}, {Food: 1, Net: 100 * units.Gram, Shop: "near", Count: 1, Paid: optional.Of[units.Money](90)},
	}
	rest = shopping.RestOf(tr, &planned)
	if l := rest.Lines[0]; l.Cost != 350 || l.Buys[0].Shop != "far" || l.Leftover != 100*units.Gram || rest.Fees != 500 || rest.Expected() != 800+90+350+500 {
		t.Errorf("the third of three at the price of many: %+v, fees %d, expected %d", l, rest.Fees, rest.Expected())
	}
	tr.Progress.Purchases = []trip.Purchase{{Food: 1, Net: 4 * units.Kilogram, Shop: "farm gate", Count: 1}}
	rest = shopping.RestOf(tr, &planned)
	if l := rest.Lines[0]; len(l.Buys) != 0 || l.Leftover != units.Kilogram || rest.Fees != 0 || rest.Unpriced != 1 || rest.Leftovers[0].Mass != units.Kilogram {
		t.Errorf("more is bought than needed: %+v", rest)
	}
}

// Fuel bought at a place is taken off what is asked for there, and what is
// bought where none is asked for off any line; more than that serves no other
// place, since fuel does not travel by itself.
func TestFuelThatWasBought(t *testing.T) {
	planned := shopping.Result{Fuel: []shopping.FuelLine{
		{Name: "large", Fuel: trip.GasMix, Count: 2, Cost: 1800, CostKnown: true},
		{Name: "large", Fuel: trip.GasMix, Count: 1, Point: 5, Cost: 900, CostKnown: true},
	}}
	for _, c := range []struct {
		name         string
		shops        []string
		home, atMill int
	}{
		{"nothing", nil, 2, 1},
		{"near home", []string{""}, 1, 1},
		{"at the mill", []string{"Mill"}, 2, 0},
		{"in a shop nobody planned", []string{"Harbour shop"}, 1, 1},
		{"all in that shop", []string{"Harbour shop", "Harbour shop", "Harbour shop"}, 0, 0},
		{"more than is asked for near home", []string{"", "", ""}, 0, 1},
	} {
		tr := &trip.Trip{Points: []trip.ResupplyPoint{{ID: 5, Name: "Mill"}}}
		for _, shop := range c.shops {
			tr.Progress.Purchases = append(tr.Progress.Purchases, trip.Purchase{Fuel: "large", Shop: shop, Count: 1})
		}
		left := map[trip.PointID]int{}
		rest := shopping.RestOf(tr, &planned)
		for _, l := range rest.Fuel {
			left[l.Point] = l.Count
			if l.Cost != units.Money(l.Count)*900 {
				t.Errorf("%s: %+v", c.name, l)
			}
		}
		if left[0] != c.home || left[5] != c.atMill || rest.ToPay != units.Money(c.home+c.atMill)*900 {
			t.Errorf("%s: %+v", c.name, rest)
		}
	}
}
