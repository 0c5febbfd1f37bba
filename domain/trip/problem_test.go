package trip

import "testing"

func TestPathOfAPlace(t *testing.T) {
	for want, where := range map[string]Where{
		"title":                {List: "trip", Field: "title"},
		"settings.meal_shares": {List: "settings", Field: "meal_shares"},
		"crew":                 {List: "crew"},
		"crew[2].age_years":    {List: "crew", Index: 3, Field: "age_years"},
		"foods[0]":             {List: "foods", Index: 1},
		"recipes[9].method[0]": {List: "recipes", Index: 10, Field: "method[1]"},
		"recipes[0].ingredients[2].swaps[0].amount_g": {List: "recipes", Index: 1, Field: "ingredients[3].swaps[1].amount_g"},
	} {
		if got := where.Path(); got != want {
			t.Errorf("%+v is %s, want %s", where, got, want)
		}
	}
}
