// Package units holds the quantities of the trade: mass, volume, money and
// dates as exact integers, so that sums agree to the gram and to the cent, and
// energy, temperature, time and distance as plain numbers that carry their
// unit in the type. Everything is SI inside; Format and Parse are the edges.
package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Mass is an exact mass in whole milligrams, so that a pinch of salt times
// eleven eaters adds up to what the bag holds.
type Mass int64

// Masses to multiply with, as with 250*units.Gram.
const (
	Milligram Mass = 1
	Gram           = 1000 * Milligram
	Kilogram       = 1000 * Gram
)

// Exact by the international agreement of 1959 (NIST SP 811, Appendix B).
const (
	gramsPerOunce = 28.349523125
	gramsPerPound = 453.59237
)

// FromGrams rounds a number of grams to the nearest milligram.
func FromGrams(grams float64) Mass { return Mass(math.Round(grams * float64(Gram))) }

// FromKilograms rounds a number of kilograms to the nearest milligram.
func FromKilograms(kilograms float64) Mass { return FromGrams(kilograms * 1000) }

// Grams gives the mass in grams.
func (m Mass) Grams() float64 { return float64(m) / float64(Gram) }

// Kilograms gives the mass in kilograms.
func (m Mass) Kilograms() float64 { return float64(m) / float64(Kilogram) }

// Pounds gives the mass in avoirdupois pounds.
func (m Mass) Pounds() float64 { return m.Grams() / gramsPerPound }

// Ounces gives the mass in avoirdupois ounces.
func (m Mass) Ounces() float64 { return m.Grams() / gramsPerOunce }

// CeilGrams gives the mass in whole grams, rounded up: what a planner must
// reckon with when it may not promise too little.
func (m Mass) CeilGrams() int64 {
	grams := int64(m / Gram)
	if m%Gram > 0 {
		grams++
	}
	return grams
}

// Scale multiplies by a factor and rounds to the nearest milligram.
func (m Mass) Scale(factor float64) Mass { return Mass(math.Round(float64(m) * factor)) }

// String writes the mass as a person on a packing night reads it in metric.
func (m Mass) String() string { return m.Format(Metric) }

// Format writes the mass in the reader's system: grams without decimals below
// ten kilograms (tenths below ten grams), kilograms above; ounces and pounds
// for US readers. The unit is chosen by the rounded figure, so that what is
// read back from the text is written as the same text.
func (m Mass) Format(system System) string {
	if system == US {
		if ounces := math.Abs(m.Ounces()); math.Round(ounces*10) < 160 {
			return trimFloat(m.Ounces(), 1) + " oz"
		}
		return trimFloat(m.Pounds(), 1) + " lb"
	}
	grams := m.Grams()
	switch {
	case math.Abs(grams) < 10:
		return trimFloat(grams, 1) + " g"
	case math.Round(math.Abs(grams)) < 10000:
		return trimFloat(grams, 0) + " g"
	default:
		return strconv.FormatFloat(grams/1000, 'f', 1, 64) + " kg"
	}
}

// FormatWeighed writes the mass as a kitchen scale shows it: for US readers in
// ounces whatever the amount, since a tenth of a pound is coarser than a scale.
func (m Mass) FormatWeighed(system System) string {
	if system != US {
		return m.Format(system)
	}
	if math.Abs(m.Ounces()) < 1 {
		return trimFloat(m.Ounces(), 2) + " oz"
	}
	return trimFloat(m.Ounces(), 1) + " oz"
}

// FormatNet writes the mass as a package states it: for US readers in pounds
// where they come out whole, else in ounces.
func (m Mass) FormatNet(system System) string {
	if system != US {
		return m.Format(system)
	}
	if pounds := m.Pounds(); math.Round(pounds) >= 1 && math.Abs(pounds-math.Round(pounds)) < 0.005 {
		return trimFloat(pounds, 0) + " lb"
	}
	return trimFloat(m.Ounces(), 2) + " oz"
}

// MarshalJSON writes grams as a decimal number.
func (m Mass) MarshalJSON() ([]byte, error) { return thousandths(int64(m)), nil }

// UnmarshalJSON reads grams as a decimal number; it refuses what is finer
// than a milligram or too large to be a mass on somebody's back.
func (m *Mass) UnmarshalJSON(data []byte) error {
	n, err := readThousandths(data)
	if err != nil {
		return fmt.Errorf("mass in grams: %w", err)
	}
	*m = Mass(n)
	return nil
}

// trimFloat writes at most the given decimals and no trailing zeros.
func trimFloat(value float64, decimals int) string {
	text := strconv.FormatFloat(value, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
