package packing

import (
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// table is a small evening made by hand: rice for two in one bag, oil apart.
func table() *work {
	t := &trip.Trip{
		Units: units.Metric, Groups: []trip.CookGroup{{ID: 1, Name: "Larch"}},
		Crew:    []trip.Member{{ID: 1, Name: "Ann", Group: 1, Allergies: []trip.Allergy{{Allergen: "kiwi"}}}, {ID: 2, Name: "Bo", Group: 1}},
		Foods:   []trip.Food{food(1, "Rice", trip.Dry, 360), food(2, "Oil", trip.Liquid, 900), food(3, "Bar", trip.Piece, 450)},
		Recipes: []trip.Recipe{{ID: 1, Name: "Rice with oil"}},
		Points:  []trip.ResupplyPoint{{ID: 5, Name: "Hut"}},
	}
	rice := bags.Bag{
		Key: "rice", Code: "1-01K", Day: 1, Meal: trip.Dinner, Group: 1, Recipe: 1, Place: trip.InPot, Eaters: 2, Type: "Bag 1 L",
		Contents: []bags.Content{{Food: 1, Mass: 200 * units.Gram}, {Food: 3, Mass: 50 * units.Gram}}, Food: 250 * units.Gram, Tare: 5 * units.Gram,
		Volume: 400 * units.Millilitre, VolumeKnown: true, Water: 400 * units.Millilitre, Minutes: 12, Soak: 5, Parts: 2, Part: 1, Double: true,
	}
	oil := bags.Bag{
		Key: "oil", Code: "1-02T", Day: 1, Meal: trip.Dinner, Group: 1, Member: 2, Recipe: 1, Place: trip.AtBowl, Eaters: 1, Type: trip.AsBought,
		Contents: []bags.Content{{Food: 2, Mass: 20 * units.Gram}}, Food: 20 * units.Gram, Volume: 22 * units.Millilitre, Crushable: true, Melts: true, Parts: 1, Part: 1,
		Allergens: []bags.Allergen{{Allergen: trip.Soybeans, Presence: trip.NotKnown}},
	}
	p := &plan.Plan{Trip: t, Bags: bags.Result{Bags: []bags.Bag{rice, oil}}}
	p.Packing = packing.Result{
		Rounds: []packing.Round{
			{FreeOf: []trip.Allergen{trip.Soybeans}, CleanFirst: true, Minutes: 40, Steps: []packing.Step{{Station: packing.Label, Bag: "rice"}}},
			{Minutes: 20, Steps: []packing.Step{{Station: packing.Label, Bag: "oil"}}},
		},
		Bulk: []packing.Bulk{
			{Round: 0, Food: 1, Total: 200 * units.Gram, Into: []packing.Weighing{{Bag: "rice", Mass: 200 * units.Gram}}},
			{Round: 0, Food: 3, Total: 50 * units.Gram, Into: []packing.Weighing{{Bag: "rice", Mass: 50 * units.Gram}}},
			{Round: 1, Food: 2, Total: 20 * units.Gram, Into: []packing.Weighing{{Bag: "oil", Mass: 20 * units.Gram}}},
		},
		Minutes: 60,
	}
	return newWork(t, p)
}

func food(id trip.FoodID, name string, form trip.Form, kcal units.Kcal) trip.Food {
	f := trip.Food{ID: id, Name: name, Form: form, Per100g: trip.Nutrients{Kcal: kcal}, Allergens: map[trip.Allergen]trip.Presence{}}
	for _, allergen := range trip.DeclaredAllergens() {
		f.Allergens[allergen] = trip.Free
	}
	return f
}

func TestDurationsAreSaidInFives(t *testing.T) {
	for minutes, want := range map[units.Minutes]string{0: "0 min", 1: "5 min", 5: "5 min", 12: "15 min", 59: "1 h 00 min", 61: "1 h 05 min", 240.4: "4 h 05 min"} {
		if got := timeWords(minutes); got != want {
			t.Errorf("%v minutes are said as %q, want %q", float64(minutes), got, want)
		}
	}
}

func TestTheLabelSaysMealEaterDishAndCooking(t *testing.T) {
	w := table()
	rice, oil := w.bags["rice"], w.bags["oil"]
	for have, want := range map[string]string{
		w.slotWords(rice):  "Day 1, dinner",
		w.eaterWords(rice): "for 2",
		w.eaterWords(oil):  "for Bo only",
		w.dishName(rice):   "Rice with oil",
		partWords(rice):    "bag 1 of 2",
		partWords(oil):     "",
		w.cookWords(rice):  "Add 400 mL of water. 12 min on the flame. 5 min off the flame.",
		w.cookWords(oil):   "Onto the bowls.",
		w.bagWords(rice):   "Bag 1 L, double-bagged · 400 mL · 255 g with its bag",
		w.bagWords(oil):    "stays as bought, breaks easily, melts in heat · at most 22 mL · 20 g with its bag",
		w.stationsOf(rice): "Weigh dry · Count out",
		w.stationsOf(oil):  "Oils and spreads",
		w.roundWords(0):    "Round 1 of 2 · free of soybeans",
		w.roundWords(1):    "Round 2 of 2 · with everything the crew is allergic to",
		w.apartWords(0):    "Keep away: soybeans",
		w.apartWords(1):    "",
		w.roundLeft(0):     "bags left: 1 of 1, about 40 min",
	} {
		if have != want {
			t.Errorf("it says %q, want %q", have, want)
		}
	}
	w.trip.Groups = append(w.trip.Groups, trip.CookGroup{ID: 2, Name: "Rowan"})
	if got := w.slotWords(rice); got != "Day 1, dinner, Larch" {
		t.Errorf("with two groups it says %q", got)
	}
	w.trip.Recipes = nil
	if got := w.dishName(rice); got != "Rice, Bar" {
		t.Errorf("a bag of no recipe is called %q", got)
	}
}

func TestWhereABagGoes(t *testing.T) {
	w := table()
	for _, c := range []struct {
		have, want string
	}{
		{boxWords(w.trip, &resupply.Box{Point: 5}), "Box for Hut"},
		{boxWords(w.trip, &resupply.Box{Point: 5, Posted: true}), "Box for Hut"},
		{boxWords(w.trip, &resupply.Box{Point: 5, Posted: true, PostBy: 20000}), "Box for Hut, to be posted by " + units.Date(20000).Spoken()},
		{packWords(w.trip, 2), "Bo's pack"},
		{packWords(w.trip, 0), "Nobody carries it yet"},
	} {
		if c.have != c.want {
			t.Errorf("it says %q, want %q", c.have, c.want)
		}
	}
}

// Rice has 360 kcal in 100 g: 50 g less are 180 kcal less in the bag, 90 for
// each of two eaters, of 472.5 planned (200 g of rice and 50 g of bar).
func TestTheEffectIsReckonedForEachEater(t *testing.T) {
	w := table()
	rice := w.bags["rice"]
	if got := w.effectWords(rice); got != "" {
		t.Errorf("as planned it says %q", got)
	}
	w.trip.Progress.Packed = []trip.PackedBag{{Bag: "rice", Weighed: []trip.Weighing{{Food: 1, Mass: 150 * units.Gram}}}}
	w = newWork(w.trip, w.plan)
	want := "−50 g in this bag: 382 kcal for each eater instead of 472 (−90 kcal, −19 %)."
	if got := w.effectWords(rice); got != want {
		t.Errorf("it says %q, want %q", got, want)
	}
	w.trip.Units = units.US
	if got := w.effectWords(rice); !strings.HasPrefix(got, "−1.76 oz") && !strings.HasPrefix(got, "−1.8 oz") {
		t.Errorf("in ounces it says %q", got)
	}
}

// What nobody knows of a food stands on its row like what it contains; an
// allergy of the crew that no law lists is asked for too.
func TestAFoodTellsItsAllergens(t *testing.T) {
	w := table()
	if got := allergenWords(w.foodAllergens(1), units.Metric); got != "not known to be free of kiwi" {
		t.Errorf("rice says %q", got)
	}
	w.foods[1].Allergens["kiwi"] = trip.Free
	if got := w.foodAllergens(1); got != nil {
		t.Errorf("rice free of all says %v", got)
	}
	w.foods[1].Allergens[trip.Milk] = trip.MayContain
	delete(w.foods[1].Allergens, trip.Lupin)
	if got := allergenWords(w.foodAllergens(1), units.Metric); got != "may contain milk; not known to be free of lupin" {
		t.Errorf("rice says %q", got)
	}
	if w.foodAllergens(99) != nil {
		t.Error("a food that is gone has allergens")
	}
}

func TestRowsOfTheSmallEvening(t *testing.T) {
	w := table()
	kinds := func(v view, left bool) (list []rowKind) {
		for _, r := range w.rows(v, left) {
			list = append(list, r.kind)
		}
		return list
	}
	same := func(name string, have []rowKind, want ...rowKind) {
		t.Helper()
		if len(have) != len(want) {
			t.Fatalf("%s: %v, want %v", name, have, want)
		}
		for i := range want {
			if have[i] != want[i] {
				t.Fatalf("%s: %v, want %v", name, have, want)
			}
		}
	}
	same("bag by bag", kinds(byBag, false), roundRow, cleanRow, bagRow, roundRow, bagRow)
	same("food by food", kinds(byFood, false),
		roundRow, cleanRow, stationRow, foodRow, weighRow, stationRow, foodRow, weighRow, roundRow, stationRow, foodRow, weighRow)
	w.trip.Progress.Packed = []trip.PackedBag{{Bag: "rice", Weighed: []trip.Weighing{{Food: 1, Mass: 1}}}, {Bag: "gone", Done: true}}
	w = newWork(w.trip, w.plan)
	same("what is left of the weighing", kinds(byFood, true),
		roundRow, cleanRow, stationRow, foodRow, weighRow, roundRow, stationRow, foodRow, weighRow, strayRow)
	w.trip.Progress.Packed[0].Done = true
	w = newWork(w.trip, w.plan)
	same("what is left of the bags", kinds(byBag, true), roundRow, bagRow, strayRow)
	if w.minutes != 20 || w.done != 1 {
		t.Errorf("%v minutes left, %d done", w.minutes, w.done)
	}
}

// A scale of 5 g shows 200 g at best for 202: that is as planned, 190 is not.
func TestNearerThanTheScaleShowsIsAsPlanned(t *testing.T) {
	w := table()
	w.trip.Settings.ScaleStep = 5 * units.Gram
	for _, c := range []struct {
		planned, shown, more, best units.Mass
	}{{202, 200, 0, 200}, {203, 205, 0, 205}, {202, 205, 3, 200}, {202, 190, -12, 200}, {3, 5, 0, 3}} {
		if more := w.beyondScale(c.planned*units.Gram, c.shown*units.Gram); more != c.more*units.Gram {
			t.Errorf("%d g planned, %d g shown: %s more", c.planned, c.shown, more)
		}
		if best := w.onScale(c.planned * units.Gram); best != c.best*units.Gram {
			t.Errorf("%d g planned: the scale is to show %s", c.planned, best)
		}
	}
	w.trip.Progress.Packed = []trip.PackedBag{{Bag: "rice", Weighed: []trip.Weighing{{Food: 1, Mass: 198 * units.Gram}}}}
	w = newWork(w.trip, w.plan)
	if l := w.draw(row{kind: bagRow, bag: w.bags["rice"]}); strings.Contains(l.aside, "scale") || w.effectWords(w.bags["rice"]) != "" {
		t.Errorf("two grams of 5: %+v, %q", l, w.effectWords(w.bags["rice"]))
	}
}

func TestWhatARowShows(t *testing.T) {
	w := table()
	rice, oil := row{kind: bagRow, bag: w.bags["rice"]}, row{kind: bagRow, bag: w.bags["oil"], round: 1}
	if l := w.draw(rice); l.ticked || l.part || l.code != "1-01K" || l.figure != "250 g" || l.noteTone != "" {
		t.Errorf("an open bag shows %+v", l)
	}
	if l := w.draw(oil); l.noteTone == "" || !strings.HasPrefix(l.note, "not known to be free of soybeans") {
		t.Errorf("a bag with an unknown shows %+v", l)
	}
	w.trip.Progress.Packed = []trip.PackedBag{{Bag: "rice", Weighed: []trip.Weighing{{Food: 1, Mass: 212 * units.Gram}}}}
	w = newWork(w.trip, w.plan)
	if l := w.draw(rice); l.ticked || !l.part || l.aside != "+12 g on the scale" {
		t.Errorf("a bag that is begun shows %+v", l)
	}
	weighing := row{kind: weighRow, bag: w.bags["rice"], bulk: &w.plan.Packing.Bulk[0], weighing: w.plan.Packing.Bulk[0].Into[0]}
	if l := w.draw(weighing); !l.ticked || l.figure != "200 g" || l.aside != "+12 g on the scale" {
		t.Errorf("a weighing shows %+v", l)
	}
	if l := w.draw(row{kind: foodRow, bulk: &w.plan.Packing.Bulk[0]}); !l.ticked || l.main != "Rice" || l.aside != "bags it goes into: 1, still open: 0" {
		t.Errorf("a food shows %+v", l)
	}
	if l := w.draw(row{kind: stationRow, station: packing.Wet}); l.main != "Station: Oils and spreads" || l.tickable {
		t.Errorf("a station shows %+v", l)
	}
	if l := w.draw(row{kind: cleanRow}); l.code != "Clean first" || l.note != "Keep away: soybeans" || l.tickable {
		t.Errorf("the cleaning shows %+v", l)
	}
}
