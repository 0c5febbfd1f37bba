package bench

import (
	"testing"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestEveryWordIsReadBack(t *testing.T) {
	for _, allergen := range append(trip.KnownAllergens(), "kiwi") {
		for _, system := range []units.System{units.Metric, units.US} {
			if got := ReadAllergen(AllergenWord(allergen, system)); got != allergen {
				t.Errorf("%s is read back as %s", allergen, got)
			}
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

// The names of 21 USC 321(qq), the US law on food allergens, and of Regulation
// (EU) 1169/2011, Annex II, for who thinks in its units.
func TestAllergensBearTheNamesOfTheReadersLabels(t *testing.T) {
	for allergen, want := range map[trip.Allergen][2]string{
		trip.Milk: {"milk", "milk"}, trip.Eggs: {"eggs", "eggs"}, trip.Fish: {"fish", "fish"}, trip.Peanuts: {"peanuts", "peanuts"},
		trip.Wheat: {"wheat", "wheat"}, trip.Soybeans: {"soybeans", "soybeans"}, trip.Sesame: {"sesame", "sesame"},
		trip.Nuts: {"nuts", "tree nuts"}, trip.Crustaceans: {"crustaceans", "crustacean shellfish"}, trip.Almonds: {"almonds", "almonds"},
	} {
		if got := [2]string{AllergenWord(allergen, units.Metric), AllergenWord(allergen, units.US)}; got != want {
			t.Errorf("%s is called %q, want %q", allergen, got, want)
		}
		said := prose.Say("%s", allergen)
		if got := [2]string{said.In(prose.Reader{Units: units.Metric}), said.In(prose.Reader{Units: units.US})}; got != want {
			t.Errorf("a finding calls %s %q, want %q", allergen, got, want)
		}
	}
}
