package portions

import (
	"math"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// lookAt tells who gets too little or too much, and what would mend it.
func (s *sizer) lookAt(r *Result) []findings.Finding {
	var list []findings.Finding
	var short []hungry
	var without []fasting
	for i := range r.Intakes {
		nothing := fasting{member: i}
		for d := range r.Intakes[i].Days {
			eaten := &r.Intakes[i].Days[d]
			target := float64(s.needOf(i, d).TargetKcal)
			if s.fasts(i, d, eaten) {
				nothing.days = append(nothing.days, d+1)
				continue
			}
			if target > 0 && float64(eaten.Kcal) < target*s.trip.Settings.DayLow-1 {
				short = append(short, hungry{member: i, day: d + 1, eats: float64(eaten.Kcal), target: target})
			}
			list = append(list, s.lookAtDay(i, d, eaten)...)
		}
		if len(nothing.days) > 0 {
			without = append(without, nothing)
		}
	}
	list = append(list, s.hungryDays(short)...)
	list = append(list, s.nothingToEat(without)...)
	list = append(list, s.lookAtDinners(r)...)
	list = append(list, s.lookAtNutrients(r)...)
	return append(list, s.lookAtUnknown(r)...)
}

func finding(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) findings.Finding {
	return findings.Finding{Severity: severity, Stage: findings.Portions, Code: code, Place: place, What: what, Why: why, Remedy: remedy}
}

// fasts tells whether the member needs food that day and is served none.
func (s *sizer) fasts(member, d int, eaten *DayIntake) bool {
	return eaten.Kcal == 0 && float64(s.needOf(member, d).TargetKcal)*s.trip.Settings.DayLow > 1
}

func (s *sizer) lookAtDay(member, d int, eaten *DayIntake) []findings.Finding {
	need, settings, who := s.needOf(member, d), &s.trip.Settings, &s.trip.Crew[member]
	place := findings.Place{Day: d + 1, Member: who.ID}
	target := float64(need.TargetKcal)
	if target <= 0 {
		return nil
	}
	var list []findings.Finding
	if kcal := float64(eaten.Kcal); kcal > target*settings.DayHigh+1 {
		list = append(list, finding(findings.LookAt, "day-over", place,
			prose.Say("%s gets %.0f kcal on day %d, %.0f %% of the need of %.0f.", who.Name, kcal, d+1, 100*kcal/target, target),
			prose.Say("The settings allow %.0f %%; no portion may be smaller than its recipe allows.", 100*settings.DayHigh),
			prose.Say("Leave a dish out for %s, or let a recipe be served smaller: %.0f kcal too much.", who.Name, kcal-target*settings.DayHigh)))
	}
	if short := need.ProteinGrams - eaten.ProteinGrams; short > proteinSlack {
		list = append(list, finding(findings.LookAt, "protein-short", place,
			littleProtein(who.Name, eaten, need.ProteinGrams, d+1),
			prose.Say("Protein target of the settings; 1.2 to 2.0 g/kg for active people: AND/DC/ACSM 2016."),
			s.proteinRemedy(who, short)))
	}
	return list
}

// proteinSlack is what does not count as short, in grams: a coarse scale takes more than proteinMargin.
const proteinSlack = 0.5

// littleProtein says how much there is, or that it may be more.
func littleProtein(name string, eaten *DayIntake, target float64, day int) prose.Text {
	got, unknown := eaten.ProteinGrams, eaten.UnknownProtein
	if unknown == 0 {
		return prose.Say("%s gets %.0f of %.0f g protein on day %d.", name, got, target, day)
	}
	return prose.Plural(unknown,
		prose.Say("%s gets %.0f of %.0f g protein on day %d or more: the protein of %d food is not known.", name, got, target, day, unknown),
		prose.Say("%s gets %.0f of %.0f g protein on day %d or more: the protein of %d foods is not known.", name, got, target, day, unknown))
}

// energyRemedy names the lightest food of the trip that the member may eat and the grams of it that bring the energy.
func (s *sizer) energyRemedy(who *trip.Member, kcal float64) prose.Text {
	food, mass := s.lightest(who, kcal)
	if food == nil {
		return prose.Say("Add another dish worth %.0f kcal, or let portions be larger.", kcal)
	}
	return prose.Say("Add %s of %s to a meal of %s, add a dish, or let portions be larger.", mass, food.Name, who.Name)
}

func (s *sizer) proteinRemedy(who *trip.Member, short float64) prose.Text {
	food := s.booster(who, func(f *trip.Food) float64 { return f.Per100g.ProteinGrams.Or(0) * (1 - f.RefuseShare) })
	if food == nil {
		return prose.Say("Add a dish with %.0f g of protein.", short)
	}
	perGram := food.Per100g.ProteinGrams.Or(0) * (1 - food.RefuseShare) / 100
	return prose.Say("Add %s of %s to a meal of %s, or choose a dish richer in protein.", units.FromGrams(roundedUp(short/perGram)), food.Name, who.Name)
}

// roundedUp gives whole five grams: nobody adds 13 g of oil.
func roundedUp(grams float64) float64 { return 5 * math.Ceil(grams/5) }

// booster is the food of the trip with most of what is short that the member may eat and likes, and that keeps without cooling; nil
// if there is none.
func (s *sizer) booster(who *trip.Member, worth func(*trip.Food) float64) *trip.Food {
	var best *trip.Food
	for i := range s.trip.Foods {
		food := &s.trip.Foods[i]
		if food.Storage.Control() != trip.TCSNo || worth(food) <= 0 || len(who.Objections(food)) > 0 {
			continue
		}
		if best == nil || worth(food) > worth(best) {
			best = food
		}
	}
	return best
}

// lookAtDinners notes main meals that are too little, one finding for each dinner and member.
func (s *sizer) lookAtDinners(r *Result) []findings.Finding {
	var list []findings.Finding
	for _, meal := range s.dinners(r) {
		lacks := foodenergy.MainMealLacks(meal.kcal+roundingSlack, meal.protein+roundingSlack)
		if len(lacks) == 0 {
			continue
		}
		who := &s.trip.Crew[meal.member]
		list = append(list, finding(findings.Note, "main-meal-small", findings.Place{Day: meal.day, Meal: trip.Dinner, Group: who.Group, Member: who.ID},
			prose.Say("Dinner of %s on day %d has %.0f kcal and %.0f g protein: too little %s.", who.Name, meal.day, meal.kcal, meal.protein, lacking(lacks)),
			prose.Say("A main meal should hold %.0f kcal and %.0f g protein (common practice, no source).", foodenergy.MainMealKcal, foodenergy.MainMealProteinG),
			s.dinnerRemedy(who, meal.kcal, meal.protein)))
	}
	return list
}

func lacking(names []string) prose.Text {
	if len(names) == 2 {
		return prose.Say("%s and %s", prose.Word(names[0]), prose.Word(names[1]))
	}
	return prose.Say("%s", prose.Word(names[0]))
}

func (s *sizer) dinnerRemedy(who *trip.Member, kcal, protein float64) prose.Text {
	if short := foodenergy.MainMealProteinG - protein; short > 0 {
		return s.proteinRemedy(who, short)
	}
	return s.energyRemedy(who, foodenergy.MainMealKcal-kcal)
}

// roundingSlack is what rounding may take from a dinner, in kcal and in grams of protein.
const roundingSlack = 0.5

type dinner struct {
	member, day   int
	kcal, protein float64
}

// dinners adds up the dinner of each member and day, in the order of the batches.
func (s *sizer) dinners(r *Result) []dinner {
	var list []dinner
	at := map[[2]int]int{}
	for i := range r.Batches {
		b := &r.Batches[i]
		if b.Meal != trip.Dinner {
			continue
		}
		for _, portion := range b.Portions {
			key := [2]int{s.crew[portion.Member], b.Day}
			k, ok := at[key]
			if !ok {
				k = len(list)
				at[key] = k
				list = append(list, dinner{member: key[0], day: b.Day})
			}
			for _, amount := range portion.Amounts {
				food := s.foods[amount.Food]
				list[k].kcal += float64(food.Kcal(amount.Mass))
				list[k].protein += food.Per100g.ProteinGrams.Or(0) * food.EatenGrams(amount.Mass) / 100
			}
		}
	}
	return list
}

// lookAtUnknown notes foods of the menu whose protein is not known, since their days are reckoned too low.
func (s *sizer) lookAtUnknown(r *Result) []findings.Finding {
	var list []findings.Finding
	told := map[trip.FoodID]bool{}
	for i := range r.Batches {
		for _, total := range r.Batches[i].Totals {
			food := s.foods[total.Food]
			if food.Per100g.ProteinGrams.Known() || told[food.ID] {
				continue
			}
			told[food.ID] = true
			list = append(list, finding(findings.Note, "protein-unknown", findings.Place{Food: food.ID},
				prose.Say("The protein of %s is not known, and it is on the menu.", food.Name),
				prose.Say("Unknown counts as nothing in the sums, and is counted."), prose.Say("Enter the figure of the label.")))
		}
	}
	return list
}
