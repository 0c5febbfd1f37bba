package cooking

import (
	"cmp"
	"math"
	"slices"

	"sumpter/domain/science/boiling"
	"sumpter/domain/science/stovefuel"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// SimmerAt gives the minutes a recipe stays on the flame after the boil at a
// height: longer than at sea level, since water boils cooler there, and more
// so for dry beans and lentils.
//
// Source: see boiling.TimeFactor.
func SimmerAt(recipe *trip.Recipe, height units.Metres) units.Minutes {
	q10 := boiling.GrainQ10
	if recipe.Pulses {
		q10 = boiling.LegumeQ10
	}
	return units.Minutes(float64(recipe.Simmer) * boiling.TimeFactor(float64(height), q10))
}

// place is where and when something is heated.
type place struct {
	boilsAtC float64
	startC   float64 // of the water
	snow     bool    // water begins as snow
	snowC    float64
}

func placeOf(day *trip.Day, settings *trip.Settings, height units.Metres) place {
	return place{
		boilsAtC: boiling.Point(float64(height)), startC: float64(settings.WaterStart),
		snow: day.SnowWater, snowC: min(0, max(coldestSnowC, float64(day.Low))),
	}
}

// heat gives the kilojoules that bring litres and a pot to a temperature.
func (p place) heat(litres, potKJPerK, toC float64) float64 {
	if p.snow {
		return stovefuel.MeltSnow(litres, p.snowC, toC) + potKJPerK*max(0, toC-p.snowC)
	}
	return stovefuel.HeatWater(litres, potKJPerK, min(p.startC, toC), toC)
}

// round is one pot on one flame.
type round struct {
	heatKJ  float64 // to the boil
	simmer  float64 // minutes at this height
	soak    float64 // minutes off the flame before it is eaten
	simmerW float64
}

func (r round) totalKJ() float64 { return r.heatKJ + stovefuel.Simmer(r.simmerW, r.simmer) }

// flameMinutes is how long the round keeps its burner.
func (r round) flameMinutes(k *kitchen) float64 {
	return r.heatKJ*1000/(k.watts*k.efficiency)/60 + r.simmer
}

// simmerWatts grows with the surface of the pot: larger ones lose more.
func simmerWatts(litres float64) float64 {
	return stovefuel.SimmerWatts * math.Cbrt(math.Pow(max(1, litres/simmerLitres), 2))
}

// roundsOf cuts a volume with its simmering into what the pots can hold.
func (k *kitchen) roundsOf(p place, water, inPot units.Volume, simmer, soak float64) (rounds []round, pot *trip.Gear) {
	pot, count := k.potFor(water + inPot)
	litres := water.Litres() / float64(count)
	one := round{
		heatKJ: p.heat(litres, potKJPerK(pot), p.boilsAtC), simmer: simmer, soak: soak,
		simmerW: simmerWatts((water + inPot).Litres() / float64(count)),
	}
	return slices.Repeat([]round{one}, count), pot
}

// servedAfter gives the minutes until the last round is eaten, with the
// rounds that take longest first and every burner in use (longest processing
// time first: never more than a third over the best order).
func (k *kitchen) servedAfter(rounds []round) float64 {
	order := slices.Clone(rounds)
	slices.SortStableFunc(order, func(a, b round) int {
		return cmp.Compare(b.flameMinutes(k)+b.soak, a.flameMinutes(k)+a.soak)
	})
	busy := make([]float64, k.burners())
	served := 0.0
	for _, r := range order {
		free := slices.Index(busy, slices.Min(busy))
		busy[free] += r.flameMinutes(k)
		served = max(served, busy[free]+r.soak)
	}
	return served
}
