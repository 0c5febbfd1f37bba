package foods

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/app/library"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// labelled makes a food whose label was read, with exceptions.
func labelled(but map[trip.Allergen]trip.Presence) *trip.Food {
	f := &trip.Food{Name: "Bar", Allergens: map[trip.Allergen]trip.Presence{}}
	for _, allergen := range trip.DeclaredAllergens() {
		f.Allergens[allergen] = trip.Free
	}
	for allergen, state := range but {
		f.Allergens[allergen] = state
	}
	return f
}

func TestAllergensInShort(t *testing.T) {
	for _, c := range []struct {
		food         *trip.Food
		short, label string
	}{
		{labelled(nil), "none declared", "read"},
		{&trip.Food{}, "not known, so not safe", "not read"},
		{labelled(map[trip.Allergen]trip.Presence{trip.Milk: trip.Contains}), "milk", "read"},
		{labelled(map[trip.Allergen]trip.Presence{trip.Milk: trip.Contains, trip.Nuts: trip.MayContain}), "milk; may contain nuts", "read"},
		{labelled(map[trip.Allergen]trip.Presence{trip.Celery: trip.NotKnown}), "not known, so not safe", "1 not known"},
		{labelled(map[trip.Allergen]trip.Presence{trip.Almonds: trip.Contains}), "nuts", "read"}, // one kind is enough
	} {
		if got := allergensInShort(c.food, units.Metric); got != c.short {
			t.Errorf("%v: %q, want %q", c.food.Allergens, got, c.short)
		}
		if got := labelField().text(c.food); got != c.label {
			t.Errorf("%v: label %q, want %q", c.food.Allergens, got, c.label)
		}
	}
}

// What is shown as "none declared" or "read" is free of all that must be
// declared, whatever the trip.
func TestUnknownIsNeverShownAsSafe(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		for i := range made.Foods {
			f := &made.Foods[i]
			allFree := true
			for _, allergen := range trip.DeclaredAllergens() {
				allFree = allFree && f.Presence(allergen) == trip.Free
			}
			if (allergensInShort(f, units.Metric) == "none declared") != allFree {
				rt.Fatalf("%v is shown as %q", f.Allergens, allergensInShort(f, units.Metric))
			}
			if len(unreadOf(f)) > 0 && (labelField().text(f) == "read" || !strings.Contains(labelWords(f, units.Metric), "not safe")) {
				rt.Fatalf("%v: label %q, %q", f.Allergens, labelField().text(f), labelWords(f, units.Metric))
			}
		}
	})
}

func TestLabelsToReadAreThoseThatKeepSomebodyFromEating(t *testing.T) {
	made := &trip.Trip{
		Crew: []trip.Member{{ID: 1, Name: "Kit"}, {ID: 2, Name: "Bo", Allergies: []trip.Allergy{{Allergen: trip.Milk, Severe: true}}}},
		Foods: []trip.Food{
			{ID: 7}, *labelled(map[trip.Allergen]trip.Presence{trip.Milk: trip.Contains}), *labelled(map[trip.Allergen]trip.Presence{trip.Celery: trip.NotKnown}),
		},
	}
	if got := labelsToRead(made); !slices.Equal(got, []trip.FoodID{7}) {
		t.Errorf("to read are %v, want only food 7", got)
	}
	if got := allergicTo(made, trip.Milk); got != "Bo (traces)" {
		t.Errorf("milk harms %q", got)
	}
	made.Crew[1].Allergies = nil
	if got := labelsToRead(made); len(got) != 0 {
		t.Errorf("without allergies %v wait", got)
	}
}

