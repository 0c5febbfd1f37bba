package packing

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// evening is the screen in a window, with what it said.
type evening struct {
	*Screen
	*benchtest.Desk
}

func open(t testing.TB, on *trip.Trip) *evening {
	t.Helper()
	d := benchtest.New(t, on)
	e := &evening{Screen: New(d.Bench), Desk: d}
	d.Show(e.Screen, 1100, 700)
	if e.work == nil {
		t.Fatal("the trip was not planned")
	}
	return e
}

func (e *evening) press(keys ...fyne.KeyName) {
	for _, key := range keys {
		e.list.TypedKey(&fyne.KeyEvent{Name: key})
	}
}

func (e *evening) at() row {
	r, _ := e.list.selected()
	return r
}

func (e *evening) packed(bag *bags.Bag) *trip.PackedBag {
	return e.Document.Trip().Progress.PackedBag(bag.Key)
}

// finish ticks off whole rounds at once.
func (e *evening) finish(t *testing.T, rounds ...int) {
	t.Helper()
	err := e.Document.Edit("tick off rounds", func(on *trip.Trip) error {
		for _, place := range rounds {
			for _, bag := range e.work.rounds[place].bags {
				noted(on, bag.Key).Done = true
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestSpaceTicksOffAndGoesOn(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	first := e.at().bag
	if first == nil {
		t.Fatal("the cursor stands on no bag")
	}
	e.press(fyne.KeySpace)
	record := e.packed(first)
	if record == nil || !record.Done || len(record.Weighed) != len(first.Contents) {
		t.Fatalf("after Space the bag is noted as %+v", record)
	}
	for _, c := range first.Contents {
		if mass, weighed := record.WeighedMass(c.Food); !weighed || mass != c.Mass {
			t.Errorf("food %d is noted with %v, planned %v", c.Food, mass, c.Mass)
		}
	}
	if next := e.at().bag; next == first {
		t.Error("the cursor stays on the bag that is done")
	}
	if name := e.Document.UndoName(); name != "tick off bag "+first.Code {
		t.Errorf("undo is called %q", name)
	}
	all := len(e.work.plan.Bags.Bags)
	if e.work.done != 1 || !strings.Contains(e.left.Content, " of ") || all < 10 {
		t.Errorf("%d done, %q", e.work.done, e.left.Content)
	}
	e.press(fyne.KeyUp, fyne.KeySpace)
	if e.packed(first) != nil || e.Document.Trip().Progress.Packed != nil {
		t.Errorf("opened again, the bag is noted as %+v", e.packed(first))
	}
}

func TestUndoOpensTheBag(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.at().bag
	e.press(fyne.KeySpace)
	if err := e.Document.Undo(); err != nil || e.work.isDone(bag) {
		t.Errorf("after undo the bag is done: %v, %v", e.work.isDone(bag), err)
	}
	if err := e.Document.Redo(); err != nil || !e.work.isDone(bag) {
		t.Errorf("after redo the bag is not done, %v", err)
	}
}

func TestTapOnTheBoxTicksAndElsewhereChooses(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	place := slices.IndexFunc(e.list.rows, func(r row) bool { return r.kind == bagRow })
	pitch := rowHeight(e.list.narrow) + 4 // rows have a gap
	third := fyne.NewPos(200, (float32(place)+2.5)*pitch)
	bag := e.list.rows[place+2].bag
	e.list.Tapped(&fyne.PointEvent{Position: third})
	if e.at().bag != bag || e.work.isDone(bag) {
		t.Fatalf("a tap on %s chose %+v, done %v", bag.Code, e.at().bag, e.work.isDone(bag))
	}
	if e.label.code.Content != bag.Code {
		t.Errorf("the label shows %s", e.label.code.Content)
	}
	third.X = 20
	e.list.Tapped(&fyne.PointEvent{Position: third})
	if !e.work.isDone(bag) {
		t.Error("a tap on the box does not tick")
	}
}

// A table that must be clean is announced in the list before its round, and
// once more above it when the round before is finished.
func TestCleaningCannotBeMissed(t *testing.T) {
	e := open(t, demoTrip())
	planned := e.work.plan.Packing.Rounds
	cleanings, before := 0, -1
	for i, r := range planned {
		if r.CleanFirst {
			cleanings++
			before = i
		}
	}
	if cleanings < 2 {
		t.Fatalf("the demo trip needs %d cleanings; the test wants two", cleanings)
	}
	for _, v := range []view{byBag, byFood} {
		last := row{}
		for _, r := range e.work.rows(v, false) {
			if last.kind == roundRow && r.round == last.round && last != (row{}) && planned[last.round].CleanFirst != (r.kind == cleanRow) {
				t.Errorf("view %d: round %d begins with a row of kind %d", v, last.round, r.kind)
			}
			last = r
		}
	}
	if e.clean.Visible() {
		t.Error("the banner stands over the list before anything is packed")
	}
	var earlier []int
	for i := range before {
		earlier = append(earlier, i)
	}
	e.finish(t, earlier...)
	told := e.cleanText.Content
	if !e.clean.Visible() || !strings.Contains(told, "soap") {
		t.Errorf("before round %d the banner says %q", before+1, told)
	}
	for _, allergen := range planned[before].FreeOf {
		if !strings.Contains(told, string(allergen)) {
			t.Errorf("the banner does not name %s: %q", allergen, told)
		}
	}
	e.showBag(e.work.rounds[before].bags[0].Key)
	e.press(fyne.KeySpace)
	if e.clean.Visible() {
		t.Error("the banner stays after the round has begun")
	}
}

func TestARoundBegunTooEarlyIsTold(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.showBag(e.work.rounds[1].bags[0].Key)
	e.press(fyne.KeySpace)
	if !strings.Contains(e.Said, "round 1 that are still open: ") {
		t.Errorf("it said %q", e.Said)
	}
}

func TestTimeLeftRunsOut(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	whole := e.work.minutes
	if diff := whole - e.work.plan.Packing.Minutes; diff > 1e-6 || diff < -1e-6 {
		t.Errorf("%v minutes left of %v", whole, e.work.plan.Packing.Minutes)
	}
	e.press(fyne.KeySpace)
	if e.work.minutes >= whole {
		t.Errorf("after a bag %v minutes are left, before %v", e.work.minutes, whole)
	}
	var every []int
	for i := range e.work.rounds {
		every = append(every, i)
	}
	e.finish(t, every...)
	if e.work.minutes != 0 || !strings.HasPrefix(e.left.Content, "Every bag is packed: ") || !strings.Contains(e.time.Content, "final check") {
		t.Errorf("%v minutes left, %q %q", e.work.minutes, e.left.Content, e.time.Content)
	}
}

func TestOnlyWhatIsLeft(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.at().bag
	before := len(e.list.rows)
	test.Tap(e.onlyLeft)
	e.press(fyne.KeySpace)
	if len(e.list.rows) != before-1 || slices.ContainsFunc(e.list.rows, func(r row) bool { return r.bag == bag }) {
		t.Errorf("%d rows of %d are shown", len(e.list.rows), before)
	}
	if e.at().bag == nil || e.at().bag == bag {
		t.Error("the cursor did not go on to the next bag")
	}
	if !e.showBag(bag.Key) || e.onlyLeft.Checked || e.at().bag.Key != bag.Key {
		t.Error("a packed bag cannot be found while only the rest is shown")
	}
}

func TestWithoutAPlanTheScreenSaysWhatComes(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	if err := e.Document.Edit("empty the menu", func(t *trip.Trip) error {
		t.Menu, t.Settings.ReserveDays, t.Settings.FillOpenSlots = nil, 0, false
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if e.evening.Visible() || !e.empty.Visible() {
		t.Error("an evening without bags looks like one with bags")
	}
	went := document.Place{}
	e.Document.OnPlace(func(place document.Place) { went = place })
	test.Tap(e.empty.Objects[0].(*fyne.Container).Objects[2].(*fyne.Container).Objects[0].(fyne.Tappable))
	if went.Screen != "menu" {
		t.Errorf("the first step leads to %q", went.Screen)
	}
}

// demoTrip is the whole demo trip, boxes and all.
func demoTrip() *trip.Trip {
	t := demo.Trip()
	return &t
}

// One key packs the whole evening, also from the middle on: after the last bag
// comes the first that was left out.
func TestOneKeyPacksEveryBag(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	for range 3 {
		e.press(fyne.KeyDown)
	}
	all := len(e.work.plan.Bags.Bags)
	for range all {
		e.press(fyne.KeySpace)
	}
	if e.work.done != all {
		t.Errorf("%d times Space packed %d bags", all, e.work.done)
	}
}
