// Package shopping is the screen of the shopping list: whole packages by shop,
// deadline or food, ticked off as they are bought, with what was paid and by
// whom; and beside it the packages of a food, the budget and everybody's share.
package shopping

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Screen is the shopping list on the screen.
type Screen struct {
	bench *bench.Bench
	list  *list // nil without a plan
	by    grouping
	payer trip.MemberID // who pays what is ticked off now; 0: not noted

	done, money *look.Text
	table       *grid.Grid[*row]
	filter      *widget.Entry
	groups      *widget.RadioGroup
	payers      *widget.Select
	food        *foodTab
	account     *moneyTab
	shops       *shopsTab
	leftovers   *leftoverTab
	tabs        *bench.Tabs
	beside      *bench.Part // the tabs
	work        *fyne.Container
	empty       *fyne.Container
	content     fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, done: look.NewHeading(""), money: look.NewText("", look.Body, look.Quiet)}
	s.food, s.account = newFoodTab(s), newMoneyTab(s)
	s.shops, s.leftovers = newShopsTab(s), newLeftoverTab(s)
	s.table = grid.New(s.columns(), grid.Options[*row]{
		Key:      func(r *row) string { return r.key },
		OnSelect: s.choose,
		OnTick:   s.tick,
		OnAdd:    s.addOther,
		OnDelete: s.remove,
		OnPaste:  s.paste,
		Naming:   nameColumn,
		Together: b.Together, OnProblem: b.Say,
		Group:     func(r *row) int { return r.rank },
		Strong:    func(r *row) bool { return r.kind == headRow },
		Sticky:    2,
		Clipboard: b.Clipboard,
	})
	s.filter = widget.NewEntry()
	s.filter.SetPlaceHolder(lang.L("Find in the table"))
	s.filter.OnChanged = s.table.Filter
	s.groups = widget.NewRadioGroup(groupings(), nil)
	s.groups.Horizontal, s.groups.Required, s.groups.Selected = true, true, groupings()[byShop]
	s.groups.OnChanged = func(word string) { s.group(grouping(slices.Index(groupings(), word))) }
	s.payers = widget.NewSelect(nil, nil)
	s.makeContent()
	return s
}

