package trail

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/demo"
	"sumpter/app/look"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// shown is the screen in a window, with what it told.
type shown struct {
	*Screen
	*benchtest.Desk
	t testing.TB
}

func openTrip(t testing.TB, on *trip.Trip, today units.Date) *shown {
	t.Helper()
	d := benchtest.New(t, on)
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	s.Bench.Calendar = func() units.Date { return today }
	d.Show(s.Screen, 1100, 700)
	return s
}

func openDemo(t testing.TB, day int) *shown {
	on := demo.Trip()
	return openTrip(t, &on, on.DateOf(day))
}

// restOfTheWay opens the tab of it and gives what it shows.
func (s *shown) restOfTheWay() *fyne.Container {
	s.side.tabs.SelectIndex(restTab)
	return s.side.all.column.Box
}

// bagOrPack opens the tab of it and gives what it shows.
func (s *shown) bagOrPack() *fyne.Container {
	s.side.tabs.SelectIndex(0)
	return s.side.chosen.column.Box
}

// words gathers what an object shows.
func words(object fyne.CanvasObject) string {
	switch o := object.(type) {
	case *look.Paragraph:
		return o.Content + "\n"
	case *look.Text:
		return o.Content + "\n"
	case *widget.Button:
		return "[" + o.Text + "]\n"
	case *canvas.Text:
		return o.Text + "\n"
	case *fyne.Container:
		text := ""
		for _, child := range o.Objects {
			text += words(child)
		}
		return text
	case *look.DoubleFrame:
		text := ""
		for _, child := range test.WidgetRenderer(o).Objects() {
			text += words(child)
		}
		return text
	}
	return ""
}

// press taps the button of that text somewhere in an object.
func press(t testing.TB, in fyne.CanvasObject, text string) {
	t.Helper()
	var find func(fyne.CanvasObject) *widget.Button
	find = func(object fyne.CanvasObject) *widget.Button {
		switch o := object.(type) {
		case *widget.Button:
			if o.Text == text {
				return o
			}
		case *fyne.Container:
			for _, child := range o.Objects {
				if button := find(child); button != nil {
					return button
				}
			}
		}
		return nil
	}
	button := find(in)
	if button == nil {
		t.Fatalf("no button %q in\n%s", text, words(in))
	}
	test.Tap(button)
}

func TestTheDayIsTodayWithinTheTripElseTheFirst(t *testing.T) {
	on := demo.Trip()
	s := openDemo(t, 4)
	if s.number != 4 || !strings.Contains(s.date.Content, "Day 4 of 9") {
		t.Errorf("day %d is shown: %s", s.number, s.date.Content)
	}
	s.Do("The next day")
	s.Do("The next day")
	s.Do("The day before")
	if s.number != 5 || s.day.Number != 5 {
		t.Errorf("day %d is shown", s.number)
	}
	s.Do("Today")
	if s.number != 4 {
		t.Errorf("today is day %d", s.number)
	}
	for _, date := range []units.Date{0, on.Start.AddDays(-1), on.Start.AddDays(9)} {
		s.Bench.Calendar = func() units.Date { return date }
		if have := s.dayToday(); have != 1 {
			t.Errorf("on %s day %d is shown", date, have)
		}
	}
	s.show(99)
	if s.number != 9 {
		t.Errorf("day %d", s.number)
	}
}

// After turning to a day, a key ticks off its bags.
func TestAnotherDayHasTheKeyboard(t *testing.T) {
	s := openDemo(t, 1)
	s.turnTo(2)
	s.Type(" ")
	if s.number != 2 || len(s.Document.Trip().Progress.Ends) == 0 {
		t.Errorf("on day %d Space noted nothing", s.number)
	}
}

