// Package cookbook takes recipes, with the foods they need, from one trip into
// another: last year's porridge is cooked again this year. Foods are matched by
// name, and what the trip says of a food goes before what the other says.
package cookbook

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Offer is a recipe that could be taken.
type Offer struct {
	Recipe trip.RecipeID // in their trip
	Name   string
	Here   bool    // a recipe of that name is in my trip: taken, it gets another name
	Foods  []Match // that it needs, those of its swaps among them, each once
}

// Match is a food that a recipe needs, seen from both trips.
type Match struct {
	Name    string
	New     bool         // my trip has no food of that name: it comes with the recipe
	Differs []prose.Text // in what my food of that name differs; it stays as it is
}

// Offers lists their recipes in their order.
func Offers(mine, theirs *trip.Trip) []Offer {
	foods := foodsByName(mine)
	offers := make([]Offer, len(theirs.Recipes))
	for i := range theirs.Recipes {
		recipe := &theirs.Recipes[i]
		offers[i] = Offer{Recipe: recipe.ID, Name: recipe.Name, Here: hasRecipe(mine, recipe.Name)}
		for _, id := range needed(recipe) {
			food := theirs.Food(id)
			match := Match{Name: food.Name}
			if own, ok := foods[key(food.Name)]; ok {
				match.Differs = differences(own, food)
			} else {
				match.New = true
			}
			offers[i].Foods = append(offers[i].Foods, match)
		}
	}
	return offers
}

