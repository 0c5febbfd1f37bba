package stovefuel

import (
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/boiling"
	"sumpter/domain/science/checkvalues"
)

// substanceOf reads the name a row begins with: "n-heptane, liquid (...)".
func substanceOf(in checkvalues.Inputs) Substance {
	end := strings.IndexAny(string(in), ",(")
	if end < 0 {
		end = len(in)
	}
	return Substance(strings.TrimSpace(string(in[:end])))
}

func TestFuelAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	litreTo100 := HeatWater(1, 0, 15, 100)
	cookFactor := func(row checkvalues.Row) any {
		return boiling.TimeFactor(row.Inputs.Value("h"), row.Inputs.Value("Q10"))
	}
	checkvalues.Check(t, file, "fuel", checkvalues.Answers{
		"lower heating value from formation enthalpies": func(row checkvalues.Row) any {
			return LowerHeating(substanceOf(row.Inputs))
		},
		"LHV of an 80/20":            func(row checkvalues.Row) any { return GasMix(row.Inputs.Number(1)) },
		"heat, 1 L from 15 to 100 C": func(row checkvalues.Row) any { return HeatWater(row.Inputs.Number(0), 0, 15, 100) },
		"fuel for that": func(row checkvalues.Row) any {
			return Grams(litreTo100, row.Inputs.Value("eff"), row.Inputs.Value("LHV"))
		},
		"heat with an aluminium pot of 150 g": func(row checkvalues.Row) any {
			return HeatWater(row.Inputs.Number(0), 0.15*AluminiumKJPerKgK, row.Inputs.Number(1), row.Inputs.Number(2))
		},
		"snow melt and boil": func(row checkvalues.Row) any {
			return MeltSnow(row.Inputs.Number(0), row.Inputs.Number(1), row.Inputs.Number(2))
		},
		"snow, melt only to 5 C": func(row checkvalues.Row) any {
			return MeltSnow(row.Inputs.Number(0), row.Inputs.Number(1), row.Inputs.Number(2))
		},
		"snow, fuel": func(row checkvalues.Row) any {
			in := row.Inputs
			return Grams(MeltSnow(in.Number(0), in.Number(1), in.Number(2)), in.Value("eff"), in.Value("LHV"))
		},
		"fuel for 1 L from 15 to 100 C": func(row checkvalues.Row) any {
			return Grams(litreTo100, row.Inputs.Value("eff"), LowerHeating(substanceOf(row.Inputs)))
		},
		"simmer": func(row checkvalues.Row) any {
			in := row.Inputs
			return Grams(Simmer(in.Number(0), in.Number(1)), in.Value("eff"), in.Value("LHV"))
		},
		"group evening meal and drinks at 2500 m": func(row checkvalues.Row) any {
			in := row.Inputs
			water := HeatWater(in.Number(0)*in.Number(1), 0, in.Number(2), boiling.Point(2500))
			simmer := Simmer(in.Number(4), in.Number(3)*boiling.TimeFactor(2500, in.Value("Q10")))
			return Grams(water+simmer, in.Value("eff"), in.Value("LHV"))
		},
		"cook-time factor": cookFactor,
	})
}

// Broad ranges of handbooks (trade science 6.3): lower values lie below the
// published higher values of methanol 22.7 and propane 50.35 MJ/kg, and white
// gas within 44 to 45.
func TestHeatingValuesWithinHandbookRanges(t *testing.T) {
	for fuel, bounds := range map[Substance][2]float64{
		Methanol: {19, 22.7}, Propane: {46, 50.35}, Heptane: {44, 45}, Dodecane: {43, 44.5}, Ethanol: {25, 27},
	} {
		if have := LowerHeating(fuel); have < bounds[0] || have > bounds[1] {
			t.Errorf("%s: %v MJ/kg, outside %v", fuel, have, bounds)
		}
	}
	if LowerHeating("coal") != 0 {
		t.Error("a substance not listed has no value")
	}
}

func TestHarderCookingNeverTakesLessFuel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		water := rapid.Float64Range(0, 10).Draw(t, "kg")
		pot := rapid.Float64Range(0, 1).Draw(t, "pot")
		from := rapid.Float64Range(0, 20).Draw(t, "from")
		to := rapid.Float64Range(20, 100).Draw(t, "to")
		more := rapid.Float64Range(0, 5).Draw(t, "more")
		heat := HeatWater(water, pot, from, to)
		for what, harder := range map[string]float64{
			"water": HeatWater(water+more, pot, from, to), "pot": HeatWater(water, pot+more, from, to),
			"hotter": HeatWater(water, pot, from, to+more), "colder start": HeatWater(water, pot, from-more, to),
		} {
			if harder < heat {
				t.Errorf("%s lowers the heat from %v to %v", what, heat, harder)
			}
		}
		if MeltSnow(water, -more, to) < HeatWater(water, 0, 0, to) {
			t.Error("snow must take more heat than water of 0 C")
		}
		efficiency := rapid.Float64Range(0.1, 0.9).Draw(t, "efficiency")
		if better := Grams(heat, efficiency+0.05, 45); better > Grams(heat, efficiency, 45) {
			t.Error("a better stove must not burn more")
		}
		if share := rapid.Float64Range(0, 1).Draw(t, "propane"); GasMix(share) < LowerHeating(Isobutane) || GasMix(share) > LowerHeating(Propane)+1e-9 {
			t.Error("a mix must lie between its parts")
		}
	})
	if math.Abs(Simmer(SimmerWatts, 10)-150) > 1e-9 {
		t.Error("250 W for 10 minutes are 150 kJ")
	}
}
