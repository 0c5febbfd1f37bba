package tripbook

import (
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Write writes the trip as a workbook for a reader of the system of units;
// which one changes nothing of what Read gives back. It fails on text longer
// than a cell can hold, 32,767 characters, and on what w returns.
func Write(w io.Writer, t *trip.Trip, system units.System) error {
	b := &book{file: excelize.NewFile(), scope: scopeOf(t, system), styles: map[cellStyle]int{}}
	if err := b.fill(t); err != nil {
		return fmt.Errorf("write the trip workbook: %w", err)
	}
	if _, err := b.file.WriteTo(w); err != nil {
		return fmt.Errorf("write the trip workbook: %w", err)
	}
	return b.file.Close()
}

// WriteTemplate writes a workbook to fill in: all sheets with headings, help
// and drop-downs, and the usual settings.
func WriteTemplate(w io.Writer, system units.System) error {
	currency := "EUR"
	if system == units.US {
		currency = "USD"
	}
	return Write(w, &trip.Trip{Units: system, Currency: currency, Settings: trip.DefaultSettings()}, system)
}

// book is a workbook being written.
type book struct {
	file   *excelize.File
	scope  *scope
	styles map[cellStyle]int
	lists  []string // the choices on the helper sheet, one column each
}

// settingHead heads the sheet that is written downwards.
var settingHead = []string{"Setting", "Value", "Unit", "What it means"}

// longestText is what a cell can hold, in UTF-16 units (ECMA-376 readers).
const longestText = 32_767

func (b *book) fill(t *trip.Trip) error {
	if err := b.file.SetSheetName("Sheet1", sheetReadMe); err != nil {
		return err
	}
	ours := sheets()
	for _, s := range ours {
		if _, err := b.file.NewSheet(s.title()); err != nil {
			return err
		}
	}
	if _, err := b.file.NewSheet(sheetLists); err != nil {
		return err
	}
	for _, s := range ours {
		write := b.across
		if s.downwards() {
			write = b.down
		}
		if err := write(s, s.rows(t, b.scope)); err != nil {
			return fmt.Errorf("sheet %s: %w", s.title(), err)
		}
	}
	if err := b.readMe(ours); err != nil {
		return err
	}
	if err := b.file.SetSheetVisible(sheetLists, false); err != nil {
		return err
	}
	b.file.SetActiveSheet(0)
	const fixed = "2000-01-01T00:00:00Z" // the same trip is the same file
	return b.file.SetDocProps(&excelize.DocProperties{Title: clean(t.Title), Created: fixed, Modified: fixed})
}

// put writes one cell. Text goes in as a string, which no spreadsheet takes
// for a formula, whatever it begins with.
func (b *book) put(sheet, cell string, c content) error {
	switch {
	case c.text == "":
		return nil
	case c.numeric:
		return b.file.SetCellDefault(sheet, cell, c.text)
	}
	text := clean(c.text)
	if length := len(utf16.Encode([]rune(text))); length > longestText {
		return fmt.Errorf("cell %s: the text has %d characters and a cell holds %d: shorten it", cell, length, longestText)
	}
	return b.file.SetCellStr(sheet, cell, guarded(text))
}

var escape = regexp.MustCompile(`^_x[0-9A-Fa-f]{4}_`)

// guarded keeps typed text such as _x0041_ from being read as the character
// it stands for in a workbook (ECMA-376 Part 1, 22.4.2.4, ST_Xstring).
func guarded(text string) string {
	if !strings.Contains(text, "_x") {
		return text
	}
	var out strings.Builder
	for i := range len(text) {
		if text[i] == '_' && escape.MatchString(text[i:]) {
			out.WriteString("_x005F_")
			continue
		}
		out.WriteByte(text[i])
	}
	return out.String()
}

// clean drops what XML cannot hold.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n', r == '\t':
			return r
		case r < 0x20, r == 0xFFFE, r == 0xFFFF:
			return -1
		default:
			return r
		}
	}, text)
}

// lastRow is how far down styles and drop-downs reach.
const lastRow = 3000

// across writes a sheet with a heading row and a row for each thing.
func (b *book) across(s sheet, rows [][]content) error {
	name, heads := s.title(), s.heads()
	for j, h := range heads {
		if err := b.styleColumn(name, j, h, h.unit(b.scope.system)); err != nil {
			return err
		}
		if err := b.headingCell(name, cellName(j, 1), h.in(b.scope.system), h.needed); err != nil {
			return err
		}
	}
	for i, cells := range rows {
		for j, c := range cells {
			if err := b.put(name, cellName(j, i+2), c); err != nil {
				return err
			}
		}
	}
	for j, h := range heads {
		below := cellName(j, 2) + ":" + cellName(j, lastRow)
		if err := b.offer(name, below, h); err != nil {
			return err
		}
	}
	characters := 0.0
	for _, h := range heads {
		characters += b.characters(h)
	}
	return b.page(name, characters)
}

// down writes the settings one below the other.
func (b *book) down(s sheet, rows [][]content) error {
	name := s.title()
	for j, text := range settingHead {
		if err := b.headingCell(name, cellName(j, 1), text, true); err != nil {
			return err
		}
	}
	for j, width := range []float64{28, 30, 9, 84} {
		if err := b.width(name, j, width); err != nil {
			return err
		}
	}
	for j, h := range s.heads() {
		u := h.unit(b.scope.system)
		row := []content{textContent(h.title), rows[0][j], textContent(u.symbol), textContent(h.help)}
		for k, c := range row {
			if err := b.put(name, cellName(k, j+2), c); err != nil {
				return err
			}
		}
		if err := b.styleSetting(name, j+2, h, u); err != nil {
			return err
		}
		if err := b.offer(name, cellName(1, j+2), h); err != nil {
			return err
		}
	}
	return b.page(name, charactersOnPage)
}
