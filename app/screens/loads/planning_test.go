package loads

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/charts"
	"sumpter/app/demo"
	"sumpter/app/look"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// later keeps background work until it is asked for, as a slow plan would.
type later struct{ work []func() }

func (l *later) Background(work func()) { l.work = append(l.work, work) }
func (l *later) AfterFrame(f func())    { f() }
func (l *later) Screen(f func())        { f() }

func (l *later) run() {
	work := l.work
	l.work = nil
	for _, f := range work {
		f()
	}
}

func openLater(t *testing.T) (*shown, *later) {
	t.Helper()
	slow := &later{}
	d := benchtest.NewWith(t, benchtest.Demo(), slow)
	fyne.CurrentApp().Settings().SetTheme(look.Theme{Variant: look.Dark})
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	d.Show(s.Screen, 1100, 720)
	return s, slow
}

func TestOldFiguresStayFaintUntilTheNewPlanComes(t *testing.T) {
	s, slow := openLater(t)
	if s.view != nil || !strings.Contains(s.empty.Content, "comes with the plan") {
		t.Fatalf("before the first plan: %q", s.empty.Content)
	}
	s.typedKey(&fyne.KeyEvent{Name: fyne.KeyRight}) // nothing to move through yet
	s.typedRune('m')
	slow.run()
	if s.view == nil || s.empty.Visible() && len(s.middle.Objects) > 1 {
		t.Fatal("the first plan is not shown")
	}
	bag := s.at("Olek", func(x thing) bool { return shared(x) && s.view.obstacle(&x, s.named("Tomas"), 1) == "" })
	s.drag(bag, "Tomas")
	olek := s.view.place(s.named("Olek"))
	if !s.column(olek, s.view.plan.Carry.Members[olek].Days[0], charts.AtRest).Faint {
		t.Error("old figures are shown as if they were new")
	}
	if s.chosen != bag.id() {
		t.Errorf("while planning the chosen thing is %q", s.chosen)
	}
	slow.run()
	if s.column(olek, s.view.plan.Carry.Members[olek].Days[0], charts.AtRest).Faint || s.carrier(bag.id()) != s.named("Tomas") {
		t.Error("the new plan is not shown")
	}
	if _, i := s.pack.current(); i < 0 || s.chosen != bag.id() {
		t.Errorf("with the new plan the chosen thing is %q", s.chosen)
	}
}

func TestAPlanThatComesDuringADragIsTakenUp(t *testing.T) {
	s, slow := openLater(t)
	slow.run()
	bag := s.at("Olek", shared)
	s.dragTo(bag, s.over("Tomas"))
	if err := s.Document.Edit("x", func(on *trip.Trip) error { on.Crew[0].OwnKit += units.Kilogram; return nil }); err != nil {
		t.Fatal(err)
	}
	slow.run()
	if now, ok := s.view.find(bag.id(), 1); !ok || s.move == nil || s.move.thing.carrier != now.carrier {
		t.Errorf("the move is %+v, the thing %+v", s.move, now)
	}
	// A plan without the bag ends the move.
	if err := s.Document.Edit("x", func(on *trip.Trip) error { on.Menu = nil; return nil }); err != nil {
		t.Fatal(err)
	}
	slow.run()
	if s.move != nil || s.ghost.ground.Visible() {
		t.Error("a bag that is gone is still being dragged")
	}
	s.drop()
	if len(s.Document.Trip().Pins) != 0 {
		t.Errorf("pins %v", s.Document.Trip().Pins)
	}
}

func TestLeavingTheScreenLeavesTheBagWhereItWas(t *testing.T) {
	s, slow := openLater(t)
	slow.run()
	bag := s.at("Olek", shared)
	s.dragTo(bag, s.over("Tomas"))
	if !s.Commit() || s.move != nil {
		t.Error("a move is still under way")
	}
	if s.Name() != "loads" || s.Title() == "" {
		t.Errorf("name %q, title %q", s.Name(), s.Title())
	}
}

func TestTheListHasTheKeysOfTheScreen(t *testing.T) {
	s, slow := openLater(t)
	slow.run()
	s.showMember(s.named("Olek"))
	s.focus(s.pack.list)
	first := s.chosen
	s.key(fyne.KeyDown)
	if s.chosen == first {
		t.Error("Down chooses nothing")
	}
	s.key(fyne.KeyUp)
	if s.chosen != first {
		t.Errorf("Up leads to %q, want %q", s.chosen, first)
	}
	s.typed("m")
	if s.move == nil {
		t.Error("M takes nothing up")
	}
	s.key(fyne.KeyEscape)
}

