package foods

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
	"sumpter/domain/optional"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// unread makes the first foods of the demo foods whose labels nobody read.
func unread(t *testing.T, d *desk, names ...string) {
	t.Helper()
	if err := d.Document.Edit("forget labels", func(t *trip.Trip) error {
		for i := range t.Foods {
			for _, name := range names {
				if t.Foods[i].Name == name {
					t.Foods[i].Allergens = nil
				}
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
}

func TestLabelIsReadByKeys(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	unread(t, d, name)
	d.choose(name)
	d.Do("Read the label of the food")
	d.Type("cmf") // the first three: gluten, wheat, crustaceans
	food := d.food(name)
	for allergen, want := range map[trip.Allergen]trip.Presence{
		trip.Gluten: trip.Contains, trip.Wheat: trip.MayContain, trip.Crustaceans: trip.Free, trip.Eggs: trip.NotKnown,
	} {
		if got := food.Presence(allergen); got != want {
			t.Errorf("%s is %s, want %s", allergen, got, want)
		}
	}
	if words := d.side.label.words.Text; !strings.Contains(words, "Contains gluten.") || !strings.Contains(words, "Not known, so not safe: eggs") {
		t.Errorf("the side says %q", words)
	}
	d.Type("r")
	if left := unreadOf(d.food(name)); len(left) > 0 || d.food(name).Presence(trip.Gluten) != trip.Contains {
		t.Errorf("after R %v is unknown, gluten is %s", left, d.food(name).Presence(trip.Gluten))
	}
	if undo := d.Document.UndoName(); undo != "read the label of "+name {
		t.Errorf("undo is called %q", undo)
	}
	if err := d.Document.Undo(); err != nil || len(d.food(name).Allergens) != 0 {
		t.Errorf("one undo leaves %v", d.food(name).Allergens)
	}
}

func TestNextLabelGoesToWhoMustWait(t *testing.T) {
	d := pantryDesk(t)
	first, second := d.bench.Trip().Foods[2].Name, d.bench.Trip().Foods[7].Name
	before := d.Waiting()
	unread(t, d, first, second)
	if waiting := d.Waiting(); waiting < before+2 {
		t.Errorf("%d wait, before %d", waiting, before)
	}
	d.Do("Next label to read")
	if got := d.side.current().Name; got != first {
		t.Errorf("the first label is of %q, want %q", got, first)
	}
	d.Type("n")
	if got := d.side.current().Name; got != second {
		t.Errorf("after N the label is of %q, want %q", got, second)
	}
}

// Who has only the mouse reads labels as fast.
func TestALabelIsReadByButtons(t *testing.T) {
	d := pantryDesk(t)
	first, second := d.bench.Trip().Foods[2].Name, d.bench.Trip().Foods[7].Name
	unread(t, d, first, second)
	d.choose(first)
	test.Tap(d.side.label.rest)
	if unknown := unreadOf(d.food(first)); len(unknown) != 0 {
		t.Errorf("still not known: %v", unknown)
	}
	test.Tap(d.side.label.further)
	if got := d.side.current().Name; got != second {
		t.Errorf("the next label is of %q, want %q", got, second)
	}
}

func TestAllergensAreTapped(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	unread(t, d, name)
	d.choose(name)
	grid := d.side.label.allergens
	edges := grid.columns(grid.Size().Width)
	grid.Tapped(&fyne.PointEvent{Position: fyne.NewPos((edges[1]+edges[2])/2, grid.tops(grid.Size().Width)[2]+5)})
	if got := d.food(name).Presence(trip.DeclaredAllergens()[2]); got != trip.MayContain {
		t.Errorf("tapped is %s", got)
	}
	grid.Tapped(&fyne.PointEvent{Position: fyne.NewPos(edges[0]+5, 5)}) // the heads
	if states := d.food(name).Allergens; len(states) != 1 {
		t.Errorf("tapping the heads made %v", states)
	}
}

func TestReaderNamesWhoIsHarmed(t *testing.T) {
	d := pantryDesk(t)
	for _, m := range d.bench.Trip().Crew {
		for _, allergy := range m.Allergies {
			if !strings.Contains(allergicTo(d.bench.Trip(), allergy.Allergen), m.Name) {
				t.Errorf("%s does not name %s", allergy.Allergen, m.Name)
			}
			rows := allergensFor(d.bench.Trip(), &d.bench.Trip().Foods[0])
			if n := count(rows, allergy.Allergen); n != 1 {
				t.Errorf("%s stands %d times in the label", allergy.Allergen, n)
			}
		}
	}
}

// Whom an allergen harms is never cut: it stands in lines below where it has
// no room beside the name.
func TestWhoIsHarmedIsNeverCut(t *testing.T) {
	d := pantryDesk(t)
	d.choose(d.bench.Trip().Foods[0].Name)
	grid := d.side.label.allergens
	long := "Lotte (traces), Marit (traces), Benedikta, Gwendolyn-Margarete (traces)"
	for _, note := range []string{"Marit (traces)", long} {
		grid.show([]readerRow{{name: "gluten", note: note, tone: look.Plum}, {name: "crustaceans", tone: look.Ink}})
		for _, width := range []float32{grid.least(), 440, 900} {
			drawn := test.WidgetRenderer(grid)
			drawn.Layout(fyne.NewSize(width, 200))
			var said []string
			for _, object := range drawn.Objects() {
				text, ok := object.(*canvas.Text)
				if !ok {
					continue
				}
				said = append(said, text.Text)
				if right := text.Position().X + text.MinSize().Width; right > width+0.5 {
					t.Errorf("%q ends at %v of %v", text.Text, right, width)
				}
				if bottom := text.Position().Y + text.MinSize().Height; bottom > drawn.MinSize().Height {
					t.Errorf("%q ends at height %v of %v", text.Text, bottom, drawn.MinSize().Height)
				}
			}
			if all := strings.Join(said, " "); !strings.Contains(all, note) {
				t.Errorf("%v wide it says %q", width, all)
			}
		}
	}
	if tops := grid.tops(grid.least()); tops[1]-tops[0] <= tops[2]-tops[1] {
		t.Errorf("the long note gets no line of its own: %v", tops)
	}
}

func count(list []trip.Allergen, wanted trip.Allergen) (n int) {
	for _, allergen := range list {
		if allergen == wanted {
			n++
		}
	}
	return n
}

func TestDietsAreSetByKeys(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	d.choose(name)
	d.Do("Read the label of the food")
	d.focus(d.side.label.diets)
	d.Press(fyne.KeyHome)
	d.Type("d")
	if got := d.food(name).Suitability(trip.Vegetarian); got != trip.DoesNotSuit {
		t.Errorf("vegetarian is %s", got)
	}
}

func TestPackagesAreAddedAndPriced(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	d.choose(name)
	had := len(d.food(name).Packages)
	d.Do("Packages of the food")
	d.Press(fyne.KeyInsert)
	d.Type("250 g")
	d.Press(fyne.KeyTab)
	d.Type("1,49")
	d.Press(fyne.KeyTab)
	d.Type("Village shop")
	d.Press(fyne.KeyTab)
	d.Type("6")
	d.Press(fyne.KeyReturn)
	packages := d.food(name).Packages
	want := trip.Package{Net: 250 * units.Gram, Price: optional.Of(units.Money(149)), Shop: "Village shop", InStock: optional.Of(6)}
	if len(packages) != had+1 || packages[had] != want {
		t.Fatalf("packages are %+v; said %q", packages, d.Said)
	}
	d.side.packages.table.Delete()
	if left := len(d.food(name).Packages); left != had {
		t.Errorf("%d packages are left, want %d", left, had)
	}
	d.side.packages.atHome.Focus()
	d.Type("300")
	d.Press(fyne.KeyReturn)
	if got := d.food(name).AtHome; got != 300*units.Gram {
		t.Errorf("at home are %s", got)
	}
}

func TestFactsOfKeepingAreEdited(t *testing.T) {
	d := pantryDesk(t)
	name := d.bench.Trip().Foods[0].Name
	d.choose(name)
	d.Do("How the food keeps")
	d.side.keeps.table.MoveCursor(1, 1)
	d.Type("yes")
	d.Press(fyne.KeyReturn)
	if !d.food(name).Storage.TCSWhenOpen {
		t.Errorf("typed yes: %+v; said %q", d.food(name).Storage, d.Said)
	}
	if text := d.side.keeps.basis.Content; !strings.Contains(text, d.food(name).Storage.Basis) {
		t.Errorf("the basis is not shown: %q", text)
	}
}

func TestUsesAreThoseOfThePlan(t *testing.T) {
	d := demoDesk(t)
	p := d.bench.Plan()
	fate := p.Spoilage.Fates[0]
	d.choose(p.Trip.Food(fate.Food).Name)
	d.Do("Where the food is used")
	uses := d.side.used.uses
	slots, grams := 0, units.Mass(0)
	for _, f := range p.Spoilage.Fates {
		if f.Food == fate.Food {
			slots++
		}
	}
	for _, b := range p.Portions.Batches {
		for _, amount := range b.Totals {
			if amount.Food == fate.Food {
				grams += amount.Mass
			}
		}
	}
	for _, one := range uses {
		grams -= one.mass
	}
	if len(uses) != slots || grams != 0 {
		t.Errorf("%d slots shown of %d, %s unaccounted for", len(uses), slots, grams)
	}
	d.Press(fyne.KeyReturn)
	if len(d.Places) != 1 || d.Places[0].Screen != "menu" || d.Places[0].Day != fate.Day {
		t.Errorf("Return leads to %+v", d.Places)
	}
}

func TestTimeLeftShowsWhatPressesAndLeadsToIt(t *testing.T) {
	d := demoDesk(t)
	d.Do("Time left for each food")
	p := d.bench.Plan()
	spans := d.left.spans(p)
	if len(spans) != len(spoilage.EatFirst(p.Trip, p.Spoilage)) || len(spans) == 0 {
		t.Fatalf("%d bars", len(spans))
	}
	for _, span := range spans {
		if !(span.From < span.To) || span.Word == "" {
			t.Errorf("%+v", span)
		}
	}
	spans[0].Tapped()
	if got := d.side.current(); got == nil || got.Name != spans[0].Label || d.left.content.Visible() {
		t.Errorf("tapping %q shows %v", spans[0].Label, got)
	}
}

// TestFoodFromALabel enters an EU label in the form, then its allergens.
func TestFoodFromALabel(t *testing.T) {
	d := emptyDesk(t)
	d.Do("Food from a label")
	d.Type("Oat bar")
	f := d.side.form
	for entry, text := range map[interface{ SetText(string) }]string{
		f.energy: "1900 kJ", f.fat: "20", f.carbohydrate: "55", f.sugar: "25", f.fibre: "6", f.protein: "9", f.salt: "0.5", f.packages: "40 g 1.20",
	} {
		entry.SetText(text)
	}
	// EU rule: 9*20 + 4*55 + 2*6 + 4*9 = 448 kcal against 454.
	if !strings.Contains(f.check.Text, "448") || !strings.Contains(f.check.Text, "agree") {
		t.Errorf("the check says %q", f.check.Text)
	}
	f.energy.SetText("300")
	if !strings.Contains(f.check.Text, "look at the label again") {
		t.Errorf("300 kcal: the check says %q", f.check.Text)
	}
	f.energy.SetText("1900 kJ")
	f.add()
	food := d.food("Oat bar")
	if sodium := food.Per100g.SodiumMilligrams.Or(0); sodium != 200 {
		t.Errorf("0.5 g of salt are %v mg of sodium, want 200", sodium)
	}
	if food.Storage.TCS != trip.TCSUnknown || food.Per100g.CarbConvention != trip.AvailableCarbohydrate || len(food.Packages) != 1 {
		t.Errorf("%+v", food)
	}
	if d.Keyboard() != fyne.Focusable(d.side.label.allergens) {
		t.Error("the form does not go on to the allergens")
	}
	if undo := d.Document.UndoName(); undo != "add oat bar" {
		t.Errorf("undo is called %q", undo)
	}
}

func TestLabelPerServing(t *testing.T) {
	d := emptyDesk(t)
	d.Do("Food from a label")
	f := d.side.form
	f.kind.SetSelectedIndex(fibreWithin)
	f.per.SetText("50")
	f.energy.SetText("200")
	f.protein.SetText("5")
	f.fat.SetText("8")
	f.carbohydrate.SetText("27")
	f.salt.SetText("150")
	n, err := f.nutrients()
	if err != nil || n.Kcal != 400 || n.ProteinGrams.Or(0) != 10 || n.SodiumMilligrams.Or(0) != 300 || n.CarbConvention != trip.TotalCarbohydrate || n.FibreGrams.Known() {
		t.Errorf("%+v, %v", n, err)
	}
	f.add()
	if len(d.bench.Trip().Foods) != 0 || d.Said == "" {
		t.Error("a food without a name was added")
	}
	f.side.closeForm()
	if f.content.Visible() {
		t.Error("the form stays")
	}
}

func TestTabsShowTheChosenFood(t *testing.T) {
	d := pantryDesk(t)
	for _, action := range []string{"Packages of the food", "How the food keeps", "Where the food is used", "Read the label of the food"} {
		d.Do(action)
		d.choose(d.bench.Trip().Foods[4].Name)
		if d.side.name.Content != d.bench.Trip().Foods[4].Name {
			t.Errorf("after %q the side shows %q", action, d.side.name.Content)
		}

	}
}
