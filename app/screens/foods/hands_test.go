package foods

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/charts"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// fact types a value into the tab of keeping, by the title of the fact.
func (d *desk) fact(title, text string) {
	d.t.Helper()
	d.side.tab(tabKeeps)
	for i, f := range d.side.keeps.fields {
		if f.title == title {
			d.side.keeps.table.MoveCursor(i, 1)
			d.side.keeps.table.Focus()
			d.Press(fyne.KeyReturn)
			d.Overwrite(text)
			d.Press(fyne.KeyReturn)
			return
		}
	}
	d.t.Fatalf("there is no fact %q", title)
}

func TestAgeingAndRefuseAreTyped(t *testing.T) {
	d := pantryDesk(t)
	d.choose("Couscous")
	d.fact("Ages faster for each 10 °C", "2.5")
	d.fact("Peel, shell or stone", "12 %")
	if food := d.food("Couscous"); food.Storage.Q10 != 2.5 || food.RefuseShare != 0.12 {
		t.Errorf("it ages %v times faster and has %v of peel; said %q", food.Storage.Q10, food.RefuseShare, d.Said)
	}
	d.WantUndo("change Peel, shell or stone of Couscous")
}

// What is reckoned from other facts takes nothing, and says so.
func TestWhatFollowsIsNotTyped(t *testing.T) {
	d := pantryDesk(t)
	d.choose("Couscous")
	before := d.Document.Trip()
	d.fact("So it is reckoned as", "needing cooling")
	if d.Document.Trip() != before || d.Said == "" {
		t.Errorf("it was taken; said %q", d.Said)
	}
}

func TestTheLabelIsWalkedWithTheArrows(t *testing.T) {
	d := pantryDesk(t)
	d.choose("Couscous")
	d.side.tab(tabLabel)
	r := d.side.label.allergens
	for _, c := range []struct {
		key  fyne.KeyName
		want int
	}{
		{fyne.KeyEnd, len(r.rows) - 1}, {fyne.KeyDown, len(r.rows) - 1}, {fyne.KeyUp, len(r.rows) - 2}, {fyne.KeyHome, 0}, {fyne.KeyUp, 0}, {fyne.KeyDown, 1},
	} {
		d.Press(c.key)
		if r.cursor != c.want {
			t.Errorf("%s leads to row %d, want %d", c.key, r.cursor, c.want)
		}
	}
	allergen := trip.DeclaredAllergens()[1]
	d.Type("f")
	d.Press(fyne.KeyHome, fyne.KeyDown, fyne.KeyLeft)
	if got := d.food("Couscous").Presence(allergen); got != trip.MayContain {
		t.Errorf("left of free, %s is %s", allergen, got)
	}
	d.Press(fyne.KeyLeft, fyne.KeyLeft)
	if got := d.food("Couscous").Presence(allergen); got != trip.Contains {
		t.Errorf("at the left end, %s is %s", allergen, got)
	}
	for range 5 {
		d.Press(fyne.KeyRight)
	}
	if got := d.food("Couscous").Presence(allergen); got != trip.NotKnown {
		t.Errorf("at the right end, %s is %s", allergen, got)
	}
}

// Only what is shown to be safe looks so.
func TestOnlySafeLooksSafe(t *testing.T) {
	for verdict, want := range map[spoilage.Verdict]charts.Lasting{
		spoilage.Safe: charts.Lasts, spoilage.NotSafe: charts.RunsOut, spoilage.NotKnown: charts.LastsUnknown, "": charts.LastsUnknown, "something new": charts.LastsUnknown,
	} {
		if got := lasting(verdict); got != want {
			t.Errorf("%q looks like %d, want %d", lang.L(string(verdict)), got, want)
		}
	}
}
