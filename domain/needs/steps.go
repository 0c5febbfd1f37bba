package needs

import (
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

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

// steps answers "why this figure?": each part of the day, then what is made of
// the sum.
func (a *account) steps(d *Day, proteinPerKg float64, proteinSetBy prose.Text) []Step {
	steps := make([]Step, 0, 16)
	add := func(what prose.Text, value float64, unit string, basis prose.Text) {
		steps = append(steps, Step{What: what, Value: value, Unit: unit, Basis: basis})
	}
	total := func(what prose.Text, value float64, basis prose.Text) {
		steps = append(steps, Step{What: what, Value: value, Unit: "kcal", Basis: basis, Total: true})
	}
	if a.given {
		total(prose.Say("need of the day"), float64(d.Kcal), prose.Say("leader's figure; the equations are shown beside it"))
	}
	add(prose.Say("resting in bed for a day"), a.resting, "kcal", a.body.basis())
	for i, part := range a.still {
		if part.Hours > 0 {
			add(prose.Say("%s, %.1f h at %.1f times rest", part.name, part.Hours, part.ActivityRatio), a.planned.stillKcal[i], "kcal", prose.Say("FAO/WHO/UNU 2004, multiple of resting energy"))
		}
	}
	for i, l := range a.route.legs {
		add(legWords(l, a.planned.legWatts[i]), a.planned.legKcal[i], "kcal", a.legBasis(l))
	}
	if a.cold > 0 {
		add(prose.Say("cold, %+.0f %%", 100*a.cold), a.cold*a.planned.total, "kcal", prose.Say("the trip's figure for days below freezing"))
	}
	if a.height > 0 {
		add(prose.Say("sleeping high, %+.0f %%", 100*a.height), a.height*a.planned.total, "kcal", prose.Say("ramp from 2,500 m to 15 %% at 4,300 m after Butterfield et al. 1992; design choice"))
	}
	if a.floor > 0 && !a.given && float64(d.Kcal) <= a.floor {
		add(prose.Say("least for somebody growing"), a.floor, "kcal", prose.Say("Torun 2001 in FAO/WHO/UNU 2004"))
	}
	if !a.given {
		total(prose.Say("need of the day"), float64(d.Kcal), prose.Say("sum of the above"))
	}
	add(prose.Say("lowest of the equations"), float64(d.Low), "kcal", prose.Say("LCDA backpacking, LCDA on total mass, Pandolf with Santee downhill; none is better than 10 %% for one person"))
	add(prose.Say("highest of the equations"), float64(d.High), "kcal", prose.Say("as above"))
	if a.appetite != 1 {
		add(prose.Say("eaten of it, %.0f %%", 100*a.appetite), float64(d.Kcal)*a.appetite, "kcal", prose.Say("the member's appetite and the trip's figure for the first two days"))
	}
	total(prose.Say("from the packs, %.0f %%", 100*d.FromPacks), float64(d.TargetKcal), prose.Say("shares of the meals eaten from the packs this day"))
	add(prose.Say("protein, %.1f g/kg", proteinPerKg), d.ProteinGrams, "g", proteinSetBy)
	add(prose.Say("fat, at least"), d.FatLowGrams, "g", prose.Say("share of energy: IOM 2005"))
	add(prose.Say("carbohydrate, at least"), d.CarbLowGrams, "g", prose.Say("share of energy: IOM 2005; 30 g for each hour on the move after the first: AND/DC/ACSM 2016"))
	add(prose.Say("fibre"), d.FibreGrams, "g", prose.Say("adequate intake: IOM 2005"))
	add(prose.Say("sodium, at least"), d.SodiumLowMilligrams, "mg", prose.Say("adequate intake: National Academies 2019; 460 mg for each litre of sweat: ACSM 2007"))
	return steps
}

func legWords(l leg, watts float64) prose.Text {
	return prose.Say("walking %s, %s in %.1f h at %.0f W", l.name, prose.Distance(1000*l.lengthKm), l.hours, watts)
}

func (a *account) legBasis(l leg) prose.Text {
	return prose.Say("%s; grade %+.0f %%, load %s, terrain factor %.2f", a.equation, l.gradePercent(), units.FromKilograms(a.loadKg), a.route.terrain)
}
