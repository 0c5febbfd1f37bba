package shopping

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// shopper is the screen in a window, with what it said.
type shopper struct {
	*Screen
	*benchtest.Desk
}

func open(t testing.TB, on *trip.Trip) *shopper {
	t.Helper()
	d := benchtest.New(t, on)
	s := &shopper{Screen: New(d.Bench), Desk: d}
	d.Show(s.Screen, 1600, 800)
	if s.list == nil {
		t.Fatal("the trip was not planned")
	}
	return s
}

// focused is the table as the canvas sees it.
func (s *shopper) focused() fyne.Focusable {
	s.table.Focus()
	return s.Window.Canvas().Focused()
}

func (s *shopper) space() { s.focused().TypedRune(' ') }

// write edits a cell of a row as a person does.
func (s *shopper) write(t *testing.T, r *row, title, text string) {
	t.Helper()
	s.table.SelectKey(r.key)
	at, _ := s.table.Cursor()
	s.table.MoveCursor(at, s.column(t, title))
	s.focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	editor := s.Window.Canvas().Focused()
	entry, ok := editor.(interface{ SetText(string) })
	if !ok {
		t.Fatalf("%s of %s cannot be edited: %T", title, s.list.name(r), editor)
	}
	entry.SetText("")
	test.Type(editor, text)
	editor.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func (s *shopper) column(t *testing.T, title string) int {
	t.Helper()
	place := slices.IndexFunc(s.fields(), func(f field) bool { return f.title == title })
	if place < 0 {
		t.Fatalf("there is no column %s", title)
	}
	return place
}

// again finds a row after an edit.
func (s *shopper) again(r *row) *row {
	for _, other := range s.list.rows {
		if other.key == r.key {
			return other
		}
	}
	return &row{}
}

// first gives a row that asks for several packages at a known price.
func (s *shopper) first(t *testing.T) *row {
	t.Helper()
	for _, r := range s.list.rows {
		if _, known := s.list.price(r); r.kind == buyRow && r.count > 1 && known {
			return r
		}
	}
	t.Fatal("nothing is bought twice")
	return nil
}

func (s *shopper) purchases() []trip.Purchase { return s.Document.Trip().Progress.Purchases }

func TestSpaceTicksOffWithCountPriceAndPayer(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	payer := s.Document.Trip().Crew[2]
	s.Screen.payers.SetSelected(payer.Name)
	s.table.SelectKey(r.key)
	s.space()
	price, _ := s.list.price(r)
	want := trip.Purchase{Food: r.goods.food, Net: r.goods.net, Shop: r.goods.shop, Count: r.count, Paid: optional.Of(price * units.Money(r.count)), By: payer.ID}
	if got := s.purchases(); len(got) != 1 || got[0] != want {
		t.Fatalf("noted %+v, want %+v", got, want)
	}
	if !s.again(r).done() || s.list.total.done != 1 || !strings.HasPrefix(s.done.Content, "Lines bought: 1 of ") {
		t.Errorf("done %v, %q", s.again(r).done(), s.done.Content)
	}
	if name := s.Document.UndoName(); name != "tick off "+s.list.name(r) {
		t.Errorf("undo is called %q", name)
	}
	if at, _ := s.table.Selected(); at.key == r.key {
		t.Error("the cursor stays on what is bought")
	}
	s.table.SelectKey(r.key)
	s.space()
	if len(s.purchases()) != 0 {
		t.Errorf("taken back, noted is %+v", s.purchases())
	}
}

func TestUndoTakesAPurchaseBack(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.space()
	if len(s.purchases()) != 1 {
		t.Fatalf("%d purchases", len(s.purchases()))
	}
	if err := s.Document.Undo(); err != nil || len(s.purchases()) != 0 {
		t.Errorf("after undo %+v, %v", s.purchases(), err)
	}
}

func TestWritingHowManyAreBought(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	price, _ := s.list.price(r)
	s.write(t, r, "Bought", "1")
	if got := s.purchases()[0]; got.Count != 1 || got.Paid != optional.Of(price) {
		t.Fatalf("noted %+v", got)
	}
	if state := stateText(s.list, s.again(r)); state != fmt.Sprintf("1 of %d", r.count) {
		t.Errorf("the state is %q", state)
	}
	s.write(t, s.again(r), "Bought", "5")
	if got := s.purchases(); len(got) != 1 || got[0].Count != 5 || got[0].Paid != optional.Of(5*price) {
		t.Errorf("noted %+v", got)
	}
	s.write(t, s.again(r), "Paid", "7.77")
	s.write(t, s.again(r), "Bought", "4")
	if got := s.purchases()[0]; got.Count != 4 || got.Paid != optional.Of(units.Money(777)) {
		t.Errorf("what was written as paid does not stay: %+v", got)
	}
	s.write(t, s.again(r), "Bought", "")
	if len(s.purchases()) != 0 {
		t.Errorf("noted %+v", s.purchases())
	}
}

func TestPaymentsNeedAPurchase(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	s.write(t, r, "Paid", "3")
	if s.Said == "" || len(s.purchases()) != 0 {
		t.Errorf("said %q, noted %+v", s.Said, s.purchases())
	}
}

// What is told of the money grows when something is paid: it never runs into
// the accounts below it.
func TestTheAccountsMakeRoomForWhatIsTold(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	s.account.content.Resize(fyne.NewSize(340, 640))
	before := s.account.words.MinSize().Height
	s.space()
	words := s.account.words
	if words.MinSize().Height <= before {
		t.Fatalf("the words take %v as before", before)
	}
	if end := words.Position().Y + words.MinSize().Height; words.Size().Height < words.MinSize().Height || end > s.account.table.Position().Y {
		t.Errorf("the words end at %v, the accounts begin at %v", end, s.account.table.Position().Y)
	}
}

// A price that nobody gave is said in words, and giving it makes the cost whole.
func TestAnUnknownPriceIsSaidInWords(t *testing.T) {
	made := benchtest.DemoDays(2)
	s := open(t, made)
	r := s.first(t)
	before := s.Document.Plan().Shopping
	s.write(t, r, "Price", "")
	after := s.Document.Plan().Shopping
	if after.Unpriced != before.Unpriced+1 || !strings.Contains(s.money.Content, "without a price") {
		t.Fatalf("%d lines are unpriced, before %d: %q", after.Unpriced, before.Unpriced, s.money.Content)
	}
	for _, other := range s.list.rows {
		if other.goods == r.goods {
			if priceText(s.list, other) != "not known" || costText(s.list, other) != "not known" {
				t.Errorf("the price is %q, the cost %q", priceText(s.list, other), costText(s.list, other))
			}
			s.write(t, other, "Price", "2,50")
			break
		}
	}
	if got := s.Document.Plan().Shopping.Unpriced; got != before.Unpriced {
		t.Errorf("%d lines are unpriced", got)
	}
}

func TestStockAtHomeIsBoughtLess(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	s.write(t, r, "At home", "100 kg")
	if food := s.Document.Trip().Food(r.goods.food); food.AtHome != 100*units.Kilogram {
		t.Fatalf("at home is %v", food.AtHome)
	}
	for _, other := range s.list.rows {
		if other.goods.food == r.goods.food && (other.kind != homeRow || other.group != "Enough at home") {
			t.Errorf("it still stands under %q", other.group)
		}
	}
}

// A corrected package takes what is bought of it along.
func TestACorrectedPackageKeepsItsPurchases(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	s.table.SelectKey(r.key)
	s.space()
	s.write(t, r, "Shop", "mill")
	if got := s.purchases()[0]; got.Shop != "mill" || got.Net != r.goods.net {
		t.Errorf("noted %+v", got)
	}
	place := slices.IndexFunc(s.Document.Trip().Food(r.goods.food).Packages, func(p trip.Package) bool { return p.Shop == "mill" })
	if place < 0 {
		t.Fatal("the package has no other shop")
	}
	s.food.food = r.goods.food
	if err := s.food.columns()[0].Set(place, "333"); err != nil {
		t.Fatal(err)
	}
	if got := s.purchases()[0]; got.Net != 333*units.Gram || got.Count != r.count {
		t.Errorf("noted %+v", got)
	}
}

func TestPasteIsOneStep(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	var rows []*row
	for _, r := range s.table.Rows() {
		if r.kind == buyRow && len(rows) < 3 {
			rows = append(rows, r)
		} else if len(rows) > 0 && len(rows) < 3 {
			rows = nil
		}
	}
	s.table.SelectKey(rows[0].key)
	at, _ := s.table.Cursor()
	s.table.MoveCursor(at, s.column(t, "Bought"))
	fyne.CurrentApp().Clipboard().SetContent("1\t2.00\tRuth\n2\t4.00\tRuth\n1\t1.50\tnot noted\n")
	s.focused().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutPaste{Clipboard: fyne.CurrentApp().Clipboard()})
	if s.Said != "" {
		t.Fatal(s.Said)
	}
	got := s.purchases()
	if len(got) != 3 || got[1].Count != 2 || got[1].Paid != optional.Of(units.Money(400)) || s.Document.Trip().Member(got[0].By).Name != "Ruth" || got[2].By != 0 {
		t.Fatalf("noted %+v", got)
	}
	if err := s.Document.Undo(); err != nil || len(s.purchases()) != 0 {
		t.Errorf("one undo leaves %+v", s.purchases())
	}
}

