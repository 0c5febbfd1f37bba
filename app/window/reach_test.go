package window

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// visible visits every object that is seen within another, itself included.
func visible(object fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	if !object.Visible() {
		return
	}
	visit(object)
	switch inner := object.(type) {
	case *fyne.Container:
		for _, o := range inner.Objects {
			visible(o, visit)
		}
	case fyne.Widget:
		for _, o := range test.WidgetRenderer(inner).Objects() {
			visible(o, visit)
		}
	}
}

// otherwise says, for each kind of object that answers the mouse and cannot
// have the keyboard, by which keys the same is done.
var otherwise = map[string]string{
	"*grid.header":             "the action that sorts by the column of the cursor",
	"*container.divider":       "the actions that give more or less room",
	"*widget.clip":             "a part of the toolkit's table, which has the keyboard",
	"*widget.entryContent":     "a part of the toolkit's field, which has the keyboard",
	"*widget.scrollBar":        "the keys of what scrolls",
	"*widget.scrollBarArea":    "the keys of what scrolls",
	"*widget.listItem":         "the keys of the list",
	"*loads.row":               "the keys of the list of a pack",
	"*charts.NeedChart":        "the actions of Crew for the day, the cursor of Menu",
	"*charts.ProfileChart":     "the table of the days above it",
	"*charts.TemperatureChart": "the table of the days above it",
	"*charts.LineChart":        "the keys of the board above it",
	"*charts.PackChart":        "the keys of its board",
	"*charts.PackAxis":         "nothing: it is not tapped",
	"*charts.Legend":           "nothing: it is not tapped",
	"*charts.WayChart":         "the table of the points below it",
	"*charts.ChoiceChart":      "the table of the choices beside it",
}

// answersMouse tells whether something is done with the mouse on an object.
func answersMouse(object fyne.CanvasObject) bool {
	switch object.(type) {
	case fyne.Tappable, fyne.SecondaryTappable, fyne.DoubleTappable, fyne.Draggable:
		return true
	}
	return false
}

func TestWhatAnswersTheMouseAnswersTheKeyboard(t *testing.T) {
	w, _ := openDemo(t)
	w.window.Resize(fyne.NewSize(1280, 800))
	for i, screen := range w.screens {
		w.showScreen(i)
		var tabs *bench.Tabs
		visible(screen.Content(), func(object fyne.CanvasObject) {
			if found, ok := object.(*bench.Tabs); ok {
				tabs = found
			}
		})
		checkReach(t, w, screen.Name(), screen.Content())
		for n := 1; tabs != nil; n++ {
			tabs.SelectIndex(n)
			if tabs.SelectedIndex() != n {
				break
			}
			checkReach(t, w, screen.Name()+", "+tabs.Selected().Text, screen.Content())
		}
	}
}

// checkReach looks at all that is seen and follows the Tab key around it.
func checkReach(t *testing.T, w *Workbench, place string, content fyne.CanvasObject) {
	t.Helper()
	var reachable []fyne.Focusable
	visible(content, func(object fyne.CanvasObject) {
		kind := fmt.Sprintf("%T", object)
		focusable, ok := object.(fyne.Focusable)
		if answersMouse(object) && !ok && otherwise[kind] == "" {
			t.Errorf("%s: a %s answers the mouse and not the keyboard; say in otherwise which keys do the same", place, kind)
		}
		if disabled, can := object.(fyne.Disableable); ok && (!can || !disabled.Disabled()) {
			reachable = append(reachable, focusable)
		}
	})
	if len(reachable) == 0 {
		t.Errorf("%s: nothing can have the keyboard", place)
	}
	w.window.Canvas().Unfocus()
	var reached []fyne.Focusable
	for range reachable {
		w.window.Canvas().FocusNext()
		focused := w.window.Canvas().Focused()
		if keeps, ok := focused.(fyne.Tabbable); ok && keeps.AcceptsTab() {
			t.Errorf("%s: Tab comes into a %T and does not leave it", place, focused)
		}
		reached = append(reached, focused)
	}
	for _, one := range reachable {
		if !slices.Contains(reached, one) {
			t.Errorf("%s: Tab does not come to a %T", place, one)
		}
	}
}

