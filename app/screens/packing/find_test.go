package packing

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestABagIsFoundByItsCodeHoweverItIsTyped(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := &e.work.plan.Bags.Bags[7]
	for _, text := range []string{
		bag.Code, strings.ToLower(bag.Code), strings.ReplaceAll(bag.Code, "-", ""), " " + strings.Replace(bag.Code, "-", " ", 1), bag.Code[:len(bag.Code)-1],
	} {
		if found, why := e.work.find(text); found == nil || found.Key != bag.Key {
			t.Errorf("%q finds %v, %q", text, found, why)
		}
	}
}

func TestACodeThatIsNoneIsNotGuessed(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	code := e.work.plan.Bags.Bags[3].Code
	wrong := code[:len(code)-1] + "A"
	if wrong == code {
		wrong = code[:len(code)-1] + "F"
	}
	for text, says := range map[string]string{
		wrong: "Read it again", "9-99": "No bag begins", "1-": "type on", "": "",
	} {
		found, why := e.work.find(text)
		if found != nil || !strings.Contains(why, says) {
			t.Errorf("%q finds %v and says %q", text, found, why)
		}
	}
}

// At the final check: type the code, read whose pack it goes into.
func TestTypingACodeInTheListShowsWhereTheBagGoes(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := &e.work.plan.Bags.Bags[12]
	e.Window.Canvas().Focus(e.list)
	e.list.TypedRune(rune(bag.Code[0]))
	if e.Window.Canvas().Focused() != fyne.Focusable(e.search) {
		t.Fatal("a digit does not begin the search")
	}
	test.Type(e.search, bag.Code[1:])
	if e.label.code.Content != bag.Code || e.at().bag.Key != bag.Key {
		t.Fatalf("the label shows %s, not %s", e.label.code.Content, bag.Code)
	}
	if into := e.label.into.Content; !strings.HasSuffix(into, "'s pack") {
		t.Errorf("it goes into %q", into)
	}
	e.search.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if e.search.Text != "" || e.Window.Canvas().Focused() != fyne.Focusable(e.list) {
		t.Error("Return does not go back to the list")
	}
}

func TestABagForABoxSaysWhenItIsPosted(t *testing.T) {
	e := open(t, demoTrip())
	boxed, carried := 0, 0
	for i := range e.work.plan.Bags.Bags {
		switch into := e.work.into(e.work.plan.Bags.Bags[i].Key); {
		case strings.HasPrefix(into, "Box for "):
			boxed++
		case strings.HasSuffix(into, "'s pack"):
			carried++
		default:
			t.Errorf("bag %s goes into %q", e.work.plan.Bags.Bags[i].Code, into)
		}
	}
	if boxed == 0 || carried == 0 {
		t.Errorf("%d bags in boxes, %d in packs", boxed, carried)
	}
}

// A label names every allergen in full, and what nobody knows is not free.
func TestLabelNamesAllergensInFull(t *testing.T) {
	told := allergenWords([]bags.Allergen{
		{Allergen: trip.Peanuts, Presence: trip.Contains}, {Allergen: trip.Milk, Presence: trip.NotKnown},
		{Allergen: trip.Nuts, Presence: trip.MayContain}, {Allergen: trip.Sesame, Presence: trip.Contains},
	}, units.Metric)
	if told != "contains peanuts, sesame; may contain nuts; not known to be free of milk" {
		t.Errorf("the label says %q", told)
	}
	e := open(t, benchtest.DemoDays(2))
	for _, r := range e.list.rows {
		if r.kind != bagRow {
			continue
		}
		e.label.show(r)
		if e.label.frame.Visible() != (len(r.bag.Allergens) > 0) {
			t.Fatalf("bag %s with %v: the frame is shown: %v", r.bag.Code, r.bag.Allergens, e.label.frame.Visible())
		}
		for _, a := range r.bag.Allergens {
			if !strings.Contains(e.label.danger.Content, string(a.Allergen)) {
				t.Errorf("the label of %s does not name %s", r.bag.Code, a.Allergen)
			}
		}
	}
}

// When the plan changes after packing, what is in the bags stays told.
func TestBagsOfAnOlderPlanAreTold(t *testing.T) {
	e := open(t, benchtest.DemoDays(2))
	bag := e.at().bag
	if err := e.Document.Edit("pack by another plan", func(on *trip.Trip) error {
		record := noted(on, bag.Key)
		record.Done = true
		for i := range on.Foods {
			if !holds(bag, on.Foods[i].ID) {
				record.Weighed = []trip.Weighing{{Food: on.Foods[i].ID, Mass: 5000}}
				break
			}
		}
		noted(on, "d9 dinner g1 r1 b1 pot 1").Done = true
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if !e.work.outdated(bag) || !strings.Contains(e.work.draw(row{kind: bagRow, bag: bag}).note, "open it again") {
		t.Error("a bag that holds other food than planned is not told")
	}
	e.press(fyne.KeyEnd)
	if at := e.at(); at.kind != strayRow {
		t.Fatalf("the last row is of kind %d", at.kind)
	}
	e.press(fyne.KeySpace)
	if len(e.work.strays) != 0 || e.Document.Trip().Progress.PackedBag(bag.Key) == nil {
		t.Error("Space does not take the stray bag off the list, or takes another")
	}
}

func holds(bag *bags.Bag, food trip.FoodID) bool {
	for _, c := range bag.Contents {
		if c.Food == food {
			return true
		}
	}
	return false
}
