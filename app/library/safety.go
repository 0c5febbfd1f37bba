package library

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/trip"
)

// labelWords are the words of the table for what recipes often hold, with the
// allergens each makes unknown.
var labelWords = map[string][]trip.Allergen{
	"wheat":      {trip.Wheat, trip.Gluten},
	"barley":     {trip.Gluten},
	"soy":        {trip.Soybeans},
	"milk":       {trip.Milk},
	"egg":        {trip.Eggs},
	"fish":       {trip.Fish},
	"crustacean": {trip.Crustaceans},
	"peanut":     {trip.Peanuts},
	"treenut":    {trip.Nuts},
	"celery":     {trip.Celery},
	"mustard":    {trip.Mustard},
	"sesame":     {trip.Sesame},
	"sulphite":   {trip.Sulphites},
}

// kindWords are the single nuts a description can name.
var kindWords = []struct {
	word string
	kind trip.Allergen
}{
	{"almond", trip.Almonds}, {"hazelnut", trip.Hazelnuts}, {"walnut", trip.Walnuts}, {"cashew", trip.Cashews},
	{"pecan", trip.Pecans}, {"brazilnut", trip.BrazilNuts}, {"pistachio", trip.Pistachios}, {"macadamia", trip.Macadamias},
}

// readContains joins the European column, wheat of the US column, and the
// single nuts that the description names.
func readContains(e *Entry, r row) []trip.Allergen {
	var contains []trip.Allergen
	for _, word := range listed(r.text("allergens_eu14")) {
		if !slices.Contains(trip.DeclaredAllergens(), trip.Allergen(word)) {
			r.fail(fmt.Errorf("%s, line %d: unknown allergen %q", r.table, r.line, word))
		}
		contains = append(contains, trip.Allergen(word))
	}
	if slices.Contains(listed(r.text("allergens_fda9")), "wheat") {
		contains = append(contains, trip.Wheat)
	}
	if slices.Contains(contains, trip.Nuts) {
		for _, nut := range kindWords {
			if strings.Contains(strings.ToLower(e.Description), nut.word) {
				contains = append(contains, nut.kind)
			}
		}
	}
	return contains
}

// readDiets turns yes, no and check into suits, does not suit and unknown, and
// adds pork and beef where the row or the food group leaves no doubt.
func readDiets(e *Entry, r row) map[trip.Diet]trip.Suitability {
	diets := map[trip.Diet]trip.Suitability{}
	for diet, column := range map[trip.Diet]string{
		trip.Vegan: "vegan", trip.Vegetarian: "vegetarian", trip.Pescatarian: "pescatarian",
	} {
		switch r.text(column) {
		case "yes":
			diets[diet] = trip.Suits
		case "no":
			diets[diet] = trip.DoesNotSuit
		}
	}
	if r.text("dairy_free") == "yes" {
		diets[trip.LactoseFree] = trip.Suits
	}
	if diets[trip.Vegetarian] == trip.Suits || diets[trip.Pescatarian] == trip.Suits {
		diets[trip.NoPork], diets[trip.NoBeef] = trip.Suits, trip.Suits
		return diets
	}
	if r.text("halal_caution") == "pork" {
		diets[trip.NoPork] = trip.DoesNotSuit
	}
	if strings.Contains(strings.ToLower(e.Description), "beef") {
		diets[trip.NoBeef] = trip.DoesNotSuit
	}
	// A plain cut is of one animal; minced, dressed and tinned-with-broth
	// products have label words of their own and stay unknown.
	if r.text("halal_caution") == "meat: slaughter" && r.text("allergens_check_label") == "" && r.text("allergens_fda9") == "" {
		groupDiets(e.Group, diets)
	}
	return diets
}

// groupDiets says what a food group alone tells of diets.
func groupDiets(group string, diets map[trip.Diet]trip.Suitability) {
	switch group {
	case "Poultry Products":
		diets[trip.NoPork], diets[trip.NoBeef] = trip.Suits, trip.Suits
	case "Beef Products":
		diets[trip.NoPork], diets[trip.NoBeef] = trip.Suits, trip.DoesNotSuit
	case "Pork Products":
		diets[trip.NoPork], diets[trip.NoBeef] = trip.DoesNotSuit, trip.Suits
	}
}

// allergens gives the state of every declared allergen, worst word first: what
// a typical recipe contains, what a label must tell, and only for one plain
// ingredient that the rest is absent.
func (t *Trail) allergens() map[trip.Allergen]trip.Presence {
	states := map[trip.Allergen]trip.Presence{}
	for _, allergen := range trip.DeclaredAllergens() {
		states[allergen] = trip.NotKnown
		if t.Plain {
			states[allergen] = trip.Free
		}
	}
	for _, allergen := range t.CheckLabel {
		states[allergen] = trip.NotKnown
	}
	for _, allergen := range t.Contains {
		states[allergen] = trip.Contains
	}
	return states
}

// animalDiets is what the food group of any food of the dataset rules out.
// It never says that a diet is suited.
func animalDiets(group, description string) map[trip.Diet]trip.Suitability {
	diets := map[trip.Diet]trip.Suitability{}
	exclude := func(list ...trip.Diet) {
		for _, diet := range list {
			diets[diet] = trip.DoesNotSuit
		}
	}
	switch group {
	case "Pork Products":
		exclude(trip.Vegan, trip.Vegetarian, trip.Pescatarian, trip.NoPork)
	case "Beef Products":
		exclude(trip.Vegan, trip.Vegetarian, trip.Pescatarian, trip.NoBeef)
	case "Poultry Products", "Sausages and Luncheon Meats":
		exclude(trip.Vegan, trip.Vegetarian, trip.Pescatarian)
	case "Lamb, Veal, and Game Products":
		exclude(trip.Vegan, trip.Vegetarian, trip.Pescatarian)
		if strings.HasPrefix(description, "Veal") {
			exclude(trip.NoBeef)
		}
	case "Finfish and Shellfish Products":
		exclude(trip.Vegan, trip.Vegetarian)
	}
	return diets
}
