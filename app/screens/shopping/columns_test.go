package shopping

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"sumpter/app/look"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// stall is a screen over the small market, whose plan is made by hand.
func stall(t *testing.T, change func(*trip.Trip, *plan.Plan)) *shopper {
	t.Helper()
	s := open(t, benchtest.DemoDays(2))
	tr, p := market()
	change(tr, p)
	s.list = newList(tr, p, byShop)
	return s
}

func (s *shopper) row(kind rowKind) *row {
	i := slices.IndexFunc(s.list.rows, func(r *row) bool { return r.kind == kind })
	return s.list.rows[i]
}

// texts gives what the columns of a row show, by title.
func (s *shopper) texts(r *row) map[string]string {
	shown := map[string]string{}
	for _, f := range s.fields() {
		if text := f.text(s.list, r); text != "" {
			shown[f.title] = text
		}
	}
	return shown
}

func TestWhatEachKindOfRowShows(t *testing.T) {
	s := stall(t, func(tr *trip.Trip, _ *plan.Plan) {
		tr.Progress.Purchases = []trip.Purchase{
			{Food: 1, Net: kilo(1), Shop: "mill", Count: 1, Paid: optional.Of(units.Money(180)), By: 2},
			{Other: "car fuel", Count: 1, Paid: optional.Of(units.Money(5000)), By: 1},
			{Food: 1, Net: kilo(3), Count: 1}, // of 7: three more of 1 kg are then the cheapest known
		}
	})
	date := units.Date(20000).Spoken()
	for kind, want := range map[rowKind]map[string]string{
		headRow: {"State": "0 of 2", "What": "mill", "Cost": "11.80"},
		buyRow: {"State": "1 of 4", "What": "Rice", "Buy": "4", "Package": "1000", "Price": "2.00", "Cost": "7.80", "Bought": "1", "Paid": "1.80",
			"Paid by": "Bo", "Shop": "mill", "Home by": date, "Needed": "7000", "At home": "0", "Left over": "0"},
		homeRow:  {"State": "at home", "What": "Milk powder", "Home by": date, "Needed": "1000", "At home": "2000", "Left over": "0"},
		fuelRow:  {"State": "to buy", "What": "Can 230", "Buy": "3", "Price": "5.00", "Cost": "15.00"},
		extraRow: {"State": "done", "What": "Rice", "Package": "3000", "Bought": "1"},
		otherRow: {"State": "done", "What": "car fuel", "Bought": "1", "Paid": "50.00", "Paid by": "Ann"},
	} {
		have := s.texts(s.row(kind))
		for title, text := range want {
			if have[title] != text {
				t.Errorf("a row of kind %d shows %q as %s, want %q", kind, have[title], title, text)
			}
		}
		for title, text := range have {
			if _, expected := want[title]; !expected {
				t.Errorf("a row of kind %d also shows %q as %s", kind, text, title)
			}
		}
	}
}

// Unknown is a word in its own tone, never an empty cell and never zero.
func TestUnknownPricesLookUnknown(t *testing.T) {
	s := stall(t, func(*trip.Trip, *plan.Plan) {})
	r := find(s.list, "food 1 "+units.Date(20000).String()+" 1")
	if have := s.texts(r); have["Price"] != "not known" || have["Cost"] != "not known" {
		t.Errorf("five kilograms show %v", have)
	}
	if priceTone(s.list, r) != look.Ochre || priceTone(s.list, s.row(fuelRow)) != look.Ink {
		t.Error("the tone does not tell an unknown price from a known one")
	}
	loose := &row{kind: buyRow, goods: goods{food: 1, net: kilo(2)}, buy: shopping.Buy{Package: -1, Net: kilo(2)}, count: 1, line: &shopping.Line{Food: 1}}
	if have := s.texts(loose); have["Package"] != "2000 loose" || have["Cost"] != "not known" {
		t.Errorf("what is sold loose shows %v", have)
	}
}

