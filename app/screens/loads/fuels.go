package loads

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Fuel containers have no ID: a row is its place in the list.

func fuelKey(i int) string { return strconv.Itoa(i) }

type fuelField struct {
	title, unit string
	width       float32
	number      func(c *trip.FuelContainer) float64
	text        func(c *trip.FuelContainer) string
	set         func(c *trip.FuelContainer, text string) error
	choices     []string
}

func (g *gearTab) fuelFields() []fuelField {
	u, currency := g.bench.Units(), g.bench.Trip().Currency
	mass := func(title string, width float32, of func(c *trip.FuelContainer) *units.Mass) fuelField {
		return fuelField{title: title, unit: typed.MassUnit(u, false), width: width,
			number: func(c *trip.FuelContainer) float64 { return float64(*of(c)) },
			text:   func(c *trip.FuelContainer) string { return written.Bare(typed.MassText(*of(c), u, false)) },
			set: func(c *trip.FuelContainer, text string) (err error) {
				*of(c), err = typed.Mass(text, u, false)
				return err
			}}
	}
	return []fuelField{
		{title: lang.L("Name"), width: 220, text: func(c *trip.FuelContainer) string { return c.Name },
			set: func(c *trip.FuelContainer, text string) error { c.Name = text; return nil }},
		{title: lang.L("Fuel"), width: 130, text: fuelWord, choices: words(trip.FuelKinds()),
			set: func(c *trip.FuelContainer, text string) (err error) {
				c.Fuel, err = pick(text, trip.FuelKinds())
				return err
			}},
		mass(lang.L("Fuel in it"), 110, func(c *trip.FuelContainer) *units.Mass { return &c.Net }),
		mass(lang.X("empty-container", "Empty"), 90, func(c *trip.FuelContainer) *units.Mass { return &c.Empty }),
		{title: lang.L("Room"), unit: typed.VolumeUnit(u, true), width: 80, number: func(c *trip.FuelContainer) float64 { return float64(c.Volume) },
			text: func(c *trip.FuelContainer) string { return written.Bare(typed.VolumeText(c.Volume, u, true)) },
			set: func(c *trip.FuelContainer, text string) (err error) {
				c.Volume, err = typed.Volume(text, u, true)
				return err
			}},
		{title: lang.L("Price"), unit: currency, width: 100, number: func(c *trip.FuelContainer) float64 { return float64(c.Price.Or(0)) },
			text: func(c *trip.FuelContainer) string { return priceText(c.Price, currency) },
			set:  func(c *trip.FuelContainer, text string) error { return setPrice(&c.Price, text, currency) }},
	}
}

// fuelWord names what is in a container; a row that is gone has none, and the
// toolkit would tell of a word without a translation.
func fuelWord(c *trip.FuelContainer) string {
	if c.Fuel == "" {
		return ""
	}
	return lang.L(string(c.Fuel))
}

func priceText(price optional.Value[units.Money], currency string) string {
	if value, known := price.Get(); known {
		return written.Money(value, currency)
	}
	return ""
}

func setPrice(price *optional.Value[units.Money], text, currency string) error {
	if text == "" {
		*price = optional.Unknown[units.Money]()
		return nil
	}
	value, err := typed.Money(text, currency)
	if err == nil {
		*price = optional.Of(value)
	}
	return err
}

func (g *gearTab) fuelColumns() []grid.Column[int] {
	var columns []grid.Column[int]
	at := func(row int) *trip.FuelContainer {
		if list := g.bench.Trip().Fuels; row >= 0 && row < len(list) {
			return &list[row]
		}
		return &trip.FuelContainer{}
	}
	for i, f := range g.fuelFields() {
		column := grid.Column[int]{
			Title: f.title, Unit: f.unit, Width: f.width, Right: f.number != nil,
			Text: func(row int) string { return g.fuelFields()[i].text(at(row)) },
			Set: func(row int, text string) error {
				name := lang.X("edit-gear", "change {{.What}} of {{.Name}}", data{"What": f.title, "Name": at(row).Name})
				return g.bench.Edit(name, func(t *trip.Trip) error { return g.setFuelField(t, row, i, text) })
			},
		}
		if f.number != nil {
			column.Compare = func(a, b int) int { return cmp.Compare(f.number(at(a)), f.number(at(b))) }
		}
		if f.choices != nil {
			column.Choices = func(int) []string { return f.choices }
		}
		columns = append(columns, column)
	}
	return columns
}

func (g *gearTab) setFuelField(t *trip.Trip, row, field int, text string) error {
	if row < 0 || row >= len(t.Fuels) {
		return errors.New(lang.L("This size is gone."))
	}
	return g.fuelFields()[field].set(&t.Fuels[row], text)
}

func (g *gearTab) pasteFuel(cells []grid.Pasted[int]) error {
	return g.bench.Edit(lang.L("paste into the fuel sizes"), func(t *trip.Trip) error {
		for _, cell := range cells {
			if err := g.setFuelField(t, cell.Row, cell.Column, cell.Text); err != nil {
				return prose.Errorf("%s: %s", g.fuelFields()[cell.Column].title, err)
			}
		}
		return nil
	})
}

func (g *gearTab) addContainer() (string, error) {
	at := len(g.bench.Trip().Fuels)
	err := g.bench.Edit(lang.L("add a size of fuel container"), func(t *trip.Trip) error {
		made := trip.UsualFuels()[1]
		made.Name = freeFuelName(t, lang.L("New container"))
		for _, item := range t.Gear {
			if item.Kind == trip.Stove {
				made.Fuel = item.Fuel
			}
		}
		t.Fuels = append(t.Fuels, made)
		return nil
	})
	g.refresh()
	return fuelKey(at), err
}

func freeFuelName(t *trip.Trip, base string) string {
	name := base
	for n := 2; slices.ContainsFunc(t.Fuels, func(c trip.FuelContainer) bool { return c.Name == name }); n++ {
		name = fmt.Sprintf("%s %d", base, n)
	}
	return name
}

func (g *gearTab) removeContainer(row int) error {
	if row < 0 || row >= len(g.bench.Trip().Fuels) {
		return errors.New(lang.L("This size is gone."))
	}
	name := lang.X("remove-gear", "remove {{.Name}}", data{"Name": g.bench.Trip().Fuels[row].Name})
	err := g.bench.Edit(name, func(t *trip.Trip) error {
		t.Fuels = slices.Delete(t.Fuels, row, row+1)
		return nil
	})
	g.refresh()
	return err
}