func TestEveryBagOfTheDayIsThereWithItsCarrier(t *testing.T) {
	s := openDemo(t, 4)
	if len(s.bags.Rows()) == 0 {
		t.Fatal("no bags on day 4")
	}
	columns := s.bagColumns()
	for _, key := range s.bags.Rows() {
		if !strings.HasPrefix(key, "d4 ") {
			t.Errorf("%s is not of day 4", key)
		}
		for _, i := range []int{0, 2, 3, 4, 5, 6} {
			if text := columns[i].Text(key); text == "" || text == "nobody" || text == "–" {
				t.Errorf("%s: %s is %q", key, columns[i].Title, text)
			}
		}
	}
	if present := len(s.packs.Rows()); present != len(s.day.Packs) || present == 0 {
		t.Errorf("%d packs are shown", present)
	}
	if load := s.packColumns()[1].Text(s.packs.Rows()[0]); load == "0.0" || load == "" {
		t.Errorf("the first carries %q", load)
	}
}

func TestOneKeyNotesWhatBecameOfABag(t *testing.T) {
	s := openDemo(t, 4)
	s.bags.Focus()
	s.bags.MoveCursor(0, 0)
	first, second := s.day.Bags[0], s.day.Bags[1]
	focused := s.Window.Canvas().Focused()
	focused.TypedRune(' ')
	s.WantUndo("note that bag " + first.Code + " was eaten")
	if key, _ := s.bags.Selected(); key != second.Key {
		t.Errorf("the cursor is on %s", key)
	}
	focused.TypedRune('t')
	s.bags.MoveCursor(0, 0)
	focused.TypedRune('L')
	progress := s.bench.Trip().Progress
	if end := progress.BagEnd(first.Key); end == nil || end.End != trip.Lost || end.Day != 4 {
		t.Errorf("bag 1: %+v", end)
	}
	if end := progress.BagEnd(second.Key); end == nil || end.End != trip.ThrownAway {
		t.Errorf("bag 2: %+v", end)
	}
	if text := s.bagColumns()[1].Text(first.Key); text != "lost" {
		t.Errorf("the table says %q", text)
	}
	s.bags.MoveCursor(0, 0)
	focused.TypedRune('l')
	s.WantUndo("note that bag " + first.Code + " is still there")
	progress = s.bench.Trip().Progress
	if progress.BagEnd(first.Key) != nil || len(progress.Ends) != 1 {
		t.Errorf("ends %+v", progress.Ends)
	}
	for s.Document.UndoName() != "" {
		_ = s.Document.Undo()
	}
	if len(s.bench.Trip().Progress.Ends) != 0 {
		t.Error("undo does not take the notes back")
	}
	s.Do("All of the day was eaten")
	eatenUp := 0
	for _, bag := range s.day.Bags {
		if bag.LastDay == s.number {
			eatenUp++
		} else if s.bench.Trip().Progress.BagEnd(bag.Key) != nil {
			t.Errorf("bag %s is for later days too", bag.Code)
		}
	}
	if have := len(s.bench.Trip().Progress.Ends); have != eatenUp || eatenUp == len(s.day.Bags) {
		t.Errorf("%d bags are eaten, want %d of %d", have, eatenUp, len(s.day.Bags))
	}
	focused.TypedRune('x')
	s.WantUndo("note that all bags of day 4 were eaten")
}

// The list keeps its order when the rest is planned anew, so that one key goes
// down it.
func TestOneKeyGoesDownTheBagsOfTheDay(t *testing.T) {
	s := openDemo(t, 2)
	s.bags.Focus()
	s.bags.MoveCursor(0, 0)
	var want []string
	for i := range 12 {
		want = append(want, s.day.Bags[i].Key)
		if i > 0 && trip.MealOrder(s.day.Bags[i].MealOn(2)) < trip.MealOrder(s.day.Bags[i-1].MealOn(2)) {
			t.Errorf("%s stands after %s", s.day.Bags[i].MealOn(2), s.day.Bags[i-1].MealOn(2))
		}
	}
	for range want {
		s.Window.Canvas().Focused().TypedRune(' ')
	}
	var have []string
	for _, end := range s.bench.Trip().Progress.Ends {
		have = append(have, end.Bag)
	}
	slices.Sort(want)
	slices.Sort(have)
	if !slices.Equal(have, want) {
		t.Errorf("eaten are %v, the first of the list were %v", have, want)
	}
}

