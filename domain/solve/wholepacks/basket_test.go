package wholepacks

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
)

func randomBasket(r *rand.Rand, least bool) Basket {
	var b Basket
	deadlines := 1 + r.IntN(2)
	for range 2 + r.IntN(2) {
		s := Shop{Name: "shop"}
		for range deadlines {
			s.VisitCents = append(s.VisitCents, int64(r.IntN(3))*60)
			if least {
				s.LeastCents = append(s.LeastCents, int64(r.IntN(3))*50)
			}
		}
		b.Shops = append(b.Shops, s)
	}
	for range 1 + r.IntN(2) {
		it := Item{Name: "food", Keeps: r.IntN(2) == 0}
		for range deadlines {
			it.NeedGrams = append(it.NeedGrams, int64(r.IntN(4))*100)
		}
		for s := range b.Shops {
			p := Package{NetGrams: int64(1+r.IntN(3)) * 100, Shop: s}
			for range deadlines {
				o := Offer{PriceCents: int64(2+r.IntN(8)) * 10, Available: Unlimited}
				if r.IntN(5) == 0 {
					o.Available = int64(r.IntN(3))
				}
				if r.IntN(5) == 0 {
					o.ManyFrom, o.ManyCents = int64(2+r.IntN(2)), o.PriceCents*int64(8+r.IntN(2))/10
				}
				p.Offers = append(p.Offers, o)
			}
			if p.OneStock = r.IntN(4) == 0; p.OneStock {
				for k := range p.Offers {
					p.Offers[k] = p.Offers[0]
				}
			}
			it.Packages = append(it.Packages, p)
		}
		b.Items = append(b.Items, it)
	}
	return b
}

// everySubset is the plain method: each set of visits, foods apart, fees added.
func everySubset(b Basket) (best Order, found bool) {
	deadlines := len(b.Items[0].NeedGrams)
	for set := range 1 << (len(b.Shops) * deadlines) {
		var o Order
		ok := true
		for _, it := range b.Items {
			p, err := Solve(it.without(func(n, k int) bool { return set>>(it.Packages[n].Shop*deadlines+k)&1 == 0 }))
			if err != nil {
				ok = false
				break
			}
			o.CostCents += p.CostCents
			o.LeftGrams += p.LeftGrams
			o.Packages += p.Packages
		}
		for s, shop := range b.Shops {
			for k := range deadlines {
				if set>>(s*deadlines+k)&1 == 1 {
					o.CostCents += shop.VisitCents[k]
				}
			}
		}
		if ok && (!found || o.worth().less(best.worth())) {
			best, found = o, true
		}
	}
	return best, found
}

func TestBasketEqualsEverySubsetOfVisits(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 9))
	solved := 0
	for n := range 600 {
		b := randomBasket(r, false)
		want, found := everySubset(b)
		got, err := SolveBasket(b)
		if found != (err == nil) {
			t.Fatalf("case %d: found %v, error %v", n, found, err)
		}
		if !found {
			continue
		}
		solved++
		if got.worth() != want.worth() || !got.Proven || got.BoundCents != got.CostCents {
			t.Fatalf("case %d %+v: got %+v, want %+v", n, b, got, want)
		}
		checkOrder(t, b, got)
	}
	if solved < 300 {
		t.Errorf("only %d cases could be solved", solved)
	}
}

// checkOrder recomputes an order from its counts.
func checkOrder(t *testing.T, b Basket, o Order) {
	t.Helper()
	var packs, visits int64
	for s, shop := range b.Shops {
		for k := range b.Items[0].NeedGrams {
			used, spent := false, int64(0)
			for i, it := range b.Items {
				for p, pack := range it.Packages {
					if n := o.Purchases[i].Counts[p][k]; pack.Shop == s && n > 0 {
						used, spent = true, spent+pack.Offers[k].cents(n)
					}
				}
			}
			packs += spent
			if used && shop.VisitCents != nil {
				visits += shop.VisitCents[k]
			}
			if used && shop.LeastCents != nil && spent < shop.LeastCents[k] {
				t.Fatalf("least order of shop %d at deadline %d missed: %d of %d", s, k, spent, shop.LeastCents[k])
			}
		}
	}
	for i, it := range b.Items {
		if _, ok := tally(it, o.Purchases[i].Counts); !ok {
			t.Fatalf("item %d: %+v breaks a rule", i, o.Purchases[i])
		}
	}
	if o.CostCents != packs+visits || o.VisitCents != visits {
		t.Fatalf("cost %d, visits %d: counts say %d and %d", o.CostCents, o.VisitCents, packs+visits, visits)
	}
}