func TestUSUnits(t *testing.T) {
	made := benchtest.DemoDays(2)
	made.Units = units.US
	s := open(t, made)
	r := s.first(t)
	if f := s.fields()[s.column(t, "Package")]; f.unit != "oz" {
		t.Errorf("packages are in %s", f.unit)
	}
	s.write(t, r, "At home", "16")
	if home := s.Document.Trip().Food(r.goods.food).AtHome; home != units.FromGrams(453.59237) {
		t.Errorf("16 oz at home are %v", home)
	}
}

// What cannot be edited says why, and nothing changes.
func TestCellsThatCannotBeWrittenSayWhy(t *testing.T) {
	s := stall(t, func(tr *trip.Trip, _ *plan.Plan) {
		tr.Progress.Purchases = []trip.Purchase{{Other: "car fuel", Count: 1}}
	})
	for _, c := range []struct {
		kind        rowKind
		title, text string
	}{
		{headRow, "Price", "3"}, {headRow, "Bought", "3"}, {homeRow, "Bought", "1"}, {otherRow, "Bought", "2"}, {buyRow, "What", "Couscous"},
		{otherRow, "What", " "}, {homeRow, "Price", "2"}, {otherRow, "Package", "300"}, {otherRow, "At home", "5"}, {buyRow, "Paid by", "Ann"},
		{otherRow, "Paid by", "Zorro"}, {buyRow, "Bought", "many"}, {buyRow, "Price", "dear"}, {otherRow, "Paid", "much"}, {buyRow, "Package", "3 sacks"},
	} {
		changed := s.list.trip.Clone()
		if err := s.store(changed, s.column(t, c.title), s.row(c.kind), c.text); err == nil {
			t.Errorf("a row of kind %d takes %q as %s", c.kind, c.text, c.title)
		} else if err.Error() == "" {
			t.Errorf("a row of kind %d refuses %q without a word", c.kind, c.text)
		}
	}
}

func TestWritingCells(t *testing.T) {
	s := stall(t, func(tr *trip.Trip, _ *plan.Plan) {
		tr.Progress.Purchases = []trip.Purchase{
			{Other: "car fuel", Count: 1, Paid: optional.Of(units.Money(10)), By: 1},
			{Food: 1, Net: kilo(1), Shop: "mill", Count: 1, Paid: optional.Of(units.Money(200)), By: 1},
			{Food: 1, Net: kilo(1), Shop: "mill", Count: 1, Paid: optional.Of(units.Money(200)), By: 2},
		}
	})
	write := func(kind rowKind, title, text string) *trip.Trip {
		t.Helper()
		changed := s.list.trip.Clone()
		if err := s.store(changed, s.column(t, title), s.row(kind), text); err != nil {
			t.Fatal(err)
		}
		return changed
	}
	if got := write(fuelRow, "Price", "6.5").Fuels[0].Price; got != optional.Of(units.Money(650)) {
		t.Errorf("the fuel costs %v", got)
	}
	if got := write(fuelRow, "Price", "").Fuels[0].Price; got.Known() {
		t.Errorf("the fuel costs %v", got)
	}
	if got := write(homeRow, "At home", "").Food(2).AtHome; got != 0 {
		t.Errorf("at home is %v", got)
	}
	if got := write(otherRow, "Paid by", "not noted").Progress.Purchases[0].By; got != 0 {
		t.Errorf("member %d paid", got)
	}
	// Two purchases of the same goods: the sum is what was written.
	got := write(buyRow, "Paid", "3").Progress.Purchases
	if sum := got[1].Paid.Or(0) + got[2].Paid.Or(0); sum != 300 {
		t.Errorf("paid is %v", sum)
	}
	if got = write(buyRow, "Paid", "").Progress.Purchases; got[1].Paid.Known() || got[2].Paid.Known() {
		t.Errorf("paid is %+v", got)
	}
	if got = write(buyRow, "Paid by", "Bo").Progress.Purchases; got[1].By != 2 || got[2].By != 2 || got[0].By != 1 {
		t.Errorf("paid by %+v", got)
	}
	if net := write(buyRow, "Package", "1.1 kg"); net.Food(1).Packages[0].Net != 1100*units.Gram || net.Progress.Purchases[1].Net != 1100*units.Gram {
		t.Errorf("the package is %+v, bought %+v", net.Food(1).Packages[0], net.Progress.Purchases)
	}
}

