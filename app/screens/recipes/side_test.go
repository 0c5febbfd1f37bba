package recipes

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/print/prints"
)

func TestIngredientsAreAddedWithCompletion(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	had := len(d.recipe(pasta).Ingredients)
	d.Do("Ingredients of the recipe")
	d.Press(fyne.KeyInsert)
	d.Type("curry") // a beginning of a word is enough
	d.Press(fyne.KeyTab)
	d.Type("3")
	d.Press(fyne.KeyTab) // past the energy, which is worked out
	d.Type("to t")
	d.Press(fyne.KeyTab)
	d.Type("b")
	d.Press(fyne.KeyReturn)
	list := d.recipe(pasta).Ingredients
	if len(list) != had+1 {
		t.Fatalf("%d ingredients, had %d; said %q", len(list), had, d.Said)
	}
	added := list[had]
	if name := foodName(d.bench.Trip(), added.Food); !strings.Contains(strings.ToLower(name), "curry") || added.Amount != 3*units.Gram || added.Role != trip.ToTaste || added.Place != trip.AtBowl {
		t.Errorf("added %s, %+v; said %q", name, added, d.Said)
	}
	d.side.ingredients.table.Delete()
	if len(d.recipe(pasta).Ingredients) != had {
		t.Errorf("removing leaves %d", len(d.recipe(pasta).Ingredients))
	}
}

func TestAFoodTheTripDoesNotHaveIsRefused(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	before := d.recipe(pasta).Ingredients[0].Food
	d.Do("Ingredients of the recipe")
	d.side.ingredients.table.MoveCursor(0, 0)
	d.Type("unicorn")
	d.Press(fyne.KeyReturn)
	if d.recipe(pasta).Ingredients[0].Food != before || !strings.Contains(d.Said, "unicorn") {
		t.Errorf("said %q", d.Said)
	}
}

func TestTheLastIngredientStays(t *testing.T) {
	d := kitchenDesk(t)
	d.Do("Add a recipe")
	d.Do("Ingredients of the recipe")
	d.side.ingredients.table.Delete()
	if recipe := d.side.current(); len(recipe.Ingredients) != 1 || d.Said == "" {
		t.Errorf("%d ingredients, said %q", len(recipe.Ingredients), d.Said)
	}
}

func TestSwapsAreEdited(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	d.Do("Ingredients of the recipe")
	d.side.ingredients.table.MoveCursor(1, 0) // soya mince, without a swap
	swaps := d.side.ingredients.swaps
	had := len(d.recipe(pasta).Ingredients[1].Swaps)
	swaps.table.Add()
	swaps.table.MoveCursor(had, 0)
	swaps.table.Focus()
	d.Type("almond b")
	d.Press(fyne.KeyTab)
	d.Type("25")
	d.Press(fyne.KeyTab)
	d.Type("y")
	d.Press(fyne.KeyReturn)
	list := d.recipe(pasta).Ingredients[1].Swaps
	if len(list) != had+1 || list[had].Amount != 25*units.Gram || !list[had].ForAll || foodName(d.bench.Trip(), list[had].Food) != "Almond butter" {
		t.Fatalf("swaps are %+v; said %q", list, d.Said)
	}
	swaps.table.MoveCursor(had, 0)
	d.Type("leave")
	d.Press(fyne.KeyReturn)
	if left := d.recipe(pasta).Ingredients[1].Swaps[had]; left.Food != 0 || left.Amount != 0 {
		t.Errorf("leaving it out gives %+v", left)
	}
	swaps.table.Delete()
	if list := d.recipe(pasta).Ingredients[1].Swaps; len(list) != had {
		t.Errorf("removing leaves %+v", list)
	}
}

func TestMakingIsEdited(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	d.Do("How the recipe is made")
	for i, f := range d.side.making.fields {
		text := map[string]string{
			"Water that stays in the food": "0.5 l", "Water boiled and poured off": "", "On the flame after the boil": "7", "Can be made cold": "yes",
			"Staple": "noodles", "Smallest portion": "60", "Largest portion": "150 %",
		}
		typed, wanted := text[f.title]
		if !wanted {
			continue
		}
		d.side.making.table.MoveCursor(i, 1)
		if typed == "" {
			d.Press(fyne.KeyDelete)
			continue
		}
		d.Type(typed)
		d.Press(fyne.KeyReturn)
	}
	r := d.recipe(pasta)
	if r.Water != 500*units.Millilitre || r.PourOff != 0 || r.Simmer != 7 || !r.ColdOK || r.Staple != "noodles" || r.MinScale != 0.6 || r.MaxScale != 1.5 {
		t.Errorf("%+v; said %q", r, d.Said)
	}
}

func TestMethodIsStoredWhenTheKeyboardLeaves(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	d.Do("How the recipe is made")
	d.focus(d.side.making.method)
	d.side.making.method.SetText("Boil the water.\n\n  Stir. ")
	if got := d.recipe(pasta).Method; len(got) == 2 {
		t.Errorf("stored while typing: %q", got)
	}
	d.side.making.table.Focus()
	if got := d.recipe(pasta).Method; len(got) != 2 || got[1] != "Stir." {
		t.Errorf("method is %q; said %q", got, d.Said)
	}
	if undo := d.Document.UndoName(); undo != "change method of "+pasta {
		t.Errorf("undo is called %q", undo)
	}
	d.side.making.notes.SetText("Two spoons.")
	if !d.Commit() || d.recipe(pasta).Notes != "Two spoons." {
		t.Errorf("notes are %q", d.recipe(pasta).Notes)
	}
}

