package resupply

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/demo"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
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

// cell puts the cursor on a cell by the name of the point and the title and
// unit of the column.
func (s *shown) cell(point trip.PointID, title string) {
	s.t.Helper()
	for i, f := range s.fields() {
		if strings.TrimSpace(f.title+" "+f.unit) == title {
			s.table.Focus()
			s.table.MoveCursor(slices.Index(s.table.Rows(), point), i)
			return
		}
	}
	s.t.Fatalf("no column %s", title)
}

// enter types over the cell at the cursor and commits.
func (s *shown) enter(text string) {
	if text == "" {
		s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
		return
	}
	for _, letter := range text {
		s.Window.Canvas().Focused().TypedRune(letter)
	}
	s.Commit()
}

func TestEveryFieldOfAPointIsTyped(t *testing.T) {
	s := openDemo(t)
	point := func() *trip.ResupplyPoint { return s.Document.Trip().Point(2) }
	for _, c := range []struct {
		title, text string
		got         func() any
		want        any
	}{
		{"Name", "High Hut", func() any { return point().Name }, "High Hut"},
		{"Used", "no", func() any { return point().Use }, false},
		{"Kind", "cache", func() any { return point().Kind }, trip.Cache},
		{"After day", "7", func() any { return point().AfterDay }, 7},
		{"Open", "Mon-Wed, Sat", func() any { return strings.Join(point().OpenDays, " ") }, "Mon Tue Wed Sat"},
		{"Closed on", "2026-08-31", func() any { return len(point().ClosedDates) }, 1},
		{"Address", "Hut, Valley", func() any { return point().Address }, "Hut\nValley"},
		{"In the post days", "5", func() any { return point().TransitDays }, 5},
		{"Fastest days", "2", func() any { return point().FastestDays }, 2},
		{"In hand days", "1", func() any { return point().BufferDays }, 1},
		{"Kept for days", "21", func() any { return point().HoldDays }, optional.Of(21)},
		{"Kept for days", "unknown", func() any { return point().HoldDays }, optional.Unknown[int]()},
		{"Margin days", "3", func() any { return point().HoldMargin }, 3},
		{"Parcel up to kg", "12.5", func() any { return point().MaxParcel }, optional.Of(12500 * units.Gram)},
		{"Length and girth cm", "250", func() any { return point().MaxGirth }, optional.Of(units.Metres(2.5))},
		{"Length and girth cm", "", func() any { return point().MaxGirth }, optional.Unknown[units.Metres]()},
		{"A parcel EUR", "7,50", func() any { return point().FeePerParcel }, units.Money(750)},
		{"A visit EUR", "3", func() any { return point().VisitFee }, units.Money(300)},
		{"Detour km", "1.5", func() any { return point().Detour }, units.Metres(1500)},
		{"Detour h", "0:30", func() any { return point().DetourHours }, units.Hours(0.5)},
		{"Coolest °C", "-2", func() any { return point().StoreLow }, optional.Of(units.Celsius(-2))},
		{"Warmest °C", "21", func() any { return point().StoreHigh }, optional.Of(units.Celsius(21))},
		{"Takes fuel", "yes", func() any { return point().TakesFuel }, true},
		{"Sells fuel", "no", func() any { return point().SellsFuel }, false},
		{"Takes rubbish", "yes", func() any { return point().TakesWaste }, true},
		{"Notes", "Ring first.", func() any { return point().Notes }, "Ring first."},
	} {
		s.cell(2, c.title)
		s.enter(c.text)
		if got := c.got(); got != c.want {
			t.Errorf("%s %q: %v, want %v (said %q)", c.title, c.text, got, c.want, s.Said)
		}
		if !strings.HasPrefix(s.Document.UndoName(), "change ") {
			t.Errorf("undo is called %q", s.Document.UndoName())
		}
	}
}