// A food nobody entered a package of gets one by writing its size or price.
func TestALooseFoodGetsAPackage(t *testing.T) {
	tr, _ := market()
	loose := &row{kind: buyRow, goods: goods{food: 2, net: kilo(1)}, buy: shopping.Buy{Package: -1, Net: kilo(1)}}
	if err := setPrice(tr, loose, "4"); err != nil {
		t.Fatal(err)
	}
	want := trip.Package{Net: kilo(1), Price: optional.Of(units.Money(400))}
	if got := tr.Food(2).Packages; len(got) != 1 || got[0] != want {
		t.Errorf("the packages are %+v", got)
	}
	if err := setNet(tr, loose, "250"); err != nil || tr.Food(2).Packages[0].Net != 250*units.Gram || len(tr.Food(2).Packages) != 1 {
		t.Errorf("the packages are %+v, %v", tr.Food(2).Packages, err)
	}
}

func TestTheSideTellsOfEachRow(t *testing.T) {
	s := stall(t, func(tr *trip.Trip, p *plan.Plan) {
		tr.Progress.Purchases = []trip.Purchase{{Other: "car fuel", Count: 1}}
		p.Shopping.Findings = []findings.Finding{{Place: findings.Place{Food: 1}, What: prose.Verbatim("Rice is short."), Remedy: prose.Verbatim("Ask the miller.")}}
		p.Shopping.Lines[1].CostKnown, p.Shopping.Lines[1].BestProven = true, true
	})
	for key, want := range map[string]string{
		"head mill": "Lines to buy: 3 of 3.\nOf these without a price: 1",
		"food 1 " + units.Date(20000).String() + " 0": "Needed 7.00 kg, from home 0 g, to buy 7.00 kg, left over 0 g.\nA price is missing",
		"food 1 " + units.Date(20009).String() + " 0": "No cheaper way of whole packages exists.\nRice is short. Ask the miller.",
		"food 2 " + units.Date(20000).String():        "to buy 0 g",
		"fuel Can 230 0":                              "before the start",
		"fuel Can 230 4":                              "at Hut: fuel does not travel",
		"other 0":                                     "Shared by the crew",
	} {
		told := strings.Join(s.food.tell(find(s.list, key)), "\n")
		want = strings.ReplaceAll(want, "7.00 kg", kilo(7).Format(units.Metric))
		if !strings.Contains(told, want) {
			t.Errorf("of %q it tells %q, want %q", key, told, want)
		}
	}
}

// Whatever was paid, parts and payments are to the cent: everybody's part of
// the plan adds up to its cost, and what is left to pay adds up to nothing.
func TestMoneyAddsUpToTheCent(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	crew := s.Document.Trip().Crew
	rapid.Check(t, func(rt *rapid.T) {
		if err := s.Document.Edit("pay", func(t *trip.Trip) error {
			t.Progress.Purchases = nil
			for range rapid.IntRange(0, 5).Draw(rt, "purchases") {
				t.Progress.Purchases = append(t.Progress.Purchases, trip.Purchase{
					Other: "hut", Count: 1, Paid: optional.Of(units.Money(rapid.IntRange(0, 99999).Draw(rt, "paid"))),
					By: rapid.SampledFrom(crew).Draw(rt, "by").ID,
				})
			}
			return nil
		}); err != nil {
			rt.Fatal(err)
		}
		var planned, paid, left units.Money
		for _, member := range crew {
			a := s.account.accounts[member.ID]
			planned, paid, left = planned+a.Part, paid+a.Paid, left+a.Owed-a.Paid
			if a.Days != 2 {
				rt.Fatalf("%s is there on %d days", member.Name, a.Days)
			}
		}
		cost := s.list.plan.Shopping.Cost + s.list.plan.Shopping.Fees + paid // other costs were not planned
		if planned != cost || paid != s.list.paid || left != 0 {
			rt.Fatalf("parts of %d are %d, paid %d of %d, %d left", cost, planned, paid, s.list.paid, left)
		}
	})
}

