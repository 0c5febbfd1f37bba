package fill

import "sumpter/domain/trip"

// perGram is the objective of a gram of food: what is weighed in grams below counts to a twentieth of one.
const perGram = 20

// What speaks against a choice, in grams of food that a leader would carry more to avoid it (design choice). Of one eater:
const (
	missedKcal    = 10.0 // for each thousandth of the day's energy that cannot be met, or cannot be kept to
	missedProtein = 5.0  // for each thousandth of the day's protein
	missedFibre   = 0.05 // and so on; less than a twentieth of a gram would count for nothing
	missedSodium  = 0.05
	missedFat     = 0.05
	disliked      = 120.0
	smallMeal     = 60.0 // a dinner without what a main meal should hold
	melting       = 60.0
	aging         = 30.0 // for a food that uses up its shelf life: what keeps least is eaten first
	oneMoreDish   = 10.0 // something at the side
	soonAgain     = 500.0
	sameDayAgain  = 300.0
	dayAfterDay   = 100.0
	eachRepeat    = 30.0
	sameStaple    = 30.0 // as at the same meal of the day before
	sameTexture   = 12.0
	stapleOfDay   = 15.0 // as at another meal of the day
)

// Of the whole group:
const (
	hotPot      = 400.0 // another pot on the stove
	coldPot     = 120.0 // another batch that needs no flame
	secondRound = 150.0 // a batch that no pot holds at once
	litreCarry  = 300.0 // a litre that is carried to a dry camp: the last part of a day
	burnerSpare = 2.0   // a minute on a burner
	burnerOver  = 40.0  // and one that the day does not have
)

// otherKcalPerGram is what the rest of the food brings, which makes up for a small dish (common practice, no source).
const otherKcalPerGram = 4.4

// weights are what the aim of the menu makes of the objective.
type weights struct {
	mass, cost int // of a tenth of a gram, and of the cost of four usual kcal
	variety    float64
	wants      float64 // of what an eater misses: what is saved in weight and cost together must never starve anybody
}

// How many times the cost of food counts against its weight at the two ends, where 1 makes food of usual price as dear as it is heavy.
const (
	lightCost = 0.1
	cheapCost = 5.0
	// How many times variety counts where the menu is to be light or cheap, and where it is to be varied.
	lightVariety = 0.4
	mostVariety  = 5.0
)

// usualGrams is the mass of what costs 1: a usual kcal costs usualCost.
const usualGrams = 1 / (usualCost * otherKcalPerGram)

func weightsFor(aim, dearer float64) weights {
	cheap, varied := max(0, -aim), max(0, aim)
	times := lightCost + (cheapCost-lightCost)*cheap*cheap
	w := weights{mass: perGram / 10, variety: lightVariety + (mostVariety-lightVariety)*varied, wants: 1 + times*dearer}
	w.cost = int(perGram*usualGrams*times*dearer + 0.5)
	if w.cost > mostWeight {
		w.mass, w.cost = 1, mostWeight/2
	}
	return w
}

// mostWeight is what the solver takes.
const mostWeight = 100

// grams turns grams into the objective.
func grams(g float64) int { return int(g*perGram + 0.5) }

// wants lists what an eater should get each day, in thousandths of their own targets, in the order of their worth.
var wants = []struct {
	name  string
	worth float64
	least int
}{
	{"energy within reach", missedKcal, 1000},
	{"energy not too much", missedKcal, -1000},
	{"protein", missedProtein, 1000},
	{"fibre", missedFibre, 1000},
	{"salt", missedSodium, 1000},
	{"fat, least", missedFat, 1000},
	{"fat, most", missedFat, -1000},
}

// The wants that days may be asked more of.
const wantEnergy, wantProtein = 0, 2

// sideBelow is the part of a meal's energy below which even the largest portion of a recipe is no meal but something at its side (design
// choice).
const sideBelow = 0.5

func hasSides(meal trip.Meal) bool { return meal != trip.Snack }
