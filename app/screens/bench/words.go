package bench

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// AllergenWord is an allergen in the reader's language, as labels name it where
// people think in those units; one the leader named stays as it is written.
func AllergenWord(allergen trip.Allergen, system units.System) string {
	if allergen.OwnWord() {
		return string(allergen)
	}
	return lang.L(allergen.Named(system))
}

// everydayNames are what people call allergens beside the words of labels.
var everydayNames = map[string]trip.Allergen{
	"treenuts": trip.Nuts, "nuss": trip.Nuts, "schalenfrüchte": trip.Nuts,
	"groundnuts": trip.Peanuts, "erdnuss": trip.Peanuts,
	"dairy": trip.Milk, "lactose": trip.Milk, "laktose": trip.Milk,
	"soy": trip.Soybeans, "soya": trip.Soybeans, "ei": trip.Eggs,
	"celeriac": trip.Celery, "sulfites": trip.Sulphites,
	"coeliac": trip.Gluten, "celiac": trip.Gluten, "zöliakie": trip.Gluten,
	"shrimp": trip.Crustaceans, "prawns": trip.Crustaceans,
}

// ReadAllergen finds the allergen a word names, in the reader's language or
// ours, one of it or many. Any other word is an allergen of its own, which every
// food then has to declare.
func ReadAllergen(word string) trip.Allergen {
	if allergen, _, ok := FindAllergen(word); ok {
		return allergen
	}
	return trip.Allergen(strings.ToLower(word))
}

// narrowerNames are names that mean less than the allergen they stand for: who
// cannot have the one should avoid the other, but what is free of the one is not
// free of the other.
var narrowerNames = map[string]bool{
	"dairy": true, "lactose": true, "laktose": true, "celeriac": true, "coeliac": true, "celiac": true, "zöliakie": true, "shrimp": true, "prawns": true,
}

// FindAllergen finds the allergen that a word names, and tells whether the word
// means all of it.
func FindAllergen(word string) (allergen trip.Allergen, whole, ok bool) {
	for _, one := range []string{word, word + "s"} {
		bare := strings.ReplaceAll(strings.ToLower(one), " ", "")
		if allergen, ok := everydayNames[bare]; ok {
			return allergen, !narrowerNames[bare], true
		}
		if allergen, ok := knownAllergen(one); ok {
			return allergen, true, true
		}
	}
	return "", false, false
}

func knownAllergen(word string) (trip.Allergen, bool) {
	for _, allergen := range trip.KnownAllergens() {
		for _, system := range []units.System{units.Metric, units.US} {
			if strings.EqualFold(word, AllergenWord(allergen, system)) || strings.EqualFold(word, allergen.Named(system)) {
				return allergen, true
			}
		}
	}
	return "", false
}

// DietWord is a diet in the reader's language; one the leader named stays as
// it is written.
func DietWord(diet trip.Diet) string {
	if diet.OwnWord() {
		return string(diet)
	}
	return lang.L(string(diet))
}

// everydayDiets are what people call diets beside their names.
var everydayDiets = map[string]trip.Diet{
	"veggie": trip.Vegetarian, "veg": trip.Vegetarian, "vegetarisch": trip.Vegetarian, "vegetarier": trip.Vegetarian, "vegetarierin": trip.Vegetarian,
	"vegetarians": trip.Vegetarian, "vegans": trip.Vegan, "veganer": trip.Vegan, "veganerin": trip.Vegan,
	"pescetarian": trip.Pescatarian, "lactosefree": trip.LactoseFree, "laktosefrei": trip.LactoseFree,
	"nopork": trip.NoPork, "nobeef": trip.NoBeef, "fodmap": trip.LowFODMAP,
}

// ReadDiet finds the diet a word names, in the reader's language or ours. Any
// other word is a diet of its own.
func ReadDiet(word string) trip.Diet {
	if diet, ok := everydayDiets[strings.NewReplacer(" ", "", "-", "").Replace(strings.ToLower(word))]; ok {
		return diet
	}
	for _, diet := range trip.KnownDiets() {
		if strings.EqualFold(word, DietWord(diet)) || strings.EqualFold(word, string(diet)) {
			return diet
		}
	}
	return trip.Diet(strings.ToLower(word))
}
