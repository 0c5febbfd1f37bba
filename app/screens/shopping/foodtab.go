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

// foodTab is the chosen food: what is needed and bought of it, and every
// package it is sold in.
type foodTab struct {
	screen   *Screen
	food     trip.FoodID
	name     *look.Text
	words    *look.Paragraph
	packages *grid.Grid[int] // places in the food's packages
	sold     *fyne.Container
	content  fyne.CanvasObject
}

func newFoodTab(s *Screen) *foodTab {
	f := &foodTab{screen: s, name: look.NewHeading("").Yielding(), words: look.NewParagraph("", look.Body, look.Ink)}
	f.packages = grid.New(f.columns(), grid.Options[int]{
		Key: strconv.Itoa, OnAdd: f.add, OnDelete: f.remove, Together: s.bench.Together, OnProblem: s.bench.Say, Clipboard: s.bench.Clipboard,
	})
	buttons := container.NewHBox(widget.NewButton(lang.L("Add a package"), f.packages.Add), widget.NewButton(lang.L("Remove"), f.packages.Delete))
	f.sold = container.NewBorder(look.NewText(lang.L("How it is sold; an empty price is not known"), look.Caption, look.Quiet), buttons, nil, nil, f.packages)
	f.content = container.NewBorder(container.NewVBox(bench.Inset(f.name), f.words), nil, nil, nil, f.sold)
	return f
}

func (f *foodTab) show(r *row) {
	l := f.screen.list
	f.name.SetContent(l.name(r))
	f.words.SetContent(strings.Join(f.tell(r), "\n"))
	food := l.trip.Food(r.goods.food)
	if food == nil {
		f.food = 0
		f.sold.Hide()
		return
	}
	f.food = food.ID
	places := make([]int, len(food.Packages))
	for i := range places {
		places[i] = i
	}
	f.packages.SetRows(places)
	f.sold.Show()
}

// tell says in words what the list knows of a row.
func (f *foodTab) tell(r *row) []string {
	l := f.screen.list
	mass := func(m units.Mass) string { return written.Quantity(m, l.trip.Units) }
	var words []string
	switch {
	case r.kind == headRow && r.sum.rows > 0:
		words = append(words, lang.X("head-tells", "Lines to buy: {{.Left}} of {{.Count}}.", data{"Left": r.sum.rows - r.sum.done, "Count": r.sum.rows}))
		if r.sum.unpriced > 0 {
			words = append(words, lang.X("head-unpriced", "Of these without a price: {{.Count}}. Nobody knows the whole cost.", data{"Count": r.sum.unpriced}))
		}
	case r.kind == fuelRow && r.fuel.Point != 0:
		words = append(words, lang.X("fuel-there", "To be bought at {{.Place}}: fuel does not travel in ordinary post.", data{"Place": l.placeName(r.fuel.Point)}))
	case r.kind == fuelRow:
		words = append(words, lang.L("To be bought before the start."))
	case r.kind == otherRow:
		words = append(words, lang.L("Shared by the crew as food and fuel are."))
	}
	if r.line != nil {
		words = append(words, f.tellLine(r.line, mass)...)
	}
	for _, finding := range l.plan.Shopping.Findings {
		if r.goods.food != 0 && finding.Place.Food == r.goods.food {
			words = append(words, written.Text(finding.What.Then(finding.Remedy), l.trip.Units))
		}
	}
	return words
}

func (f *foodTab) tellLine(line *shopping.Line, mass func(units.Mass) string) []string {
	words := []string{lang.X("line-tells", "Needed {{.Needed}}, from home {{.Home}}, to buy {{.Bought}}, left over {{.Left}}.", data{
		"Needed": mass(line.Needed), "Home": mass(line.FromHome), "Bought": mass(line.Bought), "Left": mass(line.Leftover)})}
	if line.Had > 0 {
		words = []string{lang.X("line-tells-had", "Needed {{.Needed}}, from home {{.Home}}, bought {{.Had}}, still to buy {{.Bought}}, left over {{.Left}}.", data{
			"Needed": mass(line.Needed), "Home": mass(line.FromHome), "Had": mass(line.Had), "Bought": mass(line.Bought), "Left": mass(line.Leftover)})}
	}
	switch {
	case line.Bought == 0:
	case !line.CostKnown:
		words = append(words, lang.L("A price is missing, so nobody knows what it costs."))
	case line.BestProven:
		words = append(words, lang.L("No cheaper way of whole packages exists."))
	default:
		words = append(words, lang.L("There may be a cheaper way of whole packages."))
	}
	return words
}

// sold gives a package of the chosen food, or nil.
func (f *foodTab) at(t *trip.Trip, place int) *trip.Package {
	if food := t.Food(f.food); food != nil && place < len(food.Packages) {
		return &food.Packages[place]
	}
	return nil
}

