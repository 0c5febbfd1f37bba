package dayenergy

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
	"sumpter/domain/science/metabolism"
	"sumpter/domain/science/walking"
)

// person reads the reference person of a row: "ref person 55 kg (f, 165 cm,
// 30 y)"; the rest-day rows name the mass only.
func person(in checkvalues.Inputs) (bodyKg, restingKcal float64) {
	bodyKg = in.Number(0)
	resting := map[float64]float64{
		55: metabolism.MifflinStJeor(metabolism.Female, 55, 165, 30),
		70: metabolism.MifflinStJeor(metabolism.Male, 70, 175, 35),
		90: metabolism.MifflinStJeor(metabolism.Male, 90, 185, 40),
	}
	return bodyKg, resting[bodyKg]
}

// hikingDay is the worked day of the rows: sleep, camp, stops and three legs.
func hikingDay(in checkvalues.Inputs, power func(bodyKg, loadKg, speed, grade, terrain float64) float64) float64 {
	bodyKg, resting := person(in)
	load, terrain := in.Value("L"), in.Value("eta")
	still := []Still{{Sleep, 8}, {CampWork, 8}, {Stops, 1.5}}
	moving := []Moving{
		{power(bodyKg, load, 4/3.6, 0, terrain), 3},
		{power(bodyKg, load, 3/3.6, 8, terrain), 2},
		{power(bodyKg, load, 4/3.6, -8, terrain), 1.5},
	}
	return Total(resting, still, moving)
}

func TestDaysAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	checkvalues.Check(t, file, "day_energy", checkvalues.Answers{
		"hiking day, LCDA backpacking + grade (default)": func(row checkvalues.Row) any {
			bodyKg, resting := person(row.Inputs)
			restW := walking.RestWPerKg(resting, bodyKg)
			return hikingDay(row.Inputs, func(body, load, speed, grade, terrain float64) float64 {
				return walking.LCDABackpacking(restW, body, load, speed, grade, terrain)
			})
		},
		"hiking day, LCDA graded on total mass": func(row checkvalues.Row) any {
			return hikingDay(row.Inputs, walking.LCDATotalMass)
		},
		"hiking day, Pandolf + Santee": func(row checkvalues.Row) any {
			return hikingDay(row.Inputs, walking.PandolfSantee)
		},
		"rest day in camp": func(row checkvalues.Row) any {
			_, resting := person(row.Inputs)
			return Total(resting, []Still{{Sleep, 9}, {CampDay, 15}}, nil)
		},
	})
}

func TestWattToKcalPerHour(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	checkvalues.Check(t, file, "units", checkvalues.Answers{
		"W to kcal/h": func(row checkvalues.Row) any { return MovingKcal(Moving{row.Inputs.Number(0), 1}) },
	})
}

func TestHeightShare(t *testing.T) {
	for height, want := range map[float64]float64{-100: 0, 0: 0, 2500: 0, 3400: 0.075, 4300: 0.15, 6000: 0.15} {
		if have := HeightShare(height); math.Abs(have-want) > 1e-12 {
			t.Errorf("%v m: have %v, want %v", height, have, want)
		}
	}
}

func TestMoreWorkNeverNeedsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		resting := rapid.Float64Range(800, 2500).Draw(t, "resting")
		still := []Still{{rapid.Float64Range(1, 2.5).Draw(t, "ratio"), rapid.Float64Range(0, 24).Draw(t, "hours")}}
		moving := []Moving{{rapid.Float64Range(0, 900).Draw(t, "W"), rapid.Float64Range(0, 12).Draw(t, "h")}}
		total := Total(resting, still, moving)
		more := rapid.Float64Range(0, 2).Draw(t, "more")
		for what, have := range map[string]float64{
			"rest":   Total(resting+more, still, moving),
			"effort": Total(resting, []Still{{still[0].ActivityRatio + more, still[0].Hours}}, moving),
			"power":  Total(resting, still, []Moving{{moving[0].PowerW + more, moving[0].Hours}}),
			"time":   Total(resting, still, []Moving{{moving[0].PowerW, moving[0].Hours + more}}),
		} {
			if have < total {
				t.Errorf("more %s lowers %v to %v", what, total, have)
			}
		}
	})
}
