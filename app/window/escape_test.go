package window

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/screens/bench"
	"sumpter/domain/compare"
)

// Escape leaves each dialog from every place in it that Tab can reach.
func TestEscapeLeavesEachDialogFromEverywhere(t *testing.T) {
	w, _ := openDemo(t)
	canvas := w.window.Canvas()
	rename(t, w, "Autumn walk") // now there is an earlier copy
	other := demo.Trip()
	other.Crew[0].Name = "Somebody Else"
	differing, err := compare.Between(w.document.Trip(), &other)
	if err != nil || len(differing) == 0 {
		t.Fatal(err)
	}
	for name, show := range map[string]func(){
		"cautions": w.showCautions, "save a copy": w.saveCopy, "actions": w.findAction, "earlier copies": w.earlierCopies,
		"differences": func() { w.showDifferences(&other, differing, "another copy") },
		"not saved":   func() { w.offered = false; w.offerElsewhere(errors.New("no room on the drive")) },
		"close":       func() { w.askToCloseAnyway("no room") },
	} {
		var places int
		for steps := 0; ; steps++ {
			show()
			if canvas.Overlays().Top() == nil {
				t.Fatalf("%s: no dialog is shown", name)
			}
			var reached []fyne.Focusable
			for range steps {
				canvas.FocusNext()
				reached = append(reached, canvas.Focused())
			}
			event := &fyne.KeyEvent{Name: fyne.KeyEscape}
			if on := canvas.Focused(); on != nil {
				on.TypedKey(event)
			} else {
				canvas.OnTypedKey()(event)
			}
			if canvas.Overlays().Top() != nil {
				t.Errorf("%s: from %T, the place %d, Escape leaves it open", name, canvas.Focused(), steps)
				canvas.Overlays().Top().Hide()
			}
			if steps > 0 && (reached[steps-1] == nil || slices.Contains(reached[:steps-1], reached[steps-1])) || steps > 60 {
				places = steps
				break // all round
			}
		}
		if places < 2 {
			t.Errorf("%s: Tab reached %d places", name, places)
		}
	}
}

// A drive that does not answer holds nobody in the window.
func TestWhoQuitsTwiceIsAsked(t *testing.T) {
	w, _ := openDemo(t)
	w.leaving = true // the last edit is on its way
	w.quit()
	if said := saidInDialog(t, w); !strings.Contains(said, "still being saved") {
		t.Errorf("said %q", said)
	}
	pressInDialog(t, w, "Stay")
	if w.window.Canvas().Overlays().Top() != nil || w.document == nil {
		t.Error("the window did not stay as it was")
	}
	w.leaving = false
}

// The space that presses a button is typed into the field that the button
// brought up: what is proposed there stays, until a letter is typed.
func TestTheSpaceThatOpenedADialogIsNotTyped(t *testing.T) {
	test.NewTempApp(t)
	e := bench.NewDialogEntry()
	w := test.NewTempWindow(t, e)
	e.SetText("demo.trip")
	w.Canvas().Focus(e)
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
	e.TypedRune(' ')
	if e.Text != "demo.trip" {
		t.Errorf("the space took the proposed name away: %q", e.Text)
	}
	for _, letter := range "a b" {
		e.TypedRune(letter)
	}
	if e.Text != "a b" {
		t.Errorf("typed a b, there is %q", e.Text)
	}
}
