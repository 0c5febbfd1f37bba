package shopping

import (
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// moneyTab is the budget, everybody's part of the cost, and who pays whom so
// that all is even.
type moneyTab struct {
	screen   *Screen
	budget   *budgetEntry
	words    *widget.Label
	table    *grid.Grid[trip.MemberID]
	accounts map[trip.MemberID]account
	settle   *widget.Label
	content  fyne.CanvasObject
}

// account is one member's money.
type account struct {
	days    int
	planned units.Money // part of the plan's cost
	paid    units.Money
	owes    units.Money // part of what was paid by members
}

func newMoneyTab(s *Screen) *moneyTab {
	m := &moneyTab{screen: s, words: widget.NewLabel(""), settle: widget.NewLabel("")}
	m.words.Wrapping, m.settle.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	m.budget = newBudgetEntry(m.storeBudget)
	m.table = grid.New(m.columns(), grid.Options[trip.MemberID]{
		Key: func(id trip.MemberID) string { return strconv.FormatInt(int64(id), 10) }, OnProblem: s.bench.Say, Clipboard: s.bench.Clipboard, Sticky: 1,
	})
	budget := container.NewHBox(container.NewCenter(look.NewText(lang.L("Budget"), look.Body, look.Ink)),
		bench.Wide(120, m.budget),
		container.NewCenter(look.NewText(s.bench.Trip().Currency, look.Caption, look.Quiet)))
	settle := bench.NewScroll(m.settle)
	settle.SetMinSize(fyne.NewSize(0, 150))
	m.content = container.NewBorder(container.NewVBox(budget, m.words), settle, nil, nil, m.table)
	return m
}

// columns of the accounts.
func (m *moneyTab) columns() []grid.Column[trip.MemberID] {
	t := m.screen.bench.Trip()
	amount := func(of func(account) units.Money) func(trip.MemberID) string {
		return func(id trip.MemberID) string {
			return strings.Replace(written.Money(of(m.accounts[id]), m.screen.bench.Trip().Currency), "-", "−", 1)
		}
	}
	compare := func(of func(account) units.Money) func(a, b trip.MemberID) int {
		return func(a, b trip.MemberID) int { return int(of(m.accounts[a]) - of(m.accounts[b])) }
	}
	column := func(title string, of func(account) units.Money) grid.Column[trip.MemberID] {
		return grid.Column[trip.MemberID]{Title: title, Width: 76, Right: true, Text: amount(of), Compare: compare(of)}
	}
	return []grid.Column[trip.MemberID]{
		{Title: lang.L("Name"), Width: 88, Text: func(id trip.MemberID) string {
			if member := m.screen.bench.Trip().Member(id); member != nil {
				return member.Name
			}
			return ""
		}},
		{Title: lang.L("Part"), Unit: t.Currency, Width: 82, Right: true, Text: amount(func(a account) units.Money { return a.planned }),
			Compare: compare(func(a account) units.Money { return a.planned })},
		column(lang.L("Paid"), func(a account) units.Money { return a.paid }),
		column(lang.L("To pay"), func(a account) units.Money { return a.owes - a.paid }),
		{Title: lang.L("Days"), Width: 52, Right: true, Text: func(id trip.MemberID) string { return strconv.Itoa(m.accounts[id].days) },
			Compare: func(a, b trip.MemberID) int { return m.accounts[a].days - m.accounts[b].days }},
	}
}

// show works the accounts out anew.
func (m *moneyTab) show() {
	l := m.screen.list
	t := l.trip
	budget, known := t.Settings.Budget.Get()
	text := ""
	if known {
		text = written.Money(budget, t.Currency)
	}
	m.budget.show(text)
	paid, unnamed := m.workOut()
	m.words.SetText(strings.Join(m.tell(unnamed), "\n"))
	rows := make([]trip.MemberID, len(t.Crew))
	for i := range t.Crew {
		rows[i] = t.Crew[i].ID
	}
	m.table.SetRows(rows)
	m.settle.SetText(m.settleWords(paid))
}

// workOut gives what members paid, and what was paid by nobody who is noted.
func (m *moneyTab) workOut() (accounts []shopping.Account, unnamed units.Money) {
	l := m.screen.list
	t := l.trip
	by := map[trip.MemberID]units.Money{}
	var total units.Money
	for i := range t.Progress.Purchases {
		p := &t.Progress.Purchases[i]
		amount := p.Paid.Or(0)
		if p.By == 0 {
			unnamed += amount
			continue
		}
		by[p.By] += amount
		total += amount
	}
	m.accounts = map[trip.MemberID]account{}
	for _, a := range shopping.Shares(t, l.plan.Shopping.Cost+l.plan.Shopping.Fees) {
		m.accounts[a.Member] = account{planned: a.Share, days: daysOf(t, a.Member)}
	}
	accounts = shopping.Shares(t, total)
	for i := range accounts {
		accounts[i].Paid = by[accounts[i].Member]
		own := m.accounts[accounts[i].Member]
		own.paid, own.owes = accounts[i].Paid, accounts[i].Share
		m.accounts[accounts[i].Member] = own
	}
	return accounts, unnamed
}

func daysOf(t *trip.Trip, id trip.MemberID) int {
	days := 0
	for day := 1; day <= len(t.Days); day++ {
		if m := t.Member(id); m != nil && m.Present(day) {
			days++
		}
	}
	return days
}

// tell says what the plan costs and what nobody knows of it.
func (m *moneyTab) tell(unnamed units.Money) []string {
	l := m.screen.list
	s := l.plan.Shopping
	words := []string{lang.X("money-tells", "Food and fuel {{.Cost}}, parcels and visits {{.Fees}}: {{.Each}} a person and day.", data{
		"Cost": m.screen.costWords(s.Cost), "Fees": written.Price(s.Fees, l.trip.Currency), "Each": written.Price(s.PerPersonDay, l.trip.Currency)})}
	for _, finding := range s.Findings {
		if finding.Place.Food == 0 {
			words = append(words, written.Text(finding.What.Then(finding.Remedy), l.trip.Units))
		}
	}
	if unnamed > 0 {
		words = append(words, lang.X("unnamed-paid", "Of {{.Amount}} nobody noted who paid: it is not settled.", data{"Amount": written.Price(unnamed, l.trip.Currency)}))
	}
	return words
}

// settleWords says who pays whom, in as few payments as can be.
func (m *moneyTab) settleWords(accounts []shopping.Account) string {
	t := m.screen.list.trip
	var total units.Money
	for _, a := range accounts {
		total += a.Paid
	}
	if total == 0 {
		return lang.L("When it is noted who paid, here stands who owes whom. Everybody's part goes by their days.")
	}
	payments, err := shopping.Settle(accounts)
	if err != nil {
		return written.Error(err)
	}
	if len(payments) == 0 {
		return lang.L("All is even.")
	}
	lines := []string{lang.X("to-settle", "To share the {{.Amount}} that members paid:", data{"Amount": written.Price(total, t.Currency)})}
	for _, p := range payments {
		lines = append(lines, lang.X("pays", "{{.From}} pays {{.To}} {{.Amount}}", data{
			"From": t.Member(p.From).Name, "To": t.Member(p.To).Name, "Amount": written.Price(p.Amount, t.Currency)}))
	}
	return strings.Join(lines, "\n")
}

func (m *moneyTab) storeBudget(text string) error {
	return m.screen.bench.Edit(lang.L("change the budget"), func(t *trip.Trip) error {
		if text == "" {
			t.Settings.Budget = optional.Unknown[units.Money]()
			return nil
		}
		amount, err := typed.Money(text, t.Currency)
		if err != nil {
			return err
		}
		if amount < 0 {
			return errors.New(lang.L("A budget is not below zero."))
		}
		t.Settings.Budget = optional.Of(amount)
		return nil
	})
}

func (m *moneyTab) commit() bool { return m.budget.commit() }
