// Package boosters proposes dense additions from the trip's own foods for a
// day on which somebody is short of energy or protein, or carries much food:
// oil, nut butter, milk powder, nuts. A spoon of them weighs half of what other
// food weighs for the same energy.
//
// What each would change is worked out by the stages that make the plan.
//
// Start with Propose; it wants a canonical trip.
package boosters

import (
	"cmp"
	"math"
	"slices"

	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/spoilage"
	"sumpter/domain/trial"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Reason is why something denser would help.
type Reason string

// Reasons.
const (
	Energy  Reason = "energy"  // somebody gets less than the settings ask for
	Protein Reason = "protein" // somebody is below the target
	Weight  Reason = "weight"  // the day's food is heavy
)

// Proposal is a food for some eaters of a slot, the same for each.
type Proposal struct {
	Reason       Reason          `json:"reason"`
	Food         trip.FoodID     `json:"food"`
	For          []trip.MemberID `json:"for"` // by ID; only who may eat it
	Mass         units.Mass      `json:"mass_g"`
	Kcal         units.Kcal      `json:"kcal"`
	ProteinGrams float64         `json:"protein_g"`
	Change       Change          `json:"change"`
}

// Change is what taking a proposal does to the day of those who get it, the
// mean of them, once all their portions are sized anew around it.
type Change struct {
	Food         units.Mass  `json:"food_g"` // below 0: less to carry
	Kcal         units.Kcal  `json:"kcal"`
	ProteinGrams float64     `json:"protein_g"`
	Cost         units.Money `json:"cost"`
	Priced       bool        `json:"priced"` // false: the food has no price, and Cost leaves it out
}

// Common practice, no source.
const (
	denseKcal     = 450.0 // in 100 g as carried: what counts as dense
	richProtein   = 20.0  // grams in 100 g
	leastGrams    = 5.0   // nobody adds less, and 13 g of oil are 15
	mostGrams     = 40.0  // more than two or three spoons nobody wants in a bowl
	usualGrams    = 15.0  // of one spoon
	heavyDayGrams = 750.0
	mostProposals = 4
	mostTried     = 6 // that are looked at closely
)

// Propose lists what would help at a meal, best first; none where nobody is
// short and the day's food is light. Only foods are proposed that keep without
// cooling, are safe at that meal, and that each eater named may eat and likes;
// on a heavy day only what makes it lighter. The cells of the trip are all there
// is to eat: put proposals in before.
func Propose(t *trip.Trip, n needs.Result, p portions.Result, day int, meal trip.Meal, group trip.GroupID) []Proposal {
	l := lack(t, n, p, day, group)
	if len(l.members) == 0 {
		return nil
	}
	outlook := spoilage.NewOutlook(t)
	var list []Proposal
	for i := range t.Foods {
		food := &t.Foods[i]
		if !l.suits(food) || addedAlready(t, t.Cell(day, meal, group), food.ID) {
			continue
		}
		if fate, known := outlook.At(day, meal, food.ID, 0); !known || fate.Verdict != spoilage.Safe {
			continue
		}
		one := Proposal{Reason: l.reason, Food: food.ID, Mass: l.mass(food)}
		for _, id := range l.members {
			if len(t.Member(id).Objections(food)) == 0 {
				one.For = append(one.For, id)
			}
		}
		if len(one.For) == 0 {
			continue
		}
		one.Kcal = food.Kcal(one.Mass)
		one.ProteinGrams = food.Per100g.ProteinGrams.Or(0) * food.EatenGrams(one.Mass) / 100
		list = append(list, one)
	}
	slices.SortStableFunc(list, func(a, b Proposal) int {
		return cmp.Or(cmp.Compare(len(b.For), len(a.For)), cmp.Compare(l.worth(t.Food(b.Food)), l.worth(t.Food(a.Food))), cmp.Compare(a.Food, b.Food))
	})
	list = tryOut(t, n, list[:min(len(list), mostTried)], day, meal, group)
	return list[:min(len(list), mostProposals)]
}

// addedAlready tells whether a slot serves a food by itself, as an addition is served.
func addedAlready(t *trip.Trip, cell *trip.Cell, food trip.FoodID) bool {
	return cell != nil && slices.ContainsFunc(cell.Dishes, func(d trip.Dish) bool {
		recipe := t.Recipe(d.Recipe)
		return recipe != nil && len(recipe.Ingredients) == 1 && recipe.Ingredients[0].Food == food
	})
}

// tryOut works out what each proposal would change, and leaves out what makes a heavy day no lighter.
func tryOut(t *trip.Trip, n needs.Result, list []Proposal, day int, meal trip.Meal, group trip.GroupID) []Proposal {
	with, first := *t, trip.NextID(t.Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
	with.Recipes = slices.Clone(t.Recipes)
	for i := range list {
		extra := list[i].Dish("", "")
		extra.ID = first + trip.RecipeID(i)
		with.Recipes = append(with.Recipes, extra)
	}
	var served []trip.Dish
	if cell := t.Cell(day, meal, group); cell != nil {
		served = cell.Dishes
	}
	whole := trial.NewDay(&with, n, day, group)
	var useful []Proposal
	for i := range list {
		one := list[i]
		some := whole.Among(one.For)
		before := some.With(meal, served)
		after := some.With(meal, append(slices.Clone(served), trip.Dish{Recipe: first + trip.RecipeID(i), For: one.For}))
		one.Change = Change{
			Food: after.DayFood - before.DayFood, Kcal: after.DayKcal - before.DayKcal, ProteinGrams: after.Protein - before.Protein,
			Cost: after.Cost - before.Cost, Priced: after.Unpriced == before.Unpriced,
		}
		if one.Reason != Weight || one.Change.Food < 0 {
			useful = append(useful, one)
		}
	}
	return useful
}

// lacking is who lacks what on a day.
type lacking struct {
	reason  Reason
	members []trip.MemberID
	amount  float64 // kcal or grams of protein, of who lacks most; 0: nobody lacks any
}

// lack looks for the worst lack of a group on a day: energy, then protein, then lightness.
func lack(t *trip.Trip, n needs.Result, p portions.Result, day int, group trip.GroupID) lacking {
	energy, protein, weight := lacking{reason: Energy}, lacking{reason: Protein}, lacking{reason: Weight}
	var food units.Mass
	var eaten float64 // days from the packs
	for i := range t.Crew {
		m := &t.Crew[i]
		if m.Group != group || !m.Present(day) || i >= len(p.Intakes) {
			continue
		}
		has, need := &p.Intakes[i].Days[day-1], &n.Members[i].Days[day-1]
		energy.note(m.ID, float64(need.TargetKcal)*t.Settings.DayLow-float64(has.Kcal), 1)
		protein.note(m.ID, need.ProteinGrams-has.ProteinGrams, 0.5)
		weight.members = append(weight.members, m.ID)
		food, eaten = food+has.Food, eaten+need.FromPacks
	}
	switch {
	case len(energy.members) > 0:
		return energy
	case len(protein.members) > 0:
		return protein
	case eaten > 0 && food.Grams() > heavyDayGrams*eaten:
		return weight
	}
	return lacking{}
}

func (l *lacking) note(member trip.MemberID, short, slack float64) {
	if short > slack {
		l.members, l.amount = append(l.members, member), max(l.amount, short)
	}
}

// suits tells whether a food is dense in what is lacking and stirred in by the spoon.
func (l *lacking) suits(food *trip.Food) bool {
	if food.Storage.Control() != trip.TCSNo || food.PackedAsBought || food.Form == trip.Piece || food.PieceMass > 0 {
		return false
	}
	if l.reason == Protein {
		return l.worth(food) >= richProtein
	}
	return l.worth(food) >= denseKcal
}

// worth is what 100 g as carried bring of what is lacking.
func (l *lacking) worth(food *trip.Food) float64 {
	if l.reason == Protein {
		return food.Per100g.ProteinGrams.Or(0) * (1 - food.RefuseShare)
	}
	return float64(food.Per100g.Kcal) * (1 - food.RefuseShare)
}

// mass is how much of a food makes up for the lack, within what anybody stirs in.
func (l *lacking) mass(food *trip.Food) units.Mass {
	if l.amount == 0 {
		return units.FromGrams(usualGrams)
	}
	grams := leastGrams * math.Ceil(100*l.amount/l.worth(food)/leastGrams)
	return units.FromGrams(min(mostGrams, grams))
}

// Dish is the addition as a recipe of its own: the same for each eater, into the bowl.
func (p *Proposal) Dish(name string, method string) trip.Recipe {
	return trip.Recipe{
		Name: name, Meals: trip.Meals(), MinScale: 1, MaxScale: 1, Method: []string{method},
		Ingredients: []trip.Ingredient{{Food: p.Food, Amount: p.Mass, Role: trip.ToTaste, Place: trip.AtBowl}},
	}
}