// Take gives my trip with the chosen recipes of theirs and the foods that it
// lacks for them. What is theirs alone stays behind: what they had at home, what
// shops had, and prices in another currency.
func Take(mine, theirs *trip.Trip, chosen []trip.RecipeID) (*trip.Trip, error) {
	taken := mine.Clone()
	foods := map[string]trip.FoodID{}
	for i := range taken.Foods {
		foods[key(taken.Foods[i].Name)] = taken.Foods[i].ID
	}
	from := theirs.Clone()
	for i := range from.Recipes {
		recipe := from.Recipes[i]
		if !slices.Contains(chosen, recipe.ID) {
			continue
		}
		ids := map[trip.FoodID]trip.FoodID{}
		for _, id := range needed(&recipe) {
			food := from.Food(id)
			if _, ok := foods[key(food.Name)]; !ok {
				fresh := bare(*food, mine.Currency == theirs.Currency)
				fresh.ID = trip.NextID(taken.Foods, func(f *trip.Food) trip.FoodID { return f.ID })
				taken.Foods = append(taken.Foods, fresh)
				foods[key(food.Name)] = fresh.ID
			}
			ids[id] = foods[key(food.Name)]
		}
		for p := range recipe.Ingredients {
			part := &recipe.Ingredients[p]
			part.Food = ids[part.Food]
			for s := range part.Swaps {
				part.Swaps[s].Food = ids[part.Swaps[s].Food] // 0 stays 0: left out
			}
		}
		recipe.ID = trip.NextID(taken.Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
		recipe.Name = freeName(taken, recipe.Name)
		taken.Recipes = append(taken.Recipes, recipe)
	}
	if problems := trip.Validate(taken); len(problems) > 0 {
		return nil, prose.Errorf("the recipes cannot be taken: %s", problems[0])
	}
	return taken, nil
}

// WithoutLabels gives a trip of whose foods nobody read a label or was asked a
// price: for an example, whose labels are invented.
func WithoutLabels(example *trip.Trip) *trip.Trip {
	t := example.Clone()
	for i := range t.Foods {
		t.Foods[i].Allergens, t.Foods[i].Diets, t.Foods[i].Packages = nil, nil, nil
	}
	return t
}

// bare is a food without what is true of one trip only.
func bare(food trip.Food, samePrices bool) trip.Food {
	food.AtHome = 0
	for i := range food.Packages {
		sold := &food.Packages[i]
		sold.InStock = optional.Unknown[int]()
		if !samePrices {
			sold.Price, sold.ManyPrice, sold.ManyFrom = optional.Unknown[units.Money](), optional.Unknown[units.Money](), 0
		}
	}
	return food
}

// needed lists the foods of a recipe and its swaps, each once.
func needed(recipe *trip.Recipe) []trip.FoodID {
	var list []trip.FoodID
	add := func(id trip.FoodID) {
		if id != 0 && !slices.Contains(list, id) {
			list = append(list, id)
		}
	}
	for i := range recipe.Ingredients {
		add(recipe.Ingredients[i].Food)
		for _, swap := range recipe.Ingredients[i].Swaps {
			add(swap.Food)
		}
	}
	return list
}

// differences says in what a food of mine is another than theirs, allergens
// first. Prices and what is at home are of no trip but their own, and what they do
// not know tells nothing.
func differences(mine, theirs *trip.Food) []prose.Text {
	var list []prose.Text
	known := trip.KnownAllergens()
	for _, allergen := range slices.Sorted(maps.Keys(both(mine.Allergens, theirs.Allergens))) {
		if !slices.Contains(known, allergen) {
			known = append(known, allergen)
		}
	}
	unread := false
	for _, allergen := range known {
		switch here, there := mine.Presence(allergen), theirs.Presence(allergen); {
		case here == there || there == trip.NotKnown: // what they did not know tells nothing
		case here == trip.NotKnown && there == trip.Free:
			unread = true
		default:
			list = append(list, prose.Say("%s: here %s, there %s", allergen, here, there))
		}
	}
	if unread {
		list = append(list, prose.Say("more of the label was read there"))
	}
	for _, diet := range slices.Sorted(maps.Keys(both(mine.Diets, theirs.Diets))) {
		here, there := mine.Suitability(diet), theirs.Suitability(diet)
		if here != there && here != trip.SuitsUnknown && there != trip.SuitsUnknown {
			list = append(list, prose.Say("%s: here %s, there %s", diet, here, there))
		}
	}
	here, there := mine.Per100g, theirs.Per100g
	if here.Kcal != there.Kcal {
		list = append(list, prose.Say("%.0f kcal here, %.0f there", float64(here.Kcal), float64(there.Kcal)))
		here.Kcal = there.Kcal
	}
	if here != there || mine.RefuseShare != theirs.RefuseShare {
		list = append(list, prose.Say("other nutrients"))
	}
	if own, other := mine.Storage, theirs.Storage; own != other {
		list = append(list, prose.Say("how it keeps"))
	}
	if mine.Form != theirs.Form || mine.Density != theirs.Density || mine.PieceMass != theirs.PieceMass || mine.PieceHalves != theirs.PieceHalves || mine.PackedAsBought != theirs.PackedAsBought {
		list = append(list, prose.Say("how it is packed"))
	}
	return list
}

func both[K comparable, V any](a, b map[K]V) map[K]V {
	joined := map[K]V{}
	maps.Copy(joined, a)
	maps.Copy(joined, b)
	return joined
}

// key is a name as far as it tells things apart.
func key(name string) string { return strings.ToLower(strings.TrimSpace(name)) }

func foodsByName(t *trip.Trip) map[string]*trip.Food {
	foods := map[string]*trip.Food{}
	for i := range t.Foods {
		foods[key(t.Foods[i].Name)] = &t.Foods[i]
	}
	return foods
}

func hasRecipe(t *trip.Trip, name string) bool {
	return slices.ContainsFunc(t.Recipes, func(r trip.Recipe) bool { return key(r.Name) == key(name) })
}

// freeName gives a name that no recipe of the trip has.
func freeName(t *trip.Trip, wanted string) string {
	name := wanted
	for n := 2; hasRecipe(t, name); n++ {
		end := fmt.Sprintf(" %d", n)
		runes := []rune(wanted)
		name = string(runes[:min(len(runes), trip.MaxNameRunes-len(end))]) + end
	}
	return name
}
