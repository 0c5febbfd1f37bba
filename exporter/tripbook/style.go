package tripbook

import (
	"strings"

	"github.com/xuri/excelize/v2"
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
	if s.centre {
		made.Alignment.Vertical, made.Alignment.Horizontal = "center", "center"
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
func (h *head) format(u unit) string {
	switch h.look {
	case asDate:
		return "yyyy-mm-dd"
	case asNumber:
		if u.format != "" {
			return u.format
		}
		return "General"
	default:
		return ""
	}
}

// styleColumn styles a whole column, so that cells still to be filled look
// and take dates as those already there.
func (b *book) styleColumn(sheet string, column int, h *head, u unit) error {
	id, err := b.style(cellStyle{format: h.format(u), ruled: true})
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
	return b.width(sheet, column, max(h.width, longestWord(h.in(b.scope.system))))
}

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
		{format: h.format(u), fill: fillHere, ruled: true},
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

// page freezes the heading and makes the sheet ready to print: landscape, one
// page wide, the heading on each page.
func (b *book) page(sheet, firstFree string, headRow int) error {
	if err := b.file.SetRowHeight(sheet, headRow, headingHeight); err != nil {
		return err
	}
	err := b.file.SetPanes(sheet, &excelize.Panes{
		Freeze: true, XSplit: 1, YSplit: headRow, TopLeftCell: "B" + strings.TrimLeft(firstFree, "A"), ActivePane: "bottomRight",
	})
	if err != nil {
		return err
	}
	err = b.file.SetDefinedName(&excelize.DefinedName{Name: "_xlnm.Print_Titles", RefersTo: "'" + sheet + "'!$1:$1", Scope: sheet})
	if err != nil {
		return err
	}
	return b.paper(sheet, "landscape")
}

func (b *book) paper(sheet, orientation string) error {
	fit, wide, high, size := true, 1, 0, paperA4
	if b.scope.system == "us" {
		size = paperLetter
	}
	if err := b.file.SetSheetProps(sheet, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	return b.file.SetPageLayout(sheet, &excelize.PageLayoutOptions{Size: &size, Orientation: &orientation, FitToWidth: &wide, FitToHeight: &high})
}
