package typeset

import (
	"math"
	"slices"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"sumpter/exporter/print/fonts"
)

func says(line Line) string {
	var said strings.Builder
	for _, run := range line.Runs {
		for _, glyph := range run.Glyphs {
			said.WriteString(glyph.Says)
		}
	}
	return said.String()
}

func TestLineSaysItsText(t *testing.T) {
	s := New(fonts.Bundled())
	for _, text := range []string{"Bag 3-07K", "office, fjord and waffle", "Ωμέγα", "Привет, Ёлка", "Straße – 12 °C", "e\u0301 and é", "Nguyễn"} {
		line := s.Line(10, Plain(text))
		if got := says(line); got != text {
			t.Errorf("%q is set as %q", text, got)
		}
		if line.Width < Points(len([]rune(text)))*2 || line.Size != 10 {
			t.Errorf("%q is %.1f wide at %.0f", text, line.Width, line.Size)
		}
	}
	if missing := s.Missing(); len(missing) > 0 {
		t.Errorf("missing are %q", string(missing))
	}
}

// A size is nothing but a factor: text set larger is as much wider.
func TestWidthGrowsWithTheSize(t *testing.T) {
	s := New(fonts.Bundled())
	small, large := s.Width(7, Plain("Tomato pasta")), s.Width(21, Plain("Tomato pasta"))
	if math.Abs(float64(large-3*small)) > 1e-9 {
		t.Errorf("%.3f at 7 points, %.3f at 21", small, large)
	}
}

func TestBoldIsAnotherFont(t *testing.T) {
	s := New(fonts.Bundled())
	line := s.Line(10, Bold("CONTAINS "), Plain("milk"))
	if len(line.Runs) != 2 || line.Runs[0].Font == line.Runs[1].Font || says(line) != "CONTAINS milk" {
		t.Errorf("set %q in %d runs", says(line), len(line.Runs))
	}
}

func TestWhatNoFontHasIsMarkedAndTold(t *testing.T) {
	s := New(fonts.Bundled())
	if got := says(s.Line(10, Plain("Misaki 美咲 & Kim"))); got != "Misaki "+Mark+" & Kim" {
		t.Errorf("set as %q", got)
	}
	if got, want := string(s.Missing()), "咲美"; got != want {
		t.Errorf("missing are %q, want %q", got, want)
	}
}

func TestControlCharactersHaveNoPlaceOnPaper(t *testing.T) {
	s := New(fonts.Bundled())
	// Bell, escape, overrides of the direction, a null; tabs and ends of lines are spaces.
	if got := says(s.Line(10, Plain("a\x07b\x1b[2Jc\u202ed\u202c\x00e\tf\ng\r\u0085h"))); got != "ab[2Jcde f g h" {
		t.Errorf("set as %q", got)
	}
	if missing := s.Missing(); len(missing) > 0 {
		t.Errorf("missing are %q", string(missing))
	}
	if got := says(s.Line(10, Plain("broken \xff bytes"))); !strings.HasPrefix(got, "broken ") || !strings.HasSuffix(got, " bytes") {
		t.Errorf("broken UTF-8 is set as %q", got)
	}
}

func TestParagraphKeepsToItsWidth(t *testing.T) {
	s := New(fonts.Bundled())
	text := "Boil the water with mince, onion and Donaudampfschifffahrtsgesellschaftskapitän. Whisk."
	lines := s.Paragraph(10, 90, Bold("Do: "), Plain(text))
	if len(lines) < 5 {
		t.Fatalf("%d lines", len(lines))
	}
	var words []string
	for _, line := range lines {
		if line.Width > 90.01 {
			t.Errorf("%q is %.1f wide", says(line), line.Width)
		}
		words = append(words, says(line))
	}
	if got := strings.Join(words, ""); got != "Do: "+text {
		t.Errorf("the lines say %q", got)
	}
}