func TestSortingByCostStaysInTheShops(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.table.SortBy(s.column(t, "Cost"))
	s.table.SortBy(s.column(t, "Cost"))
	var last *row
	for _, r := range s.table.Rows() {
		if last != nil && last.kind != headRow && r.kind != headRow && costNumber(s.list, last) < costNumber(s.list, r) {
			t.Errorf("%s for %v stands before %s for %v", s.list.name(last), costNumber(s.list, last), s.list.name(r), costNumber(s.list, r))
		}
		if last != nil && r.kind == headRow && r.group == last.group || r.kind != headRow && r.group != last.group {
			t.Fatalf("%s of %s stands behind %s of %s", s.list.name(r), r.group, s.list.name(last), last.group)
		}
		last = r
	}
}

func TestFilterAndGroups(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	test.Type(s.filter, s.list.name(r))
	for _, shown := range s.table.Rows() {
		if !strings.Contains(strings.ToLower(s.list.name(shown)), strings.ToLower(s.list.name(r))) {
			t.Errorf("%s is shown", s.list.name(shown))
		}
	}
	s.filter.SetText("")
	for by, word := range groupings() {
		s.groups.SetSelected(word)
		if s.by != grouping(by) || len(s.table.Rows()) == 0 || s.table.Rows()[0].kind != headRow {
			t.Errorf("%s shows %d rows", word, len(s.table.Rows()))
		}
	}
}

func TestThePayerWhoLeavesIsForgotten(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	last := s.Document.Trip().Crew[len(s.Document.Trip().Crew)-1]
	s.payers.SetSelected(last.Name)
	if s.payer != last.ID {
		t.Fatalf("member %d pays", s.payer)
	}
	s.space()
	if err := s.Document.Edit("leave", func(t *trip.Trip) error {
		t.Crew = t.Crew[:len(t.Crew)-1]
		t.Pins = nil
		for c := range t.Menu {
			for d := range t.Menu[c].Dishes {
				dish := &t.Menu[c].Dishes[d]
				dish.For = slices.DeleteFunc(dish.For, func(id trip.MemberID) bool { return id == last.ID })
				dish.Accepted = nil
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if s.payer != 0 || s.payers.Selected != "not noted" || s.purchases()[0].By != 0 || !s.purchases()[0].Paid.Known() {
		t.Errorf("member %d pays, noted is %+v", s.payer, s.purchases())
	}
}

func TestEveryActionHasANameAndAPlaceToGo(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	for _, action := range s.Actions() {
		if action.Name == "" || action.Do == nil {
			t.Fatalf("an action without name or deed: %+v", action)
		}
	}
	if s.Name() != "shopping" || s.Title() != "Shopping" || s.Waiting() < 0 {
		t.Errorf("the screen is called %s, %s", s.Name(), s.Title())
	}
	s.GoTo(findings.Place{})
	if s.tabs.SelectedIndex() != 1 {
		t.Error("a finding of the whole list does not lead to the money")
	}
	r := s.first(t)
	s.GoTo(findings.Place{Food: r.goods.food})
	if at, _ := s.table.Selected(); at.goods.food != r.goods.food || s.tabs.SelectedIndex() != 0 || s.food.food != r.goods.food {
		t.Errorf("went to %+v", at)
	}
}