// exhaustiveBasket tries all counts of all items together.
func exhaustiveBasket(b Basket) (best worth, found bool) {
	deadlines := len(b.Items[0].NeedGrams)
	spent := make([]int64, len(b.Shops)*deadlines)
	used := make([]int, len(b.Shops)*deadlines)
	all := make([][][]int64, len(b.Items))
	for i, it := range b.Items {
		all[i] = make([][]int64, len(it.Packages))
		for p := range all[i] {
			all[i][p] = make([]int64, deadlines)
		}
	}
	var walk func(i, p, k int)
	walk = func(i, p, k int) {
		if i < len(b.Items) && k == deadlines {
			p, k = p+1, 0
		}
		if i < len(b.Items) && p == len(b.Items[i].Packages) {
			if _, ok := tally(b.Items[i], all[i]); !ok {
				return
			}
			i, p, k = i+1, 0, 0
		}
		if i == len(b.Items) {
			var cost worth
			for v := range spent {
				if used[v] == 0 {
					continue
				}
				shop := b.Shops[v/deadlines]
				if shop.LeastCents != nil && spent[v] < shop.LeastCents[v%deadlines] {
					return
				}
				cost.cents += spent[v] + shop.VisitCents[v%deadlines]
			}
			for i, it := range b.Items {
				p := it.priced(Purchase{Counts: all[i]})
				cost.rest += p.LeftGrams<<packageBits + p.Packages
			}
			if !found || cost.less(best) {
				best, found = cost, true
			}
			return
		}
		pack := b.Items[i].Packages[p]
		v := pack.Shop*deadlines + k
		for n := int64(0); n <= min(pack.Offers[k].Available, 7); n++ {
			all[i][p][k] = n
			spent[v] += pack.Offers[k].cents(n)
			if n > 0 {
				used[v]++
			}
			walk(i, p, k+1)
			spent[v] -= pack.Offers[k].cents(n)
			if n > 0 {
				used[v]--
			}
		}
		all[i][p][k] = 0
	}
	walk(0, 0, 0)
	return best, found
}

// Least orders, of which several often bind at once, against all counts.
func TestLeastOrdersEqualExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	solved, together := 0, 0
	for n := range 500 {
		b := randomBasket(r, true)
		if n%5 > 0 {
			b = oneDeadline(b)
		} else {
			b.Items = b.Items[:1]
		}
		makeDearer(b)
		want, found := exhaustiveBasket(b)
		got, err := SolveBasket(b)
		if found != (err == nil) {
			t.Fatalf("case %d %+v: found %v, error %v", n, b, found, err)
		}
		if !found {
			continue
		}
		solved++
		checkOrder(t, b, got)
		if got.worth() != want || !got.Proven || got.BoundCents != got.CostCents {
			t.Fatalf("case %d %+v: got %+v, the best is %+v", n, b, got, want)
		}
		if bindTogether(b) {
			together++
		}
	}
	t.Logf("%d solved, in %d of them several least orders bind", solved, together)
	if solved < 400 || together < 12 {
		t.Errorf("only %d solved, in %d of them several least orders bind", solved, together)
	}
}

// makeDearer lets least orders bind more often, yet so that seven packages
// reach each.
func makeDearer(b Basket) {
	for _, shop := range b.Shops {
		for k := range shop.LeastCents {
			shop.LeastCents[k] *= 3
		}
	}
	for _, it := range b.Items {
		for _, p := range it.Packages {
			for k := range p.Offers {
				p.Offers[k].PriceCents += 40
				p.Offers[k].ManyCents += 40
			}
		}
	}
}

