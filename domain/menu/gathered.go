package menu

import (
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// repeated are the findings that one cause brings about at meal after meal.
var repeated = []string{"slot-open", "cannot-be-served", "nothing-served"}

// gathered gives the findings with those of one cause as one, which stands at
// the first meal and names them all: a list that says the same sixty times is
// not read.
func (r *resolver) gathered() []findings.Finding {
	type cause struct {
		severity     findings.Severity
		code, remedy string
		place        findings.Place // without the day
	}
	at := map[cause]int{}
	var list []findings.Finding
	for _, f := range r.seen {
		if !slices.Contains(repeated, f.Code) {
			list = append(list, f)
			continue
		}
		key := cause{f.Severity, f.Code, f.Remedy.String(), f.Place}
		key.place.Day = 0
		if f.Code == "nothing-served" {
			key.place.Meal = ""
		}
		first, again := at[key]
		if !again {
			at[key] = len(list)
			list = append(list, f)
			continue
		}
		list[first].Also = append(list[first].Also, f.Place)
	}
	for i := range list {
		if len(list[i].Also) > 0 {
			list[i].What = r.ofAll(&list[i])
		}
	}
	return list
}

// ofAll says what a finding says of its first meal of all its meals.
func (r *resolver) ofAll(f *findings.Finding) prose.Text {
	meals := mealsOf(append([]findings.Place{f.Place}, f.Also...))
	switch f.Code {
	case "slot-open":
		return prose.Say("%s has nothing for %s.", r.trip.Group(f.Place.Group).Name, meals)
	case "nothing-served":
		return prose.Say("No dish of these meals is meant for %s: %s.", r.member(f.Place.Member).Name, meals)
	default:
		return f.What.Then(prose.Say("The same holds for %s.", mealsOf(f.Also)))
	}
}

// mealsOf names meals by their days: "breakfast on days 1–3, 5; dinner on day 2".
func mealsOf(places []findings.Place) prose.Text {
	var parts []prose.Text
	for _, meal := range trip.Meals() {
		var days []int
		for _, place := range places {
			if place.Meal == meal {
				days = append(days, place.Day)
			}
		}
		if len(days) > 0 {
			parts = append(parts, prose.Plural(len(days), prose.Say("%s on day %d", meal, days[0]), prose.Say("%s on days %s", meal, prose.Runs(days))))
		}
	}
	return prose.List("; ", parts)
}
