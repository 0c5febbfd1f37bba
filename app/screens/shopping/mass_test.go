package shopping

import (
	"testing"

	"sumpter/domain/units"
)

func TestBuyersMass(t *testing.T) {
	for _, c := range []struct {
		grams  float64
		system units.System
		want   string
	}{
		{0, units.Metric, "0"}, {0.4, units.Metric, "0.4"}, {7.4, units.Metric, "7"}, {1234.6, units.Metric, "1235"}, {-12.3, units.Metric, "-12"},
		{1234.6, units.US, "43.5"}, {10, units.US, "0.35"},
	} {
		if got := buyersMass(units.FromGrams(c.grams), c.system); got != c.want {
			t.Errorf("%g g: %q, want %q", c.grams, got, c.want)
		}
	}
}
