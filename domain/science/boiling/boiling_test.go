package boiling

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func TestBoilingAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	of := func(name string, compute func(float64) float64) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any { return compute(row.Inputs.Value(name)) }
	}
	checkvalues.Check(t, file, "boiling", checkvalues.Answers{
		"ISA pressure":               of("h", Pressure),
		"boiling point, IAPWS":       of("h", Point),
		"boiling point, Buck 1996":   of("h", PointBuck),
		"boiling point, Antoine":     of("h", PointAntoine),
		"saturation pressure, IAPWS": of("T", Saturation),
		"saturation pressure, Buck":  of("T", SaturationBuck),
	})
}

// The curves of three sources stay within 0.1 K of each other where people
// cook.
func TestCurvesAgree(t *testing.T) {
	for height := 0.0; height <= 5000; height += 500 {
		point := Point(height)
		if math.Abs(PointBuck(height)-point) > 0.1 || math.Abs(PointAntoine(height)-point) > 0.1 {
			t.Errorf("%v m: %v, %v, %v", height, point, PointBuck(height), PointAntoine(height))
		}
	}
}

// Common practice, no source: 1 K for every 300 m; and the mountaineers' rule
// is the upper bound of cooking time.
func TestRulesOfThumb(t *testing.T) {
	for height := 500.0; height <= 5000; height += 500 {
		if thumb := 100 - height/300; math.Abs(Point(height)-thumb) > 0.4 {
			t.Errorf("%v m: %v, by the rule of thumb %v", height, Point(height), thumb)
		}
		if bound := math.Pow(2, height/1500); TimeFactor(height, LegumeQ10) > bound*1.01 {
			t.Errorf("%v m: factor %v above the rule's %v", height, TimeFactor(height, LegumeQ10), bound)
		}
	}
}

func TestHigherNeverBoilsHotterNorCooksFaster(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := rapid.Float64Range(-400, 8000).Draw(t, "height")
		higher := height + rapid.Float64Range(0, 800).Draw(t, "higher")
		q10 := rapid.Float64Range(1, 4).Draw(t, "Q10")
		if Point(higher) > Point(height)+1e-9 || PointBuck(higher) > PointBuck(height)+1e-9 || PointAntoine(higher) > PointAntoine(height)+1e-9 {
			t.Error("water must not boil hotter higher up")
		}
		if TimeFactor(higher, q10) < TimeFactor(height, q10)*(1-1e-9) {
			t.Error("food must not cook faster higher up")
		}
		if at := Point(height); math.Abs(Saturation(at)-Pressure(height)) > 1e-3 {
			t.Error("the boiling point must lie on the curve")
		}
	})
}
