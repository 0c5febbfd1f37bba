package window

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"sumpter/app/backups"
	"sumpter/app/screens/bench"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func shelfFor(t testing.TB) backups.Shelf {
	return backups.Shelf{Folder: t.TempDir(), Now: func() time.Time { return time.Date(2027, 5, 3, 20, 0, 0, 0, time.Local) }}
}

// dialogOf gives what the topmost dialog holds.
func dialogOf(t *testing.T, w *Workbench) fyne.CanvasObject {
	t.Helper()
	top := w.window.Canvas().Overlays().Top()
	if top == nil {
		t.Fatal("no dialog is shown")
	}
	return top
}

// pieces lists every object of a kind below another.
func pieces[T fyne.CanvasObject](root fyne.CanvasObject) []T {
	var found []T
	var visit func(object fyne.CanvasObject)
	visit = func(object fyne.CanvasObject) {
		if piece, ok := object.(T); ok {
			found = append(found, piece)
		}
		switch o := object.(type) {
		case *fyne.Container:
			for _, inner := range o.Objects {
				visit(inner)
			}
		case *container.Scroll:
			visit(o.Content)
		case fyne.Widget:
			for _, inner := range test.WidgetRenderer(o).Objects() {
				visit(inner)
			}
		}
	}
	visit(root)
	return found
}

func pressInDialog(t *testing.T, w *Workbench, text string) {
	t.Helper()
	for _, button := range pieces[*bench.DialogButton](dialogOf(t, w)) {
		if button.Text == text {
			test.Tap(button)
			return
		}
	}
	t.Fatalf("the dialog has no button %q", text)
}

func rename(t *testing.T, w *Workbench, title string) {
	t.Helper()
	if err := w.document.Edit("rename the trip", func(t *trip.Trip) error { t.Title = title; return nil }); err != nil {
		t.Fatal(err)
	}
}

