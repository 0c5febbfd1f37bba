package labelcheck

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/press"
)

// Whatever was or was not entered, only what was plainly entered as free is
// called so, and every harmful allergen of every food is named.
func TestUnknownIsNeverFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		food := &trip.Food{ID: 1, Name: "Nut mix", Allergens: map[trip.Allergen]trip.Presence{}}
		for _, allergen := range trip.KnownAllergens() {
			state := rapid.SampledFrom([]trip.Presence{"", trip.Contains, trip.MayContain, trip.Free, trip.NotKnown}).Draw(t, string(allergen))
			if state != "" {
				food.Allergens[allergen] = state
			}
		}
		member := trip.Member{ID: 1, Name: "Ada"}
		for _, allergen := range rapid.SliceOfNDistinct(rapid.SampledFrom(trip.KnownAllergens()), 1, 4, rapid.ID[trip.Allergen]).Draw(t, "harmful") {
			member.Allergies = append(member.Allergies, trip.Allergy{Allergen: allergen})
		}
		on := &trip.Trip{Crew: []trip.Member{member}, Foods: []trip.Food{*food}}
		p := press.New(&plan.Plan{Trip: on}, fonts.Bundled(), prose.Reader{}, press.A4, press.Colour)
		harm := harmful(on)
		if len(harm) != len(member.Allergies) {
			t.Fatalf("%v of %v", harm, member.Allergies)
		}
		parts := strings.Split(states(p, food, harm), "; ")
		for i, allergen := range harm {
			free := strings.Contains(parts[i], "free")
			if !strings.HasPrefix(parts[i], string(allergen)+": ") || free != (food.Presence(allergen) == trip.Free) {
				t.Fatalf("%s is %q, said %q", allergen, food.Presence(allergen), parts[i])
			}
		}
		if unread(food, harm) && !doubtful(food, harm) {
			t.Fatal("an unread label is no doubt")
		}
	})
}
