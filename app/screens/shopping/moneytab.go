package shopping

import (
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

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
	words    *look.Paragraph
	table    *grid.Grid[trip.MemberID]
	accounts map[trip.MemberID]shopping.MemberMoney
	settle   *look.Paragraph
	below    *bench.Scroll // around settle
	content  *fyne.Container
}

func newMoneyTab(s *Screen) *moneyTab {
	m := &moneyTab{screen: s, words: look.NewParagraph("", look.Body, look.Ink), settle: look.NewParagraph("", look.Body, look.Ink)}
	m.budget = newBudgetEntry(m.storeBudget)
	m.table = grid.New(m.columns(), grid.Options[trip.MemberID]{
		Key: func(id trip.MemberID) string { return strconv.FormatInt(int64(id), 10) }, OnProblem: s.bench.Say, Clipboard: s.bench.Clipboard, Sticky: 1,
	})
	budget := container.NewHBox(container.NewCenter(look.NewText(lang.L("Budget"), look.Body, look.Ink)),
		bench.Wide(120, m.budget),
		container.NewCenter(look.NewText(s.bench.Trip().Currency, look.Caption, look.Quiet)))
	m.below = bench.NewScroll(m.settle)
	m.below.SetMinSize(fyne.NewSize(0, 150))
	m.content = container.NewBorder(container.NewVBox(budget, m.words), m.below, nil, nil, m.table)
	return m
}

// columns of the accounts.
func (m *moneyTab) columns() []grid.Column[trip.MemberID] {
	t := m.screen.bench.Trip()
	amount := func(of func(shopping.MemberMoney) units.Money) func(trip.MemberID) string {
		return func(id trip.MemberID) string {
			return strings.Replace(written.Money(of(m.accounts[id]), m.screen.bench.Trip().Currency), "-", "−", 1)
		}
	}
	compare := func(of func(shopping.MemberMoney) units.Money) func(a, b trip.MemberID) int {
		return func(a, b trip.MemberID) int { return int(of(m.accounts[a]) - of(m.accounts[b])) }
	}
	column := func(title string, of func(shopping.MemberMoney) units.Money) grid.Column[trip.MemberID] {
		return grid.Column[trip.MemberID]{Title: title, Width: 76, Right: true, Text: amount(of), Compare: compare(of)}
	}
	return []grid.Column[trip.MemberID]{
		{Title: lang.L("Name"), Width: 88, Text: func(id trip.MemberID) string {
			if member := m.screen.bench.Trip().Member(id); member != nil {
				return member.Name
			}
			return ""
		}},
		{Title: lang.L("Part"), Unit: t.Currency, Width: 82, Right: true, Text: amount(func(a shopping.MemberMoney) units.Money { return a.Part }),
			Compare: compare(func(a shopping.MemberMoney) units.Money { return a.Part })},
		column(lang.L("Paid"), func(a shopping.MemberMoney) units.Money { return a.Paid }),
		column(lang.L("To pay"), func(a shopping.MemberMoney) units.Money { return a.Owed - a.Paid }),
		{Title: lang.L("Days"), Width: 52, Right: true, Text: func(id trip.MemberID) string { return strconv.Itoa(m.accounts[id].Days) },
			Compare: func(a, b trip.MemberID) int { return m.accounts[a].Days - m.accounts[b].Days }},
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
	k := shopping.Reckon(t, l.rest.Expected())
	m.accounts = map[trip.MemberID]shopping.MemberMoney{}
	for _, one := range k.Members {
		m.accounts[one.Member] = one
	}
	m.words.SetContent(strings.Join(m.tell(k.Unnamed), "\n"))
	rows := make([]trip.MemberID, len(t.Crew))
	for i := range t.Crew {
		rows[i] = t.Crew[i].ID
	}
	m.table.SetRows(rows)
	m.settle.SetContent(m.settleWords(k))
	m.below.Refresh()
	m.content.Layout.Layout(m.content.Objects, m.content.Size()) // the words may take more lines than before
}

// tell says what the plan costs and what nobody knows of it.
func (m *moneyTab) tell(unnamed units.Money) []string {
	l := m.screen.list
	price := func(amount units.Money) string { return written.Price(amount, l.trip.Currency) }
	planned, rest := &l.plan.Shopping, &l.rest
	words := []string{lang.X("money-tells", "Food and fuel {{.Cost}}, parcels and visits {{.Fees}}: {{.Each}} a person and day.", data{
		"Cost": m.screen.costWords(planned.Cost), "Fees": price(planned.Fees), "Each": price(planned.PerPersonDay)})}
	if rest.Spent > 0 {
		words = append(words, lang.X("money-now", "As it stands: {{.Spent}} paid, {{.ToPay}} still to pay in shops, {{.Fees}} for parcels and visits: {{.All}}, where {{.Planned}} was planned.", data{
			"Spent": price(rest.Spent), "ToPay": price(rest.ToPay), "Fees": price(rest.Fees), "All": price(rest.Expected()), "Planned": price(planned.Cost + planned.Fees)}))
	}
	for _, finding := range planned.Findings {
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
func (m *moneyTab) settleWords(k shopping.Reckoning) string {
	t := m.screen.list.trip
	if k.Paid == 0 {
		return lang.L("When it is noted who paid, here stands who owes whom. Everybody's part goes by their days.")
	}
	if len(k.Payments) == 0 {
		return lang.L("All is even.")
	}
	lines := []string{lang.X("to-settle", "To share the {{.Amount}} that members paid:", data{"Amount": written.Price(k.Paid, t.Currency)})}
	for _, p := range k.Payments {
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