func TestNewLinesBeginNewLines(t *testing.T) {
	s := New(fonts.Bundled())
	var got []string
	for _, line := range s.Paragraph(10, 500, Bold("To:\n"), Plain("Post office\r\nValley\n\nEnd")) {
		got = append(got, says(line))
	}
	if want := []string{"To:", "Post office", "Valley", "End"}; !slices.Equal(got, want) {
		t.Errorf("lines %q, want %q", got, want)
	}
	if lines := s.Paragraph(10, 500, Plain("")); len(lines) != 0 {
		t.Errorf("no text gives %d lines", len(lines))
	}
}

// Any text is set without panic, within its width, and set again alike.
func TestAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := New(fonts.Bundled())
		spans := []Span{{rapid.String().Draw(t, "first"), rapid.Bool().Draw(t, "bold")}, Plain(rapid.String().Draw(t, "second"))}
		width := Points(rapid.IntRange(20, 400).Draw(t, "width"))
		first := s.Paragraph(9, width, spans...)
		second := s.Paragraph(9, width, spans...)
		if len(first) != len(second) {
			t.Fatalf("%d lines, then %d", len(first), len(second))
		}
		for i := range first {
			if says(first[i]) != says(second[i]) || first[i].Width != second[i].Width {
				t.Errorf("line %d is %q, then %q", i, says(first[i]), says(second[i]))
			}
			// A mark on the space that ends a line hangs over the edge.
			if text := says(first[i]); first[i].Width > width+0.01 && len([]rune(text)) > 1 && !strings.ContainsFunc(text, unicode.IsMark) {
				t.Errorf("%q is %.1f wide, the paragraph %.1f", says(first[i]), first[i].Width, width)
			}
		}
	})
}

// needLetters skips a test on a machine without a font for them.
func needLetters(t *testing.T, shelf *fonts.Shelf, letters string) {
	t.Helper()
	for _, r := range letters {
		if _, ok := shelf.Pick(r, false); !ok {
			t.Skipf("no font of this system has %q: its setting is not checked", r)
		}
	}
}

func TestArabicIsShapedAndRunsFromTheRight(t *testing.T) {
	shelf := fonts.WithSystem()
	needLetters(t, shelf, "محمد")
	line := New(shelf).Line(10, Plain("محمد"))
	if len(line.Runs) != 1 || len(line.Runs[0].Glyphs) != 4 {
		t.Fatalf("%d runs", len(line.Runs))
	}
	glyphs := line.Runs[0].Glyphs
	if got := says(line); got != "دمحم" {
		t.Errorf("from the left the glyphs say %q", got)
	}
	// The first meem joins to the left only, the second on both sides.
	if glyphs[3].ID == glyphs[1].ID {
		t.Error("the letters do not join")
	}
}

func TestANameFromTheRightLeavesTheNumberBesideIt(t *testing.T) {
	shelf := fonts.WithSystem()
	needLetters(t, shelf, "שלום")
	if got := says(New(shelf).Line(10, Plain("שלום, 3 eaters"))); got != "םולש, 3 eaters" {
		t.Errorf("from the left the glyphs say %q", got)
	}
}

func TestNumbersWithinArabicAreTurnedWithIt(t *testing.T) {
	shelf := fonts.WithSystem()
	needLetters(t, shelf, "باب")
	if got := says(New(shelf).Line(10, Plain("باب 12 باب"))); got != "باب 12 باب" {
		t.Errorf("from the left the glyphs say %q", got)
	}
	// The word that is read first stands at the right.
	if got := says(New(shelf).Line(10, Plain("اب 12 ما"))); got != "ام 12 با" {
		t.Errorf("from the left the glyphs say %q", got)
	}
}

func TestEastAsianLettersComeFromTheSystem(t *testing.T) {
	shelf := fonts.WithSystem()
	needLetters(t, shelf, "美咲袋")
	s := New(shelf)
	line := s.Line(10, Plain("Misaki 美咲 (袋)"))
	if got := says(line); got != "Misaki 美咲 (袋)" || len(s.Missing()) > 0 {
		t.Errorf("set as %q, missing %q", got, string(s.Missing()))
	}
	if line.Runs[0].Font == line.Runs[1].Font {
		t.Error("all of it is in one font")
	}
}
