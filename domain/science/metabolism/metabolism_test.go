package metabolism

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

func checkTopic(t *testing.T, topic string, answers checkvalues.Answers) {
	t.Helper()
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	checkvalues.Check(t, file, topic, answers)
}

func sexOf(in checkvalues.Inputs) Sex {
	return map[string]Sex{"m": Male, "f": Female}[in.Word("sex")]
}

func TestRestingAgainstPublishedFigures(t *testing.T) {
	adult := func(equation func(Sex, float64, float64, float64) float64) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any {
			in := row.Inputs
			return equation(sexOf(in), in.Value("mass"), in.Value("height"), in.Value("age"))
		}
	}
	checkTopic(t, "rmr", checkvalues.Answers{
		"Mifflin-St Jeor 1990, rounded form":   adult(MifflinStJeor),
		"Mifflin-St Jeor 1990, unrounded form": adult(MifflinStJeorUnrounded),
		"Harris-Benedict revised 1984":         adult(HarrisBenedict),
		"Schofield": func(row checkvalues.Row) any {
			in := row.Inputs
			return Schofield(sexOf(in), in.Value("mass"), in.Value("age"))
		},
		"resting rate of the reference person": func(row checkvalues.Row) any {
			// "f, 55 kg, 165 cm, 30 y; Mifflin"
			sex, in := Male, row.Inputs
			if in[0] == 'f' {
				sex = Female
			}
			massKg := in.Number(0)
			return MifflinStJeor(sex, massKg, in.Number(1), in.Number(2)) * 4184 / 86400 / massKg
		},
	})
}

func TestTotalsAgainstPublishedFigures(t *testing.T) {
	checkTopic(t, "tee", checkvalues.Answers{
		"FAO worked example": func(row checkvalues.Row) any {
			in := row.Inputs
			return Schofield(sexOf(in), in.Value("mass"), in.Value("age")) * in.Value("PAL")
		},
		"child/teen total energy": func(row checkvalues.Row) any {
			return MinorTotal(sexOf(row.Inputs), row.Inputs.Value("mass"))
		},
	})
}

func TestPublishedStandardErrorsAndBands(t *testing.T) {
	// FAO/WHO/UNU 2004, Table 5.2
	for _, c := range []struct {
		age, from, to, female, male float64
	}{
		{2, 0, 3, 59, 70}, {3, 3, 10, 70, 67}, {9.99, 3, 10, 70, 67}, {17.99, 10, 18, 111, 105},
		{18, 18, 30, 119, 153}, {30, 30, 60, 111, 167}, {60, 60, 0, 108, 164}, {95, 60, 0, 108, 164},
	} {
		from, to := SchofieldBand(c.age)
		if from != c.from || to != c.to {
			t.Errorf("age %v: band %v-%v, want %v-%v", c.age, from, to, c.from, c.to)
		}
		if f, m := SchofieldError(Female, c.age), SchofieldError(Male, c.age); f != c.female || m != c.male {
			t.Errorf("age %v: errors %v and %v, want %v and %v", c.age, f, m, c.female, c.male)
		}
	}
}

func TestRestingChangesEquationAtEighteen(t *testing.T) {
	if have, want := Resting(Male, 70, 175, 17.99), Schofield(Male, 70, 17.99); have != want {
		t.Errorf("17.99: have %v, want Schofield %v", have, want)
	}
	if have, want := Resting(Male, 70, 175, 18), MifflinStJeor(Male, 70, 175, 18); have != want {
		t.Errorf("18: have %v, want Mifflin-St Jeor %v", have, want)
	}
}

// Trade science 1.3: Harris-Benedict reads 2.7 to 5.3 % above Mifflin for the
// three reference persons.
func TestHarrisBenedictReadsAboveMifflin(t *testing.T) {
	for _, p := range []struct {
		sex           Sex
		kg, cm, years float64
	}{{Female, 55, 165, 30}, {Male, 70, 175, 35}, {Male, 90, 185, 40}} {
		ratio := HarrisBenedict(p.sex, p.kg, p.cm, p.years) / MifflinStJeor(p.sex, p.kg, p.cm, p.years)
		if ratio < 1.026 || ratio > 1.054 {
			t.Errorf("%+v: ratio %.4f", p, ratio)
		}
	}
}

func TestMinorTotalIsHeldAtItsTop(t *testing.T) {
	top := 263.4 + 65.3*65.3/(4*0.454)
	if have := MinorTotal(Female, 100); math.Abs(have-top) > 1e-9 {
		t.Errorf("have %v, want %v", have, top)
	}
}

func TestMoreBodyNeverNeedsLess(t *testing.T) {
	equations := map[string]func(sex Sex, kg, cm, years float64) float64{
		"Mifflin":         MifflinStJeor,
		"unrounded":       MifflinStJeorUnrounded,
		"Harris-Benedict": HarrisBenedict,
		"resting":         Resting,
		"Schofield":       func(sex Sex, kg, _, years float64) float64 { return Schofield(sex, kg, years) },
		"minor":           func(sex Sex, kg, _, _ float64) float64 { return MinorTotal(sex, kg) },
	}
	rapid.Check(t, func(t *rapid.T) {
		kg := rapid.Float64Range(10, 180).Draw(t, "kg")
		more := rapid.Float64Range(0, 50).Draw(t, "more")
		cm := rapid.Float64Range(90, 210).Draw(t, "cm")
		years := rapid.Float64Range(1, 95).Draw(t, "years")
		for name, equation := range equations {
			f, m, mean := equation(Female, kg, cm, years), equation(Male, kg, cm, years), equation(NotGiven, kg, cm, years)
			if mean < min(f, m)-1e-9 || mean > max(f, m)+1e-9 {
				t.Errorf("%s: sex not given gives %v, outside %v and %v", name, mean, f, m)
			}
			for sex, light := range map[Sex]float64{Female: f, Male: m, NotGiven: mean} {
				if heavy := equation(sex, kg+more, cm, years); heavy < light-1e-9 {
					t.Errorf("%s, sex %d: %v kg more lowers %v to %v", name, sex, more, light, heavy)
				}
			}
		}
	})
}
