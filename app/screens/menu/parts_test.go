package menu

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"sumpter/app/look"
	"sumpter/domain/findings"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func TestNamesFitTheirCell(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	rapid.Check(t, func(t *rapid.T) {
		var f fitter
		f.set(rapid.Float32Range(40, 200).Draw(t, "width"), 14)
		most := rapid.IntRange(1, 3).Draw(t, "most")
		names := strings.Join(rapid.SliceOfN(rapid.StringMatching(`[a-z]{1,14}( [a-zü]{1,14}){0,4}`), 1, 5).Draw(t, "names"), "\n")
		lines := strings.Split(f.fit(names, most, fyne.TextStyle{}), "\n")
		if len(lines) > most {
			t.Fatalf("%d lines, %d allowed: %q", len(lines), most, lines)
		}
		for _, line := range lines {
			if f.measure(line, fyne.TextStyle{}) > f.width && line != "…" {
				t.Fatalf("%q is wider than %v", line, f.width)
			}
		}
	})
}

func TestNamesThatFitAreNotCut(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	var f fitter
	f.set(140, 14)
	for names, want := range map[string]string{
		"Dal":                             "Dal",
		"Red lentil dal with rice":        "Red lentil dal with\nrice",
		"Dal\nPudding":                    "Dal\nPudding",
		"Dal\nPudding\nTea\nCocoa":        "Dal\nPudding\n+ Tea, Cocoa",
		"Red lentil dal with rice\nCocoa": "Red lentil dal with\nrice\nCocoa",
	} {
		if got := f.fit(names, 3, fyne.TextStyle{}); got != want {
			t.Errorf("%q becomes %q, want %q", names, got, want)
		}
	}
}

func TestParagraphsKeepApartAtAnyWidth(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	var labels []fyne.CanvasObject
	for range 4 {
		labels = append(labels, words(strings.Repeat("a paragraph that wraps ", 8)))
	}
	stack := &paragraphs{}
	grown := 0
	stack.grown = func() { grown++ }
	page := &fyne.Container{Layout: stack, Objects: labels}
	test.NewTempWindow(t, page)
	for _, width := range []float32{500, 180, 320} {
		page.Resize(fyne.NewSize(width, 900))
		for i := 1; i < len(labels); i++ {
			above := labels[i-1]
			if bottom := above.Position().Y + above.MinSize().Height; labels[i].Position().Y < bottom {
				t.Errorf("at %v paragraph %d begins at %v, the one above ends at %v", width, i, labels[i].Position().Y, bottom)
			}
		}
		last := labels[3]
		if page.MinSize().Height < last.Position().Y+last.Size().Height {
			t.Errorf("at %v the page asks for too little height", width)
		}
	}
	if grown < 3 {
		t.Errorf("told of %d changes of height", grown)
	}
}

func TestChangesAreWrittenWithTheirSign(t *testing.T) {
	for value, want := range map[float64]string{0.3: "±0", -0.3: "±0", 12.4: "+12", -7.6: "−8"} {
		if got := signedNumber(value); got != want {
			t.Errorf("%v is written %q, want %q", value, got, want)
		}
	}
	for mass, want := range map[units.Mass]string{units.FromGrams(1.6): "+2 g", units.FromGrams(-35.2): "−35 g", 0: "±0 g"} {
		if got := signedMass(mass, units.Metric); got != want {
			t.Errorf("%v is written %q, want %q", mass, got, want)
		}
	}
}

func TestRangesNameTheUnitOnce(t *testing.T) {
	for _, c := range []struct {
		low, high units.Mass
		want      string
	}{
		{units.FromGrams(60), units.FromGrams(90), "60–90 g"},
		{units.FromGrams(60), units.FromGrams(60), "60 g"},
	} {
		if got := massRange(c.low, c.high, units.Metric); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestScrollingUsesCellsAgain(t *testing.T) {
	s := openTrip(t, triptest.Large(40, 21, 3))
	made := func() int { return len(s.board.sheet.cells.Objects) }
	s.board.scrollTo(fyne.NewPos(300, 100))
	first := made()
	for x := float32(0); x < 3000; x += 70 {
		s.board.scroll.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(-70, 0)})
		s.checkShown()
	}
	if made() > first+2*len(s.board.rows) {
		t.Errorf("%d cells at first, %d after scrolling", first, made())
	}
}

