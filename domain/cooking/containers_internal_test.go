package cooking

import (
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func can(fuel trip.FuelKind, net, empty int) trip.FuelContainer {
	return trip.FuelContainer{Fuel: fuel, Net: units.Mass(net) * units.Gram, Empty: units.Mass(empty) * units.Gram}
}

func TestContainersWithTheLeastMass(t *testing.T) {
	gasCans := []trip.FuelContainer{can(trip.GasMix, 100, 100), can(trip.GasMix, 230, 150), can(trip.GasMix, 450, 210), can(trip.WhiteGas, 500, 90)}
	for name, c := range map[string]struct {
		fuel   trip.FuelKind
		needed int
		rest   int
		want   []int // nets
	}{
		"exactly one":             {trip.GasMix, 100, 0, []int{100}},
		"a gram more":             {trip.GasMix, 101, 0, []int{230}},
		"two small ones lose":     {trip.GasMix, 200, 0, []int{230}},
		"small and middle":        {trip.GasMix, 300, 0, []int{100, 230}},
		"the large one":           {trip.GasMix, 331, 0, []int{450}},
		"frost keeps ten grams":   {trip.GasMix, 100, 10, []int{230}},
		"bottles are part full":   {trip.WhiteGas, 1200, 0, []int{500, 500, 500}},
		"no container known":      {trip.Kerosene, 100, 0, nil},
		"nothing needed":          {trip.GasMix, 0, 0, nil},
		"canisters all too small": {trip.GasMix, 100, 450, nil},
	} {
		chosen := chooseContainers(gasCans, c.fuel, units.Mass(c.needed)*units.Gram, units.Mass(c.rest)*units.Gram)
		if len(chosen) != len(c.want) {
			t.Errorf("%s: have %v", name, chosen)
			continue
		}
		for i, container := range chosen {
			if container.Net != units.Mass(c.want[i])*units.Gram {
				t.Errorf("%s: container %d holds %v, want %d g", name, i, container.Net, c.want[i])
			}
		}
	}
}

func TestHugeNeedIsCovered(t *testing.T) {
	chosen := chooseContainers([]trip.FuelContainer{can(trip.GasMix, 450, 210)}, trip.GasMix, 123456*units.Gram, 0)
	held := units.Mass(0)
	for _, container := range chosen {
		held += container.Net
	}
	if held < 123456*units.Gram || held > 124*units.Kilogram {
		t.Errorf("%d canisters hold %v", len(chosen), held)
	}
}

// Against every way there is: the choice covers the need, and nothing lighter
// does.
func TestContainersAgainstExhaustiveSearch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fuel := rapid.SampledFrom([]trip.FuelKind{trip.GasMix, trip.Ethanol}).Draw(t, "fuel")
		var known []trip.FuelContainer
		for range rapid.IntRange(1, 3).Draw(t, "sizes") {
			known = append(known, can(fuel, rapid.IntRange(40, 300).Draw(t, "net"), rapid.IntRange(20, 200).Draw(t, "empty")))
		}
		needed := rapid.IntRange(1, 500).Draw(t, "needed")
		mass, held := units.Mass(0), units.Mass(0)
		for _, container := range chooseContainers(known, fuel, units.Mass(needed)*units.Gram, 0) {
			held += container.Net
			mass += container.Empty
			if gas(fuel) {
				mass += container.Net
			}
		}
		if held < units.Mass(needed)*units.Gram {
			t.Fatalf("%v held of %d g", held, needed)
		}
		if best := lightest(known, needed, gas(fuel)); mass != best {
			t.Errorf("chosen %v, lightest %v", mass, best)
		}
	})
}

// lightest tries every number of every container.
func lightest(known []trip.FuelContainer, needed int, whole bool) units.Mass {
	if needed <= 0 {
		return 0
	}
	if len(known) == 0 {
		return 1 << 60
	}
	best := units.Mass(1) << 60
	one := known[0].Empty
	if whole {
		one += known[0].Net
	}
	for count, left := 0, needed; ; count++ {
		best = min(best, one*units.Mass(count)+lightest(known[1:], left, whole))
		if left <= 0 {
			return best
		}
		left -= int(known[0].Net / units.Gram)
	}
}
