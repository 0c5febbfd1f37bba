package shopping

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/app/screens/bench"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// market is two foods, rice in two sizes at two deadlines, milk of which
// enough is at home, and gas from two places.
func market() (*trip.Trip, *plan.Plan) {
	price := func(cents int) optional.Value[units.Money] { return optional.Of(units.Money(cents)) }
	t := &trip.Trip{
		Units: units.Metric, Currency: "EUR",
		Crew: []trip.Member{{ID: 1, Name: "Ann"}, {ID: 2, Name: "Bo"}}, Days: make([]trip.Day, 3),
		Points: []trip.ResupplyPoint{{ID: 4, Name: "Hut"}},
		Foods: []trip.Food{
			{ID: 1, Name: "Rice", Aisle: "dry", Packages: []trip.Package{{Net: kilo(1), Price: price(200), Shop: "mill"}, {Net: kilo(5), Shop: "mill"}}},
			{ID: 2, Name: "Milk powder", AtHome: kilo(2)},
		},
		Fuels: []trip.FuelContainer{{Fuel: trip.GasMix, Name: "Can 230", Net: 230 * units.Gram, Price: price(500)}},
	}
	one := shopping.Buy{Package: 0, Count: 2, Net: kilo(1), Shop: "mill", Each: optional.Of(units.Money(200))}
	five := shopping.Buy{Package: 1, Count: 1, Net: kilo(5), Shop: "mill"}
	return t, &plan.Plan{Trip: t, Shopping: shopping.Result{
		Lines: []shopping.Line{
			{Food: 1, Deadline: 20000, Needed: kilo(7), Bought: kilo(7), Buys: []shopping.Buy{one, five}},
			{Food: 1, Deadline: 20009, Needed: kilo(2), Bought: kilo(2), Buys: []shopping.Buy{one}},
			{Food: 2, Deadline: 20000, Needed: kilo(1), FromHome: kilo(1)},
		},
		Fuel: []shopping.FuelLine{{Name: "Can 230", Fuel: trip.GasMix, Count: 3}, {Name: "Can 230", Fuel: trip.GasMix, Count: 1, Point: 4}},
	}}
}

func kilo(n int) units.Mass { return units.Mass(n) * units.Kilogram }

func find(l *list, key string) *row {
	i := slices.IndexFunc(l.rows, func(r *row) bool { return r.key == key })
	if i < 0 {
		return &row{}
	}
	return l.rows[i]
}

// What is bought serves the earliest deadline first; what is more stays with
// the last.
func TestPurchasesServeTheEarliestDeadlineFirst(t *testing.T) {
	tr, p := market()
	early, late := "food 1 "+units.Date(20000).String()+" 0", "food 1 "+units.Date(20009).String()+" 0"
	for bought, want := range map[int][2]int{0: {0, 0}, 1: {1, 0}, 2: {2, 0}, 3: {2, 1}, 4: {2, 2}, 9: {2, 7}} {
		tr.Progress.Purchases = nil
		if bought > 0 {
			tr.Progress.Purchases = []trip.Purchase{{Food: 1, Net: kilo(1), Shop: "mill", Count: bought}}
		}
		l := newList(tr, p, byShop)
		if got := [2]int{find(l, early).bought, find(l, late).bought}; got != want {
			t.Errorf("of %d bought the rows have %v, want %v", bought, got, want)
		}
	}
}

func TestOtherPackagesMayCoverAFood(t *testing.T) {
	tr, p := market()
	tr.Progress.Purchases = []trip.Purchase{{Food: 1, Net: kilo(3), Shop: "farm", Count: 3, Paid: optional.Of(units.Money(900))}}
	l := newList(tr, p, byShop)
	for _, r := range l.rows {
		switch r.kind {
		case buyRow:
			if !r.done() || r.bought != 0 {
				t.Errorf("9 kg of rice are bought, and %s is still to buy", r.key)
			}
		case extraRow:
			if r.bought != 3 || r.paid != 900 || r.group != "Bought, not on the list" {
				t.Errorf("%+v", r)
			}
		}
	}
	tr.Progress.Purchases[0].Count = 2
	if l = newList(tr, p, byShop); l.total.done != 0 {
		t.Errorf("6 of 9 kg are bought, and %d rows are done", l.total.done)
	}
}

