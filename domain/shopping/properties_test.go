package shopping_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/resupply"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func plan(t *trip.Trip) (bags.Result, shopping.Result) {
	legs := t.Legs()
	b := bags.Compute(t, bagstest.Batches(t), cooking.Result{}, legs)
	r := resupply.Compute(t, b, cooking.Result{}, legs)
	return b, shopping.Compute(t, b, r, cooking.Result{})
}

func TestWhatIsPackedIsBoughtOrAtHome(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		b, s := plan(tr)
		needed, packed := map[trip.FoodID]units.Mass{}, map[trip.FoodID]units.Mass{}
		home := map[trip.FoodID]units.Mass{}
		for _, bag := range b.Bags {
			for _, c := range bag.Contents {
				packed[c.Food] += c.Mass
			}
		}
		var cost units.Money
		unpriced := 0
		for _, l := range s.Lines {
			needed[l.Food] += l.Needed
			home[l.Food] += l.FromHome
			checkLine(rt, tr, l)
			cost += l.Cost
			if !l.CostKnown {
				unpriced++
			}
		}
		if !reflect.DeepEqual(needed, packed) {
			rt.Fatalf("packed %v, on the list %v", packed, needed)
		}
		for id, mass := range home {
			if mass > tr.Food(id).AtHome {
				rt.Fatalf("%v of food %d from home, where there is %v", mass, id, tr.Food(id).AtHome)
			}
		}
		if cost != s.Cost || unpriced != s.Unpriced {
			rt.Fatalf("lines cost %d, %d unpriced: %+v", cost, unpriced, s)
		}
	})
}

func checkLine(rt *rapid.T, tr *trip.Trip, l shopping.Line) {
	food := tr.Food(l.Food)
	var bought units.Mass
	var cost units.Money
	known := true
	for _, buy := range l.Buys {
		bought += buy.Net * units.Mass(buy.Count)
		if buy.Package < 0 {
			known = false
			continue
		}
		p := food.Packages[buy.Package]
		price, priced := p.Price.Get()
		cost += price * units.Money(buy.Count)
		known = known && priced
		if stock, limited := p.InStock.Get(); buy.Net != p.Net || buy.Count < 1 || limited && buy.Count > stock {
			rt.Fatalf("%s: buys %+v of %+v", food.Name, buy, p)
		}
	}
	if bought != l.Bought || cost != l.Cost || known != l.CostKnown || l.FromHome+l.Bought-l.Leftover != l.Needed || l.Leftover < 0 {
		rt.Fatalf("%s: line %+v does not add up", food.Name, l)
	}
	if l.BestProven && l.Bought > 0 {
		checkBest(rt, food, l)
	}
}

// checkBest looks for a cheaper cover by trying all counts of the first
// package and all of the second; trips of the generator have no more.
func checkBest(rt *rapid.T, food *trip.Food, l shopping.Line) {
	missing := l.Needed - l.FromHome
	best := units.Money(math.MaxInt64)
	most := func(p trip.Package) int { return min(p.InStock.Or(1<<30), int((missing-1)/p.Net)+1) }
	for a := 0; a <= most(food.Packages[0]); a++ {
		mass, cost := food.Packages[0].Net*units.Mass(a), food.Packages[0].Price.Or(0)*units.Money(a)
		if len(food.Packages) > 1 && mass < missing {
			p := food.Packages[1]
			n := int((missing-mass-1)/p.Net) + 1
			if n > p.InStock.Or(1<<30) {
				continue
			}
			mass, cost = mass+p.Net*units.Mass(n), cost+p.Price.Or(0)*units.Money(n)
		}
		if mass >= missing {
			best = min(best, cost)
		}
	}
	if best != l.Cost {
		rt.Fatalf("%s: %v costs %d, %d would do: %+v", food.Name, missing, l.Cost, best, l)
	}
}

func TestOrderOfTheFoodsChangesNothing(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip")
		_, a := plan(tr.Canonical())
		slices.Reverse(tr.Foods)
		slices.Reverse(tr.Crew)
		_, b := plan(tr.Canonical())
		if !reflect.DeepEqual(a, b) {
			rt.Fatal("the shopping list depends on the order of the lists")
		}
	})
}

// 60 people, 21 days, 100 foods.
func BenchmarkCompute(b *testing.B) {
	t := triptest.Large(60, 21, 1).Canonical()
	legs := t.Legs()
	packed := bags.Compute(t, bagstest.Batches(t), cooking.Result{}, legs)
	boxes := resupply.Compute(t, packed, cooking.Result{}, legs)
	for b.Loop() {
		shopping.Compute(t, packed, boxes, cooking.Result{})
	}
}
