package menu

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/domain/trip"
)

// text gathers all that the page of the slot says.
func (s *shown) text() string {
	var words []string
	for _, object := range test.LaidOutObjects(s.side.page) {
		switch o := object.(type) {
		case *look.Paragraph:
			words = append(words, o.Content)
		case *canvas.Text:
			words = append(words, o.Text)
		}
	}
	return strings.Join(words, "\n")
}

// press taps the first button of the page with the words.
func (s *shown) press(words string) {
	s.t.Helper()
	for _, object := range test.LaidOutObjects(s.side.page) {
		if b, ok := object.(*widget.Button); ok && b.Text == words {
			test.Tap(b)
			return
		}
	}
	s.t.Fatalf("no button %q", words)
}

func TestTheSideTellsTheWholeMeal(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	text := s.text()
	for _, part := range []string{dal, crumble, "For everybody", "Soya drink powder instead of Whole milk powder: Ines", "Water:", "Flame:", "Fuel:", "Safe here:"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not told:\n%s", part, text)
		}
	}
	p := s.Document.Plan()
	for _, batch := range p.Portions.Batches {
		if batch.Day == 3 && batch.Meal == trip.Dinner && batch.Group == 1 && batch.Dish == 0 {
			most := massOf(batch.Portions[0])
			for _, portion := range batch.Portions {
				most = max(most, massOf(portion))
			}
			if !strings.Contains(text, most.Format(p.Trip.Units)) {
				t.Errorf("the largest portion, %v, is not told", most)
			}
		}
	}
}

