// Package stovefuel tells how much heat cooking takes and how much fuel gives
// it.
//
// No laboratory source was found for stove efficiency: every efficiency here
// is common practice, to be replaced by the user's own measurement (weigh the
// fuel before and after boiling a litre). Never burn a stove in a tent or
// other closed space: carbon monoxide kills.
package stovefuel

// Heat properties. From memory, steam tables and handbooks.
const (
	WaterKJPerKgK     = 4.19   // mean from 0 to 100 C
	IceKJPerKgK       = 2.10   // also snow
	FusionKJPerKg     = 333.55 // melting ice at 0 C
	AluminiumKJPerKgK = 0.897
)

// HeatWater returns the kilojoules that bring water and its pot from one
// temperature to another, in degrees Celsius. PotKJPerK is the pot's mass in
// kilograms times the heat capacity of its metal.
func HeatWater(waterKg, potKJPerK, fromC, toC float64) float64 {
	return (waterKg*WaterKJPerKgK + potKJPerK) * (toC - fromC)
}

// MeltSnow returns the kilojoules that bring snow (0 C or colder) to water of
// a temperature of 0 C or more. Keep a little water in the pot and the lid
// on: scorched snow wastes heat (common practice, no source).
func MeltSnow(snowKg, snowC, toC float64) float64 {
	return snowKg * (IceKJPerKgK*(0-snowC) + FusionKJPerKg + WaterKJPerKgK*toC)
}

// SimmerWatts is the heat that keeps a lidded pot of 1 to 2 litres simmering,
// 150 to 300 W: common practice, no source.
const SimmerWatts = 250.0

// Simmer returns the kilojoules that keep a pot simmering for minutes.
func Simmer(watts, minutes float64) float64 { return watts * minutes * 60 / 1000 }

// Grams returns the fuel that brings heat into the pot, at an efficiency (heat
// into the water / lower heating value) of more than 0 up to 1.
func Grams(heatKJ, efficiency, heatingMJPerKg float64) float64 {
	return heatKJ / (efficiency * heatingMJPerKg)
}

// Efficiencies: common practice, no source. Wind without a shield halves any
// of them.
const (
	GasOpenLid        = 0.50 // calm, with lid: 0.45 to 0.60
	LiquidWindshield  = 0.50 // 0.40 to 0.60
	AlcoholWindshield = 0.40 // 0.30 to 0.50
	SolidTablet       = 0.35 // 0.25 to 0.45
)

// CanisterRest is what a canister does not give up in the cold, in grams:
// common practice, no source.
const CanisterRest = 10.0