// checkShown: every slot in view has one cell, at its place, with its facts.
func (s *shown) checkShown() {
	s.t.Helper()
	first, last := s.board.sheet.inView()
	if n := (last.row - first.row + 1) * (last.column - first.column + 1); n != len(s.board.sheet.shown) {
		s.t.Fatalf("%d slots are in view, %d cells shown", n, len(s.board.sheet.shown))
	}
	for at, c := range s.board.sheet.shown {
		k, _ := s.board.slot(at)
		if !c.box.Visible() || c.box.Position() != s.board.m.corner(at) || c.shown != s.seen.facts(k) {
			s.t.Fatalf("the cell of %v is at %v and shows %+v", k, c.box.Position(), c.shown)
		}
	}
}

// Every slot that serves a food which is not known to be safe says so, or
// something that must be fixed as well.
func TestUnsafeIsMarkedAtEveryMeal(t *testing.T) {
	marked := 0
	for seed := range uint64(3) {
		s := openTrip(t, triptest.Large(12, 9, seed))
		for k, fates := range s.seen.fates {
			if !slices.ContainsFunc(fates, func(f *spoilage.Fate) bool { return f.Verdict != spoilage.Safe }) {
				continue
			}
			marked++
			told := slices.ContainsFunc(s.seen.troubles[k], func(f *findings.Finding) bool { return f.Stage == findings.Spoilage })
			if f := s.seen.facts(k); f.word == "" || f.severity != findings.MustFix && !told {
				t.Errorf("%v shows %+v", k, f)
			}
		}
	}
	if marked == 0 {
		t.Error("no food of three trips is unsafe or unknown")
	}
}

// Whoever reads only the words still learns what is wrong: each severity in
// the grid stands beside a word.
func TestSeverityHasItsWordAndSign(t *testing.T) {
	s := openTrip(t, triptest.Large(20, 7, 2))
	for _, c := range s.board.sheet.shown {
		signs := 0
		for i, sign := range c.signs {
			if sign.Visible() {
				signs++
				if severities[i] != c.shown.severity {
					t.Errorf("%s is shown by the sign of %s", c.shown.severity, severities[i])
				}
			}
		}
		if has := c.shown.severity != ""; has != (signs == 1) || has != (c.word.Text != "") {
			t.Errorf("severity %q, %d signs, word %q", c.shown.severity, signs, c.word.Text)
		}
		if c.lock.Visible() != c.shown.locked {
			t.Error("the padlock does not tell what is locked")
		}
	}
}

func TestStaleFiguresAreNotShown(t *testing.T) {
	s := openDemo(t)
	other := s.Document.Trip().Clone()
	cell := other.Cell(3, trip.Dinner, 1)
	cell.Dishes = cell.Dishes[1:]
	seen := newOverview(other, s.Document.Plan(), false)
	if f := seen.facts(dinner3); f.figures != "…" || f.dishes != crumble || f.word != "" {
		t.Errorf("while the plan is made the cell shows %+v", f)
	}
	if f := seen.facts(dinner4); f.figures == "…" || f.figures == "" {
		t.Errorf("an untouched cell shows %+v", f)
	}
}

func TestTheSideIsNeverWiderThanItsPlace(t *testing.T) {
	s := openDemo(t)
	width := s.side.content.Size().Width
	for row := range s.board.rows {
		for column := range s.board.columns {
			s.board.moveTo(place{row, column}, false)
			if least := s.side.content.MinSize().Width; least > width {
				k, _ := s.board.selected()
				t.Fatalf("for %v the side asks for %v of %v", k, least, width)
			}
		}
	}
}

func TestFindingsWordsAreShort(t *testing.T) {
	for _, code := range []string{"slot-open", "cannot-be-served", "danger-accepted", "food-not-known", "needs-flame", "slow-meal", "unheard-of"} {
		word := troubleWord(&findings.Finding{Code: code, Severity: findings.LookAt})
		if word == "" || len(word) > 18 {
			t.Errorf("%s is worded %q", code, word)
		}
	}
}

func TestLabelsOfPeopleAreCounted(t *testing.T) {
	on := triptest.Large(12, 2, 1)
	var all []trip.MemberID
	for i := range on.Crew {
		all = append(all, on.Crew[i].ID)
	}
	if got := namesOf(on, all); !strings.HasSuffix(got, " +6") {
		t.Errorf("got %q", got)
	}
	if got := namesOf(on, all[:7]); strings.Contains(got, "+") {
		t.Errorf("one more than the line names is named: %q", got)
	}
}
