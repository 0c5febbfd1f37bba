package menu

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/document"
	"sumpter/domain/trip"
)

// TestTheMenuIsEmptiedAimedFilledAndTakenBack goes the leader's way: empty the menu, move the slider, fill, take each step back.
func TestTheMenuIsEmptiedAimedFilledAndTakenBack(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.key(fyne.KeySpace) // locked with what it serves
	locked := *s.Document.Trip().Cell(3, trip.Dinner, 1)
	before := s.Document.Trip()
	s.emptyAll()
	if menu := s.Document.Trip().Menu; len(menu) != 1 || !sameServed(&menu[0], &locked) || s.Document.UndoName() != "empty the menu" {
		t.Fatalf("%q leaves %v", s.Document.UndoName(), menu)
	}
	s.filler.aim.SetValue(1)
	if got := s.Document.Trip().Settings.MenuAim; got != 1 || s.Document.UndoName() != "make menus as varied as can be" {
		t.Errorf("the slider stores %g as %q", got, s.Document.UndoName())
	}
	test.Tap(s.filler.fill)
	filled := s.Document.Trip()
	if len(filled.Menu) != len(before.Menu) || s.Document.UndoName() != "fill the open slots" {
		t.Errorf("%d cells are filled of %d: %q", len(filled.Menu), len(before.Menu), s.Document.UndoName())
	}
	words := s.filler.result.Content
	if !s.filler.result.Visible() || !strings.Contains(words, "Meals filled: ") || !strings.Contains(words, "%") {
		t.Errorf("what came of it is told as %q", words)
	}
	s.filler.aim.SetValue(-1)
	if s.filler.result.Visible() {
		t.Error("what came of another aim is still told")
	}
	test.Tap(s.filler.anew)
	again := s.Document.Trip()
	changed := 0
	for i := range again.Menu {
		k := slotOfCell(&again.Menu[i])
		if was := filled.Cell(k.day, k.meal, k.group); was == nil || !sameServed(was, &again.Menu[i]) {
			changed++
		}
	}
	if now := again.Cell(3, trip.Dinner, 1); !sameServed(now, &locked) || changed < 5 || s.Document.UndoName() != "choose all dishes anew" {
		t.Errorf("%q changes %d slots, and the locked one is %v", s.Document.UndoName(), changed, now)
	}
	for range 6 {
		if err := s.Document.Undo(); err != nil {
			t.Fatal(err)
		}
	}
	if at := s.Document.Trip(); at.Settings.MenuAim != before.Settings.MenuAim || len(at.Menu) != len(before.Menu) || s.filler.aim.Value != before.Settings.MenuAim {
		t.Errorf("taken back: aim %g, slider at %g, %d cells", at.Settings.MenuAim, s.filler.aim.Value, len(at.Menu))
	}
}

// held keeps what the screen starts in the background until it is let go.
type held struct{ work []func() }

func (h *held) Background(work func()) { h.work = append(h.work, work) }
func (h *held) AfterFrame(f func())    { f() }
func (h *held) Screen(f func())        { f() }

func (h *held) letGo() {
	for len(h.work) > 0 {
		work := h.work[0]
		h.work = h.work[1:]
		work()
	}
}

func TestFillingCanBeStopped(t *testing.T) {
	h := &held{}
	on := openDemo(t).Document.Trip().Clone()
	on.Menu = slices.DeleteFunc(on.Menu, func(c trip.Cell) bool { return c.Day == 3 })
	s := openWith(t, on, h)
	h.letGo()
	before := s.Document.Trip()

	s.filler.start(false)
	if !s.filler.working.Visible() || !s.filler.fill.Disabled() {
		t.Error("nothing shows that the work goes on")
	}
	s.filler.start(false) // is refused while one goes on
	s.filler.stop()
	h.letGo()
	if s.Document.Trip() != before || s.filler.working.Visible() || s.filler.fill.Disabled() {
		t.Error("stopped, and the menu changed all the same")
	}

	s.filler.start(false)
	s.filler.enough() // before there is anything: nothing is stored
	h.letGo()
	if s.Document.Trip() != before || s.filler.working.Visible() {
		t.Error("ended before anything was found, and the menu changed")
	}

	s.filler.start(false)
	if err := s.serve(dinner3, before.Recipes[20].ID, s.seen.arrangements(dinner3)[0]); err != nil {
		t.Fatal(err)
	}
	h.letGo()
	if cell := s.Document.Trip().Cell(3, trip.Dinner, 1); cell == nil || cell.Dishes[0].Recipe != before.Recipes[20].ID {
		t.Error("what the leader chose meanwhile was overwritten")
	}
	if s.Document.Trip().Cell(3, trip.Lunch, 1) == nil {
		t.Error("nothing was filled beside it")
	}
	var _ document.Scheduler = h
}

func TestAimInWords(t *testing.T) {
	seen := map[string]bool{}
	for aim := -1.0; aim <= 1; aim += aimStep {
		seen[aimWords(aim)] = true
	}
	if len(seen) != 7 {
		t.Errorf("%d words for the steps of the slider: %v", len(seen), seen)
	}
}

// What stays without a dish is counted aloud.
func TestFillingSaysWhatStaysOpen(t *testing.T) {
	s := openDemo(t)
	s.emptyAll()
	if err := s.Document.Edit("leave no snack", func(t *trip.Trip) error {
		for i := range t.Recipes {
			t.Recipes[i].Meals = slices.DeleteFunc(t.Recipes[i].Meals, func(m trip.Meal) bool { return m == trip.Snack })
			if len(t.Recipes[i].Meals) == 0 {
				t.Recipes[i].Meals = []trip.Meal{trip.Dinner}
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	test.Tap(s.filler.fill)
	open := openSlots(s.Document.Trip())
	if words := s.filler.result.Content; open == 0 || !strings.Contains(words, fmt.Sprintf("Still open: %d.", open)) {
		t.Errorf("%d meals are open, told as %q", open, words)
	}
}
