package cooking

import (
	"cmp"
	"slices"

	"sumpter/domain/science/stovefuel"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Design choices and common practice about pots and stoves, no source.
const (
	potFill        = 0.85   // of the brim, so that it does not boil over
	usualWatts     = 2000.0 // of a stove whose power nobody gave
	usualPropane   = 0.2    // share of canister gas
	calmGain       = 1.2    // of the efficiency, with lid and no wind
	exposedLoss    = 0.7    // of the efficiency, in the open
	washUpC        = 45.0   // of washing-up water
	meltedC        = 5.0    // of drinking water melted from snow
	coldestSnowC   = -20.0
	simmerLitres   = 1.5 // a lidded pot of this size simmers at stovefuel.SimmerWatts
	gramsPerPotMil = 1.0 // dry food is taken to displace a millilitre a gram
)

// kitchen is what a cook group heats with.
type kitchen struct {
	stoves     []*trip.Gear // all of one fuel
	pots       []*trip.Gear // smallest first
	fuel       trip.FuelKind
	watts      float64 // heat of one stove at full flame
	efficiency float64
	spares     []*trip.Gear // stoves of another fuel, not planned with
	guessed    []*trip.Gear // stoves with a figure missing
}

// kitchenOf gathers a group's own stoves and pots; where it has none of its
// own it uses those that are anybody's.
func kitchenOf(t *trip.Trip, group trip.GroupID) kitchen {
	var k kitchen
	for _, stove := range gearOf(t, trip.Stove, group) {
		if len(k.stoves) == 0 {
			k.fuel = stove.Fuel
		}
		if stove.Fuel != k.fuel {
			k.spares = append(k.spares, stove)
			continue
		}
		k.stoves = append(k.stoves, stove)
		if stove.PowerWatts <= 0 || stove.Efficiency <= 0 || stove.Efficiency > 1 {
			k.guessed = append(k.guessed, stove)
		}
	}
	for _, stove := range k.stoves {
		k.watts += orUsual(stove.PowerWatts, usualWatts) / float64(len(k.stoves))
		k.efficiency += orUsual(stove.Efficiency, usualEfficiency(k.fuel)) / float64(len(k.stoves))
	}
	k.efficiency = min(1, k.efficiency)
	for _, pot := range gearOf(t, trip.Pot, group) {
		if pot.Capacity > 0 {
			k.pots = append(k.pots, pot)
		}
	}
	slices.SortStableFunc(k.pots, func(a, b *trip.Gear) int { return cmp.Compare(a.Capacity, b.Capacity) })
	return k
}

func gearOf(t *trip.Trip, kind trip.GearKind, group trip.GroupID) []*trip.Gear {
	var own, shared []*trip.Gear
	for i := range t.Gear {
		switch g := &t.Gear[i]; {
		case g.Kind != kind:
		case g.Group == group:
			own = append(own, g)
		case g.Group == 0:
			shared = append(shared, g)
		}
	}
	if len(own) > 0 {
		return own
	}
	return shared
}

func orUsual(value, usual float64) float64 {
	if value > 0 {
		return value
	}
	return usual
}

// canCook tells whether there is something to heat with and in.
func (k *kitchen) canCook() bool { return len(k.stoves) > 0 && len(k.pots) > 0 }

// burners is how many pots can be on a flame at once.
func (k *kitchen) burners() int { return max(1, min(len(k.stoves), len(k.pots))) }

// potFor gives the smallest pot that holds a volume and how many rounds it
// takes; where none is large enough, the largest and several rounds.
func (k *kitchen) potFor(volume units.Volume) (pot *trip.Gear, rounds int) {
	for _, pot := range k.pots {
		if usable(pot) >= volume {
			return pot, 1
		}
	}
	largest := k.pots[len(k.pots)-1]
	room := max(1, usable(largest))
	return largest, int((volume + room - 1) / room)
}

func usable(pot *trip.Gear) units.Volume { return pot.Capacity.Scale(potFill) }

// potKJPerK is the heat a pot itself takes up.
func potKJPerK(pot *trip.Gear) float64 {
	return pot.Mass.Kilograms() * orUsual(pot.HeatCapacity, stovefuel.AluminiumKJPerKgK)
}

// usualEfficiency is common practice for a stove of which nobody gave it.
func usualEfficiency(fuel trip.FuelKind) float64 {
	switch fuel {
	case trip.WhiteGas, trip.Kerosene:
		return stovefuel.LiquidWindshield
	case trip.Ethanol, trip.Methanol, trip.Propanol:
		return stovefuel.AlcoholWindshield
	case trip.FuelTablet:
		return stovefuel.SolidTablet
	default:
		return stovefuel.GasOpenLid
	}
}

// heatingValue gives MJ/kg; a fuel nobody named counts as canister gas.
func heatingValue(fuel trip.FuelKind) float64 {
	switch fuel {
	case trip.Propane:
		return stovefuel.LowerHeating(stovefuel.Propane)
	case trip.Butane:
		return stovefuel.LowerHeating(stovefuel.Butane)
	case trip.WhiteGas:
		return stovefuel.LowerHeating(stovefuel.Heptane)
	case trip.Kerosene:
		return stovefuel.LowerHeating(stovefuel.Dodecane)
	case trip.Ethanol:
		return stovefuel.LowerHeating(stovefuel.Ethanol)
	case trip.Methanol:
		return stovefuel.LowerHeating(stovefuel.Methanol)
	case trip.Propanol:
		return stovefuel.LowerHeating(stovefuel.Propanol)
	case trip.FuelTablet:
		return stovefuel.LowerHeating(stovefuel.Hexamine)
	default:
		return stovefuel.GasMix(usualPropane)
	}
}

// gas tells fuels that come in sealed canisters, which cannot be filled in
// part.
func gas(fuel trip.FuelKind) bool {
	switch fuel {
	case trip.WhiteGas, trip.Kerosene, trip.Ethanol, trip.Methanol, trip.Propanol, trip.FuelTablet:
		return false
	default:
		return true
	}
}
