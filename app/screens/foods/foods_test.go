package foods

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestTypingFindsAndReturnAdds(t *testing.T) {
	d := emptyDesk(t)
	if !d.empty.Visible() {
		t.Error("an empty table does not say what comes here")
	}
	d.Do("Search the food library")
	d.Type("oats")
	if !d.search.results.Visible() || len(d.search.found.Rows()) == 0 {
		t.Fatal("typing oats shows nothing")
	}
	first := d.search.found.Rows()[0]
	d.Press(fyne.KeyReturn)
	foods := d.bench.Trip().Foods
	if len(foods) != 1 || foods[0].Source != "USDA SR28 "+first.ID || foods[0].ID != 1 {
		t.Fatalf("the trip has %+v, chosen was %s", foods, first.Name)
	}
	if want := "add " + lowered(first.Name); d.Document.UndoName() != want {
		t.Errorf("undo is called %q, want %q", d.Document.UndoName(), want)
	}
	if d.search.results.Visible() || d.search.entry.Text != "" || d.Keyboard() != fyne.Focusable(d.search.entry) {
		t.Error("the search is not ready for the next food")
	}
	if d.side.food != 1 || d.empty.Visible() {
		t.Error("the new food is not shown")
	}
}

func TestArrowsChooseAnotherHitAndTwinsAreNotAdded(t *testing.T) {
	d := emptyDesk(t)
	d.Do("Search the food library")
	d.Type("lentils")
	second := d.search.found.Rows()[1]
	d.Press(fyne.KeyDown, fyne.KeyReturn)
	if source := d.bench.Trip().Foods[0].Source; source != "USDA SR28 "+second.ID {
		t.Errorf("added %s, chosen was %s", source, second.ID)
	}
	d.Type("lentils")
	if there := d.search.there(second); there == "" {
		t.Error("the hit does not say that it is in the trip")
	}
	d.Press(fyne.KeyDown, fyne.KeyReturn)
	if n := len(d.bench.Trip().Foods); n != 1 || !strings.Contains(d.Said, "already") {
		t.Errorf("%d foods, said %q", n, d.Said)
	}
	d.Type("zzzzqqqq")
	if !d.search.nothing.Visible() {
		t.Error("a search without hits says nothing")
	}
	d.Press(fyne.KeyReturn, fyne.KeyEscape)
	if d.search.results.Visible() || len(d.bench.Trip().Foods) != 1 {
		t.Error("Escape does not close the search")
	}
}

func TestAddedFoodKeepsItsUnknowns(t *testing.T) {
	d := emptyDesk(t)
	d.Do("Search the food library")
	d.Type("sandwich") // not judged by anybody
	d.Press(fyne.KeyReturn)
	food := &d.bench.Trip().Foods[0]
	if food.Storage.TCS != trip.TCSUnknown || len(unreadOf(food)) != len(trip.DeclaredAllergens()) {
		t.Errorf("%s: cooling %s, unread %v", food.Name, food.Storage.TCS, unreadOf(food))
	}
	row, _ := d.table.Selected()
	if text := ofFood(d.Screen, row, allergenField(units.Metric).text); text != "not known, so not safe" {
		t.Errorf("its allergens are shown as %q", text)
	}
	if text := ofFood(d.Screen, row, labelField().text); text != "not read" {
		t.Errorf("its label is shown as %q", text)
	}
}

// column finds a column of the table by its title.
func (d *desk) column(title string) int {
	d.t.Helper()
	for i, f := range d.fields {
		if f.title == title {
			return i
		}
	}
	d.t.Fatalf("there is no column %q", title)
	return 0
}

// enter types a text into a column of the chosen food.
func (d *desk) enter(title, text string) {
	d.t.Helper()
	row, _ := d.table.Cursor()
	d.table.MoveCursor(row, d.column(title))
	d.Type(text) // takes the place of what was there
	d.Press(fyne.KeyReturn)
}

func TestCellsAreEditedInPlace(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[3].Name
	for _, c := range []struct {
		column, text string
		is           func(f *trip.Food) bool
	}{
		{"Energy", "1674 kJ", func(f *trip.Food) bool { return f.Per100g.Kcal > 400.09 && f.Per100g.Kcal < 400.11 }},
		{"Protein", "12,5", func(f *trip.Food) bool { return f.Per100g.ProteinGrams.Or(0) == 12.5 }},
		{"Softens at", "29", func(f *trip.Food) bool { return f.Storage.SoftensAt.Or(0) == 29 }},
		{"Must be cold", "yes", func(f *trip.Food) bool { return f.Storage.TCS == trip.TCSYes }},
		{"Form", "liq", func(f *trip.Food) bool { return f.Form == trip.Liquid }},
		{"Bulk", "0.55", func(f *trip.Food) bool { return f.Density.Or(0) == 0.55 }},
		{"Keeps", "45", func(f *trip.Food) bool { return f.Storage.ShelfDays.Or(0) == 45 }},
		{"Packages", "400 g 1,99; 1 kg", func(f *trip.Food) bool {
			return len(f.Packages) == 2 && f.Packages[0].Net == 400*units.Gram && f.Packages[0].Price.Or(0) == 199 &&
				f.Packages[1].Net == units.Kilogram && !f.Packages[1].Price.Known()
		}},
	} {
		d.choose(name)
		d.enter(c.column, c.text)
		if !c.is(d.food(name)) {
			t.Errorf("%s, typed %q: %+v; said %q", c.column, c.text, d.food(name), d.Said)
		}
	}
	if undo := d.Document.UndoName(); undo != "change Packages of "+name {
		t.Errorf("undo is called %q", undo)
	}
}

