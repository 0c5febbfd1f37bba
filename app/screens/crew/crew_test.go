package crew

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// table is the screen in a window, with what it said last.
type table struct {
	*Screen
	*benchtest.Desk
}

func open(t *testing.T, system units.System) *table {
	t.Helper()
	on := triptest.Large(4, 2, 3)
	on.Units = system
	d := benchtest.New(t, on)
	s := &table{Screen: New(d.Bench), Desk: d}
	d.Show(s.Screen, 2600, 700)
	s.Screen.table.Focus()
	return s
}

// column gives the place of the column with a title.
func (s *table) column(t *testing.T, title string) int {
	t.Helper()
	at := slices.IndexFunc(s.fields(), func(f field) bool { return f.title == title })
	if at < 0 {
		t.Fatalf("there is no column %q", title)
	}
	return at
}

// enter types into a cell of the first member and stores it.
func (s *table) enter(t *testing.T, title, text string) {
	t.Helper()
	s.Screen.table.MoveCursor(0, s.column(t, title))
	s.Screen.table.Focus()
	for _, letter := range text {
		s.Window.Canvas().Focused().TypedRune(letter)
	}
	s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func (s *table) first() *trip.Member { return &s.Document.Trip().Crew[0] }

func TestTypingChangesTheMember(t *testing.T) {
	s := open(t, units.Metric)
	s.enter(t, "Name", "Runa")
	s.enter(t, "Age", "47")
	s.enter(t, "Body", "71,5")
	s.enter(t, "Height", "168")
	s.enter(t, "Own kit", "7800 g")
	s.enter(t, "Limit", "14")
	s.enter(t, "Strength", "90 %")
	s.enter(t, "Sex", "fem")
	s.enter(t, "Diets", "Vegetarian; no pork")
	s.enter(t, "Allergies", "peanuts (traces), kiwi")
	m := s.first()
	limit, _ := m.LoadLimit.Get()
	if m.Name != "Runa" || m.Age != 47 || m.BodyMass != 71500*units.Gram || m.Height != 1.68 || m.OwnKit != 7800*units.Gram || limit != 14*units.Kilogram || m.Strength != 0.9 || m.Sex != trip.Female {
		t.Errorf("the member is %+v; said %q", *m, s.Said)
	}
	if !slices.Equal(m.Diets, []trip.Diet{trip.Vegetarian, trip.NoPork}) {
		t.Errorf("diets %v", m.Diets)
	}
	if want := []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}, {Allergen: "kiwi"}}; !slices.Equal(m.Allergies, want) {
		t.Errorf("allergies %v", m.Allergies)
	}
	if name := s.Document.UndoName(); !strings.Contains(name, "Allergies of Runa") {
		t.Errorf("undo would say %q", name)
	}
}

func TestUSUnitsAreReadAndShown(t *testing.T) {
	s := open(t, units.US)
	s.enter(t, "Body", "150")
	if got := s.first().BodyMass.Pounds(); got < 149.99 || got > 150.01 {
		t.Errorf("typed 150 lb, the member has %.3f lb", got)
	}
	if shown := s.textOf(s.column(t, "Body"), s.first().ID); shown != "150" {
		t.Errorf("shown %q", shown)
	}
}

func TestABodyIsShownAsBathroomScalesShowIt(t *testing.T) {
	s := open(t, units.US)
	s.enter(t, "Body", "79.4 kg")
	body := s.column(t, "Body")
	if shown := s.textOf(body, s.first().ID); shown != "175" {
		t.Errorf("79.4 kg are shown as %q lb", shown)
	}
	if edited := s.editTextOf(body, s.first().ID); edited != "175.05" {
		t.Errorf("the editor starts from %q", edited)
	}
}

func TestWhatHasNoMeaningIsSaidAndNotStored(t *testing.T) {
	s := open(t, units.Metric)
	before := s.first().Age
	s.enter(t, "Age", "old")
	if s.first().Age != before || s.Said == "" || s.Commit() {
		t.Errorf("age %d, said %q", s.first().Age, s.Said)
	}
}