func TestGearIsTypedInPounds(t *testing.T) {
	on := demo.Trip()
	on.Units = units.US
	s := openTrip(t, &on)
	s.tabs.SelectIndex(gearAndFuelTab)
	s.cell("First-aid kit", "Mass")
	s.enter("32")
	if got := s.item("First-aid kit").Mass; got != units.FromGrams(32*28.349523125) {
		t.Errorf("32 oz are %v", got)
	}
	s.cell("First-aid kit", "Mass")
	s.enter("2 lb")
	if got := s.item("First-aid kit").Mass; got != units.FromGrams(2*453.59237) {
		t.Errorf("2 lb are %v", got)
	}
	s.tabs.SelectIndex(packsTab)
	s.showMember(s.named("Olek"))
	if !strings.Contains(s.pack.figure.Content, " lb · ") {
		t.Errorf("the load is %q", s.pack.figure.Content)
	}
}

func TestPastedFuelIsOneStep(t *testing.T) {
	s := openGear(t)
	s.gear.fuels.Focus()
	s.gear.fuels.MoveCursor(0, 2)
	s.gear.fuels.Paste("110\t98\n240\t152\n")
	fuels := s.Document.Trip().Fuels
	if fuels[0].Net != 110*units.Gram || fuels[1].Empty != 152*units.Gram || s.Document.UndoName() != "paste into the fuel sizes" {
		t.Errorf("fuels %+v, undo %q, said %q", fuels[:2], s.Document.UndoName(), s.Said)
	}
	s.gear.fuels.Paste("x\n")
	if s.Said == "" || s.Document.Trip().Fuels[0].Net != 110*units.Gram {
		t.Errorf("nonsense is taken: said %q", s.Said)
	}
	s.gear.fuels.SortBy(2)
	s.gear.table.SortBy(3)
	rows := s.gear.table.Rows()
	for i := 1; i < len(rows); i++ {
		if s.Document.Trip().GearItem(rows[i-1]).Mass > s.Document.Trip().GearItem(rows[i]).Mass {
			t.Fatal("gear is not sorted by mass")
		}
	}
}

func TestAPinOfABagThatIsGoneIsStillListed(t *testing.T) {
	on := demo.Trip()
	on.Pins = []trip.Pin{{Bag: "d1 dinner gone", Member: 2}, {Gear: 17, Member: 3, Forbid: true}}
	s := openTrip(t, &on)
	s.tabs.SelectIndex(fairnessTab)
	var lines []string
	for _, pin := range s.fairness.pins.table.Rows() {
		lines = append(lines, s.fairness.pins.thing(pin)+" "+pinWord(pin)+" "+memberOf(s.Document.Trip(), pin.Member))
	}
	want := []string{"d1 dinner gone (not in the plan now) pinned to Tomas", "First-aid kit kept from Marit"}
	if len(lines) != 2 || lines[0] != want[0] || lines[1] != want[1] {
		t.Errorf("listed are %q", lines)
	}
}

func TestTheTagStaysInsideTheScreen(t *testing.T) {
	s := openDemo(t)
	bag := s.at("Olek", shared)
	s.move = &move{thing: bag, to: s.named("Tomas")}
	for _, at := range []fyne.Position{{}, fyne.NewPos(1090, 700), fyne.NewPos(500, 300)} {
		s.showMove(at)
		place, size, room := s.ghost.ground.Position(), s.ghost.ground.Size(), s.ghost.layer.Size()
		if place.X < 0 || place.Y < 0 || place.X+size.Width > room.Width+0.5 || place.Y+size.Height > room.Height+0.5 {
			t.Errorf("at %v the tag lies from %v with %v in %v", at, place, size, room)
		}
	}
	over := outcome{over: 300 * units.Gram, from: carry.Day{Share: 0.1}, to: carry.Day{Share: 0.2}}
	if text := s.view.say(*s.move, over); !strings.Contains(text, "300 g above Tomas's limit") {
		t.Errorf("a limit passed is said as %q", text)
	}
	if text := s.view.say(move{thing: bag}, outcome{}); !strings.Contains(text, "to whom") {
		t.Errorf("over nobody it says %q", text)
	}
}