func oneDeadline(b Basket) Basket {
	for i := range b.Items {
		b.Items[i].NeedGrams = b.Items[i].NeedGrams[:1]
		for p := range b.Items[i].Packages {
			b.Items[i].Packages[p].Offers = b.Items[i].Packages[p].Offers[:1]
		}
	}
	for s := range b.Shops {
		b.Shops[s].VisitCents, b.Shops[s].LeastCents = b.Shops[s].VisitCents[:1], b.Shops[s].LeastCents[:1]
	}
	return b
}

// bindTogether tells whether several visits of the best order without least
// orders would miss theirs.
func bindTogether(b Basket) bool {
	free := b
	free.Shops = nil
	for _, shop := range b.Shops {
		shop.LeastCents = nil
		free.Shops = append(free.Shops, shop)
	}
	o, err := SolveBasket(free)
	if err != nil {
		return false
	}
	missed := 0
	s := newSearch(b)
	for n, cents := range s.spent(o) {
		if cents >= 0 && cents < s.visits[n].least {
			missed++
		}
	}
	return missed > 1
}

func TestBasketInputAndShortage(t *testing.T) {
	it := single(100, pack(100, 10, Unlimited))
	two := Item{Name: "oats", NeedGrams: []int64{1, 1}, Packages: []Package{{NetGrams: 1, Offers: []Offer{{}, {}}}}}
	far := single(100, pack(100, 10, Unlimited))
	far.Packages[0].Shop = 1
	for name, b := range map[string]Basket{
		"no shop":       {Items: []Item{it}},
		"unknown shop":  {Items: []Item{far}, Shops: []Shop{{Name: "a"}}},
		"deadlines":     {Items: []Item{it, two}, Shops: []Shop{{Name: "a"}}},
		"short list":    {Items: []Item{it}, Shops: []Shop{{Name: "a", VisitCents: []int64{1, 2}}}},
		"negative fee":  {Items: []Item{it}, Shops: []Shop{{Name: "a", VisitCents: []int64{-2}}}},
		"out of stock":  {Items: []Item{single(100, pack(60, 1, 1))}, Shops: []Shop{{Name: "a"}}},
		"least, no way": {Items: []Item{single(100, pack(100, 10, 1))}, Shops: []Shop{{Name: "corner", LeastCents: []int64{500}}}},
	} {
		if _, err := SolveBasket(b); err == nil {
			t.Errorf("%s: accepted", name)
		} else if name == "least, no way" && !strings.Contains(err.Error(), "corner") {
			t.Errorf("%q does not name the shop", err)
		}
	}
}

func TestEmptyBasket(t *testing.T) {
	if got, err := SolveBasket(Basket{}); err != nil || !got.Proven || got.CostCents != 0 {
		t.Errorf("%+v, %v", got, err)
	}
}

// A least order just missed is filled with the cheapest package that reaches it.
func TestLeastOrderIsFilled(t *testing.T) {
	b := Basket{
		Shops: []Shop{{Name: "mill", LeastCents: []int64{1000}}},
		Items: []Item{single(900, pack(500, 300, Unlimited)), single(100, pack(100, 120, Unlimited), pack(50, 130, Unlimited))},
	}
	got, err := SolveBasket(b)
	if err != nil {
		t.Fatal(err)
	}
	checkOrder(t, b, got)
	if got.CostCents != 1020 || got.LeftGrams != 600 {
		t.Errorf("cost %d, left %d: want 600 + 120 and 300 more", got.CostCents, got.LeftGrams)
	}
	if !got.Proven || got.BoundCents != got.CostCents {
		t.Errorf("bound %d, proven %v", got.BoundCents, got.Proven)
	}
}

// Moving an item from the cheaper shop fills a least order for less than
// buying above need: 400 + 500 + 100 against 400 + 500 + 90 and 100 above.
func TestAnItemMovesToFillALeastOrder(t *testing.T) {
	mill, market := 0, 1
	at := func(shop int, p Package) Package { p.Shop = shop; return p }
	b := Basket{
		Shops: []Shop{{Name: "mill", LeastCents: []int64{1000}}, {Name: "market"}},
		Items: []Item{
			single(500, at(mill, pack(500, 400, Unlimited))), single(500, at(mill, pack(500, 500, Unlimited))),
			single(100, at(mill, pack(100, 100, Unlimited)), at(market, pack(100, 90, Unlimited))),
		},
	}
	got, err := SolveBasket(b)
	if err != nil || got.CostCents != 1000 || !got.Proven || got.LeftGrams != 0 || got.Visits != 1 {
		t.Errorf("%+v, %v", got, err)
	}
}