func TestMembersAreAddedAndRemovedWithAllThatNamesThem(t *testing.T) {
	s := open(t, units.Metric)
	s.Screen.table.Add()
	if len(s.Document.Trip().Crew) != 5 {
		t.Fatalf("%d members", len(s.Document.Trip().Crew))
	}
	id := s.Document.Trip().Crew[4].ID
	err := s.Document.Edit("pin", func(t *trip.Trip) error {
		t.Pins = append(t.Pins, trip.Pin{Gear: t.Gear[0].ID, Member: id})
		t.Menu[0].Dishes[0].For = []trip.MemberID{id}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	s.Screen.table.SelectKey(key(id))
	s.Screen.table.Delete()
	after := s.Document.Trip()
	if len(after.Crew) != 4 || len(after.Pins) != 0 {
		t.Errorf("%d members and %d pins; said %q", len(after.Crew), len(after.Pins), s.Said)
	}
	if problems := trip.Validate(after); len(problems) > 0 {
		t.Errorf("the trip has problems: %v", problems)
	}
	if err := s.Document.Undo(); err != nil || len(s.Document.Trip().Crew) != 5 {
		t.Errorf("undo gives %d members (%v)", len(s.Document.Trip().Crew), err)
	}
}

func TestPasteIsOneStepOfUndo(t *testing.T) {
	s := open(t, units.Metric)
	s.Screen.table.MoveCursor(0, s.column(t, "Age"))
	s.Screen.table.Paste("31\tmale\n32\tfemale\n33\tmale\n")
	ages := []int{}
	for _, m := range s.Document.Trip().Crew[:3] {
		ages = append(ages, m.Age)
	}
	if !slices.Equal(ages, []int{31, 32, 33}) {
		t.Errorf("ages %v, said %q", ages, s.Said)
	}
	if err := s.Document.Undo(); err != nil || s.Document.Trip().Crew[2].Age == 33 {
		t.Errorf("one undo did not take the paste back (%v)", err)
	}
}

func TestTheSideSaysWhyAndCautions(t *testing.T) {
	s := open(t, units.Metric)
	s.enter(t, "Allergies", "milk (traces)")
	s.GoTo(findings.Place{Member: s.first().ID, Day: 2})
	if !strings.Contains(s.side.figure.Content, "Day 2") || !strings.Contains(s.side.figure.Content, "kcal") {
		t.Errorf("figure %q", s.side.figure.Content)
	}
	said, sum, need := "", 0.0, 0.0
	for i, step := range s.bench.Plan().Needs.Members[0].Days[1].Steps {
		entry := s.side.why.Entries()[i]
		said += entry.What + " " + entry.Figure + " " + entry.Basis + "\n"
		switch {
		case step.Total && need == 0:
			need = step.Value
		case i > 0 && need == 0: // the first line is rest in bed, which the others are multiples of
			sum += step.Value
		}
	}
	for _, want := range []string{"resting in bed", "walking", "LCDA", "need of the day"} {
		if !strings.Contains(said, want) {
			t.Errorf("the reason does not speak of %q:\n%s", want, said)
		}
	}
	if math.Abs(sum-need) > 1 {
		t.Errorf("the lines come to %.0f kcal, the need is %.0f", sum, need)
	}
	if !strings.Contains(s.side.caution.Text, "Harmed by traces of milk") {
		t.Errorf("caution %q", s.side.caution.Text)
	}
}

func TestANoteOfMedicineEndsWithOneFullStop(t *testing.T) {
	for note, want := range map[string]string{
		"Adrenaline pen in the lid pocket.": "Medicine: Adrenaline pen in the lid pocket.",
		"Adrenaline pen in the lid pocket":  "Medicine: Adrenaline pen in the lid pocket.",
		"Inhaler: ask first! ":              "Medicine: Inhaler: ask first!",
	} {
		if got := strings.TrimSpace(cautionOf(&trip.Member{Medicine: note}, units.Metric)); got != want {
			t.Errorf("%q is told as %q", note, got)
		}
	}
}

func TestTheDayOfTheNeedIsChosenByKeys(t *testing.T) {
	s := open(t, units.Metric)
	s.Do("Need of the next day")
	if s.side.day != 2 || !strings.HasPrefix(s.side.figure.Content, "Day 2") {
		t.Errorf("after the next day it shows %q", s.side.figure.Content)
	}
	s.Do("Need of the next day")
	if s.side.day != 2 {
		t.Errorf("the trip has two days, shown is day %d", s.side.day)
	}
	s.Do("Need of the day before")
	if s.side.day != 1 {
		t.Errorf("back it shows day %d", s.side.day)
	}
}

// Somebody who may join on the way is planned for no day, until a day is given.
func TestSomebodyWhoMayJoin(t *testing.T) {
	s := open(t, units.Metric)
	s.enter(t, "From day", "may join")
	m := s.first()
	if !m.Standby || m.Present(1) {
		t.Fatalf("planned for a day: %+v", *m)
	}
	if first, last := s.textOf(s.column(t, "From day"), m.ID), s.textOf(s.column(t, "To day"), m.ID); first != "may join" || last != "" {
		t.Errorf("shown from %q to %q", first, last)
	}
	s.enter(t, "From day", "2")
	if m := s.first(); m.Standby || m.FirstDay != 2 {
		t.Errorf("not planned from day 2: %+v", *m)
	}
}

// A list of the club with heads of its own becomes members in one step, or none.
func TestAListWithHeadsBecomesMembers(t *testing.T) {
	s := open(t, units.Metric)
	was := s.Document.Trip()
	s.Screen.table.MoveCursor(1, 0)
	s.Screen.table.Paste("Name\tAge\tSex\tBody (kg)\tShoe size\nJonas\t44\tm\t82,5\t44\nMira\t15\tx\t54,0\t38\n")
	if !trip.Equal(was, s.Document.Trip()) || s.Document.UndoName() != "" || !strings.Contains(s.Said, "Mira") {
		t.Errorf("a paste with a fault changed the trip, or did not say where: %q", s.Said)
	}
	s.Screen.table.Paste("Name\tAge\tSex\tBody (kg)\tShoe size\nJonas\t44\tm\t82,5\t44\nMira\t15\tf\t54,0\t38\n")
	crew := s.Document.Trip().Crew
	if len(crew) != len(was.Crew)+2 {
		t.Fatalf("%d members, were %d; said %q", len(crew), len(was.Crew), s.Said)
	}
	if jonas := crew[len(crew)-2]; jonas.Name != "Jonas" || jonas.Age != 44 || jonas.Sex != trip.Male || jonas.BodyMass != 82500*units.Gram {
		t.Errorf("got %+v", jonas)
	}
	if !strings.Contains(s.Said, "2 new") || !strings.Contains(s.Said, "Shoe size") {
		t.Errorf("said %q", s.Said)
	}
	if err := s.Document.Undo(); err != nil || !trip.Equal(was, s.Document.Trip()) {
		t.Errorf("one undo does not take the list back (%v)", err)
	}
}

// As somebody writes it who never saw our heads.
func TestAListFromASpreadsheetNeedsNoHeadsOfOurs(t *testing.T) {
	s := open(t, units.US)
	s.Screen.table.Paste("First name\tGender\tAge\tHeight\tWeight\tDiet\tAllergy\nOda\tF\t38\t\"5'4\"\"\"\t130\tveggie\tpeanuts, tree nuts\n")
	crew := s.Document.Trip().Crew
	oda := crew[len(crew)-1]
	if oda.Name != "Oda" || oda.Sex != trip.Female || oda.Age != 38 || math.Abs(oda.BodyMass.Pounds()-130) > 0.01 || math.Abs(oda.Height.Feet()*12-64) > 0.01 {
		t.Errorf("got %+v; said %q", oda, s.Said)
	}
	if !slices.Equal(oda.Diets, []trip.Diet{trip.Vegetarian}) || len(oda.Allergies) != 2 {
		t.Errorf("eats %v, allergic to %v", oda.Diets, oda.Allergies)
	}
	if strings.Contains(s.Said, "Left out") {
		t.Errorf("said %q", s.Said)
	}
}

func TestADietOfItsOwnIsTold(t *testing.T) {
	s := open(t, units.Metric)
	s.enter(t, "Diets", "vegetarian")
	s.GoTo(findings.Place{Member: s.first().ID})
	if strings.Contains(s.side.caution.Text, "No food says") {
		t.Errorf("of vegetarian it says %q", s.side.caution.Text)
	}
	s.enter(t, "Diets", "keto")
	s.GoTo(findings.Place{Member: s.first().ID})
	if !strings.Contains(s.side.caution.Text, "keto") || !strings.Contains(s.side.caution.Text, "vegetarian") {
		t.Errorf("of a diet that no food declares it says %q", s.side.caution.Text)
	}
}

func TestHowToBeginIsToldWhileTheLeaderIsAlone(t *testing.T) {
	d := benchtest.New(t, trip.New("Walk", 20_000))
	s := &table{Screen: New(d.Bench), Desk: d}
	d.Show(s.Screen, 1100, 700)
	if !s.start.Visible() || !strings.Contains(s.start.Content, "paste") {
		t.Errorf("it says %q", s.start.Content)
	}
	s.Do("Add a member")
	if s.start.Visible() {
		t.Error("with two in the crew the way to begin is still told")
	}
}

// A name that no cook group has makes one; the group a typing mistake made goes
// when it is put right.
func TestAnotherNameMakesACookGroup(t *testing.T) {
	s := open(t, units.Metric)
	before := s.Document.Trip()
	s.enter(t, "Group", "Norht")
	groups := s.Document.Trip().Groups
	if len(groups) != len(before.Groups)+1 || s.first().Group != groups[len(groups)-1].ID {
		t.Fatalf("groups %+v, the member is in %d; said %q", groups, s.first().Group, s.Said)
	}
	s.enter(t, "Group", "North")
	if groups := s.Document.Trip().Groups; len(groups) != len(before.Groups)+1 || groups[len(groups)-1].Name != "North" {
		t.Errorf("put right, the groups are %+v", groups)
	}
	s.enter(t, "Group", before.Groups[0].Name)
	if now := s.Document.Trip(); len(now.Groups) != len(before.Groups) || s.first().Group != before.Groups[0].ID {
		t.Errorf("back in the first, the groups are %+v", now.Groups)
	}
}
