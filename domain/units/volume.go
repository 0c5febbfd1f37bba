package units

import (
	"fmt"
	"math"
	"strconv"
)

// Volume is an exact volume in whole microlitres, kept like Mass so that
// water of eleven eaters adds up.
type Volume int64

// Volumes to multiply with.
const (
	Microlitre Volume = 1
	Millilitre        = 1000 * Microlitre
	Litre             = 1000 * Millilitre
)

// Exact factors of NIST Handbook 44, Appendix C.
const (
	litresPerQuart = 0.946352946
	litresPerUSCup = 0.2365882365
)

// FromMillilitres rounds to the nearest microlitre.
func FromMillilitres(millilitres float64) Volume {
	return Volume(math.Round(millilitres * float64(Millilitre)))
}

// FromLitres rounds to the nearest microlitre.
func FromLitres(litres float64) Volume { return FromMillilitres(litres * 1000) }

// Millilitres gives the volume in millilitres.
func (v Volume) Millilitres() float64 { return float64(v) / float64(Millilitre) }

// Litres gives the volume in litres.
func (v Volume) Litres() float64 { return float64(v) / float64(Litre) }

// Quarts gives the volume in US liquid quarts.
func (v Volume) Quarts() float64 { return v.Litres() / litresPerQuart }

// Cups gives the volume in US customary cups.
func (v Volume) Cups() float64 { return v.Litres() / litresPerUSCup }

// Scale multiplies by a factor and rounds to the nearest microlitre.
func (v Volume) Scale(factor float64) Volume { return Volume(math.Round(float64(v) * factor)) }

// String writes the volume in metric.
func (v Volume) String() string { return v.Format(Metric) }

// Format writes millilitres below one litre and litres above; cups and quarts
// for US readers.
func (v Volume) Format(system System) string {
	if system == US {
		if cups := v.Cups(); math.Round(math.Abs(cups)*10) < 40 {
			return trimFloat(cups, 1) + " cups"
		}
		return trimFloat(v.Quarts(), 1) + " qt"
	}
	if millilitres := v.Millilitres(); math.Round(math.Abs(millilitres)) < 1000 {
		return trimFloat(millilitres, 0) + " mL"
	}
	return strconv.FormatFloat(v.Litres(), 'f', 1, 64) + " L"
}

// MarshalJSON writes millilitres as a decimal number.
func (v Volume) MarshalJSON() ([]byte, error) { return thousandths(int64(v)), nil }

// UnmarshalJSON reads millilitres as a decimal number.
func (v *Volume) UnmarshalJSON(data []byte) error {
	n, err := readThousandths(data)
	if err != nil {
		return fmt.Errorf("volume in millilitres: %w", err)
	}
	*v = Volume(n)
	return nil
}