func TestGroups(t *testing.T) {
	tr, p := market()
	tr.Progress.Purchases = []trip.Purchase{{Other: "car fuel", Count: 1}}
	for by, want := range map[grouping][]string{
		byShop:     {"mill", "Fuel", "Hut", "Enough at home", "Other costs"},
		byDeadline: {"At home by " + bench.DayWords(20000), "At home by " + bench.DayWords(20009), "Fuel", "Enough at home", "Other costs"},
		byFood:     {"dry", "Fuel", "Enough at home", "Other costs"},
	} {
		var heads []string
		for _, r := range newList(tr, p, by).rows {
			if r.kind == headRow {
				heads = append(heads, r.group)
			}
		}
		if !slices.Equal(heads, want) {
			t.Errorf("grouping %d has %v, want %v", by, heads, want)
		}
	}
	l := newList(tr, p, byShop)
	if mill := find(l, "head mill").sum; mill.rows != 3 || mill.cost != 800 || mill.unpriced != 1 {
		t.Errorf("the mill adds up to %+v", mill)
	}
}

// Whatever is noted as bought, nothing of it is lost or counted twice, in
// every grouping, and writing a number makes it that number.
func TestNoPurchaseIsLostOrCountedTwice(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		tr, p := market()
		count, paid := 0, units.Money(0)
		for range rapid.IntRange(0, 6).Draw(rt, "purchases") {
			bought := trip.Purchase{Count: rapid.IntRange(1, 5).Draw(rt, "count"), By: trip.MemberID(rapid.IntRange(0, 2).Draw(rt, "by"))}
			switch rapid.IntRange(0, 4).Draw(rt, "what") {
			case 0, 1:
				bought.Food, bought.Net, bought.Shop = 1, kilo(rapid.SampledFrom([]int{1, 5, 3}).Draw(rt, "net")), "mill"
			case 2:
				bought.Food, bought.Net = 2, kilo(1)
			case 3:
				bought.Fuel = "Can 230"
			default:
				bought.Other = "car fuel"
			}
			if rapid.Bool().Draw(rt, "paid") {
				bought.Paid = optional.Of(units.Money(rapid.IntRange(0, 900).Draw(rt, "amount")))
			}
			tr.Progress.Purchases = append(tr.Progress.Purchases, bought)
			count += bought.Count
			paid += bought.Paid.Or(0)
		}
		by := grouping(rapid.IntRange(0, 2).Draw(rt, "grouping"))
		l := newList(tr, p, by)
		rowCount, rowPaid := 0, units.Money(0)
		seen := map[string]bool{}
		for _, r := range l.rows {
			if seen[r.key] {
				rt.Fatalf("two rows are called %q", r.key)
			}
			seen[r.key] = true
			rowCount += r.bought
			rowPaid += r.paid
		}
		if rowCount != count || rowPaid != paid || l.paid != paid {
			rt.Fatalf("%d bought for %d; the rows have %d for %d", count, paid, rowCount, rowPaid)
		}
		r := rapid.SampledFrom(l.rows).Draw(rt, "row")
		if r.kind == headRow || r.kind == homeRow || r.kind == otherRow {
			return
		}
		wanted := rapid.IntRange(0, 9).Draw(rt, "wanted")
		others := goodsCount(tr, r.goods) - r.bought
		setBought(tr, l, r, wanted, trip.MemberID(rapid.IntRange(0, 2).Draw(rt, "payer")))
		if got := goodsCount(tr, r.goods); got != others+wanted {
			rt.Fatalf("%d of %v are noted, want %d", got, r.goods, others+wanted)
		}
	})
}

func goodsCount(t *trip.Trip, g goods) int {
	n := 0
	for i := range t.Progress.Purchases {
		if p := &t.Progress.Purchases[i]; p.Other == "" && goodsOf(p) == g {
			n += p.Count
		}
	}
	return n
}

func TestSomebodyElsesPurchaseStays(t *testing.T) {
	tr, p := market()
	tr.Progress.Purchases = []trip.Purchase{{Food: 1, Net: kilo(5), Shop: "mill", Count: 1, By: 1, Paid: optional.Of(units.Money(700))}}
	l := newList(tr, p, byShop)
	r := find(l, "food 1 "+units.Date(20000).String()+" 1")
	setBought(tr, l, r, 3, 2)
	want := "[{1 1 1} {1 2 2}]"
	type short struct{ Food, By, Count int }
	var got []short
	for _, bought := range tr.Progress.Purchases {
		got = append(got, short{int(bought.Food), int(bought.By), bought.Count})
	}
	if fmt.Sprint(got) != want || tr.Progress.Purchases[0].Paid != optional.Of(units.Money(700)) || tr.Progress.Purchases[1].Paid.Known() {
		t.Errorf("noted %+v", tr.Progress.Purchases)
	}
}