func TestABagSaysHowItIsCooked(t *testing.T) {
	s := openDemo(t, 4)
	for _, bag := range s.day.Bags {
		if bag.Meal != trip.Dinner || bag.Place != trip.InPot || bag.Water == 0 {
			continue
		}
		s.GoTo(findings.Place{Day: 4, Bag: bag.Key})
		text := words(s.bagOrPack())
		recipe := s.bench.Trip().Recipe(bag.Recipe)
		for _, want := range []string{bag.Code, recipe.Name, recipe.Method[0], "Add " + bag.Water.Format(units.Metric), "1390 m", s.memberName(bag.Carrier)} {
			if !strings.Contains(text, want) {
				t.Errorf("%q is not said of %s:\n%s", want, bag.Code, text)
			}
		}
		for _, allergen := range bag.Allergens {
			if !strings.Contains(text, string(allergen.Allergen)+" ("+string(allergen.Presence)+")") {
				t.Errorf("%s is not named:\n%s", allergen.Allergen, text)
			}
		}
		return
	}
	t.Fatal("no cooked dinner on day 4")
}

func TestSomebodyLeavesAndTheRestIsPlannedAnew(t *testing.T) {
	s := openDemo(t, 4)
	leaver := s.packs.Rows()[0]
	for _, id := range s.packs.Rows() { // whoever has the most to hand over, and stays to the end
		a, _ := s.pack(id)
		b, _ := s.pack(leaver)
		if len(a.Items) > len(b.Items) {
			leaver = id
		}
	}
	s.GoTo(findings.Place{Member: leaver})
	packed := len(s.bench.Plan().Bags.Bags)
	name := s.memberName(leaver)
	if text := words(s.bagOrPack()); !strings.Contains(text, name) {
		t.Fatalf("the side shows\n%s", text)
	}
	press(t, s.bagOrPack(), "Leaves after day 4")
	s.WantUndo("let " + name + " leave after day 4")
	if left := s.bench.Trip().Progress.CrewChanges; len(left) != 1 || left[0] != (trip.CrewChange{Member: leaver, Day: 5}) {
		t.Errorf("noted: %+v", left)
	}
	if p := s.bench.Plan(); len(p.Bags.Bags) != packed {
		t.Errorf("%d bags are planned, %d are packed: what is packed stays packed", len(p.Bags.Bags), packed)
	}
	if s.number != 5 || s.side.tabs.SelectedIndex() != restTab {
		t.Errorf("day %d is shown, tab %d", s.number, s.side.tabs.SelectedIndex())
	}
	if _, there := s.pack(leaver); there {
		t.Error("who left still carries")
	}
	if len(s.day.HandOvers) == 0 || !strings.Contains(words(s.restOfTheWay()), name+" gives ") {
		t.Errorf("what is handed over is not listed:\n%s", words(s.restOfTheWay()))
	}
	s.Do("Copy what changes hands this morning")
	if copied := s.bench.Clipboard().Content(); !strings.Contains(copied, name+" gives ") {
		t.Errorf("copied %q", copied)
	}
	s.acceptAndTakeBack()
	press(t, s.restOfTheWay(), "As planned after all")
	s.WantUndo("let " + name + " be there as planned")
	if _, there := s.pack(leaver); !there {
		t.Error("who stays carries nothing")
	}
	for s.Document.UndoName() != "" {
		_ = s.Document.Undo()
	}
	if s.bench.Trip().Progress.UnderWay() {
		t.Error("undo leaves something noted")
	}
	s.show(1)
	s.GoTo(findings.Place{Member: leaver})
	s.Do("The chosen member left before this day")
	if s.Said == "" || s.Document.UndoName() != "" {
		t.Error("nobody can leave before they came")
	}
}

