package menu

import (
	"slices"

	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Penalties of a proposal, in grams of food for one eater: what a leader would
// carry more to avoid it (design choice).
const (
	goesWithout   = 2000.0 // somebody needs another dish
	soonAgain     = 400.0  // a dinner within the gap the settings ask for
	dayAfterDay   = 120.0  // anything else on two days running
	eachUse       = 40.0   // for each time it was served before
	sameStaple    = 60.0   // as at another meal of the day or the same meal of the day before
	sameTexture   = 25.0
	moreBatches   = 80.0 // for each pot beyond the first
	spoils        = 800.0
	tooHot        = 150.0
	misliked      = 60.0  // shared by the eaters
	outsideScale  = 150.0 // a portion the recipe does not allow
	tooLittle     = 600.0 // a meal that cannot be made large enough: a drink is no dinner
	lowProtein    = 60.0  // at a main meal
	minuteOnStove = 1.5   // for each minute of simmering
	litreAtDry    = 300.0
)

// penalty weighs a recipe for a slot: the grams each eater would carry for the meal's share of the need, and the rest in grams.
func (f *filler) penalty(key slotKey, recipe *trip.Recipe, hungry []trip.MemberID, out *outcome) float64 {
	plate := f.plateOf(recipe, out)
	target := f.target(key, hungry)
	sum := goesWithout * float64(len(out.refused))
	sum += moreBatches * float64(len(out.dish.Batches)-1)
	sum += misliked * float64(len(out.disliked)) / float64(len(hungry))
	sum += minuteOnStove * float64(recipe.Simmer)
	if f.trip.Days[key.day-1].DryCamp && key.meal != trip.Lunch {
		sum += litreAtDry * (recipe.Water + recipe.PourOff).Litres()
	}
	sum += f.weightOf(key, recipe, plate, target)
	return sum + f.keeping(key, out)
}

// kcalPerGram is what mixed dry trail food brings (common practice, no source).
const kcalPerGram = 4.0

// plate is what an average eater gets of the standard portion.
type plate struct{ grams, kcal, protein float64 }

func (f *filler) plateOf(recipe *trip.Recipe, out *outcome) plate {
	var sum plate
	n := 0.0
	for _, batch := range out.dish.Batches {
		for _, serving := range batch.Servings {
			n++
			for _, part := range serving.Parts {
				food, mass := f.food(part.Food), AmountOf(recipe, part)
				sum.grams += mass.Grams()
				sum.kcal += float64(food.Kcal(mass))
				sum.protein += food.Per100g.ProteinGrams.Or(0) * food.EatenGrams(mass) / 100
			}
		}
	}
	return plate{sum.grams / n, sum.kcal / n, sum.protein / n}
}

// AmountOf is the carried mass of a part for one standard eater.
func AmountOf(recipe *trip.Recipe, part Part) units.Mass {
	ingredient := &recipe.Ingredients[part.Ingredient]
	if !part.Swapped {
		return ingredient.Amount
	}
	for _, swap := range ingredient.Swaps {
		if swap.Food == part.Food {
			return swap.Amount
		}
	}
	return 0
}

// target is the mean energy that the meal should bring each eater.
func (f *filler) target(key slotKey, eaters []trip.MemberID) float64 {
	shares, eaten := f.trip.Settings.MealShares, 0.0
	for _, meal := range trip.Meals() {
		if f.trip.Days[key.day-1].Eats(meal) {
			eaten += shares.Of(meal)
		}
	}
	sum := 0.0
	for i := range f.needs.Members {
		m := &f.needs.Members[i]
		if slices.Contains(eaters, m.Member) && key.day <= len(m.Days) {
			sum += float64(m.Days[key.day-1].TargetKcal)
		}
	}
	if eaten <= 0 || len(eaters) == 0 {
		return 0
	}
	return sum / float64(len(eaters)) * shares.Of(key.meal) / eaten
}

// weightOf is the grams of the portion that meets the target, and what its size and too little protein cost.
func (f *filler) weightOf(key slotKey, recipe *trip.Recipe, p plate, target float64) float64 {
	if p.kcal <= 0 {
		return outsideScale + p.grams
	}
	scale := target / p.kcal
	sized := min(max(scale, recipe.MinScale), max(recipe.MaxScale, recipe.MinScale))
	sum := p.grams * sized
	if target > 0 {
		missing := max(0, target-p.kcal*sized)
		sum += outsideScale*abs(scale-sized)/max(scale, sized) + tooLittle*missing/target
		sum += missing / kcalPerGram // other food makes up for it
	}
	if key.meal == trip.Dinner && p.protein*sized < foodenergy.MainMealProteinG {
		sum += lowProtein * (1 - p.protein*sized/foodenergy.MainMealProteinG)
	}
	return sum
}

func abs(x float64) float64 { return max(x, -x) }

// sameness weighs how often the group has had the recipe, its staple and texture.
func (f *filler) sameness(key slotKey, recipe *trip.Recipe, around []*trip.Recipe) float64 {
	sum := 0.0
	for _, day := range f.uses[useOf{recipe.ID, key.group}] {
		apart := max(day-key.day, key.day-day)
		sum += eachUse
		switch {
		case key.meal == trip.Dinner && apart <= f.trip.Settings.RepeatGap:
			sum += soonAgain
		case apart <= 1:
			sum += dayAfterDay
		}
	}
	for _, other := range around {
		if recipe.Staple != "" && recipe.Staple == other.Staple {
			sum += sameStaple
		}
		if recipe.Texture != "" && recipe.Texture == other.Texture {
			sum += sameTexture
		}
	}
	return sum
}

// around lists what the group has at the other meals of the day and at the same meal the day before and after.
func (f *filler) around(key slotKey) []*trip.Recipe {
	var list []*trip.Recipe
	for i := range f.trip.Recipes {
		recipe := &f.trip.Recipes[i]
		for _, day := range f.uses[useOf{recipe.ID, key.group}] {
			near := day == key.day || max(day-key.day, key.day-day) == 1 && slices.Contains(recipe.Meals, key.meal)
			if near {
				list = append(list, recipe)
			}
		}
	}
	return list
}

// keeping weighs the food of the dish that bears the way to the slot worst: spoiling counts most, then melting and going stale.
func (f *filler) keeping(key slotKey, out *outcome) float64 {
	day := &f.trip.Days[key.day-1]
	worst := 0.0
	for _, batch := range out.dish.Batches {
		for _, part := range batch.Servings[0].Parts {
			storage := &f.food(part.Food).Storage
			if storage.Control() != trip.TCSNo && key.day > 1 {
				worst = max(worst, spoils)
			}
			if limit, known := storage.MaxHeat.Get(); known && day.High > limit {
				worst = max(worst, tooHot)
			}
			if shelf, known := storage.ShelfDays.Get(); known && shelf < float64(key.day) {
				worst = max(worst, tooHot)
			}
		}
	}
	return worst
}
