package tables

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Card is a recipe scaled to everybody it feeds on this trip: a column for
// each pot in which it is cooked.
type Card struct {
	Recipe      string
	Method      []string
	Notes       string
	Cooking     string // "Simmer 8 min at sea level. Soak 5 min off the flame."
	Pots        []Pot
	Ingredients []Ingredient
	Allergens   string
}

// Pot is one occasion on which the recipe is cooked.
type Pot struct {
	Heading string // "Day 3 dinner, North pot"
	Eaters  int
	Bags    string // codes
	Water   string
	PourOff string
	Minutes string // on the flame at that height
}

// Ingredient is one food in each of the pots.
type Ingredient struct {
	Food  string
	Place trip.Place
	Pots  []string // "340 g", "40 g from 2-01Y", or nothing where it is not used
}

// Cards gives a card for each recipe that is served, in the order of the recipes.
func Cards(p *plan.Plan) []Card {
	x := newIndex(p)
	byRecipe := map[trip.RecipeID][]*portions.Batch{}
	for i := range p.Portions.Batches {
		batch := &p.Portions.Batches[i]
		byRecipe[batch.Recipe] = append(byRecipe[batch.Recipe], batch)
	}
	var cards []Card
	for i := range x.trip.Recipes {
		if batches := byRecipe[x.trip.Recipes[i].ID]; len(batches) > 0 {
			cards = append(cards, x.card(&x.trip.Recipes[i], batches))
		}
	}
	return cards
}

// dishKey is a recipe in a slot.
type dishKey struct {
	day    int
	meal   trip.Meal
	group  trip.GroupID
	recipe trip.RecipeID
}

func (x *index) card(recipe *trip.Recipe, batches []*portions.Batch) Card {
	card := Card{
		Recipe: recipe.Name, Method: recipe.Method, Notes: recipe.Notes,
		Cooking: cookingWords(recipe),
	}
	var worst []bags.Allergen
	runs := map[dishKey]int{}
	for i, batch := range batches {
		dish := dishKey{batch.Day, batch.Meal, batch.Group, batch.Recipe}
		runs[dish]++
		own := x.Batch(batch.Day, batch.Meal, batch.Group, batch.Recipe, runs[dish])
		card.Pots = append(card.Pots, x.pot(batch, own))
		card.addAmounts(x, batch, own, i)
		for _, bag := range own {
			worst = mergeAllergens(worst, bag.Allergens)
		}
	}
	for i := range card.Ingredients {
		card.Ingredients[i].Pots = append(card.Ingredients[i].Pots, make([]string, len(batches)-len(card.Ingredients[i].Pots))...)
	}
	card.Allergens = allergenWords(worst)
	return card
}

func (x *index) pot(batch *portions.Batch, own []*bags.Bag) Pot {
	pot := Pot{
		Heading: fmt.Sprintf("Day %d %s\n%s", batch.Day, mealName(batch.Meal), x.group(batch.Group)),
		Eaters:  len(batch.Portions),
		Water:   x.volume(batch.Water),
		PourOff: x.volume(batch.PourOff),
		Minutes: x.flame(batch),
	}
	if batch.Batch > 0 {
		pot.Heading += fmt.Sprintf("\npot %d: %s", batch.Batch+1, x.memberNames(membersOf(batch)))
	}
	for i, bag := range own {
		if i > 0 {
			pot.Bags += ", "
		}
		pot.Bags += bag.Code
	}
	return pot
}

// volume writes an amount of water, or that there is none.
func (x *index) volume(v units.Volume) string {
	if v == 0 {
		return "none"
	}
	return v.Format(x.system)
}

// flame says how long the pot stays on the flame after the boil.
func (x *index) flame(batch *portions.Batch) string {
	recipe, meal := x.Recipe(batch.Recipe), x.Meal(batch.Day, batch.Meal, batch.Group)
	switch {
	case recipe == nil || meal == nil:
		return Unknown
	case meal.Cold || !cooking.Heated(recipe, batch.Meal):
		return "no flame"
	case recipe.Simmer == 0:
		return "boil only"
	default:
		return fmt.Sprintf("%.0f min", float64(cooking.SimmerAt(recipe, meal.Height)))
	}
}

func cookingWords(recipe *trip.Recipe) string {
	var texts []string
	if recipe.Simmer > 0 {
		texts = append(texts, fmt.Sprintf("Simmer %.0f min at sea level, longer higher up.", float64(recipe.Simmer)))
	}
	if recipe.Soak > 0 {
		texts = append(texts, fmt.Sprintf("Soak %.0f min off the flame.", float64(recipe.Soak)))
	}
	if recipe.ColdOK {
		texts = append(texts, "Can be made cold, without flame.")
	}
	return orNone(strings.Join(texts, " "), "No simmering, no soaking.")
}

func membersOf(batch *portions.Batch) []trip.MemberID {
	members := make([]trip.MemberID, len(batch.Portions))
	for i, portion := range batch.Portions {
		members[i] = portion.Member
	}
	return members
}

// addAmounts puts the foods of one pot into its column, with the codes of the
// stores they are taken from.
func (c *Card) addAmounts(x *index, batch *portions.Batch, own []*bags.Bag, column int) {
	for _, total := range batch.Totals {
		name := x.foodName(total.Food)
		place := slices.IndexFunc(c.Ingredients, func(i Ingredient) bool { return i.Food == name && i.Place == total.Place })
		if place < 0 {
			place = len(c.Ingredients)
			c.Ingredients = append(c.Ingredients, Ingredient{Food: name, Place: total.Place})
		}
		pots := &c.Ingredients[place].Pots
		for len(*pots) < column {
			*pots = append(*pots, "")
		}
		if len(*pots) == column {
			*pots = append(*pots, x.amount(total.Food, total.Mass)+storesOf(own, total.Food))
		}
	}
}

// storesOf names the bags of several meals among some that hold a food.
func storesOf(own []*bags.Bag, food trip.FoodID) string {
	var codes []string
	for _, bag := range own {
		if bag.Kind == bags.StoreBag && slices.ContainsFunc(bag.Contents, func(c bags.Content) bool { return c.Food == food }) {
			codes = append(codes, bag.Code)
		}
	}
	if len(codes) == 0 {
		return ""
	}
	return " from " + strings.Join(codes, ", ")
}

// mergeAllergens keeps the worst state of each allergen, in the order in
// which they first appear.
func mergeAllergens(list, more []bags.Allergen) []bags.Allergen {
	for _, allergen := range more {
		place := slices.IndexFunc(list, func(a bags.Allergen) bool { return a.Allergen == allergen.Allergen })
		if place < 0 {
			list = append(list, allergen)
			continue
		}
		list[place].Presence = trip.Worse(list[place].Presence, allergen.Presence)
	}
	return list
}
