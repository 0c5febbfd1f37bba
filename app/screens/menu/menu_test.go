package menu

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// shown is a menu on a window of the test driver.
type shown struct {
	*Screen
	*benchtest.Desk
	t testing.TB
}

func openTrip(t testing.TB, on *trip.Trip) *shown { return openWith(t, on, document.Inline{}) }

func openWith(t testing.TB, on *trip.Trip, scheduler document.Scheduler) *shown {
	t.Helper()
	d := benchtest.NewWith(t, on, scheduler)
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	s.modifiers = func() fyne.KeyModifier { return 0 }
	s.filler.steps = func(int) int64 { return 150_000 }
	d.Show(s.Screen, 1280, 760)
	return s
}

// openDemo shows the first six days of the demo trip.
func openDemo(t testing.TB) *shown {
	on := demo.Trip()
	on.Days = on.Days[:6]
	on.Menu = slices.DeleteFunc(on.Menu, func(c trip.Cell) bool { return c.Day > len(on.Days) })
	on.Points = slices.DeleteFunc(on.Points, func(p trip.ResupplyPoint) bool { return p.AfterDay >= len(on.Days) })
	return openTrip(t, &on)
}

var (
	dinner3 = slot{3, trip.Dinner, 1}
	dinner4 = slot{4, trip.Dinner, 1}
	lunch3  = slot{3, trip.Lunch, 1}
)

// at puts the cursor on a slot by tapping it.
func (s *shown) at(k slot) {
	s.t.Helper()
	at, ok := s.board.placeOf(k)
	if !ok {
		s.t.Fatalf("%v is not in the grid", k)
	}
	s.board.reveal(at)
	s.board.sheet.Tapped(&fyne.PointEvent{Position: s.middle(k)})
}

// middle is the point of a slot in the grid.
func (s *shown) middle(k slot) fyne.Position {
	at, _ := s.board.placeOf(k)
	return s.board.m.corner(at).AddXY(40, 40)
}

func (s *shown) key(names ...fyne.KeyName) {
	for _, name := range names {
		s.board.sheet.TypedKey(&fyne.KeyEvent{Name: name})
	}
}

func (s *shown) typed(text string) {
	for _, letter := range text {
		if focused := s.Window.Canvas().Focused(); focused != nil {
			focused.TypedRune(letter)
		}
	}
}

