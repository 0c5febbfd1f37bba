package cooking

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func stove(id trip.GearID, group trip.GroupID, fuel trip.FuelKind) trip.Gear {
	return trip.Gear{ID: id, Kind: trip.Stove, Group: group, Fuel: fuel, PowerWatts: 2000, Efficiency: 0.5}
}

func potOf(id trip.GearID, group trip.GroupID, litres float64) trip.Gear {
	return trip.Gear{ID: id, Kind: trip.Pot, Group: group, Capacity: units.FromLitres(litres), Mass: 200 * units.Gram}
}

func TestKitchenOfAGroup(t *testing.T) {
	made := &trip.Trip{Gear: []trip.Gear{
		stove(1, 1, trip.GasMix), stove(2, 1, trip.GasMix), stove(3, 1, trip.WhiteGas), stove(4, 0, trip.Ethanol),
		potOf(5, 1, 3), potOf(6, 1, 1), potOf(7, 0, 2), potOf(8, 2, 0),
	}}
	own := kitchenOf(made, 1)
	if len(own.stoves) != 2 || len(own.spares) != 1 || own.fuel != trip.GasMix || own.burners() != 2 || own.watts != 2000 || own.efficiency != 0.5 {
		t.Errorf("own things come first: %+v", own)
	}
	if own.pots[0].ID != 6 || own.pots[1].ID != 5 {
		t.Errorf("pots stand by size: %v, %v", own.pots[0].ID, own.pots[1].ID)
	}
	shared := kitchenOf(made, 3)
	if len(shared.stoves) != 1 || shared.fuel != trip.Ethanol || len(shared.pots) != 1 || shared.pots[0].ID != 7 || !shared.canCook() {
		t.Errorf("who has nothing uses what is anybody's: %+v", shared)
	}
	if holed := kitchenOf(made, 2); holed.canCook() || len(holed.pots) != 0 {
		t.Errorf("a pot without capacity is none: %+v", holed)
	}
}

func TestMissingStoveFiguresAreUsualOnes(t *testing.T) {
	for fuel, want := range map[trip.FuelKind]float64{ // trade science 6.5, common practice
		trip.GasMix: 0.50, trip.WhiteGas: 0.50, trip.Kerosene: 0.50, trip.Ethanol: 0.40, trip.FuelTablet: 0.35, "": 0.50,
	} {
		k := kitchenOf(&trip.Trip{Gear: []trip.Gear{{ID: 1, Kind: trip.Stove, Fuel: fuel}}}, 1)
		if k.efficiency != want || k.watts != usualWatts || len(k.guessed) != 1 {
			t.Errorf("%q: efficiency %v, %v W", fuel, k.efficiency, k.watts)
		}
	}
}

// Heating values in MJ/kg: testdata/check_values.csv, fuel.
func TestHeatingValueOfEveryFuel(t *testing.T) {
	want := map[trip.FuelKind]float64{
		trip.GasMix: 45.7320, trip.Propane: 46.3545, trip.Butane: 45.7243, trip.WhiteGas: 44.5581, trip.Kerosene: 44.1190,
		trip.Ethanol: 26.8062, trip.Methanol: 19.9292, trip.Propanol: 30.4476, trip.FuelTablet: 28.0780,
	}
	for _, fuel := range trip.FuelKinds() {
		if have := heatingValue(fuel); want[fuel] == 0 || math.Abs(have-want[fuel]) > 0.02 {
			t.Errorf("%s: have %v, want %v", fuel, have, want[fuel])
		}
	}
	if heatingValue("peat") != heatingValue(trip.GasMix) {
		t.Error("an unknown fuel counts as canister gas")
	}
}

func TestPotForAVolume(t *testing.T) {
	k := kitchenOf(&trip.Trip{Gear: []trip.Gear{potOf(1, 0, 1), potOf(2, 0, 4)}}, 1)
	for litres, want := range map[float64]struct {
		pot    trip.GearID
		rounds int
	}{0: {1, 1}, 0.85: {1, 1}, 0.86: {2, 1}, 3.4: {2, 1}, 3.41: {2, 2}, 10.3: {2, 4}} {
		if pot, rounds := k.potFor(units.FromLitres(litres)); pot.ID != want.pot || rounds != want.rounds {
			t.Errorf("%v L: pot %d in %d rounds, want %d in %d", litres, pot.ID, rounds, want.pot, want.rounds)
		}
	}
}