func TestADishWithoutAStoveIsNotCalledCold(t *testing.T) {
	s := openDemo(t)
	if got := s.seen.facts(lunch3).figures; !strings.HasSuffix(got, "cold") {
		t.Fatalf("a meal made cold says %q", got)
	}
	err := s.Document.Edit("leave the stoves at home", func(on *trip.Trip) error {
		on.Gear = slices.DeleteFunc(on.Gear, func(g trip.Gear) bool { return g.Kind == trip.Stove })
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	s.at(dinner3)
	if got := s.seen.facts(dinner3).figures; !strings.HasSuffix(got, "no flame") {
		t.Errorf("the cell says %q", got)
	}
	if text := s.text(); !strings.Contains(text, "no flame to cook on here: "+dal) || strings.Contains(text, "Made without flame") {
		t.Errorf("the side says %q", text)
	}
	if got := s.seen.facts(lunch3).figures; !strings.HasSuffix(got, "cold") {
		t.Errorf("what needs no flame says %q", got)
	}
}

func TestTakingADishOut(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.press("Take out")
	s.want(dinner3, crumble, "take Red lentil dal with rice out of dinner of day 3 (Larch)")
}

func TestChoosingWhoADishIsFor(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.press("For whom…")
	var first *widget.Check
	for _, object := range test.LaidOutObjects(s.side.page) {
		if check, ok := object.(*widget.Check); ok && first == nil {
			first = check
		}
	}
	test.Tap(first)
	eaters := s.Document.Trip().Eaters(3, 1)
	dish := s.Document.Trip().Cell(3, trip.Dinner, 1).Dishes[0]
	if !slices.Equal(dish.For, eaters[1:]) || s.Document.UndoName() != "change who gets Red lentil dal with rice at dinner of day 3 (Larch)" {
		t.Errorf("for %v of %v, undo %q", dish.For, eaters, s.Document.UndoName())
	}
	if slices.Contains(membersOf(&s.seen.slots[dinner3].Dishes[0]), eaters[0]) {
		t.Error("who was ticked off is still served in the plan")
	}
	if err := s.serveTo(dinner3, dish.Recipe, eaters); err != nil {
		t.Fatal(err)
	}
	if dish := s.Document.Trip().Cell(3, trip.Dinner, 1).Dishes[0]; dish.For != nil {
		t.Errorf("for everybody is kept as %v", dish.For)
	}
	if err := s.serveTo(dinner3, dish.Recipe, nil); err == nil {
		t.Error("a dish for nobody was taken")
	}
}

// refuse makes the dal hold gluten, so that Marit, who has coeliac disease,
// is not served it.
func refuse(t *trip.Trip) (member trip.MemberID, food trip.FoodID) {
	recipe := t.Recipe(t.Cell(3, trip.Dinner, 1).Dishes[0].Recipe)
	recipe.Ingredients[0].Swaps = nil
	food = recipe.Ingredients[0].Food
	t.Food(food).Allergens[trip.Gluten] = trip.MayContain
	return 3, food
}

func TestADangerIsAcceptedOnlyWithAReasonAndStaysAFinding(t *testing.T) {
	s := openDemo(t)
	var food trip.FoodID
	s.edit(func(t *trip.Trip) { _, food = refuse(t) })
	s.at(dinner3)
	if !strings.Contains(s.text(), "gets no "+dal) {
		t.Fatalf("nobody is refused:\n%s", s.text())
	}
	s.press("Serve it all the same, by hand…")
	if text := s.text(); !strings.Contains(text, "allergic to gluten") || !strings.Contains(text, "Traces harm") || !strings.Contains(text, "can harm or kill") {
		t.Errorf("the caution is not whole:\n%s", text)
	}
	s.press("I take this on") // without a reason: nothing happens
	if dish := s.Document.Trip().Cell(3, trip.Dinner, 1).Dishes[0]; len(dish.Accepted) != 0 {
		t.Fatal("accepted without a reason")
	}
	s.side.form.reason.SetText("read this very pack with her")
	s.press("I take this on")
	dish := s.Document.Trip().Cell(3, trip.Dinner, 1).Dishes[0]
	want := trip.Acceptance{Member: 3, Food: food, Reason: "read this very pack with her"}
	if len(dish.Accepted) != 1 || dish.Accepted[0] != want {
		t.Fatalf("accepted %+v", dish.Accepted)
	}
	if !strings.Contains(s.text(), "by your decision") || s.seen.facts(dinner3).word == "" {
		t.Error("what was accepted is no longer a finding")
	}
	s.press("Take it back")
	if dish := s.Document.Trip().Cell(3, trip.Dinner, 1).Dishes[0]; len(dish.Accepted) != 0 {
		t.Errorf("still accepted: %+v", dish.Accepted)
	}
}

func TestADishForThoseWhoGetNothing(t *testing.T) {
	s := openDemo(t)
	s.edit(func(t *trip.Trip) {
		refuse(t)
		cell := t.Cell(3, trip.Dinner, 1)
		cell.Dishes = cell.Dishes[:1]
	})
	if got := s.seen.without(dinner3); !slices.Equal(got, []trip.MemberID{3}) {
		t.Fatalf("%v get nothing, want Marit", got)
	}
	s.at(dinner3)
	s.key(fyne.KeyReturn)
	ways := s.side.chooser.way
	ways.SetSelected(ways.Options[len(ways.Options)-1])
	s.typed("mushroom")
	s.keyToFocused(fyne.KeyReturn)
	s.want(dinner3, dal+" + "+risotto, "add Mushroom risotto to dinner of day 3 (Larch)")
	if dish := s.Document.Trip().Cell(3, trip.Dinner, 1).Dishes[1]; !slices.Equal(dish.For, []trip.MemberID{3}) {
		t.Errorf("it is for %v", dish.For)
	}
}

// TestChoicesKeepTheirPromise: what the list says a recipe changes is what
// the plan then has, on the needs of before.
func TestChoicesKeepTheirPromise(t *testing.T) {
	s := openDemo(t)
	s.at(lunch3)
	s.key(fyne.KeyReturn)
	c := s.side.chooser
	at := slices.IndexFunc(c.all, func(one choice) bool { return one.suits && !one.served })
	promised := c.all[at]
	if !promised.tried || promised.outcome.MealKcal == 0 || c.now.MealKcal == 0 {
		t.Fatalf("nothing was worked out: %+v", promised)
	}
	s.side.chooser.take(slices.Index(c.found, at), c.chosenWay())
	p, kcal := s.Document.Plan(), 0.0
	for _, batch := range p.Portions.Batches {
		if batch.Day == 3 && batch.Meal == trip.Lunch && batch.Group == 1 {
			for _, portion := range batch.Portions {
				kcal += float64(portion.Kcal)
			}
		}
	}
	mean := kcal / float64(promised.outcome.Eaters)
	if off := mean/float64(promised.outcome.MealKcal) - 1; off > 0.02 || off < -0.02 {
		t.Errorf("promised %.0f kcal, served %.0f", float64(promised.outcome.MealKcal), mean)
	}
}

func TestTheSearchSaysWhenNothingIsFound(t *testing.T) {
	s := openDemo(t)
	s.at(lunch3)
	s.key(fyne.KeyReturn)
	s.typed("zzz")
	if s.side.chooser.caption.Content != "No recipe is called that." {
		t.Errorf("it says %q", s.side.chooser.caption.Content)
	}
	s.keyToFocused(fyne.KeyReturn)
	s.want(lunch3, crackers, "")
}

func TestThePictureFollowsDayAndMember(t *testing.T) {
	s := openDemo(t)
	s.at(dinner4)
	if want := "Day 4"; !strings.HasPrefix(s.food.heading.Content, want) {
		t.Errorf("the picture is of %q", s.food.heading.Content)
	}
	s.food.whose.SetSelectedIndex(2)
	if name := s.Document.Trip().Crew[1].Name; !strings.HasPrefix(s.food.heading.Content, name) {
		t.Errorf("the picture is of %q", s.food.heading.Content)
	}
}
