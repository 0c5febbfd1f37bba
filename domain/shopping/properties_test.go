package shopping_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/optional"
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
		each, priced := eachOf(p, buy.Count)
		if got, ok := buy.Each.Get(); got != each || ok != priced {
			rt.Fatalf("%s: %+v, each costs %d", food.Name, buy, each)
		}
		cost += each * units.Money(buy.Count)
		known = known && priced
		if stock, limited := p.InStock.Get(); buy.Net != p.Net || buy.Count < 1 || limited && buy.Count > stock {
			rt.Fatalf("%s: buys %+v of %+v", food.Name, buy, p)
		}
		if !soldHere(tr, p, l.Point, tr.ShopNames()) {
			rt.Fatalf("%s: buys %+v at point %d", food.Name, buy, l.Point)
		}
	}
	if bought != l.Bought || cost != l.Cost || known != l.CostKnown || l.FromHome+l.Bought-l.Leftover != l.Needed || l.Leftover < 0 {
		rt.Fatalf("%s: line %+v does not add up", food.Name, l)
	}
}

func eachOf(p trip.Package, count int) (units.Money, bool) {
	if p.ManyFrom > 0 && count >= p.ManyFrom {
		return p.ManyPrice.Get()
	}
	return p.Price.Get()
}

// soldHere tells whether a package is to be had at a place, of some shops.
func soldHere(tr *trip.Trip, p trip.Package, point trip.PointID, shops []string) bool {
	if p.Shop == "" {
		return point == 0
	}
	if !slices.ContainsFunc(shops, func(name string) bool { return strings.EqualFold(name, p.Shop) }) {
		return false
	}
	shop := tr.Shop(p.Shop)
	return shop == nil && point == 0 || shop != nil && shop.Use && shop.Point == point
}

// cheapest tries all counts of the two packages a food of the generator has at
// most, of some shops; false if they do not suffice, or a price is missing.
func cheapest(tr *trip.Trip, l shopping.Line, shops []string) (units.Money, bool) {
	missing := l.Needed - l.FromHome
	var sold []trip.Package
	for _, p := range tr.Food(l.Food).Packages {
		if soldHere(tr, p, l.Point, shops) && p.Price.Known() {
			sold = append(sold, p)
		}
	}
	best, found := units.Money(math.MaxInt64), false
	most := func(p trip.Package) int { return min(p.InStock.Or(1<<30), max(p.ManyFrom, int((missing-1)/p.Net)+1)) }
	var walk func(i int, mass units.Mass, cost units.Money)
	walk = func(i int, mass units.Mass, cost units.Money) {
		if mass >= missing && cost < best {
			best, found = cost, true
		}
		if i == len(sold) {
			return
		}
		for n := 0; n <= most(sold[i]); n++ {
			each, _ := eachOf(sold[i], n)
			walk(i+1, mass+sold[i].Net*units.Mass(n), cost+each*units.Money(n))
		}
	}
	walk(0, 0, 0)
	return best, found
}

// The list with its visits costs no more than with any other set of shops, each
// food bought at best there: by trying them all.
func TestNoSetOfShopsIsCheaper(t *testing.T) {
	fees, several := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		for i := range tr.Shops {
			tr.Shops[i].LeastOrder = 0
			tr.Shops[i].VisitFee = units.Money(rapid.IntRange(0, 300).Draw(rt, "fee"))
		}
		// Without every price no list is known to be the cheapest.
		endless := rapid.Bool().Draw(rt, "endless")
		for i := range tr.Foods {
			for j := range tr.Foods[i].Packages {
				if endless {
					tr.Foods[i].Packages[j].InStock = optional.Value[int]{}
				}
				if p := &tr.Foods[i].Packages[j]; !p.Price.Known() {
					p.Price = optional.Of(units.Money(rapid.IntRange(0, 2000).Draw(rt, "price")))
				}
			}
		}
		_, s := plan(tr)
		for _, l := range s.Lines {
			if !l.BestProven && l.Needed > l.FromHome {
				return // a stock is out, or the food is not sold here
			}
		}
		var points []trip.PointID
		for _, l := range s.Lines {
			if !slices.Contains(points, l.Point) {
				points = append(points, l.Point)
			}
		}
		for _, point := range points {
			var paid units.Money
			for _, l := range s.Lines {
				if l.Point == point {
					paid += l.Cost
				}
			}
			for _, v := range s.Visits {
				if v.Point == point {
					paid += v.Fee
					fees += int(v.Fee)
				}
			}
			names := tr.ShopNames()
			for set := range 1 << len(names) {
				var shops []string
				var cost units.Money
				for i, name := range names {
					if set>>i&1 == 1 {
						shops = append(shops, name)
						if shop := tr.Shop(name); shop != nil {
							cost += shop.VisitFee
						}
					}
				}
				enough := true
				for _, l := range s.Lines {
					if l.Point != point || l.Needed <= l.FromHome {
						continue
					}
					best, found := cheapest(tr, l, shops)
					cost += best
					enough = enough && found
				}
				if enough && cost < paid {
					rt.Fatalf("at point %d the list costs %d, with %q it would cost %d: %+v", point, paid, shops, cost, s.Visits)
				}
			}
			if len(names) > 1 {
				several++
			}
		}
	})
	t.Logf("fees %d, %d points with several shops", fees, several)
	if fees == 0 || several == 0 {
		t.Errorf("fees %d, %d trips with several shops", fees, several)
	}
}

