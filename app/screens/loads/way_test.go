package loads

import (
	"context"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/carry"
	"sumpter/domain/onward"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// openUnderWay shows the demo trip on the morning of day 4, from which on Olek
// is not there.
func openUnderWay(t *testing.T) *shown {
	on := benchtest.Demo()
	for _, m := range on.Crew {
		if m.Name == "Olek" {
			on.Progress.CrewChanges = []trip.CrewChange{{Member: m.ID, Day: 4}}
		}
	}
	d := benchtest.New(t, on)
	d.Bench.Calendar = func() units.Date { return on.DateOf(4) }
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	d.Show(s.Screen, 1100, 720)
	return s
}

// The packs of the rest are those that the rest is planned with, each load and
// each thing; packing night's are a switch away.
func TestUnderWayThePacksAreThoseOfTheRest(t *testing.T) {
	s := openUnderWay(t)
	rest, err := onward.Make(context.Background(), s.Bench.Plan(), &s.Document.Trip().Progress, 4)
	if err != nil {
		t.Fatal(err)
	}
	if s.day != 4 || s.slider.Min != 4 || !s.way.content.Visible() {
		t.Errorf("day %d is shown, the first is %v, the switch is shown: %v", s.day, s.slider.Min, s.way.content.Visible())
	}
	for day := 4; day <= 9; day++ {
		s.slider.SetValue(float64(day))
		for i, m := range rest.Plan.Carry.Members {
			have, _ := s.view.load(m.Member, day)
			if have != m.Days[day-1] {
				t.Errorf("day %d: member %d carries %v, by the rest %v", day, i, have, m.Days[day-1])
			}
			food := units.Mass(0)
			for _, thing := range s.view.things(m.Member, day) {
				if thing.bag != nil {
					food += thing.mass
				}
			}
			if food != have.Food {
				t.Errorf("day %d: the bags of member %d weigh %v, their food %v", day, i, food, have.Food)
			}
		}
	}
	if have, _ := s.view.load(s.named("Olek"), 5); have.Present || len(s.view.things(s.named("Olek"), 5)) > 0 {
		t.Errorf("who left carries %+v", have)
	}
	s.which(t, "As packed on packing night")
	if s.view.plan != s.Bench.Plan() || s.slider.Min != 1 {
		t.Error("packing night is not shown")
	}
	if have, _ := s.view.load(s.named("Olek"), 5); !have.Present {
		t.Error("on packing night nobody had left")
	}
	s.which(t, "From the morning of day 4 on")
	if s.view.rest == nil {
		t.Error("the rest is not shown again")
	}
}

func (s *shown) which(t *testing.T, name string) {
	t.Helper()
	if !slices.Contains(s.way.which.Options, name) {
		t.Fatalf("no switch to %q in %v", name, s.way.which.Options)
	}
	s.way.which.SetSelected(name)
}

func TestBeforeTheTripThereIsNoSwitch(t *testing.T) {
	s := openDemo(t)
	if s.way.content.Visible() || s.view.rest != nil {
		t.Error("nothing has happened and there are two sets of packs")
	}
}

// A thing dragged on the way is handed over on that morning: no pin, and it
// stays there.
func TestUnderWayADraggedBagIsHandedOver(t *testing.T) {
	s := openUnderWay(t)
	for _, day := range []int{4, 5} {
		s.slider.SetValue(float64(day))
		bag := s.first("Ines", func(t thing) bool { return shared(t) && s.view.obstacle(&t, s.named("Tomas"), day) == "" })
		s.drag(bag, "Tomas")
		if s.carrier(bag.id()) != s.named("Tomas") || len(s.Document.Trip().Pins) > 0 {
			t.Errorf("day %d: %s is with %s, pins %v", day, bag.name, s.view.memberName(s.carrier(bag.id())), s.Document.Trip().Pins)
		}
		if s.chosen != bag.id() {
			t.Errorf("day %d: %s is chosen, not the bag that was handed over", day, s.chosen)
		}
		decided := s.Document.Trip().Progress.Replan(day)
		if more, name := decided != nil && len(decided.HandOvers) > 1, s.Document.UndoName(); strings.Contains(name, "what else was proposed") != more {
			t.Errorf("day %d: %q undoes %+v", day, name, decided)
		}
		if decided == nil || !slices.ContainsFunc(decided.HandOvers, func(h trip.HandOver) bool { return h.Bag == bag.key && h.To == s.named("Tomas") }) {
			t.Fatalf("day %d: %s is not handed over", day, bag.name)
		}
		for _, over := range decided.HandOvers {
			if over.From == over.To {
				t.Errorf("day %d: %+v is no hand-over", day, over)
			}
		}
		s.drag(s.first("Tomas", func(t thing) bool { return t.id() == bag.id() }), "Ines")
		if s.carrier(bag.id()) != s.named("Ines") {
			t.Errorf("day %d: given back it is with %s", day, s.view.memberName(s.carrier(bag.id())))
		}
	}
}

// What belongs to a cook group that is all away may be carried by anybody.
func TestUnderWayTheGearOfAGroupThatLeftIsHandedOver(t *testing.T) {
	on := benchtest.Demo()
	gone := on.Crew[0].Group
	for _, m := range on.Crew {
		if m.Group == gone {
			on.Progress.CrewChanges = append(on.Progress.CrewChanges, trip.CrewChange{Member: m.ID, Day: 4})
		}
	}
	d := benchtest.New(t, on)
	d.Bench.Calendar = func() units.Date { return on.DateOf(4) }
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	d.Show(s.Screen, 1100, 720)
	var here []trip.MemberID
	for _, m := range on.Crew {
		if s.view.there(m.ID, 4) {
			here = append(here, m.ID)
		}
	}
	offered := 0
	for _, from := range here {
		for _, piece := range s.view.things(from, 4) {
			if piece.kind != carry.GearItem || piece.group != gone {
				continue
			}
			offered++
			for _, to := range here {
				if why := s.view.obstacle(&piece, to, 4); why != "" {
					t.Errorf("%s to %s: %s", piece.name, s.view.memberName(to), why)
				}
			}
		}
	}
	if offered == 0 {
		t.Error("no piece of the group that left is carried by the others")
	}
}

func TestUnderWayNothingIsPinned(t *testing.T) {
	s := openUnderWay(t)
	s.focus(s.board.content)
	for _, key := range []string{"k", "p", "u", "n"} {
		s.typed(key)
		if s.Said != pinsOfPackingNight() || s.move != nil || len(s.Document.Trip().Pins) > 0 {
			t.Errorf("%s: said %q, pins %v", key, s.Said, s.Document.Trip().Pins)
		}
		s.Bench.Say("")
	}
	if !s.pack.ban.Disabled() || !s.pack.free.Disabled() || s.pack.move.Disabled() {
		t.Error("the buttons offer what cannot be done")
	}
	s.tabs.SelectIndex(changesTab)
	if s.changes.choice.Visible() || s.changes.stay.Visible() {
		t.Error("choices of packing night are offered")
	}
	s.tabs.SelectIndex(fairnessTab)
	if len(s.fairness.stages.Box.Objects) == 0 {
		t.Error("nothing is said of how fair the rest is")
	}
	s.tabs.SelectIndex(packsTab)
	test.Tap(s.toTrailButton(t))
	if len(s.Places) == 0 || s.Places[len(s.Places)-1].Screen != "trail" {
		t.Errorf("the button leads to %v", s.Places)
	}
}

func (s *shown) toTrailButton(t *testing.T) fyne.Tappable {
	t.Helper()
	for _, object := range s.way.content.Objects {
		if button, ok := object.(fyne.Tappable); ok && object != fyne.CanvasObject(s.way.which) {
			return button
		}
	}
	t.Fatal("no button")
	return nil
}
