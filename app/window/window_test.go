package window

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/screens/bench"
	"sumpter/app/screens/printing"
	"sumpter/app/tripfile"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// openDemo opens the demo trip in a window whose work runs in one thread.
// left closes the open trip where all work runs at once, and tells whether it
// could.
func left(w *Workbench) (closed bool) {
	w.leave(func() { closed = true }, func() {})
	return closed
}

func openDemo(t *testing.T) (*Workbench, string) {
	t.Helper()
	w := New(test.NewTempApp(t), document.Inline{}, shelfFor(t))
	path := filepath.Join(t.TempDir(), "demo.trip")
	example := demo.Trip()
	file, err := tripfile.Create(path, &example)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	w.OpenPath(path)
	if w.document == nil {
		t.Fatalf("the demo trip did not open: %s", w.message.Content)
	}
	t.Cleanup(func() { left(w) })
	return w, path
}

func actionNamed(w *Workbench, name string) func() {
	for _, group := range w.groups() {
		for _, action := range group.actions {
			if action != nil && strings.HasPrefix(action.Name, name) {
				return action.Do
			}
		}
	}
	return nil
}

func TestEditsReachTheFileAndCanBeTakenBack(t *testing.T) {
	w, path := openDemo(t)
	before := w.document.Trip().Title
	if err := w.document.Edit("rename the trip", func(t *trip.Trip) error { t.Title = "Autumn walk"; return nil }); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(w.window.Title(), "Autumn walk") {
		t.Errorf("the window is called %q", w.window.Title())
	}
	actionNamed(w, "Undo: rename the trip")()
	if got := w.document.Trip().Title; got != before {
		t.Errorf("after undo the trip is called %q", got)
	}
	actionNamed(w, "Redo: rename the trip")()
	if !left(w) {
		t.Fatal("the trip could not be closed")
	}
	file, err := tripfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	kept, err := file.Read(t.Context())
	if err != nil || kept.Title != "Autumn walk" {
		t.Errorf("on disk: %q, %v", kept.Title, err)
	}
}

