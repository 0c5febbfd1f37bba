package packing

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// At the smallest size the window is made for, and at the largest text, all of
// the head, the list and the label are within it.
func TestTheScreenFitsItsWindow(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.several(t)
	room := fyne.NewSize(1280-170, 800-110)
	if least := e.Content().MinSize(); least.Width > room.Width || least.Height > room.Height {
		t.Errorf("the screen asks for %v of %v", least, room)
	}
	fyne.CurrentApp().Settings().SetTheme(look.Theme{Variant: look.Dark, Scale: 1.5})
	if least := e.Content().MinSize(); least.Width > 1.5*room.Width || least.Height > 1.5*room.Height {
		t.Errorf("with large text the screen asks for %v", least)
	}
}

func TestHeadsCannotBeTicked(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	before := e.Document.Trip()
	for i, r := range e.list.rows {
		if !r.canStand() {
			e.list.tapped = 10
			e.list.tap(i)
			if at := e.at(); !at.canStand() || e.Document.Trip() != before {
				t.Fatalf("a tap on row %d of kind %d changes %+v", i, r.kind, e.Document.Trip().Progress)
			}
		}
	}
}

func TestAfterTheLastBagComesTheFirstThatIsOpen(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	first := e.at()
	e.press(fyne.KeyEnd)
	last := e.at()
	e.press(fyne.KeySpace)
	if at := e.at(); at.key() != first.key() || !e.work.isDone(last.bag) {
		t.Errorf("after the last bag the cursor stands on %q, not on %q", at.key(), first.key())
	}
}

func TestTheButtonTicksWhatIsShown(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.at().bag
	test.Tap(e.label.tick)
	if !e.work.isDone(bag) {
		t.Fatal("the button does not tick off the bag")
	}
	e.showBag(bag.Key)
	if !strings.HasPrefix(e.label.tick.Text, "Open again") {
		t.Errorf("the button of a packed bag says %q", e.label.tick.Text)
	}
	test.Tap(e.label.tick)
	if e.work.isDone(bag) {
		t.Error("the button does not open the bag again")
	}
	e.views.SetSelected("Food by food")
	bulk := e.at().bulk
	test.Tap(e.label.tick)
	if in, all := e.work.allIn(bulk); in != all || all == 0 {
		t.Errorf("the button puts the food into %d of %d bags", in, all)
	}
}

func TestReturnOpensTheScaleAndDownGoesOn(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	e.press(fyne.KeyReturn)
	first := e.label.lines[0].entry
	if e.Window.Canvas().Focused() != fyne.Focusable(first) {
		t.Fatalf("Return leads to %T", e.Window.Canvas().Focused())
	}
	first.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	if e.Window.Canvas().Focused() != fyne.Focusable(e.label.lines[1].entry) || e.packed(bag) != nil {
		t.Errorf("Down leads to %T and notes %+v", e.Window.Canvas().Focused(), e.packed(bag))
	}
	last := e.label.lines[len(bag.Contents)-1]
	e.write(last, "5")
	if e.Window.Canvas().Focused() != fyne.Focusable(e.list) {
		t.Errorf("after the last food Return leads to %T", e.Window.Canvas().Focused())
	}
}

// Food that is opened beside an allergen and used again later says so where it
// is taken out.
func TestFoodToSetAsideSaysSoOnItsRow(t *testing.T) {
	w := table()
	w.plan.Packing.Findings = []findings.Finding{
		{Severity: findings.LookAt, Code: "set-aside", Place: findings.Place{Food: 1}, Remedy: prose.Verbatim("Set 40 g of it aside, closed, before round 1 begins.")},
		{Severity: findings.Note, Code: "fine-weighing", Place: findings.Place{Food: 3}, Remedy: prose.Verbatim("Use a finer scale.")},
	}
	rice, bar := row{kind: foodRow, bulk: &w.plan.Packing.Bulk[0]}, row{kind: foodRow, bulk: &w.plan.Packing.Bulk[1]}
	if l := w.draw(rice); !strings.HasPrefix(l.note, "Set 40 g") || l.noteTone != look.Plum {
		t.Errorf("rice shows %+v", l)
	}
	if l := w.draw(bar); strings.Contains(l.note, "finer") {
		t.Errorf("the bar shows %+v", l)
	}
}

func TestAnEveningWithoutAllergiesIsOneRound(t *testing.T) {
	made := benchtest.DemoDays(2)
	for i := range made.Crew {
		made.Crew[i].Allergies = nil
	}
	for c := range made.Menu {
		for d := range made.Menu[c].Dishes {
			made.Menu[c].Dishes[d].Accepted = []trip.Acceptance(nil)
		}
	}
	e := open(t, made)
	if len(e.work.rounds) != 1 || e.work.roundWords(0) != "Round 1 of 1" || e.work.apartWords(0) != "" {
		t.Errorf("%d rounds, %q", len(e.work.rounds), e.work.roundWords(0))
	}
}
