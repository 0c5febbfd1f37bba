package loads

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// shown is the screen on a window of the test driver.
type shown struct {
	*Screen
	*benchtest.Desk
	t testing.TB
}

func openTrip(t testing.TB, on *trip.Trip) *shown {
	t.Helper()
	d := benchtest.New(t, on)
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	d.Show(s.Screen, 1100, 720)
	return s
}

func openDemo(t testing.TB) *shown { return openTrip(t, benchtest.Demo()) }

// named finds a member by name.
func (s *shown) named(name string) trip.MemberID {
	s.t.Helper()
	for _, m := range s.Document.Trip().Crew {
		if m.Name == name {
			return m.ID
		}
	}
	s.t.Fatalf("nobody is called %s", name)
	return 0
}

// over is a point inside a member's column, in the window.
func (s *shown) over(name string) fyne.Position {
	s.t.Helper()
	i := slices.Index(s.board.members, s.named(name))
	from, to := s.board.chart.Span(i)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.board.scroll)
	return at.AddXY((from+to)/2-s.board.scroll.Offset.X, 150)
}

// drag carries a thing from its row over members and drops it on the last.
func (s *shown) drag(t thing, names ...string) (tag string) {
	r := newRow(s.pack.tap, s.pack.openMenu, s.dragTo, s.drop)
	r.show(t, rowLook{})
	for _, name := range names {
		r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: s.over(name)}})
	}
	tag = s.ghost.lines[1].Text
	r.DragEnd()
	return tag
}

// first finds the first thing a member carries that fits.
func (s *shown) first(name string, fits func(thing) bool) thing {
	s.t.Helper()
	for _, t := range s.view.things(s.named(name), s.day) {
		if fits(t) {
			return t
		}
	}
	s.t.Fatalf("%s carries nothing like that on day %d", name, s.day)
	return thing{}
}

// firstOfAll finds the first thing anybody carries that fits.
func (s *shown) firstOfAll(fits func(thing) bool) thing {
	s.t.Helper()
	for _, m := range s.Document.Trip().Crew {
		for _, t := range s.view.things(m.ID, s.day) {
			if fits(t) {
				return t
			}
		}
	}
	s.t.Fatalf("nobody carries anything like that on day %d", s.day)
	return thing{}
}

// carrier gives who carries a thing on the day shown.
func (s *shown) carrier(id string) trip.MemberID {
	t, ok := s.view.find(id, s.day)
	if !ok {
		return 0
	}
	return t.carrier
}

func shared(t thing) bool { return t.kind == carry.BagItem && t.bag.Member == 0 }

func TestADraggedBagIsPinnedAndTheRestSplitAnew(t *testing.T) {
	s := openDemo(t)
	bag := s.first("Olek", func(t thing) bool { return shared(t) && s.view.obstacle(&t, s.named("Tomas"), 1) == "" })
	before := s.view.worst(1)
	tag := s.drag(bag, "Ines", "Tomas")
	if !strings.Contains(tag, "Olek") || !strings.Contains(tag, "Tomas") || strings.Count(tag, "→") != 2 {
		t.Errorf("while dragging it says %q", tag)
	}
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0] != (trip.Pin{Bag: bag.key, Member: s.named("Tomas")}) {
		t.Fatalf("pins %v", pins)
	}
	if want := "move bag " + bag.name + " to another pack"; s.Document.UndoName() != want {
		t.Errorf("undo is called %q, want %q", s.Document.UndoName(), want)
	}
	if s.carrier(bag.id()) != s.named("Tomas") {
		t.Error("after planning Tomas does not carry it")
	}
	if after := s.view.worst(1); after > before*1.05 {
		t.Errorf("the rest was not split anew: heaviest share %.4f, was %.4f", after, before)
	}
	if s.member != s.named("Tomas") || s.chosen != bag.id() {
		t.Errorf("the bag is not shown where it went: member %d, thing %q", s.member, s.chosen)
	}
	if err := s.Document.Undo(); err != nil || len(s.Document.Trip().Pins) != 0 {
		t.Errorf("after undo: pins %v, %v", s.Document.Trip().Pins, err)
	}
}

func TestDroppingBesideTheColumnsMovesNothing(t *testing.T) {
	s := openDemo(t)
	bag := s.first("Olek", shared)
	r := newRow(s.pack.tap, s.pack.openMenu, s.dragTo, s.drop)
	r.show(bag, rowLook{})
	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: fyne.NewPos(1090, 700)}})
	if s.move == nil || !s.ghost.ground.Visible() {
		t.Fatal("nothing is under way")
	}
	r.DragEnd()
	if s.move != nil || s.ghost.ground.Visible() || len(s.Document.Trip().Pins) != 0 {
		t.Errorf("move %v, pins %v", s.move, s.Document.Trip().Pins)
	}
	s.drag(bag, "Olek")
	if len(s.Document.Trip().Pins) != 0 {
		t.Error("dropped where it was, it got a pin")
	}
}

