package foods

import (
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
		got, err := readPackages(text, nil, "EUR", units.Metric)
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
		if got, err := readPackages(text, nil, "EUR", units.Metric); err == nil {
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
		got, err := readPackages(packagesText(packages, "EUR", system), packages, "EUR", system)
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

func FuzzReadPackages(f *testing.F) {
	for _, text := range []string{"500 g 2.40; 1 kg 4.10", ";;", "1e9 g", "0.5 lb 3", "99999999999 kg 1"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		packages, err := readPackages(text, nil, "EUR", units.Metric)
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
