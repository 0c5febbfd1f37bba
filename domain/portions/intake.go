package portions

import (
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
)

// intakes adds up what each member eats from the packs on each day.
func (s *sizer) intakes(batches []Batch) []Intake {
	list := make([]Intake, len(s.trip.Crew))
	for i := range list {
		list[i] = Intake{Member: s.trip.Crew[i].ID, Days: make([]DayIntake, len(s.trip.Days))}
	}
	place := make(map[trip.FoodID]int, len(s.trip.Foods))
	for i := range s.trip.Foods {
		place[s.trip.Foods[i].ID] = i
	}
	seen := make([]bool, len(s.trip.Crew)*len(s.trip.Days)*len(s.trip.Foods)) // by member, day and food
	for i := range batches {
		b := &batches[i]
		for _, portion := range b.Portions {
			who := s.crew[portion.Member]
			for _, amount := range portion.Amounts {
				had := &seen[(who*len(s.trip.Days)+b.Day-1)*len(s.trip.Foods)+place[amount.Food]]
				list[who].Days[b.Day-1].add(s.foods[amount.Food], amount, !*had)
				*had = true
			}
		}
	}
	return list
}

// add adds an amount of a food; first tells that the day has not had the food yet, so that what is unknown of it is counted once.
func (d *DayIntake) add(food *trip.Food, amount Amount, first bool) {
	per, grams := &food.Per100g, food.EatenGrams(amount.Mass)
	d.Food += amount.Mass
	d.Kcal += food.Kcal(amount.Mass)
	sum := func(total *float64, unknown *int, value float64, known bool) {
		switch {
		case known:
			*total += value * grams / 100
		case first:
			*unknown++
		}
	}
	protein, known := per.ProteinGrams.Get()
	sum(&d.ProteinGrams, &d.UnknownProtein, protein, known)
	fat, known := per.FatGrams.Get()
	sum(&d.FatGrams, &d.UnknownFat, fat, known)
	carb, known := availableCarb(per)
	sum(&d.CarbGrams, &d.UnknownCarb, carb, known)
	fibre, known := per.FibreGrams.Get()
	sum(&d.FibreGrams, &d.UnknownFibre, fibre, known)
	sodium, known := per.SodiumMilligrams.Get()
	sum(&d.SodiumMilligrams, &d.UnknownSodium, sodium, known)
}

// availableCarb gives the carbohydrate without fibre in 100 g. A total figure of a food whose fibre is unknown says nothing about it.
func availableCarb(per *trip.Nutrients) (grams float64, known bool) {
	carb, known := per.CarbGrams.Get()
	if !known || per.CarbConvention == trip.AvailableCarbohydrate {
		return carb, known
	}
	fibre, known := per.FibreGrams.Get()
	if !known {
		return 0, false
	}
	c := foodenergy.Composition{Convention: foodenergy.Total, Carbohydrate: carb, Fibre: fibre}
	return c.AvailableCarbohydrate(), true
}
