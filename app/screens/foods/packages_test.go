package foods

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestPackagesAreReadFromOneLine(t *testing.T) {
	for text, want := range map[string][]trip.Package{
		"":                  nil,
		"500":               {{Net: 500 * units.Gram}},
		"500 g":             {{Net: 500 * units.Gram}},
		"500 g 2.40":        {{Net: 500 * units.Gram, Price: optional.Of(units.Money(240))}},
		"0,5 kg 2,40":       {{Net: 500 * units.Gram, Price: optional.Of(units.Money(240))}},
		"500g 2.40; 1kg":    {{Net: 500 * units.Gram, Price: optional.Of(units.Money(240))}, {Net: units.Kilogram}},
		" 250 g 1 ; ; 2 lb": {{Net: 250 * units.Gram, Price: optional.Of(units.Money(100))}, {Net: units.FromGrams(2 * 453.59237)}},
	} {
		got, err := readPackages(text, &trip.Food{}, "EUR", units.Metric)
		if err != nil || len(got) != len(want) {
			t.Errorf("%q: %+v, %v", text, got, err)
			continue
		}
		for i := range want {
			if got[i] != want[i] {
				t.Errorf("%q: package %d is %+v, want %+v", text, i+1, got[i], want[i])
			}
		}
	}
	for _, text := range []string{"a bag", "500 g for 2", "2.40 EUR", "500 g 2.405", "-500 g", "500 stone 2"} {
		if got, err := readPackages(text, &trip.Food{}, "EUR", units.Metric); err == nil {
			t.Errorf("%q is taken for %+v", text, got)
		}
	}
}

// What is written and stored again unchanged changes nothing, though what is
// shown is rounded.
func TestPackagesStoredUnchangedStayTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		system := rapid.SampledFrom([]units.System{units.Metric, units.US}).Draw(rt, "units")
		var packages []trip.Package
		for range rapid.IntRange(0, 5).Draw(rt, "count") {
			sold := trip.Package{
				Net: units.Mass(rapid.Int64Range(50_000, 30_000_000).Draw(rt, "net")), Shop: "market", Wrapping: 3 * units.Gram,
				InStock: optional.Of(rapid.IntRange(0, 9).Draw(rt, "stock")),
			}
			if rapid.Bool().Draw(rt, "priced") {
				sold.Price = optional.Of(units.Money(rapid.Int64Range(0, 100_000).Draw(rt, "price")))
			}
			packages = append(packages, sold)
		}
		got, err := readPackages(packagesText(packages, "EUR", system), &trip.Food{Packages: packages}, "EUR", system)
		if err != nil || len(got) != len(packages) {
			rt.Fatalf("%+v, %v", got, err)
		}
		for i := range packages {
			if got[i] != packages[i] {
				rt.Fatalf("package %d was %+v, is %+v", i+1, packages[i], got[i])
			}
		}
	})
}

// Bottles state what is in them by volume: 16.9 fl oz is half a litre (NIST
// Handbook 44, Appendix C: 1 fl oz is 29.5735295625 mL), of oil of 0.92 g/mL.
func TestABottleIsReadByItsVolume(t *testing.T) {
	oil := &trip.Food{Name: "Olive oil", Density: optional.Of(0.92)}
	for text, grams := range map[string]float64{
		"16.9 fl oz": 16.9 * 29.5735295625 * 0.92, "16.9 FL. OZ. 7.50": 16.9 * 29.5735295625 * 0.92, "16.9floz": 16.9 * 29.5735295625 * 0.92, "500 ml": 460, "1 qt 9": 946.352946 * 0.92, "16 oz": 16 * 28.349523125,
	} {
		for _, system := range []units.System{units.US, units.Metric} {
			got, err := readPackages(text, oil, "USD", system)
			if err != nil || len(got) != 1 || math.Abs(got[0].Net.Grams()-grams) > 0.001 {
				t.Errorf("%q in %s: %+v, %v, want %v g", text, system, got, err, grams)
			}
		}
	}
	if got, err := readPackages("16.9 fl oz", &trip.Food{Name: "Syrup"}, "USD", units.US); err == nil || !strings.Contains(err.Error(), "density of Syrup") {
		t.Errorf("without a density it is taken for %+v, %v", got, err)
	}
}

func FuzzReadPackages(f *testing.F) {
	for _, text := range []string{"500 g 2.40; 1 kg 4.10", ";;", "1e9 g", "0.5 lb 3", "99999999999 kg 1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		packages, err := readPackages(text, &trip.Food{}, "EUR", units.Metric)
		if err != nil {
			return
		}
		for _, sold := range packages {
			if price, known := sold.Price.Get(); sold.Net < 0 || known && price < 0 {
				t.Errorf("%q gives %+v", text, sold)
			}
		}
	})
}
