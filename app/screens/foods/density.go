package foods

import (
	"fyne.io/fyne/v2/lang"

	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// gramsPerMillilitre is one ounce a US cup, by the exact factors of NIST
// Handbook 44, Appendix C.
const gramsPerMillilitre = 28.349523125 / 236.5882365

// densityField is the bulk density as a packer measures it: what a millilitre,
// or a cup, weighs.
func densityField(u units.System) field {
	unit, factor, decimals := "g/ml", 1.0, 2
	if u == units.US {
		unit, factor, decimals = lang.L("oz a cup"), gramsPerMillilitre, 1
	}
	return field{
		title: lang.L("Bulk"), unit: unit, width: 90,
		number: func(f *trip.Food) float64 { return f.Density.Or(-1) },
		text: func(f *trip.Food) string {
			if density, known := f.Density.Get(); known {
				return written.Number(density/factor, decimals)
			}
			return notKnown
		},
		set: func(f *trip.Food, text string) error {
			if isBlank(text) {
				f.Density = optional.Unknown[float64]()
				return nil
			}
			value, err := typed.Number(text)
			if err == nil {
				f.Density = optional.Of(value * factor)
			}
			return err
		},
	}
}
