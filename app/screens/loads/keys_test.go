package loads

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func (s *shown) key(names ...fyne.KeyName) {
	for _, name := range names {
		s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

func (s *shown) typed(text string) {
	for _, letter := range text {
		s.Window.Canvas().Focused().TypedRune(letter)
	}
}

// at puts the cursor on the first thing of a member that fits.
func (s *shown) at(name string, fits func(thing) bool) thing {
	s.t.Helper()
	s.showMember(s.named(name))
	x := s.first(name, fits)
	s.choose(x.id())
	s.focus(s.board.content)
	return x
}

func TestABagIsMovedByKeys(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", func(t thing) bool { return shared(t) && s.view.obstacle(&t, s.named("Tomas"), 1) == "" })
	s.typed("mt")
	if s.move == nil || s.move.to != s.named("Tomas") {
		t.Fatalf("after M and T: %+v", s.move)
	}
	s.key(fyne.KeyReturn)
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0].Bag != bag.key || pins[0].Member != s.named("Tomas") {
		t.Errorf("pins %v", pins)
	}
}

func TestArrowsChooseWhoTakesIt(t *testing.T) {
	s := openDemo(t)
	s.at("Olek", shared)
	s.typed("M")
	if why := s.view.obstacle(&s.move.thing, s.move.to, 1); why != "" {
		t.Errorf("the first offer must not be: %s", why)
	}
	s.key(fyne.KeyHome)
	if s.move.to != s.board.members[0] {
		t.Errorf("Home offers it to %d", s.move.to)
	}
	s.key(fyne.KeyRight)
	if s.move.to != s.board.members[1] {
		t.Errorf("Right offers it to %d", s.move.to)
	}
	s.key(fyne.KeyEscape)
	if s.move != nil || len(s.Document.Trip().Pins) != 0 {
		t.Error("Escape does not leave it where it is")
	}
}

func TestATapDropsWhatWasTakenUp(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", func(t thing) bool { return shared(t) && s.view.obstacle(&t, s.named("Tomas"), 1) == "" })
	test.Tap(s.pack.move)
	s.tapColumn(s.named("Tomas"))
	if s.carrier(bag.id()) != s.named("Tomas") {
		t.Errorf("carried by %d, pins %v", s.carrier(bag.id()), s.Document.Trip().Pins)
	}
}

func TestBansAreMadeFollowedAndTakenOff(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", shared)
	s.typed("k")
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0] != (trip.Pin{Bag: bag.key, Member: s.named("Olek"), Forbid: true}) {
		t.Fatalf("pins %v", pins)
	}
	if want := "keep bag " + bag.name + " from Olek"; s.Document.UndoName() != want {
		t.Errorf("undo is called %q, want %q", s.Document.UndoName(), want)
	}
	holder := s.carrier(bag.id())
	if holder == s.named("Olek") || holder == 0 {
		t.Fatalf("it is carried by %d", holder)
	}
	to, _ := s.view.load(holder, 1)
	if want := "is kept from Olek. " + s.view.memberName(holder) + " carries it: " + percent(to.Share) + " on day 1."; !strings.HasSuffix(s.Said, want) {
		t.Errorf("said %q, want … %q", s.Said, want)
	}
	s.showMember(holder)
	s.choose(bag.id())
	if s.pack.free.Disabled() {
		t.Error("the ban cannot be taken off here")
	}
	s.typed("u")
	if len(s.Document.Trip().Pins) != 0 || s.Document.UndoName() != "take the pins off bag "+bag.name {
		t.Errorf("pins %v, undo %q", s.Document.Trip().Pins, s.Document.UndoName())
	}
}

func TestGearIsPinnedByItsID(t *testing.T) {
	s := openDemo(t)
	var kit thing
	for _, m := range s.Document.Trip().Crew {
		for _, x := range s.view.things(m.ID, 1) {
			if x.name == "First-aid kit" {
				kit = x
			}
		}
	}
	to := "Anja"
	if kit.carrier == s.named(to) {
		to = "Tomas"
	}
	s.drag(kit, to)
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0] != (trip.Pin{Gear: 17, Member: s.named(to)}) {
		t.Errorf("pins %v", pins)
	}
	if s.Document.UndoName() != "move First-aid kit to another pack" {
		t.Errorf("undo is called %q", s.Document.UndoName())
	}
}

func TestTheListOfPinsTakesThemOff(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", shared)
	s.typed("k")
	s.tabs.SelectIndex(fairnessTab)
	rows := s.fairness.pins.table.Rows()
	if len(rows) != 1 || s.fairness.pins.none.Visible() {
		t.Fatalf("pins listed: %v", rows)
	}
	if text := s.fairness.pins.thing(rows[0]); !strings.HasPrefix(text, bag.name) {
		t.Errorf("the pin is about %q", text)
	}
	s.fairness.pins.open(rows[0])
	if s.tabs.SelectedIndex() != 0 || s.chosen != bag.id() {
		t.Errorf("opening it shows tab %d, thing %q", s.tabs.SelectedIndex(), s.chosen)
	}
	s.tabs.SelectIndex(fairnessTab)
	s.fairness.pins.table.Delete()
	if len(s.Document.Trip().Pins) != 0 || !strings.HasPrefix(s.Document.UndoName(), "let Olek carry "+bag.name) {
		t.Errorf("pins %v, undo %q", s.Document.Trip().Pins, s.Document.UndoName())
	}
}