func TestWhoCannotEatItIsNamedWithTheReason(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	recipe := d.recipe(pasta)
	m := &d.bench.Trip().Crew[0]
	food := d.bench.Trip().Food(recipe.Ingredients[1].Food) // soya mince, without a swap
	if err := d.Document.Edit("an allergy", func(t *trip.Trip) error {
		t.Member(m.ID).Allergies = []trip.Allergy{{Allergen: trip.Soybeans}}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	d.Do("Who can eat the recipe")
	if text := d.side.eaters.summary.Content; !strings.Contains(text, "not to") || !strings.Contains(text, m.Name) {
		t.Errorf("the side says %q", text)
	}
	if how := d.side.eaters.how(m.ID); !strings.Contains(how, food.Name+" contains soybeans") {
		t.Errorf("the reason is %q", how)
	}
	if d.Waiting() == 0 || !strings.Contains(refusedNames(d.bench.Trip(), d.kitchen.taste(d.recipe(pasta))), m.Name) {
		t.Error("the list does not name them")
	}
	if err := d.Document.Edit("nobody read the label", func(t *trip.Trip) error {
		t.Food(food.ID).Allergens = nil
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if how := d.side.eaters.how(m.ID); !strings.Contains(how, "not known") {
		t.Errorf("with an unread label the reason is %q", how)
	}
	if text := d.side.allergens.Text; !strings.Contains(text, "Not known, so not safe:") {
		t.Errorf("allergens are %q", text)
	}
}

func TestSwapsAreNamedForWhoTakesThem(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	d.Do("Who can eat the recipe")
	swapped := 0
	for _, one := range d.kitchen.taste(d.recipe(pasta)).tried {
		for _, part := range one.Parts {
			if !part.Swapped {
				continue
			}
			swapped++
			if how := d.side.eaters.how(one.Member); !strings.Contains(how, foodName(d.bench.Trip(), part.Food)) {
				t.Errorf("member %d takes %s, the side says %q", one.Member, foodName(d.bench.Trip(), part.Food), how)
			}
		}
	}
	if swapped == 0 {
		t.Error("nobody of the demo takes a swap of the pasta")
	}
	d.Press(fyne.KeyReturn)
	if len(d.Places) != 1 || d.Places[0].Screen != "crew" {
		t.Errorf("Return leads to %+v", d.Places)
	}
}

func TestDietsAreThoseAfterSwaps(t *testing.T) {
	d := kitchenDesk(t)
	f := d.kitchen.facts(d.recipe(pasta)) // parmesan or pumpkin seeds
	suits := func(diet trip.Diet) bool {
		for _, one := range f.diets {
			if one == diet {
				return true
			}
		}
		return false
	}
	if !suits(trip.Vegan) || suits(trip.Halal) {
		t.Errorf("diets are %v", f.diets)
	}
}

func TestCardScalesToTheEaters(t *testing.T) {
	d := kitchenDesk(t)
	d.choose(pasta)
	d.Do("Recipe card for a number of eaters")
	d.side.card.eaters.SetText("7")
	recipe := d.recipe(pasta)
	if got, want := d.side.card.forAll(recipe.Ingredients[0].Amount), recipe.Ingredients[0].Amount*7; got != want {
		t.Errorf("for seven: %s, want %s", got, want)
	}
	if text, want := d.side.card.water.Content, (recipe.Water * 7).Format(units.Metric); !strings.Contains(text, want) {
		t.Errorf("water is %q, want %s", text, want)
	}
	d.Press(fyne.KeyUp)
	if d.side.card.count != 8 {
		t.Errorf("the arrow up makes %d", d.side.card.count)
	}
	d.side.card.eaters.SetText("none")
	if d.side.card.count != 8 || d.Said == "" {
		t.Errorf("%d eaters, said %q", d.side.card.count, d.Said)
	}
	if text := d.side.card.method.Content; !strings.HasPrefix(text, "1. ") {
		t.Errorf("the method begins %q", text)
	}
}

func TestImportAndPrintFromTheScreen(t *testing.T) {
	d := kitchenDesk(t)
	button := func(name string) *widget.Button {
		for _, object := range test.LaidOutObjects(d.content) {
			if b, ok := object.(*widget.Button); ok && b.Text == name {
				return b
			}
		}
		t.Fatalf("no button %q", name)
		return nil
	}
	test.Tap(button("Import…"))
	d.Do("Import recipes from a sheet…")
	if d.Tables != 2 {
		t.Errorf("a table was asked for %d times", d.Tables)
	}
	d.choose(pasta)
	d.Do("Recipe card for a number of eaters")
	test.Tap(button("Print…"))
	want := document.Place{Screen: "print", Paper: string(prints.Booklet), Place: findings.Place{Recipe: d.recipe(pasta).ID}}
	if len(d.Places) != 1 || d.Places[0] != want {
		t.Errorf("went to %+v, want %+v", d.Places, want)
	}
}
