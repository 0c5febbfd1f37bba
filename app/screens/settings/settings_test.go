package settings

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// shown is the screen in a window.
type shown struct {
	*Screen
	*benchtest.Desk
}

func openTrip(t testing.TB, on *trip.Trip) *shown {
	t.Helper()
	d := benchtest.New(t, on)
	s := &shown{Screen: New(d.Bench), Desk: d}
	d.Show(s.Screen, 1100, 760)
	return s
}

func open(t testing.TB) *shown { return openTrip(t, benchtest.Pantry()) }

// row finds the setting of a title.
func (s *shown) row(title string) int {
	s.T.Helper()
	at := slices.IndexFunc(s.choices.rows, func(one setting) bool { return one.title == title && one.name != "" })
	if at < 0 {
		s.T.Fatalf("there is no setting %q", title)
	}
	return at
}

// enter types a value over that of a setting.
func (s *shown) enter(title, text string) {
	s.T.Helper()
	s.choices.table.SelectKey(fmt.Sprint(s.row(title)))
	at, _ := s.choices.table.Cursor()
	s.choices.table.MoveCursor(at, valueColumn)
	s.choices.table.Focus()
	s.Press(fyne.KeyReturn)
	s.Overwrite(text)
	s.Press(fyne.KeyReturn)
}

// value is what the table shows for a setting.
func (s *shown) value(title string) string {
	s.T.Helper()
	return s.choices.rows[s.row(title)].text(s.Document.Trip())
}

func (s *shown) settings() *trip.Settings { return &s.Document.Trip().Settings }

// jsonNames lists what a struct's fields are called in its JSON form; lists
// and the things within stand on screens of their own.
func jsonNames(of reflect.Type, prefix string) []string {
	var names []string
	for i := range of.NumField() {
		name, _, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
		kind := of.Field(i).Type
		switch {
		case of.Field(i).Anonymous:
			names = append(names, jsonNames(kind, prefix)...)
		case kind == reflect.TypeFor[trip.Settings](), kind == reflect.TypeFor[trip.MealShares](), kind == reflect.TypeFor[trip.Posting]():
			names = append(names, jsonNames(kind, prefix+name+".")...)
		case kind == reflect.TypeFor[trip.Progress]() || kind.Kind() == reflect.Slice && prefix == "":
		case name == "identity": // made with the file, nobody's choice
		default:
			names = append(names, prefix+name)
		}
	}
	return names
}

func TestEverySettingOfTheTripIsHere(t *testing.T) {
	wanted := jsonNames(reflect.TypeFor[trip.Trip](), "")
	var have []string
	for _, system := range systems {
		have = nil
		for _, p := range parts(system) {
			for _, one := range p.settings {
				have = append(have, one.name)
				if one.title == "" || len(one.about) < 20 {
					t.Errorf("%s is not explained: %q, %q", one.name, one.title, one.about)
				}
			}
		}
	}
	for _, name := range wanted {
		if !slices.Contains(have, name) {
			t.Errorf("%s is missing: give it a line in parts", name)
		}
	}
	for _, name := range have {
		if !slices.Contains(wanted, name) {
			t.Errorf("the trip has no %s", name)
		}
	}
	if len(wanted) < 38 {
		t.Errorf("only %d fields were found", len(wanted))
	}
}

func TestEveryFieldOfABagIsHere(t *testing.T) {
	s := open(t)
	have := map[string]bool{}
	for _, f := range s.bags.fields {
		if f.name != "" {
			have[f.name] = true
		}
	}
	if want := jsonNames(reflect.TypeFor[trip.BagType](), "bag."); len(want) != len(have) {
		t.Errorf("a kind of bag has %v, the table %v", want, slices.Collect(maps.Keys(have)))
	}
}

