package packing

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"sumpter/app/look"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Whatever is pressed, the cursor stands where something can be ticked, on a
// row that is shown, with its bag or food beside the list.
func TestTheCursorStandsWhereSomethingCanBeTicked(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	keys := []fyne.KeyName{fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown, fyne.KeyHome, fyne.KeyEnd, fyne.KeySpace}
	rapid.Check(t, func(rt *rapid.T) {
		switch rapid.IntRange(0, 9).Draw(rt, "way") {
		case 0:
			e.views.SetSelected("Food by food")
		case 1:
			e.views.SetSelected("Bag by bag")
		case 2:
			e.onlyLeft.SetChecked(!e.onlyLeft.Checked)
		}
		for _, key := range rapid.SliceOfN(rapid.SampledFrom(keys), 1, 6).Draw(rt, "keys") {
			e.press(key)
		}
		r, ok := e.list.selected()
		if left := slices.ContainsFunc(e.list.rows, row.canStand); ok != left || ok && !r.canStand() {
			rt.Fatalf("the cursor stands on %+v, %v; is there anything to tick: %v", r, ok, left)
		}
		if beside := e.label.row; beside.bag != r.bag || beside.bulk != r.bulk {
			rt.Fatalf("the list is on %q, beside it stands %q", r.key(), beside.key())
		}
		if problems := trip.Validate(e.Document.Trip()); len(problems) > 0 {
			rt.Fatalf("the trip is no longer valid: %v", problems[0])
		}
		done := 0
		for _, bag := range e.Document.Trip().Progress.Packed {
			if bag.Done {
				done++
			}
		}
		if done != e.work.done || e.work.minutes < -1e-9 || e.work.minutes > e.work.plan.Packing.Minutes+1e-9 {
			rt.Fatalf("%d bags are noted as done, %d shown; %v minutes left", done, e.work.done, e.work.minutes)
		}
	})
}

// Everything done on the screen can be taken back, to the very trip before.
func TestAllOfItCanBeTakenBack(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	before := e.Document.Trip()
	rapid.Check(t, func(rt *rapid.T) {
		edits := 0
		for range rapid.IntRange(1, 3).Draw(rt, "acts") {
			name := e.Document.UndoName()
			now := e.Document.Trip()
			switch rapid.IntRange(0, 3).Draw(rt, "act") {
			case 0:
				e.showView(byFood)
				e.press(fyne.KeySpace)
			case 1:
				e.showView(byBag)
				e.press(fyne.KeyDown, fyne.KeySpace)
			case 2:
				bag := e.work.rounds[0].bags[rapid.IntRange(0, 5).Draw(rt, "bag")]
				_ = e.weigh(bag, bag.Contents[0].Food, units.Mass(rapid.IntRange(0, 500).Draw(rt, "grams"))*units.Gram)
			case 3:
				bag := e.work.rounds[0].bags[rapid.IntRange(0, 5).Draw(rt, "bag")]
				_ = e.unweigh(bag, bag.Contents[0].Food)
			}
			if e.Document.Trip() != now {
				edits++
				if e.Document.UndoName() == "" {
					rt.Fatalf("an edit after %q has no name", name)
				}
			}
		}
		for range edits {
			if err := e.Document.Undo(); err != nil {
				rt.Fatal(err)
			}
		}
		if !trip.Equal(before, e.Document.Trip()) {
			rt.Fatalf("after taking %d steps back: %+v", edits, e.Document.Trip().Progress)
		}
	})
}

// What was ticked off is there when the trip is opened again.
func TestTheTripFileRemembersTheEvening(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.press(fyne.KeySpace, fyne.KeySpace)
	bag := e.several(t)
	e.write(e.label.lines[0], "77")
	later := open(t, benchtest.Reopened(t, e.Document.Trip()))
	if later.work.done != 2 {
		t.Errorf("%d bags are done", later.work.done)
	}
	if mass, noted := later.work.weighed(bag.Key, bag.Contents[0].Food); !noted || mass != 77*units.Gram {
		t.Errorf("the scale showed %v, %v", mass, noted)
	}
}

// Text that is being typed outlives a new plan.
func TestANewPlanLeavesTypingAlone(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.several(t)
	entry := e.label.lines[0].entry
	e.Window.Canvas().Focus(entry)
	entry.SetText("12")
	e.Document.Replan()
	if entry.Text != "12" {
		t.Errorf("the field holds %q", entry.Text)
	}
}

func TestLinesOfTheLabelAreUsedAgain(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	lines := len(e.label.lines)
	for i := range e.work.plan.Bags.Bags {
		other := &e.work.plan.Bags.Bags[i]
		e.label.show(row{kind: bagRow, bag: other})
		shown := 0
		for _, line := range e.label.lines {
			if line.content.Visible() {
				if line.bag != other || line.food != other.Contents[shown].Food {
					t.Fatalf("line %d of bag %s is of another", shown, other.Code)
				}
				shown++
			}
		}
		if shown != len(other.Contents) {
			t.Fatalf("bag %s of %d foods has %d lines", other.Code, len(other.Contents), shown)
		}
		lines = max(lines, len(other.Contents))
	}
	if len(e.label.lines) != lines {
		t.Errorf("%d lines were made for at most %d foods", len(e.label.lines), lines)
	}
	e.showBag(bag.Key)
}

