package cooking_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/cooking"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/portions/portionstest"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// dinnerByHand reckons the fuel of a simmered dinner for one pot straight from
// the formulas of trade science 6, without any of our packages: at the sea,
// where water boils at 99.974 C (IAPWS at ISA pressure).
func dinnerByHand(eaters, minutes int, efficiency, startC, potKg float64) float64 {
	const boilsAt, litreKJ, lower = 99.97429581, 4.19, 45.73200799
	water := float64(eaters) * 0.4
	inPot := water + float64(eaters)*0.1 // 100 g of dry food displace 100 mL
	heat := (water*litreKJ + potKg*0.897) * (boilsAt - startC)
	watts := 250 * math.Pow(max(1, inPot/1.5), 2.0/3)
	heat += watts * float64(minutes) * math.Pow(2, (100-boilsAt)/10) * 60 / 1000
	drinks := float64(eaters) * 0.3
	heat += (drinks*litreKJ + potKg*0.897) * (boilsAt - startC)
	heat += 0.5 * litreKJ * (45 - startC) // washing up, one pot
	return heat / (efficiency * lower)
}

func TestDinnerAgainstTheFormulasByHand(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		eaters, minutes := rapid.IntRange(1, 8).Draw(rt, "eaters"), rapid.IntRange(0, 40).Draw(rt, "minutes")
		made := kettle()
		for id := 2; id <= eaters; id++ {
			member := made.Crew[0]
			member.ID = trip.MemberID(id)
			made.Crew = append(made.Crew, member)
		}
		made.Settings.HotDrink, made.Settings.WashUp = 300*units.Millilitre, 500*units.Millilitre
		made.Settings.WaterStart = units.Celsius(rapid.IntRange(1, 25).Draw(rt, "start"))
		made.Recipes[0].Water, made.Recipes[0].Simmer = 400*units.Millilitre, units.Minutes(minutes)
		made.Recipes[0].Ingredients[0] = trip.Ingredient{Food: 1, Amount: 100 * units.Gram, Place: trip.InPot}
		made.Gear[0].Efficiency = rapid.Float64Range(0.3, 0.7).Draw(rt, "efficiency")
		made.Gear[1].Capacity, made.Gear[1].Mass = 10*units.Litre, units.Mass(rapid.IntRange(0, 900).Draw(rt, "pot"))*units.Gram
		have := compute(made).Meals[0].FuelMass.Grams()
		want := dinnerByHand(eaters, minutes, made.Gear[0].Efficiency, float64(made.Settings.WaterStart), made.Gear[1].Mass.Kilograms())
		if math.Abs(have-want) > 0.001+1e-4*want {
			rt.Errorf("have %v g, by hand %v", have, want)
		}
	})
}

// The order of the lists, names and units a reader likes change no figure.
func TestCookingDependsOnFactsAlone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		before := compute(made)
		other := *made
		other.Crew, other.Gear, other.Recipes, other.Fuels = slices.Clone(made.Crew), slices.Clone(made.Gear), slices.Clone(made.Recipes), slices.Clone(made.Fuels)
		slices.Reverse(other.Crew)
		slices.Reverse(other.Gear)
		slices.Reverse(other.Recipes)
		slices.Reverse(other.Fuels)
		for i := range other.Recipes {
			other.Recipes[i].Name += " by another name"
		}
		other.Units = units.US
		after := compute(&other)
		if !reflect.DeepEqual(before.Meals, after.Meals) || !reflect.DeepEqual(before.Fuel, after.Fuel) || !reflect.DeepEqual(before.Water, after.Water) {
			rt.Error("the figures differ")
		}
		if len(before.Findings) != len(after.Findings) {
			rt.Errorf("%s and then %s", codes(before.Findings), codes(after.Findings))
		}
	})
}