func TestCopyReadsAsASpreadsheet(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	lines := strings.Split(strings.TrimSpace(s.table.Copy()), "\n")
	if len(lines) != len(s.list.rows)+1 || !strings.Contains(lines[0], "Price (EUR)") || strings.Count(lines[1], "\t") != len(s.fields())-1 {
		t.Errorf("%d lines, the first %q", len(lines), lines[0])
	}
}

func TestAnotherCostIsShared(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	s.payers.SetSelected(s.Document.Trip().Crew[0].Name)
	s.table.Add()
	r, _ := s.table.Selected()
	if r.kind != otherRow || r.group != "Other costs" {
		t.Fatalf("the cursor stands on %+v", r)
	}
	s.write(t, r, "What", "car fuel")
	s.write(t, s.again(r), "Paid", "110")
	want := trip.Purchase{Other: "car fuel", Count: 1, Paid: optional.Of(units.Money(11000)), By: s.Document.Trip().Crew[0].ID}
	if got := s.purchases(); len(got) != 1 || got[0] != want {
		t.Fatalf("noted %+v", got)
	}
	words := s.account.settle.Content
	if count := strings.Count(words, " pays "); count != len(s.Document.Trip().Crew)-1 || !strings.Contains(words, "10.00 EUR") {
		t.Errorf("%d payments: %s", count, words)
	}
	s.table.SelectKey(r.key)
	s.table.Delete()
	if len(s.purchases()) != 0 || strings.Contains(s.account.settle.Content, " pays ") {
		t.Errorf("removed, noted is %+v", s.purchases())
	}
}

