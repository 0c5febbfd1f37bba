package menufill_test

import (
	"math/rand/v2"

	"sumpter/domain/solve/menufill"
)

// The meals of a generated day: breakfast, lunch, dinner and two snacks.
const (
	breakfast = iota
	lunch
	dinner
	snack
)

// generate makes a trip like a real one: three diet classes, recipes in four kinds, energy and protein asked each day, cook minutes
// short on every third day, some recipes fresh for a few days only, dinners not twice within four days. It is invented data.
func generate(days, recipes int, seed uint64) menufill.Problem {
	r := rand.New(rand.NewPCG(seed, 7))
	p := menufill.Problem{Days: days, Weights: menufill.Weights{Mass: 1}}
	counts := []int{7, 3, 2}
	for i := range recipes {
		p.Recipes = append(p.Recipes, generateRecipe(r, []int{breakfast, lunch, dinner, snack, dinner, snack}[i%6], len(counts), days))
	}
	for g, base := range []int{3000, 2800, 2600} {
		c := menufill.Class{Name: []string{"any", "vegetarian", "gluten-free"}[g]}
		for range days {
			need := base + 50*r.IntN(9)
			c.EnergyMin = append(c.EnergyMin, need*95/100)
			c.EnergyMax = append(c.EnergyMax, need*110/100)
			c.ProteinMin = append(c.ProteinMin, 700)
			c.EnergyTotal += need
		}
		p.Classes = append(p.Classes, c)
	}
	for day := range days {
		p.CookMinutes = append(p.CookMinutes, []int{70, 60, 35}[day%3])
		for _, kind := range []int{breakfast, lunch, dinner, snack, snack} {
			pots := 2
			if kind == snack {
				pots = 3
			}
			p.Slots = append(p.Slots, menufill.Slot{Day: day + 1, Kind: kind, Pots: pots, Eaters: counts})
		}
	}
	return p
}

func generateRecipe(r *rand.Rand, kind, classes, days int) menufill.Recipe {
	recipe := menufill.Recipe{Kinds: []int{kind}, Repeats: max(3, days/3)}
	kcal, cook := 0, 0
	switch kind {
	case breakfast:
		kcal, cook = 500+r.IntN(300), r.IntN(4)*5
	case lunch:
		kcal = 550 + r.IntN(300)
	case dinner:
		kcal, cook = 750+r.IntN(400), 10+r.IntN(5)*5
		recipe.GapDays = 3
	case snack:
		kcal = 250 + r.IntN(250)
		recipe.Repeats = max(4, days/2)
	}
	density := 350 + r.IntN(170) // kcal for 100 g
	if r.IntN(8) == 0 {
		recipe.LastDay, density = 1+r.IntN(4), 250+r.IntN(100)
	}
	recipe.CookMinutes = cook
	v := menufill.Serving{Served: true, Kcal: kcal, ProteinDg: kcal * (18 + r.IntN(30)) / 100, MassDg: kcal * 1000 / density, CostCents: 80 + r.IntN(300)}
	for g := range classes {
		w := v
		w.Served = g == 0 || r.IntN(100) < []int{100, 65, 60}[g]
		recipe.Servings = append(recipe.Servings, w)
	}
	return recipe
}
