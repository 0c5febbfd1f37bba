package bench

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
)

// AllergenWord is an allergen in the reader's language; one the leader named
// stays as it is written.
func AllergenWord(allergen trip.Allergen) string {
	if allergen.OwnWord() {
		return string(allergen)
	}
	return lang.L(string(allergen))
}

// ReadAllergen finds the allergen a word names, in the reader's language or
// ours. Any other word is an allergen of its own, which every food then has to
// declare.
func ReadAllergen(word string) trip.Allergen {
	for _, allergen := range trip.KnownAllergens() {
		if strings.EqualFold(word, AllergenWord(allergen)) || strings.EqualFold(word, string(allergen)) {
			return allergen
		}
	}
	return trip.Allergen(strings.ToLower(word))
}

// DietWord is a diet in the reader's language; one the leader named stays as
// it is written.
func DietWord(diet trip.Diet) string {
	if diet.OwnWord() {
		return string(diet)
	}
	return lang.L(string(diet))
}

// ReadDiet finds the diet a word names, in the reader's language or ours. Any
// other word is a diet of its own.
func ReadDiet(word string) trip.Diet {
	for _, diet := range trip.KnownDiets() {
		if strings.EqualFold(word, DietWord(diet)) || strings.EqualFold(word, string(diet)) {
			return diet
		}
	}
	return trip.Diet(strings.ToLower(word))
}
