package water

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func TestWaterAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	constant := func(value float64) func(checkvalues.Row) any { return func(checkvalues.Row) any { return value } }
	checkvalues.Check(t, file, "water", checkvalues.Answers{
		"0.75 qt/h":      constant(DrinkPerHour(celsius(83), Moderate)),
		"hourly ceiling": constant(MostPerHour),
		"daily ceiling":  constant(MostPerDay),
		"sweat replacement sanity": func(row checkvalues.Row) any { // "hard work 1 qt/h x 6 h"
			return DrinkPerHour(celsius(91), Hard) * row.Inputs.Number(1)
		},
		"day plan, warm moderate work": func(row checkvalues.Row) any { // "2.2 L base + 6.5 h x 0.71 L/h"
			litres, _ := DrinkInDay(row.Inputs.Number(0), row.Inputs.Number(2), row.Inputs.Number(1))
			return litres
		},
		"cooking water": func(row checkvalues.Row) any { // "4 persons x 110 g pasta x 1.3 mL/g ..."
			return CookingLitres(row.Inputs.Number(0)*row.Inputs.Number(1), row.Inputs.Number(2), CookingLoss)
		},
	})
}

func celsius(fahrenheit float64) float64 { return (fahrenheit - 32) / 1.8 }

// TB MED 507, the whole table as printed in litres.
func TestTableCellByCell(t *testing.T) {
	for _, c := range []struct {
		fahrenheit float64
		litres     [3]float64
	}{
		{78, [3]float64{0.47, 0.71, 0.71}}, {81.9, [3]float64{0.47, 0.71, 0.71}},
		{82, [3]float64{0.47, 0.71, 0.95}}, {84.9, [3]float64{0.47, 0.71, 0.95}},
		{85, [3]float64{0.71, 0.71, 0.95}}, {89.9, [3]float64{0.71, 0.71, 0.95}},
		{90.1, [3]float64{0.95, 0.95, 0.95}}, {110, [3]float64{0.95, 0.95, 0.95}},
		{60, [3]float64{0.3, 0.4, 0.5}}, // common practice: 0.3 to 0.5
	} {
		for effort, want := range c.litres {
			if have := DrinkPerHour(celsius(c.fahrenheit), Effort(effort)); math.Abs(have-want) > 0.005 {
				t.Errorf("%v F, effort %d: have %.3f, want %v", c.fahrenheit, effort, have, want)
			}
		}
	}
}

func TestCeilings(t *testing.T) {
	for _, c := range []struct {
		base, rate, hours, want float64
		capped                  bool
	}{{2.2, 0.5, 4, 4.2, false}, {3, 2, 2, 3 + 2*MostPerHour, true}, {3, 1, 9, MostPerDay, true}, {2.2, 0, 0, 2.2, false}} {
		have, capped := DrinkInDay(c.base, c.rate, c.hours)
		if math.Abs(have-c.want) > 1e-9 || capped != c.capped {
			t.Errorf("%+v: have %v, capped %v", c, have, capped)
		}
	}
}

func TestWaterIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		heat := rapid.Float64Range(-10, 45).Draw(t, "heat")
		effort := Effort(rapid.IntRange(-1, 4).Draw(t, "effort"))
		rate := DrinkPerHour(heat, effort)
		if DrinkPerHour(heat+1, effort) < rate || DrinkPerHour(heat, effort+1) < rate || rate > MostPerHour || rate <= 0 {
			t.Error("hotter and harder must not need less, and no row passes the ceiling")
		}
		hours := rapid.Float64Range(0, 16).Draw(t, "hours")
		litres, _ := DrinkInDay(BaseMan, rate, hours)
		if longer, _ := DrinkInDay(BaseMan, rate, hours+1); longer < litres || longer > MostPerDay {
			t.Error("a longer day must not need less, nor pass the ceiling")
		}
	})
}