// Visits, errands and leftovers say what the lines say.
func TestVisitsErrandsAndLeftoversFollowTheLines(t *testing.T) {
	chosen := 0
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip").Canonical()
		_, s := plan(tr)
		type place struct {
			shop  string
			point trip.PointID
		}
		spent, left := map[place]units.Money{}, map[trip.FoodID]units.Mass{}
		for _, l := range s.Lines {
			for _, b := range l.Buys {
				if b.Package >= 0 && b.Shop != "" {
					each, _ := b.Each.Get()
					spent[place{trip.ShopKey(b.Shop), l.Point}] += each * units.Money(b.Count)
				}
			}
			if l.Point == 0 && l.Leftover > 0 {
				left[l.Food] += l.Leftover
			}
		}
		if len(s.Visits) != len(spent) {
			rt.Fatalf("%d visits for %v", len(s.Visits), spent)
		}
		var fees units.Money
		for _, v := range s.Visits {
			if got := spent[place{trip.ShopKey(v.Shop), v.Point}]; got != v.Spent {
				rt.Fatalf("visit %+v, the lines spend %d there", v, got)
			}
			if shop := tr.Shop(v.Shop); shop != nil {
				fees += shop.VisitFee
			}
			fees -= v.Fee
		}
		if fees != 0 {
			rt.Fatalf("visits %+v pay other fees", s.Visits)
		}
		for _, l := range s.Leftovers {
			if l.Mass != left[l.Food] {
				rt.Fatalf("%v of food %d left over, the lines leave %v", l.Mass, l.Food, left[l.Food])
			}
			delete(left, l.Food)
		}
		if len(left) > 0 {
			rt.Fatalf("nothing tells of %v", left)
		}
		checkErrands(rt, s)
		if len(s.Errands) > 1 {
			chosen++
		}
	})
	if chosen == 0 {
		t.Error("no trip had a choice of shops")
	}
}

// checkErrands: one is current, and its cost is that of the list; none beats
// another by cost and visits.
func checkErrands(rt *rapid.T, s shopping.Result) {
	if len(s.Errands) == 0 {
		return
	}
	var cost units.Money
	for _, l := range s.Lines {
		if l.Point == 0 {
			cost += l.Cost
		}
	}
	for _, v := range s.Visits {
		if v.Point == 0 {
			cost += v.Fee
		}
	}
	current := 0
	for i, e := range s.Errands {
		if e.Current {
			current++
			if e.Unpriced == 0 && e.Cost != cost {
				rt.Fatalf("the list costs %d, its errand %+v", cost, e)
			}
		}
		for j, f := range s.Errands {
			if i != j && !e.Current && !f.Current && e.Unpriced == 0 && f.Unpriced == 0 && f.Cost <= e.Cost && len(f.Shops) <= len(e.Shops) {
				rt.Fatalf("errand %+v is beaten by %+v", e, f)
			}
		}
	}
	if current != 1 || !s.Errands[0].Recommended {
		rt.Fatalf("%d current errands in %+v", current, s.Errands)
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
