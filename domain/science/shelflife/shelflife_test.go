package shelflife

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
	"sumpter/domain/science/daytemp"
)

func TestShelfLifeAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	dayOf := func(in checkvalues.Inputs) daytemp.Day {
		return daytemp.Day{Low: in.Value("Tmin"), High: in.Value("Tmax")}
	}
	checkvalues.Check(t, file, "shelf_life", checkvalues.Answers{
		"Q10 day, equivalent days at Tref per day": func(row checkvalues.Row) any {
			return Q10Day(row.Inputs.Value("Q10"), dayOf(row.Inputs), row.Inputs.Value("Tref"))
		},
		"Q10 day at the mean temperature only": func(row checkvalues.Row) any {
			return Q10Rate(row.Inputs.Value("Q10"), row.Inputs.Value("Tmean"), row.Inputs.Value("Tref"))
		},
		"days left": func(row checkvalues.Row) any { // "60 d at 20 C; ..."
			return row.Inputs.Number(0) / Q10Day(row.Inputs.Value("Q10"), dayOf(row.Inputs), row.Inputs.Number(1))
		},
		"Arrhenius day, equivalent days at Tref per day": func(row checkvalues.Row) any {
			return ArrheniusDay(row.Inputs.Value("Ea"), dayOf(row.Inputs), row.Inputs.Value("Tref"))
		},
		"Q10 equivalent of Ea": func(row checkvalues.Row) any {
			return EquivalentQ10(row.Inputs.Value("Ea"), row.Inputs.Value("T"))
		},
		"Arrhenius rate ratio": func(row checkvalues.Row) any {
			return ArrheniusRate(row.Inputs.Value("Ea"), row.Inputs.Value("T"), row.Inputs.Value("Tref"))
		},
		"sinusoidal day temperature": func(row checkvalues.Row) any { // "...; 09:00; peak 15:00"
			return dayOf(row.Inputs).At(row.Inputs.Number(2))
		},
	})
}

// Trade science 5.4: a long measured series must agree with the closed form
// to 1e-5.
func TestMeasuredSeriesAgreesWithClosedForm(t *testing.T) {
	day := daytemp.Day{Low: 14, High: 36}
	var series []float64
	for minute := 0; minute < 30*24*60; minute++ {
		series = append(series, day.At(float64(minute)/60))
	}
	have := MeanRate(series, func(celsius float64) float64 { return Q10Rate(2, celsius, 20) })
	if want := Q10Day(2, day, 20); math.Abs(have-want) > 1e-5 {
		t.Errorf("series %v, closed form %v", have, want)
	}
	if !math.IsNaN(MeanRate(nil, func(float64) float64 { return 1 })) {
		t.Error("an empty series has no mean")
	}
}

// Labuza and Taoukis: browning (Ea 100 to 200 kJ/mol) has a Q10 of 2 to 4 and
// more; the Arrhenius rate at the reference is 1 by definition.
func TestArrheniusAtItsReference(t *testing.T) {
	for _, ea := range []float64{0, 40, 100, 200} {
		if have := ArrheniusRate(ea, 20, 20); have != 1 {
			t.Errorf("Ea %v: have %v, want 1", ea, have)
		}
	}
	if have := EquivalentQ10(0, 20); have != 1 {
		t.Errorf("no activation energy: Q10 %v", have)
	}
}

// Abramowitz and Stegun, table 9.8: I0(1) and I0(2), from memory.
func TestBesselI0(t *testing.T) {
	for x, want := range map[float64]float64{0: 1, 1: 1.2660658778, 2: 2.2795853023} {
		if have := besselI0(x); math.Abs(have-want) > 1e-9 {
			t.Errorf("I0(%v): have %.10f, want %.10f", x, have, want)
		}
	}
}

func TestFlatDayUsesTheSteadyRate(t *testing.T) {
	flat := daytemp.Day{Low: 30, High: 30}
	if have := Q10Day(2, flat, 20); math.Abs(have-2) > 1e-12 {
		t.Errorf("Q10: have %v, want 2", have)
	}
	if have := ArrheniusDay(80, flat, 20); math.Abs(have-EquivalentQ10(80, 20)) > 1e-9 {
		t.Errorf("Arrhenius: have %v", have)
	}
	if have := Q10Between(2, flat, 20, 6, 12); math.Abs(have-0.5) > 1e-12 {
		t.Errorf("a quarter day: have %v, want 0.5", have)
	}
	if have := Q10Between(2, flat, 20, 6, 6); have != 0 {
		t.Errorf("no time: have %v", have)
	}
}

func TestHotterNeverLengthensLife(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-20, 30).Draw(t, "low")
		day := daytemp.Day{Low: low, High: low + rapid.Float64Range(0, 30).Draw(t, "range")}
		q10 := rapid.Float64Range(1, 6).Draw(t, "Q10")
		ea := rapid.Float64Range(0, 200).Draw(t, "Ea")
		hotter := day.Warmer(rapid.Float64Range(0, 15).Draw(t, "hotter"))
		if Q10Day(q10, hotter, 20) < Q10Day(q10, day, 20)*(1-1e-12) || ArrheniusDay(ea, hotter, 20) < ArrheniusDay(ea, day, 20)*(1-1e-12) {
			t.Error("a hotter day must not use less life")
		}
		if Q10Day(q10, day, 20) < Q10Rate(q10, day.Mean(), 20)*(1-1e-12) {
			t.Error("the rate at the mean temperature must read low")
		}
		from := rapid.Float64Range(-48, 48).Draw(t, "from")
		hours := rapid.Float64Range(0, 100).Draw(t, "hours")
		cut := from + hours*rapid.Float64Range(0, 1).Draw(t, "cut")
		whole := Q10Between(q10, day, 20, from, from+hours)
		parts := Q10Between(q10, day, 20, from, cut) + Q10Between(q10, day, 20, cut, from+hours)
		if math.Abs(whole-parts) > 1e-4*max(1, whole) {
			t.Errorf("parts must add up: %v and %v", whole, parts)
		}
		if days := math.Round(hours / 24); math.Abs(Q10Between(q10, day, 20, from, from+24*days)-days*Q10Day(q10, day, 20)) > 1e-9*max(1, whole) {
			t.Error("whole days must agree with the closed form")
		}
	})
}
