package translation

import (
	"slices"
	"testing"

	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestSpoken(t *testing.T) {
	for locale, want := range map[string]string{"de": "de", "de-AT": "de", "de_CH.UTF-8": "de", "DE": "de", "en_GB": "en"} {
		if got, ok := Spoken(locale); !ok || got != want {
			t.Errorf("%s is %s, %v", locale, got, ok)
		}
	}
	for _, locale := range []string{"", "fr_FR", "deu", "-", "_", "C"} {
		if got, ok := Spoken(locale); ok {
			t.Errorf("%q is taken for %s", locale, got)
		}
	}
	if !slices.Contains(Languages(), English) {
		t.Errorf("nobody speaks English: %v", Languages())
	}
}

func TestReader(t *testing.T) {
	said := prose.Say("Day %d, %s: %s", 3, trip.Dinner, 1500*units.Gram/1000)
	for language, want := range map[string]string{"en": "Day 3, dinner: 1.5 g", "de": "Tag 3, Abendessen: 1,5 g", "xx": "Day 3, dinner: 1.5 g"} {
		if got := said.In(Reader(language)); got != want {
			t.Errorf("in %s: %q, want %q", language, got, want)
		}
	}
	// A key that the format keeps for itself.
	if got := Reader("de").Words("other"); got == "other" || got == "" {
		t.Errorf("other is %q", got)
	}
}