func TestTypingChangesASettingAndUndoTakesItBack(t *testing.T) {
	for _, c := range []struct {
		title, text string
		got         func(t *trip.Trip) any
		want        any
	}{
		{"Name of the trip", "Long Ridge", func(t *trip.Trip) any { return t.Title }, "Long Ridge"},
		{"Slower as a group", "1,35", func(t *trip.Trip) any { return t.Settings.PartyFactor }, 1.35},
		{"Stops", "25 %", func(t *trip.Trip) any { return t.Settings.StopShare }, 0.25},
		{"Protein a day", "1.6", func(t *trip.Trip) any { return t.Settings.ProteinPerKg }, 1.6},
		{"A day has at least", "90", func(t *trip.Trip) any { return t.Settings.DayLow }, 0.9},
		{"Step of the kitchen scale", "0.5 g", func(t *trip.Trip) any { return t.Settings.ScaleStep }, 500 * units.Milligram},
		{"Fill what is open", "y", func(t *trip.Trip) any { return t.Settings.FillOpenSlots }, true},
		{"Same dinner again after", "5", func(t *trip.Trip) any { return t.Settings.RepeatGap }, 5},
		{"Home, warmest", "86 F", func(t *trip.Trip) any { return t.Settings.HomeHigh }, units.FromFahrenheit(86)},
		{"On the road", "3:30", func(t *trip.Trip) any { return t.Settings.CarHours }, units.Hours(3.5)},
		{"Sun on the pack", "12", func(t *trip.Trip) any { return t.Settings.PackSunHeat }, 12.0},
		{"Hot drink", "0.4 l", func(t *trip.Trip) any { return t.Settings.HotDrink }, 400 * units.Millilitre},
		{"A store from", "3", func(t *trip.Trip) any { return t.Settings.StoreMeals }, 3},
		{"Days in a snack bag", "1", func(t *trip.Trip) any { return t.Settings.SnackDays }, 1},
		{"Lunch in own bags", "yes", func(t *trip.Trip) any { return t.Settings.LunchPerEater }, true},
		{"Room for toiletries", "0.3 l", func(t *trip.Trip) any { return t.Settings.Smellables }, 300 * units.Millilitre},
		{"Dinners in one pack", "34", func(t *trip.Trip) any { return t.Settings.DinnerShare }, 0.34},
		{"Helpers on packing night", "7", func(t *trip.Trip) any { return t.Settings.Helpers }, 7},
		{"Emergency reserve", "1.5 days", func(t *trip.Trip) any { return t.Settings.ReserveDays }, 1.5},
		{"Second helpings", "10", func(t *trip.Trip) any { return t.Settings.Seconds }, 0.1},
		{"Aim of a filled menu", "-0.5", func(t *trip.Trip) any { return t.Settings.MenuAim }, -0.5},
		{"On a burner a day", "75 min", func(t *trip.Trip) any { return t.Settings.CookMinutes }, units.Minutes(75)},
		{"Reserve at the end", "eat", func(t *trip.Trip) any { return t.Settings.ReserveEnd }, trip.ReserveEatenLast},
		{"Equation of walking", "pan", func(t *trip.Trip) any { return t.Settings.Walking }, trip.Pandolf},
		{"Budget", "450", func(t *trip.Trip) any { return t.Settings.Budget }, optional.Of(units.Money(45000))},
		{"Currency", "chf", func(t *trip.Trip) any { return t.Currency }, "CHF"},
	} {
		t.Run(c.title, func(t *testing.T) {
			s := open(t)
			before := c.got(s.Document.Trip())
			s.enter(c.title, c.text)
			if got := c.got(s.Document.Trip()); got != c.want {
				t.Errorf("after typing %q it is %v, want %v; said %q", c.text, got, c.want, s.Said)
			}
			s.WantUndo("change " + c.title)
			if err := s.Document.Undo(); err != nil || c.got(s.Document.Trip()) != before {
				t.Errorf("undo brings %v, it was %v", c.got(s.Document.Trip()), before)
			}
		})
	}
}

func TestWhatIsNotAllowedIsSaidAndNotStored(t *testing.T) {
	for _, c := range []struct{ title, text, said string }{
		{"Slower as a group", "2.5", "1 to 2"},
		{"Dinners in one pack", "0", "more than 0, up to 100 %"},
		{"Helpers on packing night", "many", "whole number"},
		{"Currency", "euros", "three letters"},
		{"First day", "", "20 Jul 2026"},
		{"Packing night", "2199-01-01", "does not fit"},
		{"Energy from dinner", "60", "more than 100 %"},
		{"Budget", "-3", "below zero"},
		{"Fill what is open", "perhaps", "yes, no"},
		{"Units", "cubits", "pounds and miles"},
		{"Reserve is made of", "stone soup", "no such recipe"},
	} {
		s := open(t)
		before := s.Document.Trip()
		s.enter(c.title, c.text)
		if s.Document.Trip() != before || !strings.Contains(s.Said, c.said) {
			t.Errorf("%s %q: said %q, want %q", c.title, c.text, s.Said, c.said)
		}
		if s.Commit() {
			t.Errorf("%s: the screen can be left with %q", c.title, c.text)
		}
		s.Press(fyne.KeyEscape)
		if !s.Commit() || s.Said != "" {
			t.Errorf("%s: after Escape it says %q", c.title, s.Said)
		}
	}
}

