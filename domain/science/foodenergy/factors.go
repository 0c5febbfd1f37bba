// Package foodenergy computes the energy of food from its nutrients, and the
// ranges in which the nutrients of a day should lie.
//
// Two conventions for carbohydrate are in use and must not be mixed: US data
// count fibre inside "total carbohydrate", EU labels give carbohydrate
// without fibre. A Composition says which one it holds, so that fibre is
// never counted twice.
package foodenergy

// KJPerKcal is the thermochemical kilocalorie. EU labels compute kJ by
// factors of their own; those differ from kcal times this.
const KJPerKcal = 4.184

// Convention says what a figure for carbohydrate includes.
type Convention int

const (
	// Total carbohydrate includes fibre: US labels and US food tables.
	Total Convention = iota
	// Available carbohydrate leaves fibre out: EU labels.
	Available
)

// Composition is the energy-giving part of an amount of food, all in grams.
type Composition struct {
	Convention   Convention
	Protein      float64
	Fat          float64
	Carbohydrate float64 // by the convention; polyols not in it
	Fibre        float64
	Alcohol      float64
	Polyols      float64 // without erythritol
	Erythritol   float64
	OrganicAcids float64
	Salatrims    float64
}

// TotalCarbohydrate returns the grams with fibre.
func (c Composition) TotalCarbohydrate() float64 {
	if c.Convention == Available {
		return c.Carbohydrate + c.Fibre
	}
	return c.Carbohydrate
}

// AvailableCarbohydrate returns the grams without fibre, never below 0:
// carbohydrate by difference can come out smaller than fibre.
func (c Composition) AvailableCarbohydrate() float64 {
	if c.Convention == Available {
		return c.Carbohydrate
	}
	return max(0, c.Carbohydrate-c.Fibre)
}

// AtwaterKcal returns kilocalories by the general Atwater factors 4, 9, 4 and
// 7 for protein, fat, total carbohydrate and alcohol.
//
// Sources: FAO Food and Nutrition Paper 77 (2003); US labels, 21 CFR
// 101.9(c)(1).
func AtwaterKcal(c Composition) float64 {
	return 4*c.Protein + 9*c.Fat + 4*c.TotalCarbohydrate() + 7*c.Alcohol
}

// EUKcal returns the kilocalories of an EU label.
//
// Source: Regulation (EU) 1169/2011, Annex XIV.
func EUKcal(c Composition) float64 {
	return 4*c.Protein + 9*c.Fat + 4*c.AvailableCarbohydrate() + 2*c.Fibre + 7*c.Alcohol +
		2.4*c.Polyols + 0*c.Erythritol + 3*c.OrganicAcids + 6*c.Salatrims
}

// EUKJ returns the kilojoules of an EU label, which has factors of its own.
//
// Source: Regulation (EU) 1169/2011, Annex XIV.
func EUKJ(c Composition) float64 {
	return 17*c.Protein + 37*c.Fat + 17*c.AvailableCarbohydrate() + 8*c.Fibre + 29*c.Alcohol +
		10*c.Polyols + 0*c.Erythritol + 13*c.OrganicAcids + 25*c.Salatrims
}

// Plausibility limits (design choice). The share alone would warn of every
// leaf of salad, so a gap must also be worth 15 kcal.
const (
	plausibleShare = 0.15
	plausibleKcal  = 15.0
)

// Plausible tells whether the energy stated for 100 g of food fits the energy
// computed from its nutrients: within 15 % of the larger or within 15 kcal.
// Cocoa, bran, spices and sweeteners can fail honestly; ask, do not refuse.
func Plausible(statedKcal, computedKcal float64) bool {
	gap := statedKcal - computedKcal
	if gap < 0 {
		gap = -gap
	}
	return gap <= max(plausibleKcal, plausibleShare*max(statedKcal, computedKcal))
}

// SaltPerSodium converts grams of sodium to grams of salt.
//
// Source: Regulation (EU) 1169/2011, Annex I.
const SaltPerSodium = 2.5
