package loads

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/domain/carry"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// movable finds a shared bag of one member that another may carry.
func (s *shown) movable(from, to string) thing {
	return s.first(from, func(t thing) bool { return shared(t) && s.view.obstacle(&t, s.named(to), s.day) == "" })
}

func TestAGiftMovesLittleElse(t *testing.T) {
	s := openDemo(t)
	before := map[string]trip.MemberID{}
	for _, item := range s.view.stage(1).Items {
		before[string(item.Kind)+" "+item.Key] = item.Carrier
	}
	bag := s.movable("Olek", "Tomas")
	s.drag(bag, "Tomas")
	if len(s.Document.Trip().Kept) == 0 {
		t.Fatal("the packs are not kept")
	}
	moved := 0
	for _, item := range s.view.stage(1).Items {
		if before[string(item.Kind)+" "+item.Key] != item.Carrier {
			moved++
		}
	}
	choices := s.view.stage(1).Choices
	if len(choices) == 0 {
		t.Fatal("there is nothing to choose from")
	}
	taken, fairest := choices[takenOf(choices)], choices[len(choices)-1]
	if moved != taken.HandOvers+taken.Must || taken.Must != 1 {
		t.Errorf("%d things moved, the choice says %d and %d", moved, taken.HandOvers, taken.Must)
	}
	if moved > 8 || taken.Worst > fairest.Worst*carry.NearlyFair {
		t.Errorf("%d things moved for a heaviest pack of %.4f, the fairest split has %.4f", moved, taken.Worst, fairest.Worst)
	}
	if !strings.Contains(s.changed.Content, "changed packs") {
		t.Errorf("above the columns it says %q", s.changed.Content)
	}
	if err := s.Document.Undo(); err != nil || s.Document.Trip().Kept != nil || s.Document.Trip().Pins != nil {
		t.Errorf("undo leaves %v and %v, %v", s.Document.Trip().Kept, s.Document.Trip().Pins, err)
	}
}

// From the packs to another choice without the mouse.
func TestTheChoicesAreReachedByKeys(t *testing.T) {
	s := openDemo(t)
	s.drag(s.movable("Olek", "Tomas"), "Tomas")
	s.drag(s.movable("Ruth", "Tomas"), "Tomas")
	s.focus(s.board.content)
	s.typed("c")
	before := takenOf(s.view.stage(1).Choices)
	for range len(s.view.stage(1).Choices) {
		s.key(fyne.KeyDown)
	}
	s.key(fyne.KeyReturn)
	if choices := s.view.stage(1).Choices; before == len(choices)-1 || takenOf(choices) == before || !strings.HasPrefix(s.Document.UndoName(), "let ") {
		t.Errorf("choice %d of %d is taken, before %d; undo is called %q", takenOf(choices), len(choices), before, s.Document.UndoName())
	}
}

