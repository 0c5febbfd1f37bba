package tripbook

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestPlainDecimal(t *testing.T) {
	cases := []struct{ text, want, wrong string }{
		{"12", "12", ""},
		{" 12.50 ", "12.50", ""},
		{"12,5", "12.5", ""},
		{",5", ".5", ""},
		{"-3,25", "-3.25", ""},
		{"−3", "-3", ""}, // a typographic minus
		{"1.2E-3", "1.2E-3", ""},
		{"1,234.5", "1234.5", ""},
		{"1.234,5", "1234.5", ""},
		{"1,234,567", "1234567", ""},
		{"1.234.567", "1234567", ""},
		{"1 234,5", "1234.5", ""},
		{"1'234.5", "1234.5", ""},
		{"1\u00a0234", "1234", ""},
		{"1\u202f234,5", "1234.5", ""},
		{"0,500", "0.500", ""},
		{"1.234", "1.234", ""}, // how the file itself writes numbers
		{"1,234", "", "can be read in two ways: write it without a comma"},
		{"12,34,5", "", "is not a number"},
		{"1.2.3", "", "is not a number"},
		{"", "", "is not a number"},
		{"ten", "", "is not a number"},
		{"1e", "", "is not a number"},
		{"0x10", "", "is not a number"},
		{"NaN", "", "is not a number"},
		{"Inf", "", "is not a number"},
		{"1/2", "", "is not a number"},
	}
	for _, c := range cases {
		if got, wrong := plainDecimal(c.text); got != c.want || wrong != c.wrong {
			t.Errorf("%q: %q %q, want %q %q", c.text, got, wrong, c.want, c.wrong)
		}
	}
}

// Factors: NIST Handbook 44 (2023) Appendix C; temperatures: NIST SP 811, B.8.
func TestQuantitiesInEveryUnit(t *testing.T) {
	mass := []struct {
		quantity *quantity
		text     string
		heading  string
		want     int64
		wrong    string
	}{
		{bodyMass, "1", "lb", 453592370 / 1000, ""}, // 453.592 37 g, to the milligram
		{bodyMass, "160", "lb", 72574779, ""},
		{bodyMass, "72.5", "kg", 72500000, ""},
		{bodyMass, "72,5 kg", "lb", 72500000, ""}, // the cell's own unit goes first
		{bodyMass, "160 lbs", "kg", 72574779, ""},
		{foodMass, "1", "oz", 28350, ""}, // 28.349 523 g
		{foodMass, "16", "oz", 453592, ""},
		{foodMass, "0.001", "g", 1, ""},
		{foodMass, "0.0004", "g", 0, ""},
		{smallVolume, "1", "fl oz", 29574, ""}, // 29.573 529 6 mL
		{packVolume, "1", "qt", 946353, ""},    // 0.946 352 9 L
		{foodMass, "5 fl oz", "g", 0, "has a unit that does not belong here"},
		{foodMass, "1e13", "g", 0, "is too large"},
		{foodMass, "1e300", "g", 0, "is too large or too small"},
	}
	for _, c := range mass {
		heading, ok := c.quantity.heading(c.heading)
		if !ok {
			t.Fatalf("no unit %s", c.heading)
		}
		if got, wrong := c.quantity.whole(c.text, heading); got != c.want || wrong != c.wrong {
			t.Errorf("%s in %s: %d %q, want %d %q", c.text, c.heading, got, wrong, c.want, c.wrong)
		}
	}
	plain := []struct {
		quantity      *quantity
		text, heading string
		want          float64
	}{
		{distance, "1", "mi", 1609.344},
		{distance, "26.2", "miles", 26.2 * 1609.344},
		{height, "1", "ft", 0.3048},
		{height, "14,505", "ft", math.NaN()}, // 14.505 or 14505: refused
		{stature, "70", "in", 1.778},
		{stature, "178", "cm", 1.78},
		{stature, "1.78 m", "cm", 1.78},
		{temperature, "212", "°F", 100},
		{temperature, "32", "F", 0},
		{temperature, "-40", "degF", -40},
		{temperature, "98.6", "°F", 37},
		{warming, "9", "°F more", 5},
		{energy, "1000 kJ", "kcal", 1000 / 4.184},
		{share, "15%", "", 0.15},
		{share, "15", "%", 0.15},
		{share, "0.15", "", 0.15},
		{share, "12,5 %", "", 0.125},
	}
	for _, c := range plain {
		heading, ok := c.quantity.heading(c.heading)
		if !ok {
			t.Fatalf("no unit %s", c.heading)
		}
		got, wrong := c.quantity.float(c.text, heading)
		if math.IsNaN(c.want) != (wrong != "") || wrong == "" && math.Abs(got-c.want) > 1e-12*math.Abs(c.want) {
			t.Errorf("%s in %s: %v %q, want %v", c.text, c.heading, got, wrong, c.want)
		}
	}
}

