package needs

import (
	"fmt"

	"sumpter/domain/science/walking"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

const kcalPerHourPerWatt = walking.KcalPerHourPerWatt

// account is everything one member's day is reckoned from, kept so that each
// step can be shown.
type account struct {
	trip         *trip.Trip
	member       *trip.Member
	body         body
	route        *route
	still        []stillHours
	equation     trip.WalkingEquation
	number       int
	resting      float64 // kcal a day
	loadKg       float64
	planned      burn
	low, high    float64 // of all equations, before cold and height
	cold, height float64 // shares added
	floor        float64 // kcal, 0 for adults
	given        bool
	appetite     float64
}

const factorial = "FAO/WHO/UNU 2004, multiple of resting energy"

// steps answers "why this figure?": each part of the day, then what is made of
// the sum.
func (a *account) steps(d *Day, proteinPerKg float64, proteinSetBy string) []Step {
	steps := make([]Step, 0, 16)
	add := func(what string, value float64, unit, basis string) {
		steps = append(steps, Step{What: what, Value: value, Unit: unit, Basis: basis})
	}
	if a.given {
		add("need of the day", float64(d.Kcal), "kcal", "leader's figure; the equations are shown beside it")
	}
	add("resting in bed for a day", a.resting, "kcal", a.body.basis())
	for i, part := range a.still {
		if part.Hours > 0 {
			add(fmt.Sprintf("%s, %.1f h at %.1f times rest", part.name, part.Hours, part.ActivityRatio), a.planned.stillKcal[i], "kcal", factorial)
		}
	}
	for i, l := range a.route.legs {
		add(a.legWords(l, a.planned.legWatts[i]), a.planned.legKcal[i], "kcal", a.legBasis(l))
	}
	if a.cold > 0 {
		add(fmt.Sprintf("cold, %+.0f %%", 100*a.cold), a.cold*a.planned.total, "kcal", "the trip's figure for days below freezing")
	}
	if a.height > 0 {
		add(fmt.Sprintf("sleeping high, %+.0f %%", 100*a.height), a.height*a.planned.total, "kcal", "ramp from 2,500 m to 15 % at 4,300 m after Butterfield et al. 1992; design choice")
	}
	if a.floor > 0 && !a.given && float64(d.Kcal) <= a.floor {
		add("least for somebody growing", a.floor, "kcal", "Torun 2001 in FAO/WHO/UNU 2004")
	}
	if !a.given {
		add("need of the day", float64(d.Kcal), "kcal", "sum of the above")
	}
	add("lowest of the equations", float64(d.Low), "kcal", "LCDA backpacking, LCDA on total mass, Pandolf with Santee downhill; none is better than 10 % for one person")
	add("highest of the equations", float64(d.High), "kcal", "as above")
	if a.appetite != 1 {
		add(fmt.Sprintf("eaten of it, %.0f %%", 100*a.appetite), float64(d.Kcal)*a.appetite, "kcal", "the member's appetite and the trip's figure for the first two days")
	}
	add(fmt.Sprintf("from the packs, %.0f %%", 100*d.FromPacks), float64(d.TargetKcal), "kcal", "shares of the meals eaten from the packs this day")
	add(fmt.Sprintf("protein, %.1f g/kg", proteinPerKg), d.ProteinGrams, "g", proteinSetBy)
	add("fat, at least", d.FatLowGrams, "g", "share of energy: IOM 2005")
	add("carbohydrate, at least", d.CarbLowGrams, "g", "share of energy: IOM 2005; 30 g for each hour on the move after the first: AND/DC/ACSM 2016")
	add("fibre", d.FibreGrams, "g", "adequate intake: IOM 2005")
	add("sodium, at least", d.SodiumLowMilligrams, "mg", "adequate intake: National Academies 2019; 460 mg for each litre of sweat: ACSM 2007")
	return steps
}

func (a *account) legWords(l leg, watts float64) string {
	length := units.Metres(1000 * l.lengthKm).FormatDistance(a.trip.Units)
	return fmt.Sprintf("walking %s, %s in %.1f h at %.0f W", l.name, length, l.hours, watts)
}

func (a *account) legBasis(l leg) string {
	load := units.FromKilograms(a.loadKg).Format(a.trip.Units)
	return fmt.Sprintf("%s; grade %+.0f %%, load %s, terrain factor %.2f", a.equation, l.gradePercent(), load, a.route.terrain)
}
