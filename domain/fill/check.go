package fill

import (
	"sumpter/domain/menu"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Menus are chosen on portions of a usual size; then the stage that sizes portions has the last word. Where it finds a day short, that day is
// asked for more and the menu chosen again; where all of it costs more than the budget, cost is made to count for more.
const (
	mostTries   = 3
	askMore     = 1.5  // times what was short
	dearerBy    = 3.0  // times that cost counts for more
	partPackage = 1.05 // bought beyond what is eaten, since packages are whole (design choice)
)

// askedMore is what a cook group's day is asked beyond its targets, in thousandths of them.
type askedMore struct{ energy, protein int }

type groupDay struct {
	group trip.GroupID
	day   int
}

// sized serves and sizes the decided cells with the proposals.
func (f *filling) sized() portions.Result {
	return portions.Figures(f.trip, f.needs, menu.Servings(f.trip, f.proposal.Cells))
}

// askForMore notes the days on which somebody gets too little, and gives the groups with days that were not asked for so much before.
func (f *filling) askForMore(p portions.Result) map[trip.GroupID]bool {
	again := map[trip.GroupID]bool{}
	for i := range p.Intakes {
		for d := range p.Intakes[i].Days {
			eaten, need := &p.Intakes[i].Days[d], f.needs.Members[i].Days[d]
			if !need.Present || eaten.Food == 0 {
				continue
			}
			more := askedMore{
				energy:  short(float64(eaten.Kcal), float64(need.TargetKcal)*f.trip.Settings.DayLow-roundingOff),
				protein: short(eaten.ProteinGrams, need.ProteinGrams),
			}
			key := groupDay{f.trip.Crew[i].Group, d + 1}
			if known := f.more[key]; more.energy > known.energy || more.protein > known.protein {
				f.more[key] = askedMore{max(known.energy, more.energy), max(known.protein, more.protein)}
				again[key.group] = true
			}
		}
	}
	return again
}

// short is by how much a target is missed, in thousandths of it, with something to spare; 0 if it is met.
func short(value, target float64) int {
	if target <= 0 || value >= target {
		return 0
	}
	return int(askMore*1000*(1-value/target)) + 1
}

// roundingOff is what rounding may take from a day's energy, in kcal. Protein
// has a margin of its own where portions are sized.
const roundingOff = 0.1

// overBudget tells whether the food of the portions costs more than the budget, as far as prices are known.
func (f *filling) overBudget(p portions.Result) bool {
	budget, known := f.trip.Settings.Budget.Get()
	if !known {
		return false
	}
	bought := map[trip.FoodID]units.Mass{}
	for i := range p.Batches {
		for _, total := range p.Batches[i].Totals {
			bought[total.Food] += total.Mass
		}
	}
	cost := 0.0
	for i := range f.trip.Foods {
		food := &f.trip.Foods[i]
		price, _ := food.GramPrice()
		cost += price * max(0, bought[food.ID]-food.AtHome).Grams()
	}
	return cost*partPackage > float64(budget)
}
