package fill

import (
	"sumpter/domain/menu"
	"sumpter/domain/science/foodenergy"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// plate is a recipe as one member is served it: what it brings whatever its size, and what each whole standard portion adds.
type plate struct {
	fixed, grows content
	least, most  float64 // scales
}

func (p *plate) at(scale float64) content {
	c := p.fixed
	c.add(&p.grows, scale)
	return c
}

// served is how a recipe turns out for those it is meant for.
type served struct {
	recipe   *trip.Recipe
	dish     menu.Dish
	plates   map[trip.MemberID]*plate
	dislikes map[trip.MemberID]bool
	foods    []trip.FoodID // in any of its servings
}

func (l *larder) serve(recipe *trip.Recipe, eaters []trip.MemberID, accepted []trip.Acceptance) *served {
	dish, _, dislike := l.taster.Serve(recipe, eaters, accepted)
	s := &served{recipe: recipe, dish: dish, plates: map[trip.MemberID]*plate{}, dislikes: map[trip.MemberID]bool{}}
	for _, member := range dislike {
		s.dislikes[member] = true
	}
	seen := map[trip.FoodID]bool{}
	var last []menu.Part
	var same *plate
	for _, batch := range dish.Batches {
		for _, serving := range batch.Servings {
			if same == nil || !sameParts(last, serving.Parts) {
				last, same = serving.Parts, l.plateOf(recipe, serving.Parts)
				for _, part := range serving.Parts {
					if !seen[part.Food] {
						seen[part.Food] = true
						s.foods = append(s.foods, part.Food)
					}
				}
			}
			s.plates[serving.Member] = same
		}
	}
	return s
}

func sameParts(a, b []menu.Part) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Ingredient != b[i].Ingredient || a[i].Food != b[i].Food {
			return false
		}
	}
	return true
}

func (l *larder) plateOf(recipe *trip.Recipe, parts []menu.Part) *plate {
	p := &plate{least: recipe.MinScale, most: max(recipe.MinScale, recipe.MaxScale)}
	for _, part := range parts {
		grams := menu.AmountOf(recipe, part).Grams()
		if recipe.Ingredients[part.Ingredient].Role == trip.ToTaste {
			p.fixed.add(&l.foods[part.Food].per, grams)
		} else {
			p.grows.add(&l.foods[part.Food].per, grams)
		}
	}
	return p
}

// wished is the scale at which plates served together bring the energy, each within its bounds.
func wished(plates []*plate, kcal float64) float64 {
	var fixed, grows float64
	for _, p := range plates {
		fixed += p.fixed.kcal
		grows += p.grows.kcal
	}
	if grows <= 0 {
		return 1
	}
	return (kcal - fixed) / grows
}

// sized is the scale that a plate gets in the end, about: dense dishes grow above what was wished and bulky ones shrink, as when portions are
// sized, where the rest of the day's food is of the usual density.
func (p *plate) sized(wished float64) float64 {
	if p.grows.grams <= 0 {
		return p.clamp(wished)
	}
	return p.clamp(p.clamp(wished) + p.grows.kcal/p.grows.grams/otherKcalPerGram - 1)
}

func (p *plate) clamp(scale float64) float64 { return min(max(scale, p.least), p.most) }

// mealKcal is the energy that a meal should bring a member: its share of the day, and at a dinner what a main meal should hold.
func (l *larder) mealKcal(member trip.MemberID, day int, meal trip.Meal) float64 {
	target := float64(l.need(member, day).TargetKcal)
	kcal := target * l.shareOf(day, meal)
	if meal == trip.Dinner {
		kcal = max(kcal, min(foodenergy.MainMealKcal, target))
	}
	return kcal
}

// dry is what goes into the pot of a batch at standard size, for each whole scale.
func dry(recipe *trip.Recipe, batch *menu.Batch) units.Mass {
	sum := units.Mass(0)
	for _, part := range batch.Servings[0].Parts {
		if recipe.Ingredients[part.Ingredient].Place == trip.InPot {
			sum += menu.AmountOf(recipe, part)
		}
	}
	return sum
}
