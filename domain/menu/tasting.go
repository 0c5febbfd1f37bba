package menu

import (
	"slices"

	"sumpter/domain/trip"
)

// Tasting is how a recipe turns out for one member when the whole crew eats
// it together.
type Tasting struct {
	Member  trip.MemberID
	Served  bool
	Pot     int           // place among the pots it takes, largest first
	Parts   []Part        // what they are served
	Refused trip.FoodID   // what stands in the way; 0 where nothing would be left of the dish
	Dislike []trip.FoodID // served all the same
}

// Taster tries recipes on the crew by the rules of the menu, without a slot.
type Taster struct {
	table *table
	crew  []trip.MemberID
}

// NewTaster prepares the trip's foods and crew; the trip must not change while
// the taster is used.
func NewTaster(t *trip.Trip) *Taster {
	x := &Taster{table: newTable(t)}
	for i := range t.Crew {
		x.crew = append(x.crew, t.Crew[i].ID)
	}
	slices.Sort(x.crew)
	return x
}

// Serve tells how a dish would turn out for the eaters: its batches, who goes
// without, and who is served something they dislike. What was taken on by hand
// for this very dish is served as decided.
func (x *Taster) Serve(recipe *trip.Recipe, eaters []trip.MemberID, accepted []trip.Acceptance) (dish Dish, without, dislike []trip.MemberID) {
	out := x.table.serve(recipe, eaters, accepted)
	for _, no := range out.refused {
		without = append(without, no.member)
	}
	for _, no := range out.disliked {
		if n := len(dislike); n == 0 || dislike[n-1] != no.member {
			dislike = append(dislike, no.member)
		}
	}
	return out.dish, without, dislike
}

// Taste tells for each member, by ID, whether the recipe can be served, with
// which swaps, and what stands in the way. Nothing is taken on by hand.
func (x *Taster) Taste(recipe *trip.Recipe) []Tasting {
	out := x.table.serve(recipe, x.crew, nil)
	list := make([]Tasting, len(x.crew))
	at := make(map[trip.MemberID]*Tasting, len(x.crew))
	for i, member := range x.crew {
		list[i].Member = member
		at[member] = &list[i]
	}
	for pot, batch := range out.dish.Batches {
		for _, serving := range batch.Servings {
			one := at[serving.Member]
			one.Served, one.Pot, one.Parts = true, pot, serving.Parts
		}
	}
	for _, no := range out.refused {
		at[no.member].Refused = no.food
	}
	for _, no := range out.disliked {
		at[no.member].Dislike = append(at[no.member].Dislike, no.food)
	}
	return list
}

// ServesAll tells whether the recipe can be served to every member: Taste
// without saying how, for those who only count.
func (x *Taster) ServesAll(recipe *trip.Recipe) bool {
	for i := range recipe.Ingredients {
		for _, swap := range recipe.Ingredients[i].Swaps {
			if swap.Food == 0 && swap.ForAll { // may empty the bowl of somebody else
				return !slices.ContainsFunc(x.Taste(recipe), func(one Tasting) bool { return !one.Served })
			}
		}
	}
	for _, member := range x.crew {
		left := false
		for i := range recipe.Ingredients {
			chosen, ok := x.table.choose(&recipe.Ingredients[i], member, nil)
			if !ok {
				return false
			}
			left = left || chosen.swap == asWritten || recipe.Ingredients[i].Swaps[chosen.swap].Food != 0
		}
		if !left {
			return false
		}
	}
	return true
}
