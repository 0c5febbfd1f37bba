package portions

import (
	"math"

	"sumpter/domain/menu"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// countPieces makes counted foods whole once the scales are found, and finds
// the scales of the days concerned anew around them, so that what is weighed
// makes up for what is not.
func (s *sizer) countPieces() {
	again := map[[2]int]bool{}
	for i := range s.batches {
		p := &s.batches[i]
		for at := range p.recipe.Ingredients {
			for _, food := range foodsOf(p, at) {
				if step := s.foods[food].PieceStep(); step > 0 {
					for _, o := range s.count(p, at, food, step) {
						again[[2]int{s.crew[o.member], p.day - 1}] = true
					}
				}
			}
		}
	}
	if len(again) == 0 {
		return
	}
	for i := range s.trip.Crew {
		for d := range s.trip.Days {
			if again[[2]int{i, d}] {
				s.sizeDay(i, d)
			}
		}
	}
}

// count gives each eater whole pieces of an ingredient, at least one; out of a
// pot each gets a part of the pieces that go into it.
func (s *sizer) count(p *pot, at int, food trip.FoodID, step units.Mass) []*serving {
	var eaters []*serving
	var exact []float64
	sum := 0.0
	for _, o := range p.servings {
		if part, ok := o.part(at); ok && part.Food == food {
			mass := o.massOf(p.recipe, part)
			eaters, exact = append(eaters, o), append(exact, mass)
			sum += mass
		}
	}
	whole := func(mass float64) units.Mass {
		return max(step, units.Mass(math.Round(mass/float64(step)))*step)
	}
	var shares []units.Mass
	if p.shared(at) {
		shares = Shares(whole(sum), units.Milligram, exact)
	} else {
		for _, mass := range exact {
			shares = append(shares, whole(mass))
		}
	}
	for k, o := range eaters {
		o.settle(at, s.foods[food], exact[k], shares[k])
	}
	return eaters
}

// shared tells whether an ingredient goes into a pot from which several eat.
func (p *pot) shared(at int) bool {
	return p.meal != trip.Snack && p.recipe.Ingredients[at].Place == trip.InPot
}

// massOf is the carried mass of a part at the scale of the serving.
func (o *serving) massOf(recipe *trip.Recipe, part menu.Part) float64 {
	if mass, counted := o.counted[part.Ingredient]; counted {
		return float64(mass)
	}
	mass := float64(menu.AmountOf(recipe, part))
	if recipe.Ingredients[part.Ingredient].Role != trip.ToTaste {
		mass *= o.scale
	}
	return mass
}

// settle takes an ingredient out of what grows with the scale: it is so much from now on.
func (o *serving) settle(at int, food *trip.Food, was float64, mass units.Mass) {
	before := &o.fixed
	if o.recipe.Ingredients[at].Role != trip.ToTaste {
		before = &o.grows
		if o.scale > 0 {
			was /= o.scale
		}
	}
	var out content
	out.add(food, units.Mass(math.Round(was)))
	before.grams, before.kcal, before.protein = before.grams-out.grams, before.kcal-out.kcal, before.protein-out.protein
	o.fixed.add(food, mass)
	if o.counted == nil {
		o.counted = map[int]units.Mass{}
	}
	o.counted[at] = mass
}
