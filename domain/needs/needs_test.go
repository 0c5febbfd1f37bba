package needs_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// hike is a trip of one member and one ordinary day.
func hike() *trip.Trip {
	settings := trip.DefaultSettings()
	settings.EarlyAppetite = 1
	return &trip.Trip{
		Settings: settings, Groups: []trip.CookGroup{{ID: 1, Name: "One"}},
		Crew: []trip.Member{{
			ID: 1, Name: "Ana", Group: 1, Sex: trip.Female, Age: 30, BodyMass: 55 * units.Kilogram, Height: 1.65, Appetite: 1, Strength: 1,
			OwnKit: 9 * units.Kilogram,
		}},
		Days: []trip.Day{{
			Distance: 16000, Ascent: 700, Descent: 600, Terrain: trip.Trail, CampHeight: 1500, Low: 5, High: 20, Meals: trip.Meals(),
		}},
	}
}

func codes(list []findings.Finding) string {
	var words []string
	for _, finding := range list {
		words = append(words, finding.Code)
	}
	return strings.Join(words, " ")
}

// Common practice: a hiker's day is 2,500 to 4,500 kcal, and a small woman on
// an ordinary one is near its lower end.
func TestOrdinaryDayIsOrdinary(t *testing.T) {
	result := needs.Compute(hike(), needs.Loads{{12 * units.Kilogram}})
	day := result.Members[0].Days[0]
	if day.Kcal < 2400 || day.Kcal > 3200 || day.Low > day.Kcal || day.High < day.Kcal {
		t.Errorf("have %v kcal, %v to %v", day.Kcal, day.Low, day.High)
	}
	if math.Abs(float64(result.Members[0].RestingKcal)-1270.25) > 1e-9 || result.Members[0].RestingBasis.String() != "Mifflin-St Jeor 1990" {
		t.Errorf("resting %v by %s", result.Members[0].RestingKcal, result.Members[0].RestingBasis)
	}
	if day.TargetKcal != day.Kcal || day.FromPacks != 1 {
		t.Errorf("all meals come from the packs: have %v of %v kcal", day.TargetKcal, day.Kcal)
	}
	if math.Abs(day.ProteinGrams-66) > 1e-9 || day.FibreGrams != 25 || day.SodiumLowMilligrams < 1500 {
		t.Errorf("have %v g protein, %v g fibre, %v mg sodium", day.ProteinGrams, day.FibreGrams, day.SodiumLowMilligrams)
	}
	if len(result.Findings) != 0 {
		t.Errorf("nothing is out of the usual: %s", codes(result.Findings))
	}
}

// The answer to "why this figure?" adds up to the figure.
func TestStepsAddUp(t *testing.T) {
	change := hike()
	change.Settings.ColdShare = 0.1
	change.Days[0].Low, change.Days[0].CampHeight = -5, 3400
	day := needs.Compute(change, needs.Loads{{14 * units.Kilogram}}).Members[0].Days[0]
	sum, parts := 0.0, 0
	for _, step := range day.Steps {
		if step.What.String() == "need of the day" {
			if math.Abs(step.Value-float64(day.Kcal)) > 1e-9 {
				t.Errorf("the last step says %v, the day %v", step.Value, day.Kcal)
			}
			break
		}
		if step.Basis.IsZero() || step.Unit == "" {
			t.Errorf("a step without basis or unit: %+v", step)
		}
		if !strings.HasPrefix(step.What.String(), "resting") {
			sum, parts = sum+step.Value, parts+1
		}
	}
	if math.Abs(sum-float64(day.Kcal)) > 1e-6 || parts < 7 {
		t.Errorf("%d steps add up to %v, the day is %v", parts, sum, day.Kcal)
	}
	if !strings.Contains(day.Steps[5].What.String(), "walking") || !strings.Contains(day.Steps[5].Basis.String(), "load 14.0 kg, terrain factor 1.10") {
		t.Errorf("a leg must name its load and ground: %+v", day.Steps)
	}
}

func TestOnlyMealsFromThePacksAreWanted(t *testing.T) {
	first := hike()
	first.Days[0].Meals = []trip.Meal{trip.Dinner, trip.Snack} // 0.30 and 0.25 of the day
	day := needs.Compute(first, nil).Members[0].Days[0]
	if math.Abs(day.FromPacks-0.55) > 1e-9 || math.Abs(float64(day.TargetKcal-0.55*day.Kcal)) > 1e-6 || math.Abs(day.ProteinGrams-0.55*66) > 1e-9 {
		t.Errorf("have %+v", day)
	}
	first.Settings.MealShares = trip.MealShares{}
	if day := needs.Compute(first, nil).Members[0].Days[0]; day.FromPacks != 0.5 {
		t.Errorf("without shares two of four meals are half the day: have %v", day.FromPacks)
	}
}

