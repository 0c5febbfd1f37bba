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
	mostTries   = 4
	sketchTries = 2   // of a menu that is made with every edit
	askMore     = 1.5 // times what was short
	dearerBy    = 3.0 // times that cost counts for more
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

// askForMore notes the days on which somebody gets too little, and gives their groups.
func (f *filling) askForMore(p portions.Result) map[trip.GroupID]bool {
	again, most := map[trip.GroupID]bool{}, map[groupDay]askedMore{}
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
			if more.energy > 0 || more.protein > 0 {
				most[key] = askedMore{max(most[key].energy, more.energy), max(most[key].protein, more.protein)}
				again[key.group] = true
			}
		}
	}
	for key, more := range most { // on top of what was asked before, which was not enough
		f.more[key] = askedMore{f.more[key].energy + more.energy, f.more[key].protein + more.protein}
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

// overBudget tells whether the food of the portions costs more than the budget in whole packages, as far as prices are known. Shopping may do
// better by mixing packages, and must buy more where food is posted early.
func (f *filling) overBudget(p portions.Result) bool {
	budget, known := f.trip.Settings.Budget.Get()
	if !known {
		return false
	}
	return foodCost(f.trip, p)+f.options.Beside > budget
}

// Beside is what of the cost of a whole plan its meals do not explain: fuel, fees, the reserve, what is bought more than once.
func Beside(t *trip.Trip, p portions.Result, total units.Money) units.Money {
	return max(0, total-foodCost(t, p))
}

// foodCost is about what the food of the portions costs, what is at home for nothing.
func foodCost(t *trip.Trip, p portions.Result) units.Money {
	bought := map[trip.FoodID]units.Mass{}
	for i := range p.Batches {
		for _, total := range p.Batches[i].Totals {
			bought[total.Food] += total.Mass
		}
	}
	cost := units.Money(0)
	for i := range t.Foods {
		cost += wholePackages(&t.Foods[i], bought[t.Foods[i].ID]-t.Foods[i].AtHome)
	}
	return cost
}

// wholePackages is about what so much of a food costs, bought in packages of one size; nothing where no price is known.
func wholePackages(food *trip.Food, mass units.Mass) units.Money {
	if mass <= 0 {
		return 0
	}
	least := units.Money(0)
	for i := range food.Packages {
		sold := &food.Packages[i]
		price, known := sold.Price.Get()
		if !known || sold.Net <= 0 {
			continue
		}
		if cost := price * units.Money((mass+sold.Net-1)/sold.Net); least == 0 || cost < least {
			least = cost
		}
	}
	return least
}
