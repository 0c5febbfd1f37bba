package portions

import (
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Compute sizes every serving of the menu. The trip is canonical. It never
// fails: where a day cannot be met, a finding says by how much and what to do.
//
// Each member's day is sized apart: every dish has one scale for its base
// ingredients, within the bounds of the recipe. Meals start from their share
// of the need; dense dishes then grow and bulky ones shrink until the day's
// energy is met with less to carry; where protein falls short, dishes rich in
// it grow instead. Counted foods then become whole pieces, and the rest of the
// day makes up for it. Amounts are rounded so that portions of a batch add up
// to what is weighed for it.
func Compute(t *trip.Trip, n needs.Result, m menu.Result) Result {
	s, result := size(t, n, m)
	result.Findings = s.lookAt(&result)
	return result
}

// Figures is Compute without the findings, for those who only compare and for
// the rounds of the plan whose result nobody reads.
func Figures(t *trip.Trip, n needs.Result, m menu.Result) Result {
	_, result := size(t, n, m)
	return result
}

func size(t *trip.Trip, n needs.Result, m menu.Result) (*sizer, Result) {
	s := &sizer{trip: t, needs: n, foods: map[trip.FoodID]*trip.Food{}, recipes: map[trip.RecipeID]*trip.Recipe{}, crew: map[trip.MemberID]int{}}
	for i := range t.Foods {
		s.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	for i := range t.Recipes {
		s.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range t.Crew {
		s.crew[t.Crew[i].ID] = i
	}
	s.list(m)
	for i := range t.Crew {
		for d := range t.Days {
			s.sizeDay(i, d)
		}
	}
	s.countPieces()
	var result Result
	for i := range s.batches {
		result.Batches = append(result.Batches, s.weigh(&s.batches[i]))
	}
	result.Intakes = s.intakes(result.Batches)
	return s, result
}

// sizer holds the servings of all days while their scales are found.
type sizer struct {
	trip    *trip.Trip
	needs   needs.Result
	foods   map[trip.FoodID]*trip.Food
	recipes map[trip.RecipeID]*trip.Recipe
	crew    map[trip.MemberID]int
	batches []pot
	days    map[[2]int][]*serving // by member and day, both from 0
}

// pot is a batch being sized.
type pot struct {
	day, dish, batch int
	meal             trip.Meal
	group            trip.GroupID
	recipe           *trip.Recipe
	servings         []*serving
}

// serving is one eater's part of a batch: what it brings at scale 0, and for
// each whole scale.
type serving struct {
	member                trip.MemberID
	meal                  trip.Meal
	recipe                *trip.Recipe
	parts                 []menu.Part
	fixed, grows          content
	leastScale, mostScale float64
	scale, wished         float64
	counted               map[int]units.Mass // by ingredient: whole pieces
}

// content is carried grams, energy and known protein.
type content struct{ grams, kcal, protein float64 }

func (c *content) add(food *trip.Food, mass units.Mass) {
	c.grams += mass.Grams()
	c.kcal += float64(food.Kcal(mass))
	c.protein += food.Per100g.ProteinGrams.Or(0) * food.EatenGrams(mass) / 100
}

// list lays out the servings of the menu.
func (s *sizer) list(m menu.Result) {
	s.days = map[[2]int][]*serving{}
	for i := range m.Slots {
		slot := &m.Slots[i]
		for d := range slot.Dishes {
			dish := &slot.Dishes[d]
			recipe := s.recipes[dish.Recipe]
			for b := range dish.Batches {
				p := pot{day: slot.Day, dish: d, batch: b, meal: slot.Meal, group: slot.Group, recipe: recipe}
				for _, served := range dish.Batches[b].Servings {
					one := s.serving(recipe, slot.Meal, served)
					p.servings = append(p.servings, one)
					key := [2]int{s.crew[served.Member], slot.Day - 1}
					s.days[key] = append(s.days[key], one)
				}
				s.batches = append(s.batches, p)
			}
		}
	}
}

func (s *sizer) serving(recipe *trip.Recipe, meal trip.Meal, served menu.Serving) *serving {
	one := &serving{member: served.Member, meal: meal, recipe: recipe, parts: served.Parts,
		leastScale: recipe.MinScale, mostScale: max(recipe.MinScale, recipe.MaxScale), scale: 1}
	for _, part := range served.Parts {
		mass := menu.AmountOf(recipe, part)
		if recipe.Ingredients[part.Ingredient].Role == trip.ToTaste {
			one.fixed.add(s.foods[part.Food], mass)
		} else {
			one.grows.add(s.foods[part.Food], mass)
		}
	}
	return one
}

func (o *serving) at(scale float64) content {
	return content{o.fixed.grams + o.grows.grams*scale, o.fixed.kcal + o.grows.kcal*scale, o.fixed.protein + o.grows.protein*scale}
}

func (o *serving) clamp(scale float64) float64 { return min(max(scale, o.leastScale), o.mostScale) }
