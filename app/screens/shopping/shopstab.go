package shopping

import (
	"fmt"
	"slices"
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
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// shopsTab is the shops with what a visit costs, and the choices of shops that
// nothing beats, to take one with a click.
type shopsTab struct {
	screen  *Screen
	table   *grid.Grid[string]
	choices *fyne.Container
	content fyne.CanvasObject
}

func newShopsTab(s *Screen) *shopsTab {
	t := &shopsTab{screen: s, choices: container.NewVBox()}
	t.table = grid.New(t.columns(), grid.Options[string]{
		Key: func(name string) string { return name }, OnAdd: t.add, OnDelete: t.remove, Together: s.bench.Together, OnProblem: s.bench.Say, Clipboard: s.bench.Clipboard, Sticky: 1,
	})
	buttons := container.NewHBox(widget.NewButton(lang.L("Add a shop"), t.table.Add), widget.NewButton(lang.L("Remove"), t.table.Delete))
	above := container.NewBorder(nil, buttons, nil, nil, t.table)
	below := container.NewBorder(bench.Inset(look.NewHeading(lang.L("Which shops? Cost against visits"))), nil, nil, nil, container.NewVScroll(t.choices))
	split := container.NewVSplit(above, below)
	split.Offset = 0.5
	t.content = split
	return t
}

func (t *shopsTab) show() {
	t.table.SetRows(t.screen.list.trip.ShopNames())
	t.choices.Objects = nil
	for _, errand := range t.screen.list.plan.Shopping.Errands {
		t.choices.Add(t.choice(errand))
	}
	if len(t.choices.Objects) == 0 {
		t.choices.Add(look.NewText(lang.L("With one shop there is nothing to choose."), look.Body, look.Quiet))
	}
	t.choices.Refresh()
}

// choice is one line of the choices, with a button that takes it.
func (t *shopsTab) choice(e shopping.Errand) fyne.CanvasObject {
	l := t.screen.list
	names := strings.Join(e.Shops, " + ")
	if names == "" {
		names = lang.L("Any shop")
	}
	words := lang.X("errand-tells", "{{.Shops}}: {{.Cost}}, {{.Left}} left over", data{
		"Shops": names, "Cost": written.Price(e.Cost, l.trip.Currency), "Left": written.Quantity(e.Leftover, l.trip.Units)})
	if e.Unpriced > 0 {
		words += ", " + lang.X("errand-unpriced", "{{.Count}} without a price", data{"Count": e.Unpriced})
	}
	label := look.NewParagraph(words, look.Body, look.Ink)
	if e.Recommended && len(l.plan.Shopping.Errands) > 1 {
		label.SetContent(words + "\n" + lang.L("advised"))
	}
	if e.Current {
		label.Bold = true
		return container.NewBorder(nil, nil, nil, container.NewCenter(look.NewText(lang.L("in use"), look.Caption, look.Spruce)), label)
	}
	return container.NewBorder(nil, nil, nil, container.NewCenter(widget.NewButton(lang.L("Use these shops"), func() { t.take(e) })), label)
}

// take uses the shops of a choice near home and no others.
func (t *shopsTab) take(e shopping.Errand) {
	name := lang.X("take-shops", "shop at {{.Shops}}", data{"Shops": strings.Join(e.Shops, " + ")})
	_ = t.screen.bench.Edit(name, func(tr *trip.Trip) error {
		for _, shop := range tr.ShopNames() {
			listed := listedShop(tr, shop)
			if listed.Point == 0 {
				listed.Use = slices.ContainsFunc(e.Shops, func(used string) bool { return trip.ShopKey(used) == trip.ShopKey(shop) })
			}
		}
		return nil
	})
}

// listedShop gives a shop, put on the list if only packages name it.
func listedShop(t *trip.Trip, name string) *trip.Shop {
	if shop := t.Shop(name); shop != nil {
		return shop
	}
	t.Shops = append(t.Shops, trip.Shop{Name: name, Use: true})
	return &t.Shops[len(t.Shops)-1]
}

// at gives a shop as it is reckoned with.
func (t *shopsTab) at(name string) trip.Shop {
	if shop := t.screen.bench.Trip().Shop(name); shop != nil {
		return *shop
	}
	return trip.Shop{Name: name, Use: true}
}

func (t *shopsTab) columns() []grid.Column[string] {
	currency := t.screen.bench.Trip().Currency
	column := func(title, unit string, width float32, right bool, text func(trip.Shop) string, set func(*trip.Trip, *trip.Shop, string) error) grid.Column[string] {
		return grid.Column[string]{Title: title, Unit: unit, Width: width, Right: right,
			Text: func(name string) string { return text(t.at(name)) },
			Set:  func(name, typed string) error { return t.change(title, name, typed, set) }}
	}
	yes := func(use bool) string {
		if use {
			return lang.L("yes")
		}
		return lang.L("no")
	}
	at := column(lang.L("Stands at"), "", 120, false, func(s trip.Shop) string { return t.pointName(s.Point) }, setShopPoint)
	at.Choices = func(string) []string { return t.pointNames() }
	used := column(lang.L("Used"), "", 60, false, func(s trip.Shop) string { return yes(s.Use) }, func(_ *trip.Trip, s *trip.Shop, text string) (err error) {
		s.Use, err = typed.Yes(text)
		return err
	})
	used.Choices = func(string) []string { return []string{lang.L("yes"), lang.L("no")} }
	return []grid.Column[string]{
		column(lang.L("Shop"), "", 160, false, func(s trip.Shop) string { return s.Name }, func(tr *trip.Trip, s *trip.Shop, text string) error {
			tr.RenameShop(s.Name, text)
			return nil
		}),
		used, at,
		column(lang.X("opening-days", "Open"), "", 110, false, func(s trip.Shop) string { return bench.OpenText(s.Opening) }, func(_ *trip.Trip, s *trip.Shop, text string) error {
			return bench.ReadOpen(&s.Opening, text)
		}),
		column(lang.L("Visit"), currency, 80, true, func(s trip.Shop) string { return written.Money(s.VisitFee, currency) }, func(tr *trip.Trip, s *trip.Shop, text string) error {
			return setMoney(&s.VisitFee, text, tr.Currency)
		}),
		column(lang.L("Least order"), currency, 100, true, func(s trip.Shop) string { return written.Money(s.LeastOrder, currency) }, func(tr *trip.Trip, s *trip.Shop, text string) error {
			return setMoney(&s.LeastOrder, text, tr.Currency)
		}),
		column(lang.L("Closed on"), "", 130, false, func(s trip.Shop) string { return bench.ClosedText(s.Opening) }, func(_ *trip.Trip, s *trip.Shop, text string) error {
			return bench.ReadClosed(&s.Opening, text)
		}),
		column(lang.L("Address"), "", 180, false, func(s trip.Shop) string { return bench.AddressText(s.Address) }, func(_ *trip.Trip, s *trip.Shop, text string) error {
			s.Address = bench.ReadAddress(text)
			return nil
		}),
		column(lang.L("Notes"), "", 240, false, func(s trip.Shop) string { return s.Notes }, func(_ *trip.Trip, s *trip.Shop, text string) error {
			s.Notes = text
			return nil
		}),
	}
}

func setMoney(amount *units.Money, text, currency string) (err error) {
	*amount = 0
	if text != "" {
		*amount, err = typed.Money(text, currency)
	}
	return err
}

func setShopPoint(t *trip.Trip, s *trip.Shop, text string) error {
	s.Point = 0
	if text == "" || text == nearHome() {
		return nil
	}
	for i := range t.Points {
		if t.Points[i].Name == text {
			s.Point = t.Points[i].ID
			return nil
		}
	}
	return fmt.Errorf("%s", lang.X("no-point", "No point is called {{.Name}}.", data{"Name": text}))
}

func nearHome() string { return lang.L("near home") }

func (t *shopsTab) pointName(id trip.PointID) string {
	if p := t.screen.bench.Trip().Point(id); p != nil {
		return p.Name
	}
	return nearHome()
}

func (t *shopsTab) pointNames() []string {
	names := []string{nearHome()}
	for i := range t.screen.bench.Trip().Points {
		names = append(names, t.screen.bench.Trip().Points[i].Name)
	}
	return names
}

func (t *shopsTab) change(what, name, text string, set func(*trip.Trip, *trip.Shop, string) error) error {
	edit := lang.X("edit-shop", "change {{.What}} of {{.Name}}", data{"What": strings.ToLower(what), "Name": name})
	return t.screen.bench.Edit(edit, func(tr *trip.Trip) error { return set(tr, listedShop(tr, name), strings.TrimSpace(text)) })
}

func (t *shopsTab) add() (string, error) {
	names := t.screen.bench.Trip().ShopNames()
	name := lang.L("Shop")
	for n := 2; slices.ContainsFunc(names, func(known string) bool { return trip.ShopKey(known) == trip.ShopKey(name) }); n++ {
		name = fmt.Sprintf("%s %d", lang.L("Shop"), n)
	}
	err := t.screen.bench.Edit(lang.L("add a shop"), func(tr *trip.Trip) error {
		tr.Shops = append(tr.Shops, trip.NewShop(name))
		return nil
	})
	return name, err
}

// remove takes a shop off the list; packages go on naming it.
func (t *shopsTab) remove(name string) error {
	return t.screen.bench.Edit(lang.X("remove-shop", "remove {{.Name}}", data{"Name": name}), func(tr *trip.Trip) error {
		tr.Shops = slices.DeleteFunc(tr.Shops, func(s trip.Shop) bool { return trip.ShopKey(s.Name) == trip.ShopKey(name) })
		if len(tr.Shops) == 0 {
			tr.Shops = nil
		}
		return nil
	})
}