// rows are what can be tapped and has the keyboard in a list of choices.
func rows(list *widget.RadioGroup) []fyne.Tappable {
	var found []fyne.Tappable
	for _, object := range test.WidgetRenderer(list).Objects() {
		if row, ok := object.(fyne.Tappable); ok {
			found = append(found, row)
		}
	}
	return found
}

// acceptAndTakeBack goes on with few hand-overs, looks at what is stored, and
// takes it back.
func (s *shown) acceptAndTakeBack() {
	s.t.Helper()
	if len(s.rest.Choices) < 2 {
		s.t.Fatalf("%d choices", len(s.rest.Choices))
	}
	s.choose(0)
	few := len(s.day.HandOvers)
	s.restOfTheWay()
	splits := s.side.splits
	test.Tap(rows(splits)[1])
	if s.side.splits != splits || s.choice == 0 || splits.Selected == splits.Options[0] {
		s.t.Errorf("choice %d is taken, and the keyboard is lost to the list: %v", s.choice, s.side.splits != splits)
	}
	s.choose(len(s.rest.Choices) - 1)
	if few >= len(s.day.HandOvers) {
		s.t.Errorf("%d hand-overs are few, the fairest split has %d", few, len(s.day.HandOvers))
	}
	s.choose(0)
	overs := s.day.HandOvers
	press(s.t, s.restOfTheWay(), "Go on like this from day 5")
	replan := s.bench.Trip().Progress.Replan(5)
	if replan == nil || len(replan.HandOvers) < len(overs) {
		s.t.Fatalf("stored: %+v of %d", replan, len(overs))
	}
	for _, over := range overs {
		pack, _ := s.pack(over.To)
		if !slices.ContainsFunc(pack.Items, func(i carry.Item) bool { return i.Key == over.Item.Key && i.Kind == over.Item.Kind }) {
			s.t.Errorf("%s is not with %s", over.Item.Key, s.memberName(over.To))
		}
	}
	if s.toDecide() {
		s.t.Error("it is asked for again")
	}
	press(s.t, s.restOfTheWay(), "Decide anew")
	if s.bench.Trip().Progress.Replan(5) != nil || !s.toDecide() {
		s.t.Error("what was decided cannot be decided anew")
	}
}

// Who stands by can join on the way; a few clicks are enough.
func TestSomebodyJoins(t *testing.T) {
	on := demo.Trip()
	on.Crew[len(on.Crew)-1].Standby = true
	guest := on.Crew[len(on.Crew)-1]
	s := openTrip(t, &on, on.DateOf(5))
	if _, there := s.pack(guest.ID); there {
		t.Fatal("who stands by is there")
	}
	s.restOfTheWay()
	s.side.crew.who.SetSelected(guest.Name + " (not there)")
	test.Tap(s.side.crew.joins)
	s.WantUndo("let " + guest.Name + " join on day 5")
	pack, there := s.pack(guest.ID)
	if !there || len(pack.Items) == 0 {
		t.Errorf("who joined has %+v", pack)
	}
	if text := words(s.restOfTheWay()); !strings.Contains(text, guest.Name+" is there from day 5 on.") {
		t.Errorf("not said:\n%s", text)
	}
}