func TestTheDayIsChosenByKeysAndSlider(t *testing.T) {
	s := openDemo(t)
	s.focus(s.board.content)
	s.key(fyne.KeyPageDown, fyne.KeyPageDown)
	if s.day != 3 || s.slider.Value != 3 || !strings.Contains(s.dayText.Content, "3") {
		t.Errorf("day %d, slider %v, %q", s.day, s.slider.Value, s.dayText.Content)
	}
	s.slider.SetValue(7)
	if s.day != 7 {
		t.Errorf("the slider leads to day %d", s.day)
	}
	for _, x := range s.view.things(s.member, s.day) {
		if x.bag != nil && x.bag.Day < 7 {
			t.Errorf("bag %s was eaten on day %d and is still listed", x.name, x.bag.Day)
		}
	}
	s.key(fyne.KeyPageUp)
	s.slider.SetValue(99)
	if s.day != 9 {
		t.Errorf("the slider ends at day %d of 9", s.day)
	}
}

func TestEveryActionDoesSomething(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", shared)
	for _, action := range s.Actions() {
		before, move, tab, day := s.Document.UndoName(), s.move, s.tabs.SelectedIndex(), s.day
		if strings.HasPrefix(action.Name, "Day before") {
			s.showDay(4)
			day = 4
		}
		if strings.HasPrefix(action.Name, "Keep") || strings.HasPrefix(action.Name, "Take the pins") {
			s.cancelMove()
			s.GoToThing(bag)
			before, move = s.Document.UndoName(), s.move
		}
		action.Do()
		if s.Document.UndoName() == before && s.move == move && s.tabs.SelectedIndex() == tab && s.day == day {
			t.Errorf("%q does nothing", action.Name)
		}
	}
}

// GoToThing puts the cursor on a thing wherever it is now.
func (s *shown) GoToThing(x thing) {
	s.showDay(1)
	now, _ := s.view.find(x.id(), 1)
	s.showMember(now.carrier)
	s.choose(x.id())
}

func TestWhyAnswersFromTheRules(t *testing.T) {
	s := openDemo(t)
	for _, c := range []struct {
		name string
		fits func(thing) bool
		want []string
	}{
		{"gear of a group", func(x thing) bool { return x.kind == carry.GearItem && x.group == 1 }, []string{"Stays with its cook group.", "It belongs to Larch"}},
		{"own share", func(x thing) bool { return x.bag != nil && x.bag.Member != 0 }, []string{"Own share: carried by who eats it."}},
		{"flour", func(x thing) bool { return shared(x) && s.view.obstacle(&x, s.named("Marit"), 1) != "" }, []string{"Kept from those who are allergic", "gluten", "Marit"}},
		{"fuel", func(x thing) bool { return x.kind == carry.FuelItem }, []string{"Stays with its cook group.", "It belongs to"}},
	} {
		found := false
		for _, m := range s.Document.Trip().Crew {
			for _, x := range s.view.things(m.ID, 1) {
				if found || !c.fits(x) {
					continue
				}
				found = true
				text := s.why(x)
				for _, words := range c.want {
					if !strings.Contains(text, words) {
						t.Errorf("%s: %q is not in\n%s", c.name, words, text)
					}
				}
			}
		}
		if !found {
			t.Errorf("%s: nothing to ask about", c.name)
		}
	}
}

// What why says of the heaviest pack is what a move would make of it.
func TestWhyComparesWithTheNextBest(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", shared)
	best := s.view.best(bag, 1)
	worst := s.view.worstAfter(move{thing: bag, to: best}, 1)
	for _, m := range s.Document.Trip().Crew {
		if m.ID != bag.carrier && s.view.obstacle(&bag, m.ID, 1) == "" && s.view.worstAfter(move{thing: bag, to: m.ID}, 1) < worst {
			t.Errorf("%s would be better than %s", m.Name, s.view.memberName(best))
		}
	}
	if text := s.why(bag); !strings.Contains(text, s.view.memberName(best)) || !strings.Contains(text, percent(s.view.worst(1))) {
		t.Errorf("neither %s nor %s is named in\n%s", s.view.memberName(best), percent(s.view.worst(1)), text)
	}
}

func TestLargeCrewsShowTheGroupOfTheChosen(t *testing.T) {
	s := openTrip(t, triptest.Large(40, 2, 1))
	s.showMember(s.board.members[39])
	if got := len(s.linesOf()); got > mostLines+1 || got < 3 {
		t.Errorf("%d lines", got)
	}
	names := ""
	for _, line := range s.linesOf() {
		names += line.Name + "|"
	}
	if !strings.Contains(names, "heaviest") || !strings.Contains(names, s.view.memberName(s.board.members[39])) {
		t.Errorf("lines %s", names)
	}
}

// BenchmarkDrag moves a bag to and fro over two columns: the work of one step.
func BenchmarkDrag(b *testing.B) {
	for _, c := range []struct {
		name string
		open func() *shown
	}{
		{"demo", func() *shown { return openDemo(b) }},
		{"60x21", func() *shown { return openTrip(b, triptest.Large(60, 21, 1)) }},
	} {
		b.Run(c.name, func(b *testing.B) {
			s := c.open()
			var bag thing
			for _, id := range s.board.members {
				for _, x := range s.view.things(id, 1) {
					if shared(x) {
						bag = x
					}
				}
			}
			r := newRow(s.pack.tap, s.pack.openMenu, s.dragTo, s.drop)
			r.show(bag, rowLook{})
			names := []string{s.view.memberName(s.board.members[2]), s.view.memberName(s.board.members[3])}
			at := []fyne.Position{s.over(names[0]), s.over(names[1])}
			for i := 0; b.Loop(); i++ {
				r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: at[i%2]}})
			}
		})
	}
}
