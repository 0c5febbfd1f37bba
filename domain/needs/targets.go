package needs

import (
	"sumpter/domain/prose"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/science/metabolism"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
)

// fromPacks is the part of a day's energy that is eaten from the packs, by
// the shares of its meals.
func fromPacks(day *trip.Day, shares trip.MealShares) float64 {
	eaten, all := 0.0, 0.0
	for _, meal := range trip.Meals() {
		share := max(0, shares.Of(meal))
		all += share
		if day.Eats(meal) {
			eaten += share
		}
	}
	if all > 0 {
		return eaten / all
	}
	for _, meal := range trip.Meals() {
		if day.Eats(meal) {
			eaten += 1 / float64(len(trip.Meals()))
		}
	}
	return eaten
}

// proteinPerKg gives the target in g/kg and who set it.
func proteinPerKg(m *trip.Member, settings *trip.Settings) (perKg float64, setBy prose.Text) {
	if own, ok := m.ProteinPer.Get(); ok && own > 0 {
		return own, prose.Say("the member's own figure")
	}
	if settings.ProteinPerKg > 0 {
		return settings.ProteinPerKg, prose.Say("the trip's figure; 1.2 to 2.0 g/kg for active people: AND/DC/ACSM 2016")
	}
	return foodenergy.ActiveProteinLeast, prose.Say("1.2 to 2.0 g/kg for active people: AND/DC/ACSM 2016")
}

// setNutrients fills in what the day's food from the packs should bring.
func (d *Day) setNutrients(b body, proteinPerKg float64, walk Walk, high float64) {
	shares := foodenergy.AcceptableShares(b.minor())
	target := float64(d.TargetKcal)
	d.ProteinGrams = proteinPerKg * b.massKg * d.FromPacks
	fat := foodenergy.Grams(shares.Fat, target, foodenergy.FatKcalPerG)
	d.FatLowGrams, d.FatHighGrams = fat.Least, fat.Most
	moving := foodenergy.MovingCarbohydrateLeast * max(0, float64(walk.Hours)-1)
	d.CarbLowGrams = max(
		foodenergy.Grams(shares.Carbohydrate, target, foodenergy.CarbohydrateKcalPerG).Least,
		moving*d.FromPacks)
	female, male := foodenergy.Fibre(b.age)
	d.FibreGrams = bySex(b.sex, female, male) * d.FromPacks
	sweat := water.DrinkPerHour(high, water.Moderate) * float64(walk.Hours)
	d.SodiumLowMilligrams = (foodenergy.SodiumADay + foodenergy.SodiumPerLitreOfSweat*sweat) * d.FromPacks
}

func bySex(sex metabolism.Sex, female, male float64) float64 {
	switch sex {
	case metabolism.Female:
		return female
	case metabolism.Male:
		return male
	default:
		return (female + male) / 2
	}
}
