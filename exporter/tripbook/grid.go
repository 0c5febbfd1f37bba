package tripbook

import (
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// grid is the cells of one sheet of the workbook, sorted into our columns.
type grid struct {
	sheet   string // as the workbook calls it
	order   int    // place among our sheets
	heads   []*head
	columns []gridColumn // one for each head
	rows    []gridRow
	single  bool
}

// gridColumn is where a column stands in the workbook: the place of the column
// from 0, or of the row for a sheet that is written downwards.
type gridColumn struct {
	place  int // -1: not there
	unit   unit
	spoilt bool // its heading is at fault: the cells below are not looked at
}

// gridRow is one row: its number in the workbook, its cells by our columns.
type gridRow struct {
	number int
	cells  []string
}

// address gives the place of a cell: "D7".
func (g *grid) address(row, column int) string {
	place := g.columns[column].place
	if g.single {
		return cellName(1, place+1)
	}
	return cellName(max(0, place), g.rows[row].number)
}

// column finds a column by its title.
func (g *grid) column(title string) int {
	return slices.IndexFunc(g.heads, func(h *head) bool { return h.title == title })
}

func (g *grid) field(name string) int {
	return slices.IndexFunc(g.heads, func(h *head) bool { return h.field == name })
}

func cellName(column, row int) string {
	name, err := excelize.CoordinatesToCellName(column+1, row)
	if err != nil {
		return ""
	}
	return name
}

func isBlank(text string) bool {
	return strings.TrimSpace(strings.ReplaceAll(text, "\u00a0", " ")) == ""
}

func isSpreadsheetError(text string) bool {
	return slices.Contains(spreadsheetErrors, strings.TrimSpace(text))
}

// headingRows is how far down a heading may stand, below a title say.
const headingRows = 20

// rawSheet reads the cells of a sheet row by row, so that one cell in the last
// row there is costs no more than itself.
func (r *reading) rawSheet(file *excelize.File, name string) ([]gridRow, error) {
	rows, err := file.Rows(name)
	if err != nil {
		return nil, damaged(err)
	}
	var raw []gridRow
	for number := 1; rows.Next(); number++ {
		cells, err := rows.Columns(excelize.Options{RawCellValue: true})
		if err != nil {
			return nil, damaged(err)
		}
		last := lastFilled(cells)
		if last < 0 {
			continue
		}
		if len(raw) >= maxRows || last >= maxColumns {
			r.report(Problem{
				Sheet: name, Cell: cellName(last, number), Found: shown(cells[last]), Wrong: "is beyond what is read",
				Allowed: fmt.Sprintf("%d filled rows, %d columns", maxRows, maxColumns),
			})
			break
		}
		raw = append(raw, gridRow{number, slices.Clone(cells[:last+1])})
	}
	if err := rows.Error(); err != nil {
		return nil, damaged(err)
	}
	return raw, rows.Close()
}

func lastFilled(cells []string) int {
	for i := len(cells) - 1; i >= 0; i-- {
		if !isBlank(cells[i]) {
			return i
		}
	}
	return -1
}
