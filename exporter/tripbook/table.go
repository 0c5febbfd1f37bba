package tripbook

import (
	"fmt"

	"sumpter/domain/trip"
)

// table is one sheet: its columns, and how its rows come out of a trip and go
// back into one.
type table[R any] struct {
	name    string
	about   string // what the sheet is for, in a sentence or two
	list    string // the list of the trip's JSON it stands for
	columns []column[R]
	names   func(*scope) *names // the things this sheet names, if others refer to them
	fresh   func() R            // what blank cells mean
	from    func(*trip.Trip) []R
	into    func(*gathered[R])
	single  bool // one row written downwards: name, value, unit, meaning
}

// sheet is a table whatever its rows are.
type sheet interface {
	title() string
	purpose() string
	listName() string
	heads() []*head
	register() func(*scope) *names
	downwards() bool
	rows(*trip.Trip, *scope) [][]content
	read(*grid, *reading)
}

func (t *table[R]) title() string                 { return t.name }
func (t *table[R]) purpose() string               { return t.about }
func (t *table[R]) listName() string              { return t.list }
func (t *table[R]) register() func(*scope) *names { return t.names }
func (t *table[R]) downwards() bool               { return t.single }

func (t *table[R]) heads() []*head {
	heads := make([]*head, len(t.columns))
	for i := range t.columns {
		heads[i] = &t.columns[i].head
	}
	return heads
}

// rows gives the cells to write.
func (t *table[R]) rows(made *trip.Trip, s *scope) [][]content {
	list := t.from(made)
	written := make([][]content, 0, len(list))
	for i := range list {
		cells := make([]content, len(t.columns))
		for j := range t.columns {
			cells[j] = t.columns[j].get(&list[i], s, t.columns[j].unit(s.system))
		}
		written = append(written, cells)
	}
	return written
}

// read takes the rows of a grid into the trip.
func (t *table[R]) read(g *grid, r *reading) {
	all := gathered[R]{grid: g, reading: r, trip: r.trip}
	for place := range g.rows {
		row := t.fresh()
		for j := range t.columns {
			c := &t.columns[j]
			text := g.rows[place].cells[j]
			switch {
			case g.columns[j].place < 0 || g.columns[j].spoilt:
			case isBlank(text) && c.needed:
				r.fault(g, place, j, "is empty", c.allowed(r.scope))
			case isBlank(text):
			case isSpreadsheetError(text):
				r.fault(g, place, j, "is an error of the spreadsheet", c.allowed(r.scope))
			default:
				if wrong := c.set(&row, text, r.scope, g.columns[j].unit); wrong != "" {
					r.fault(g, place, j, wrong, c.allowed(r.scope))
				}
			}
		}
		all.rows = append(all.rows, row)
	}
	t.into(&all)
}

// gathered is the rows of one sheet on their way into the trip.
type gathered[R any] struct {
	rows    []R
	grid    *grid
	reading *reading
	trip    *trip.Trip
}

// fault reports what only shows when rows are seen together.
func (g *gathered[R]) fault(row int, title, wrong, allowed string) {
	g.reading.fault(g.grid, row, g.grid.column(title), wrong, allowed)
}

// comes notes the row a part of the trip came from: "foods[2].packages[0]".
func (g *gathered[R]) comes(row int, path string, indexes ...any) {
	g.reading.origins[fmt.Sprintf(path, indexes...)] = origin{g.grid, row}
}

// plainList is the from and into of a sheet whose rows are a list of the trip.
func plainList[R any](name string, list func(*trip.Trip) *[]R) (func(*trip.Trip) []R, func(*gathered[R])) {
	from := func(t *trip.Trip) []R { return *list(t) }
	into := func(g *gathered[R]) {
		*list(g.trip) = g.rows
		for i := range g.rows {
			g.comes(i, name+"[%d]", i)
		}
	}
	return from, into
}
