package menu

import (
	"cmp"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// manyDishes is from how many dishes on that are refused for one reason they
// are told together: a diet that no label speaks of forbids nearly all.
const manyDishes = 4

// named is how many members or foods a finding about many names.
const named = 3

// objection is why dishes are refused.
type objection struct {
	severity findings.Severity
	reason   string
}

// together gives the findings with the dishes that are refused for one reason
// as one finding, where they are many. It has all their places.
func (r *resolver) together(list []findings.Finding) []findings.Finding {
	alike := map[objection][]findings.Finding{}
	for i := range list {
		if why, ok := r.objection(&list[i]); ok {
			alike[why] = append(alike[why], list[i])
		}
	}
	var out []findings.Finding
	told := map[objection]bool{}
	for i := range list {
		why, ok := r.objection(&list[i])
		switch {
		case !ok || len(distinct(alike[why], func(p findings.Place) trip.RecipeID { return p.Recipe })) < manyDishes:
			out = append(out, list[i])
		case !told[why]:
			told[why] = true
			out = append(out, r.ofMany(alike[why]))
		}
	}
	return out
}

// objection gives why the dish of a finding is refused, if it is about one.
func (r *resolver) objection(f *findings.Finding) (objection, bool) {
	food := r.food(f.Place.Food)
	if f.Code != "cannot-be-served" || food == nil {
		return objection{}, false
	}
	return objection{f.Severity, because(r.member(f.Place.Member), food).String()}, true
}

// ofMany tells of findings that have one reason.
func (r *resolver) ofMany(list []findings.Finding) findings.Finding {
	whole := list[0]
	places := placesOf(list)
	whole.Place, whole.Also = places[0], places[1:]
	members := distinct(list, func(p findings.Place) trip.MemberID { return p.Member })
	foods := distinct(list, func(p findings.Place) trip.FoodID { return p.Food })
	dishes := len(distinct(list, func(p findings.Place) trip.RecipeID { return p.Recipe }))
	who := some(members, func(id trip.MemberID) string { return r.member(id).Name })
	of := some(foods, func(id trip.FoodID) string { return r.food(id).Name })
	why := because(r.member(whole.Place.Member), r.food(whole.Place.Food))
	besides := prose.Say("They get the other dishes of these meals.")
	if whole.Severity == findings.MustFix {
		besides = prose.Say("They get nothing else at these meals.")
	}
	whole.What = prose.Plural(len(members),
		prose.Say("%s gets nothing of %d dishes, from %s on day %d on.", who, dishes, whole.Place.Meal, whole.Place.Day),
		prose.Say("%s get nothing of %d dishes, from %s on day %d on.", who, dishes, whole.Place.Meal, whole.Place.Day),
	).Then(prose.Say("Each holds a food that is forbidden (%s), and no swap is safe: %s.", why, of)).Then(besides)
	whole.Remedy = prose.Say("Read the labels of these foods and enter what they say. Where that does not help, give the dishes swaps that they may eat, or bring other dishes for them.").Then(labelDefers())
	return whole
}

// placesOf are all places of findings, in the order of days.
func placesOf(list []findings.Finding) []findings.Place {
	var places []findings.Place
	for i := range list {
		places = append(append(places, list[i].Place), list[i].Also...)
	}
	slices.SortStableFunc(places, func(a, b findings.Place) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(trip.MealOrder(a.Meal), trip.MealOrder(b.Meal)))
	})
	return places
}

// distinct gives what findings are about, each once, in their order.
func distinct[T comparable](list []findings.Finding, about func(findings.Place) T) []T {
	var out []T
	for i := range list {
		if one := about(list[i].Place); !slices.Contains(out, one) {
			out = append(out, one)
		}
	}
	return out
}

// some names the first few, and how many more there are.
func some[T any](list []T, name func(T) string) prose.Text {
	var names []string
	for _, one := range list {
		names = append(names, name(one))
	}
	if len(names) <= named+1 {
		return prose.List(", ", names)
	}
	return prose.Say("%s and %d more", prose.List(", ", names[:named]), len(names)-named)
}
