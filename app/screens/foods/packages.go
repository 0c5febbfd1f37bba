package foods

import (
	"errors"
	"regexp"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// packagesField writes and reads how a food is sold in one line:
// "500 g 2.40; 1 kg 4.10".
func packagesField(b *bench.Bench) field {
	u := b.Units()
	return field{
		title: lang.L("Packages"), width: 180,
		text: func(f *trip.Food) string { return packagesText(f.Packages, b.Trip().Currency, u) },
		set: func(f *trip.Food, text string) error {
			packages, err := readPackages(text, f, b.Trip().Currency, u)
			if err == nil {
				f.Packages = packages
			}
			return err
		},
	}
}

func packagesText(packages []trip.Package, currency string, u units.System) string {
	parts := make([]string, len(packages))
	for i, sold := range packages {
		parts[i] = written.Quantity(prose.Net(sold.Net), u)
		if price, known := sold.Price.Get(); known {
			parts[i] += " " + written.Money(price, currency)
		}
	}
	return strings.Join(parts, "; ")
}

// packageExample is how a package is typed in the reader's units.
func packageExample(u units.System) string {
	if u == units.US {
		return "16 oz " + written.Number(2.4, 2)
	}
	return "500 g " + written.Number(2.4, 2)
}

// soldAs parts the net mass with its unit from the price.
var soldAs = regexp.MustCompile(`^([0-9][0-9.,]*\s*(?:[fF][lL]\.?\s*[oO][zZ]\.?|[a-zA-Z]*))(?:\s+([0-9][0-9.,]*))?$`)

// readPackages keeps shop, stock and wrapping of the packages that stay in
// their places.
func readPackages(text string, food *trip.Food, currency string, u units.System) ([]trip.Package, error) {
	before := food.Packages
	var packages []trip.Package
	for i, part := range strings.Split(text, ";") {
		if isBlank(part) {
			continue
		}
		found := soldAs.FindStringSubmatch(strings.TrimSpace(part))
		if found == nil {
			return nil, errors.New(lang.X("not-a-package", "{{.Text}} is not a package such as {{.Example}}", map[string]any{"Text": strings.TrimSpace(part), "Example": packageExample(u)}))
		}
		sold := trip.Package{}
		if i < len(before) {
			sold = before[i]
		}
		net, err := netMass(found[1], food, u)
		if err != nil {
			return nil, err
		}
		shown := written.Quantity(prose.Net(sold.Net), u) // rounded: keep what stayed
		if found[1] != shown && written.Quantity(prose.Net(net), u) != shown {
			sold.Net = net
		}
		sold.Price = optional.Unknown[units.Money]()
		if found[2] != "" {
			price, err := typed.Money(found[2], currency)
			if err != nil {
				return nil, err
			}
			sold.Price = optional.Of(price)
		}
		packages = append(packages, sold)
	}
	return packages, nil
}

// netMass reads what is in a package: a mass, or a volume as bottles state it,
// which is a mass once the food's density is known.
func netMass(text string, food *trip.Food, u units.System) (units.Mass, error) {
	if !typed.IsVolume(text) {
		return typed.Mass(text, u, false)
	}
	volume, err := typed.Volume(text, u, false)
	if err != nil {
		return 0, err
	}
	density, known := food.Density.Get()
	if !known {
		return 0, prose.Errorf("%s is a volume, and the density of %s is not known: enter the mass, or its density first", text, food.Name)
	}
	return units.FromGrams(volume.Millilitres() * density), nil
}
