package window

import (
	"path/filepath"
	"strings"
	"testing"

	"sumpter/app/demo"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
)

func saidInDialog(t *testing.T, w *Workbench) string {
	t.Helper()
	said := ""
	for _, paragraph := range pieces[*look.Paragraph](dialogOf(t, w)) {
		said += paragraph.Content + "\n"
	}
	return said
}

func TestRecipesAreTakenFromAnotherTrip(t *testing.T) {
	other := demo.Trip()
	other.Title = "Last year"
	path := filepath.Join(t.TempDir(), "last year.trip")
	file, err := tripfile.Create(path, &other)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	// A short trip that has one of the foods, which nobody read the label of.
	short := trip.New("Short walk", 20_000)
	oats := *other.Food(other.Recipes[0].Ingredients[0].Food)
	oats.ID, oats.Allergens = 40, nil
	short.Foods = append(short.Foods, oats)
	w := openOn(t, short)
	before := w.document.Trip()

	w.takeRecipesOf(path)
	list := pieces[*bench.DialogList](dialogOf(t, w))[0]
	if list.Length() != len(other.Recipes) {
		t.Fatalf("%d recipes are offered of %d", list.Length(), len(other.Recipes))
	}
	pressInDialog(t, w, "Take what is ticked")
	if len(w.document.Trip().Recipes) != 0 {
		t.Fatal("what was not ticked was taken")
	}
	list.OnSelected(0)
	if said := saidInDialog(t, w); !strings.Contains(said, "One recipe is ticked") || !strings.Contains(said, oats.Name+" (") || !strings.Contains(said, "more of the label was read there") {
		t.Errorf("said %q", said)
	}
	pressInDialog(t, w, "Take what is ticked")
	now := w.document.Trip()
	if w.window.Canvas().Overlays().Top() != nil || len(now.Recipes) != 1 || now.Recipes[0].Name != other.Recipes[0].Name {
		t.Fatalf("recipes %+v", now.Recipes)
	}
	made := now.Recipes[0].Ingredients[0]
	if made.Food != 40 || now.Food(40).Presence(trip.Gluten) != trip.NotKnown {
		t.Errorf("it is made of %d, whose gluten is %s", made.Food, now.Food(40).Presence(trip.Gluten))
	}
	if err := w.document.Undo(); err != nil || !trip.Equal(w.document.Trip(), before) {
		t.Errorf("one undo does not take it back (%v)", err)
	}
}

// The labels of the demo are invented.
func TestFoodsOfTheDemoComeWithoutLabels(t *testing.T) {
	w := openOn(t, trip.New("Short walk", 20_000))
	actionNamed(w, "Recipes")()
	actionNamed(w, "Take recipes from the demo")()
	pieces[*bench.DialogList](dialogOf(t, w))[0].OnSelected(0)
	pressInDialog(t, w, "Take what is ticked")
	now := w.document.Trip()
	if len(now.Recipes) != 1 || len(now.Foods) == 0 {
		t.Fatalf("%d recipes, %d foods", len(now.Recipes), len(now.Foods))
	}
	for i := range now.Foods {
		if f := &now.Foods[i]; len(f.Allergens)+len(f.Diets)+len(f.Packages) > 0 {
			t.Errorf("%s came with %v, %v, %v", f.Name, f.Allergens, f.Diets, f.Packages)
		}
	}
	w.takeDemoRecipes()
	if said := saidInDialog(t, w); !strings.Contains(said, "invented") {
		t.Errorf("said %q", said)
	}
}
