package walktime

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func TestTimeAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	checkvalues.Check(t, file, "time", checkvalues.Answers{
		"Naismith 1892": func(row checkvalues.Row) any {
			return NaismithOriginal(row.Inputs.Number(0)*1.609344, row.Inputs.Number(1)*0.3048)
		},
		"Naismith metric": func(row checkvalues.Row) any {
			return Naismith(row.Inputs.Number(0), row.Inputs.Number(1))
		},
		"Langmuir, gentle descent": func(row checkvalues.Row) any {
			return Langmuir(row.Inputs.Number(0), row.Inputs.Number(1), row.Inputs.Number(2), 0)
		},
		"Langmuir, steep descent": func(row checkvalues.Row) any {
			return Langmuir(row.Inputs.Number(0), row.Inputs.Number(1), 0, row.Inputs.Number(2))
		},
		"Tobler on path":  func(row checkvalues.Row) any { return ToblerSpeed(row.Inputs.Value("slope")) },
		"Tobler off path": func(row checkvalues.Row) any { return ToblerSpeedOffPath(row.Inputs.Value("slope")) },
		"Tobler leg time": func(row checkvalues.Row) any {
			return Tobler(row.Inputs.Number(0), row.Inputs.Number(1))
		},
	})
}

// Langmuir 1984: 5 to 12 degrees, which is 8.7 to 21.3 %.
func TestDescentKinds(t *testing.T) {
	for _, c := range []struct{ km, down, gentle, steep float64 }{
		{1, 0, 0, 0}, {1, 87, 0, 0}, {1, 88, 88, 0}, {1, 212, 212, 0}, {1, 213, 0, 213}, {0, 100, 0, 100}, {0, 0, 0, 0},
	} {
		gentle, steep := DescentKinds(c.km, c.down)
		if gentle != c.gentle || steep != c.steep {
			t.Errorf("%v km, %v m down: have %v and %v, want %v and %v", c.km, c.down, gentle, steep, c.gentle, c.steep)
		}
	}
}

func TestToblerWithoutLengthTakesNoTime(t *testing.T) {
	if have := Tobler(0, 100); have != 0 {
		t.Errorf("have %v h", have)
	}
}

func TestFartherAndHigherTakesLonger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		km := rapid.Float64Range(0, 60).Draw(t, "km")
		up := rapid.Float64Range(0, 4000).Draw(t, "up")
		down := rapid.Float64Range(0, 4000).Draw(t, "down")
		farther := km + rapid.Float64Range(0, 5).Draw(t, "farther")
		higher := up + rapid.Float64Range(0, 500).Draw(t, "higher")
		gentle, steep := DescentKinds(km, down)
		hours := Langmuir(km, up, gentle, steep)
		if hours < 0 || math.IsNaN(hours) {
			t.Errorf("have %v h", hours)
		}
		if Langmuir(farther, up, gentle, steep) < hours || Langmuir(km, higher, gentle, steep) < hours {
			t.Error("farther or higher must not be quicker")
		}
		if metric, original := Naismith(km, up), NaismithOriginal(km, up); math.Abs(metric-original) > 0.04*metric {
			t.Errorf("the metric form (%v h) must stay near the original (%v h)", metric, original)
		}
		if km > 0 && Tobler(km, higher) < Tobler(km, up) {
			t.Error("a steeper climb must not be quicker")
		}
	})
}
