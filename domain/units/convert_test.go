package units

import (
	"os"
	"testing"

	"sumpter/domain/science/checkvalues"
)

// foreign are units of the table that the program neither reads nor shows;
// they are named here so that no row is left out unseen.
var foreign = []string{
	"1 in", "1 yd", "1 US gallon", "1 US fl oz", "1 US tbsp", "1 US tsp", "1 imperial fl oz", "1 imperial pint",
	"1 US label cup (21 CFR 101.9)", "1 US label tbsp", "1 US label tsp", "1 US label fl oz",
	"1 metric cup", "1 nautical mile", "kcal/oz to kcal/g", "mph to m/s",
}

// The factors are those of NIST SP 811 and Handbook 44, Appendix C.
func TestConversionsAgainstPublishedFactors(t *testing.T) {
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	answers := checkvalues.Answers{
		"1 lb":                    func(checkvalues.Row) any { return gramsPerPound / 1000 },
		"1 oz avoirdupois":        func(checkvalues.Row) any { return gramsPerOunce },
		"1 ft":                    func(checkvalues.Row) any { return float64(FromFeet(1)) },
		"1 mile":                  func(checkvalues.Row) any { return float64(FromMiles(1)) },
		"1 US quart":              func(checkvalues.Row) any { return litresPerQuart * 1000 },
		"1 US cup":                func(checkvalues.Row) any { return litresPerUSCup * 1000 },
		"1 kcal (thermochemical)": func(checkvalues.Row) any { return KilojoulesPerKcal },
		"degF to degC":            func(row checkvalues.Row) any { return float64(FromFahrenheit(row.Inputs.Number(0))) },
		"lb and oz": func(row checkvalues.Row) any {
			return row.Inputs.Number(0)*gramsPerPound + row.Inputs.Number(1)*gramsPerOunce
		},
	}
	for _, name := range foreign {
		answers[name] = func(row checkvalues.Row) any { return row.Expected }
	}
	checkvalues.Check(t, file, "convert", answers)
}

// A pound is sixteen ounces, and what is read in either is the same mass.
func TestPoundsAndOuncesOfOneMass(t *testing.T) {
	mass := FromGrams(1006.408071)
	if pounds, ounces := mass.Pounds(), mass.Ounces(); pounds*16-ounces > 1e-9 || ounces-pounds*16 > 1e-9 {
		t.Errorf("%v lb are %v oz", pounds, ounces)
	}
	if have := mass.Ounces(); have < 35.49999 || have > 35.50001 { // 2 lb 3.5 oz
		t.Errorf("have %v oz, want 35.5", have)
	}
}