func TestYesterdayCanBeTakenBack(t *testing.T) {
	w, _ := openDemo(t)
	before := w.document.Trip()
	rename(t, w, "Autumn walk")
	if err := w.document.Edit("take out a member", func(t *trip.Trip) error {
		t.Crew[0].BodyMass += 2 * units.Kilogram
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	actionNamed(w, "Earlier copies")()
	list := pieces[*bench.DialogList](dialogOf(t, w))[0]
	if list.Length() != 1 {
		t.Fatalf("%d copies", list.Length())
	}
	list.Select(0)
	differences := pieces[*bench.DialogList](dialogOf(t, w))[0]
	if differences.Length() != 2 {
		t.Fatalf("%d differences, want the title and one body", differences.Length())
	}
	pressInDialog(t, w, "Take what is ticked") // nothing is ticked yet
	if w.document.Trip().Title != "Autumn walk" {
		t.Error("what was not ticked was taken")
	}
	differences.Select(0)
	pressInDialog(t, w, "Take what is ticked")
	now := w.document.Trip()
	if now.Title != before.Title || now.Crew[0].BodyMass == before.Crew[0].BodyMass {
		t.Errorf("title %q, body %v", now.Title, now.Crew[0].BodyMass)
	}
	actionNamed(w, "Undo: take one difference")()
	if w.document.Trip().Title != "Autumn walk" {
		t.Error("taking cannot be undone")
	}
}

// The list of copies has the keyboard, and so has the list of what differs.
func TestEscapeLeavesEarlierCopies(t *testing.T) {
	w, _ := openDemo(t)
	rename(t, w, "Autumn walk")
	escape := func(dialog string) {
		t.Helper()
		focused := w.window.Canvas().Focused()
		if focused == nil {
			t.Fatalf("%s has not the keyboard", dialog)
		}
		focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if top := w.window.Canvas().Overlays().Top(); top != nil {
			t.Errorf("%s stays open", dialog)
		}
	}
	actionNamed(w, "Earlier copies")()
	escape("the list of copies")
	actionNamed(w, "Earlier copies")()
	pieces[*bench.DialogList](dialogOf(t, w))[0].Select(0)
	escape("the list of what differs")
}

func TestAFriendsCopyIsCompared(t *testing.T) {
	w, path := openDemo(t)
	theirs := filepath.Join(filepath.Dir(path), "friend.trip")
	w.document.SaveCopy(theirs, func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	})
	w.compareWith(theirs, "friend.trip")
	if !strings.Contains(w.message.Content, "holds the same") {
		t.Errorf("said %q", w.message.Content)
	}
	rename(t, w, "Mine")
	before, err := os.ReadFile(theirs)
	if err != nil {
		t.Fatal(err)
	}
	w.compareWith(theirs, "friend.trip")
	pressInDialog(t, w, "Tick all")
	pressInDialog(t, w, "Take what is ticked")
	if w.document.Trip().Title == "Mine" {
		t.Error("the friend's title was not taken")
	}
	if after, err := os.ReadFile(theirs); err != nil || !slices.Equal(after, before) {
		t.Errorf("the friend's copy was changed, %v", err)
	}
	w.compareWith(filepath.Join(filepath.Dir(path), "nothing.trip"), "nothing.trip")
	if !strings.Contains(w.message.Content, "nothing.trip") {
		t.Errorf("said %q", w.message.Content)
	}
}

// A file that vanishes under the window costs nothing: the trip goes on
// elsewhere, with everything that can be undone.
func TestSavingGoesOnElsewhere(t *testing.T) {
	w, path := openDemo(t)
	rename(t, w, "First")
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	rename(t, w, "Second")
	if !strings.HasPrefix(w.message.Content, "Not saved:") {
		t.Errorf("said %q", w.message.Content)
	}
	pressInDialog(t, w, "Save elsewhere…")
	entries := pieces[*bench.DialogEntry](dialogOf(t, w))
	folder := t.TempDir()
	entries[0].SetText(folder)
	entries[1].SetText("rescued")
	pressInDialog(t, w, "Save")
	rename(t, w, "Third")
	actionNamed(w, "Undo: rename the trip")()
	if got := w.document.Trip().Title; got != "Second" {
		t.Errorf("undone to %q", got)
	}
	if !left(w) {
		t.Fatal("the trip could not be closed")
	}
	file, err := tripfile.OpenReadOnly(filepath.Join(folder, "rescued.trip"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if kept, err := file.Read(t.Context()); err != nil || kept.Title != "Second" {
		t.Errorf("on disk %q, %v", kept.Title, err)
	}
	if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the old place: %v", err)
	}
}

func TestTheCopyToHandOnTellsNothingOfBodies(t *testing.T) {
	w, _ := openDemo(t)
	actionNamed(w, "Save a copy without personal data")()
	entries := pieces[*bench.DialogEntry](dialogOf(t, w))
	folder := t.TempDir()
	entries[0].SetText(folder)
	entries[1].SetText("bare")
	pressInDialog(t, w, "Save")
	content, err := os.ReadFile(filepath.Join(folder, "bare.trip"))
	if err != nil {
		t.Fatal(err)
	}
	for _, member := range w.document.Trip().Crew {
		if strings.Contains(string(content), member.Name) {
			t.Errorf("the file holds the name %q", member.Name)
		}
	}
}

// Recipes that a spreadsheet copied are one edit too, a row for each ingredient.
func TestCopiedRecipesAreAdded(t *testing.T) {
	w, _ := openDemo(t)
	before := len(w.document.Trip().Recipes)
	fyne.CurrentApp().Clipboard().SetContent("Name\tMeals\tIngredient\tAmount [g]\tWater [mL]\tMinutes\nHut stew\tdinner\t" +
		w.document.Trip().Foods[0].Name + "\t80\t350\t12\n\t\t" + w.document.Trip().Foods[1].Name + "\t20\n")
	actionNamed(w, "Add the table that was copied from a spreadsheet")()
	recipes := w.document.Trip().Recipes
	if len(recipes) != before+1 || recipes[before].Name != "Hut stew" || len(recipes[before].Ingredients) != 2 {
		t.Fatalf("%d recipes, said %q", len(recipes)-before, w.message.Content)
	}
	if err := w.document.Undo(); err != nil || len(w.document.Trip().Recipes) != before {
		t.Errorf("adding cannot be undone: %v", err)
	}
}

func TestATableIsAddedInOneEdit(t *testing.T) {
	w, path := openDemo(t)
	before := len(w.document.Trip().Gear)
	table := filepath.Join(filepath.Dir(path), "gear.csv")
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(table, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("Name;Kind;Mass [g]\nKite;other;480,5\nSaw;other;210\n")
	w.addTablePath(table)
	if gear := w.document.Trip().Gear; len(gear) != before+2 || gear[before].Name != "Kite" {
		t.Fatalf("%d pieces of gear, said %q", len(gear), w.message.Content)
	}
	actionNamed(w, "Undo: add 2 lines of gear.csv")()
	if len(w.document.Trip().Gear) != before {
		t.Error("adding cannot be undone")
	}
	write("Name;Kind;Mass [g]\nKite;other;heavy\n")
	w.addTablePath(table)
	if len(w.document.Trip().Gear) != before {
		t.Error("a faulty table was added")
	}
	pressInDialog(t, w, "Close")
}
