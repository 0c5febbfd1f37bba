package units

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestFormats(t *testing.T) {
	for _, c := range []struct{ have, want string }{
		{Celsius(-3.4).Format(Metric), "-3 °C"}, {Celsius(-0.2).Format(Metric), "0 °C"}, {Celsius(20).Format(US), "68 °F"},
		{Metres(12_345).FormatDistance(Metric), "12.3 km"}, {Metres(1609.344).FormatDistance(US), "1 mi"},
		{Metres(2345.6).FormatHeight(Metric), "2346 m"}, {Metres(304.8).FormatHeight(US), "1000 ft"},
		{(350 * Millilitre).Format(Metric), "350 mL"}, {(2500 * Millilitre).String(), "2.5 L"}, {Litre.Format(Metric), "1.0 L"},
		{FromMillilitres(473.176473).Format(US), "2 cups"}, {FromLitres(1.892705892).Format(US), "2 qt"},
	} {
		if c.have != c.want {
			t.Errorf("have %q, want %q", c.have, c.want)
		}
	}
}

func TestSystemsAreKnown(t *testing.T) {
	if !Metric.Known() || !US.Known() || System("").Known() || System("imperial").Known() {
		t.Error("the two systems are metric and us")
	}
}

// What a reader types in their units and reads back must be what they typed.
func TestConversionsThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(-10_000, 10_000).Draw(t, "value")
		for name, back := range map[string]float64{
			"miles":      FromMiles(value).Miles(),
			"feet":       FromFeet(value).Feet(),
			"fahrenheit": FromFahrenheit(value).Fahrenheit(),
		} {
			if math.Abs(back-value) > 1e-8 {
				t.Errorf("%s: %v came back as %v", name, value, back)
			}
		}
		if have := FromKilograms(value).Kilograms(); math.Abs(have-value) > 0.51e-6 {
			t.Errorf("%v kg came back as %v", value, have)
		}
		if have := FromLitres(value).Litres(); math.Abs(have-value) > 0.51e-6 {
			t.Errorf("%v L came back as %v", value, have)
		}
	})
}
