package loads

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/app/written"
	"sumpter/domain/trip"
)

// Water to a dry camp stands in the pack with its parts, answers why it is so
// much, cannot be moved by hand, and stands above the line of its day.
func TestWaterToADryCampIsInThePack(t *testing.T) {
	dry := benchtest.Demo()
	dry.Days[2].DryCamp = true
	s := openTrip(t, dry)
	s.showMember(s.named("Olek"))
	for _, x := range s.pack.things {
		if x.kind == waterKind {
			t.Fatalf("water is carried on day 1: %+v", x)
		}
	}
	s.showDay(3)
	water := s.first("Olek", func(x thing) bool { return x.kind == waterKind })
	s.pack.tap(water)
	load, capability := s.view.load(s.named("Olek"), 3)
	system := s.Document.Trip().Units
	for _, want := range []string{
		written.Quantity(load.ToCookWith(), system) + " of the ", written.Quantity(load.CarryIn()-load.ToCookWith(), system) + " is what Olek drinks",
		percent(withWater(load, capability)),
	} {
		if !strings.Contains(s.pack.why.Content, want) {
			t.Errorf("the answer lacks %q: %s", want, s.pack.why.Content)
		}
	}
	if !s.pack.move.Disabled() || !s.pack.ban.Disabled() {
		t.Error("water is offered to be moved or kept away")
	}
	s.typed("m")
	s.typed("p")
	s.key(fyne.KeyReturn)
	if s.move != nil || len(s.Document.Trip().Pins) != len(dry.Pins) {
		t.Error("water was taken up or pinned")
	}
	line := s.linesOf()[0]
	for d, more := range line.OnTop {
		if (more > 0) != (d == 2) {
			t.Errorf("%.2f stand above the line on day %d", more, d+1)
		}
	}
	if now, ok := s.view.find(water.id(), 3); !ok || now.mass != load.Water {
		t.Errorf("the water is not found again: %+v", now)
	}
	if _, ok := s.view.find(water.id(), 4); ok {
		t.Error("water is found on a day without a dry camp")
	}
}

// In a cook group with a weak member that one carries less cooking water.
func TestTheWeakerCarryLessWater(t *testing.T) {
	dry := benchtest.Demo()
	dry.Days[2].DryCamp = true
	weak := dry.Crew[0].ID
	dry.Crew[0].Strength = 0.1
	s := openTrip(t, dry)
	if load, _ := s.view.load(weak, 3); load.ToCook != 0 {
		t.Errorf("%s of cooking water are with the weakest, who is the most loaded by strength", load.ToCook)
	}
	if group := s.view.groupWater(dry.Crew[0].Group, 3); group.cooking == 0 {
		t.Error("nobody carries cooking water")
	}
	var who trip.MemberID
	for _, m := range s.Document.Trip().Crew {
		if load, _ := s.view.load(m.ID, 3); m.Group == dry.Crew[0].Group && load.ToCook > 0 {
			who = m.ID
		}
	}
	if who == 0 {
		t.Error("nobody of the group carries it")
	}
}
