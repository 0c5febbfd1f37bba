package audit

import (
	"sumpter/domain/carry"
	"sumpter/domain/naming"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Things are named as the leader calls them; what is not in the trip, by what
// the plan calls it.

func (a *auditor) memberName(id trip.MemberID) prose.Text { return naming.Member(a.Trip, id) }

func (a *auditor) foodName(id trip.FoodID) prose.Text { return naming.Food(a.Trip, id) }

func (a *auditor) recipeName(id trip.RecipeID) prose.Text {
	if recipe := a.Trip.Recipe(id); recipe != nil {
		return prose.Verbatim(recipe.Name)
	}
	return prose.Say("a recipe that is not in the trip")
}

func (a *auditor) bagName(key string) prose.Text {
	for i := range a.Bags.Bags {
		if a.Bags.Bags[i].Key == key {
			return prose.Say("bag %s", a.Bags.Bags[i].Code)
		}
	}
	return prose.Say("a bag that is not in the plan (%s)", key)
}

// thingName names what is carried.
func (a *auditor) thingName(item carry.Item) prose.Text {
	return naming.Thing(a.Trip, a.Cooking.Fuel, item, a.bagName)
}
