package cooking_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/portions/portionstest"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// kettle is a trip of one member who boils one litre for dinner on one day, at
// sea level, from 15 degrees, in a pot without mass.
func kettle() *trip.Trip {
	settings := trip.DefaultSettings()
	settings.HotDrink, settings.WashUp, settings.WaterStart, settings.FuelReserve = 0, 0, 15, 0
	return &trip.Trip{
		Settings: settings, Groups: []trip.CookGroup{{ID: 1, Name: "One"}},
		Crew:  []trip.Member{{ID: 1, Name: "Ana", Group: 1, Sex: trip.Female, Age: 30, BodyMass: 55 * units.Kilogram, Height: 1.65}},
		Days:  []trip.Day{{Low: 5, High: 20, Meals: trip.Meals()}},
		Foods: []trip.Food{{ID: 1, Name: "Tea"}},
		Recipes: []trip.Recipe{{
			ID: 1, Name: "Tea", Meals: trip.Meals(), Water: units.Litre,
			Ingredients: []trip.Ingredient{{Food: 1, Amount: 0, Place: trip.AtBowl}},
		}},
		Menu: []trip.Cell{{Day: 1, Meal: trip.Dinner, Group: 1, Dishes: []trip.Dish{{Recipe: 1}}}},
		Gear: []trip.Gear{
			{ID: 1, Name: "Stove", Kind: trip.Stove, Group: 1, Fuel: trip.GasMix, PowerWatts: 2000, Efficiency: 0.55},
			{ID: 2, Name: "Pot", Kind: trip.Pot, Group: 1, Capacity: 2 * units.Litre},
		},
		Fuels: []trip.FuelContainer{{Fuel: trip.GasMix, Name: "Can", Net: 100 * units.Gram, Empty: 90 * units.Gram}},
	}
}

func compute(t *trip.Trip) cooking.Result {
	c := t.Canonical()
	return cooking.Compute(c, needs.Compute(c, nil), portionstest.Serve(c), c.Legs())
}

func codes(list []findings.Finding) string {
	var words []string
	for _, finding := range list {
		words = append(words, finding.Code)
	}
	return strings.Join(words, " ")
}

// testdata/check_values.csv, fuel: 1 L from 15 to 100 C on canister gas at
// 0.55 takes 14.160 g; snow of -10 C to 95 C at 0.50 takes 32.913 g; ethanol at
// 0.40 takes 33.215 g.
func TestFuelOfOneLitre(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*trip.Trip)
		grams  float64
	}{
		"gas": {func(*trip.Trip) {}, 14.160},
		"ethanol": {func(k *trip.Trip) {
			k.Gear[0].Fuel, k.Gear[0].Efficiency = trip.Ethanol, 0.4
		}, 33.215},
	} {
		made := kettle()
		c.change(made)
		meal := compute(made).Meals[0]
		if have := meal.FuelMass.Grams(); math.Abs(have-c.grams) > 0.02 {
			t.Errorf("%s: have %v g, want %v", name, have, c.grams)
		}
		if meal.FuelLow >= meal.FuelMass || meal.FuelHigh <= meal.FuelMass || meal.Boils != 1 || meal.Cold {
			t.Errorf("%s: have %+v", name, meal)
		}
	}
}

func TestMeltingSnowIsReckoned(t *testing.T) {
	snow := kettle()
	snow.Days[0] = trip.Day{Low: -10, High: -2, SnowWater: true, CampHeight: 1494, Meals: trip.Meals()} // boils at 95 C
	snow.Gear[0].Efficiency = 0.5
	result := compute(snow)
	// the litre for the pot by the check value, and the drinking water melted to 5 C
	drunk := result.Water[0].Drinking.Litres()
	want := 32.913 + drunk*(2.10*10+333.55+4.19*5)/(0.5*45.7320)
	if have := result.Meals[0].FuelMass.Grams(); math.Abs(have-want) > 0.05 {
		t.Errorf("have %v g, want %v", have, want)
	}
	if !strings.Contains(codes(result.Findings), "melting-snow") {
		t.Errorf("have %s", codes(result.Findings))
	}
}

