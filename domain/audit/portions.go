package audit

import (
	"math"

	"sumpter/domain/findings"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// amountKey is a food in the pot or on the bowls of one batch.
type amountKey struct {
	food  trip.FoodID
	place trip.Place
}

func batchPlace(b *portions.Batch) findings.Place {
	return findings.Place{Day: b.Day, Meal: b.Meal, Group: b.Group, Recipe: b.Recipe}
}

// checkPortions adds the portions of every batch up again.
func checkPortions(a *auditor) {
	for i := range a.Portions.Batches {
		batch := &a.Portions.Batches[i]
		sums := map[amountKey]units.Mass{}
		for _, portion := range batch.Portions {
			a.checkPortion(batch, portion)
			for _, amount := range portion.Amounts {
				sums[amountKey{amount.Food, amount.Place}] += amount.Mass
			}
		}
		for _, more := range batch.Seconds {
			if more.Place != trip.InPot || more.Mass <= 0 {
				a.fault(batchPlace(batch), prose.Say("second helpings come out of the pot"), prose.Say("%s of %s is for second helpings", more.Mass, a.foodName(more.Food)))
			}
			sums[amountKey{more.Food, more.Place}] += more.Mass
		}
		for _, total := range batch.Totals {
			key := amountKey{total.Food, total.Place}
			if sums[key] != total.Mass {
				a.fault(batchPlace(batch), prose.Say("portions add up to the batch"), prose.Say("portions of %s add up to %s, the batch says %s", a.foodName(total.Food), sums[key], total.Mass))
			}
			delete(sums, key)
		}
		for key, mass := range sums {
			if mass != 0 {
				a.fault(batchPlace(batch), prose.Say("portions add up to the batch"), prose.Say("%s of %s in portions is in no batch", mass, a.foodName(key.food)))
			}
		}
	}
}

// checkPortion looks for amounts that no recipe asks for.
func (a *auditor) checkPortion(batch *portions.Batch, portion portions.Portion) {
	recipe := a.index.recipe[batch.Recipe]
	if recipe == nil || a.index.member[portion.Member] == nil {
		a.fault(batchPlace(batch), prose.Say("a batch serves a recipe to members"), prose.Say("%s is served to %s, and one of them does not exist", a.recipeName(batch.Recipe), a.memberName(portion.Member)))
		return
	}
	if !a.index.member[portion.Member].Present(batch.Day) {
		a.fault(batchPlace(batch), prose.Say("only who is there eats"), prose.Say("%s is not there on day %d but gets a portion", a.index.member[portion.Member].Name, batch.Day))
	}
	if portion.Scale < recipe.MinScale-1e-9 || portion.Scale > recipe.MaxScale+1e-9 {
		a.fault(batchPlace(batch), prose.Say("portions keep the bounds of the recipe"), prose.Say("portion of %.3f is outside %.2f to %.2f", portion.Scale, recipe.MinScale, recipe.MaxScale))
	}
	asked := askedFor(recipe)
	for _, amount := range portion.Amounts {
		if amount.Mass < 0 || !asked[amount.Food] {
			a.fault(batchPlace(batch), prose.Say("portions hold what the recipe asks for"), prose.Say("%s of %s is not in the recipe", amount.Mass, a.foodName(amount.Food)))
		}
	}
}

// askedFor lists the foods a recipe may hold, swaps included.
func askedFor(recipe *trip.Recipe) map[trip.FoodID]bool {
	asked := map[trip.FoodID]bool{}
	for _, ingredient := range recipe.Ingredients {
		asked[ingredient.Food] = true
		for _, swap := range ingredient.Swaps {
			asked[swap.Food] = true
		}
	}
	return asked
}

// checkServed looks for members who are there, and get nothing of a meal that
// is eaten, without a finding.
func checkServed(a *auditor) {
	type sitting struct {
		day    int
		meal   trip.Meal
		member trip.MemberID
	}
	served := map[sitting]bool{}
	for i := range a.Portions.Batches {
		batch := &a.Portions.Batches[i]
		for _, portion := range batch.Portions {
			served[sitting{batch.Day, batch.Meal, portion.Member}] = true
		}
	}
	for day := 1; day <= len(a.Trip.Days); day++ {
		for _, meal := range a.Trip.Days[day-1].Meals {
			for i := range a.Trip.Crew {
				member := &a.Trip.Crew[i]
				if !member.Present(day) || served[sitting{day, meal, member.ID}] {
					continue
				}
				if !a.said(findings.Menu, func(f findings.Finding) bool {
					return f.Place.Day == day && f.Place.Meal == meal && (f.Place.Member == member.ID || f.Place.Member == 0 && f.Place.Group == member.Group)
				}) {
					a.fault(findings.Place{Day: day, Meal: meal, Member: member.ID}, prose.Say("nobody goes without a meal in silence"), prose.Say("%s gets no %s on day %d and no finding says so", member.Name, meal, day))
				}
			}
		}
	}
}

// checkSafety looks for foods that an eater's allergy or diet speaks against.
func checkSafety(a *auditor) {
	for i := range a.Portions.Batches {
		batch := &a.Portions.Batches[i]
		for _, portion := range batch.Portions {
			member := a.index.member[portion.Member]
			for _, amount := range portion.Amounts {
				food := a.index.food[amount.Food]
				if member == nil || food == nil || !endangers(food, member) {
					continue
				}
				place := findings.Place{Day: batch.Day, Meal: batch.Meal, Group: batch.Group, Recipe: batch.Recipe, Member: member.ID, Food: food.ID}
				if !a.accepted(batch, member.ID, food.ID) {
					a.fault(place, prose.Say("nobody is served what their allergy or diet forbids"), prose.Say("%s is served %s", member.Name, food.Name))
				} else if !a.said(findings.Menu, func(f findings.Finding) bool {
					return f.Place.Day == batch.Day && f.Place.Member == member.ID && f.Place.Food == food.ID
				}) {
					a.fault(place, prose.Say("a danger taken on by hand stays a finding"), prose.Say("%s is served %s by the leader's hand, and no finding says so", member.Name, food.Name))
				}
			}
		}
	}
}

// endangers decides from the declared states alone, in its own way: anything
// that is not plainly declared free or suitable endangers.
func endangers(food *trip.Food, member *trip.Member) bool {
	for _, allergy := range member.Allergies {
		state := food.Allergens[allergy.Allergen]
		if parent, ok := allergy.Allergen.Parent(); ok && (state == "" || state == trip.NotKnown) {
			if food.Allergens[parent] == trip.Free && parent == trip.Nuts { // what is gluten-free may hold wheat
				state = trip.Free
			}
		}
		if state != trip.Free {
			return true
		}
		for kind, kindState := range food.Allergens {
			if parent, ok := kind.Parent(); ok && parent == allergy.Allergen && (kindState == trip.Contains || kindState == trip.MayContain) {
				return true
			}
		}
	}
	for _, diet := range member.Diets {
		if food.Suitability(diet) != trip.Suits {
			return true
		}
	}
	return false
}

func (a *auditor) accepted(batch *portions.Batch, member trip.MemberID, food trip.FoodID) bool {
	cell := a.Trip.Cell(batch.Day, batch.Meal, batch.Group)
	if cell == nil {
		return false
	}
	for _, dish := range cell.Dishes {
		if dish.Recipe != batch.Recipe {
			continue
		}
		for _, acceptance := range dish.Accepted {
			if acceptance.Member == member && acceptance.Food == food {
				return true
			}
		}
	}
	return false
}

// checkIntakes adds up again what each member eats.
func checkIntakes(a *auditor) {
	days := len(a.Trip.Days)
	food := make([][]units.Mass, len(a.Trip.Crew))
	kcal := make([][]float64, len(a.Trip.Crew))
	for i := range food {
		food[i], kcal[i] = make([]units.Mass, days), make([]float64, days)
	}
	for i := range a.Portions.Batches {
		batch := &a.Portions.Batches[i]
		for _, portion := range batch.Portions {
			who, ok := a.index.place[portion.Member]
			if !ok || batch.Day < 1 || batch.Day > days {
				continue
			}
			for _, amount := range portion.Amounts {
				food[who][batch.Day-1] += amount.Mass
				if f := a.index.food[amount.Food]; f != nil {
					kcal[who][batch.Day-1] += amount.Mass.Grams() * (1 - f.RefuseShare) * float64(f.Per100g.Kcal) / 100
				}
			}
		}
	}
	if len(a.Portions.Intakes) != len(a.Trip.Crew) {
		a.fault(findings.Place{}, prose.Say("everybody's intake is told"), prose.Say("%d intakes for %d members", len(a.Portions.Intakes), len(a.Trip.Crew)))
		return
	}
	for i, intake := range a.Portions.Intakes {
		for d := range min(days, len(intake.Days)) {
			told := intake.Days[d]
			if told.Food != food[i][d] || math.Abs(float64(told.Kcal)-kcal[i][d]) > 0.5 {
				a.fault(findings.Place{Day: d + 1, Member: intake.Member}, prose.Say("the day's intake is the sum of its portions"),
					prose.Say("the plan tells %v and %.0f kcal, the portions add up to %v and %.0f kcal", told.Food, float64(told.Kcal), food[i][d], kcal[i][d]))
			}
		}
	}
}
