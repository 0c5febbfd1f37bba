package foods

import (
	"errors"
	"slices"
	"strconv"

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
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// packagesTab is how the food is sold and what is at home.
type packagesTab struct {
	side    *sidePanel
	table   *grid.Grid[int] // places of the packages
	atHome  *grid.Grid[int] // one row
	content fyne.CanvasObject
}

func newPackagesTab(side *sidePanel) *packagesTab {
	p := &packagesTab{side: side}
	options := grid.Options[int]{
		Key: strconv.Itoa, OnAdd: p.add, OnDelete: p.remove, Together: side.screen.bench.Together, OnProblem: side.screen.bench.Say, Clipboard: side.screen.bench.Clipboard,
	}
	p.table = grid.New(p.columns(), options)
	p.atHome = grid.New(p.homeColumns(), grid.Options[int]{Key: strconv.Itoa, Together: side.screen.bench.Together, OnProblem: side.screen.bench.Say, Clipboard: side.screen.bench.Clipboard})
	hint := look.NewText(lang.L("Every way the food is sold; the shopping takes the cheapest whole packages."), look.Caption, look.Quiet)
	buttons := container.NewHBox(widget.NewButton(lang.L("Add a package"), p.table.Add), widget.NewButton(lang.L("Remove the package"), p.table.Delete))
	home := bench.Tall(look.RowHeight*2+8, p.atHome)
	p.content = container.NewBorder(bench.Inset(hint), container.NewVBox(buttons, home), nil, nil, p.table)
	return p
}

func (p *packagesTab) show(food *trip.Food) {
	rows := make([]int, len(food.Packages))
	for i := range rows {
		rows[i] = i
	}
	p.table.SetRows(rows)
	p.atHome.SetRows([]int{0})
}

func (p *packagesTab) commit() bool { return p.table.Commit() && p.atHome.Commit() }

// columns of the packages.
func (p *packagesTab) columns() []grid.Column[int] {
	b := p.side.screen.bench
	u, currency := b.Units(), b.Trip().Currency
	column := func(title, unit string, width float32, right bool, text func(s *trip.Package) string, set func(s *trip.Package, text string) error) grid.Column[int] {
		return grid.Column[int]{
			Title: title, Unit: unit, Width: width, Right: right,
			Text: func(at int) string {
				if food := p.side.current(); food != nil && at < len(food.Packages) {
					return text(&food.Packages[at])
				}
				return ""
			},
			Set: func(at int, typedText string) error { return p.change(at, title, typedText, set) },
		}
	}
	return []grid.Column[int]{
		column(lang.L("Net"), typed.MassUnit(u, false), 78, true,
			func(s *trip.Package) string { return written.Bare(typed.MassText(s.Net, u, false)) },
			func(s *trip.Package, text string) (err error) {
				s.Net, err = netMass(text, p.side.current(), u)
				return err
			}),
		column(lang.L("Price"), currency, 92, true, func(s *trip.Package) string {
			if price, known := s.Price.Get(); known {
				return written.Money(price, currency)
			}
			return notKnown
		}, func(s *trip.Package, text string) error { return setPrice(s, text, currency) }),
		column(lang.L("Shop"), "", 110, false, func(s *trip.Package) string { return s.Shop },
			func(s *trip.Package, text string) error { s.Shop = text; return nil }),
		column(lang.L("To be had"), "", 82, true, func(s *trip.Package) string {
			if stock, known := s.InStock.Get(); known {
				return strconv.Itoa(stock)
			}
			return "–"
		}, setStock),
		column(lang.L("By the many"), currency, 120, true, func(s *trip.Package) string { return bench.ManyText(s, currency) },
			func(s *trip.Package, text string) error { return bench.ReadMany(s, text, currency) }),
		column(lang.L("Wrapping"), typed.MassUnit(u, false), 92, true,
			func(s *trip.Package) string { return written.Bare(typed.MassText(s.Wrapping, u, false)) },
			func(s *trip.Package, text string) (err error) {
				s.Wrapping, err = typed.Mass(text, u, false)
				return err
			}),
	}
}

func setPrice(s *trip.Package, text, currency string) error {
	if isBlank(text) {
		s.Price = optional.Unknown[units.Money]()
		return nil
	}
	price, err := typed.Money(text, currency)
	if err == nil {
		s.Price = optional.Of(price)
	}
	return err
}

// setStock takes nothing typed as no limit.
func setStock(s *trip.Package, text string) error {
	if isBlank(text) {
		s.InStock = optional.Unknown[int]()
		return nil
	}
	stock, err := typed.Whole(text, 0, 1_000_000)
	if err == nil {
		s.InStock = optional.Of(stock)
	}
	return err
}

func (p *packagesTab) homeColumns() []grid.Column[int] {
	u := p.side.screen.bench.Units()
	return []grid.Column[int]{{
		Title: lang.L("At home already"), Unit: typed.MassUnit(u, false), Width: 170, Right: true,
		Text: func(int) string {
			if food := p.side.current(); food != nil {
				return written.Bare(typed.MassText(food.AtHome, u, false))
			}
			return ""
		},
		Set: func(_ int, text string) error {
			return p.side.screen.change(p.side.food, lang.L("stock at home"), func(f *trip.Food) (err error) {
				f.AtHome, err = typed.Mass(text, u, false)
				return err
			})
		},
	}}
}

func (p *packagesTab) change(at int, what, text string, set func(s *trip.Package, text string) error) error {
	return p.side.screen.change(p.side.food, what, func(f *trip.Food) error {
		if at >= len(f.Packages) {
			return errors.New(lang.L("the package is gone"))
		}
		return set(&f.Packages[at], text)
	})
}

// add begins a package of a pound or half a kilogram, to be written over.
func (p *packagesTab) add() (string, error) {
	food := p.side.current()
	if food == nil {
		return "", errGone
	}
	at := len(food.Packages)
	err := p.side.screen.change(food.ID, lang.L("packages"), func(f *trip.Food) error {
		net := 500 * units.Gram
		if p.side.screen.bench.Units() == units.US {
			net = units.FromGrams(453.59237)
		}
		f.Packages = append(f.Packages, trip.Package{Net: net})
		return nil
	})
	p.side.showTab()
	return strconv.Itoa(at), err
}

func (p *packagesTab) remove(at int) error {
	err := p.side.screen.change(p.side.food, lang.L("packages"), func(f *trip.Food) error {
		if at < len(f.Packages) {
			f.Packages = slices.Delete(f.Packages, at, at+1)
		}
		return nil
	})
	p.side.showTab()
	return err
}