// testdata/check_values.csv, boiling and fuel: at 3,000 m water boils at
// 89.97 C, grains take 2.0039 times as long, dry legumes 3.5122 times.
func TestCookingAtHeight(t *testing.T) {
	high := kettle()
	high.Days[0].CampHeight = 3000
	high.Recipes[0].Simmer = 10
	meal := compute(high).Meals[0]
	if math.Abs(float64(meal.BoilsAt)-89.972) > 0.01 || math.Abs(float64(meal.SimmerMinutes)-20.039) > 0.01 {
		t.Errorf("boils at %v, simmers %v minutes", meal.BoilsAt, meal.SimmerMinutes)
	}
	high.Recipes[0].Pulses = true
	result := compute(high)
	if have := float64(result.Meals[0].SimmerMinutes); math.Abs(have-35.122) > 0.02 {
		t.Errorf("pulses simmer %v minutes", have)
	}
	if !strings.Contains(codes(result.Findings), "slow-at-height") {
		t.Errorf("have %s", codes(result.Findings))
	}
}

// A litre from 15 to 100 C takes 356 kJ; 2,000 W at 0.55 bring it in 324 s.
func TestMinutesUntilTheLastEaterEats(t *testing.T) {
	many := kettle()
	for id := trip.MemberID(2); id <= 4; id++ {
		member := many.Crew[0]
		member.ID = id
		many.Crew = append(many.Crew, member)
	}
	meal := compute(many).Meals[0]
	one := 356.04 / (2 * 0.55) / 60
	if meal.Boils != 3 || math.Abs(float64(meal.Minutes)-4*one) > 0.01 { // 4 L through a pot of 1.7 L
		t.Errorf("%d boils in %v minutes, want 3 in %v", meal.Boils, meal.Minutes, 4*one)
	}
	many.Gear = append(many.Gear,
		trip.Gear{ID: 3, Name: "Stove", Kind: trip.Stove, Group: 1, Fuel: trip.GasMix, PowerWatts: 2000, Efficiency: 0.55},
		trip.Gear{ID: 4, Name: "Pot", Kind: trip.Pot, Group: 1, Capacity: 2 * units.Litre})
	if second := compute(many).Meals[0]; math.Abs(float64(second.Minutes)-8*one/3) > 0.01 || second.FuelMass != meal.FuelMass {
		t.Errorf("with two burners: %v minutes, want %v; fuel %v and %v", second.Minutes, 8*one/3, second.FuelMass, meal.FuelMass)
	}
	many.Recipes[0].Soak = 10
	if soaked := compute(many).Meals[0]; math.Abs(float64(soaked.Minutes)-8*one/3-10) > 0.01 {
		t.Errorf("with a soak: %v minutes", soaked.Minutes)
	}
}

func TestWhatCannotBeCookedIsSaid(t *testing.T) {
	for code, change := range map[string]func(*trip.Trip){
		"needs-flame":        func(k *trip.Trip) { k.Days[0].NoFlame = true },
		"no-stove":           func(k *trip.Trip) { k.Gear = k.Gear[1:] },
		"no-pot":             func(k *trip.Trip) { k.Gear = k.Gear[:1] },
		"pot-too-small":      func(k *trip.Trip) { k.Recipes[0].Simmer, k.Gear[1].Capacity = 5, units.Litre },
		"no-fuel-container":  func(k *trip.Trip) { k.Fuels = nil },
		"fuel-unknown":       func(k *trip.Trip) { k.Gear[0].Fuel = "" },
		"stove-figures":      func(k *trip.Trip) { k.Gear[0].PowerWatts = 0 },
		"snow-without-flame": func(k *trip.Trip) { k.Days[0].NoFlame, k.Days[0].SnowWater = true, true },
		"slow-meal":          func(k *trip.Trip) { k.Recipes[0].Simmer = 90 },
		"snack-needs-flame":  func(k *trip.Trip) { k.Menu[0].Meal = trip.Snack },
		"butane-in-frost":    func(k *trip.Trip) { k.Gear[0].Fuel, k.Days[0].Low = trip.Butane, -5 },
		"hot-days":           func(k *trip.Trip) { k.Days[0].High, k.Days[0].Distance = 34, 15000 },
		"water-ceiling":      func(k *trip.Trip) { k.Days[0].High, k.Days[0].Distance = 40, 60000 },
		"dry-camp":           func(k *trip.Trip) { k.Days[0].DryCamp = true },
		"stove-other-fuel": func(k *trip.Trip) {
			k.Gear = append(k.Gear, trip.Gear{ID: 9, Kind: trip.Stove, Group: 1, Fuel: trip.Ethanol})
		},
	} {
		made := kettle()
		change(made)
		result := compute(made)
		if !strings.Contains(codes(result.Findings), code) {
			t.Errorf("%s: have %q", code, codes(result.Findings))
		}
		for _, finding := range result.Findings {
			if finding.What.IsZero() || finding.Why.IsZero() || finding.Remedy.IsZero() || finding.Stage != findings.Cooking {
				t.Errorf("%s: a finding without words: %+v", code, finding)
			}
		}
	}
	if result := compute(kettle()); len(result.Findings) != 0 {
		t.Errorf("nothing is wrong with a kettle: %s", codes(result.Findings))
	}
}

