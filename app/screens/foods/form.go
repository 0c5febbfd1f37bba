package foods

import (
	"cmp"
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// form enters a food from its label. It checks while one types whether the
// energy fits the nutrients.
type form struct {
	side                                                                        *sidePanel
	name, per, energy, fat, carbohydrate, sugar, fibre, protein, salt, packages *widget.Entry
	kind                                                                        *widget.Select
	saltName                                                                    *look.Text
	check                                                                       *look.Note
	content                                                                     fyne.CanvasObject
}

// The two kinds of label, by what carbohydrate means and how salt is told.
const (
	fibreApart = iota
	fibreWithin
)

func newForm(side *sidePanel) *form {
	f := &form{side: side, check: look.NewNote(), saltName: look.NewText("", look.Body, look.Ink)}
	rows := container.New(layout.NewFormLayout())
	row := func(objects ...fyne.CanvasObject) { rows.Objects = append(rows.Objects, objects...) } // laid out when it is seen
	entry := func(title string) *widget.Entry {
		e := widget.NewEntry()
		e.OnChanged = func(string) { f.judge() }
		e.OnSubmitted = func(string) { f.add() }
		row(bench.Inset(look.NewText(title, look.Body, look.Ink)), e)
		return e
	}
	f.name = entry(lang.L("Name"))
	f.kind = widget.NewSelect([]string{lang.L("fibre apart, salt in g (EU)"), lang.L("fibre within, sodium in mg (US)")}, func(string) { f.changeKind() })
	row(bench.Inset(look.NewText(lang.L("Label"), look.Body, look.Ink)), f.kind)
	f.per = entry(lang.L("Figures for, g"))
	f.energy = entry(lang.L("Energy, kcal or kJ"))
	f.fat, f.carbohydrate = entry(lang.L("Fat, g")), entry(lang.L("Carbohydrate, g"))
	f.sugar, f.fibre = entry(lang.L("of which sugar, g")), entry(lang.L("Fibre, g"))
	f.protein = entry(lang.L("Protein, g"))
	f.salt = widget.NewEntry()
	f.salt.OnChanged, f.salt.OnSubmitted = func(string) { f.judge() }, func(string) { f.add() }
	row(bench.Inset(f.saltName), f.salt)
	f.packages = entry(lang.L("Packages"))
	f.packages.SetPlaceHolder(packageExample(side.screen.bench.Units()))
	add := widget.NewButton(lang.L("Add to the trip, then its allergens"), f.add)
	add.Importance = widget.HighImportance
	buttons := container.NewHBox(add, widget.NewButton(lang.L("Cancel"), side.closeForm))
	f.content = container.NewBorder(container.NewVBox(bench.Inset(look.NewHeading(lang.L("A food from its label"))), rows), nil, nil, nil,
		container.NewVBox(f.check, buttons))
	return f
}

// open begins a new food, the kind of label by the leader's units.
func (f *form) open() {
	for _, entry := range []*widget.Entry{f.name, f.energy, f.fat, f.carbohydrate, f.sugar, f.fibre, f.protein, f.salt, f.packages} {
		entry.SetText("")
	}
	f.per.SetText("100")
	f.kind.SetSelectedIndex(fibreApart)
	if f.side.screen.bench.Units() == units.US {
		f.kind.SetSelectedIndex(fibreWithin)
	}
	f.judge()
}

func (f *form) changeKind() {
	if f.kind.SelectedIndex() == fibreWithin {
		f.saltName.SetContent(lang.L("Sodium, mg"))
	} else {
		f.saltName.SetContent(lang.L("Salt, g"))
	}
	f.judge()
}

// judge says whether the energy fits the nutrients typed so far.
func (f *form) judge() {
	n, err := f.nutrients()
	switch {
	case isBlank(f.energy.Text):
		f.check.Set(lang.L("The energy is checked against the nutrients as you type."), look.Quiet, false)
	case err != nil:
		f.check.Set(written.Error(err), look.Ochre, false)
	default:
		text, tone := energyWords(&n, false)
		f.check.Set(text, tone, false)
	}
}

// nutrients reads the figures and brings them to 100 g. What is left empty is
// not known.
func (f *form) nutrients() (trip.Nutrients, error) {
	per, err := typed.Number(f.per.Text)
	if err != nil || per <= 0 {
		return trip.Nutrients{}, errors.New(lang.L("The figures are for a number of grams, such as 100 or the serving of the label."))
	}
	to100 := 100 / per
	kcal, err := energy(f.energy.Text)
	if err != nil {
		return trip.Nutrients{}, err
	}
	n := trip.Nutrients{Kcal: units.Kcal(float64(kcal) * to100), CarbConvention: trip.AvailableCarbohydrate}
	sodium := to100 * 1000 / foodenergy.SaltPerSodium
	if f.kind.SelectedIndex() == fibreWithin {
		n.CarbConvention, sodium = trip.TotalCarbohydrate, to100
	}
	for _, part := range []struct {
		entry  *widget.Entry
		into   *optional.Value[float64]
		factor float64
	}{
		{f.fat, &n.FatGrams, to100}, {f.carbohydrate, &n.CarbGrams, to100}, {f.sugar, &n.SugarGrams, to100},
		{f.fibre, &n.FibreGrams, to100}, {f.protein, &n.ProteinGrams, to100}, {f.salt, &n.SodiumMilligrams, sodium},
	} {
		if isBlank(part.entry.Text) {
			continue
		}
		value, err := typed.Number(part.entry.Text)
		if err != nil {
			return n, err
		}
		*part.into = optional.Of(value * part.factor)
	}
	return n, nil
}

// add puts the food into the trip and goes on to its allergens.
func (f *form) add() {
	s := f.side.screen
	n, err := f.nutrients()
	packages, errPackages := readPackages(f.packages.Text, &trip.Food{Name: f.name.Text}, s.bench.Trip().Currency, s.bench.Units())
	if strings.TrimSpace(f.name.Text) == "" {
		err = errors.New(lang.L("A food needs a name."))
	}
	if err = cmp.Or(err, errPackages); err != nil {
		s.bench.Say(written.Error(err))
		return
	}
	food := foodOfLabel(s.bench.Units())
	food.Name, food.Per100g, food.Packages = strings.TrimSpace(f.name.Text), n, packages
	id, err := s.add(food)
	if err != nil {
		return
	}
	f.content.Hide()
	s.selectFood(id)
	f.side.show(id)
	f.side.readLabel()
}

// usualQ10 is common practice within the published range of 1.5 to 4
// (Labuza 1982; Taoukis, Labuza and Saguy 1997, from memory).
const usualQ10 = 2
