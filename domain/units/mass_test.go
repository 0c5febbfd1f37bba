package units

import (
	"encoding/json"
	"math"
	"math/big"
	"strconv"
	"testing"

	"pgregory.net/rapid"
)

func TestMassFormat(t *testing.T) {
	for _, c := range []struct {
		mass       Mass
		metric, us string
	}{
		{0, "0 g", "0 oz"}, {500 * Milligram, "0.5 g", "0 oz"}, {2500 * Milligram, "2.5 g", "0.1 oz"},
		{80 * Gram, "80 g", "2.8 oz"}, {9999 * Gram, "9999 g", "22 lb"}, {10 * Kilogram, "10.0 kg", "22 lb"},
		{454 * Gram, "454 g", "1 lb"}, {-80 * Gram, "-80 g", "-2.8 oz"}, {14250 * Gram, "14.2 kg", "31.4 lb"},
	} {
		if have := c.mass.Format(Metric); have != c.metric {
			t.Errorf("%d mg: have %s, want %s", c.mass, have, c.metric)
		}
		if have := c.mass.Format(US); have != c.us {
			t.Errorf("%d mg: have %s, want %s", c.mass, have, c.us)
		}
		if c.mass.String() != c.metric {
			t.Errorf("%d mg is spoken as %s", c.mass, c.mass)
		}
	}
}

// What is weighed or sold in ounces must not be told in tenths of a pound,
// which are 45 g.
func TestMassesOnScalesAndPackages(t *testing.T) {
	ounce := func(n float64) Mass { return FromGrams(n * 28.349523125) } // NIST Handbook 44, Appendix C
	for _, c := range []struct {
		mass         Mass
		weighed, net string
	}{
		{ounce(20.99), "21 oz", "20.99 oz"},
		{ounce(0.25), "0.25 oz", "0.25 oz"},
		{ounce(17.5), "17.5 oz", "17.5 oz"},
		{ounce(18), "18 oz", "18 oz"},
		{ounce(16), "16 oz", "1 lb"},
		{ounce(32), "32 oz", "2 lb"},
		{ounce(3.5), "3.5 oz", "3.5 oz"},
	} {
		if got := c.mass.FormatWeighed(US); got != c.weighed {
			t.Errorf("%v on a scale: %q, want %q", c.mass, got, c.weighed)
		}
		if got := c.mass.FormatNet(US); got != c.net {
			t.Errorf("%v on a package: %q, want %q", c.mass, got, c.net)
		}
		if metric := c.mass.Format(Metric); c.mass.FormatWeighed(Metric) != metric || c.mass.FormatNet(Metric) != metric {
			t.Errorf("%v in metric: %q and %q, want %q", c.mass, c.mass.FormatWeighed(Metric), c.mass.FormatNet(Metric), metric)
		}
	}
}

func TestCeilGrams(t *testing.T) {
	for mass, want := range map[Mass]int64{0: 0, 1: 1, 999: 1, 1000: 1, 1001: 2, -1: 0, -1000: -1, -1001: -1} {
		if have := mass.CeilGrams(); have != want {
			t.Errorf("%d mg: have %d g, want %d", mass, have, want)
		}
	}
}

func TestScaleRoundsToTheNearest(t *testing.T) {
	for _, c := range []struct {
		mass   Mass
		factor float64
		want   Mass
	}{{1000, 1.0 / 3, 333}, {1000, 2.0 / 3, 667}, {5, 0.5, 3}, {1000, 0, 0}, {-5, 0.5, -3}} {
		if have := c.mass.Scale(c.factor); have != c.want {
			t.Errorf("%d × %v: have %d, want %d", c.mass, c.factor, have, c.want)
		}
		if have := Volume(c.mass).Scale(c.factor); have != Volume(c.want) {
			t.Errorf("volume %d × %v: have %d, want %d", c.mass, c.factor, have, c.want)
		}
	}
}

// A number of grams in JSON is read to the milligram, whatever a float would
// make of it: 0.3 is no binary fraction, and neither is its sum with itself.
func TestMassJSONIsExact(t *testing.T) {
	for text, want := range map[string]Mass{
		"0": 0, "0.3": 300, "0.001": 1, "1e3": 1_000_000, "2.5E-1": 250, "-0.5": -500,
		"123456789.123": 123_456_789_123, "1000000000": 1_000_000_000_000, "0.1e1": 1000,
	} {
		var have Mass
		if err := json.Unmarshal([]byte(text), &have); err != nil || have != want {
			t.Errorf("%s g: have %d mg, %v; want %d", text, have, err, want)
		}
	}
	for _, text := range []string{"0.0005", "4503599627.371", "1e999999999", "1e-999999999", `"80"`, "null", "true", "[]", "1000000000.001"} {
		var have Mass
		if err := json.Unmarshal([]byte(text), &have); err == nil {
			t.Errorf("%s g was read as %d mg", text, have)
		}
		var volume Volume
		if err := json.Unmarshal([]byte(text), &volume); err == nil {
			t.Errorf("%s mL was read as %d", text, volume)
		}
	}
}

func TestMassAndVolumeSurviveJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-largestQuantity, largestQuantity).Draw(t, "thousandths")
		text, err := json.Marshal(Mass(n))
		if err != nil {
			t.Fatal(err)
		}
		var mass Mass
		var volume Volume
		if err := json.Unmarshal(text, &mass); err != nil || mass != Mass(n) {
			t.Fatalf("%d mg became %s became %d, %v", n, text, mass, err)
		}
		if err := json.Unmarshal(text, &volume); err != nil || volume != Volume(n) {
			t.Fatalf("%d µL became %s became %d, %v", n, text, volume, err)
		}
		written, ok := new(big.Rat).SetString(string(text))
		if !ok || written.Cmp(big.NewRat(n, 1000)) != 0 {
			t.Fatalf("%d/1000 is written %s", n, text)
		}
	})
}

func TestThousandthsOfTheSmallestNumber(t *testing.T) {
	if have := string(thousandths(math.MinInt64)); have != "-9223372036854775.808" {
		t.Errorf("have %s", have)
	}
}

func FuzzReadThousandths(f *testing.F) {
	for _, text := range []string{"0", "-1.5", "1e3", "1E-3", "0x1p4", "1_000", "1/3", ".5", "1e", "+1", "Inf", "00"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := readThousandths([]byte(text))
		if err != nil {
			return
		}
		if n > largestQuantity || n < -largestQuantity {
			t.Fatalf("%q was read as %d", text, n)
		}
		float, err := strconv.ParseFloat(text, 64)
		if err != nil || math.Abs(float*1000-float64(n)) > 1e-3*max(1, math.Abs(float)) {
			t.Errorf("%q was read as %d thousandths; as a float it is %v, %v", text, n, float, err)
		}
	})
}