func TestColdMealsNeedNoFuel(t *testing.T) {
	cold := kettle()
	cold.Recipes[0].ColdOK, cold.Menu[0].Meal = true, trip.Lunch
	if meal := compute(cold).Meals[0]; !meal.Cold || meal.FuelMass != 0 || meal.FoodWater != units.Litre {
		t.Errorf("a cold lunch: %+v", meal)
	}
	cold.Menu[0].Meal = trip.Dinner
	if meal := compute(cold).Meals[0]; meal.Cold || meal.FuelMass == 0 {
		t.Errorf("dinner is made hot: %+v", meal)
	}
	cold.Days[0].NoFlame = true
	if result := compute(cold); !result.Meals[0].Cold || strings.Contains(codes(result.Findings), "needs-flame") {
		t.Errorf("what can be made cold is no fault without flame: %+v", result)
	}
}

func TestHotDrinksAndWashingUp(t *testing.T) {
	warm := kettle()
	warm.Settings.HotDrink, warm.Settings.WashUp = 300*units.Millilitre, 500*units.Millilitre
	meal := compute(warm).Meals[0]
	// 1.3 L to the boil and 0.5 L from 15 to 45 C, at 0.55
	want := (1.3*4.19*84.974 + 0.5*4.19*30) / (0.55 * 45.7320)
	if meal.OtherWater != 800*units.Millilitre || meal.Boils != 2 || math.Abs(meal.FuelMass.Grams()-want) > 0.02 {
		t.Errorf("have %v, %d boils, %v; want %v g", meal.OtherWater, meal.Boils, meal.FuelMass, want)
	}
}

// twoLegs is a trip of four days with a point after the second.
func twoLegs() *trip.Trip {
	long := kettle()
	long.Days = []trip.Day{long.Days[0], long.Days[0], long.Days[0], long.Days[0]}
	long.Menu = nil
	for day := 1; day <= 4; day++ {
		long.Menu = append(long.Menu, trip.Cell{Day: day, Meal: trip.Dinner, Group: 1, Dishes: []trip.Dish{{Recipe: 1}}})
	}
	long.Points = []trip.ResupplyPoint{{ID: 7, Name: "Hut", Kind: trip.Hut, AfterDay: 2, Use: true, SellsFuel: true}}
	return long
}

func TestFuelOfALeg(t *testing.T) {
	made := twoLegs()
	made.Settings.FuelReserve = 0.2
	result := compute(made)
	if len(result.Fuel) != 2 || result.Fuel[0].Needed != 34*units.Gram { // 2 x 14.155 x 1.2 = 33.97
		t.Fatalf("have %+v", result.Fuel)
	}
	first := result.Fuel[0].Containers
	if len(first) != 1 || first[0].Key != "leg1 group1 gas mix 1" || first[0].Fuel != 100*units.Gram || first[0].Brought || first[0].EmptyFrom != 0 {
		t.Errorf("have %+v", first)
	}
}

func TestFuelIsCarriedAheadWhereAPointHasNone(t *testing.T) {
	made := twoLegs()
	made.Points[0].SellsFuel = false
	result := compute(made)
	if !strings.Contains(codes(result.Findings), "fuel-carried-ahead") || len(result.Fuel) != 2 {
		t.Fatalf("have %s, %+v", codes(result.Findings), result.Fuel)
	}
	ahead, brought := result.Fuel[0].Containers[1], result.Fuel[1].Containers[0]
	if !ahead.Ahead || ahead.Brought || ahead.Fuel != 190*units.Gram || ahead.Empty != 0 {
		t.Errorf("ahead: %+v", ahead)
	}
	if !brought.Brought || brought.Ahead || brought.Fuel != 100*units.Gram || brought.Empty != 90*units.Gram || brought.Key == ahead.Key {
		t.Errorf("brought: %+v", brought)
	}
}

func TestContainersEmptyInTurn(t *testing.T) {
	made := twoLegs()
	made.Points = nil
	made.Gear[0].Efficiency = 0.08 // 97 g a dinner
	containers := compute(made).Fuel[0].Containers
	if len(containers) != 4 || containers[0].EmptyFrom != 3 || containers[2].EmptyFrom != 0 {
		t.Errorf("have %+v", containers)
	}
}