func TestNothingTypedIsNotKnownAndNotNought(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	d.choose(name)
	row, _ := d.table.Cursor()
	d.table.MoveCursor(row, d.column("Fat"))
	d.Press(fyne.KeyDelete)
	food := d.food(name)
	if food.Per100g.FatGrams.Known() {
		t.Errorf("fat is %v", food.Per100g.FatGrams)
	}
	if text := d.fields[d.column("Fat")].text(food); text != "?" {
		t.Errorf("shown as %q", text)
	}
	if err := d.Document.Undo(); err != nil || !d.food(name).Per100g.FatGrams.Known() {
		t.Error("undo does not give it back")
	}
}

func TestWhatMakesNoSenseStaysOut(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	before := *d.food(name)
	for column, text := range map[string]string{"Energy": "5000", "Protein": "a lot", "Packages": "one bag", "Must be cold": "maybe"} {
		d.choose(name)
		d.enter(column, text)
		if d.Said == "" {
			t.Errorf("%s, typed %q: nothing is said", column, text)
		}
		d.Press(fyne.KeyEscape)
	}
	if after := *d.food(name); after.Per100g != before.Per100g || len(after.Packages) != len(before.Packages) || after.Storage != before.Storage {
		t.Errorf("the food changed to %+v", after)
	}
}

func TestFoodsInRecipesStay(t *testing.T) {
	d := pantryDesk(t)
	used := d.bench.Trip().Food(d.bench.Trip().Recipes[0].Ingredients[0].Food).Name
	d.choose(used)
	before := len(d.bench.Trip().Foods)
	d.Do("Remove the food")
	if len(d.bench.Trip().Foods) != before || !strings.Contains(d.Said, d.bench.Trip().Recipes[0].Name) {
		t.Errorf("%d foods, said %q", len(d.bench.Trip().Foods), d.Said)
	}
	d.Do("Search the food library")
	d.Type("anchov")
	d.Press(fyne.KeyReturn)
	if len(d.bench.Trip().Foods) != before+1 {
		t.Fatal("nothing was added")
	}
	d.Do("Remove the food")
	if len(d.bench.Trip().Foods) != before || !strings.HasPrefix(d.Document.UndoName(), "remove ") {
		t.Errorf("a food that nothing needs stays; said %q", d.Said)
	}
}

func TestPasteIsOneStep(t *testing.T) {
	d := pantryDesk(t)
	d.choose(d.bench.Trip().Foods[0].Name)
	d.table.MoveCursor(0, d.column("Energy"))
	d.table.Paste("111\t1\n222\t2\n")
	foods := d.bench.Trip().Foods
	if foods[0].Per100g.Kcal != 111 || foods[1].Per100g.ProteinGrams.Or(0) != 2 {
		t.Errorf("pasted %v and %v; said %q", foods[0].Per100g, foods[1].Per100g, d.Said)
	}
	if err := d.Document.Undo(); err != nil || d.bench.Trip().Foods[1].Per100g.Kcal == 222 {
		t.Error("one undo does not take the paste back")
	}
}

func TestGoToFindsAFoodThatTheFilterHides(t *testing.T) {
	d := pantryDesk(t)
	d.filter.SetText("nothing is called this")
	want := d.bench.Trip().Foods[5].ID
	d.GoTo(findings.Place{Food: want})
	if got, _ := d.table.Selected(); got != want || d.side.food != want {
		t.Errorf("the cursor is on %d, the side shows %d, want %d", got, d.side.food, want)
	}
}

func TestAFoodWithoutANameIsRefused(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	d.choose(name)
	d.table.MoveCursor(0, 0)
	d.Press(fyne.KeyDelete)
	if d.food(name) == nil || d.Said == "" {
		t.Errorf("said %q", d.Said)
	}
}

// Who opens the empty screen and types, searches.
func TestTypingOnTheEmptyScreenSearches(t *testing.T) {
	d := emptyDesk(t)
	d.Screen.Focus()
	d.Type("oats")
	if got := d.search.entry.Text; got != "oats" {
		t.Errorf("the search holds %q", got)
	}
}
