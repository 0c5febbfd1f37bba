package route

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/screens/bench"
	"sumpter/app/screens/bench/benchtest"
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

func openTrip(t testing.TB, on *trip.Trip) *shown {
	t.Helper()
	d := benchtest.New(t, on)
	s := &shown{Screen: New(d.Bench), Desk: d, t: t}
	d.Show(s.Screen, 1100, 700)
	return s
}

func openDemo(t testing.TB) *shown { return openTrip(t, benchtest.Demo()) }

func (s *shown) days() []trip.Day { return s.bench.Trip().Days }

// column finds a column by its title.
func (s *shown) column(title string) int {
	s.t.Helper()
	for i, f := range s.fields() {
		if f.title == title {
			return i
		}
	}
	s.t.Fatalf("there is no column %q", title)
	return 0
}

// typeInto edits a cell of the table with the keyboard.
func (s *shown) typeInto(day int, title, text string) {
	s.t.Helper()
	s.table.Focus()
	s.table.MoveCursor(day-1, s.column(title))
	s.key(fyne.KeyReturn)
	entry, ok := s.Window.Canvas().Focused().(interface{ SetText(string) })
	if !ok {
		s.t.Fatalf("the keyboard is at %T, no editor opened in %s", s.Window.Canvas().Focused(), title)
	}
	entry.SetText("")
	for _, letter := range text {
		s.Window.Canvas().Focused().TypedRune(letter)
	}
	s.key(fyne.KeyReturn)
}

