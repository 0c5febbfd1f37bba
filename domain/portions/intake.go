package portions

import "sumpter/domain/trip"

// addIntakes adds up what everybody eats, day by day.
func (s *sizing) addIntakes() {
	for i := range s.trip.Crew {
		s.result.Intakes = append(s.result.Intakes, Intake{Member: s.trip.Crew[i].ID, Days: make([]DayIntake, len(s.trip.Days))})
	}
	for b := range s.result.Batches {
		batch := &s.result.Batches[b]
		for _, portion := range batch.Portions {
			day := &s.result.Intakes[s.place[portion.Member]].Days[batch.Day-1]
			for _, amount := range portion.Amounts {
				day.eat(s.foods[amount.Food], amount)
			}
		}
	}
}

// eat adds one amount of a food to the day.
func (d *DayIntake) eat(food *trip.Food, amount Amount) {
	d.Food += amount.Mass
	d.Kcal += food.Kcal(amount.Mass)
	part := food.EatenGrams(amount.Mass) / 100
	n := &food.Per100g
	add := func(sum *float64, unknown *int, per100 float64, known bool) {
		if known {
			*sum += per100 * part
		} else {
			*unknown++
		}
	}
	protein, ok := n.ProteinGrams.Get()
	add(&d.ProteinGrams, &d.UnknownProtein, protein, ok)
	fat, ok := n.FatGrams.Get()
	add(&d.FatGrams, &d.UnknownFat, fat, ok)
	carb, ok := availableCarbohydrate(n)
	add(&d.CarbGrams, &d.UnknownCarb, carb, ok)
	fibre, ok := n.FibreGrams.Get()
	add(&d.FibreGrams, &d.UnknownFibre, fibre, ok)
	sodium, ok := n.SodiumMilligrams.Get()
	add(&d.SodiumMilligrams, &d.UnknownSodium, sodium, ok)
}

// availableCarbohydrate takes the fibre off a total, so that it is not
// counted twice. A total whose fibre is unknown has no known available part.
func availableCarbohydrate(n *trip.Nutrients) (grams float64, known bool) {
	carb, ok := n.CarbGrams.Get()
	if !ok || n.CarbConvention == trip.AvailableCarbohydrate {
		return carb, ok
	}
	fibre, ok := n.FibreGrams.Get()
	return max(0, carb-fibre), ok
}
