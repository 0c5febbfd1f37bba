package loads

import (
	"cmp"
	"errors"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// gearField is one thing the table holds of a piece of gear.
type gearField struct {
	title, unit string
	also        string // other heads of a pasted table, parted by commas
	needed      bool   // of a pasted new piece
	width       float32
	number      func(item *trip.Gear) float64 // what it sorts by; nil: a text
	text        func(t *trip.Trip, item *trip.Gear) string
	set         func(t *trip.Trip, item *trip.Gear, text string) error // nil: worked out
	choices     func(t *trip.Trip, item *trip.Gear) []string
}

func (g *gearTab) columns() []grid.Column[trip.GearID] {
	var columns []grid.Column[trip.GearID]
	for i, f := range g.fields() {
		at := func(id trip.GearID) *trip.Gear { return g.bench.Trip().GearItem(id) }
		column := grid.Column[trip.GearID]{Title: f.title, Also: typed.List(f.also), Needed: f.needed, Unit: f.unit, Width: f.width, Right: f.number != nil}
		column.Text = func(id trip.GearID) string {
			if item := at(id); item != nil {
				return g.fields()[i].text(g.bench.Trip(), item)
			}
			return ""
		}
		if f.number != nil {
			column.Compare = func(a, b trip.GearID) int {
				if at(a) == nil || at(b) == nil {
					return 0
				}
				return cmp.Compare(f.number(at(a)), f.number(at(b)))
			}
		}
		if f.set != nil {
			column.Set = func(id trip.GearID, text string) error {
				return g.change(id, f.title, func(t *trip.Trip, item *trip.Gear) error { return g.fields()[i].set(t, item, text) })
			}
		} else {
			column.Tone = func(trip.GearID) fyne.ThemeColorName { return look.Quiet }
		}
		if f.choices != nil {
			column.Choices = func(id trip.GearID) []string { return f.choices(g.bench.Trip(), at(id)) }
		}
		columns = append(columns, column)
	}
	return columns
}

// fields lists the columns in the units the leader reads.
func (g *gearTab) fields() []gearField {
	return append(append(g.commonFields(), g.kitchenFields()...), gearField{title: lang.L("Carried by"), width: 190, text: g.carriers})
}

func (g *gearTab) commonFields() []gearField {
	u := g.bench.Units()
	return []gearField{
		{title: lang.L("Name"), also: lang.X("heads-gear", "Gear, Item, Piece, Thing"), width: 210, text: func(_ *trip.Trip, x *trip.Gear) string { return x.Name },
			set: func(_ *trip.Trip, x *trip.Gear, text string) error { x.Name = text; return nil }},
		{title: lang.L("Kind"), also: lang.X("heads-gear-kind", "Type"), width: 110, text: func(_ *trip.Trip, x *trip.Gear) string { return kindWord(x.Kind) },
			set: setKind, choices: func(*trip.Trip, *trip.Gear) []string { return words(trip.GearKinds()) }},
		{title: lang.L("Whose"), also: lang.X("heads-gear-group", "Cook group, Group"), width: 100, text: groupOfGear, set: setGroup, choices: groupChoices},
		{title: lang.L("Mass"), also: lang.X("heads-gear-mass", "Weight"), needed: true, unit: typed.MassUnit(u, false), width: 84, number: func(x *trip.Gear) float64 { return float64(x.Mass) },
			text: func(_ *trip.Trip, x *trip.Gear) string { return written.Bare(typed.MassText(x.Mass, u, false)) },
			set: func(_ *trip.Trip, x *trip.Gear, text string) (err error) {
				x.Mass, err = typed.Mass(text, u, false)
				return err
			}},
		{title: lang.L("Room"), also: lang.X("heads-gear-room", "Volume"), unit: typed.VolumeUnit(u, true), width: 72, number: func(x *trip.Gear) float64 { return float64(x.Volume) },
			text: func(_ *trip.Trip, x *trip.Gear) string { return written.Bare(typed.VolumeText(x.Volume, u, true)) },
			set: func(_ *trip.Trip, x *trip.Gear, text string) (err error) {
				x.Volume, err = typed.Volume(text, u, true)
				return err
			}},
	}
}

func (g *gearTab) kitchenFields() []gearField {
	u := g.bench.Units()
	only := func(kind trip.GearKind, x *trip.Gear, text string) string {
		if x.Kind != kind {
			return ""
		}
		return text
	}
	return []gearField{
		{title: lang.L("Holds"), unit: typed.VolumeUnit(u, true), width: 76, number: func(x *trip.Gear) float64 { return float64(x.Capacity) },
			text: func(_ *trip.Trip, x *trip.Gear) string {
				if x.Capacity == 0 {
					return ""
				}
				return written.Bare(typed.VolumeText(x.Capacity, u, true))
			},
			set: func(_ *trip.Trip, x *trip.Gear, text string) (err error) {
				if err = needs(x, text, trip.Pot, trip.FoodStorage); err == nil && text != "" {
					x.Capacity, err = typed.Volume(text, u, true)
				}
				return err
			}},
		{title: lang.L("Burns"), width: 120, text: func(_ *trip.Trip, x *trip.Gear) string {
			if x.Fuel == "" {
				return "" // the toolkit would tell of a word without a translation
			}
			return only(trip.Stove, x, lang.L(string(x.Fuel)))
		},
			choices: func(*trip.Trip, *trip.Gear) []string { return words(trip.FuelKinds()) }, set: setFuel},
		{title: lang.L("Power"), unit: "W", width: 84, number: func(x *trip.Gear) float64 { return x.PowerWatts },
			text: func(_ *trip.Trip, x *trip.Gear) string {
				return only(trip.Stove, x, strconv.FormatFloat(x.PowerWatts, 'f', 0, 64))
			},
			set: func(_ *trip.Trip, x *trip.Gear, text string) (err error) {
				if err = needs(x, text, trip.Stove); err == nil && text != "" {
					x.PowerWatts, err = typed.Number(text)
				}
				return err
			}},
		{title: lang.L("Efficiency"), unit: "%", width: 110, number: func(x *trip.Gear) float64 { return x.Efficiency },
			text: func(_ *trip.Trip, x *trip.Gear) string { return only(trip.Stove, x, typed.PercentText(x.Efficiency)) },
			set: func(_ *trip.Trip, x *trip.Gear, text string) (err error) {
				if err = needs(x, text, trip.Stove); err == nil && text != "" {
					x.Efficiency, err = typed.Percent(text)
				}
				return err
			}},
		{title: lang.L("Made of"), width: 100, text: func(_ *trip.Trip, x *trip.Gear) string { return only(trip.Pot, x, metalText(x.HeatCapacity)) },
			set: setMetal, choices: func(*trip.Trip, *trip.Gear) []string { return metalNames() }},
	}
}

// carriers says who carries a piece of gear, stage by stage.
func (g *gearTab) carriers(_ *trip.Trip, x *trip.Gear) string {
	p := g.bench.Plan()
	if p == nil {
		return "–"
	}
	var names []string
	for _, stage := range p.Carry.Stages {
		for _, item := range stage.Items {
			if item.Kind == carry.GearItem && gearID(item.Key) == x.ID {
				if name := memberOf(p.Trip, item.Carrier); len(names) == 0 || names[len(names)-1] != name {
					names = append(names, name)
				}
			}
		}
	}
	if len(names) == 0 {
		return "–"
	}
	return strings.Join(names, ", ")
}

// needs refuses a figure that only some kinds of gear have.
func needs(x *trip.Gear, text string, kinds ...trip.GearKind) error {
	for _, kind := range kinds {
		if x.Kind == kind {
			return nil
		}
	}
	if text == "" {
		return nil
	}
	return prose.Errorf("%s: %s", lang.L("Only this kind has it"), strings.Join(words(kinds), ", "))
}

// words writes values in the reader's language.
func words[T ~string](list []T) []string {
	names := make([]string, len(list))
	for i, one := range list {
		names[i] = lang.L(string(one))
	}
	return names
}

// pick finds the value a word stands for, in the reader's language or ours.
func pick[T ~string](text string, list []T) (T, error) {
	for _, one := range list {
		if strings.EqualFold(text, lang.L(string(one))) || strings.EqualFold(text, string(one)) {
			return one, nil
		}
	}
	return "", prose.Errorf("%s: %s", lang.L("One of"), strings.Join(words(list), ", "))
}

func setKind(_ *trip.Trip, x *trip.Gear, text string) error {
	kind, err := pick(text, trip.GearKinds())
	if err == nil {
		x.Become(kind)
	}
	return err
}

func setFuel(_ *trip.Trip, x *trip.Gear, text string) error {
	if err := needs(x, text, trip.Stove); err != nil || text == "" {
		return err
	}
	fuel, err := pick(text, trip.FuelKinds())
	if err == nil {
		x.Fuel = fuel
	}
	return err
}

func groupOfGear(t *trip.Trip, x *trip.Gear) string {
	if group := t.Group(x.Group); group != nil {
		return group.Name
	}
	return lang.L("everybody's")
}

func groupChoices(t *trip.Trip, _ *trip.Gear) []string {
	names := []string{lang.L("everybody's")}
	for _, group := range t.Groups {
		names = append(names, group.Name)
	}
	return names
}

func setGroup(t *trip.Trip, x *trip.Gear, text string) error {
	if text == "" || strings.EqualFold(text, lang.L("everybody's")) {
		x.Group = 0
		return nil
	}
	for _, group := range t.Groups {
		if strings.EqualFold(group.Name, text) {
			x.Group = group.ID
			return nil
		}
	}
	return prose.Errorf("%s: %s", lang.L("One of"), strings.Join(groupChoices(t, x), ", "))
}

type metal struct {
	name string
	heat float64
}

func metals() []metal {
	return []metal{{lang.L("aluminium"), trip.Aluminium}, {lang.L("steel"), trip.Steel}, {lang.L("titanium"), trip.Titanium}}
}

func metalNames() []string {
	var names []string
	for _, m := range metals() {
		names = append(names, m.name)
	}
	return names
}

// metalText names what a pot is made of by its heat capacity.
func metalText(heat float64) string {
	for _, m := range metals() {
		if m.heat == heat {
			return m.name
		}
	}
	return written.Short(heat) + " kJ/(kg K)"
}

func setMetal(_ *trip.Trip, x *trip.Gear, text string) error {
	if err := needs(x, text, trip.Pot); err != nil || text == "" {
		return err
	}
	for _, m := range metals() {
		if strings.EqualFold(text, m.name) {
			x.HeatCapacity = m.heat
			return nil
		}
	}
	heat, err := typed.Number(strings.TrimSuffix(text, " kJ/(kg K)"))
	if err != nil || heat <= 0 {
		return errors.New(lang.L("One of") + ": " + strings.Join(metalNames(), ", ") + ", " + lang.L("or its heat capacity in kJ/(kg K), such as 0.9"))
	}
	x.HeatCapacity = heat
	return nil
}
