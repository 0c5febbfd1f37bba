package needs_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// byHand reckons one day of the default equation straight from the published
// formulas, without any of our packages: Mifflin-St Jeor 1990, Naismith with
// Langmuir, Looney 2022 with its grade term, the factorial day of FAO 2004.
func byHand(m *trip.Member, day *trip.Day, s *trip.Settings, loadKg float64) float64 {
	w := m.BodyMass.Kilograms()
	rest := 10*w + 6.25*100*float64(m.Height) - 5*float64(m.Age)
	switch m.Sex {
	case trip.Male:
		rest += 5
	case trip.Female:
		rest -= 161
	default:
		rest -= 78
	}
	km, up, down := float64(day.Distance)/1000, float64(day.Ascent), float64(day.Descent)
	upKm, downKm := up/100, down/100 // 10 % slopes
	levelKm := km - upKm - downKm
	levelH, upH, downH := levelKm/5, upKm/5+up/600, downKm/5-down/1800
	party := s.PartyFactor
	power := func(lengthKm, hours, grade float64) float64 {
		if hours == 0 {
			return 0
		}
		v := lengthKm / (hours * party) / 3.6
		g := 0.34 * v * grade * (1 - math.Pow(1.05, 1-math.Pow(1.1, grade+32)))
		movement := 1.1 * (1.78*math.Pow(v, 0.58) + 0.27*math.Pow(v, 4) + g)
		watts := w * (rest*4184/86400/w + (0.19+movement)*(1+1.96*math.Pow(loadKg/w, 1.36)))
		return watts * hours * party * 3600 / 4184
	}
	moving := (levelH + upH + downH) * party
	stops := moving * s.StopShare
	left := 24 - moving - stops
	camp := min(8, left-8)
	still := rest / 24 * (8*1.0 + camp*1.8 + (left-8-camp)*1.7 + stops*1.3)
	return still + power(levelKm, levelH, 0) + power(upKm, upH, 10) + power(downKm, downH, -10)
}

func TestDaysAgainstTheFormulasByHand(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := hike()
		day := &made.Days[0]
		day.Ascent = units.Metres(rapid.IntRange(1, 800).Draw(rt, "up"))
		day.Descent = units.Metres(rapid.IntRange(1, 800).Draw(rt, "down"))
		day.Distance = units.Metres(rapid.IntRange(17_000, 22_000).Draw(rt, "metres"))
		made.Crew[0].Sex = rapid.SampledFrom([]trip.Sex{trip.Female, trip.Male, trip.SexNotGiven}).Draw(rt, "sex")
		made.Crew[0].Age = rapid.IntRange(18, 75).Draw(rt, "age")
		made.Crew[0].BodyMass = units.Mass(rapid.IntRange(45, 110).Draw(rt, "kg")) * units.Kilogram
		made.Crew[0].Height = units.Metres(rapid.Float64Range(1.5, 1.95).Draw(rt, "m"))
		load := units.Mass(rapid.IntRange(0, 25_000).Draw(rt, "load")) * units.Gram
		have := float64(needs.Compute(made, needs.Loads{{load}}).Members[0].Days[0].Kcal)
		if want := byHand(&made.Crew[0], day, &made.Settings, load.Kilograms()); math.Abs(have-want) > 1e-6*want {
			rt.Errorf("have %v kcal, by hand %v", have, want)
		}
	})
}

// The order of the crew, names and the units a reader likes change no figure;
// each member's day depends on that member alone.
func TestNeedsDependOnFactsAlone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		before := needs.Figures(made, nil)
		other := *made
		other.Crew = slices.Clone(made.Crew)
		slices.Reverse(other.Crew)
		for i := range other.Crew {
			other.Crew[i].Name = "renamed"
		}
		other.Units = units.US
		after := needs.Figures(&other, nil)
		slices.Reverse(after.Members)
		if !reflect.DeepEqual(before.Members, after.Members) || !reflect.DeepEqual(before.Walks, after.Walks) {
			rt.Error("the needs differ")
		}
		alone := *made
		alone.Crew = made.Crew[:1]
		if !reflect.DeepEqual(needs.Figures(&alone, nil).Members[0], before.Members[0]) {
			rt.Error("another member changes the first one's needs")
		}
	})
}

// Farther, higher, rougher and colder days never need less.
func TestHarderDaysNeverNeedLess(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := hike()
		day := &made.Days[0]
		day.Descent, day.Distance = 0, units.Metres(rapid.IntRange(5_000, 25_000).Draw(rt, "metres"))
		day.Ascent = units.Metres(rapid.IntRange(0, 1_500).Draw(rt, "up"))
		made.Settings.ColdShare = 0.1
		kcal := func() units.Kcal { return needs.Figures(made, nil).Members[0].Days[0].Kcal }
		base, plain := kcal(), *day
		for name, harder := range map[string]func(){
			"farther":           func() { day.Distance += 1000 },
			"higher":            func() { day.Ascent += 100 },
			"rougher":           func() { day.Terrain = trip.Scree },
			"frost":             func() { day.Low = -3 },
			"a camp at 3,500 m": func() { day.CampHeight = 3500 },
		} {
			*day = plain
			if harder(); kcal() < base {
				rt.Errorf("%s: %v kcal, before %v", name, kcal(), base)
			}
		}
	})
}

func TestLoadsThatAreNotGivenAreOwnKit(t *testing.T) {
	made := hike()
	own := needs.Figures(made, needs.Loads{{made.Crew[0].OwnKit}}).Members[0].Days[0]
	for name, loads := range map[string]needs.Loads{"nil": nil, "no days": {{}}} {
		if have := needs.Figures(made, loads).Members[0].Days[0]; !reflect.DeepEqual(have, own) {
			t.Errorf("%s: %v kcal, with own kit %v", name, have.Kcal, own.Kcal)
		}
	}
}

// IOM 2005: fat 20 to 35 %, carbohydrate from 45 % of energy; 1.2 g/kg protein
// by the trip, or what the member wants.
func TestTargetsAndWhoSetThem(t *testing.T) {
	made := hike()
	made.Days[0].Meals = trip.Meals()
	day := needs.Compute(made, nil).Members[0].Days[0]
	kcal := float64(day.TargetKcal)
	for name, pair := range map[string][2]float64{
		"fat, least": {day.FatLowGrams, 0.20 * kcal / 9}, "fat, most": {day.FatHighGrams, 0.35 * kcal / 9},
		"carbohydrate": {day.CarbLowGrams, 0.45 * kcal / 4},
	} {
		if math.Abs(pair[0]-pair[1]) > 1e-9 {
			t.Errorf("%s: have %v, want %v", name, pair[0], pair[1])
		}
	}
	made.Crew[0].ProteinPer = optional.Of(1.6)
	day = needs.Compute(made, nil).Members[0].Days[0]
	if math.Abs(day.ProteinGrams-1.6*55) > 1e-9 {
		t.Errorf("have %v g", day.ProteinGrams)
	}
	found := false
	for _, step := range day.Steps {
		found = found || step.What.String() == "protein, 1.6 g/kg" && step.Basis.String() == "the member's own figure"
	}
	if !found {
		t.Errorf("nobody says who set the protein: %+v", day.Steps)
	}
	made.Crew[0].Age = 15
	if day = needs.Compute(made, nil).Members[0].Days[0]; math.Abs(day.FatLowGrams-0.25*float64(day.TargetKcal)/9) > 1e-9 {
		t.Errorf("a minor needs a quarter of the energy from fat: %v", day.FatLowGrams)
	}
}