func TestDryCampIsSharedExactly(t *testing.T) {
	dry := twoLegs()
	dry.Points = nil
	dry.Days[1].DryCamp = true
	for id := trip.MemberID(2); id <= 3; id++ {
		member := dry.Crew[0]
		member.ID = id
		dry.Crew = append(dry.Crew, member)
	}
	result := compute(dry)
	// 3 L of dinner with 10 % lost, and half of 2.2 L for each; the next day is a rest day
	for _, w := range result.Water {
		if want := units.FromLitres(1.1); w.Day == 2 && w.CarriedDrink != want || w.Day != 2 && w.CarriedDrink != 0 {
			t.Errorf("day %d: %v to drink are carried in, want %v on day 2", w.Day, w.CarriedDrink, want)
		}
	}
	if want := []cooking.DryCamp{{Day: 2, Group: 1, Cooking: units.FromLitres(3.3)}}; !slices.Equal(result.DryCamps, want) {
		t.Errorf("have %+v, want %+v", result.DryCamps, want)
	}
}

func TestAnyTripHasSoundCooking(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		legs, n, p := made.Legs(), needs.Compute(made, nil), portionstest.Serve(made)
		result := cooking.Compute(made, n, p, legs)
		if !reflect.DeepEqual(result, cooking.Compute(made, n, p, legs)) {
			rt.Fatal("the same trip must give the same cooking")
		}
		type supply struct {
			leg   int
			group trip.GroupID
		}
		burnt, held := map[supply]units.Mass{}, map[supply]units.Mass{}
		for _, meal := range result.Meals {
			burnt[supply{trip.LegOf(legs, meal.Day), meal.Group}] += meal.FuelMass
			if meal.FuelLow > meal.FuelMass || meal.FuelMass > meal.FuelHigh || meal.Cold && meal.FuelMass > 0 || meal.Minutes < 0 {
				rt.Errorf("%+v", meal)
			}
			if made.Days[meal.Day-1].NoFlame && !meal.Cold {
				rt.Errorf("a flame on a day without: %+v", meal)
			}
		}
		keys := map[string]bool{}
		for _, fuel := range result.Fuel {
			for _, container := range fuel.Containers {
				if !container.Ahead {
					held[supply{fuel.Leg, fuel.Group}] += container.Fuel
				}
				if keys[container.Key] || container.EmptyFrom != 0 && (container.EmptyFrom <= legs[fuel.Leg].FirstDay || container.EmptyFrom > legs[fuel.Leg].LastDay) {
					rt.Errorf("%+v", container)
				}
				keys[container.Key] = true
			}
		}
		for key, mass := range burnt {
			if mass > held[key] && !strings.Contains(codes(result.Findings), "no-fuel-container") {
				rt.Errorf("group %d burns %v on leg %d and carries %v", key.group, mass, key.leg, held[key])
			}
		}
		for _, w := range result.Water {
			if w.Drinking <= 0 || w.Drinking.Litres() > water.MostPerDay+1e-6 || w.CarriedDrink < 0 {
				rt.Errorf("%+v", w)
			}
		}
	})
}

// Higher camps never cook faster nor on less fuel for the simmering, and a
// larger reserve never carries less.
func TestHigherNeverCooksFaster(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		recipe := trip.Recipe{Simmer: units.Minutes(rapid.IntRange(0, 60).Draw(rt, "minutes")), Pulses: rapid.Bool().Draw(rt, "pulses")}
		low := units.Metres(rapid.IntRange(0, 5000).Draw(rt, "low"))
		high := low + units.Metres(rapid.IntRange(0, 1500).Draw(rt, "more"))
		if cooking.SimmerAt(&recipe, high) < cooking.SimmerAt(&recipe, low)-1e-9 {
			rt.Error("higher must not cook faster")
		}
		made := twoLegs()
		made.Settings.FuelReserve = rapid.Float64Range(0, 0.5).Draw(rt, "reserve")
		before := compute(made).Fuel[0].Needed
		made.Settings.FuelReserve += 0.1
		if compute(made).Fuel[0].Needed < before {
			rt.Error("more reserve must not need less")
		}
	})
}

func BenchmarkCooking60x21(b *testing.B) {
	large := triptest.Large(60, 21, 1).Canonical()
	n, p, legs := needs.Compute(large, nil), portionstest.Serve(large), large.Legs()
	b.ReportAllocs()
	for b.Loop() {
		cooking.Compute(large, n, p, legs)
	}
}