func TestEnergyIsReadWithItsUnit(t *testing.T) {
	for text, want := range map[string]float64{"389": 389, "389 kcal": 389, "389,5": 389.5, "1628 kJ": 1628 / 4.184, "1628kj": 1628 / 4.184, "0": 0} {
		if got, err := energy(text); err != nil || math.Abs(float64(got)-want) > 1e-9 {
			t.Errorf("%q is %v kcal, %v, want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "many", "-3", "3 cal", "kJ"} {
		if got, err := energy(text); err == nil {
			t.Errorf("%q is taken for %v kcal", text, got)
		}
	}
}

// By hand: Atwater 4-9-4 with fibre within; Regulation (EU) 1169/2011, Annex
// XIV, with fibre apart at 2 kcal/g.
func TestEnergyIsCheckedByTheRuleOfTheLabel(t *testing.T) {
	n := trip.Nutrients{
		Kcal: 400, ProteinGrams: optional.Of(10.0), FatGrams: optional.Of(20.0), CarbGrams: optional.Of(45.0), FibreGrams: optional.Of(10.0),
		CarbConvention: trip.TotalCarbohydrate,
	}
	if check := checkEnergy(&n); !check.known || !check.fits || check.computed != 400 {
		t.Errorf("fibre within: %+v, want 400", check)
	}
	n.CarbConvention = trip.AvailableCarbohydrate
	if check := checkEnergy(&n); check.computed != 420 || !check.fits {
		t.Errorf("fibre apart: %+v, want 420", check)
	}
	n.Kcal = 300
	if check := checkEnergy(&n); check.fits {
		t.Errorf("300 kcal against 420: %+v", check)
	}
	n.FatGrams = optional.Unknown[float64]()
	if check := checkEnergy(&n); check.known {
		t.Error("without fat nothing can be checked")
	}
	if text, _ := energyWords(&n, false); !strings.Contains(text, "cannot be checked") {
		t.Errorf("the side says %q", text)
	}
}

// No food of the library may look safer in the search than it is.
func TestSearchHintsNeverClaimWhatNobodyJudged(t *testing.T) {
	d := emptyDesk(t)
	for _, e := range library.All() {
		keeps, hint := d.search.keeps(&e), allergenHint(&e, units.Metric)
		food := e.Food()
		switch {
		case e.Trail == nil && (keeps != "not judged" || !strings.Contains(hint, "not known")):
			t.Fatalf("%s: %q, %q", e.Name, keeps, hint)
		case e.Trail != nil && len(unreadOf(&food)) > 0 && !strings.Contains(hint, "read the label"):
			t.Fatalf("%s has unknown allergens, the hint is %q", e.Name, hint)
		case food.Storage.TCS == trip.TCSYes && !strings.Contains(keeps, "cold"):
			t.Fatalf("%s must be cold, the hint is %q", e.Name, keeps)
		}
		for _, allergen := range withPresence(&food, trip.Contains) {
			if _, kind := allergen.Parent(); !kind && !strings.Contains(hint, string(allergen)) {
				t.Fatalf("%s contains %s, the hint is %q", e.Name, allergen, hint)
			}
		}
	}
}

func TestFreeNamesFitTheTrip(t *testing.T) {
	long := strings.Repeat("ä", trip.MaxNameRunes)
	made := &trip.Trip{Foods: []trip.Food{{Name: "Oats"}, {Name: "oats 2"}, {Name: long}}}
	if got := freeName(made, "OATS"); got != "OATS 3" {
		t.Errorf("the name is %q", got)
	}
	if got := []rune(freeName(made, long)); len(got) != trip.MaxNameRunes || string(got[len(got)-2:]) != " 2" {
		t.Errorf("a long name becomes %q", string(got))
	}
	if got := freeName(made, "Rice"); got != "Rice" {
		t.Errorf("a free name becomes %q", got)
	}
	if got := lowered("Äpfel, dried"); got != "äpfel, dried" {
		t.Errorf("lowered to %q", got)
	}
}

func TestUnitsOfTheReader(t *testing.T) {
	f := &trip.Food{Density: optional.Of(1.0)}
	us := densityField(units.US)
	if got := us.text(f); got != "8.3" { // 236.588 ml of water weigh 8.345 oz
		t.Errorf("water weighs %s oz a cup", got)
	}
	if err := us.set(f, "4.1727"); err != nil || math.Abs(f.Density.Or(0)-0.5) > 1e-4 {
		t.Errorf("half as heavy is %v g/ml, %v", f.Density, err)
	}
	softens := degrees("", 0, units.US, func(f *trip.Food) *optional.Value[units.Celsius] { return &f.Storage.SoftensAt })
	if err := softens.set(f, "86"); err != nil || math.Abs(float64(f.Storage.SoftensAt.Or(0))-30) > 1e-9 {
		t.Errorf("86 °F are %v, %v", f.Storage.SoftensAt, err)
	}
	f.Storage.SoftensAt = optional.Unknown[units.Celsius]()
	f.Storage.TCS = trip.TCSUnknown
	if got := softens.text(f); got != "?" {
		t.Errorf("of a food that nobody judged it says %q", got)
	}
}