func TestAppetiteOfTheFirstDays(t *testing.T) {
	long := hike()
	long.Settings.EarlyAppetite = 0.9
	long.Days = append(long.Days, long.Days[0], long.Days[0])
	long.Crew[0].Appetite = 1.1
	days := needs.Compute(long, nil).Members[0].Days
	for d, want := range []float64{0.99, 0.99, 1.1} {
		if have := float64(days[d].TargetKcal / days[d].Kcal); math.Abs(have-want) > 1e-9 {
			t.Errorf("day %d: have %v of the need, want %v", d+1, have, want)
		}
	}
}

func TestGivenFigureStands(t *testing.T) {
	own := hike()
	own.Settings.EarlyAppetite = 0.9
	own.Crew[0].GivenNeed = optional.Of(units.Kcal(4800))
	result := needs.Compute(own, nil)
	if day := result.Members[0].Days[0]; day.Kcal != 4800 || day.TargetKcal != 4800 || day.High > 3200 || !strings.Contains(day.Steps[0].Basis.String(), "leader") {
		t.Errorf("have %+v", day)
	}
	if codes(result.Findings) != "given-need-apart" {
		t.Errorf("have %s", codes(result.Findings))
	}
}

func TestEveryBodyGetsItsEquation(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*trip.Member)
		basis  string
		code   string
	}{
		"a minor":     {func(m *trip.Member) { m.Age = 15 }, "Schofield 1985 (FAO/WHO/UNU 2004), 10 to 18 years", "minor"},
		"no height":   {func(m *trip.Member) { m.Height = 0 }, "30 to 60 years", "height-not-given"},
		"old":         {func(m *trip.Member) { m.Age = 81 }, "Mifflin", "age-beyond-equation"},
		"older":       {func(m *trip.Member) { m.Age = 70 }, "Mifflin", "older-member"},
		"unknown sex": {func(m *trip.Member) { m.Sex = trip.SexNotGiven }, "mean of both sexes", "sex-not-given"},
		"no mass":     {func(m *trip.Member) { m.BodyMass = 0 }, "Mifflin", "body-mass-missing"},
		"odd height":  {func(m *trip.Member) { m.Height = 0.7 }, "Mifflin", "body-figures-odd"},
	} {
		made := hike()
		c.change(&made.Crew[0])
		result := needs.Compute(made, nil)
		if !strings.Contains(result.Members[0].RestingBasis.String(), c.basis) || !strings.Contains(codes(result.Findings), c.code) {
			t.Errorf("%s: basis %q, findings %q", name, result.Members[0].RestingBasis, codes(result.Findings))
		}
	}
}

// Torun 2001 in FAO/WHO/UNU 2004: a girl of 50 kg needs 2393.4 kcal on an
// ordinary day, so also on a day of rest on the trail.
func TestGrowingMemberIsNeverBelowAnOrdinaryDay(t *testing.T) {
	rest := hike()
	rest.Days[0].Distance, rest.Days[0].Ascent, rest.Days[0].Descent = 0, 0, 0
	rest.Crew[0].Age, rest.Crew[0].BodyMass = 15, 50*units.Kilogram
	if day := needs.Compute(rest, nil).Members[0].Days[0]; math.Abs(float64(day.Kcal)-2393.4) > 0.1 {
		t.Errorf("have %v kcal", day.Kcal)
	}
}

func TestSecondLooksAtTheRoute(t *testing.T) {
	for code, change := range map[string]func(*trip.Day){
		"day-too-steep":         func(d *trip.Day) { d.Distance, d.Ascent = 800, 900 },
		"day-without-distance":  func(d *trip.Day) { *d = trip.Day{MovingHours: optional.Of(units.Hours(4))} },
		"day-too-fast":          func(d *trip.Day) { d.MovingHours = optional.Of(units.Hours(1)) },
		"long-day":              func(d *trip.Day) { d.Distance = 48000 },
		"moving-time-uncertain": func(d *trip.Day) { d.Terrain = trip.Bog },
		"need-high":             func(d *trip.Day) { d.Distance, d.Ascent = 45000, 3500 },
	} {
		made := hike()
		change(&made.Days[0])
		result := needs.Compute(made, needs.Loads{{20 * units.Kilogram}})
		if !strings.Contains(codes(result.Findings), code) {
			t.Errorf("%s: have %q", code, codes(result.Findings))
		}
		for _, finding := range result.Findings {
			if finding.What.IsZero() || finding.Why.IsZero() || finding.Remedy.IsZero() || finding.Stage != findings.Needs {
				t.Errorf("%s: a finding without words: %+v", code, finding)
			}
		}
	}
}

