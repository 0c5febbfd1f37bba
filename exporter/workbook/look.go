package workbook

import (
	"strings"

	"github.com/xuri/excelize/v2"
)

// The colours of the papers: paper ground, ink, and few that mean something,
// always together with a word.
const (
	ink    = "22303C"
	quiet  = "5C6770"
	ground = "F6F3EC"
	line   = "D8D1C3"
	spruce = "1F5F5B"
	ochre  = "8A5A00"
	brick  = "A63A2B"
	slate  = "3E5C86"
	plum   = "7A3E6D"
	amber  = "FFF6DA" // ground of cells the leader may change
)

const fontName = "Arial"

// look is how a cell is shown. Equal looks share one style of the file.
type look struct {
	size   float64
	bold   bool
	italic bool
	colour string
	fill   string
	format string // number format
	align  string // left, right, center
	indent bool   // keeps the text off its neighbours
	wrap   bool
	frame  frame
}

// frame is the lines around a cell.
type frame uint8

const (
	noFrame    frame = iota
	underline        // a hairline below
	groupStart       // the first row of a day, round, member: a line above
	boxed            // a tick box
	double           // allergens
	headLine         // below a heading
)

var (
	titleLook   = look{size: 16, bold: true, colour: ink, align: "left"}
	aboutLook   = look{size: 9, italic: true, colour: quiet, wrap: true, align: "left"}
	moreLook    = look{size: 9, colour: quiet, wrap: true, align: "left", indent: true}
	emptyLook   = look{size: 11, colour: ink, wrap: true}
	headLook    = look{bold: true, colour: ink, fill: line, wrap: true, frame: headLine}
	plainLook   = look{colour: ink, wrap: true, align: "left", indent: true}
	strongLook  = look{bold: true, colour: ink, wrap: true, align: "left"}
	sectionLook = look{size: 12, bold: true, colour: spruce, frame: headLine}
	linkLook    = look{colour: spruce}
)

// styles makes each look into a style of the file once.
type styles struct {
	file *excelize.File
	made map[look]int
}

func (s *styles) id(l look) (int, error) {
	if l.size == 0 {
		l.size = ordinarySize
	}
	if id, ok := s.made[l]; ok {
		return id, nil
	}
	id, err := s.file.NewStyle(l.style())
	if err != nil {
		return 0, err
	}
	s.made[l] = id
	return id, nil
}

func (l look) style() *excelize.Style {
	style := &excelize.Style{
		Font:      &excelize.Font{Family: fontName, Size: l.size, Bold: l.bold, Italic: l.italic, Color: l.colour},
		Alignment: &excelize.Alignment{Horizontal: l.align, Vertical: "center", WrapText: l.wrap},
		Border:    l.frame.border(),
	}
	if l.indent {
		style.Alignment.Indent = 1
	}
	if l.fill != "" {
		style.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{l.fill}}
	}
	if l.format != "" {
		style.CustomNumFmt = &l.format
	}
	return style
}

// Line styles of the file format: 1 thin, 2 medium, 6 double, 7 hair.
func (f frame) border() []excelize.Border {
	switch f {
	case underline:
		return []excelize.Border{{Type: "bottom", Color: line, Style: 1}}
	case groupStart:
		return []excelize.Border{{Type: "top", Color: ink, Style: 1}, {Type: "bottom", Color: line, Style: 1}}
	case boxed:
		return around(quiet, 1)
	case double:
		return around(plum, 6)
	case headLine:
		return []excelize.Border{{Type: "bottom", Color: ink, Style: 2}}
	default:
		return nil
	}
}

func around(colour string, style int) []excelize.Border {
	var borders []excelize.Border
	for _, side := range []string{"left", "top", "right", "bottom"} {
		borders = append(borders, excelize.Border{Type: side, Color: colour, Style: style})
	}
	return borders
}

// decimalFormat is the number format with the given decimals.
func decimalFormat(decimals int) string {
	if decimals <= 0 {
		return "#,##0"
	}
	return "#,##0." + strings.Repeat("0", decimals)
}

const (
	percentFormat = "0%"
	dateFormat    = "ddd d mmm yyyy"
)
