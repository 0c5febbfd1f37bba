package workbook

import (
	"math"
	"strings"
	"unicode/utf8"

	"github.com/xuri/excelize/v2"
)

// cell is what stands in one place of a sheet. A formula has its value beside
// it, as the plan has it, for readers that do not reckon.
type cell struct {
	value   any
	formula string
	look    look
	span    int // columns it runs over; 0 is one
}

// row is one line of a sheet.
type row struct{ cells []cell }

// sheet is one sheet before it is written: everything is known before the
// first row goes out, since the file is written in one pass.
type sheet struct {
	name      string
	landscape bool
	letter    bool // US Letter instead of A4
	widths    []float64
	rows      []row
	headRow   int   // heading that is frozen and repeated on each page; 0: none
	headCols  int   // columns that stay in sight
	blocks    []int // rows where a block begins that no page should cut
	breaks    []int
	table     *excelize.Table
	marks     []mark
	ticks     []string // ranges where only an x may stand
	charts    []chart
	links     []link
}

// mark is a conditional format.
type mark struct {
	area  string
	rules []rule
}

// rule changes the look of cells where a formula holds.
type rule struct {
	formula string
	font    excelize.Font
	fill    string
}

type chart struct {
	row   int
	chart *excelize.Chart
	rows  int // how many ordinary rows it covers
}

type link struct{ at, to string }

// add puts a row below the others and gives its number, from 1.
func (s *sheet) add(cells ...cell) int {
	s.rows = append(s.rows, row{cells: cells})
	return len(s.rows)
}

// addWide puts a text over the whole width.
func (s *sheet) addWide(text string, l look) {
	s.add(cell{value: text, look: l, span: len(s.widths)})
}

func (s *sheet) gap() { s.rows = append(s.rows, row{}) }

func (s *sheet) width(column int) float64 {
	if column < len(s.widths) {
		return s.widths[column]
	}
	return 10
}

func (s *sheet) fullWidth() float64 {
	sum := 0.0
	for _, width := range s.widths {
		sum += width
	}
	return sum
}

// Points of an ordinary row and of its letters.
const (
	ordinaryHeight = 15.0
	ordinarySize   = 10.0
	lineHeight     = 1.22 // of the size of its letters
)

// padding is what a column is wider than its text, in letters.
const padding = 1.0

// heightOf reckons the height of a row in points from the lines its texts
// take: spreadsheets do not do it for merged cells, nor before the first look.
func (s *sheet) heightOf(r row) float64 {
	height := ordinaryHeight
	for i, c := range r.cells {
		text, ok := c.value.(string)
		if !ok {
			continue
		}
		size := c.look.size
		if size == 0 {
			size = ordinarySize
		}
		width := s.width(i)
		for j := 1; j < c.span; j++ {
			width += s.width(i + j)
		}
		lines := 1
		if c.look.wrap {
			lines = linesOf(text, width*ordinarySize/size*fontFit(c.look))
		}
		height = math.Max(height, float64(lines)*size*lineHeight+3)
	}
	return math.Min(height, excelize.MaxRowHeight)
}

// fontFit allows for bold letters being wider.
func fontFit(l look) float64 {
	if l.bold {
		return 0.92
	}
	return 1
}

// linesOf counts the lines a text takes when wrapped between words.
func linesOf(text string, width float64) int {
	lines := 0
	for _, paragraph := range strings.Split(text, "\n") {
		lines++
		used := 0.0
		for _, word := range strings.Fields(paragraph) {
			length := textWidth(word)
			if used > 0 && used+0.5+length > width {
				lines++
				used = 0
			}
			for length > width && width > 1 {
				lines++
				length -= width
			}
			if used > 0 {
				used += 0.5
			}
			used += length
		}
	}
	return lines
}

// textWidth is the width of a word in digits, from the usual proportions of a
// plain sans-serif type; wide letters of East Asia take two.
func textWidth(word string) float64 {
	width := 0.0
	for _, letter := range word {
		switch {
		case letter >= 0x1100 && utf8.RuneLen(letter) >= 3:
			width += 2
		case letter >= 'A' && letter <= 'Z':
			width += 1.25
		case letter >= 'a' && letter <= 'z':
			width += 0.92
		default:
			width++
		}
	}
	return width
}