// The keyboard never stays with a screen that was left, however empty the next
// one is.
func TestTheKeyboardGoesWithTheScreen(t *testing.T) {
	example := demo.Trip()
	empty := trip.New("Nothing yet", example.Start)
	for _, on := range []*trip.Trip{&example, empty} {
		w := openOn(t, on)
		for from := range w.screens {
			for to, screen := range w.screens {
				w.showScreen(from)
				w.showScreen(to)
				focused, ok := w.window.Canvas().Focused().(fyne.CanvasObject)
				if !ok {
					if on == empty {
						continue // there is nothing to type into yet
					}
					t.Errorf("%s after %s: nothing has the keyboard", screen.Name(), w.screens[from].Name())
					continue
				}
				here := false
				visible(screen.Content(), func(object fyne.CanvasObject) { here = here || object == focused })
				if !here {
					t.Errorf("%s after %s: the keyboard is with a %T elsewhere", screen.Name(), w.screens[from].Name(), focused)
				}
			}
		}
	}
}

func TestDividersMoveByActions(t *testing.T) {
	w, _ := openDemo(t)
	w.goTo(document.Place{Screen: "crew"})
	split := divider(w.screens[w.shown].Content(), true)
	before := split.Offset
	actionNamed(w, "More room at the side")()
	if split.Offset >= before {
		t.Errorf("the side has %v of the screen, had %v", 1-split.Offset, 1-before)
	}
	actionNamed(w, "Less room at the side")()
	if split.Offset < before-1e-9 || split.Offset > before+1e-9 {
		t.Errorf("the divider is at %v, was at %v", split.Offset, before)
	}
	actionNamed(w, "More room below")()
	if w.message.Content == "" {
		t.Error("nothing is said where there is nothing below")
	}
	w.goTo(document.Place{Screen: "route"})
	below := divider(w.screens[w.shown].Content(), false)
	before = below.Offset
	actionNamed(w, "More room below")()
	if below.Offset >= before || below.Horizontal {
		t.Errorf("the divider is at %v, was at %v", below.Offset, before)
	}
	for range 40 {
		actionNamed(w, "Less room below")()
	}
	if below.Offset != 1 {
		t.Errorf("the divider went to %v", below.Offset)
	}
}

func TestTheKeyboardSortsATable(t *testing.T) {
	w, _ := openDemo(t)
	sort := actionNamed(w, "Sort by the column")
	w.window.Canvas().Unfocus()
	sort()
	if w.message.Content == "" {
		t.Error("without a table nothing is said")
	}
	w.window.Canvas().FocusNext()
	sort()
	table, ok := w.window.Canvas().Focused().(fyne.Shortcutable)
	if !ok {
		t.Fatalf("Tab leads to %T", w.window.Canvas().Focused())
	}
	table.TypedShortcut(&fyne.ShortcutCopy{Clipboard: w.app.Clipboard()})
	lines := strings.Split(w.app.Clipboard().Content(), "\n")
	if len(lines) < 3 || !strings.HasPrefix(lines[1], "Anja") || !strings.HasPrefix(lines[2], "Farid") {
		t.Errorf("sorted by name, the crew is %q", lines)
	}
}

// Who comes to a screen can go on by key at once: Space ticks a bag off.
func TestAScreenThatIsShownHasTheKeyboard(t *testing.T) {
	w, _ := openDemo(t)
	for i, screen := range w.screens {
		w.shown = -1
		w.window.Canvas().Unfocus()
		w.showScreen(i)
		if w.window.Canvas().Focused() == nil {
			t.Errorf("%s: nothing has the keyboard", screen.Name())
		}
		if screen.Name() != "packing" {
			continue
		}
		w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
		if packed := len(w.document.Trip().Progress.Packed); packed != 1 {
			t.Errorf("Space ticked off %d bags", packed)
		}
	}
}