func TestMoneyNobodyIsNotedForIsNotSettled(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	s.space()
	if strings.Contains(s.account.settle.Content, " pays ") || !strings.Contains(s.account.words.Content, "nobody noted who paid") {
		t.Errorf("%q, %q", s.account.words.Content, s.account.settle.Content)
	}
}

func TestBudget(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	s.Window.Canvas().Focus(s.account.budget)
	s.account.budget.SetText("12")
	s.account.budget.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if budget, known := s.Document.Trip().Settings.Budget.Get(); !known || budget != 1200 {
		t.Fatalf("the budget is %v", budget)
	}
	if !strings.Contains(s.money.Content, "too much") || s.money.Tone != look.Brick {
		t.Errorf("over the budget it says %q", s.money.Content)
	}
	s.account.budget.SetText("little")
	if s.Commit() {
		t.Error("a budget without meaning is stored")
	}
	s.account.budget.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	s.account.budget.SetText("")
	if !s.Commit() || s.Document.Trip().Settings.Budget.Known() {
		t.Error("an empty budget is not none")
	}
}

func TestPackagesAtTheSide(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	s.GoTo(findings.Place{Food: r.goods.food})
	food := func() *trip.Food { return s.Document.Trip().Food(r.goods.food) }
	before := len(food().Packages)
	s.food.packages.Add()
	if len(food().Packages) != before+1 || s.Document.UndoName() != "add a package of "+food().Name {
		t.Fatalf("%d packages, undo %q", len(food().Packages), s.Document.UndoName())
	}
	columns := s.food.columns()
	for column, text := range []string{"750", "1.10", "mill", "4"} {
		if err := columns[column].Set(before, text); err != nil {
			t.Fatal(err)
		}
	}
	want := trip.Package{Net: 750 * units.Gram, Price: optional.Of(units.Money(110)), Shop: "mill", InStock: optional.Of(4)}
	if got := food().Packages[before]; got != want {
		t.Errorf("the package is %+v", got)
	}
	if err := columns[0].Set(before, "nothing"); err == nil {
		t.Error("a package of nothing is stored")
	}
	if err := s.food.remove(before); err != nil || len(food().Packages) != before {
		t.Errorf("%d packages, %v", len(food().Packages), err)
	}
}

