package workbook

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"
)

// Paper sizes of the file format.
const (
	paperLetter = 1
	paperA4     = 9
)

// Margins of every page in inches.
const (
	margin     = 0.4
	footMargin = 0.6
)

// setPage makes the sheet ready to print: one page wide, heads repeated, page
// numbers, the title of the trip at the foot.
func (b *book) setPage(s *sheet) error {
	fit, wide, high, size, orientation := true, 1, 0, paperA4, "portrait"
	if s.letter {
		size = paperLetter
	}
	if s.landscape {
		orientation = "landscape"
	}
	if err := b.file.SetSheetProps(s.name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	err := b.file.SetPageLayout(s.name, &excelize.PageLayoutOptions{
		Size: &size, Orientation: &orientation, FitToWidth: &wide, FitToHeight: &high,
	})
	if err != nil {
		return err
	}
	side, foot, footer := margin, footMargin, 0.3
	err = b.file.SetPageMargins(s.name, &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &side, Bottom: &foot, Header: &footer, Footer: &footer,
	})
	if err != nil {
		return err
	}
	err = b.file.SetHeaderFooter(s.name, &excelize.HeaderFooterOptions{
		OddFooter: "&L&8" + footText(b.title, 80) + "&C&8" + footText(s.name, 31) + "&R&8Page &P of &N",
	})
	if err != nil {
		return err
	}
	off := false
	if err := b.file.SetSheetView(s.name, -1, &excelize.ViewOptions{ShowGridLines: &off}); err != nil {
		return err
	}
	return b.setPrintNames(s)
}

// footText keeps a typed title from being read as a print code.
func footText(text string, most int) string {
	runes := []rune(clean(strings.ReplaceAll(text, "\n", " ")))
	if len(runes) > most {
		runes = append(runes[:most-1], '…')
	}
	text = strings.ReplaceAll(string(runes), "&", "&&")
	if text != "" && text[0] >= '0' && text[0] <= '9' {
		text = " " + text // else it would belong to the font size before it
	}
	return text
}

func (b *book) setPrintNames(s *sheet) error {
	last, err := excelize.CoordinatesToCellName(max(len(s.widths), 1), s.lastRow(), true)
	if err != nil {
		return err
	}
	err = b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Area", RefersTo: quoted(s.name) + "!$A$1:" + last, Scope: s.name,
	})
	if err != nil || !s.repeatsHead() {
		return err
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Titles", RefersTo: fmt.Sprintf("%s!$%d:$%d", quoted(s.name), s.headRow, s.headRow), Scope: s.name,
	})
}

// repeatsHead tells whether the heading stands on every page. Above a chart
// on a page of its own it would only confuse.
func (s *sheet) repeatsHead() bool {
	onePage := s.heightBetween(1, len(s.rows)+1) <= 1.3*s.pageHeight()
	return s.headRow > 0 && !(onePage && len(s.charts) > 0)
}

// lastRow is the last row with something in it, charts included.
func (s *sheet) lastRow() int {
	last := max(len(s.rows), 1)
	for _, c := range s.charts {
		last = max(last, c.row+c.rows)
	}
	return last
}

func quoted(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

func (b *book) setMarks(s *sheet) error {
	for _, m := range s.marks {
		var options []excelize.ConditionalFormatOptions
		for _, r := range m.rules {
			style := &excelize.Style{Font: &r.font}
			if r.fill != "" {
				style.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{r.fill}}
			}
			id, err := b.file.NewConditionalStyle(style)
			if err != nil {
				return err
			}
			options = append(options, excelize.ConditionalFormatOptions{Type: "formula", Criteria: r.formula, Format: &id})
		}
		if err := b.file.SetConditionalFormat(s.name, m.area, options); err != nil {
			return err
		}
	}
	return nil
}

// setTicks lets only an x stand in a tick box. It works in every spreadsheet
// and on paper, which drawn check boxes do not.
func (b *book) setTicks(s *sheet) error {
	for _, area := range s.ticks {
		validation := excelize.NewDataValidation(true)
		validation.SetSqref(area)
		if err := validation.SetDropList([]string{"x"}); err != nil {
			return err
		}
		validation.SetError(excelize.DataValidationErrorStyleStop, "Tick box", "Put an x when it is done, or leave it empty.")
		if err := b.file.AddDataValidation(s.name, validation); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) setCharts(s *sheet) error {
	for _, c := range s.charts {
		if err := b.file.AddChart(s.name, fmt.Sprintf("A%d", c.row), c.chart); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) setLinks(s *sheet) error {
	for _, l := range s.links {
		if err := b.file.SetCellHyperLink(s.name, l.at, l.to, "Location"); err != nil {
			return err
		}
	}
	return nil
}