func TestMovesThatMustNotBeSayWhy(t *testing.T) {
	s := openDemo(t)
	flour := func(t thing) bool {
		return shared(t) && strings.Contains(s.view.obstacle(&t, s.named("Marit"), s.day), "Marit")
	}
	for _, c := range []struct {
		name, from, to string
		day            int
		fits           func(thing) bool
		want           []string
	}{
		{"allergy", "Anja", "Marit", 1, flour, []string{"gluten", "Marit"}},
		{"cook group", "Olek", "Anja", 1, func(t thing) bool { return t.kind == carry.GearItem && t.group != 0 }, []string{"Larch"}},
		{"not there", "Olek", "Pablo", 1, shared, []string{"Pablo", "not there", "1"}},
	} {
		s.showDay(c.day)
		var moved thing
		for _, holder := range s.Document.Trip().Crew { // the plan decides who has it
			for _, x := range s.view.things(holder.ID, s.day) {
				if moved.key == "" && holder.Name != c.to && c.fits(x) {
					moved = x
				}
			}
		}
		if moved.key == "" {
			t.Errorf("%s: nothing to try it with", c.name)
			continue
		}
		tag := s.drag(moved, c.to)
		for _, word := range c.want {
			if !strings.Contains(tag, word) || !strings.Contains(s.Said, word) {
				t.Errorf("%s: %q is not said; tag %q, line %q", c.name, word, tag, s.Said)
			}
		}
		if len(s.Document.Trip().Pins) != 0 {
			t.Errorf("%s: it was pinned all the same", c.name)
		}
	}
}

func TestAnEarlierPinGivesWay(t *testing.T) {
	s := openDemo(t)
	bag := s.first("Olek", func(t thing) bool {
		return shared(t) && s.view.obstacle(&t, s.named("Tomas"), 1) == "" && s.view.obstacle(&t, s.named("Farid"), 1) == ""
	})
	s.drag(bag, "Tomas")
	again, _ := s.view.find(bag.id(), 1)
	if err := s.ban(again, s.named("Farid")); err != nil {
		t.Fatal(err)
	}
	s.drag(again, "Farid")
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0] != (trip.Pin{Bag: bag.key, Member: s.named("Farid")}) {
		t.Errorf("pins %v", pins)
	}
}

func TestGoToShowsTheBagInItsPack(t *testing.T) {
	s := openDemo(t)
	s.tabs.SelectIndex(fairnessTab)
	want, ok := thing{}, false
	for _, m := range s.Document.Trip().Crew {
		for _, x := range s.view.things(m.ID, 5) {
			if shared(x) {
				want, ok = x, true
			}
		}
	}
	if !ok {
		t.Fatal("no bag on day 5")
	}
	s.GoTo(findings.Place{Day: 5, Bag: want.key})
	if s.tabs.SelectedIndex() != 0 || s.day != 5 || s.member != want.carrier || s.chosen != want.id() {
		t.Errorf("tab %d, day %d, member %d, thing %q", s.tabs.SelectedIndex(), s.day, s.member, s.chosen)
	}
}

func TestATripWithoutFoodStillHasItsLoads(t *testing.T) {
	start, _ := units.NewDate(2026, 7, 1)
	s := openTrip(t, trip.New("Empty", start))
	if s.view == nil || len(s.board.members) != 1 {
		t.Fatalf("view %v", s.view)
	}
	if text := s.pack.why.Content; !strings.Contains(text, "own kit") {
		t.Errorf("the empty pack says %q", text)
	}
}

func TestSixtyMembersScroll(t *testing.T) {
	s := openTrip(t, triptest.Large(60, 3, 1))
	if len(s.board.members) != 60 || s.board.chart.MinSize().Width <= s.board.scroll.Size().Width {
		t.Fatalf("%d columns, %v wide in %v", len(s.board.members), s.board.chart.MinSize().Width, s.board.scroll.Size().Width)
	}
	last := s.board.members[59]
	s.focus(s.board.content)
	s.board.content.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEnd})
	_, right := s.board.chart.Span(59)
	if s.member != last || right > s.board.scroll.Offset.X+s.board.scroll.Size().Width+1 {
		t.Errorf("member %d at the end; the last column ends at %v, seen up to %v", s.member, right, s.board.scroll.Offset.X+s.board.scroll.Size().Width)
	}
	// Dragging at the edge scrolls back.
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.board.scroll).AddXY(4, 50)
	before := s.board.scroll.Offset.X
	s.board.under(at)
	if s.board.scroll.Offset.X >= before {
		t.Error("dragging at the left edge does not scroll")
	}
}

// Once the trip is on its way the screen says that it shows the packing night.