func TestWhatCannotBeIsRefusedWithTheReason(t *testing.T) {
	s := openDemo(t)
	before := s.Document.Trip()
	for _, c := range []struct{ title, text, want string }{
		{"After day", "12", "9"},
		{"Kind", "castle", "post office"},
		{"Open", "Moonday, Funday", "Mon"},
		{"Closed on", "tomorrow", "YYYY-MM-DD"},
		{"Fastest days", "9", "fastest"},
		{"Parcel up to kg", "heavy", "unit"},
	} {
		s.Said = ""
		s.cell(1, c.title)
		s.enter(c.text)
		if s.Document.Trip() != before || !strings.Contains(s.Said, c.want) {
			t.Errorf("%s %q: said %q", c.title, c.text, s.Said)
		}
		s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
}

func TestOpenDaysReadAsTheyAreWritten(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "every day"}, {"every day", "every day"}, {"Mon–Sun", "every day"}, {"Mon-Sat", "Mon–Sat"}, {"sat, sun", "Sat, Sun"},
		{"Monday, Wednesday-Friday", "Mon, Wed–Fri"}, {"Fri–Mon", "Mon, Fri–Sun"}, {"Tue", "Tue"},
	} {
		var p, again trip.ResupplyPoint
		if err := setOpen(&p, c.text); err != nil || openText(&p) != c.want {
			t.Errorf("%q reads as %q, want %q (%v)", c.text, openText(&p), c.want, err)
		}
		if err := setOpen(&again, openText(&p)); err != nil || openText(&again) != c.want {
			t.Errorf("%q written and read again is %q", c.text, openText(&again))
		}
	}
}

func TestTheFirstPointIsOffered(t *testing.T) {
	on := demo.Trip()
	on.Points = nil
	s := openTrip(t, &on)
	if !s.none.Visible() || s.work.Visible() {
		t.Fatal("an empty place does not say so")
	}
	s.Actions()[0].Do()
	points := s.Document.Trip().Points
	if len(points) != 1 || points[0].AfterDay != 5 || !points[0].Use || s.Document.UndoName() != "add a point" {
		t.Fatalf("points %+v", points)
	}
	if s.none.Visible() || s.point != points[0].ID {
		t.Error("the new point is not shown")
	}
	s.Actions()[1].Do()
	if len(s.Document.Trip().Points) != 0 || s.Document.UndoName() != "remove Point 1" {
		t.Errorf("points %v, undo %q", s.Document.Trip().Points, s.Document.UndoName())
	}
}

func TestCardsSayWhatWaitsAndWhen(t *testing.T) {
	s := openDemo(t)
	p := s.Document.Plan()
	var text []string
	for _, line := range cardLines(s.Document.Trip(), p, s.Document.Trip().Point(2)) {
		text = append(text, line.Text)
	}
	joined := strings.Join(text, "|")
	box := boxOf(p, 2)
	for _, want := range []string{"Tarn Hut", "after day 6", box.Mass.Format(units.Metric), "2 parcels", bench.DayWords(box.PickUp), "post by " + bench.DayWords(box.PostBy), "look at: Nobody knows how long"} {
		if !strings.Contains(joined, want) {
			t.Errorf("%q is not on the card: %s", want, joined)
		}
	}
	if err := s.Document.Edit("x", func(on *trip.Trip) error { on.Point(1).TransitDays = 20; return nil }); err != nil {
		t.Fatal(err)
	}
	if got := postingLine(boxOf(s.Document.Plan(), 1)); got != "no day is right to post it" {
		t.Errorf("with a long transit it says %q", got)
	}
}

func TestABoxThatDidNotComeIsSaidWhereItWaits(t *testing.T) {
	s := openDemo(t)
	if err := s.Document.Edit("x", func(on *trip.Trip) error { on.Progress.MissingBoxes = []trip.PointID{1}; return nil }); err != nil {
		t.Fatal(err)
	}
	said := func(id trip.PointID) string {
		text := ""
		for _, line := range cardLines(s.Document.Trip(), s.Document.Plan(), s.Document.Trip().Point(id)) {
			text += line.Text + "|"
		}
		return text
	}
	if text := said(1); !strings.Contains(text, "did not come") || strings.Contains(text, "fetched") {
		t.Errorf("the card says %s", text)
	}
	if text := said(2); strings.Contains(text, "did not come") {
		t.Errorf("the other card says %s", text)
	}
}

func TestTheTextIsOfThePointAtTheCursor(t *testing.T) {
	s := openDemo(t)
	s.cell(1, "Name")
	s.Do("Add a point")
	s.table.SelectKey(key(3))
	if s.point != 3 {
		t.Fatalf("of point %d", s.point)
	}
	if err := s.Document.Undo(); err != nil {
		t.Fatal(err)
	}
	at, _ := s.table.Selected()
	if s.point != at || s.about.name.Content != s.Document.Trip().Point(at).Name {
		t.Errorf("the cursor is on point %d, the text of point %d, %s", at, s.point, s.about.name.Content)
	}
}