// Where one own kit is above any fair load the shares of the choices are those of
// the others, and the screen says so.
func TestTheChoicesSayWhoseSharesTheyLeaveOut(t *testing.T) {
	s := openDemo(t)
	s.drag(s.movable("Olek", "Tomas"), "Tomas")
	s.open(changesTab)
	if strings.Contains(s.changes.state.Content, "in any case") {
		t.Fatalf("nobody stands aside, it says %q", s.changes.state.Content)
	}
	s = openDemo(t)
	if err := s.Document.Edit("pack too much", func(on *trip.Trip) error {
		ruth := on.Member(s.named("Ruth"))
		ruth.OwnKit, ruth.LoadLimit = 14*units.Kilogram, optional.Of(25*units.Kilogram)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	s.drag(s.movable("Olek", "Tomas"), "Tomas")
	s.open(changesTab)
	stage := s.view.stage(1)
	if !slices.Equal(stage.Aside, []trip.MemberID{s.named("Ruth")}) || !strings.Contains(s.changes.state.Content, "in any case for Ruth") {
		t.Errorf("aside are %v of %d choices, it says %q", stage.Aside, len(stage.Choices), s.changes.state.Content)
	}
}

// What changes hands in the course of the trip is told with and without packs
// that are kept.
func TestWhatIsHandedOverOnTheWayIsTold(t *testing.T) {
	s := openDemo(t)
	s.showDay(4)
	s.open(changesTab)
	told := func(m *mornings) {
		t.Helper()
		stage := s.view.stage(4)
		over := stage.HandedOver()
		if len(over) == 0 || len(over) != stage.HandOvers || !strings.HasSuffix(m.title.Content, fmt.Sprint(len(over))) || !m.content.Visible() {
			t.Fatalf("%d hand-overs, the stage counts %d, the title is %q", len(over), stage.HandOvers, m.title.Content)
		}
		lines := strings.Split(m.lines.Content, "\n")
		for _, item := range over {
			between := s.view.memberName(item.From) + " → " + s.view.memberName(item.Carrier) + ": "
			th, _ := s.view.find(string(item.Kind)+" "+item.Key, 4)
			if !slices.ContainsFunc(lines, func(line string) bool { return strings.HasPrefix(line, between) && strings.Contains(line, th.title()) }) {
				t.Errorf("%s%s is not told", between, th.title())
			}
		}
	}
	told(s.changes.alone)
	if !s.changes.alone.place.Visible() {
		t.Error("the list is not to be seen")
	}
	test.Tap(s.changes.stay)
	s.open(changesTab)
	told(s.changes.beside)
	s.showDay(1)
	s.changes.show()
	if s.changes.beside.content.Visible() {
		t.Error("something is handed over before the first day")
	}
}

// Who goes before another comes leaves what is for them with somebody who stays.
func TestWhatIsLeftForWhoComesLaterIsTold(t *testing.T) {
	s := openDemo(t)
	pablo := s.Document.Trip().Member(s.named("Pablo"))
	come := pablo.FirstDay
	if err := s.Document.Edit("go before Pablo comes", func(on *trip.Trip) error {
		on.Member(s.named("Jonas")).LastDay = come - 1
		filter := slices.IndexFunc(on.Gear, func(g trip.Gear) bool { return g.Name == "Water filter, Rowan" })
		for _, member := range []trip.MemberID{s.named("Jonas"), s.named("Pablo")} {
			on.Pins = append(on.Pins, trip.Pin{Gear: on.Gear[filter].ID, Member: member})
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	s.showDay(come)
	s.open(changesTab)
	left := 0
	for _, line := range strings.Split(s.changes.alone.lines.Content, "\n") {
		apart := strings.HasPrefix(line, "Jonas → Pablo: ")
		if apart {
			left++
		}
		if apart != strings.Contains(line, "left with somebody who stays") {
			t.Errorf("it says %q", line)
		}
	}
	if left != 1 {
		t.Errorf("%d lines tell what is left for Pablo: %q", left, s.changes.alone.lines.Content)
	}
}

func TestAChoiceIsTakenByKeyAndKept(t *testing.T) {
	s := openDemo(t)
	s.drag(s.movable("Olek", "Tomas"), "Tomas")
	s.drag(s.movable("Ruth", "Tomas"), "Tomas")
	s.focus(s.board.content)
	s.typed("c")
	choices := s.view.stage(1).Choices
	if s.tabs.SelectedIndex() != changesTab || len(choices) < 2 {
		t.Fatalf("tab %d with %d choices", s.tabs.SelectedIndex(), len(choices))
	}
	want := 0
	if takenOf(choices) == 0 {
		want = len(choices) - 1
	}
	wanted := choices[want]
	s.changes.table.SelectKey(fmt.Sprint(want))
	test.Tap(s.changes.take)
	if !strings.HasPrefix(s.Document.UndoName(), "let ") {
		t.Fatalf("undo is called %q", s.Document.UndoName())
	}
	for _, item := range s.view.stage(1).Items {
		if to := wanted.Carriers[carry.Thing{Kind: item.Kind, Key: item.Key}]; to != item.Carrier && item.Kind != carry.WasteItem {
			t.Fatalf("%s is with %d, chosen was %d", item.Key, item.Carrier, to)
		}
	}
	now := s.view.stage(1).Choices
	if taken := now[takenOf(now)]; taken.HandOvers != wanted.HandOvers {
		t.Errorf("%d hand-overs are taken, chosen were %d", taken.HandOvers, wanted.HandOvers)
	}
	if !strings.Contains(s.changes.state.Content, "You chose") {
		t.Errorf("it says %q", s.changes.state.Content)
	}
	if !s.changes.take.Disabled() {
		t.Error("what is taken can be taken again")
	}
	test.Tap(s.changes.freely)
	if s.Document.Trip().Kept != nil || s.changes.choice.Visible() {
		t.Error("the split is not free")
	}
	test.Tap(s.changes.stay)
	if len(s.Document.Trip().Kept) == 0 || !s.changes.choice.Visible() {
		t.Error("the packs are not kept")
	}
}

func TestFuelIsPinnedWithinItsCookGroup(t *testing.T) {
	s := openDemo(t)
	var fuel thing
	for _, m := range s.Document.Trip().Crew {
		for _, x := range s.view.things(m.ID, 1) {
			if x.kind == carry.FuelItem && fuel.key == "" {
				fuel = x
			}
		}
	}
	within, outside := "", ""
	for _, m := range s.Document.Trip().Crew {
		switch {
		case m.ID == fuel.carrier || !m.Present(1):
		case m.Group == fuel.group:
			within = m.Name
		default:
			outside = m.Name
		}
	}
	s.drag(fuel, outside)
	if len(s.Document.Trip().Pins) != 0 || !strings.HasPrefix(s.pack.title.Content, "Why can "+outside+" not carry") || !strings.Contains(s.pack.why.Content, "stays with that cook group") {
		t.Errorf("pins %v; it says %q: %q", s.Document.Trip().Pins, s.pack.title.Content, s.pack.why.Content)
	}
	s.drag(fuel, within)
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0] != (trip.Pin{Fuel: fuel.key, Member: s.named(within)}) || s.carrier(fuel.id()) != s.named(within) {
		t.Fatalf("pins %v, carried by %d", pins, s.carrier(fuel.id()))
	}
	if got := s.fairness.pins.thing(s.Document.Trip().Pins[0]); !strings.Contains(got, fuel.name) {
		t.Errorf("the list of pins calls it %q", got)
	}
	s.typed("u")
	if len(s.Document.Trip().Pins) != 0 {
		t.Error("U does not take the pin off")
	}
}

func TestAnOwnShareMayBeGivenToAnotherByHand(t *testing.T) {
	s := openDemo(t)
	own := s.first("Farid", func(t thing) bool { return t.bag != nil && t.bag.Member != 0 })
	s.drag(own, "Olek")
	if s.carrier(own.id()) != s.named("Olek") {
		t.Errorf("carried by %d, said %q", s.carrier(own.id()), s.Said)
	}
}

func TestKeptAwayByDragKeyAndMenu(t *testing.T) {
	s := openDemo(t)
	olek := s.named("Olek")
	bag := s.movable("Olek", "Tomas")
	r := newRow(s.pack.tap, s.pack.openMenu, s.dragTo, s.drop)
	r.show(bag, rowLook{})
	foot := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.ghost.layer).AddXY(200, s.ghost.layer.Size().Height-10)
	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: foot}})
	if !s.ghost.away.Visible() || !strings.Contains(s.ghost.awayText.Text, "Olek") {
		t.Errorf("the place at the foot says %q", s.ghost.awayText.Text)
	}
	r.DragEnd()
	want := trip.Pin{Bag: bag.key, Member: olek, Forbid: true}
	if pins := s.Document.Trip().Pins; !slices.Equal(pins, []trip.Pin{want}) || s.carrier(bag.id()) == olek || s.ghost.away.Visible() {
		t.Fatalf("pins %v, carried by %d", pins, s.carrier(bag.id()))
	}

	s.GoToThing(bag)
	s.focus(s.board.content)
	s.typed("nt") // away from Tomas too
	s.key(fyne.KeyReturn)
	if pins := s.Document.Trip().Pins; len(pins) != 2 || !pins[1].Forbid || pins[1].Member != s.named("Tomas") {
		t.Fatalf("pins %v", pins)
	}

	holder, _ := s.view.find(bag.id(), 1)
	menu := s.menuOf(holder)
	away := menu.Items[3].ChildMenu
	at := slices.IndexFunc(away.Items, func(i *fyne.MenuItem) bool { return i.Label != "Olek" && i.Label != "Tomas" })
	if at < 0 {
		t.Fatal("nobody else is in the menu")
	}
	name := away.Items[at].Label
	away.Items[at].Action()
	if pins := s.Document.Trip().Pins; len(pins) != 3 || pins[2].Member != s.named(name) {
		t.Fatalf("pins %v", pins)
	}
	now, _ := s.view.find(bag.id(), 1)
	menu = s.menuOf(now)
	menu.Items[len(menu.Items)-1].Action()
	if len(s.Document.Trip().Pins) != 0 {
		t.Errorf("pins %v", s.Document.Trip().Pins)
	}
}

func TestTheMenuGivesAndSaysWhyNot(t *testing.T) {
	s := openDemo(t)
	flour := s.firstOfAll(func(t thing) bool {
		return shared(t) && strings.Contains(s.view.obstacle(&t, s.named("Marit"), 1), "gluten")
	})
	give := s.menuOf(flour).Items[0].ChildMenu.Items
	last := give[len(give)-1]
	if !strings.Contains(last.Label, "why not?") {
		t.Fatalf("the last of the menu is %q", last.Label)
	}
	last.Action()
	if len(s.Document.Trip().Pins) != 0 || !strings.HasPrefix(s.pack.title.Content, "Why can ") {
		t.Errorf("pins %v, title %q", s.Document.Trip().Pins, s.pack.title.Content)
	}
	first := give[0]
	first.Action()
	name, _, _ := strings.Cut(first.Label, " · ")
	if s.carrier(flour.id()) != s.named(name) {
		t.Errorf("given to %s, it is carried by %d", name, s.carrier(flour.id()))
	}
	s.focus(s.pack.list)
	s.typed("p")
	if pins := s.Document.Trip().Pins; len(pins) != 1 || pins[0].Member != s.named(name) {
		t.Errorf("pins %v", pins)
	}
}