// The rules for the walking time are not what the leader asks of anybody: only
// a time given by hand can be too fast.
func TestComputedTimesAreNeverCalledTooFast(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := hike()
		made.Settings.PartyFactor = rapid.Float64Range(1, 2).Draw(rt, "party factor")
		day := &made.Days[0]
		day.Distance = units.Metres(rapid.Float64Range(0, 40000).Draw(rt, "distance"))
		day.Ascent = units.Metres(rapid.Float64Range(0, 2500).Draw(rt, "ascent"))
		day.Descent = units.Metres(rapid.Float64Range(0, 2500).Draw(rt, "descent"))
		day.SteepDescent = min(day.Descent, units.Metres(rapid.Float64Range(0, 2500).Draw(rt, "steep")))
		if list := codes(needs.Compute(made, nil).Findings); strings.Contains(list, "day-too-fast") {
			rt.Fatalf("%+v: %s", *day, list)
		}
	})
}

func TestAnyTripHasSoundNeeds(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		result := needs.Compute(made, nil)
		if !reflect.DeepEqual(result, needs.Compute(made, nil)) {
			rt.Fatal("the same trip must give the same needs")
		}
		if len(result.Members) != len(made.Crew) || len(result.Walks) != len(made.Days) {
			rt.Fatalf("%d members, %d walks", len(result.Members), len(result.Walks))
		}
		for i, member := range result.Members {
			m := &made.Crew[i]
			if member.Member != m.ID || len(member.Days) != len(made.Days) {
				rt.Fatalf("member %d: %+v", i, member)
			}
			for d, day := range member.Days {
				if day.Present != m.Present(d+1) {
					rt.Fatalf("%s on day %d: present %v", m.Name, d+1, day.Present)
				}
				if !day.Present {
					if !reflect.DeepEqual(day, needs.Day{}) {
						rt.Fatal("who is not there needs nothing from the packs")
					}
					continue
				}
				checkDay(rt, m, day)
			}
		}
	})
}

func checkDay(rt *rapid.T, m *trip.Member, day needs.Day) {
	for name, value := range map[string]float64{
		"need": float64(day.Kcal), "target": float64(day.TargetKcal), "protein": day.ProteinGrams, "fat": day.FatLowGrams,
		"carbohydrate": day.CarbLowGrams, "fibre": day.FibreGrams, "sodium": day.SodiumLowMilligrams, "power": day.MovingWatts,
	} {
		if math.IsNaN(value) || math.IsInf(value, 0) || value < 0 {
			rt.Errorf("%s: %s is %v", m.Name, name, value)
		}
	}
	if day.Low > day.High || day.Kcal < 800 || day.FromPacks < 0 || day.FromPacks > 1+1e-9 {
		rt.Errorf("%s: %+v", m.Name, day)
	}
	if given, ok := m.GivenNeed.Get(); ok {
		if day.Kcal != given {
			rt.Errorf("%s: %v kcal given, %v planned", m.Name, given, day.Kcal)
		}
	} else if day.Kcal < day.Low || day.Kcal > day.High {
		rt.Errorf("%s: %v kcal outside %v to %v", m.Name, day.Kcal, day.Low, day.High)
	}
}

// On the level and uphill a heavier load never lowers the need.
func TestHeavierLoadNeverLowersTheNeed(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		light, heavy := make(needs.Loads, len(made.Crew)), make(needs.Loads, len(made.Crew))
		for i := range made.Crew {
			for d := range made.Days {
				made.Days[d].Descent, made.Days[d].SteepDescent = 0, 0
				load := units.Mass(rapid.IntRange(0, 30_000).Draw(rt, "load")) * units.Gram
				light[i] = append(light[i], load)
				heavy[i] = append(heavy[i], load+units.Mass(rapid.IntRange(0, 9_000).Draw(rt, "more"))*units.Gram)
			}
		}
		a, b := needs.Compute(made, light), needs.Compute(made, heavy)
		for i := range a.Members {
			for d := range a.Members[i].Days {
				if b.Members[i].Days[d].Kcal < a.Members[i].Days[d].Kcal-1e-6 {
					rt.Errorf("member %d, day %d: %v kcal with %v, %v with %v", i, d+1, a.Members[i].Days[d].Kcal, light[i][d], b.Members[i].Days[d].Kcal, heavy[i][d])
				}
			}
		}
	})
}

// The rounds of the plan reckon with the same figures as the answer.
func TestFiguresAreThoseOfTheAnswer(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		full, bare := needs.Compute(made, nil), needs.Figures(made, nil)
		for i := range full.Members {
			for d := range full.Members[i].Days {
				if bare.Members[i].Days[d].Steps != nil {
					rt.Fatal("figures come without steps")
				}
				full.Members[i].Days[d].Steps = nil
			}
		}
		if !reflect.DeepEqual(full, bare) {
			rt.Fatal("the figures differ")
		}
	})
}

func BenchmarkFigures60x21(b *testing.B) {
	large := triptest.Large(60, 21, 1).Canonical()
	b.ReportAllocs()
	for b.Loop() {
		needs.Figures(large, nil)
	}
}

func BenchmarkNeeds60x21(b *testing.B) {
	large := triptest.Large(60, 21, 1).Canonical()
	b.ReportAllocs()
	for b.Loop() {
		needs.Compute(large, nil)
	}
}
