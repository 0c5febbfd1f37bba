package needs

import (
	"math"
	"os"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/science/checkvalues"
	"sumpter/domain/science/dayenergy"
	"sumpter/domain/science/metabolism"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// referencePerson is the person a row of day_energy names by mass.
func referencePerson(in checkvalues.Inputs) body {
	return map[float64]body{
		55: {massKg: 55, heightCm: 165, age: 30, sex: metabolism.Female},
		70: {massKg: 70, heightCm: 175, age: 35, sex: metabolism.Male},
		90: {massKg: 90, heightCm: 185, age: 40, sex: metabolism.Male},
	}[in.Number(0)]
}

// The stage's own sum gives the worked days of the factorial method.
func TestBurnAgainstPublishedDays(t *testing.T) {
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	hiking := func(equation trip.WalkingEquation) func(checkvalues.Row) any {
		return func(row checkvalues.Row) any {
			b := referencePerson(row.Inputs)
			r := route{terrain: row.Inputs.Value("eta"), legs: []leg{
				{name: prose.Say("level"), lengthKm: 12, hours: 3}, {name: prose.Say("up"), lengthKm: 6, riseM: 480, hours: 2}, {name: prose.Say("down"), lengthKm: 6, riseM: -480, hours: 1.5},
			}}
			still := []stillHours{
				{prose.Say("asleep"), dayenergy.Still{ActivityRatio: 1, Hours: 8}}, {prose.Say("camp"), dayenergy.Still{ActivityRatio: 1.8, Hours: 8}},
				{prose.Say("stops"), dayenergy.Still{ActivityRatio: 1.3, Hours: 1.5}},
			}
			return burnOf(equation, b.resting(), b.massKg, row.Inputs.Value("L"), &r, still).total
		}
	}
	checkvalues.Check(t, file, "day_energy", checkvalues.Answers{
		"hiking day, LCDA backpacking + grade (default)": hiking(trip.LCDABackpacking),
		"hiking day, LCDA graded on total mass":          hiking(trip.LCDAWalking),
		"hiking day, Pandolf + Santee":                   hiking(trip.Pandolf),
		"rest day in camp": func(row checkvalues.Row) any {
			b := referencePerson(row.Inputs)
			return burnOf(trip.LCDABackpacking, b.resting(), b.massKg, 0, &route{}, stillOf(Walk{})).total
		},
	})
}

func TestLegsOfADay(t *testing.T) {
	for _, c := range []struct {
		name     string
		day      trip.Day
		grades   []float64 // percent, in the order level, up, down, steep
		tooSteep bool
	}{
		{"flat", trip.Day{Distance: 12000}, []float64{0}, false},
		{"rolling", trip.Day{Distance: 15000, Ascent: 300, Descent: 300}, []float64{0, 10, -10}, false},
		{"no room for a level part", trip.Day{Distance: 8000, Ascent: 800, Descent: 800}, []float64{20, -20}, false},
		{"steep descent", trip.Day{Distance: 9000, Descent: 600, SteepDescent: 300}, []float64{0, -10, -25}, false},
		{"more steep than descent", trip.Day{Distance: 9000, Descent: 300, SteepDescent: 900}, []float64{0, -25}, false},
		{"a ladder", trip.Day{Distance: 500, Ascent: 900}, []float64{45}, true},
		{"no distance", trip.Day{Ascent: 900}, []float64{45}, true},
		{"rest", trip.Day{}, nil, false},
	} {
		legs, tooSteep := legsOf(&c.day)
		if len(legs) != len(c.grades) || tooSteep != c.tooSteep {
			t.Errorf("%s: have %+v, too steep %v", c.name, legs, tooSteep)
			continue
		}
		for i, l := range legs {
			if math.Abs(l.gradePercent()-c.grades[i]) > 1e-9 {
				t.Errorf("%s: leg %d has %v %%, want %v", c.name, i, l.gradePercent(), c.grades[i])
			}
		}
	}
}

// Langmuir 1984: 15 km with 900 m up is 4.5 h; 600 m of gentle descent make it
// 4.1667 h, 600 m of steep descent 4.8333 h.
func TestMovingTimeIsLangmuirs(t *testing.T) {
	settings := trip.Settings{PartyFactor: 1}
	for _, c := range []struct {
		day  trip.Day
		want float64
	}{
		{trip.Day{Distance: 15000, Ascent: 900}, 4.5},
		{trip.Day{Distance: 15000, Ascent: 900, Descent: 600}, 4.1666667},
		{trip.Day{Distance: 15000, Ascent: 900, Descent: 600, SteepDescent: 600}, 4.8333333},
	} {
		r := routeOf(&c.day, &settings)
		if have := float64(r.walk.Hours); math.Abs(have-c.want) > 1e-6 {
			t.Errorf("%+v: have %v h, want %v", c.day, have, c.want)
		}
		sum := 0.0
		for _, l := range r.legs {
			sum += l.hours
		}
		if math.Abs(sum-float64(r.walk.Hours)) > 1e-9 {
			t.Errorf("the legs take %v h, the day %v", sum, r.walk.Hours)
		}
	}
}

func TestPartyStopsAndHandGivenHours(t *testing.T) {
	settings := trip.Settings{PartyFactor: 1.5, StopShare: 0.25}
	day := trip.Day{Distance: 10000}
	if r := routeOf(&day, &settings); r.walk.Hours != 3 || r.walk.StopHours != 0.75 || r.walk.GivenByHand {
		t.Errorf("have %+v", r.walk)
	}
	day.MovingHours = given(4)
	r := routeOf(&day, &settings)
	if r.walk.Hours != 4 || r.walk.StopHours != 1 || !r.walk.GivenByHand || math.Abs(r.legs[0].speedMPerS()-10.0/4/3.6) > 1e-12 {
		t.Errorf("have %+v %+v", r.walk, r.legs)
	}
	day.MovingHours = given(0.5)
	if r := routeOf(&day, &settings); !r.tooFast || r.legs[0].speedMPerS() != fastestMPerS {
		t.Error("20 km/h must be reckoned at the end of the equations, and be said")
	}
	day.MovingHours = given(0)
	if r := routeOf(&day, &settings); r.legs != nil || r.tooFast && r.walk.Hours > 0 {
		t.Error("a day that is driven has no legs")
	}
	hours := trip.Day{MovingHours: given(5)}
	if r := routeOf(&hours, &settings); !r.noLength || len(r.legs) != 1 || r.legs[0].hours != 5 {
		t.Errorf("hours without a distance are walked on the level: %+v", r)
	}
}

func TestStillHoursFillTheDay(t *testing.T) {
	for _, walk := range []Walk{{}, {Hours: 6.5, StopHours: 1.5}, {Hours: 0.5}, {Hours: 15, StopHours: 2}, {Hours: 20, StopHours: 4}, {Hours: 24}} {
		sum := float64(walk.Hours)
		for _, part := range stillOf(walk) {
			if part.Hours < 0 {
				t.Errorf("%+v: %s %v h", walk, part.name, part.Hours)
			}
			sum += part.Hours
		}
		if math.Abs(sum-24) > 1e-9 {
			t.Errorf("%+v: the hours add up to %v", walk, sum)
		}
	}
}

func TestPowerIsNeverBelowRest(t *testing.T) {
	l := leg{lengthKm: 1, riseM: -400, hours: 2}
	for _, equation := range equations() {
		if have := power(equation, 80, 70, 10, l, 1); have < 80 {
			t.Errorf("%s: %v W", equation, have)
		}
	}
}

func TestTerrainFactors(t *testing.T) { // Soule and Goldman 1972, and common practice
	for terrain, want := range map[trip.Terrain]float64{
		trip.Road: 1, trip.DirtRoad: 1.1, trip.Trail: 1.1, trip.RoughTrail: 1.2, trip.LightBrush: 1.2, trip.HeavyBrush: 1.5,
		trip.Scree: 1.65, trip.Bog: 1.8, trip.Sand: 2.1, trip.SoftSnow: 2.5, "glacier": 1.1,
	} {
		if have := terrainFactor(terrain); have != want {
			t.Errorf("%s: have %v, want %v", terrain, have, want)
		}
	}
}

func given(hours units.Hours) optional.Value[units.Hours] { return optional.Of(hours) }
