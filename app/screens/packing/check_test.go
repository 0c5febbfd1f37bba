package packing

import (
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/trip"
)

// call types a code as it is called out, sign by sign.
func (e *evening) call(code string) {
	test.Type(e.search, strings.ToLower(strings.ReplaceAll(code, "-", "")))
}

// Codes typed while a box is filled tick its bags into it, tell a bag that
// belongs elsewhere, one that is in already and a code misheard.
func TestCodesCheckBagsIntoTheirPacksAndBoxes(t *testing.T) {
	example := demo.Trip()
	e := open(t, &example)
	e.views.SetSelected("Final check")
	box, other := &e.work.stows[0], &e.work.stows[1]
	if at := e.at(); at.kind != stowedRow || at.bag != box.bags[0] {
		t.Fatalf("the cursor stands on %+v", at)
	}
	first, second := box.bags[0], box.bags[1]
	e.call(second.Code)
	if noted := e.packed(second); noted == nil || noted.InBox != box.box || !strings.Contains(e.verdict.Content, "never ticked off as packed") {
		t.Fatalf("a bag that nobody packed: %+v, said %q", noted, e.verdict.Content)
	}
	e.Document.Undo()
	if err := e.Document.Edit("pack it", func(on *trip.Trip) error { noted(on, first.Key).Done = true; return nil }); err != nil {
		t.Fatal(err)
	}
	e.call(first.Code)
	if noted := e.packed(first); noted == nil || noted.InBox != box.box || !noted.Done || e.search.Text != "" {
		t.Fatalf("%s is noted as %+v, the field has %q", first.Code, noted, e.search.Text)
	}
	if !strings.HasPrefix(e.verdict.Content, first.Code+" is in, ") || !e.verdict.Visible() || !strings.HasPrefix(e.left.Content, "Bags checked in: 1 of ") {
		t.Errorf("said %q, %q", e.verdict.Content, e.left.Content)
	}
	e.call(first.Code)
	if !strings.Contains(e.verdict.Content, "already") {
		t.Errorf("a second time: %q", e.verdict.Content)
	}
	stranger := other.bags[0]
	e.call(stranger.Code)
	if !strings.HasPrefix(e.verdict.Content, stranger.Code+" is wrong here.") || e.packed(stranger) != nil {
		t.Errorf("another box's bag: %q, %+v", e.verdict.Content, e.packed(stranger))
	}
	misheard := second.Code[:len(second.Code)-1] + map[bool]string{true: "A", false: "F"}[second.Code[len(second.Code)-1] != 'A']
	e.call(misheard)
	if !strings.Contains(e.verdict.Content, "Read it again") || e.search.Text != "" {
		t.Errorf("misheard: %q", e.verdict.Content)
	}
	e.list.selectKey(row{kind: stowedRow, bag: second}.key())
	e.press(fyne.KeySpace)
	if noted := e.packed(second); noted == nil || noted.InBox != box.box || e.Document.UndoName() != "check in bag "+second.Code+": "+e.work.stowWords(box.box, 0) {
		t.Errorf("by key: %+v, undo %q", noted, e.Document.UndoName())
	}
	e.list.selectKey(row{kind: stowedRow, bag: second}.key())
	e.press(fyne.KeySpace)
	if e.packed(second) != nil {
		t.Errorf("taken out: %+v", e.packed(second))
	}
	e.onlyLeft.SetChecked(true)
	for _, r := range e.list.rows {
		if r.bag == first {
			t.Error("what is in is still listed as left")
		}
	}
}

// Every bag of packing night belongs in one pack or box, and all of them
// checked in is told.
func TestTheFinalCheckTellsWhatTheScaleShowed(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	grams := int(bag.Contents[0].Mass.Grams()) - 50
	e.write(e.label.lines[0], strconv.Itoa(grams))
	if err := e.Document.Edit("pack it", func(on *trip.Trip) error { noted(on, bag.Key).Done = true; return nil }); err != nil {
		t.Fatal(err)
	}
	want := e.work.signed(e.work.difference(bag)) + " on the scale"
	if aside := e.work.drawStowed(row{kind: stowedRow, bag: bag}).aside; aside != want || !strings.HasPrefix(want, "−") {
		t.Errorf("beside the mass stands %q, want %q", aside, want)
	}
}

func TestEveryPackedBagIsCheckedOnce(t *testing.T) {
	example := demo.Trip()
	e := open(t, &example)
	seen := map[string]bool{}
	for i := range e.work.stows {
		for _, bag := range e.work.stows[i].bags {
			if seen[bag.Key] {
				t.Errorf("%s is listed twice", bag.Code)
			}
			seen[bag.Key] = true
		}
	}
	if len(seen) != len(e.work.round) {
		t.Errorf("%d of %d bags are listed", len(seen), len(e.work.round))
	}
	last := e.work.stows[len(e.work.stows)-1]
	err := e.Document.Edit("check all but one in", func(on *trip.Trip) error {
		for _, bag := range last.bags[1:] {
			noted(on, bag.Key).InPack = last.pack
		}
		noted(on, last.bags[0].Key).InPack, noted(on, last.bags[0].Key).Done = on.Crew[0].ID, true
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	e.views.SetSelected("Final check")
	e.list.selectKey(row{kind: stowedRow, bag: last.bags[0]}.key())
	if note := e.work.draw(e.at()).note; !strings.HasPrefix(note, "It lies elsewhere: ") {
		t.Errorf("in the wrong pack: %q", note)
	}
	e.call(last.bags[0].Code)
	if !strings.Contains(e.verdict.Content, "with it every bag") {
		t.Errorf("said %q", e.verdict.Content)
	}
	e.views.SetSelected("Bag by bag")
	if e.verdict.Visible() {
		t.Error("the verdict stays")
	}
}