// All of a dinner is lost: what is left is spread out, and taking it over
// moves the bags on the screen.
func TestLostFoodIsSpreadOut(t *testing.T) {
	s := openDemo(t, 4)
	if err := s.bench.Edit("lose the dinners", func(t *trip.Trip) error {
		for _, bag := range s.day.Bags {
			if bag.Meal == trip.Dinner {
				t.Progress.Ends = append(t.Progress.Ends, trip.BagEnd{Bag: bag.Key, End: trip.Lost, Day: 4})
			}
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	text := words(s.restOfTheWay())
	if s.rest == nil || len(s.rest.Moves) == 0 || !strings.Contains(text, "Better eaten at another meal") || !strings.Contains(text, "Not there:") {
		t.Fatalf("what is left is not said:\n%s", text)
	}
	move := s.rest.Moves[0]
	press(t, s.restOfTheWay(), "Go on like this from day 4")
	if undo := s.Document.UndoName(); !strings.HasPrefix(undo, "go on as shown from day 4 ") {
		t.Errorf("undo is called %q", undo)
	}
	if len(s.rest.Moves) != 0 {
		t.Errorf("still proposed: %+v", s.rest.Moves)
	}
	s.show(move.ToDay)
	if bag, there := s.bag(move.Bags[0]); !there || bag.Meal != move.ToMeal {
		t.Errorf("bag %s is not at %s of day %d", move.Bags[0], move.ToMeal, move.ToDay)
	}
	s.show(4)
	press(t, s.restOfTheWay(), "Decide anew")
	if len(s.bench.Trip().Progress.Replans) != 0 {
		t.Error("bags are still moved")
	}
}

func TestABoxThatDoesNotComeSaysWhatIsLeft(t *testing.T) {
	s := openDemo(t, 1)
	if text := words(s.restOfTheWay()); !strings.Contains(text, "Quarry Halt post office") || !strings.Contains(text, "Tarn Hut") {
		t.Fatalf("the boxes are not listed:\n%s", text)
	}
	press(t, s.restOfTheWay(), "This box did not come")
	s.WantUndo("note that the box at Quarry Halt post office did not come")
	if missing := s.bench.Trip().Progress.MissingBoxes; len(missing) != 1 || missing[0] != 1 {
		t.Errorf("missing %v", missing)
	}
	text := words(s.restOfTheWay())
	if !strings.Contains(text, "are missing") || !strings.Contains(text, "days of what the group burns") || !strings.Contains(text, "evening of day 1") {
		t.Errorf("what it means is not said:\n%s", text)
	}
	s.show(3)
	if text := words(s.restOfTheWay()); !strings.Contains(text, "must fix") || !strings.Contains(text, "hold 10 bags") || strings.Contains(text, "fault of the program") || !strings.Contains(text, "is past") {
		t.Errorf("on arrival:\n%s", text)
	}
	s.show(4)
	if len(s.day.Bags) > 0 || !strings.Contains(s.under.Content, "No bag") {
		t.Errorf("%d bags without the box, and %q", len(s.day.Bags), s.under.Content)
	}
	s.show(3)
	press(t, s.restOfTheWay(), "It came after all")
	if len(s.bench.Trip().Progress.MissingBoxes) != 0 {
		t.Error("it is still missing")
	}
	s.show(9)
	if text := words(s.restOfTheWay()); strings.Contains(text, "Boxes to come") {
		t.Errorf("no box comes on the last day:\n%s", text)
	}
}

func TestFuelAndCautionsAreThere(t *testing.T) {
	s := openDemo(t, 4)
	text := words(s.restOfTheWay())
	for _, want := range []string{"Fuel this morning", "Treat all water", "Larch", "today takes"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said:\n%s", want, text)
		}
	}
}

func TestATripWithoutAMenuSaysWhatComesHere(t *testing.T) {
	start, err := units.NewDate(2027, 6, 1)
	if err != nil {
		t.Fatal(err)
	}
	s := openTrip(t, trip.New("x", start), start)
	if text := words(s.bagOrPack()) + words(s.restOfTheWay()); !strings.Contains(text, "Nothing is eaten") && !strings.Contains(text, "Here comes the day") {
		t.Errorf("an empty day says\n%s", text)
	}
	s.Do("The bag was eaten")
	if s.Document.UndoName() != "" {
		t.Error("a bag that is not there was eaten")
	}
}

func BenchmarkRefreshLargest(b *testing.B) {
	on := triptest.Large(60, 21, 1)
	s := openTrip(b, on, on.DateOf(10))
	b.ResetTimer()
	for range b.N {
		s.Refresh()
	}
}
