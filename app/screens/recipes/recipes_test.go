package recipes

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

const pasta = "Tomato pasta with soya mince"

func TestAnEmptyTripAsksForFoodsFirst(t *testing.T) {
	d := emptyDesk(t)
	if !d.empty.Visible() {
		t.Error("an empty list does not say what comes here")
	}
	d.Do("Add a recipe")
	if len(d.bench.Trip().Recipes) != 0 || !strings.Contains(d.Said, "Foods") {
		t.Errorf("%d recipes, said %q", len(d.bench.Trip().Recipes), d.Said)
	}
}

func TestRecipesAreAddedRenamedDuplicatedAndRemoved(t *testing.T) {
	d := kitchenDesk(t)
	before := len(d.bench.Trip().Recipes)
	d.Do("Add a recipe")
	d.Type("Nettle soup")
	d.Press(fyne.KeyReturn)
	soup := d.recipe("Nettle soup")
	if len(d.bench.Trip().Recipes) != before+1 || len(soup.Ingredients) != 1 {
		t.Fatalf("%d recipes, the new one is %+v; said %q", len(d.bench.Trip().Recipes), soup, d.Said)
	}
	d.choose("Nettle soup")
	d.Do("Duplicate the recipe")
	twin := d.recipe("Nettle soup 2")
	if twin.ID == soup.ID || d.Document.UndoName() != "duplicate Nettle soup" || d.side.recipe != twin.ID {
		t.Errorf("the twin is %+v, undo %q", twin, d.Document.UndoName())
	}
	d.Do("Remove the recipe")
	if len(d.bench.Trip().Recipes) != before+1 || d.Document.UndoName() != "remove Nettle soup 2" {
		t.Errorf("%d recipes, undo %q; said %q", len(d.bench.Trip().Recipes), d.Document.UndoName(), d.Said)
	}
	if err := d.Document.Undo(); err != nil || len(d.bench.Trip().Recipes) != before+2 {
		t.Error("undo does not bring it back")
	}
}

// A duplicate shares nothing with what it was made from.
func TestADuplicateIsItsOwn(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	d.Do("Duplicate the recipe")
	d.Do("Ingredients of the recipe")
	d.side.ingredients.table.MoveCursor(0, 1)
	d.Type("11 g")
	d.Press(fyne.KeyReturn)
	if d.recipe(pasta + " 2").Ingredients[0].Amount != 11*units.Gram || d.recipe(pasta).Ingredients[0].Amount == 11*units.Gram {
		t.Errorf("amounts: %s and %s", d.recipe(pasta + " 2").Ingredients[0].Amount, d.recipe(pasta).Ingredients[0].Amount)
	}
}

func TestRemovingTakesARecipeOffTheMenu(t *testing.T) {
	d := kitchenDesk(t)
	id := d.recipe(pasta).ID
	if err := d.Document.Edit("serve it", func(t *trip.Trip) error {
		t.Menu = []trip.Cell{{Day: 1, Meal: trip.Dinner, Group: t.Groups[0].ID, Dishes: []trip.Dish{{Recipe: id}}}}
		t.Settings.ReserveRecipe = id
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	d.choose(pasta)
	d.Do("Remove the recipe")
	now := d.bench.Trip()
	if now.Recipe(id) != nil || len(now.Menu[0].Dishes) != 0 || now.Settings.ReserveRecipe != 0 || !strings.Contains(d.Said, "one slot") {
		t.Errorf("menu %+v, said %q", now.Menu, d.Said)
	}
}

// The figures of the list against sums made here by hand.
func TestFiguresAreThoseOfTheIngredients(t *testing.T) {
	d := kitchenDesk(t)
	recipe := d.recipe(pasta)
	var kcal, protein, grams float64
	for _, in := range recipe.Ingredients {
		food := d.bench.Trip().Food(in.Food)
		eaten := in.Amount.Grams() * (1 - food.RefuseShare)
		kcal += float64(food.Per100g.Kcal) * eaten / 100
		protein += food.Per100g.ProteinGrams.Or(0) * eaten / 100
		grams += in.Amount.Grams()
	}
	f := d.kitchen.facts(recipe)
	if near := func(a, b float64) bool { return a-b < 1e-6 && b-a < 1e-6 }; !near(float64(f.kcal), kcal) || !near(f.protein.amount, protein) ||
		!near(f.mass.Grams(), grams) || !near(f.density(), kcal/grams) {
		t.Errorf("have %+v, want %v kcal, %v g protein, %v g", f, kcal, protein, grams)
	}
	d.choose(pasta)
	if text := d.side.figures.Content; !strings.HasPrefix(text, number(kcal, 0)+" kcal") {
		t.Errorf("the side says %q", text)
	}
}

func TestFiguresFollowAnEdit(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	before := d.side.figures.Content
	d.Do("Ingredients of the recipe")
	d.side.ingredients.table.MoveCursor(0, 1)
	d.Type("120")
	d.Press(fyne.KeyReturn)
	if d.side.figures.Content == before || d.recipe(pasta).Ingredients[0].Amount != 120*units.Gram {
		t.Errorf("the figures stay %q", before)
	}
	if undo := d.Document.UndoName(); undo != "change Amount of "+pasta {
		t.Errorf("undo is called %q", undo)
	}
}

func TestUnknownNutrientsMakeASumALowerBound(t *testing.T) {
	d := kitchenDesk(t)
	food := d.recipe(pasta).Ingredients[0].Food
	if err := d.Document.Edit("forget", func(t *trip.Trip) error {
		f := t.Food(food)
		f.Per100g.ProteinGrams = optional.Unknown[float64]()
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if text := d.kitchen.facts(d.recipe(pasta)).protein.atLeast(0); !strings.HasPrefix(text, "≥ ") {
		t.Errorf("protein is shown as %q", text)
	}
}

func TestMealsAreTypedByTheirBeginnings(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	row, _ := d.table.Cursor()
	for i, f := range d.fields {
		if f.title == "Meals" {
			d.table.MoveCursor(row, i)
		}
	}
	d.Type("din, lun")
	d.Press(fyne.KeyReturn)
	if meals := d.recipe(pasta).Meals; len(meals) != 2 || meals[0] != trip.Lunch || meals[1] != trip.Dinner {
		t.Errorf("meals are %v; said %q", meals, d.Said)
	}
	d.Type("supper")
	d.Press(fyne.KeyReturn)
	if !strings.Contains(d.Said, "breakfast") {
		t.Errorf("said %q", d.Said)
	}
}

func TestGoToShowsARecipeThatTheFilterHides(t *testing.T) {
	d := kitchenDesk(t)
	d.filter.SetText("nothing is called this")
	d.GoTo(findings.Place{Recipe: d.recipe(pasta).ID})
	if d.side.recipe != d.recipe(pasta).ID || d.side.name.Content != pasta {
		t.Errorf("the side shows %q", d.side.name.Content)
	}
}

func TestPasteNamesIsOneStep(t *testing.T) {
	d := kitchenDesk(t)
	d.table.MoveCursor(0, 0)
	before := d.bench.Trip().Recipes[0].Name
	d.table.Paste("First\nSecond\n")
	if got := d.bench.Trip().Recipes; got[0].Name != "First" || got[1].Name != "Second" {
		t.Errorf("names are %q and %q; said %q", got[0].Name, got[1].Name, d.Said)
	}
	if err := d.Document.Undo(); err != nil || d.bench.Trip().Recipes[0].Name != before {
		t.Error("one undo does not take the paste back")
	}
}
