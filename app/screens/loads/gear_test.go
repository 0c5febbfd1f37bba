package loads

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// openGear shows the gear of the demo.
func openGear(t *testing.T) *shown {
	s := openDemo(t)
	s.tabs.SelectIndex(gearAndFuelTab)
	return s
}

// cell puts the cursor on a cell of the gear by the title of its column.
func (s *shown) cell(name, title string) {
	s.t.Helper()
	column := -1
	for i, f := range s.gear.fields() {
		if f.title == title {
			column = i
		}
	}
	for row, id := range s.gear.table.Rows() {
		if s.Document.Trip().GearItem(id).Name == name && column >= 0 {
			s.gear.table.Focus()
			s.gear.table.MoveCursor(row, column)
			return
		}
	}
	s.t.Fatalf("no cell %s of %s", title, name)
}

// enter types over the cell at the cursor and commits.
func (s *shown) enter(text string) {
	for _, letter := range text {
		s.Window.Canvas().Focused().TypedRune(letter)
	}
	s.gear.commit()
}

func (s *shown) item(name string) trip.Gear {
	s.t.Helper()
	for _, item := range s.Document.Trip().Gear {
		if item.Name == name {
			return item
		}
	}
	s.t.Fatalf("no gear is called %s", name)
	return trip.Gear{}
}

func TestGearIsTypedInTheReadersUnits(t *testing.T) {
	s := openGear(t)
	const tent = "Rowan tent, two places"
	for _, c := range []struct {
		title, text string
		got         func() any
		want        any
	}{
		{"Mass", "1950", func() any { return s.item(tent).Mass }, 1950 * units.Gram},
		{"Mass", "2.1 kg", func() any { return s.item(tent).Mass }, 2100 * units.Gram},
		{"Room", "6.5", func() any { return s.item(tent).Volume }, 6500 * units.Millilitre},
		{"Whose", "Larch", func() any { return s.item(tent).Group }, trip.GroupID(1)},
		{"Whose", "everybody's", func() any { return s.item(tent).Group }, trip.GroupID(0)},
		{"Kind", "other", func() any { return s.item(tent).Kind }, trip.OtherGear},
	} {
		s.cell(tent, c.title)
		s.enter(c.text)
		if got := c.got(); got != c.want {
			t.Errorf("%s %q: %v, want %v (said %q)", c.title, c.text, got, c.want, s.Said)
		}
		if want := "change " + c.title + " of " + tent; s.Document.UndoName() != want {
			t.Errorf("undo is called %q, want %q", s.Document.UndoName(), want)
		}
	}
}

func TestWhatMakesNoSenseIsRefusedWithTheReason(t *testing.T) {
	s := openGear(t)
	before := s.Document.Trip()
	for _, c := range []struct{ name, title, text, want string }{
		{"First-aid kit", "Power", "2000", "stove"},
		{"First-aid kit", "Made of", "steel", "pot"},
		{"First-aid kit", "Mass", "heavy", "unit"},
		{"First-aid kit", "Kind", "hat", "stove"},
		{"First-aid kit", "Whose", "Birch", "Larch"},
		{"Larch pot, 5 L", "Made of", "wood", "aluminium"},
		{"Larch stove, first", "Burns", "coal", "gas mix"},
		{"Larch stove, first", "Efficiency", "130", "efficiency"},
	} {
		s.Said = ""
		s.cell(c.name, c.title)
		s.enter(c.text)
		if s.Document.Trip() != before || !strings.Contains(s.Said, c.want) {
			t.Errorf("%s of %s as %q: said %q", c.title, c.name, c.text, s.Said)
		}
		s.key(fyne.KeyEscape)
	}
}

func TestAPotHasAMetalAndAStoveAFuel(t *testing.T) {
	s := openGear(t)
	s.cell("Larch pot, 5 L", "Made of")
	s.enter("titanium")
	s.cell("Larch pot, 3 L", "Made of")
	s.enter("0.61")
	s.cell("Larch stove, first", "Burns")
	s.enter("white gas")
	s.cell("Larch stove, first", "Efficiency")
	s.enter("42")
	if got := s.item("Larch pot, 5 L").HeatCapacity; got != trip.Titanium {
		t.Errorf("titanium has %v", got)
	}
	if got := s.item("Larch pot, 3 L").HeatCapacity; got != 0.61 {
		t.Errorf("typed 0.61, got %v", got)
	}
	if got := s.item("Larch stove, first"); got.Fuel != trip.WhiteGas || got.Efficiency != 0.42 {
		t.Errorf("stove %+v", got)
	}
}