// Each order is the best of its number of visits, by every subset of visits.
func TestUnbeatenEqualsEverySubsetOfVisits(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	several := 0
	for n := range 900 {
		b := randomBasket(r, false)
		got, err := Unbeaten(b)
		want := fewestVisits(b)
		if len(got) != len(want) || (err == nil) != (len(want) > 0) {
			t.Fatalf("case %d %+v: %d orders, want %d (%v)", n, b, len(got), len(want), err)
		}
		for i, o := range got {
			checkOrder(t, b, o)
			if o.CostCents != want[i].CostCents || o.Visits != want[i].Visits || !o.Proven {
				t.Fatalf("case %d %+v: order %d costs %d with %d visits, want %d with %d", n, b, i, o.CostCents, o.Visits, want[i].CostCents, want[i].Visits)
			}
		}
		if len(got) > 1 {
			several++
		}
	}
	if several < 50 {
		t.Errorf("only %d cases have a choice", several)
	}
}

// fewestVisits lists the cheapest order of each number of visits that is
// cheaper than those of fewer, dearest last.
func fewestVisits(b Basket) []Order {
	deadlines := len(b.Items[0].NeedGrams)
	visits := len(b.Shops) * deadlines
	best := map[int]int64{}
	for set := range 1 << visits {
		cost, used, ok := int64(0), 0, true
		for _, it := range b.Items {
			p, err := Solve(it.without(func(n, k int) bool { return set>>(it.Packages[n].Shop*deadlines+k)&1 == 0 }))
			if err != nil {
				ok = false
				break
			}
			cost += p.CostCents
		}
		for v := range visits {
			if set>>v&1 == 1 {
				used++
				cost += b.Shops[v/deadlines].VisitCents[v%deadlines]
			}
		}
		if before, known := best[used]; ok && (!known || cost < before) {
			best[used] = cost
		}
	}
	var list []Order
	for used := visits; used >= 0; used-- {
		cost, known := best[used]
		if !known {
			continue
		}
		for len(list) > 0 && list[len(list)-1].CostCents >= cost {
			list = list[:len(list)-1]
		}
		list = append(list, Order{CostCents: cost, Visits: used})
	}
	return list
}

func TestBasketIsDeterministic(t *testing.T) {
	b := randomBasket(rand.New(rand.NewPCG(3, 3)), true)
	first, _ := SolveBasket(b)
	for range 5 {
		if again, _ := SolveBasket(b); !reflect.DeepEqual(first, again) {
			t.Fatal("two runs differ")
		}
	}
}

// Six shops that each cost a visit, 80 foods; then with a least order in each
// that binds somewhere; then all orders that nothing beats by cost and visits.
func BenchmarkSolveBasket(b *testing.B) {
	run := func(name string, least int64, solve func(Basket) error) {
		basket := sixShops(least)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if err := solve(basket); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	best := func(basket Basket) error {
		_, err := SolveBasket(basket)
		return err
	}
	run("free orders", 0, best)
	run("least orders", 20_000, best)
	run("unbeaten", 0, func(basket Basket) error {
		_, err := Unbeaten(basket)
		return err
	})
}

func sixShops(least int64) Basket {
	r := rand.New(rand.NewPCG(4, 4))
	var basket Basket
	for range 6 {
		basket.Shops = append(basket.Shops, Shop{Name: "shop", VisitCents: []int64{int64(200 + r.IntN(600))}, LeastCents: []int64{least}})
	}
	for range 80 {
		it := shelf(r, 1, 12)
		for p := range it.Packages {
			it.Packages[p].Shop = r.IntN(6)
			it.Packages[p].Offers[0].Available = Unlimited
		}
		basket.Items = append(basket.Items, it)
	}
	return basket
}