// 1 kg of water from 10 to 95 C in an aluminium pot of 150 g takes 367.587 kJ,
// snow of -10 C 752.6 kJ (testdata/check_values.csv, fuel).
func TestHeatOfAPot(t *testing.T) {
	water := place{startC: 10}
	pot := trip.Gear{Mass: 150 * units.Gram}
	if have := water.heat(1, potKJPerK(&pot), 95); math.Abs(have-367.587) > 0.001 {
		t.Errorf("have %v kJ", have)
	}
	snow := place{snow: true, snowC: -10}
	if have := snow.heat(1, 0, 95); math.Abs(have-752.6) > 0.001 {
		t.Errorf("have %v kJ", have)
	}
	if have := water.heat(1, 0, 5); have != 0 {
		t.Errorf("water that is warm enough needs no heat: %v kJ", have)
	}
	pot.HeatCapacity = 0.5
	if have := potKJPerK(&pot); math.Abs(have-0.075) > 1e-12 {
		t.Errorf("a steel pot: %v kJ/K", have)
	}
}

func TestSimmeringGrowsWithThePot(t *testing.T) {
	if simmerWatts(1) != 250 || simmerWatts(1.5) != 250 {
		t.Error("a pot of 1 to 2 litres simmers at 250 W (common practice)")
	}
	if have := simmerWatts(12); math.Abs(have-1000) > 1e-9 { // eight times the volume, four times the surface
		t.Errorf("12 L: have %v W", have)
	}
}

// The order of the rounds against every other: never before the best possible
// end, never more than a third after it (Graham 1969).
func TestServingOrderAgainstEveryOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := kitchenOf(&trip.Trip{Gear: []trip.Gear{stove(1, 0, trip.GasMix), stove(2, 0, trip.GasMix), potOf(3, 0, 1), potOf(4, 0, 1)}}, 1)
		var rounds []round
		for range rapid.IntRange(1, 7).Draw(t, "rounds") {
			rounds = append(rounds, round{heatKJ: rapid.Float64Range(10, 900).Draw(t, "kJ"), simmer: float64(rapid.IntRange(0, 30).Draw(t, "simmer"))})
		}
		best := math.Inf(1)
		for mask := range 1 << len(rounds) {
			var busy [2]float64
			for i, r := range rounds {
				busy[mask>>i&1] += r.flameMinutes(&k)
			}
			best = min(best, max(busy[0], busy[1]))
		}
		if have := k.servedAfter(rounds); have < best-1e-9 || have > best*(4.0/3)+1e-9 {
			t.Errorf("have %v minutes, best %v", have, best)
		}
	})
}

func TestWhatIsHeated(t *testing.T) {
	for name, c := range map[string]struct {
		recipe trip.Recipe
		meal   trip.Meal
		want   bool
	}{
		"bread":                   {trip.Recipe{}, trip.Dinner, false},
		"porridge":                {trip.Recipe{Water: 1}, trip.Breakfast, true},
		"cold muesli":             {trip.Recipe{Water: 1, ColdOK: true}, trip.Breakfast, false},
		"couscous for dinner":     {trip.Recipe{Water: 1, ColdOK: true}, trip.Dinner, true},
		"couscous for lunch":      {trip.Recipe{Water: 1, ColdOK: true}, trip.Lunch, false},
		"simmered, could be cold": {trip.Recipe{Water: 1, ColdOK: true, Simmer: 3}, trip.Breakfast, true},
		"poured off":              {trip.Recipe{PourOff: 1, ColdOK: true}, trip.Breakfast, true},
		"fried":                   {trip.Recipe{Simmer: 5}, trip.Lunch, true},
	} {
		if have := Heated(&c.recipe, c.meal); have != c.want {
			t.Errorf("%s: have %v", name, have)
		}
	}
}

func TestContainersAreEmptyInTurn(t *testing.T) {
	full := func(grams ...int) []Container {
		var list []Container
		for _, g := range grams {
			list = append(list, Container{Fuel: units.Mass(g) * units.Gram})
		}
		return list
	}
	burnt := burn{byDay: []units.Mass{50 * units.Gram, 50 * units.Gram, 100 * units.Gram, 100 * units.Gram}}
	for name, c := range map[string]struct {
		containers []Container
		rest       units.Mass
		want       []int
	}{
		"after its day":         {full(100, 230), 0, []int{6, 0}},
		"within a day":          {full(120, 230), 0, []int{7, 0}},
		"what frost keeps back": {full(110, 230), 10 * units.Gram, []int{6, 0}},
		"only at the end":       {full(300), 0, []int{0}},
		"never":                 {full(450), 0, []int{0}},
		"two on one day":        {full(40, 10, 400), 0, []int{5, 5, 0}},
	} {
		markEmpty(c.containers, burnt, 4, c.rest)
		for i, want := range c.want {
			if c.containers[i].EmptyFrom != want {
				t.Errorf("%s: container %d is empty from day %d, want %d", name, i+1, c.containers[i].EmptyFrom, want)
			}
		}
	}
}
