package workbook

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"sumpter/exporter/tables"
)

// firstRow is the first row of data of every table sheet: title, what it is
// for, a gap and the heading come before.
const firstRow = 5

// formulas gives a formula for a column by its key, from the row number.
type formulas map[string]func(row int) string

// tableSheet lays a table out on a sheet of its own.
func tableSheet(name string, t *tables.Table, live formulas) *sheet {
	s := &sheet{name: name}
	for _, column := range t.Columns {
		s.widths = append(s.widths, column.Width)
	}
	s.landscape = s.fullWidth() > 95
	s.addWide(t.Title, titleLook)
	s.addWide(t.About, aboutLook)
	s.gap()
	if len(t.Rows) == 0 {
		s.addWide(t.Empty, emptyLook)
		return s
	}
	s.headRow = s.add(headings(t)...)
	s.addTable(t, live)
	return s
}

func headings(t *tables.Table) []cell {
	cells := make([]cell, len(t.Columns))
	for i, column := range t.Columns {
		l := headLook
		l.align = alignOf(t, i)
		l.indent = l.align != "center"
		cells[i] = cell{value: column.Heading, look: l}
	}
	return cells
}

// addTable writes the rows and makes them a real table with filters.
func (s *sheet) addTable(t *tables.Table, live formulas) {
	starts := map[int]bool{}
	for _, start := range t.Groups {
		starts[start] = true
	}
	aligns := alignsOf(t)
	for i, values := range t.Rows {
		cells := make([]cell, len(values))
		for j, value := range values {
			cells[j] = tableCell(t, aligns, j, value, starts[i])
			if formula := live[t.Columns[j].Key]; formula != nil && usable(value) {
				cells[j].formula = formula(len(s.rows) + 1)
			}
		}
		s.add(cells...)
	}
	last := areaOf(s.headRow, len(t.Columns), len(s.rows))
	no := false
	s.table = &excelize.Table{Range: last, Name: "t_" + t.Name, StyleName: "", ShowRowStripes: &no}
	s.markTicks(t)
}

// usable tells whether a formula may stand in for the value: a word such as
// unknown stays.
func usable(value tables.Value) bool { return value.Kind == tables.Figure || value.Kind == tables.Open }

func areaOf(head, columns, last int) string {
	end, _ := excelize.CoordinatesToCellName(columns, last)
	return fmt.Sprintf("A%d:%s", head, end)
}

// markTicks makes tick boxes and greys a row whose last one is ticked.
func (s *sheet) markTicks(t *tables.Table) {
	last := ""
	for i, column := range t.Columns {
		if column.Role == tables.Tick {
			last = columnName(i)
			s.ticks = append(s.ticks, fmt.Sprintf("%s%d:%s%d", last, firstRow, last, len(s.rows)))
		}
	}
	if last == "" {
		return
	}
	s.marks = append(s.marks, mark{
		area:  areaOf(firstRow, len(t.Columns), len(s.rows)),
		rules: []rule{{formula: fmt.Sprintf("$%s%d=\"x\"", last, firstRow), font: excelize.Font{Color: quiet, Strike: true}}},
	})
}

func columnName(place int) string {
	name, _ := excelize.ColumnNumberToName(place + 1)
	return name
}

func alignsOf(t *tables.Table) []string {
	aligns := make([]string, len(t.Columns))
	for i := range aligns {
		aligns[i] = alignOf(t, i)
	}
	return aligns
}

// alignOf puts figures to the right and everything else to the left.
func alignOf(t *tables.Table, place int) string {
	column := t.Columns[place]
	switch column.Role {
	case tables.Tick:
		return "center"
	case tables.Input, tables.Amount, tables.Percent:
		return "right"
	}
	for _, values := range t.Rows {
		switch values[place].Kind {
		case tables.Figure:
			return "right"
		case tables.Day:
			return "left"
		}
	}
	if column.Decimals > 0 {
		return "right"
	}
	return "left"
}

// tableCell shows one value by the role of its column.
func tableCell(t *tables.Table, aligns []string, place int, value tables.Value, start bool) cell {
	column := t.Columns[place]
	l := look{colour: ink, wrap: column.Wrap, frame: underline, align: aligns[place]}
	l.indent = l.align != "center"
	if start {
		l.frame = groupStart
	}
	switch column.Role {
	case tables.Tick:
		if value.Kind == tables.Open {
			l.frame = boxed
		}
	case tables.Input, tables.Amount:
		l.fill = amber
	case tables.Code:
		l.bold = true
	case tables.Danger:
		if value.Text != "" && !strings.HasPrefix(value.Text, "none") {
			l.bold, l.colour, l.frame = true, plum, double
		}
	case tables.Severity:
		l.colour = severityColour(value.Text)
		l.bold = l.colour != ink
	}
	return valued(column, value, l)
}

// valued puts the value and its number format into a cell.
func valued(column tables.Column, value tables.Value, l look) cell {
	switch value.Kind {
	case tables.Figure:
		l.format = decimalFormat(column.Decimals)
		if column.Role == tables.Percent {
			l.format = percentFormat
		}
		return cell{value: value.Number, look: l}
	case tables.Day:
		l.format = dateFormat
		return cell{value: dateSerial(value.Date), look: l}
	case tables.Open:
		l.format = decimalFormat(column.Decimals)
		return cell{look: l}
	default:
		l.wrap = l.wrap || len(value.Text) > int(column.Width)
		return cell{value: value.Text, look: l}
	}
}

// severityColour goes with the word, never without it.
func severityColour(text string) string {
	switch {
	case strings.Contains(text, "must fix"), text == "NOT SAFE":
		return brick
	case strings.Contains(text, "look at"), text == "NOT KNOWN":
		return ochre
	default:
		return ink
	}
}