func TestAChoiceIsTakenInOneStep(t *testing.T) {
	s := openDemo(t)
	before := len(s.choices.shown)
	for _, choice := range s.choices.shown {
		if len(choice.Points) != 1 || choice.Points[0] != 2 {
			continue
		}
		s.choices.take(choice)
		if got := s.Document.Trip(); got.Point(1).Use || !got.Point(2).Use {
			t.Errorf("used: %v and %v", got.Point(1).Use, got.Point(2).Use)
		}
		if s.Document.UndoName() != "use Tarn Hut" {
			t.Errorf("undo is called %q", s.Document.UndoName())
		}
		ringed := 0
		for _, now := range s.choices.shown {
			if now.Current {
				ringed++
				if !slices.Equal(now.Points, choice.Points) {
					t.Errorf("ringed is %v", now.Points)
				}
			}
		}
		if ringed != 1 || len(s.choices.shown) < 2 {
			t.Errorf("%d ringed of %d", ringed, len(s.choices.shown))
		}
		if err := s.Document.Undo(); err != nil || !s.Document.Trip().Point(1).Use {
			t.Error("undo does not use both again")
		}
		return
	}
	t.Fatalf("none of the %d choices uses the hut alone", before)
}

func TestTappingAndKeysTakeAChoice(t *testing.T) {
	s := openDemo(t)
	for row, i := range s.choices.table.Rows() {
		if len(s.choices.shown[i].Points) == 0 {
			s.choices.table.Focus()
			s.choices.table.MoveCursor(row, 0)
			s.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			break
		}
	}
	if got := s.Document.Trip(); got.Point(1).Use || got.Point(2).Use || s.Document.UndoName() != "use all food from the start" {
		t.Fatalf("used %v and %v, undo %q", got.Point(1).Use, got.Point(2).Use, s.Document.UndoName())
	}
	if !strings.Contains(s.choices.words.Content, "Advised: ") {
		t.Errorf("the advice is %q", s.choices.words.Content)
	}
	s.Actions()[2].Do()
	for _, choice := range s.choices.shown {
		if choice.Recommended && !choice.Current {
			t.Error("the advised choice was not taken")
		}
	}
}

func TestAMissingBoxIsThoughtOf(t *testing.T) {
	s := openDemo(t)
	s.GoTo(findings.Place{Point: 1})
	if s.point != 1 {
		t.Fatalf("point %d", s.point)
	}
	all := ""
	for _, object := range s.about.list.Box.Objects {
		switch o := object.(type) {
		case *look.Text:
			all += o.Content + "\n"
		case *look.Paragraph:
			all += o.Content + "\n"
		}
	}
	if !strings.Contains(all, "turn back by the evening of day") || !strings.Contains(all, "the packs are empty after day 3") {
		t.Errorf("what if the box does not come is not said:\n%s", all)
	}
	for _, told := range []string{"Evening of day 1:", "Evening of day 3: ", "days of food; eaters: 11; days back: 3, so it does not reach.", "so it does not reach.", "For Ines (vegan), Tomas, Marit (no gluten)", "Own dishes reach least far for ", "Parcel 1: ", " in length and girth"} {
		if !strings.Contains(all, told) {
			t.Errorf("%q is not said:\n%s", told, all)
		}
	}
	if err := s.Document.Edit("x", func(on *trip.Trip) error { on.Point(1).Use = false; return nil }); err != nil {
		t.Fatal(err)
	}
	if boxOf(s.Document.Plan(), 1) != nil {
		t.Error("a point that is not used has a box")
	}
}

func TestPastedPointsAreOneStep(t *testing.T) {
	s := openDemo(t)
	s.cell(1, "In the post days")
	s.table.Paste("4\t2\t2\t20\n4\t2\t2\t\n")
	one, two := s.Document.Trip().Point(1), s.Document.Trip().Point(2)
	if one.TransitDays != 4 || one.HoldDays.Or(0) != 20 || two.BufferDays != 2 || two.HoldDays.Known() {
		t.Errorf("pasted %+v and %+v; said %q", one, two, s.Said)
	}
	if err := s.Document.Undo(); err != nil || s.Document.Trip().Point(1).TransitDays != 3 || s.Document.Trip().Point(2).BufferDays != 4 {
		t.Error("undo does not take the whole paste back")
	}
}

// The first point is named by typing on, and food that keeps may wait there.
func TestTheFirstPointTakesTheKeyboard(t *testing.T) {
	on := benchtest.Demo()
	on.Points, on.Shops = nil, nil
	s := openTrip(t, on)
	s.Screen.Focus()
	s.Press(fyne.KeySpace)
	s.enter("Mill hut")
	points := s.Document.Trip().Points
	if len(points) != 1 || points[0].Name != "Mill hut" {
		t.Fatalf("got %+v; said %q", points, s.Said)
	}
	if high, known := points[0].StoreHigh.Get(); !known || high < 25 {
		t.Errorf("a box there is kept at %v", points[0].StoreHigh)
	}
}
