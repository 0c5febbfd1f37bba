package recipes

import (
	"slices"
	"testing"

	"sumpter/domain/units"
)

// amounts lists how much of each ingredient a recipe takes.
func (d *desk) amounts(name string) []units.Mass {
	d.t.Helper()
	var list []units.Mass
	for _, ingredient := range d.recipe(name).Ingredients {
		list = append(list, ingredient.Amount)
	}
	return list
}

func TestAmountsArePastedAsOneStep(t *testing.T) {
	d := kitchenDesk(t)
	const name = "Red lentil dal with rice"
	d.choose(name)
	d.side.tab(tabIngredients)
	before := d.amounts(name)
	d.side.ingredients.table.MoveCursor(0, 1)
	d.side.ingredients.table.Paste("91\n37,5")
	after := d.amounts(name)
	if after[0] != 91*units.Gram || after[1] != 37500*units.Milligram || !slices.Equal(after[2:], before[2:]) {
		t.Errorf("pasted, the amounts are %v, were %v; said %q", after, before, d.Said)
	}
	if err := d.Document.Undo(); err != nil || !slices.Equal(d.amounts(name), before) {
		t.Errorf("one undo gives %v, %v", d.amounts(name), err)
	}
}

// A paste with one bad cell changes nothing at all.
func TestAPasteIsTakenWholeOrNotAtAll(t *testing.T) {
	d := kitchenDesk(t)
	const name = "Red lentil dal with rice"
	d.choose(name)
	d.side.tab(tabIngredients)
	before := d.amounts(name)
	d.side.ingredients.table.MoveCursor(0, 1)
	d.side.ingredients.table.Paste("91\nplenty")
	if !slices.Equal(d.amounts(name), before) || d.Said == "" {
		t.Errorf("half a paste was stored: %v, were %v; said %q", d.amounts(name), before, d.Said)
	}
}

// A table with a row for each ingredient is whole recipes, not rows of the list.
func TestATableOfIngredientsIsAddedAsRecipes(t *testing.T) {
	d := kitchenDesk(t)
	was := d.Document.Trip()
	d.table.Paste("Name\tMeals\tIngredient\tAmount\nPorridge\tbreakfast\tRolled oats\t80 g\n\t\tSugar\t10 g\n")
	if d.Copied != 1 || d.Document.Trip() != was {
		t.Errorf("asked for the copied table %d times; said %q", d.Copied, d.Said)
	}
	d.table.Paste("Name\tMeals\nPorridge\tbreakfast\n")
	if d.Copied != 1 || len(d.Document.Trip().Recipes) != len(was.Recipes)+1 {
		t.Errorf("a list of names was not added; said %q", d.Said)
	}
}
