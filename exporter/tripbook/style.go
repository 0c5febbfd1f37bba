package tripbook

import (
	"math"
	"strings"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/units"
)

// Colours: a dark head must be filled in, a light one may stay empty.
const (
	ink       = "22303C"
	quiet     = "5C6770"
	needDark  = "1F5F5B"
	mayLight  = "D8D1C3"
	rule      = "D8D1C3"
	fillHere  = "FFF6DA"
	fontName  = "Arial"
	fontSize  = 10
	titleSize = 16
)

// cellStyle is how a cell is shown; equal ones share one style of the file.
type cellStyle struct {
	bold   bool
	size   float64
	colour string
	fill   string
	format string
	centre bool
	left   bool // also where a number stands
	ruled  bool
}

func (b *book) style(s cellStyle) (int, error) {
	if id, ok := b.styles[s]; ok {
		return id, nil
	}
	if s.size == 0 {
		s.size = fontSize
	}
	if s.colour == "" {
		s.colour = ink
	}
	made := &excelize.Style{
		Font:      &excelize.Font{Family: fontName, Size: s.size, Bold: s.bold, Color: s.colour},
		Alignment: &excelize.Alignment{WrapText: s.format == "", Vertical: "top"},
	}
	if s.left || s.format == "" && s.ruled {
		made.Alignment.Horizontal, made.Alignment.Indent = "left", 1 // off the number beside it
	}
	if s.centre {
		made.Alignment.Vertical, made.Alignment.Horizontal, made.Alignment.Indent = "center", "center", 0
	}
	if s.fill != "" {
		made.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{s.fill}}
	}
	if s.format != "" && s.format != "General" {
		made.CustomNumFmt = &s.format
	}
	if s.ruled {
		for _, side := range []string{"bottom", "left", "right", "top"} {
			made.Border = append(made.Border, excelize.Border{Type: side, Color: rule, Style: 1})
		}
	}
	id, err := b.file.NewStyle(made)
	if err != nil {
		return 0, err
	}
	b.styles[s] = id
	return id, nil
}

// format gives the number format of a column.
func (b *book) format(h *head, u unit) string {
	switch h.look {
	case asDate:
		return "yyyy-mm-dd"
	case asNumber:
		if u.format != "" {
			return u.format
		}
		if h.money {
			return strings.TrimSuffix("0."+strings.Repeat("0", units.CurrencyDigits(b.scope.currency)), ".")
		}
		return "General"
	default:
		return ""
	}
}

// styleColumn styles a whole column, so that cells still to be filled look
// and take dates as those already there.
func (b *book) styleColumn(sheet string, column int, h *head, u unit) error {
	id, err := b.style(cellStyle{format: b.format(h, u), ruled: true})
	if err != nil {
		return err
	}
	letters, err := excelize.ColumnNumberToName(column + 1)
	if err != nil {
		return err
	}
	if err := b.file.SetColStyle(sheet, letters, id); err != nil {
		return err
	}
	return b.width(sheet, column, b.characters(h))
}

// characters is the width of a column.
func (b *book) characters(h *head) float64 { return max(h.width, longestWord(h.in(b.scope.system))) }

// longestWord is the width in characters that keeps the heading's words whole.
func longestWord(text string) float64 {
	longest := 0
	for _, word := range strings.Fields(text) {
		longest = max(longest, len([]rune(word)))
	}
	return float64(longest)*1.15 + 1.5
}

func (b *book) width(sheet string, column int, characters float64) error {
	letters, err := excelize.ColumnNumberToName(column + 1)
	if err != nil {
		return err
	}
	return b.file.SetColWidth(sheet, letters, letters, characters)
}

func (b *book) headingCell(sheet, cell, text string, needed bool) error {
	look := cellStyle{bold: true, fill: mayLight, centre: true, ruled: true}
	if needed {
		look.fill, look.colour = needDark, "FFFFFF"
	}
	return b.styled(sheet, cell, text, look)
}

func (b *book) styled(sheet, cell, text string, look cellStyle) error {
	id, err := b.style(look)
	if err != nil {
		return err
	}
	if err := b.put(sheet, cell, textContent(text)); err != nil {
		return err
	}
	return b.file.SetCellStyle(sheet, cell, cell, id)
}

// styleSetting styles one row of the settings; the value is where to write.
func (b *book) styleSetting(sheet string, row int, h *head, u unit) error {
	looks := []cellStyle{
		{bold: h.needed, ruled: true},
		{format: b.format(h, u), fill: fillHere, left: true, ruled: true},
		{colour: quiet, ruled: true},
		{colour: quiet, ruled: true},
	}
	for column, look := range looks {
		id, err := b.style(look)
		if err != nil {
			return err
		}
		cell := cellName(column, row)
		if err := b.file.SetCellStyle(sheet, cell, cell, id); err != nil {
			return err
		}
	}
	return nil
}

const (
	headingHeight = 45 // points: three lines
	paperA4       = 9
	paperLetter   = 1
)

// charactersOnPage is what fits the width of a landscape page at a size that
// can be read; wider sheets take as many pages side by side as they need.
const charactersOnPage = 150

// page freezes heading and first column and makes the sheet ready to print:
// landscape, both repeated on each page.
func (b *book) page(sheet string, characters float64) error {
	if err := b.file.SetRowHeight(sheet, 1, headingHeight); err != nil {
		return err
	}
	err := b.file.SetPanes(sheet, &excelize.Panes{Freeze: true, XSplit: 1, YSplit: 1, TopLeftCell: "B2", ActivePane: "bottomRight"})
	if err != nil {
		return err
	}
	repeated := "'" + sheet + "'!$1:$1"
	if characters > charactersOnPage {
		repeated = "'" + sheet + "'!$A:$A," + repeated
	}
	err = b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: repeated, Scope: sheet})
	if err != nil {
		return err
	}
	return b.paper(sheet, characters)
}

func (b *book) paper(sheet string, characters float64) error {
	fit, high, size, orientation := true, 0, paperA4, "landscape"
	wide := int(math.Ceil(characters / charactersOnPage))
	if b.scope.system == units.US {
		size = paperLetter
	}
	if err := b.file.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	return b.file.SetPageLayout(sheet, &excelize.PageLayoutOptions{Size: &size, Orientation: &orientation, FitToWidth: &wide, FitToHeight: &high})
}