func (s *shown) key(name fyne.KeyName) {
	s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

func TestTypingChangesTheDay(t *testing.T) {
	s := openDemo(t)
	for _, c := range []struct {
		title, text string
		right       func(d trip.Day) bool
	}{
		{"From where to where", "Ford to Well", func(d trip.Day) bool { return d.Name == "Ford to Well" }},
		{"Distance", "12.5", func(d trip.Day) bool { return d.Distance == 12500 }},
		{"Distance", "3 mi", func(d trip.Day) bool { return d.Distance == units.FromMiles(3) }},
		{"Ascent", "700", func(d trip.Day) bool { return d.Ascent == 700 }},
		{"Descent", "650", func(d trip.Day) bool { return d.Descent == 650 }},
		{"Steep descent", "200", func(d trip.Day) bool { return d.SteepDescent == 200 }},
		{"Ground", "scr", func(d trip.Day) bool { return d.Terrain == trip.Scree }},
		{"Walking", "6:30", func(d trip.Day) bool { return d.MovingHours.Or(0) == 6.5 }},
		{"Walking", "", func(d trip.Day) bool { return !d.MovingHours.Known() }},
		{"Camp", "1480", func(d trip.Day) bool { return d.CampHeight == 1480 }},
		{"Lunch", "1300", func(d trip.Day) bool { return d.LunchHeight == 1300 }},
		{"Low", "-3", func(d trip.Day) bool { return d.Low == -3 }},
		{"High", "68 F", func(d trip.Day) bool { return d.High > 19.9 && d.High < 20.1 }},
		{"Dry camp", "y", func(d trip.Day) bool { return d.DryCamp }},
		{"Snow water", "yes", func(d trip.Day) bool { return d.SnowWater }},
		{"No flame", "yes", func(d trip.Day) bool { return d.NoFlame }},
		{"No flame", "no", func(d trip.Day) bool { return !d.NoFlame }},
		{"Meals from the packs", "dinner, b", func(d trip.Day) bool {
			return len(d.Meals) == 2 && d.Meals[0] == trip.Breakfast && d.Meals[1] == trip.Dinner
		}},
		{"Meals from the packs", "none", func(d trip.Day) bool { return len(d.Meals) == 0 }},
		{"Meals from the packs", "all", func(d trip.Day) bool { return len(d.Meals) == 4 }},
		{"Notes", "ask the ranger", func(d trip.Day) bool { return d.Notes == "ask the ranger" }},
	} {
		s.typeInto(4, c.title, c.text)
		if !c.right(s.days()[3]) {
			t.Errorf("%q typed into %s gives %+v; told %q", c.text, c.title, s.days()[3], s.Said)
		}
		s.WantUndo("change " + c.title + " of day 4")
	}
}

// A figure is shown rounded; opening and leaving its cell must not round it.
func TestLookingAtACellDoesNotRoundIt(t *testing.T) {
	on := demo.Trip()
	on.Days[1].Distance = 14533
	s := openTrip(t, &on)
	s.table.Focus()
	s.table.MoveCursor(1, s.column("Distance"))
	s.key(fyne.KeyReturn)
	s.key(fyne.KeyReturn)
	if have := s.days()[1].Distance; have != 14533 || s.Document.UndoName() != "" {
		t.Errorf("the day has %v m", have)
	}
}

func TestWhatHasNoMeaningIsSaidAndNotStored(t *testing.T) {
	s := openDemo(t)
	for title, text := range map[string]string{
		"Distance": "far", "Ascent": "20 kg", "Ground": "clouds", "Meals from the packs": "brunch", "Low": "95", "Steep descent": "9000", "Date": "tomorrow", "Walking": "0.2",
	} {
		s.Said = ""
		s.typeInto(8, title, text)
		if s.Document.UndoName() != "" {
			t.Fatalf("%q in %s changed the trip", text, title)
		}
		if s.Said == "" {
			t.Errorf("%q in %s: nothing is said", text, title)
		}
		if s.Commit() {
			t.Errorf("%q in %s: the screen could be left", text, title)
		}
		s.key(fyne.KeyEscape)
	}
}

func TestDatesMoveTheWholeTrip(t *testing.T) {
	s := openDemo(t)
	s.typeInto(3, "Date", "2027-06-12")
	if have := s.bench.Trip().Start.String(); have != "2027-06-10" {
		t.Errorf("day 3 on 12 June begins on %s", have)
	}
	s.WantUndo("start on Thu 10 Jun 2027")
	if night := s.bench.Trip().Settings.PackingNight.String(); night != "2027-06-05" {
		t.Errorf("packing night stays behind on %s", night)
	}
	if s.start.Text != "2027-06-10" {
		t.Errorf("the field says %q", s.start.Text)
	}
	s.Do("Change the date of day 1")
	s.start.SetText("")
	test.Type(s.start, "2028-02-28")
	s.start.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if have := s.bench.Trip().DateOf(3).String(); have != "2028-03-01" {
		t.Errorf("day 3 is on %s", have)
	}
	s.start.SetText("2028-02-31")
	if s.Commit() || s.Said == "" {
		t.Errorf("31 February was taken; told %q", s.Said)
	}
	s.start.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if !s.Commit() {
		t.Error("Escape does not take the typing back")
	}
}

func TestDaysAreAddedMovedAndRemoved(t *testing.T) {
	s := openDemo(t)
	was := s.bench.Trip()
	s.Do("Add a day at the end")
	s.WantUndo("add a day")
	if days := s.days(); len(days) != 10 || days[9].CampHeight != days[8].CampHeight || s.chosen() != 10 {
		t.Errorf("%d days, the cursor on %d", len(days), s.chosen())
	}
	s.choose(4)
	s.Do("Put a day in before this one")
	s.WantUndo("put a day in before day 4")
	if point := s.bench.Trip().Points[1]; point.AfterDay != 7 || s.bench.Trip().Points[0].AfterDay != 3 {
		t.Errorf("the second point is reached after day %d", point.AfterDay)
	}
	s.Do("Move the day later")
	s.WantUndo("move day 4 to be day 5")
	if s.chosen() != 5 || s.days()[4].Distance != 0 {
		t.Errorf("the cursor is on day %d", s.chosen())
	}
	s.Do("Move the day earlier")
	s.Do("Remove the day")
	s.WantUndo("remove day 4")
	for range 5 {
		if err := s.Document.Undo(); err != nil {
			t.Fatal(err)
		}
	}
	if !trip.Equal(s.bench.Trip(), was) {
		t.Error("taking all back does not give the trip as it was")
	}
	s.choose(1)
	s.Do("Move the day earlier")
	if s.Said == "" || len(s.days()) != 9 {
		t.Errorf("there is no day 0; told %q", s.Said)
	}
}

func TestMealsAreTicked(t *testing.T) {
	s := openDemo(t)
	s.choose(1)
	if s.day.meals[trip.Breakfast].Checked || !s.day.meals[trip.Dinner].Checked {
		t.Error("the marks are not those of day 1")
	}
	test.Tap(s.day.meals[trip.Breakfast])
	if meals := s.days()[0].Meals; len(meals) != 4 || meals[0] != trip.Breakfast {
		t.Errorf("meals %v", meals)
	}
	s.WantUndo("change Meals from the packs of day 1")
	s.choose(2)
	if s.Document.UndoName() != "change Meals from the packs of day 1" {
		t.Error("looking at another day changed it")
	}
}

func TestPasteIsOneStep(t *testing.T) {
	s := openDemo(t)
	s.table.MoveCursor(0, s.column("Distance"))
	s.table.Paste("10\t100\t50\n11\t110\t60")
	if d := s.days(); d[0].Distance != 10000 || d[0].Descent != 50 || d[1].Ascent != 110 {
		t.Errorf("pasted: %+v", d[:2])
	}
	s.WantUndo("paste into the days")
	s.table.Paste("10\tmuch")
	if !strings.Contains(s.Said, "day 1, Ascent") {
		t.Errorf("told %q", s.Said)
	}
}

// A list with more days than the trip has adds them.
func TestAListAddsDays(t *testing.T) {
	s := openDemo(t)
	was := s.bench.Trip()
	last := len(was.Days)
	s.table.MoveCursor(last-1, 0)
	s.table.Paste("Stage\tDistance (km)\tAscent\nOver the moor\t14\t300\nDown to the mill\t9,5\t120\n")
	d := s.days()
	if len(d) != last+1 || d[last-1].Name != "Over the moor" || d[last].Name != "Down to the mill" || d[last].Distance != 9500 || d[last].Ascent != 120 {
		t.Fatalf("%d days, the last %+v; told %q", len(d), d[len(d)-1], s.Said)
	}
	if err := s.Document.Undo(); err != nil || !trip.Equal(was, s.bench.Trip()) {
		t.Errorf("one undo does not take the days back (%v)", err)
	}
}

func TestFindingsOfTheWayAreShownWithTheirDay(t *testing.T) {
	on := demo.Trip()
	on.Days[4].Distance, on.Days[4].Ascent, on.Days[4].Descent = 38000, 2400, 1200
	s := openTrip(t, &on)
	if s.Waiting() == 0 {
		t.Fatal("a day of 38 km and 2,400 m is not worth a look")
	}
	s.GoTo(findings.Place{Day: 5})
	if s.chosen() != 5 || len(s.day.list.Objects) == 0 {
		t.Errorf("day %d with %d findings", s.chosen(), len(s.day.list.Objects))
	}
	if s.day.time.Content == "" || !strings.Contains(s.day.time.Content, "Tobler") {
		t.Errorf("the time is not explained: %q", s.day.time.Content)
	}
	s.choose(1)
	if len(s.day.list.Objects) != len(routeFindings(s.bench, 1)) {
		t.Error("the findings are not those of day 1")
	}
}

// Every litre, gram and minute of the day is told with its reason, and the
// totals are those of the plan.
func TestWaterAndStoveAreExplained(t *testing.T) {
	on := demo.Trip()
	on.Days[4].DryCamp = true
	s := openTrip(t, &on)
	s.choose(5)
	for i, want := range map[int][]string{
		tabWater: {"for the day and", "Carries", "US Army TB MED 507", "shade", "Treat water"},
		tabStove: {"kJ from water of", "boils at", "Fuel of the meal", "Until the last eater eats", "in reserve", "carbon monoxide"},
	} {
		s.day.tabs.SelectIndex(i)
		ledger := map[int]*bench.Ledger{tabWater: s.day.water, tabStove: s.day.stove}[i]
		said := ""
		for _, entry := range ledger.Entries() {
			said += entry.What + " | " + entry.Figure + " | " + entry.Basis + "\n"
		}
		for _, word := range want {
			if !strings.Contains(said, word) {
				t.Errorf("tab %d does not say %q:\n%s", i, word, said)
			}
		}
	}
	before := len(s.day.stove.Entries())
	s.choose(2)
	if len(s.day.stove.Entries()) == 0 || before == 0 {
		t.Error("the stove of another day is empty")
	}
}

func TestTappingATemperatureChoosesTheDay(t *testing.T) {
	s := openDemo(t)
	size := s.pictures.air.Size()
	test.TapAt(s.pictures.air, fyne.NewPos(size.Width-20, size.Height/2))
	if s.chosen() != 9 {
		t.Errorf("day %d is chosen", s.chosen())
	}
}

func TestSketchGoesFromCampToCamp(t *testing.T) {
	on := demo.Trip()
	spots := sketch(&on)
	if first := spots[0]; first.Height != 460-420+180 || first.Distance != 0 {
		t.Errorf("it begins at %+v", first)
	}
	if last := spots[len(spots)-1]; last.Height != 1320 || last.Distance != length(&on) {
		t.Errorf("it ends at %+v", last)
	}
	if sketch(&trip.Trip{Days: []trip.Day{{}}}) != nil {
		t.Error("a trip without a way has no profile")
	}
}

func writeFile(t *testing.T, content string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "way.gpx")
	if err := os.WriteFile(path, []byte(content), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func BenchmarkRefreshLargest(b *testing.B) {
	s := openTrip(b, triptest.Large(60, 21, 1))
	b.ResetTimer()
	for range b.N {
		s.Refresh()
	}
}
