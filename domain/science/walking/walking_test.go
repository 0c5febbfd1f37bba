package walking

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
)

// walk is one row's inputs; rows leave out the terrain of a bare equation.
type walk struct{ body, load, speed, grade, terrain float64 }

func walkOf(in checkvalues.Inputs) walk {
	w := walk{in.Value("W"), in.Value("L"), in.Value("V"), in.Value("G"), in.Value("eta")}
	if len(in.Word("V")) > 4 && in.Word("V")[len(in.Word("V"))-4:] == "km/h" {
		w.speed /= 3.6
	}
	return w
}

func powerOf(equation func(bodyKg, loadKg, speed, grade, terrain float64) float64) func(checkvalues.Row) any {
	return func(row checkvalues.Row) any {
		w := walkOf(row.Inputs)
		return equation(w.body, w.load, w.speed, w.grade, w.terrain)
	}
}

func TestPowerAgainstPublishedFigures(t *testing.T) {
	file, err := os.Open("../../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	checkvalues.Check(t, file, "walk_power", checkvalues.Answers{
		"LCDA graded on total mass":                     powerOf(LCDATotalMass),
		"LCDA with terrain factor on the movement term": powerOf(LCDATotalMass),
		"Pandolf":                      powerOf(Pandolf),
		"Pandolf + Santee downhill":    powerOf(PandolfSantee),
		"Santee correction term alone": powerOf(SanteeCorrection),
		"Pandolf with a signed downhill grade, no correction": powerOf(Pandolf),
		"LCDA backpacking + grade": func(row checkvalues.Row) any {
			w := walkOf(row.Inputs)
			return LCDABackpacking(row.Inputs.Value("rest"), w.body, w.load, w.speed, w.grade, w.terrain)
		},
		"ACSM walking on total mass": func(row checkvalues.Row) any {
			w := walkOf(row.Inputs)
			return ACSMTotalMass(w.body, w.load, w.speed, w.grade)
		},
		"ACSM gross oxygen uptake": func(row checkvalues.Row) any {
			return ACSMOxygen(row.Inputs.Value("V")/3.6, 100*row.Inputs.Value("grade"))
		},
		"LCDA graded, specific": func(row checkvalues.Row) any {
			return LCDAGraded(row.Inputs.Value("S"), row.Inputs.Value("G"))
		},
		"wrong inner base 1.11, must NOT be returned": func(row checkvalues.Row) any {
			return checkvalues.Not(LCDAGraded(row.Inputs.Value("S"), row.Inputs.Value("G")))
		},
		"Minetti net cost of walking": func(row checkvalues.Row) any {
			return Minetti(row.Inputs.Value("i"))
		},
		"snow terrain coefficient": func(row checkvalues.Row) any {
			return SnowTerrain(row.Inputs.Value("depth"), row.Inputs.Value("density"))
		},
	})
}

// Looney et al. 2019: the cheapest descent lies near -10.7 %, and below -32 %
// the grade term turns positive.
func TestCheapestDescent(t *testing.T) {
	best, grade := math.Inf(1), 0.0
	for g := -40.0; g <= 0; g += 0.1 {
		if cost := LCDAGraded(1.34, g); cost < best {
			best, grade = cost, g
		}
	}
	if math.Abs(grade+10.7) > 0.2 {
		t.Errorf("cheapest at %.1f %%, want about -10.7", grade)
	}
	if level := LCDAGraded(1.34, 0); LCDAGraded(1.34, -32) != level || LCDAGraded(1.34, -33) <= level {
		t.Error("the grade term must turn positive below -32 %")
	}
}

func TestSanteeMeetsPandolfOnTheLevel(t *testing.T) {
	level := PandolfSantee(70, 10, 1.1, 0, 1)
	if just := PandolfSantee(70, 10, 1.1, -1e-9, 1); math.Abs(just-level) > 1e-6 {
		t.Errorf("a jump at the level: %v and %v", level, just)
	}
	at := Pandolf(70, 10, 1.1, -2, 1) - SanteeCorrection(70, 10, 1.1, -2, 1)
	if have := PandolfSantee(70, 10, 1.1, -2, 1); have != at {
		t.Errorf("at -2 %%: have %v, want the full correction %v", have, at)
	}
}