func (s *Screen) makeContent() {
	tick := widget.NewButton(lang.L("Tick off (Space)"), s.table.Tick)
	tick.Importance = widget.HighImportance
	head := bench.Head(bench.Inset(s.done, s.money), container.NewCenter(widget.NewButton(lang.L("Add another cost"), s.table.Add)), container.NewCenter(tick))
	choices := bench.Head(s.groups,
		bench.Wide(170, s.filter),
		container.NewCenter(look.NewText(lang.L("paid by"), look.Body, look.Quiet)),
		bench.Wide(140, s.payers))
	s.tabs = bench.NewTabs(container.NewTabItem(lang.L("This food"), s.food.content), container.NewTabItem(lang.L("Money"), s.account.content),
		container.NewTabItem(lang.L("Shops"), s.shops.content), container.NewTabItem(lang.L("Left over"), s.leftovers.content))
	s.tabs.OnSelected = func(*container.TabItem) { s.showTab() }
	s.beside = bench.NewPart(s.tabs, s.showBeside)
	s.bench.InSteps(s.table, s.beside)
	split := bench.Beside(s.table, s.beside.Place, 0.68, 640)
	s.work = bench.Headed(split, head, choices)
	menu := widget.NewButton(lang.L("Go to the menu"), func() { s.bench.Document.GoTo(document.Place{Screen: "menu"}) })
	menu.Importance = widget.HighImportance
	s.empty = container.NewCenter(container.NewVBox(
		look.NewText(lang.L("Here comes what to buy, in whole packages."), look.Figure, look.Ink),
		look.NewText(lang.L("It is worked out from what the menu serves."), look.Body, look.Quiet), container.NewHBox(menu)))
	s.content = container.NewStack(s.work, s.empty)
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "shopping" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Shopping") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the plan and what is bought of it.
func (s *Screen) Refresh() {
	p := s.bench.Plan()
	if p == nil || len(p.Shopping.Lines)+len(p.Shopping.Fuel)+len(s.bench.Trip().Progress.Purchases) == 0 {
		s.list = nil
		s.work.Hide()
		s.empty.Show()
		return
	}
	s.list = newList(s.bench.Trip(), p, s.by)
	s.empty.Hide()
	s.work.Show()
	s.showPayers()
	s.showTotals()
	s.showRows()
	s.beside.Refresh()
}

// showBeside fills what stands beside the list: the chosen food always, since
// packages can be added to it from any tab, and the tab that is seen.
func (s *Screen) showBeside() {
	if s.list == nil {
		return
	}
	if r, ok := s.table.Selected(); ok {
		s.choose(r)
	}
	s.showTab()
}

// The tabs beside the list, in their order.
const (
	foodPlace = iota
	moneyPlace
	shopsPlace
	leftoverPlace
)

// showTab fills only the tab that is seen.
func (s *Screen) showTab() {
	if s.list == nil {
		return
	}
	switch s.tabs.SelectedIndex() {
	case moneyPlace:
		s.account.show()
	case shopsPlace:
		s.shops.show()
	case leftoverPlace:
		s.leftovers.show()
	}
}

// showRows keeps the cursor on its row, or, where the plan now buys other
// packages, on the same food.
func (s *Screen) showRows() {
	before, had := s.table.Selected()
	s.table.SetRows(s.list.rows)
	switch now, _ := s.table.Selected(); {
	case !had && len(s.list.rows) > 1:
		s.table.SelectKey(s.list.rows[1].key) // behind the first head
	case had && before.goods.food != 0 && now.key != before.key:
		s.selectFood(before.goods.food)
	}
}

func (s *Screen) selectFood(id trip.FoodID) {
	for _, r := range s.table.Rows() {
		if r.goods.food == id {
			s.table.SelectKey(r.key)
			return
		}
	}
}

func (s *Screen) showPayers() {
	t := s.bench.Trip()
	s.payers.OnChanged = nil
	s.payers.Options = payers(t)
	payer := nobody()
	if m := t.Member(s.payer); m != nil {
		payer = m.Name
	} else {
		s.payer = 0
	}
	if s.payers.Selected != payer { // to show the same once more takes long
		s.payers.SetSelected(payer)
	}
	s.payers.OnChanged = func(name string) { s.payer, _ = payerNamed(s.bench.Trip(), name) }
}

// showTotals says how far the shopping is and what it costs.
func (s *Screen) showTotals() {
	l, currency := s.list, s.list.trip.Currency
	s.done.SetContent(lang.X("shopping-done", "Lines bought: {{.Done}} of {{.Count}}", data{"Done": l.total.done, "Count": l.total.rows}))
	expected := l.rest.Expected()
	words := lang.X("shopping-cost", "{{.Cost}} with fuel and fees", data{"Cost": s.costWords(expected)})
	s.money.SetTone(look.Quiet)
	if budget, known := l.trip.Settings.Budget.Get(); known {
		words += " · " + lang.X("of-budget", "budget {{.Budget}}", data{"Budget": written.Price(budget, currency)})
		if expected > budget {
			words += " · " + lang.X("over-budget", "{{.Over}} too much", data{"Over": written.Price(expected-budget, currency)})
			s.money.SetTone(look.Brick)
		}
	}
	if l.paid > 0 {
		words += " · " + lang.X("paid-so-far", "{{.Paid}} paid so far", data{"Paid": written.Price(l.paid, currency)})
	}
	s.money.SetContent(words)
}

// costWords writes an amount, or that it is only what is known of it.
func (s *Screen) costWords(amount units.Money) string {
	text := written.Price(amount, s.list.trip.Currency)
	if n := s.list.rest.Unpriced; n > 0 {
		return lang.X("at-least-unpriced", "at least {{.Cost}} ({{.Count}} without a price)", data{"Cost": text, "Count": n})
	}
	return text
}

func (s *Screen) choose(r *row) { s.food.show(r) }

func (s *Screen) group(by grouping) {
	s.by = by
	s.Refresh()
}

// tick buys what is still missing of a row, or takes back what was bought.
func (s *Screen) tick(r *row) {
	if r.count == 0 && r.kind != extraRow {
		return
	}
	wanted, name := r.count, lang.X("tick-purchase", "tick off {{.Name}}", data{"Name": s.list.name(r)})
	if r.bought >= r.count {
		wanted, name = 0, lang.X("untick-purchase", "take {{.Name}} back", data{"Name": s.list.name(r)})
	}
	err := s.bench.Edit(name, func(t *trip.Trip) error {
		setBought(t, s.list, r, wanted, s.payer)
		return nil
	})
	if err == nil && wanted > 0 {
		s.goOn(r.key)
	}
}

// goOn moves from a row that was just ticked off to the next that is not.
func (s *Screen) goOn(key string) {
	rows := s.table.Rows()
	at := slices.IndexFunc(rows, func(r *row) bool { return r.key == key })
	for i := at + 1; at >= 0 && i < len(rows); i++ {
		if rows[i].count > 0 && !rows[i].done() {
			s.table.SelectKey(rows[i].key)
			return
		}
	}
}

// addOther notes a cost the crew shares that is neither food nor fuel.
func (s *Screen) addOther() (string, error) {
	place := len(s.bench.Trip().Progress.Purchases)
	err := s.bench.Edit(lang.L("add another cost"), func(t *trip.Trip) error {
		t.Progress.Purchases = append(t.Progress.Purchases, trip.Purchase{
			Other: fmt.Sprintf("%s %d", lang.L("Cost"), place+1), Count: 1, By: s.payer, Paid: optional.Unknown[units.Money](),
		})
		return nil
	})
	return "other " + fmt.Sprint(place), err
}

// remove takes what was noted as bought of a row off the list.
func (s *Screen) remove(r *row) error {
	return s.bench.Edit(lang.X("untick-purchase", "take {{.Name}} back", data{"Name": s.list.name(r)}), func(t *trip.Trip) error {
		for _, place := range purchasesOf(t, r) {
			t.Progress.Purchases[place].Count = 0
		}
		dropEmpty(t)
		return nil
	})
}

// Waiting counts what must be seen to in shopping.
func (s *Screen) Waiting() int { return bench.CountFindings(s.bench, findings.Shopping) }

// Focus gives the keyboard to the table.
func (s *Screen) Focus() { s.table.FocusOn(s.bench.Window.Canvas()) }

// GoTo puts the cursor on a food, or shows the money where none is meant.
func (s *Screen) GoTo(place findings.Place) {
	s.table.Focus()
	if place.Food == 0 {
		s.tabs.SelectIndex(moneyPlace)
		return
	}
	s.selectFood(place.Food)
	s.tabs.SelectIndex(foodPlace)
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool {
	return s.table.Commit() && s.food.packages.Commit() && s.account.commit() && s.shops.table.Commit()
}

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	actions := []bench.Action{
		{Name: lang.L("Tick off"), Do: s.table.Tick},
		{Name: lang.L("Add another cost"), Do: s.table.Add},
		{Name: lang.L("Take back what was bought"), Do: s.table.Delete},
		{Name: lang.L("Add a package of the food"), Do: s.food.packages.Add},
		{Name: lang.L("Find in the table"), Do: func() { s.bench.Window.Canvas().Focus(s.filter) }},
	}
	for _, word := range groupings() {
		actions = append(actions, bench.Action{Name: word, Do: func() { s.groups.SetSelected(word) }})
	}
	return actions
}
