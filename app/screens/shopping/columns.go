package shopping

import (
	"cmp"
	"errors"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

type data = map[string]any

// field is one thing the list shows of a row.
type field struct {
	title, unit string
	width       float32
	text        func(l *list, r *row) string
	number      func(l *list, r *row) float64 // what it sorts by; nil: a text
	tone        func(l *list, r *row) fyne.ThemeColorName
	set         func(t *trip.Trip, l *list, r *row, text string) error
	choices     func(t *trip.Trip) []string
}

func unknown() string { return lang.L("not known") }
func nobody() string  { return lang.L("not noted") }

// nameColumn is the column of what is bought.
const nameColumn = 1

// fields lists the columns in the units the leader reads.
func (s *Screen) fields() []field {
	u, currency := s.bench.Units(), s.bench.Trip().Currency
	gram := typed.MassUnit(u, false)
	return []field{
		{title: lang.L("State"), width: 84, text: stateText, tone: stateTone},
		{title: lang.L("What"), width: 188, text: (*list).nameText, set: setName},
		{title: lang.L("Buy"), width: 46, number: func(_ *list, r *row) float64 { return float64(r.count) }, text: countText, tone: inkTone},
		{title: lang.L("Package"), unit: gram, width: 84, number: func(_ *list, r *row) float64 { return float64(r.goods.net) }, text: netText,
			set: func(t *trip.Trip, _ *list, r *row, text string) error { return setNet(t, r, text) }},
		{title: lang.L("Price"), unit: currency, width: 104, number: priceNumber, text: priceText, tone: priceTone,
			set: func(t *trip.Trip, _ *list, r *row, text string) error { return setPrice(t, r, text) }},
		{title: lang.L("Cost"), unit: currency, width: 92, number: costNumber, text: costText, tone: priceTone},
		{title: lang.L("Bought"), width: 68, number: func(_ *list, r *row) float64 { return float64(r.bought) }, text: boughtText, set: s.setBoughtText},
		{title: lang.L("Paid"), unit: currency, width: 88, number: func(_ *list, r *row) float64 { return float64(r.paid) }, text: paidText,
			set: func(t *trip.Trip, _ *list, r *row, text string) error { return setPaid(t, r, text) }},
		{title: lang.L("Paid by"), width: 92, text: payerText, choices: payers,
			set: func(t *trip.Trip, _ *list, r *row, text string) error { return setPayer(t, r, text) }},
		{title: lang.L("Shop"), width: 120, text: shopText,
			set: func(t *trip.Trip, _ *list, r *row, text string) error { return setShop(t, r, text) }},
		{title: lang.L("Home by"), width: 134, number: func(l *list, r *row) float64 { return float64(l.date(r)) }, text: dateText},
		{title: lang.L("Needed"), unit: gram, width: 82, number: func(_ *list, r *row) float64 { return lineNumber(r, needed) }, text: lineText(needed)},
		{title: lang.L("At home"), unit: gram, width: 88, number: homeNumber, text: homeText,
			set: func(t *trip.Trip, _ *list, r *row, text string) error { return setHome(t, r, text) }},
		{title: lang.L("Left over"), unit: gram, width: 90, number: func(_ *list, r *row) float64 { return lineNumber(r, leftover) }, text: leftoverText},
	}
}

// columns turns the fields into columns of the table.
func (s *Screen) columns() []grid.Column[*row] {
	var columns []grid.Column[*row]
	for i, f := range s.fields() {
		column := grid.Column[*row]{
			Title: f.title, Unit: f.unit, Width: f.width, Right: f.number != nil,
			Text: func(r *row) string { return f.text(s.list, r) },
		}
		if f.number != nil {
			column.Compare = func(a, b *row) int { return cmp.Compare(f.number(s.list, a), f.number(s.list, b)) }
		}
		if f.tone != nil {
			column.Tone = func(r *row) fyne.ThemeColorName { return f.tone(s.list, r) }
		} else if f.set == nil {
			column.Tone = func(r *row) fyne.ThemeColorName { return quietUnlessHead(r) }
		}
		if f.set != nil {
			column.Set = func(r *row, text string) error { return s.change(i, r, text) }
		}
		if f.choices != nil {
			column.Choices = func(*row) []string { return f.choices(s.bench.Trip()) }
		}
		columns = append(columns, column)
	}
	return columns
}

func quietUnlessHead(r *row) fyne.ThemeColorName {
	if r.kind == headRow {
		return look.Ink
	}
	return look.Quiet
}

func inkTone(*list, *row) fyne.ThemeColorName { return look.Ink }

func stateText(_ *list, r *row) string {
	switch {
	case r.kind == headRow && r.sum.rows > 0:
		return lang.X("done-of", "{{.Done}} of {{.Count}}", data{"Done": r.sum.done, "Count": r.sum.rows})
	case r.kind == headRow:
		return ""
	case r.kind == homeRow:
		return lang.L("at home")
	case r.needless:
		return lang.L("enough")
	case r.kind >= extraRow, r.done():
		return lang.L("done")
	case r.bought > 0:
		return lang.X("done-of", "{{.Done}} of {{.Count}}", data{"Done": r.bought, "Count": r.count})
	default:
		return lang.L("to buy")
	}
}

func stateTone(_ *list, r *row) fyne.ThemeColorName {
	switch {
	case r.kind == headRow:
		return look.Ink
	case r.done() || r.kind == homeRow:
		return look.Spruce
	case r.bought > 0:
		return look.Ochre
	default:
		return look.Ink
	}
}

func (l *list) nameText(r *row) string { return l.name(r) }

func setName(t *trip.Trip, _ *list, r *row, text string) error {
	if r.kind != otherRow {
		return errors.New(lang.L("Foods are renamed on their own screen."))
	}
	if strings.TrimSpace(text) == "" {
		return errors.New(lang.L("Say in a word what it was for."))
	}
	t.Progress.Purchases[r.purchase].Other = text
	return nil
}

func countText(_ *list, r *row) string {
	if r.count == 0 {
		return ""
	}
	return strconv.Itoa(r.count)
}

func netText(l *list, r *row) string {
	if r.goods.net == 0 {
		return ""
	}
	text := written.Bare(typed.MassText(r.goods.net, l.trip.Units, false))
	if r.kind == buyRow && r.buy.Package < 0 {
		return lang.X("loose", "{{.Mass}} loose", data{"Mass": text})
	}
	return text
}

func priceNumber(l *list, r *row) float64 {
	price, _ := l.price(r)
	return float64(price)
}

func priceText(l *list, r *row) string {
	switch {
	case r.kind == headRow && r.sum.unpriced > 0:
		return lang.L("at least")
	case r.count == 0:
		return ""
	}
	price, known := l.price(r)
	if !known {
		return unknown()
	}
	return written.Money(price, l.trip.Currency)
}

func priceTone(l *list, r *row) fyne.ThemeColorName {
	if r.count > 0 {
		if _, known := l.cost(r); !known {
			return look.Ochre
		}
	}
	return look.Ink
}

func costNumber(l *list, r *row) float64 {
	cost, _ := l.cost(r)
	return float64(cost)
}

func costText(l *list, r *row) string {
	if r.kind == headRow {
		if r.sum.rows == 0 {
			return ""
		}
		return written.Money(r.sum.cost, l.trip.Currency)
	}
	if r.count == 0 {
		return ""
	}
	cost, known := l.cost(r)
	if !known {
		return unknown()
	}
	return written.Money(cost, l.trip.Currency)
}

func boughtText(_ *list, r *row) string {
	if r.bought == 0 {
		return ""
	}
	return strconv.Itoa(r.bought)
}

func (s *Screen) setBoughtText(t *trip.Trip, l *list, r *row, text string) error {
	if r.kind == headRow || r.kind == homeRow || r.kind == otherRow {
		return errors.New(lang.L("Nothing of this is bought by the package."))
	}
	count := 0
	if text != "" {
		var err error
		if count, err = typed.Whole(text, 0, 100_000); err != nil {
			return err
		}
	}
	setBought(t, l, r, count, s.payer)
	return nil
}

func paidText(l *list, r *row) string {
	if !r.paidKnown {
		return ""
	}
	return written.Money(r.paid, l.trip.Currency)
}

func payerText(l *list, r *row) string {
	if m := l.trip.Member(r.by); m != nil {
		return m.Name
	}
	return ""
}

// payers lists who may have paid.
func payers(t *trip.Trip) []string {
	names := []string{nobody()}
	for i := range t.Crew {
		names = append(names, t.Crew[i].Name)
	}
	return names
}

func shopText(_ *list, r *row) string {
	if r.kind == headRow {
		return ""
	}
	return r.goods.shop
}

func dateText(l *list, r *row) string {
	if date := l.date(r); date.IsSet() {
		return date.Spoken()
	}
	return ""
}

func needed(r *row) units.Mass   { return r.line.Needed }
func leftover(r *row) units.Mass { return r.line.Leftover }

func lineNumber(r *row, of func(*row) units.Mass) float64 {
	if r.line == nil {
		return 0
	}
	return float64(of(r))
}

func lineText(of func(*row) units.Mass) func(*list, *row) string {
	return func(l *list, r *row) string {
		if r.line == nil {
			return ""
		}
		return buyersMass(of(r), l.trip.Units)
	}
}

// leftoverText is as whole as packages are: of what is left, a part of a gram is
// nothing.
func leftoverText(l *list, r *row) string {
	if r.line == nil {
		return ""
	}
	if l.trip.Units == units.US {
		return written.AtMost(leftover(r).Ounces(), 1)
	}
	return written.AtMost(leftover(r).Grams(), 0)
}

// buyersMass writes a reckoned mass as finely as a buyer weighs: whole grams or
// tenths of an ounce, and what is below one as it is.
func buyersMass(mass units.Mass, system units.System) string {
	value, decimals := mass.Grams(), 0
	if system == units.US {
		value, decimals = mass.Ounces(), 1
	}
	if math.Abs(value) < 1 {
		return written.Bare(typed.MassText(mass, system, false))
	}
	return written.AtMost(value, decimals)
}

func homeNumber(l *list, r *row) float64 {
	if food := l.trip.Food(r.goods.food); food != nil {
		return float64(food.AtHome)
	}
	return 0
}

func homeText(l *list, r *row) string {
	if r.line == nil {
		return ""
	}
	food := l.trip.Food(r.goods.food)
	if food == nil {
		return ""
	}
	return written.Bare(typed.MassText(food.AtHome, l.trip.Units, false))
}

// change edits one cell in a step of its own, named for the undo menu.
func (s *Screen) change(column int, r *row, text string) error {
	f := s.fields()[column]
	name := lang.X("edit-shopping", "change {{.What}} of {{.Name}}", data{"What": strings.ToLower(f.title), "Name": s.list.name(r)})
	return s.bench.Edit(name, func(t *trip.Trip) error { return s.store(t, column, r, text) })
}

// store puts a text into one field of a row.
func (s *Screen) store(t *trip.Trip, column int, r *row, text string) error {
	if r.kind == headRow {
		return errors.New(lang.L("This line heads others: change one of them."))
	}
	return s.fields()[column].set(t, s.list, r, text)
}

// paste stores many cells as one step of undo.
func (s *Screen) paste(cells []grid.Pasted[*row]) error {
	return s.bench.Edit(lang.L("paste into the shopping list"), func(t *trip.Trip) error {
		for _, cell := range cells {
			if cell.Row.kind == headRow || cell.Text == s.fields()[cell.Column].text(s.list, cell.Row) {
				continue // as it was: a pasted column brings the heads along
			}
			if err := s.store(t, cell.Column, cell.Row, cell.Text); err != nil {
				return prose.Errorf("%s, %s: %s", s.list.name(cell.Row), s.fields()[cell.Column].title, err)
			}
		}
		return nil
	})
}
