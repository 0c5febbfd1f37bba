package portions

import (
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute sizes every serving of the menu.
func Compute(t *trip.Trip, n needs.Result, m menu.Result) Result {
	s := newSizing(t, n, m)
	for i := range t.Crew {
		for day := 1; day <= len(t.Days); day++ {
			s.sizeDay(i, day)
		}
	}
	for i := range m.Slots {
		s.portionSlot(&m.Slots[i])
	}
	s.addIntakes()
	s.review()
	return s.result
}

// sizing is the work on one trip.
type sizing struct {
	trip    *trip.Trip
	needs   needs.Result
	foods   map[trip.FoodID]*trip.Food
	recipes map[trip.RecipeID]*trip.Recipe
	place   map[trip.MemberID]int
	plates  [][][]plate // by place in the crew and day-1
	scale   map[plateKey]float64
	result  Result
}

// plateKey names one serving of one eater.
type plateKey struct {
	day    int
	meal   trip.Meal
	group  trip.GroupID
	dish   int
	member trip.MemberID
}

// plate is a serving before it is sized: what grows with the portion and what
// does not.
type plate struct {
	key                  plateKey
	recipe               *trip.Recipe
	parts                []menu.Part
	grows, fixed         float64 // kcal
	growsProtein, always float64 // protein in grams, growing and fixed
	grams                float64 // growing, as carried
}

func newSizing(t *trip.Trip, n needs.Result, m menu.Result) *sizing {
	s := &sizing{
		trip: t, needs: n, foods: map[trip.FoodID]*trip.Food{}, recipes: map[trip.RecipeID]*trip.Recipe{},
		place: map[trip.MemberID]int{}, scale: map[plateKey]float64{},
	}
	for i := range t.Foods {
		s.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	for i := range t.Recipes {
		s.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range t.Crew {
		s.place[t.Crew[i].ID] = i
		s.plates = append(s.plates, make([][]plate, len(t.Days)))
	}
	for i := range m.Slots {
		s.addPlates(&m.Slots[i])
	}
	return s
}

func (s *sizing) addPlates(slot *menu.Slot) {
	for d, dish := range slot.Dishes {
		recipe := s.recipes[dish.Recipe]
		for _, batch := range dish.Batches {
			for _, serving := range batch.Servings {
				who := s.place[serving.Member]
				p := plate{key: plateKey{slot.Day, slot.Meal, slot.Group, d, serving.Member}, recipe: recipe, parts: serving.Parts}
				for _, part := range serving.Parts {
					s.weigh(&p, part)
				}
				s.plates[who][slot.Day-1] = append(s.plates[who][slot.Day-1], p)
			}
		}
	}
}

// weigh adds one food to what a plate brings at the standard size.
func (s *sizing) weigh(p *plate, part menu.Part) {
	food, mass := s.foods[part.Food], amountOf(p.recipe, part)
	if food == nil {
		return
	}
	kcal := float64(food.Kcal(mass))
	protein := food.Per100g.ProteinGrams.Or(0) * food.EatenGrams(mass) / 100
	if p.recipe.Ingredients[part.Ingredient].Role == trip.ToTaste {
		p.fixed += kcal
		p.always += protein
		return
	}
	p.grows += kcal
	p.growsProtein += protein
	p.grams += mass.Grams()
}

// amountOf gives the standard amount of a part, of the swap where one was taken.
func amountOf(recipe *trip.Recipe, part menu.Part) units.Mass {
	ingredient := &recipe.Ingredients[part.Ingredient]
	if part.Swapped {
		for _, swap := range ingredient.Swaps {
			if swap.Food == part.Food {
				return swap.Amount
			}
		}
	}
	return ingredient.Amount
}
