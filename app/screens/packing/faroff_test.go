package packing

import (
	"strconv"
	"strings"
	"testing"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestOnlyWhatIsFarFromThePlanAsksForALook(t *testing.T) {
	w := table()
	w.trip.Settings.ScaleStep = units.Gram
	for _, c := range []struct {
		planned, shown units.Mass
		far            bool
	}{
		{200, 200, false}, {200, 399, false}, {200, 401, true}, {200, 600, true}, {200, 101, false}, {200, 99, true}, {200, 0, true},
		{1, 3, false}, {2, 5, true}, {1, 0, false}, // a pinch on a scale of whole grams
	} {
		if got := w.farOff(c.planned*units.Gram, c.shown*units.Gram); got != c.far {
			t.Errorf("%d g planned, %d g shown: far off %v", c.planned, c.shown, got)
		}
	}
}

func TestAWeightFarFromThePlanIsSaidAndStored(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.several(t)
	first := bag.Contents[0]
	planned := int(first.Mass.Grams())
	e.write(e.label.lines[0], strconv.Itoa(3*planned))
	food := e.work.foodName(first.Food)
	if said := e.label.farOff.Content; !e.label.farOff.Visible() || !strings.Contains(said, food) || !strings.Contains(said, "Look again") {
		t.Errorf("three times the plan says %q", said)
	}
	if drawn := e.work.draw(row{kind: bagRow, bag: bag}); !drawn.warns || !strings.HasPrefix(drawn.aside, "+") || !strings.HasSuffix(drawn.aside, "far off: look again") {
		t.Errorf("its row says %q, warns %v", drawn.aside, drawn.warns)
	}
	if mass, noted := e.packed(bag).WeighedMass(first.Food); !noted || mass != units.Mass(3*planned)*units.Gram {
		t.Errorf("noted %v, %v", mass, noted)
	}
	if err := e.weigh(bag, first.Food, units.Mass(planned+20)*units.Gram); err != nil {
		t.Fatal(err)
	}
	if drawn := e.work.draw(row{kind: bagRow, bag: bag}); e.label.farOff.Visible() || drawn.warns {
		t.Errorf("20 g more say %q and %q", e.label.farOff.Content, drawn.aside)
	}
}

// Two foods that were taken for each other leave the bag as heavy as planned.
func TestFoodsTakenForEachOtherAreFarOff(t *testing.T) {
	w := table()
	w.trip.Progress.Packed = []trip.PackedBag{{Bag: "rice", Weighed: []trip.Weighing{{Food: 1, Mass: 50 * units.Gram}, {Food: 3, Mass: 200 * units.Gram}}}}
	w = newWork(w.trip, w.plan)
	if drawn := w.draw(row{kind: bagRow, bag: w.bags["rice"]}); !drawn.warns || drawn.aside != "far off: look again" {
		t.Errorf("the row says %q", drawn.aside)
	}
	want := "Far from the plan: Rice 50 g instead of 200 g; Bar 200 g instead of 50 g. Look again: a slip of the scale, or the wrong food?"
	if got := w.farOffWords(w.bags["rice"]); got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
}