// columns of the packages.
func (f *foodTab) columns() []grid.Column[int] {
	s := f.screen
	text := func(of func(*trip.Package) string) func(int) string {
		return func(place int) string {
			if sold := f.at(s.bench.Trip(), place); sold != nil {
				return of(sold)
			}
			return ""
		}
	}
	set := func(what string, change func(t *trip.Trip, sold *trip.Package, text string) error) func(int, string) error {
		return func(place int, typed string) error { return f.change(what, place, typed, change) }
	}
	return []grid.Column[int]{
		{Title: lang.L("Net"), Unit: typed.MassUnit(s.bench.Units(), false), Width: 72, Right: true,
			Text: text(func(p *trip.Package) string { return written.Bare(typed.MassText(p.Net, s.bench.Units(), false)) }),
			Set:  set(lang.L("net"), setPackageNet)},
		{Title: lang.L("Price"), Unit: s.bench.Trip().Currency, Width: 88, Right: true,
			Text: text(func(p *trip.Package) string { return moneyOrUnknown(p.Price, s.bench.Trip().Currency) }),
			Tone: func(place int) fyne.ThemeColorName {
				if sold := f.at(s.bench.Trip(), place); sold != nil && !sold.Price.Known() {
					return look.Ochre
				}
				return look.Ink
			},
			Set: set(lang.L("price"), setPackagePrice)},
		{Title: lang.L("Shop"), Width: 110, Text: text(func(p *trip.Package) string { return p.Shop }),
			Set: set(lang.L("shop"), func(_ *trip.Trip, p *trip.Package, text string) error { p.Shop = text; return nil })},
		{Title: lang.L("In stock"), Width: 66, Right: true,
			Text: text(func(p *trip.Package) string {
				if n, known := p.InStock.Get(); known {
					return strconv.Itoa(n)
				}
				return ""
			}),
			Set: set(lang.L("stock"), setPackageStock)},
		{Title: lang.L("By the many"), Unit: s.bench.Trip().Currency, Width: 130, Right: true,
			Text: text(func(p *trip.Package) string { return bench.ManyText(p, s.bench.Trip().Currency) }),
			Set:  set(lang.L("price by the many"), func(t *trip.Trip, p *trip.Package, text string) error { return bench.ReadMany(p, text, t.Currency) })},
	}
}

func moneyOrUnknown(price optional.Value[units.Money], currency string) string {
	if amount, known := price.Get(); known {
		return written.Money(amount, currency)
	}
	return unknown()
}

func setPackageNet(t *trip.Trip, p *trip.Package, text string) (err error) {
	p.Net, err = typed.Mass(text, t.Units, false)
	return err
}

func setPackagePrice(t *trip.Trip, p *trip.Package, text string) error {
	p.Price = optional.Unknown[units.Money]()
	if text == "" || text == unknown() {
		return nil
	}
	amount, err := typed.Money(text, t.Currency)
	if err == nil {
		p.Price = optional.Of(amount)
	}
	return err
}

func setPackageStock(_ *trip.Trip, p *trip.Package, text string) error {
	p.InStock = optional.Unknown[int]()
	if text == "" {
		return nil
	}
	count, err := typed.Whole(text, 0, 1_000_000)
	if err == nil {
		p.InStock = optional.Of(count)
	}
	return err
}

func (f *foodTab) change(what string, place int, text string, change func(*trip.Trip, *trip.Package, string) error) error {
	food := f.screen.bench.Trip().Food(f.food)
	if food == nil {
		return errors.New(lang.L("Choose a food in the list."))
	}
	name := lang.X("edit-package", "change the {{.What}} of a package of {{.Name}}", data{"What": what, "Name": food.Name})
	return f.screen.bench.Edit(name, func(t *trip.Trip) error {
		sold := f.at(t, place)
		if sold == nil {
			return errors.New(lang.L("The package is gone."))
		}
		old := goods{food: f.food, net: sold.Net, shop: sold.Shop}
		if err := change(t, sold, text); err != nil {
			return err
		}
		for i := range t.Progress.Purchases {
			if p := &t.Progress.Purchases[i]; goodsOf(p) == old {
				p.Net, p.Shop = sold.Net, sold.Shop
			}
		}
		return nil
	})
}

func (f *foodTab) add() (string, error) {
	food := f.screen.bench.Trip().Food(f.food)
	if food == nil {
		return "", errors.New(lang.L("Choose a food in the list."))
	}
	place := len(food.Packages)
	err := f.screen.bench.Edit(lang.X("add-package", "add a package of {{.Name}}", data{"Name": food.Name}), func(t *trip.Trip) error {
		added := t.Food(f.food)
		added.Packages = append(added.Packages, trip.Package{Net: 500 * units.Gram})
		return nil
	})
	return strconv.Itoa(place), err
}

func (f *foodTab) remove(place int) error {
	food := f.screen.bench.Trip().Food(f.food)
	if food == nil || place >= len(food.Packages) {
		return nil
	}
	return f.screen.bench.Edit(lang.X("remove-package", "remove a package of {{.Name}}", data{"Name": food.Name}), func(t *trip.Trip) error {
		from := t.Food(f.food)
		from.Packages = append(from.Packages[:place:place], from.Packages[place+1:]...)
		if len(from.Packages) == 0 {
			from.Packages = nil
		}
		return nil
	})
}