// What makes cooking harder never takes less fuel.
func TestHarderCookingNeverTakesLessFuel(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := kettle()
		made.Recipes[0].Simmer = units.Minutes(rapid.IntRange(1, 20).Draw(rt, "minutes"))
		made.Gear[1].Mass = units.Mass(rapid.IntRange(0, 500).Draw(rt, "pot")) * units.Gram
		base := compute(made).Meals[0].FuelMass
		for name, harder := range map[string]func(*trip.Trip){
			"another eater": func(k *trip.Trip) {
				member := k.Crew[0]
				member.ID = 2
				k.Crew = append(slices.Clone(k.Crew), member)
			},
			"colder water":    func(k *trip.Trip) { k.Settings.WaterStart -= 10 },
			"a worse stove":   func(k *trip.Trip) { k.Gear[0].Efficiency = 0.4 },
			"a heavier pot":   func(k *trip.Trip) { k.Gear[1].Mass += 300 * units.Gram },
			"snow for water":  func(k *trip.Trip) { k.Days[0].SnowWater, k.Days[0].Low = true, -5 },
			"longer cooking":  func(k *trip.Trip) { k.Recipes[0].Simmer += 5 },
			"more to wash up": func(k *trip.Trip) { k.Settings.WashUp = units.Litre },
		} {
			other := *made
			other.Gear, other.Days, other.Recipes = slices.Clone(made.Gear), slices.Clone(made.Days), slices.Clone(made.Recipes)
			harder(&other)
			if have := compute(&other).Meals[0].FuelMass; have < base {
				rt.Errorf("%s: %v, before %v", name, have, base)
			}
		}
	})
}

// US Army TB MED 507 and IOM 2005: base drink by sex, moving hours by heat and
// effort, never above the ceilings.
func TestDrinking(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*trip.Trip)
		litres float64
	}{
		"a day of rest, woman":     {func(*trip.Trip) {}, 2.2},
		"a day of rest, man":       {func(k *trip.Trip) { k.Crew[0].Sex = trip.Male }, 3.0},
		"a day of rest, not given": {func(k *trip.Trip) { k.Crew[0].Sex = trip.SexNotGiven }, 2.6},
		"a day of rest, child":     {func(k *trip.Trip) { k.Crew[0].Age = 9 }, 1.7},
		"five cool easy hours":     {func(k *trip.Trip) { k.Days[0].Distance, k.Days[0].MovingHours = 10_000, optional.Of(units.Hours(5)) }, 2.2 + 5*0.3},
		"five hot easy hours": {func(k *trip.Trip) {
			k.Days[0].Distance, k.Days[0].MovingHours, k.Days[0].High = 10_000, optional.Of(units.Hours(5)), 28 // 82.4 F
		}, 2.2 + 5*0.473176},
		"twelve very hot hours": {func(k *trip.Trip) {
			k.Days[0].Distance, k.Days[0].MovingHours, k.Days[0].High = 20_000, optional.Of(units.Hours(12)), 38
		}, 11.35624},
	} {
		made := kettle()
		c.change(made)
		if have := compute(made).Water[0].Drinking.Litres(); math.Abs(have-c.litres) > 1e-4 {
			t.Errorf("%s: have %v L, want %v", name, have, c.litres)
		}
	}
}

// Heavier work drinks more at the same heat.
func TestEffortRaisesTheDrink(t *testing.T) {
	made := kettle()
	made.Days[0].Distance, made.Days[0].High = 12_000, 29 // 84.2 F: 0.47, 0.71, 0.95 L an hour
	made.Crew[0].BodyMass, made.Crew[0].Height, made.Crew[0].Sex = 80*units.Kilogram, 1.8, trip.Male
	c := made.Canonical()
	last := 0.0
	for _, load := range []units.Mass{0, 25 * units.Kilogram, 50 * units.Kilogram} {
		n := needs.Compute(c, needs.Loads{{load}})
		litres := cooking.Compute(c, n, portionstest.Serve(c), c.Legs()).Water[0].Drinking.Litres()
		if litres <= last {
			t.Errorf("with %v: %v L, before %v", load, litres, last)
		}
		last = litres
	}
}

func TestFrostKeepsFuelBack(t *testing.T) {
	made := kettle()
	made.Gear[0].Efficiency = 0.0815 // about 95 g
	if have := compute(made).Fuel[0].Containers; len(have) != 1 {
		t.Fatalf("a canister of 100 g is enough: %+v", have)
	}
	made.Days[0].Low = -5
	if have := compute(made).Fuel[0].Containers; len(have) != 2 {
		t.Errorf("in frost its last 10 g do not count: %+v", have)
	}
	made.Gear[0].Fuel, made.Fuels[0].Fuel = trip.WhiteGas, trip.WhiteGas
	made.Fuels[0].Net = 300 * units.Gram
	if have := compute(made).Fuel[0]; len(have.Containers) != 1 || have.Containers[0].Fuel != have.Needed {
		t.Errorf("a bottle is filled as far as needed: %+v", have)
	}
}
