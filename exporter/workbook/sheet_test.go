package workbook

import (
	"strings"
	"testing"
)

func TestLinesOf(t *testing.T) {
	for _, c := range []struct {
		name, text string
		width      float64
		want       int
	}{
		{"nothing", "", 10, 1},
		{"one word", "oats", 10, 1},
		{"two lines by hand", "a\nb", 10, 2},
		{"wraps between words", "11111 22222 33333", 11, 2},
		{"a word longer than the cell", strings.Repeat("1", 25), 10, 3},
		{"wide letters take two places", "東京東京東京", 10, 2},
	} {
		if got := linesOf(c.text, c.width); got != c.want {
			t.Errorf("%s: %d lines, want %d", c.name, got, c.want)
		}
	}
}

func TestCleanTakesOutWhatXMLForbids(t *testing.T) {
	if got := clean("a\x00b\x1fc\nd"); got != "abc\nd" {
		t.Errorf("got %q", got)
	}
	long := strings.Repeat("é", 40000)
	got := clean(long)
	if !strings.HasSuffix(got, "(cut: too long for a cell)") || len([]rune(got)) > longestText {
		t.Errorf("a text of 40,000 letters became %d letters ending %q", len([]rune(got)), got[len(got)-30:])
	}
}

func TestFootText(t *testing.T) {
	for text, want := range map[string]string{
		"A & B": "A && B", "7 lakes": " 7 lakes", "": "", "&P": "&&P",
		strings.Repeat("x", 90): strings.Repeat("x", 79) + "…",
	} {
		if got := footText(text, 80); got != want {
			t.Errorf("%q became %q, want %q", text, got, want)
		}
	}
}

func TestBlocksAreNotCut(t *testing.T) {
	s := &sheet{widths: []float64{40, 40}}
	s.add(cell{value: "title"})
	for range 12 { // 20 rows of 15 points: two blocks fit the 731 points of a page, three do not
		s.blocks = append(s.blocks, len(s.rows)+1)
		for range 20 {
			s.add(cell{value: "x"})
		}
	}
	s.breakPages()
	if len(s.breaks) != 5 {
		t.Fatalf("breaks before rows %v, want one after each two blocks", s.breaks)
	}
	for _, b := range s.breaks {
		if (b-2)%40 != 0 {
			t.Errorf("the break before row %d cuts a block", b)
		}
	}
}

func TestAChartGoesToTheNextPageWhereItDoesNotFit(t *testing.T) {
	for rows, want := range map[int]int{5: 0, 40: 1} {
		s := &sheet{widths: []float64{40}, landscape: true}
		for range rows {
			s.add(cell{value: "x"})
		}
		s.charts = []chart{{row: rows + 1, rows: 21}}
		s.breakPages()
		if len(s.breaks) != want {
			t.Errorf("%d rows and a chart: breaks %v, want %d", rows, s.breaks, want)
		}
	}
}