func TestSnacksTakeWhatTheMealsLeave(t *testing.T) {
	s := open(t)
	s.enter("Energy from breakfast", "25")
	s.enter("Energy from dinner", "35")
	shares := s.settings().MealShares
	if sum := shares.Breakfast + shares.Lunch + shares.Dinner + shares.Snack; sum < 0.999999 || sum > 1.000001 {
		t.Errorf("the meals bring %v", sum)
	}
	if got := s.value("Energy from snacks"); got != "17" {
		t.Errorf("snacks bring %s %%", got)
	}
}

func TestTheFirstDayTakesPackingNightAlong(t *testing.T) {
	s := open(t)
	days := s.Document.Trip().Start - s.settings().PackingNight
	s.enter("First day", "2028-05-06")
	if got := s.Document.Trip().Start.String(); got != "2028-05-06" {
		t.Fatalf("the trip starts on %s: %s", got, s.Said)
	}
	if s.Document.Trip().Start-s.settings().PackingNight != days {
		t.Errorf("packing night is on %s", s.settings().PackingNight)
	}
	s.enter("Packing night", "2028-05-04")
	if got := s.value("Packing night"); got != "2028-05-04 Thu" {
		t.Errorf("packing night is shown as %q", got)
	}
}

func TestTheReserveIsChosenAmongTheRecipes(t *testing.T) {
	s := open(t)
	want := s.Document.Trip().Recipes[2]
	s.enter("Reserve is made of", want.Name)
	if s.settings().ReserveRecipe != want.ID || s.value("Reserve is made of") != want.Name {
		t.Errorf("the reserve is %q", s.value("Reserve is made of"))
	}
	s.enter("Reserve is made of", "the plan chooses")
	if s.settings().ReserveRecipe != 0 {
		t.Error("none cannot be chosen again")
	}
}

func TestUsualValuesComeBack(t *testing.T) {
	s := open(t)
	s.enter("Slower as a group", "1.7")
	s.choices.table.SelectKey(fmt.Sprint(s.row("Slower as a group")))
	row := &s.choices.rows[s.row("Slower as a group")]
	if s.choices.side.usual.Disabled() || changedMark(row, s.Document.Trip()) != "changed" || s.choices.usualText(row, s.Document.Trip()) != "1.2" {
		t.Errorf("a changed setting is not told: usual %q", s.choices.usualText(row, s.Document.Trip()))
	}
	test.Tap(s.choices.side.usual)
	if s.settings().PartyFactor != 1.2 || !s.choices.side.usual.Disabled() {
		t.Errorf("back to usual gives %v", s.settings().PartyFactor)
	}
	s.WantUndo("Slower as a group back to usual")

	s.enter("Stops", "40")
	s.enter("Budget", "99")
	s.enter("Energy from lunch", "10")
	night := s.settings().PackingNight
	s.Do("All settings back to usual")
	fresh := trip.DefaultSettings()
	if got := s.settings(); got.StopShare != fresh.StopShare || got.MealShares != fresh.MealShares {
		t.Errorf("not all came back: %+v", got)
	}
	if got := s.settings(); got.Budget != optional.Of(units.Money(9900)) || got.PackingNight != night {
		t.Errorf("what is of this trip alone went too: %+v", got)
	}
	if err := s.Document.Undo(); err != nil || s.settings().StopShare != 0.4 {
		t.Error("one undo does not take it back")
	}
	s.Do("All settings back to usual")
	s.Do("All settings back to usual")
	if !strings.Contains(s.Said, "usual value") {
		t.Errorf("with nothing to do it says %q", s.Said)
	}
}

func TestOneSettingBackToUsualByItsAction(t *testing.T) {
	s := open(t)
	s.enter("Fuel reserve", "40")
	s.choices.table.SelectKey(fmt.Sprint(s.row("Fuel reserve")))
	s.Do("This setting back to usual")
	if s.settings().FuelReserve != trip.DefaultSettings().FuelReserve {
		t.Errorf("the reserve is %v", s.settings().FuelReserve)
	}
}

func TestASettingIsFoundByWhatItDoes(t *testing.T) {
	s := open(t)
	s.Do("Find a setting")
	s.Type("spills")
	if rows := s.choices.table.Rows(); len(rows) != 1 || s.choices.rows[rows[0]].title != "Fuel reserve" {
		t.Errorf("found %v", rows)
	}
}