func TestRemovedGearTakesItsPinsAlong(t *testing.T) {
	s := openDemo(t)
	if err := s.Document.Edit("pin", func(on *trip.Trip) error {
		on.Pins = append(on.Pins, trip.Pin{Gear: 17, Member: 2})
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	s.tabs.SelectIndex(gearAndFuelTab)
	s.cell("First-aid kit", "Name")
	s.gear.remove()
	if s.Document.Trip().GearItem(17) != nil || len(s.Document.Trip().Pins) != 0 || s.Document.UndoName() != "remove First-aid kit" {
		t.Errorf("gear %v, pins %v, undo %q", s.Document.Trip().GearItem(17), s.Document.Trip().Pins, s.Document.UndoName())
	}
}

func TestAddedGearHasAFreeName(t *testing.T) {
	s := openGear(t)
	count := len(s.Document.Trip().Gear)
	s.gear.add()
	s.gear.add()
	if got := len(s.Document.Trip().Gear); got != count+2 {
		t.Fatalf("%d pieces of gear, had %d; said %q", got, count, s.Said)
	}
	if id, ok := s.gear.table.Selected(); !ok || s.Document.Trip().GearItem(id).Name != "New gear 2" {
		t.Errorf("the cursor is on %d", id)
	}
}

func TestPastedGearIsOneStep(t *testing.T) {
	s := openGear(t)
	s.cell("Rowan stove, first", "Mass")
	s.gear.table.Paste("210\t0.7\n220\t0.8\n")
	if got := s.item("Rowan stove, second"); got.Mass != 220*units.Gram || got.Volume != 800*units.Millilitre {
		t.Errorf("second stove %+v", got)
	}
	if err := s.Document.Undo(); err != nil || s.item("Rowan stove, first").Mass != 190*units.Gram || s.item("Rowan stove, second").Mass != 190*units.Gram {
		t.Error("undo does not take the whole paste back")
	}
}

func TestAnEmptyTripIsOfferedItsKitchens(t *testing.T) {
	start, _ := units.NewDate(2026, 7, 1)
	s := openTrip(t, trip.New("Empty", start))
	s.tabs.SelectIndex(gearAndFuelTab)
	if !s.gear.none.Visible() {
		t.Fatal("an empty table says nothing")
	}
	s.gear.addKitchens()
	if len(s.Document.Trip().Gear) != 2 || s.item("Group 1 stove").Kind != trip.Stove || s.gear.none.Visible() {
		t.Errorf("gear %v", s.Document.Trip().Gear)
	}
	if err := s.Document.Edit("another group", func(t *trip.Trip) error {
		t.Groups = append(t.Groups, trip.CookGroup{ID: 2, Name: "South"})
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	s.gear.refresh()
	if !s.gear.none.Visible() || s.gear.hint.Visible() {
		t.Error("a group without a stove is not offered one")
	}
	s.gear.addKitchens()
	if gear := s.Document.Trip().Gear; len(gear) != 4 || gear[3].Group != 2 || gear[3].Kind != trip.Pot {
		t.Errorf("gear %v", gear)
	}
}

func TestFuelContainersAreEdited(t *testing.T) {
	s := openGear(t)
	for column, text := range []string{"Canister, tall", "propane", "340", "160", "1.1", "9,50"} {
		s.gear.fuels.Focus()
		s.gear.fuels.MoveCursor(1, column)
		s.enter(text)
	}
	want := trip.FuelContainer{Name: "Canister, tall", Fuel: trip.Propane, Net: 340 * units.Gram, Empty: 160 * units.Gram, Volume: 1100 * units.Millilitre}
	got := s.Document.Trip().Fuels[1]
	if price, known := got.Price.Get(); !known || price != 950 {
		t.Errorf("price %v %v", price, known)
	}
	got.Price = want.Price
	if got != want {
		t.Errorf("got %+v, want %+v; said %q", got, want, s.Said)
	}
	s.gear.fuels.Focus()
	s.key(fyne.KeyDelete) // an empty price is an unknown one
	if s.Document.Trip().Fuels[1].Price.Known() {
		t.Error("the price is still known")
	}
	s.gear.addFuel()
	if n := len(s.Document.Trip().Fuels); n != 4 {
		t.Fatalf("%d sizes", n)
	}
	s.gear.removeFuel()
	if n := len(s.Document.Trip().Fuels); n != 3 || !strings.HasPrefix(s.Document.UndoName(), "remove ") {
		t.Errorf("%d sizes, undo %q", n, s.Document.UndoName())
	}
}

func TestGearSaysWhoCarriesIt(t *testing.T) {
	s := openGear(t)
	item := s.item("First-aid kit")
	text := s.gear.carriers(s.Document.Trip(), &item)
	for _, stage := range s.Document.Plan().Carry.Stages {
		for _, x := range stage.Items {
			if x.Key == "17" && string(x.Kind) == "gear" && !strings.Contains(text, s.Document.Trip().Member(x.Carrier).Name) {
				t.Errorf("%q does not name %s", text, s.Document.Trip().Member(x.Carrier).Name)
			}
		}
	}
}

// A list of gear from a spreadsheet adds what is not there, whatever the order
// of its columns.
func TestAListAddsGear(t *testing.T) {
	s := openGear(t)
	was := s.Document.Trip()
	s.gear.table.Paste("Item\tHolds (L)\tWeight (g)\tType\nKettle\t1.8\t\tpot\n")
	if !trip.Equal(was, s.Document.Trip()) || !strings.Contains(s.Said, "Kettle") || !strings.Contains(s.Said, "Mass") {
		t.Errorf("gear without a mass: said %q", s.Said)
	}
	s.gear.table.Paste("Item\tHolds (L)\tWeight (g)\tType\nKettle\t1.8\t240\tpot\nTarp\t\t480\tshelter\n")
	if kettle := s.item("Kettle"); kettle.Kind != trip.Pot || kettle.Mass != 240*units.Gram || kettle.Capacity != 1800*units.Millilitre {
		t.Errorf("got %+v; said %q", kettle, s.Said)
	}
	if s.item("Tarp").Mass != 480*units.Gram || s.Document.UndoName() != "paste into the gear" {
		t.Errorf("said %q; undo takes back %q", s.Said, s.Document.UndoName())
	}
	if err := s.Document.Undo(); err != nil || !trip.Equal(was, s.Document.Trip()) {
		t.Errorf("one undo does not take the list back (%v)", err)
	}
}

// A word of no letters is not looked up: the toolkit would tell of it.
func TestWhatHasNoFuelSaysNothing(t *testing.T) {
	if got := fuelWord(&trip.FuelContainer{}); got != "" {
		t.Errorf("it says %q", got)
	}
}