// Trade science 2.6: over the 27 cases of a grade, LCDA backpacking divided by
// the mean of the others lies within these bounds.
func TestDefaultLiesInTheMiddleOfTheField(t *testing.T) {
	rest := map[float64]float64{55: 1.118418771, 70: 1.123308532, 90: 1.001475051}
	for _, c := range []struct{ grade, least, most float64 }{{-10, 0.868, 1.011}, {0, 0.951, 1.041}, {10, 0.923, 1.018}} {
		for body, restWPerKg := range rest {
			for _, load := range []float64{0, 10, 20} {
				for _, kmh := range []float64{3, 4, 5} {
					v := kmh / 3.6
					others := []float64{LCDATotalMass(body, load, v, c.grade, 1), PandolfSantee(body, load, v, c.grade, 1)}
					if c.grade >= 0 {
						others = append(others, ACSMTotalMass(body, load, v, c.grade))
					}
					mean := 0.0
					for _, power := range others {
						mean += power / float64(len(others))
					}
					ratio := LCDABackpacking(restWPerKg, body, load, v, c.grade, 1) / mean
					if ratio < c.least || ratio > c.most {
						t.Errorf("%v kg + %v kg, %v km/h, %v %%: ratio %.3f", body, load, kmh, c.grade, ratio)
					}
				}
			}
		}
	}
}

func TestDearWhereNatureIsDear(t *testing.T) {
	equations := map[string]func(walk) float64{
		"LCDA backpacking": func(w walk) float64 {
			return LCDABackpacking(1.1, w.body, w.load, w.speed, w.grade, w.terrain)
		},
		"LCDA total mass": func(w walk) float64 { return LCDATotalMass(w.body, w.load, w.speed, w.grade, w.terrain) },
		"Pandolf":         func(w walk) float64 { return Pandolf(w.body, w.load, w.speed, w.grade, w.terrain) },
		"ACSM":            func(w walk) float64 { return ACSMTotalMass(w.body, w.load, w.speed, w.grade) },
	}
	rapid.Check(t, func(t *rapid.T) {
		w := walk{
			body: rapid.Float64Range(30, 130).Draw(t, "body"), load: rapid.Float64Range(0, 60).Draw(t, "load"),
			speed: rapid.Float64Range(0, 2).Draw(t, "speed"), grade: rapid.Float64Range(0, 45).Draw(t, "grade"),
			terrain: rapid.Float64Range(1, 4).Draw(t, "terrain"),
		}
		dearer := map[string]walk{}
		for _, what := range []string{"load", "speed", "grade", "terrain"} {
			other, more := w, rapid.Float64Range(0, 20).Draw(t, "more "+what)
			switch what {
			case "load":
				other.load += more
			case "speed":
				other.speed += more / 20
			case "grade":
				other.grade += more
			case "terrain":
				other.terrain += more / 20
			}
			dearer[what] = other
		}
		for name, power := range equations {
			for what, other := range dearer {
				if have, than := power(other), power(w); have < than*(1-1e-12) {
					t.Errorf("%s: more %s lowers %v to %v: %+v %+v", name, what, than, have, w, other)
				}
			}
		}
	})
}

func TestDeeperSnowIsHarder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		depth, density := rapid.Float64Range(0, 60).Draw(t, "cm"), rapid.Float64Range(0.05, 0.9).Draw(t, "g/cm3")
		at := SnowTerrain(depth, density)
		if SnowTerrain(depth+1, density) < at || SnowTerrain(depth, density+0.05) > at || at < 1.26 {
			t.Errorf("not monotone at %v cm, %v g/cm3", depth, density)
		}
	})
}
