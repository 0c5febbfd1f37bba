package press

import (
	"strings"

	"sumpter/exporter/print/page"
	"sumpter/exporter/print/typeset"
)

// Column is a column of a table.
type Column struct {
	Head  string
	Width Points // 0: shares what the others leave
	Right bool   // figures end at the right
}

// Drawing is what stands in a cell, for the width there is.
type Drawing func(width Points, right bool) Block

// Cell is text in a cell.
func (p *Press) Cell(style Style, text string) Drawing {
	return func(width Points, right bool) Block {
		if right {
			return p.Right(style, width, text)
		}
		return p.Text(style, width, text)
	}
}

// SpansCell is pieces of text in a cell, some of them bold.
func (p *Press) SpansCell(style Style, spans ...typeset.Span) Drawing {
	return func(width Points, right bool) Block {
		if right {
			return p.rightSpans(style, width, spans...)
		}
		return p.Spans(style, width, spans...)
	}
}

// TickCell is a cell with a box to tick.
func (p *Press) TickCell(size Points) Drawing {
	return func(Points, bool) Block { return p.Tick(size) }
}

// CodeCell is a bag code in a cell: smaller rather than broken.
func (p *Press) CodeCell(size Points, code string) Drawing {
	return func(width Points, _ bool) Block {
		return p.OneLine(Style{Size: size, Bold: true, Ink: p.Inks.Ink}, width, code)
	}
}

// NoCell is an empty cell.
func NoCell(Points, bool) Block { return Block{} }

// cellGap is the space between columns.
const cellGap = 6

// leastHead is the size below which a heading is broken after all.
const leastHead = 5.5

// Table lays out rows in columns of a width in all.
type Table struct {
	press   *Press
	columns []Column
	widths  []Points
	width   Points
	rowGap  Points
}

// Table gives a table of columns, rowGap of air above and below each row.
func (p *Press) Table(width, rowGap Points, columns ...Column) *Table {
	t := &Table{press: p, columns: columns, width: width, rowGap: rowGap}
	left, open := width-cellGap*Points(len(columns)-1), 0
	for _, column := range columns {
		left -= column.Width
		if column.Width == 0 {
			open++
		}
	}
	for _, column := range columns {
		if column.Width == 0 {
			column.Width = max(20, left/Points(open))
		}
		t.widths = append(t.widths, column.Width)
	}
	return t
}

// Head is the row of headings. A long word makes its heading smaller rather
// than being broken.
func (t *Table) Head() Block {
	cells := make([]Drawing, len(t.columns))
	for i, column := range t.columns {
		style := Style{Size: 8, Bold: true, Ink: t.press.Inks.Quiet}
		for _, word := range strings.Fields(column.Head) {
			full := t.press.Set.Width(8, typeset.Bold(word))
			style.Size = min(style.Size, max(leastHead, 8*t.widths[i]/max(full, 1)*0.999))
		}
		cells[i] = t.press.Cell(style, column.Head)
	}
	return t.beside(cells).Under(1.5, t.width, 0.8, t.press.Inks.Ink)
}

// Row is a row of cells with a rule below.
func (t *Table) Row(cells ...Drawing) Block {
	return t.beside(cells).Under(t.rowGap, t.width, 0.4, t.press.Inks.Line)
}

// Shaded is a row on a light ground.
func (t *Table) Shaded(cells ...Drawing) Block {
	return t.beside(cells).wrapped(2*t.rowGap, func(inner Block, on *page.Page, x, y Points) {
		on.Add(page.Box{X: x, Y: y, Width: t.width, Height: inner.Height + 2*t.rowGap, Ink: t.press.Inks.Wash})
		inner.Draw(on, x, y+t.rowGap)
	})
}

func (t *Table) beside(cells []Drawing) Block {
	var placed []Placed
	x := Points(0)
	for i, cell := range cells {
		placed = append(placed, Placed{x, cell(t.widths[i], t.columns[i].Right)})
		x += t.widths[i] + cellGap
	}
	return Beside(placed...)
}