func TestTheStripSaysWhatAnEditChanged(t *testing.T) {
	w, _ := openDemo(t)
	shown := func() string {
		var words []string
		for _, f := range w.strip.figures {
			words = append(words, f.name.Content+" "+f.value.Content+" "+f.before.Content)
		}
		return strings.Join(words, "; ")
	}
	if text := shown(); !strings.Contains(text, "food a person and day") || strings.Contains(text, "was") {
		t.Errorf("before any edit: %s", text)
	}
	if err := w.document.Edit("x", func(t *trip.Trip) error {
		for i := range t.Crew {
			t.Crew[i].OwnKit += 2 * units.Kilogram
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if text := shown(); !strings.Contains(text, "was") {
		t.Errorf("after two more kilograms for all: %s", text)
	}
}

func TestFindingsGoToTheirPlace(t *testing.T) {
	w, _ := openDemo(t)
	w.toggleFindings()
	if len(w.findings.shown) == 0 {
		t.Fatal("the demo has findings, none is shown")
	}
	for i, finding := range w.findings.shown {
		if finding.Stage == findings.Needs && finding.Place.Member != 0 {
			w.findings.list.Select(i)
			if name := w.screens[w.shown].Name(); name != "crew" {
				t.Errorf("the finding %q leads to %s", finding.What, name)
			}
			return
		}
	}
	t.Fatal("no finding of the needs to follow")
}

// A box that does not come is told beside every screen, and leads to the day
// from which the rest is ahead.
func TestFindingsTellOfTheRestOfTheWay(t *testing.T) {
	w, _ := openDemo(t)
	w.toggleFindings()
	onTrail := slices.IndexFunc(w.screens, func(s bench.Screen) bool { return s.Name() == "trail" })
	if n := w.screens[onTrail].Waiting(); n != 0 {
		t.Fatalf("nothing has happened, %d things wait on the trail", n)
	}
	if err := w.document.Edit("x", func(t *trip.Trip) error {
		t.Progress.MissingBoxes = []trip.PointID{t.Points[0].ID}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	first := w.findings.shown[0]
	if waiting := w.navigation.entries[onTrail].waiting; waiting == 0 || first.morning == 0 || first.Severity != findings.MustFix {
		t.Fatalf("a box is missing: %d things wait on the trail, the first finding of day %d: %v", waiting, first.morning, first.What)
	}
	w.findings.list.Select(0)
	if w.shown != onTrail {
		t.Errorf("%q leads to %s", first.What, w.screens[w.shown].Name())
	}
	if err := w.document.Undo(); err != nil {
		t.Fatal(err)
	}
	if waiting := w.navigation.entries[onTrail].waiting; waiting != 0 || w.findings.shown[0].morning != 0 {
		t.Errorf("the box came: %d things still wait on the trail", waiting)
	}
}

func TestActionsAreFoundByTyping(t *testing.T) {
	w, _ := openDemo(t)
	f := &finder{}
	for _, group := range w.groups() {
		for _, action := range group.actions {
			if action != nil {
				f.all = append(f.all, action)
			}
		}
	}
	w.findAction()
	entry, ok := w.window.Canvas().Focused().(*searchEntry)
	if !ok {
		t.Fatalf("the keyboard is at %T", w.window.Canvas().Focused())
	}
	if w.findAction(); len(w.window.Canvas().Overlays().List()) != 1 || w.window.Canvas().Focused() != fyne.Focusable(entry) {
		t.Errorf("asked for again, the list stands %d times", len(w.window.Canvas().Overlays().List()))
	}
	entry.SetText("zzz")
	if !w.finder.none.Visible() {
		t.Error("an empty list says nothing")
	}
	entry.SetText("")
	for _, letter := range "larg tex" {
		entry.TypedRune(letter)
	}
	before := w.app.Preferences().FloatWithFallback(prefScale, 1)
	entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if w.app.Preferences().FloatWithFallback(prefScale, 1) <= before {
		t.Error("typing and Return did not make the text larger")
	}
}

func TestEveryActionHasItsOwnKey(t *testing.T) {
	w, _ := openDemo(t)
	keys := map[string]string{}
	for _, group := range w.groups() {
		for _, action := range group.actions {
			if action == nil || action.Shortcut == nil {
				continue
			}
			key := keyWords(action.Shortcut)
			if other, taken := keys[key]; taken {
				t.Errorf("%s is the key of %q and of %q", key, other, action.Name)
			}
			keys[key] = action.Name
		}
	}
	if len(keys) < 10 {
		t.Errorf("only %d keys", len(keys))
	}
}

// printPlace is the place of the window that prints and saves.
func printPlace(t *testing.T, w *Workbench) *printing.Screen {
	t.Helper()
	for _, screen := range w.screens {
		if found, ok := screen.(*printing.Screen); ok {
			return found
		}
	}
	t.Fatal("the window has no place to print")
	return nil
}

func TestExportWritesANewFolder(t *testing.T) {
	w, _ := openDemo(t)
	folder := t.TempDir()
	printPlace(t, w).SaveTo(folder)
	printPlace(t, w).SaveTo(folder)
	for _, name := range []string{"demo papers/workbook.xlsx", "demo papers/calendar.ics", "demo papers 2/plan.json"} {
		if found, _ := filepath.Glob(filepath.Join(folder, name)); len(found) != 1 {
			t.Errorf("%s is not there; the window says %q", name, w.message.Content)
		}
	}
}

func TestAFileThatCannotBeOpenedIsSaidOnTheWelcome(t *testing.T) {
	w := New(test.NewTempApp(t), document.Inline{}, shelfFor(t))
	w.OpenPath(filepath.Join(t.TempDir(), "missing.trip"))
	if w.document != nil || w.message.Content == "" {
		t.Errorf("message %q", w.message.Content)
	}
}

func TestWhatWasOpenIsOfferedAgain(t *testing.T) {
	w, path := openDemo(t)
	if !slices.Contains(w.recent(), path) {
		t.Errorf("recent: %v", w.recent())
	}
	w.closeTrip()
	if w.document != nil || actionNamed(w, "Open ") == nil {
		t.Error("the welcome does not offer the trip again")
	}
}

// Headings name the units, so a change of units makes the screens anew.
func TestChangingUnitsShowsThemAtOnce(t *testing.T) {
	w, _ := openDemo(t)
	before := w.screens[0]
	w.setUnits(units.US)
	if w.screens[0] == before || w.document.Trip().Units != units.US {
		t.Error("the screens still stand in the old units")
	}
	if text := w.strip.figures[0].value.Content; !strings.Contains(text, "lb") && !strings.Contains(text, "oz") {
		t.Errorf("the strip still says %q", text)
	}
	actionNamed(w, "Undo")()
	if w.document.Trip().Units != units.Metric {
		t.Error("undo does not bring the units back")
	}
}

// Tables take their measures from the size of text when they are made.
func TestLargerTextMakesTheScreensAnew(t *testing.T) {
	w, _ := openDemo(t)
	before := w.screens[w.shown]
	actionNamed(w, "Larger text")()
	if w.screens[w.shown] == before {
		t.Error("the tables still have room for small text only")
	}
	actionNamed(w, "Smaller text")()
}

// The list of findings follows the plan while it is seen, and is of the newest
// plan when it comes to be seen.
func TestFindingsAreOfTheNewestPlan(t *testing.T) {
	w, _ := openDemo(t)
	heavyPacks := func(t *trip.Trip) error {
		for i := range t.Crew {
			t.Crew[i].OwnKit += 20 * units.Kilogram
		}
		return nil
	}
	for _, seen := range []bool{true, false} {
		if w.seesFindings() != seen {
			w.toggleFindings()
		}
		before := len(w.findings.shown)
		if err := w.document.Edit("x", heavyPacks); err != nil {
			t.Fatal(err)
		}
		now := len(w.document.Plan().Findings)
		if now == before {
			t.Fatal("the edit finds nothing new")
		}
		if !seen {
			w.toggleFindings()
		}
		if len(w.findings.shown) != now {
			t.Errorf("seen before %v: %d of %d findings are shown", seen, len(w.findings.shown), now)
		}
		if err := w.document.Undo(); err != nil {
			t.Fatal(err)
		}
	}
}
