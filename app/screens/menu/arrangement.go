package menu

import (
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
)

// arrangement is a way to serve a recipe in a slot: instead of something that
// is there, or beside it.
type arrangement struct {
	words string
	key   string // of the name of the edit
	name  string // of the edit, in English
	with  func(recipe trip.RecipeID) []trip.Dish
}

const (
	serveKey, serveName = "menu-serve", "serve {{.Dish}} at {{.Slot}}"
	addKey, addName     = "menu-add", "add {{.Dish}} to {{.Slot}}"
)

// arrangements lists the ways there are for a slot, the usual one first.
func (o *overview) arrangements(k slot) []arrangement {
	dishes := o.dishes(k)
	all := arrangement{lang.L("Serve it here"), serveKey, serveName, func(recipe trip.RecipeID) []trip.Dish { return only(dishes, recipe) }}
	if len(dishes) == 0 {
		return []arrangement{all}
	}
	var list []arrangement
	all.words = lang.L("Instead of what is there")
	if len(dishes) > 1 {
		all.words = lang.L("Instead of everything there")
		for i := range dishes {
			name := ""
			if r := o.recipes[dishes[i].Recipe]; r != nil {
				name = r.Name
			}
			words := lang.X("menu-instead-of", "Instead of {{.Dish}}", map[string]any{"Dish": name})
			list = append(list, arrangement{words, serveKey, serveName, func(recipe trip.RecipeID) []trip.Dish { return replaced(dishes, i, recipe) }})
		}
	}
	list = append(list, all,
		arrangement{lang.L("Beside what is there"), addKey, addName, func(recipe trip.RecipeID) []trip.Dish { return added(dishes, recipe, nil) }})
	if without := o.without(k); len(without) > 0 {
		words := lang.X("menu-for-rest", "For {{.Names}}, who get nothing", map[string]any{"Names": namesOf(o.trip, without)})
		list = append(list, arrangement{words, addKey, addName, func(recipe trip.RecipeID) []trip.Dish { return added(dishes, recipe, without) }})
	}
	return list
}

// only serves one recipe; what was decided for it before stays.
func only(dishes []trip.Dish, recipe trip.RecipeID) []trip.Dish {
	for _, dish := range cloneDishes(dishes) {
		if dish.Recipe == recipe {
			return []trip.Dish{dish}
		}
	}
	return []trip.Dish{{Recipe: recipe}}
}

// replaced serves a recipe instead of one dish, to the same people. A recipe
// that is there already moves up.
func replaced(dishes []trip.Dish, at int, recipe trip.RecipeID) []trip.Dish {
	list := cloneDishes(dishes)
	if list[at].Recipe == recipe {
		return list
	}
	list[at] = trip.Dish{Recipe: recipe, For: list[at].For}
	for i := range list {
		if i != at && list[i].Recipe == recipe {
			return slices.Delete(list, i, i+1)
		}
	}
	return list
}

// added serves a recipe beside the others, unless it is there.
func added(dishes []trip.Dish, recipe trip.RecipeID, members []trip.MemberID) []trip.Dish {
	list := cloneDishes(dishes)
	if slices.ContainsFunc(list, func(d trip.Dish) bool { return d.Recipe == recipe }) {
		return list
	}
	return append(list, trip.Dish{Recipe: recipe, For: slices.Clone(members)})
}
