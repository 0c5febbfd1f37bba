package packing

import (
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/packing"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// write types a weight into a field as a person does, and leaves it with Return.
func (e *evening) write(line *contentLine, text string) {
	e.Window.Canvas().Focus(line.entry)
	line.entry.SetText("")
	test.Type(line.entry, text)
	line.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

// several goes to a bag of more than one food for more than one eater.
func (e *evening) several(t *testing.T) *bags.Bag {
	t.Helper()
	for i := range e.work.plan.Bags.Bags {
		bag := &e.work.plan.Bags.Bags[i]
		if len(bag.Contents) > 2 && bag.Eaters > 1 && e.work.foods[bag.Contents[0].Food].Per100g.Kcal > 100 {
			e.showBag(bag.Key)
			return bag
		}
	}
	t.Fatal("there is no such bag")
	return nil
}

func TestWhatTheScaleShowsChangesTheEatersKcal(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	first := e.label.lines[0]
	grams := int(bag.Contents[0].Mass.Grams()) - 50
	e.write(first, strconv.Itoa(grams))
	if mass, noted := e.packed(bag).WeighedMass(bag.Contents[0].Food); !noted || mass != units.Mass(grams)*units.Gram {
		t.Fatalf("noted %v, %v", mass, noted)
	}
	if focused := e.Window.Canvas().Focused(); focused != e.label.lines[1].entry {
		t.Errorf("Return leads to %T", focused)
	}
	planned, packed := e.work.kcal(bag)
	food := e.work.foods[bag.Contents[0].Food]
	lost := food.Kcal(bag.Contents[0].Mass) - food.Kcal(units.Mass(grams)*units.Gram)
	if d := planned - packed - lost; d > 1e-6 || d < -1e-6 || lost <= 0 {
		t.Errorf("%v kcal planned, %v packed, %v less on the scale", planned, packed, lost)
	}
	each := signed(-float64(lost) / float64(bag.Eaters))
	if !strings.Contains(e.label.effect.Content, each+" kcal") || !e.label.effect.Visible() {
		t.Errorf("the effect %q does not say %s kcal", e.label.effect.Content, each)
	}
	if !strings.HasPrefix(first.difference.Content, "−") {
		t.Errorf("the difference is %q", first.difference.Content)
	}
	if e.Document.UndoName() != "note the weight of "+food.Name+" in bag "+bag.Code {
		t.Errorf("undo is called %q", e.Document.UndoName())
	}
}

func TestAnEmptyFieldForgetsTheWeight(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	e.write(e.label.lines[0], "3")
	e.write(e.label.lines[0], "")
	if e.packed(bag) != nil || e.label.effect.Visible() {
		t.Errorf("still noted: %+v, %q", e.packed(bag), e.label.effect.Content)
	}
}

func TestAWeightWithoutMeaningIsNotStored(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	e.Window.Canvas().Focus(e.label.lines[0].entry)
	e.label.lines[0].entry.SetText("a pinch")
	if e.Commit() || e.Said == "" || e.packed(bag) != nil {
		t.Errorf("said %q, noted %+v", e.Said, e.packed(bag))
	}
	e.label.lines[0].entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if !e.Commit() || e.Window.Canvas().Focused() != fyne.Focusable(e.list) {
		t.Error("Escape does not go back to the list")
	}
}

// Ounces of the planned amount, written as they are shown, are the planned
// amount to the milligram.
func TestOuncesAsPlannedAreAsPlanned(t *testing.T) {
	made := benchtest.DemoDays(2)
	made.Units = units.US
	e := open(t, made)
	bag := e.several(t)
	e.write(e.label.lines[0], e.label.lines[0].entry.PlaceHolder)
	if mass, noted := e.packed(bag).WeighedMass(bag.Contents[0].Food); !noted || mass != bag.Contents[0].Mass {
		t.Errorf("noted %v of %v", mass, bag.Contents[0].Mass)
	}
}

func TestClickingElsewhereStoresTheWeight(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	e.Window.Canvas().Focus(e.label.lines[0].entry)
	e.label.lines[0].entry.SetText("1")
	e.Window.Canvas().Focus(e.list)
	if record := e.packed(bag); record == nil || record.Weighed[0].Mass != units.Gram {
		t.Errorf("noted %+v", record)
	}
}

// Food by food each content of each bag is there once, under its food.
func TestFoodByFoodWeighsEachContentOnce(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.views.SetSelected("Food by food")
	type put struct {
		bag  string
		food trip.FoodID
	}
	seen := map[put]int{}
	var head *packing.Bulk
	var sum units.Mass
	check := func() {
		if head != nil && sum != head.Total {
			t.Errorf("food %d: %v of %v", head.Food, sum, head.Total)
		}
		sum = 0
	}
	for _, r := range e.list.rows {
		switch r.kind {
		case foodRow:
			check()
			head = r.bulk
		case weighRow:
			if r.bulk != head {
				t.Fatalf("a weighing stands under the wrong food")
			}
			seen[put{r.bag.Key, r.bulk.Food}]++
			sum += r.weighing.Mass
		}
	}
	check()
	want := 0
	for i := range e.work.plan.Bags.Bags {
		for _, c := range e.work.plan.Bags.Bags[i].Contents {
			want++
			if seen[put{e.work.plan.Bags.Bags[i].Key, c.Food}] != 1 {
				t.Errorf("bag %s, food %d: %d rows", e.work.plan.Bags.Bags[i].Code, c.Food, seen[put{e.work.plan.Bags.Bags[i].Key, c.Food}])
			}
		}
	}
	if len(seen) != want {
		t.Errorf("%d weighings for %d contents", len(seen), want)
	}
}

func TestSpaceOnAFoodPutsItIntoAllItsBags(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.views.SetSelected("Food by food")
	bulk := e.at().bulk
	if e.at().kind != foodRow || bulk == nil {
		t.Fatalf("the cursor stands on %+v", e.at())
	}
	e.press(fyne.KeySpace)
	if in, all := e.work.allIn(bulk); in != all || all != len(bulk.Into) {
		t.Errorf("in %d of %d bags", in, all)
	}
	if e.work.done != 0 {
		t.Error("weighing in closes a bag")
	}
	if at := e.at(); at.kind != foodRow || at.bulk == bulk {
		t.Error("the cursor did not go on to the next food")
	}
	e.list.selectKey(row{kind: foodRow, bulk: bulk, round: bulk.Round}.key())
	e.press(fyne.KeySpace)
	if e.Document.Trip().Progress.Packed != nil {
		t.Errorf("taken out again, noted is %+v", e.Document.Trip().Progress.Packed)
	}
}

func TestSpaceOnAWeighingPutsItIntoOneBag(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	e.views.SetSelected("Food by food")
	e.press(fyne.KeyDown)
	r := e.at()
	if r.kind != weighRow {
		t.Fatalf("the cursor stands on a row of kind %d", r.kind)
	}
	e.press(fyne.KeySpace)
	if mass, noted := e.packed(r.bag).WeighedMass(r.bulk.Food); !noted || mass != r.weighing.Mass || e.work.isDone(r.bag) {
		t.Errorf("noted %v, %v", mass, noted)
	}
	e.list.selectKey(r.key())
	e.press(fyne.KeySpace)
	if e.packed(r.bag) != nil {
		t.Errorf("taken out, noted is %+v", e.packed(r.bag))
	}
}

func TestGoToABagAndToAFood(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := &e.work.plan.Bags.Bags[len(e.work.plan.Bags.Bags)-1]
	e.GoTo(findings.Place{Bag: bag.Key})
	if e.at().bag == nil || e.at().bag.Key != bag.Key {
		t.Errorf("went to %+v", e.at().bag)
	}
	food := e.work.plan.Packing.Bulk[len(e.work.plan.Packing.Bulk)-1].Food
	e.GoTo(findings.Place{Food: food})
	if at := e.at(); at.kind != foodRow || at.bulk.Food != food || e.label.row.bulk == nil {
		t.Errorf("went to %+v", at)
	}
}

func benchmarkEvening(b *testing.B, do func(e *evening)) {
	e := open(b, triptest.Large(60, 21, 1))
	b.ResetTimer()
	for b.Loop() {
		do(e)
	}
}

func BenchmarkTick60x21(b *testing.B) {
	benchmarkEvening(b, func(e *evening) { e.press(fyne.KeySpace) })
}

func BenchmarkMoveCursor60x21(b *testing.B) {
	benchmarkEvening(b, func(e *evening) { e.press(fyne.KeyDown) })
}

func BenchmarkFoodByFood60x21(b *testing.B) {
	benchmarkEvening(b, func(e *evening) {
		e.showView(byFood)
		e.showView(byBag)
	})
}