func TestNotesAreWrittenAtTheSide(t *testing.T) {
	s := open(t)
	s.choices.table.SelectKey(fmt.Sprint(s.row("Notes")))
	s.choices.table.Focus()
	s.Press(fyne.KeyReturn)
	if s.Keyboard() != fyne.Focusable(s.choices.side.notes) {
		t.Fatalf("Return leads to %T", s.Keyboard())
	}
	s.Overwrite("Key of the hut")
	s.Press(fyne.KeyReturn)
	s.Type("is with Bryn")
	s.choices.table.Focus()
	if got := s.Document.Trip().Notes; got != "Key of the hut\nis with Bryn" {
		t.Errorf("the notes are %q", got)
	}
	s.WantUndo("change the notes of the trip")
}

func TestHeadingsAndWhatFollowsCannotBeTyped(t *testing.T) {
	s := open(t)
	for _, row := range []int{0, s.row("Energy from snacks")} {
		s.choices.table.SelectKey(fmt.Sprint(row))
		s.choices.table.MoveCursor(row, valueColumn)
		s.choices.table.Focus()
		before := s.Document.Trip()
		s.Type("7")
		s.Press(fyne.KeyDelete)
		if s.Document.Trip() != before || s.Said != "" {
			t.Errorf("row %d takes what is typed; said %q", row, s.Said)
		}
	}
}

func TestUSUnitsAreReadAndTold(t *testing.T) {
	on := benchtest.Pantry()
	on.Units = units.US
	s := openTrip(t, on)
	s.enter("On the road, warmest", "95")
	s.enter("Sun on the pack", "9")
	s.enter("Step of the kitchen scale", "0.1")
	s.enter("Hot drink", "1.5")
	got := s.settings()
	if got.CarHigh < 34.99 || got.CarHigh > 35.01 || got.PackSunHeat < 4.99 || got.PackSunHeat > 5.01 {
		t.Errorf("95 °F is %v °C, 9 °F warmer is %v K", got.CarHigh, got.PackSunHeat)
	}
	if got.ScaleStep.Ounces() < 0.0999 || got.ScaleStep.Ounces() > 0.1001 || got.HotDrink.Millilitres() < 354 || got.HotDrink.Millilitres() > 356 {
		t.Errorf("0.1 oz is %v, 1.5 cups are %v", got.ScaleStep, got.HotDrink)
	}
	for title, want := range map[string]string{"On the road, warmest": "-94 to 212", "Sun on the pack": "0 to 90", "Step of the kitchen scale": "more than 0, up to 3.53"} {
		if allowed := allowedText(&s.choices.rows[s.row(title)], s.Document.Trip()); allowed != want {
			t.Errorf("%s may be %s, want %s", title, allowed, want)
		}
	}
}

func TestPastingManyIsOneStep(t *testing.T) {
	s := open(t)
	at := s.row("Slower as a group")
	s.choices.table.MoveCursor(at, valueColumn)
	s.choices.table.Paste("1.5\n30\n80")
	got := s.settings()
	if got.PartyFactor != 1.5 || got.StopShare != 0.3 || got.EarlyAppetite != 0.8 {
		t.Errorf("pasted: %v %v %v; said %q", got.PartyFactor, got.StopShare, got.EarlyAppetite, s.Said)
	}
	s.WantUndo("paste into the settings")
}

func TestFindingsOpenTheChoices(t *testing.T) {
	s := open(t)
	s.Do("Kinds of bag")
	s.GoTo(findings.Place{})
	if s.tabs.SelectedIndex() != tabChoices {
		t.Error("the kinds of bag stay")
	}
}

// The post near home: its days, its holidays and where a box goes back to.
func TestPostingFromHomeIsSetHere(t *testing.T) {
	s := open(t)
	s.enter("Return address", "Heron club, 1 Dyke Road")
	s.enter("The post takes boxes on", "Mon–Fri")
	s.enter("No post on", "2027-08-20–2027-08-21")
	post := s.Document.Trip().Posting
	if post.ReturnAddress != "Heron club\n1 Dyke Road" || len(post.OpenDays) != 5 || len(post.ClosedDates) != 2 {
		t.Errorf("%+v", post)
	}
	if s.value("No post on") != "2027-08-20–2027-08-21" || s.value("Return address") != "Heron club, 1 Dyke Road" {
		t.Errorf("%q, %q", s.value("No post on"), s.value("Return address"))
	}
}