func (s *shown) keyToFocused(name fyne.KeyName) {
	s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

// served names the dishes of a slot in the document.
func (s *shown) served(k slot) string {
	cell := s.Document.Trip().Cell(k.day, k.meal, k.group)
	if cell == nil {
		return ""
	}
	var names []string
	for _, dish := range cell.Dishes {
		names = append(names, s.Document.Trip().Recipe(dish.Recipe).Name)
	}
	return strings.Join(names, " + ")
}

func (s *shown) want(k slot, dishes, undo string) {
	s.t.Helper()
	if got := s.served(k); got != dishes {
		s.t.Errorf("%v serves %q, want %q", k, got, dishes)
	}
	if undo != "" && s.Document.UndoName() != undo {
		s.t.Errorf("undo is %q, want %q", s.Document.UndoName(), undo)
	}
}

func (s *shown) edit(change func(t *trip.Trip)) {
	s.t.Helper()
	if err := s.Document.Edit("prepare", func(t *trip.Trip) error { change(t); return nil }); err != nil {
		s.t.Fatal(err)
	}
}

const (
	dal      = "Red lentil dal with rice"
	crumble  = "Pan apple crumble"
	chilli   = "Smoky chilli on polenta"
	risotto  = "Mushroom risotto"
	pudding  = "Chocolate pudding"
	crackers = "Tahini crackers with sun-dried tomato"
)

func TestTypingAndEnterServeARecipe(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.typed("mush")
	if len(s.side.chooser.found) == 0 {
		t.Fatal("typing in the grid finds no recipe")
	}
	s.keyToFocused(fyne.KeyReturn)
	s.want(dinner3, risotto+" + "+crumble, "serve Mushroom risotto at dinner of day 3 (Larch)")
	if s.Window.Canvas().Focused() != fyne.Focusable(s.board.sheet) {
		t.Error("the keyboard is not back in the grid")
	}
	if err := s.Document.Undo(); err != nil {
		t.Fatal(err)
	}
	s.want(dinner3, dal+" + "+crumble, "")
}

func TestEnterOpensTheChoiceAndArrowsChoose(t *testing.T) {
	s := openDemo(t)
	s.at(lunch3)
	s.key(fyne.KeyReturn)
	second := s.side.chooser.all[s.side.chooser.found[1]].name
	s.keyToFocused(fyne.KeyDown)
	s.keyToFocused(fyne.KeyReturn)
	s.want(lunch3, second, "")
}

func TestControlEnterServesBeside(t *testing.T) {
	s := openDemo(t)
	s.at(lunch3)
	s.key(fyne.KeyReturn)
	s.typed("miso")
	s.side.chooser.search.TypedShortcut(&desktop.CustomShortcut{KeyName: fyne.KeyReturn, Modifier: fyne.KeyModifierShortcutDefault})
	s.want(lunch3, crackers+" + Miso noodle soup", "add Miso noodle soup to lunch of day 3 (Larch)")
}

func TestEscapeLeavesTheChoiceWithoutAnEdit(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.key(fyne.KeyReturn)
	s.typed("mush")
	s.keyToFocused(fyne.KeyEscape)
	s.want(dinner3, dal+" + "+crumble, "")
	if s.Document.UndoName() != "" || s.side.tabs.Selected() != s.side.meal {
		t.Error("something was edited, or the choice is still open")
	}
}

func TestArrowsMoveAndTheSideFollows(t *testing.T) {
	s := openDemo(t)
	s.at(lunch3)
	s.key(fyne.KeyDown, fyne.KeyRight)
	if k, _ := s.board.selected(); k != dinner4 || s.side.k != dinner4 || s.food.k != dinner4 {
		t.Errorf("the cursor is on %v, the side on %v, the picture on %v", k, s.side.k, s.food.k)
	}
	s.key(fyne.KeyEnd)
	if k, _ := s.board.selected(); k.day != 6 {
		t.Errorf("End goes to day %d", k.day)
	}
	if last := s.board.m.corner(s.board.cursor).X + s.board.m.cell.Width; last > s.board.scroll.Offset.X+s.board.scroll.Size().Width {
		t.Error("the cell of the cursor is out of view")
	}
	s.key(fyne.KeyPageUp, fyne.KeyHome, fyne.KeyUp, fyne.KeyUp, fyne.KeyUp)
	if k, _ := s.board.selected(); k != (slot{1, trip.Breakfast, 1}) {
		t.Errorf("the first corner is %v", k)
	}
}

func TestDeleteClears(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.key(fyne.KeyDelete)
	s.want(dinner3, "", "clear dinner of day 3 (Larch)")
	if s.Document.Trip().Cell(3, trip.Dinner, 1) != nil {
		t.Error("an empty cell is kept")
	}
	if f := s.seen.facts(dinner3); f.state != open || f.severity != findings.MustFix {
		t.Errorf("the cell shows %+v", f)
	}
	name := s.Document.UndoName()
	s.key(fyne.KeyDelete)
	if s.Document.UndoName() != name || s.Said == "" {
		t.Error("clearing nothing is an edit, or is not spoken of")
	}
}

func TestCopyAndPaste(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.board.sheet.TypedShortcut(&fyne.ShortcutCopy{})
	if got := s.bench.Clipboard().Content(); got != dal+", "+crumble {
		t.Errorf("on the clipboard: %q", got)
	}
	s.at(dinner4)
	s.board.sheet.TypedShortcut(&fyne.ShortcutPaste{})
	s.want(dinner4, dal+" + "+crumble, "copy dinner of day 3 (Larch) to dinner of day 4 (Larch)")
	s.want(dinner3, dal+" + "+crumble, "")
}

func TestCutAndPasteMoves(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.board.sheet.TypedShortcut(&fyne.ShortcutCut{})
	s.want(dinner3, dal+" + "+crumble, "")
	s.at(dinner4)
	s.board.sheet.TypedShortcut(&fyne.ShortcutPaste{})
	s.want(dinner4, dal+" + "+crumble, "move dinner of day 3 (Larch) to dinner of day 4 (Larch)")
	s.want(dinner3, "", "")
}

func TestLocking(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.key(fyne.KeySpace)
	cell := s.Document.Trip().Cell(3, trip.Dinner, 1)
	if !cell.Locked || s.Document.UndoName() != "lock dinner of day 3 (Larch)" {
		t.Fatalf("locked %v, undo %q", cell.Locked, s.Document.UndoName())
	}
	if f := s.seen.facts(dinner3); !f.locked || f.mark != "locked" {
		t.Errorf("the cell shows %+v", f)
	}
	s.key(fyne.KeyDelete)
	s.want(dinner3, dal+" + "+crumble, "lock dinner of day 3 (Larch)")
	if !strings.Contains(s.Said, "locked") {
		t.Errorf("said %q", s.Said)
	}
	s.key(fyne.KeySpace)
	if s.Document.Trip().Cell(3, trip.Dinner, 1).Locked {
		t.Error("a second time does not unlock")
	}
}

func TestAnOpenSlotLockedStaysEmpty(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.key(fyne.KeyDelete, fyne.KeySpace)
	s.filler.start(false)
	cell := s.Document.Trip().Cell(3, trip.Dinner, 1)
	if cell == nil || !cell.Locked || len(cell.Dishes) != 0 {
		t.Errorf("after filling: %+v", cell)
	}
	s.key(fyne.KeySpace)
	if s.Document.Trip().Cell(3, trip.Dinner, 1) != nil {
		t.Error("unlocked and empty, the cell is still kept")
	}
}

func TestFillIsOneStepAndLeavesDecidedAlone(t *testing.T) {
	s := openDemo(t)
	s.edit(func(t *trip.Trip) {
		t.Menu = slices.DeleteFunc(t.Menu, func(c trip.Cell) bool { return c.Day == 3 || c.Day == 5 && c.Meal == trip.Dinner })
	})
	before := s.Document.Trip()
	s.filler.start(false)
	after := s.Document.Trip()
	if s.Document.UndoName() != "fill the open slots" || len(after.Menu) != len(before.Menu)+10 {
		t.Fatalf("undo %q, %d cells from %d", s.Document.UndoName(), len(after.Menu), len(before.Menu))
	}
	for _, cell := range before.Menu {
		if now := after.Cell(cell.Day, cell.Meal, cell.Group); now == nil || !sameServed(now, &cell) {
			t.Errorf("%v was decided and changed", slotOfCell(&cell))
		}
	}
	s.filler.start(false)
	if !strings.Contains(s.Said, "No open slot") {
		t.Errorf("with nothing open: %q", s.Said)
	}
	if err := s.Document.Undo(); err != nil || len(s.Document.Trip().Menu) != len(before.Menu) {
		t.Errorf("undo: %v, %d cells", err, len(s.Document.Trip().Menu))
	}
}

func TestProposalsAreKeptAsShown(t *testing.T) {
	s := openDemo(t)
	s.edit(func(t *trip.Trip) {
		t.Settings.FillOpenSlots = true
		t.Menu = slices.DeleteFunc(t.Menu, func(c trip.Cell) bool { return c.Day >= 3 && c.Meal == trip.Dinner })
	})
	f := s.seen.facts(dinner3)
	if f.state != proposed || f.mark != "proposed" || f.dishes == "" {
		t.Fatalf("the open slot shows %+v", f)
	}
	s.at(dinner3)
	if !s.side.keep.Visible() {
		t.Error("no way to keep the proposal is offered")
	}
	test.Tap(s.side.keep)
	s.want(dinner3, strings.ReplaceAll(f.dishes, "\n", " + "), "keep the proposal for dinner of day 3 (Larch)")
	s.filler.start(false)
	if s.seen.proposal(dinner4) != nil || len(s.seen.dishes(dinner4)) == 0 {
		t.Error("an open slot is still only proposed")
	}
	s.want(dinner3, strings.ReplaceAll(f.dishes, "\n", " + "), "fill the open slots")
}

func TestEmptyTripOffersTheRecipes(t *testing.T) {
	on := demo.Trip()
	on.Recipes, on.Menu, on.Settings.ReserveRecipe = nil, nil, 0
	s := openTrip(t, &on)
	var went document.Place
	s.Document.OnPlace(func(p document.Place) { went = p })
	if !s.missing.Visible() || s.board.Visible() {
		t.Fatal("nothing says what comes here")
	}
	for _, object := range test.LaidOutObjects(s.missing) {
		if button, ok := object.(fyne.Tappable); ok {
			button.Tapped(&fyne.PointEvent{})
		}
	}
	if went.Screen != "recipes" {
		t.Errorf("it leads to %q", went.Screen)
	}
}

func TestRandomTripsAreShown(t *testing.T) {
	for seed := range uint64(4) {
		s := openTrip(t, triptest.Large(5+int(seed)*9, 4, seed))
		for row := range s.board.rows {
			for column := range s.board.columns {
				s.board.moveTo(place{row, column}, false)
			}
		}
		s.nextGroup()
		s.nextTrouble()
		if s.board.cursor != s.board.held(s.board.cursor) {
			t.Errorf("the cursor left the grid: %v", s.board.cursor)
		}
	}
}

// Each swap tells all six: food, energy, protein and cost of the day, minutes and fuel of the meal; a cost that nobody knows is told as such.
func TestASwapTellsAllItChanges(t *testing.T) {
	s := openDemo(t)
	k := slot{4, trip.Dinner, s.Document.Trip().Crew[0].Group}
	s.at(k)
	s.side.tabs.Select(s.side.other)
	c, known := s.side.chooser, 0
	for i := range min(10, len(c.all)) {
		one := &c.all[i]
		if one.served {
			continue
		}
		text := c.changes(one) + " · " + c.asides(one)
		for _, want := range []string{" g · ", " kcal", " g protein", " min", " fuel"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q lacks %q", one.name, text, want)
			}
		}
		if strings.Contains(text, " EUR") {
			known++
		} else if !strings.Contains(text, "cost not known") {
			t.Errorf("%s: %q tells of no cost", one.name, text)
		}
	}
	if known < 5 {
		t.Errorf("only %d costs are known", known)
	}
}
