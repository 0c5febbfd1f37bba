package foodsafety

import (
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
	"sumpter/domain/science/daytemp"
)

func TestLimitsAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	either := func(celsius, fahrenheit float64) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any {
			if row.Unit == "degF" {
				return fahrenheit
			}
			return celsius
		}
	}
	constant := func(value float64) func(checkvalues.Row) any { return func(checkvalues.Row) any { return value } }
	checkvalues.Check(t, file, "food_safety", checkvalues.Answers{
		"Food Code cold holding, upper limit": either(ColdHoldingMaxC, ColdHoldingMaxF),
		"Food Code hot holding, lower limit":  either(HotHoldingMinC, HotHoldingMinF),
		"danger zone low":                     constant(DangerFromC),
		"danger zone high":                    constant(DangerToC),
		"one-hour threshold":                  constant(HotWeatherFromC),
		"2 h rule, allowance used": func(row checkvalues.Row) any {
			// pairs of hours and temperature
			share, in := 0.0, row.Inputs.Numbers()
			for i := 0; i+1 < len(in); i += 2 {
				share += Exposure(in[i], in[i+1])
			}
			return share
		},
		"growth factor at a 20 min doubling": func(row checkvalues.Row) any { return Growth(row.Inputs.Number(0)) },
		"TCS decision by aw and pH": func(row checkvalues.Row) any {
			packaged := strings.HasSuffix(string(row.Inputs), "packaged=yes")
			return Assess(row.Inputs.Value("aw"), row.Inputs.Value("pH"), packaged).String()
		},
		"hours of a sinusoidal day above a threshold": func(row checkvalues.Row) any {
			day := daytemp.Day{Low: row.Inputs.Value("Tmin"), High: row.Inputs.Value("Tmax")}
			// whole degrees Fahrenheit, printed in Celsius to three places
			fahrenheit := math.Round(row.Inputs.Value("threshold")*1.8 + 32)
			return day.HoursAbove((fahrenheit - 32) / 1.8)
		},
	})
}

// Every cell of Food Code 1-201.10, tables A and B, from both its edges.
func TestTablesCellByCell(t *testing.T) {
	const no, pa = NotControlled, NeedsAssessment
	a := []struct {
		activity float64
		controls [5]Control // pH 4.6, 4.61, 5.6, 5.61, 7
	}{
		{0.50, [5]Control{no, no, no, no, no}}, {0.92, [5]Control{no, no, no, no, no}},
		{0.921, [5]Control{no, no, no, pa, pa}}, {0.95, [5]Control{no, no, no, pa, pa}},
		{0.951, [5]Control{no, pa, pa, pa, pa}}, {0.99, [5]Control{no, pa, pa, pa, pa}},
	}
	for _, row := range a {
		for i, pH := range []float64{4.6, 4.61, 5.6, 5.61, 7} {
			if have := Assess(row.activity, pH, true); have != row.controls[i] {
				t.Errorf("table A, aw %v, pH %v: have %v", row.activity, pH, have)
			}
		}
	}
	b := []struct {
		activity float64
		controls [6]Control // pH 4.19, 4.2, 4.6, 4.61, 5.0, 5.01
	}{
		{0.50, [6]Control{no, no, no, no, no, no}}, {0.879, [6]Control{no, no, no, no, no, no}},
		{0.88, [6]Control{no, no, no, no, no, pa}}, {0.90, [6]Control{no, no, no, no, no, pa}},
		{0.901, [6]Control{no, no, no, pa, pa, pa}}, {0.92, [6]Control{no, no, no, pa, pa, pa}},
		{0.921, [6]Control{no, pa, pa, pa, pa, pa}}, {0.99, [6]Control{no, pa, pa, pa, pa, pa}},
	}
	for _, row := range b {
		for i, pH := range []float64{4.19, 4.2, 4.6, 4.61, 5.0, 5.01} {
			if have := Assess(row.activity, pH, false); have != row.controls[i] {
				t.Errorf("table B, aw %v, pH %v: have %v", row.activity, pH, have)
			}
		}
	}
}

func TestUnknownIsNeverSafe(t *testing.T) {
	unknown := math.NaN()
	for _, packaged := range []bool{false, true} {
		if Assess(unknown, unknown, packaged) != NeedsAssessment || Assess(0.93, unknown, packaged) != NeedsAssessment {
			t.Error("unknown figures must need assessment")
		}
		if Assess(unknown, 4.0, packaged) != NotControlled { // sour enough at any water activity
			t.Error("pH 4.0 is stable at any water activity")
		}
	}
	var zero Control
	if zero != NeedsAssessment {
		t.Error("the zero value must not be safe")
	}
}

func TestExposureEdges(t *testing.T) {
	for celsius, want := range map[float64]float64{
		-5: 0, DangerFromC: 0, DangerFromC + 0.01: 0.5, HotWeatherFromC: 0.5, HotWeatherFromC + 0.01: 1, 59.9: 1, DangerToC: 0,
	} {
		if have := Exposure(1, celsius); have != want {
			t.Errorf("an hour at %v C: have %v, want %v", celsius, have, want)
		}
	}
}

func TestSafetyIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		activity, pH := rapid.Float64Range(0.1, 1).Draw(t, "aw"), rapid.Float64Range(3, 8).Draw(t, "pH")
		packaged := rapid.Bool().Draw(t, "packaged")
		wetter, milder := activity+rapid.Float64Range(0, 0.3).Draw(t, "wetter"), pH+rapid.Float64Range(0, 3).Draw(t, "milder")
		if Assess(activity, pH, packaged) == NeedsAssessment && Assess(wetter, milder, packaged) == NotControlled {
			t.Error("wetter and less sour food must not be safer")
		}
		if Assess(activity, pH, false) == NotControlled && Assess(activity, pH, true) == NeedsAssessment {
			t.Error("heating and packaging must not make food less safe")
		}
		celsius := rapid.Float64Range(-10, 55).Draw(t, "celsius")
		hotter := min(59, celsius+rapid.Float64Range(0, 20).Draw(t, "hotter"))
		if Exposure(1, hotter) < Exposure(1, celsius) || Exposure(2, celsius) < Exposure(1, celsius) {
			t.Error("hotter and longer must not use less")
		}
	})
}