func TestWithoutAPlanTheScreenSaysWhatComes(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	if err := s.Document.Edit("empty the menu", func(t *trip.Trip) error {
		t.Menu, t.Settings.ReserveDays, t.Settings.FillOpenSlots, t.Fuels = nil, 0, false, nil
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if s.work.Visible() || !s.empty.Visible() {
		t.Errorf("%d rows are shown for nothing to buy", len(s.table.Rows()))
	}
}

func benchmarkShopping(b *testing.B, do func(s *shopper)) {
	s := open(b, triptest.Large(60, 21, 1))
	b.ResetTimer()
	for b.Loop() {
		do(s)
	}
}

func BenchmarkTick60x21(b *testing.B) { benchmarkShopping(b, (*shopper).space) }

func BenchmarkGroup60x21(b *testing.B) {
	benchmarkShopping(b, func(s *shopper) {
		s.group(byFood)
		s.group(byShop)
	})
}

// Half a kilogram of another make is bought instead: the list asks for what is
// then missing, and the money is what was paid.
func TestAnotherPackageShrinksTheList(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	r := s.first(t)
	before := s.list.rest.Expected()
	name := s.list.name(r)
	if err := s.Document.Edit("buy", func(t *trip.Trip) error {
		t.Progress.Purchases = []trip.Purchase{{Food: r.goods.food, Net: r.line.Needed, Shop: "farm gate", Count: 1, Paid: optional.Of(units.Money(1234)), By: t.Crew[0].ID}}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	now := s.again(r)
	if now.count != 0 || !now.done() || stateText(s.list, now) != "enough" {
		t.Errorf("%s is bought elsewhere, and the list asks for %d: %q", name, now.count, stateText(s.list, now))
	}
	saved := r.buy.Each.Or(0) * units.Money(r.count)
	for _, other := range s.list.rows {
		if other != now && other.line != nil && other.line.Food == r.goods.food && other.kind == buyRow && other.count > 0 {
			t.Errorf("still to buy: %+v", other)
		}
	}
	if after := s.list.rest.Expected(); after > before+1234 || after < before+1234-2*saved-2000 {
		t.Errorf("expected %d, then %d", before, after)
	}
	if account := s.account.accounts[s.Document.Trip().Crew[0].ID]; account.Paid != 1234 {
		t.Errorf("%+v", account)
	}
	if !strings.Contains(s.account.words.Content, "12.34 EUR paid") {
		t.Errorf("the money says %q", s.account.words.Content)
	}
	s.write(t, now, "Bought", "1") // one of the planned all the same
	if now = s.again(r); now.count != 1 || now.bought != 1 || now.needless {
		t.Errorf("bought besides: %+v", now)
	}
}

// A list finds its lines by what is bought, not by where the cursor is, and
// adds what is no food of the plan as another cost.
func TestAListFindsItsLinesAndAddsOtherCosts(t *testing.T) {
	s := open(t, benchtest.Demo())
	was := s.Document.Trip()
	s.table.MoveCursor(3, 0)
	s.table.Paste("Paid\tWhat\n30\tFerry\n12,5\tHut tax\n")
	noted := s.Document.Trip().Progress.Purchases
	if len(noted) != len(was.Progress.Purchases)+2 || noted[len(noted)-2].Other != "Ferry" || noted[len(noted)-1].Paid.Or(0) != 1250 {
		t.Fatalf("noted %+v; said %q", noted, s.Said)
	}
	if err := s.Document.Undo(); err != nil || !trip.Equal(was, s.Document.Trip()) {
		t.Errorf("one undo does not take the list back (%v)", err)
	}
}
