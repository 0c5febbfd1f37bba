package cooking

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// exactGrams is the need up to which the containers are chosen exactly; what
// is above it is met with the largest first.
const exactGrams = 20_000

// chooseContainers picks the containers that hold a need with the least mass
// to carry: whole canisters of gas, bottles of other fuel that are filled only
// as far as needed, so that only their empty mass counts. Ties go to fewer
// containers, then to the one listed first. Rest is what a container does not
// give up. The result is smallest first, the order they are burnt in; it is
// empty if the trip knows no container for the fuel.
//
// Unbounded covering by dynamic programming over whole grams: exact.
func chooseContainers(known []trip.FuelContainer, fuel trip.FuelKind, needed, rest units.Mass) []trip.FuelContainer {
	var options []trip.FuelContainer
	for _, container := range known {
		if container.Fuel == fuel && usableGrams(container, rest) > 0 {
			options = append(options, container)
		}
	}
	if len(options) == 0 || needed <= 0 {
		return nil
	}
	grams := int(needed.CeilGrams())
	var chosen []trip.FuelContainer
	largest := slices.MaxFunc(options, func(a, b trip.FuelContainer) int {
		return cmp.Compare(usableGrams(a, rest), usableGrams(b, rest))
	})
	for ; grams > exactGrams; grams -= usableGrams(largest, rest) {
		chosen = append(chosen, largest)
	}
	chosen = append(chosen, cover(options, grams, rest, gas(fuel))...)
	slices.SortStableFunc(chosen, func(a, b trip.FuelContainer) int {
		return cmp.Or(cmp.Compare(a.Net, b.Net), cmp.Compare(a.Name, b.Name))
	})
	return chosen
}

// usableGrams is what a container gives up, in whole grams.
func usableGrams(container trip.FuelContainer, rest units.Mass) int {
	return int((container.Net - rest) / units.Gram)
}

// cover is the exact choice: least[g] is the least weight of containers that
// hold g grams or more, the mass in milligrams first and then their number.
func cover(options []trip.FuelContainer, grams int, rest units.Mass, whole bool) []trip.FuelContainer {
	type state struct {
		mass  units.Mass
		count int
		last  int // option used, -1 none
	}
	least := make([]state, grams+1)
	least[0].last = -1
	for g := 1; g <= grams; g++ {
		for o, option := range options {
			before := least[max(0, g-usableGrams(option, rest))]
			mass := before.mass + option.Empty
			if whole {
				mass += option.Net
			}
			next := state{mass, before.count + 1, o}
			if o == 0 || cmp.Or(cmp.Compare(next.mass, least[g].mass), cmp.Compare(next.count, least[g].count)) < 0 {
				least[g] = next
			}
		}
	}
	var chosen []trip.FuelContainer
	for g := grams; g > 0; {
		option := options[least[g].last]
		chosen = append(chosen, option)
		g = max(0, g-usableGrams(option, rest))
	}
	return chosen
}

func sortFuel(list []LegFuel) {
	slices.SortStableFunc(list, func(a, b LegFuel) int {
		return cmp.Or(cmp.Compare(a.Leg, b.Leg), cmp.Compare(a.Group, b.Group), cmp.Compare(a.Fuel, b.Fuel))
	})
}