// What is written in any unit is the same number again, bit by bit, however
// odd the number is.
func TestEveryNumberComesBackFromEveryUnit(t *testing.T) {
	all := []*quantity{bodyMass, foodMass, smallVolume, packVolume, distance, height, stature, temperature, warming, energy, share}
	rapid.Check(t, func(rt *rapid.T) {
		q := rapid.SampledFrom(all).Draw(rt, "quantity")
		u := rapid.SampledFrom(q.units).Draw(rt, "unit")
		float := rapid.Float64Range(-1e5, 1e5).Filter(func(f float64) bool { return f == 0 || math.Abs(f) > 1e-9 }).Draw(rt, "float")
		if got, wrong := q.float(u.writeFloat(float), u); wrong != "" || got != float {
			rt.Fatalf("%v written as %s %s came back as %v %s", float, u.writeFloat(float), u.symbol, got, wrong)
		}
		whole := rapid.Int64Range(-largestWhole/1000, largestWhole/1000).Draw(rt, "whole")
		if got, wrong := q.whole(u.writeWhole(whole), u); wrong != "" || got != whole {
			rt.Fatalf("%d written as %s %s came back as %d %s", whole, u.writeWhole(whole), u.symbol, got, wrong)
		}
	})
}

func TestNumbersAreWrittenWithTheDigitsTheyNeed(t *testing.T) {
	pounds, grams := bodyMass.in(units.US), foodMass.in(units.Metric)
	for got, want := range map[string]string{
		pounds.writeWhole(453592370):                     "1000",
		pounds.writeWhole(70_000_000):                    "154.323584",
		grams.writeWhole(12_500):                         "12.5",
		temperature.in(units.US).writeFloat(10):          "50",
		distance.in(units.Metric).writeFloat(12_300):     "12.3",
		distance.in(units.Metric).writeFloat(13535.1274): "13.5351274",
		share.in(units.Metric).writeFloat(1.0 / 6):       "0.16666666666666666",
	} {
		if got != want {
			t.Errorf("wrote %s, want %s", got, want)
		}
	}
}

// Day numbers: ECMA-376 Part 1, 18.17.4.1; 2000-01-01 is 36526 in the 1900
// system, 1462 less in the 1904 system.
func TestParseDate(t *testing.T) {
	cases := []struct {
		text     string
		from1904 bool
		want     string
		refused  bool
	}{
		{"36526", false, "2000-01-01", false},
		{"46223", false, "2026-07-20", false},
		{"46223.75", false, "2026-07-20", false},
		{"44761", true, "2026-07-20", false},
		{"2026-07-20", false, "2026-07-20", false},
		{"2026-7-2", false, "2026-07-02", false},
		{"2026-07-20T00:00:00", false, "2026-07-20", false},
		{"20.07.2026", false, "2026-07-20", false},
		{"20. 7. 2026", false, "2026-07-20", false},
		{"20/07/2026", false, "2026-07-20", false},
		{"07/20/2026", false, "2026-07-20", false},
		{"7/7/2026", false, "2026-07-07", false},
		{"20 July 2026", false, "2026-07-20", false},
		{"Mon 20 Jul 2026", false, "2026-07-20", false},
		{"July 20, 2026", false, "2026-07-20", false},
		{"Monday, July 20, 2026", false, "2026-07-20", false},
		{"3/4/2026", false, "", true},
		{"2026-02-30", false, "", true},
		{"29.02.2026", false, "", true},
		{"1000", false, "", true}, // 1902
		{"999999", false, "", true},
		{"20 Jum 2026", false, "", true},
		{"tomorrow", false, "", true},
		{"", false, "", true},
	}
	for _, c := range cases {
		got, wrong := parseDate(c.text, c.from1904)
		if (wrong != "") != c.refused || got.String() != c.want {
			t.Errorf("%q: %s %q, want %s", c.text, got, wrong, c.want)
		}
	}
}

func TestYesAndNoInManySpellings(t *testing.T) {
	c := yesNo()
	for text, want := range map[string]bool{
		"yes": true, "Y": true, " TRUE ": true, "1": true, "x": true, "X": true, "ja": true, "oui": true, "sí": true, "✓": true,
		"no": false, "N": false, "FALSE": false, "0": false, "-": false, "nein": false, "non": false,
	} {
		if got, wrong := c.read(text, nil, unit{}); wrong != "" || got != want {
			t.Errorf("%q: %v %s", text, got, wrong)
		}
	}
	if _, wrong := c.read("maybe", nil, unit{}); wrong == "" {
		t.Error("maybe was taken for an answer")
	}
}

func TestListsKeepWhatTheirItemsHold(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		item := rapid.StringOf(rapid.SampledFrom([]rune(`ab ;,"` + "\n")))
		items := rapid.SliceOf(item).Draw(rt, "items")
		for between, separators := range map[string]string{"; ": ";,\n", "\n": "\n"} {
			got := splitList(joinList(items, between), separators)
			if len(got) != len(items) {
				rt.Fatalf("%q became %q", items, got)
			}
			for i := range items {
				if got[i] != items[i] {
					rt.Fatalf("%q became %q", items, got)
				}
			}
		}
	})
}

func TestPeopleWriteListsAsTheyLike(t *testing.T) {
	c := listOf(allergy(), "allergens")
	got, wrong := c.read(" Peanuts (severe),milk ;\nkiwi;; ", newScope(), unit{})
	if wrong != "" || len(got) != 3 || got[0] != (trip.Allergy{Allergen: trip.Peanuts, Severe: true}) || got[1].Allergen != trip.Milk || got[2].Allergen != "kiwi" {
		t.Errorf("%v %s", got, wrong)
	}
	for _, text := range []string{"peanuts severe", "severe", "(severe)", "peanuts (very severe)"} {
		if got, wrong := c.read(text, newScope(), unit{}); wrong == "" {
			t.Errorf("%q was read as %v: its severity would be lost", text, got)
		}
	}
}
