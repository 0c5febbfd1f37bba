package settings

import (
	"errors"
	"fmt"
	"strconv"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// bagField is one thing the table holds of a kind of bag.
type bagField struct {
	name        string // of its JSON form, empty for what is worked out
	title, unit string
	width       float32
	number      func(b *trip.BagType) float64 // what it sorts by; nil: a text
	text        func(b *trip.BagType) string
	set         func(b *trip.BagType, text string) error // nil: worked out
	choices     []string
}

func bagFields(b *bench.Bench) []bagField {
	u := b.Units()
	liquids := []string{lang.L("yes"), lang.L("no")}
	return []bagField{
		{name: "name", title: lang.L("Name"), width: 200, text: func(b *trip.BagType) string { return b.Name },
			set: func(b *trip.BagType, text string) error { b.Name = text; return nil }},
		{name: "nominal_ml", title: lang.L("Size"), unit: typed.VolumeUnit(u, true), width: 90, number: func(b *trip.BagType) float64 { return float64(b.Nominal) },
			text: func(b *trip.BagType) string { return written.Bare(typed.VolumeText(b.Nominal, u, true)) },
			set: func(b *trip.BagType, text string) (err error) {
				b.Nominal, err = typed.Volume(text, u, true)
				return err
			}},
		{name: "fill", title: lang.L("Closes filled to"), unit: "%", width: 150, number: func(b *trip.BagType) float64 { return b.Fill },
			text: func(b *trip.BagType) string { return numerals(b.Fill * 100) },
			set: func(b *trip.BagType, text string) error {
				fill, err := typed.Percent(text)
				if err == nil && (fill <= 0 || fill > 1) {
					err = errors.New(lang.L("A bag closes when it is filled to more than 0 and at most 100 %."))
				}
				b.Fill = fill
				return err
			}},
		{title: lang.L("Holds"), unit: typed.VolumeUnit(u, true), width: 90, number: func(b *trip.BagType) float64 { return float64(holds(b)) },
			text: func(b *trip.BagType) string { return written.Bare(typed.VolumeText(holds(b), u, true)) }},
		{name: "tare_g", title: lang.X("empty-bag", "Empty"), unit: typed.MassUnit(u, false), width: 100, number: func(b *trip.BagType) float64 { return float64(b.Tare) },
			text: func(b *trip.BagType) string { return smallMass(u).text(b.Tare) },
			set: func(b *trip.BagType, text string) (err error) {
				b.Tare, err = typed.Mass(text, u, false)
				return err
			}},
		{name: "liquids", title: lang.L("Liquids and spreads"), width: 160, choices: liquids,
			text: func(b *trip.BagType) string {
				if b.Liquids {
					return liquids[0]
				}
				return liquids[1]
			},
			set: func(b *trip.BagType, text string) (err error) {
				b.Liquids, err = typed.Yes(text)
				return err
			}},
		{title: lang.L("In this plan"), width: 130, number: func(kind *trip.BagType) float64 { return float64(planned(b, kind)) },
			text: func(kind *trip.BagType) string {
				if b.Plan() == nil {
					return "–"
				}
				return strconv.Itoa(planned(b, kind))
			}},
		{title: lang.L("All empty ones"), unit: typed.MassUnit(u, false), width: 140, number: func(kind *trip.BagType) float64 { return float64(tare(b, kind)) },
			text: func(kind *trip.BagType) string {
				if b.Plan() == nil {
					return "–"
				}
				return fmt.Sprint(smallMass(u).text(tare(b, kind)))
			}},
	}
}

func holds(b *trip.BagType) units.Volume { return b.Nominal.Scale(b.Fill) }

// planned counts the bags of a kind that the plan fills.
func planned(b *bench.Bench, kind *trip.BagType) int {
	p := b.Plan()
	if p == nil {
		return 0
	}
	n := 0
	for i := range p.Bags.Bags {
		if p.Bags.Bags[i].Type == kind.Name {
			n++
		}
	}
	return n
}

// tare is what all the bags of a kind in the plan weigh empty.
func tare(b *bench.Bench, kind *trip.BagType) units.Mass {
	return kind.Tare * units.Mass(planned(b, kind))
}
