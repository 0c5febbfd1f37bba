package bench

import (
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestEveryWordIsReadBack(t *testing.T) {
	for _, allergen := range append(trip.KnownAllergens(), "kiwi") {
		if got := ReadAllergen(AllergenWord(allergen)); got != allergen {
			t.Errorf("%s is read back as %s", allergen, got)
		}
	}
	for _, diet := range append(trip.KnownDiets(), "no onions") {
		if got := ReadDiet(DietWord(diet)); got != diet {
			t.Errorf("%s is read back as %s", diet, got)
		}
	}
	for word, want := range map[string]trip.Allergen{"tree nuts": trip.Nuts, "Nut": trip.Nuts, "egg": trip.Eggs, "Soya": trip.Soybeans, "lactose": trip.Milk, "almond": trip.Almonds, "strawberries": "strawberries"} {
		if got := ReadAllergen(word); got != want {
			t.Errorf("%s is read as %s, not %s", word, got, want)
		}
	}
	for word, want := range map[string]trip.Diet{"Veggie": trip.Vegetarian, "Vegetarier": trip.Vegetarian, "lactose free": trip.LactoseFree, "keto": "keto"} {
		if got := ReadDiet(word); got != want {
			t.Errorf("%s is read as %s, not %s", word, got, want)
		}
	}
	if got := ReadAllergen("PEANUTS"); got != trip.Peanuts {
		t.Errorf("PEANUTS is read as %s", got)
	}
}

func TestDatesAsAPersonSaysThem(t *testing.T) {
	date, err := units.ParseDate("2026-07-20")
	if err != nil {
		t.Fatal(err)
	}
	if got := DateWords(date); got != "Mon 20 Jul 2026" {
		t.Errorf("with the year: %q", got)
	}
	if got := DayWords(date); got != "Mon 20 Jul" {
		t.Errorf("without it: %q", got)
	}
	if DateWords(0) != "" || DayWords(0) != "" {
		t.Error("a date that is not set has words")
	}
}