func TestEveryActionHasANameAndDoesSomething(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.at().bag
	for _, action := range e.Actions() {
		if action.Name == "" || action.Do == nil {
			t.Fatalf("an action without name or deed: %+v", action)
		}
		action.Do()
	}
	if !e.work.isDone(bag) || e.view != byStow || !e.onlyLeft.Checked {
		t.Errorf("done %v, view %d, only what is left %v", e.work.isDone(bag), e.view, e.onlyLeft.Checked)
	}
	if e.Name() != "packing" || e.Title() != "Packing night" || e.Content() == nil {
		t.Errorf("the screen is called %s, %s", e.Name(), e.Title())
	}
}

// drawnRow lays out a row as the list does.
func drawnRow(t *testing.T, l rowLook, width, scale float32) *rowView {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light, Scale: scale})
	v := newRowView()
	window := test.NewTempWindow(t, v)
	v.show(l)
	size := fyne.NewSize(width, rowHeight(isNarrow(width)))
	window.Resize(size)
	v.Resize(size)
	return v
}

func TestARowKeepsItsTextsApart(t *testing.T) {
	long := "A stew of everything that was in the cupboard and had to go before the holidays"
	rows := map[string]rowLook{
		"bag":   {kind: bagRow, code: "12-103W", main: long, note: long, figure: "1234 g", aside: "Weigh dry", tickable: true},
		"round": {kind: roundRow, main: "Round 1 of 4 · free of gluten, peanuts, crustaceans", note: "bags left: 158 of 158, about 1 h 45 min"},
		"clean": {kind: cleanRow, code: "Clean first", main: "hands, tools and table with soap, fresh cloths", note: "Keep away: gluten, peanuts, sesame", noteTone: look.Plum},
		"food":  {kind: foodRow, main: "Rolled oats, certified gluten-free", figure: "1234 g", aside: "bags it goes into: 12, still open: 12", tickable: true},
	}
	for name, l := range rows {
		for _, scale := range []float32{1, 1.75, 2} {
			for _, width := range []float32{340, 450, 500, 900} {
				if width/scale < 190 {
					continue // no list is as narrow
				}
				v := drawnRow(t, l, width, scale)
				texts := append([]*canvas.Text{v.code, v.figure, v.aside}, v.lines[:]...)
				said := ""
				for i, text := range texts {
					if text.Text == "" {
						continue
					}
					said += text.Text + " "
					at, size := text.Position(), text.MinSize()
					if at.X+size.Width > width || at.Y+size.Height > v.Size().Height+1 {
						t.Errorf("%s %v wide, text %v: %q ends at %v, %v of height %v", name, width, scale, text.Text, at.X+size.Width, at.Y+size.Height, v.Size().Height)
					}
					for _, other := range texts[:i] {
						to, long := other.Position(), other.MinSize()
						const lines = 6 // of room above and below letters
						if other.Text != "" && at.X < to.X+long.Width && to.X < at.X+size.Width && at.Y+lines < to.Y+long.Height && to.Y+lines < at.Y+size.Height {
							t.Errorf("%s %v wide, text %v: %q stands on %q", name, width, scale, text.Text, other.Text)
						}
					}
				}
				if name == "clean" && !strings.Contains(said, "gluten, peanuts, sesame") {
					t.Errorf("%v wide, text %v, what to keep away is cut: %q", width, scale, said)
				}
			}
		}
	}
}

// What a bag is called is read though the text is large.
func TestLargeTextHasRoomBelowTheCode(t *testing.T) {
	v := drawnRow(t, rowLook{kind: bagRow, code: "4-03A", main: "Whole milk powder", note: "contains milk · for 5 · Days 4 to 6, 7 times, Larch", figure: "571 g", aside: "Weigh dry", tickable: true}, 450, 1.75)
	said := ""
	for _, line := range v.lines {
		said += line.Text + " "
	}
	for _, whole := range []string{"Whole milk powder", "contains milk · for 5", "Larch"} {
		if !strings.Contains(said, whole) {
			t.Errorf("%q is not whole in %q", whole, said)
		}
	}
}

func TestTheTickIsAShapeNotAColour(t *testing.T) {
	states := map[string][3]bool{}
	for name, l := range map[string]rowLook{
		"open": {tickable: true}, "begun": {tickable: true, part: true}, "done": {tickable: true, ticked: true}, "head": {kind: roundRow},
	} {
		v := drawnRow(t, l, 400, 1)
		seen := func(alpha uint32) bool { return alpha > 0 }
		_, _, _, down := v.down.StrokeColor.RGBA()
		_, _, _, up := v.up.StrokeColor.RGBA()
		_, _, _, box := v.box.StrokeColor.RGBA()
		states[name] = [3]bool{seen(box), seen(up), seen(down)}
	}
	want := map[string][3]bool{"open": {true, false, false}, "begun": {true, true, false}, "done": {true, true, true}, "head": {}}
	for name := range want {
		if states[name] != want[name] {
			t.Errorf("a row that is %s draws box, up and down stroke %v", name, states[name])
		}
	}
}

func TestOnlyCleaningHasADoubleFrame(t *testing.T) {
	for kind := roundRow; kind <= strayRow; kind++ {
		v := drawnRow(t, rowLook{kind: kind, main: "x"}, 400, 1)
		if framed := v.outer.StrokeWidth > 0 && v.inner.StrokeWidth > 0; framed != (kind == cleanRow) {
			t.Errorf("a row of kind %d is framed: %v", kind, framed)
		}
	}
}
