// Package tables lays a plan out as plain tables, a row for each thing a
// person looks up, and writes them as CSV. The workbook and every other paper
// show the same tables, so that no two papers can differ.
//
// Start with From; every Table can be written with WriteCSV.
package tables

import (
	"sumpter/domain/units"
)

// Unknown is what a cell says where nobody knows the value. It is never left
// blank and never zero.
const Unknown = "unknown"

// Kind is what a value is made of.
type Kind uint8

// Kinds of value. Open is left for a person to fill in: a tick, a weighed
// mass; it alone is blank.
const (
	Words Kind = iota
	Figure
	Day // a calendar date
	Open
)

// Value is one cell.
type Value struct {
	Kind   Kind
	Text   string     // Words
	Number float64    // Figure
	Date   units.Date // Day
}

// Role is what a column is for, where that changes how it looks.
type Role uint8

// Roles of a column.
const (
	Plain    Role = iota
	Tick          // an x goes here when it is done
	Input         // the leader changes it
	Code          // a bag's label
	Danger        // allergens
	Severity      // must fix, look at, note
	Amount        // money
	Percent       // a share, 1 is the whole
)

// Column is the heading of a column and how its values are shown.
type Column struct {
	Key      string // stable within the table
	Heading  string // unique within the table, with its unit
	Role     Role
	Decimals int     // of figures
	Width    float64 // in characters
	Wrap     bool    // long words run over several lines
}

// Table is a list of like things.
type Table struct {
	Name    string // stable, fit for a file or sheet: "needs_by_day"
	Title   string
	About   string // one sentence: what it is for, how to read it
	Empty   string // what to say when there are no rows
	Columns []Column
	Rows    [][]Value
	Groups  []int // rows before which a new group (a day, a round) begins
}

// Column finds the place of a column by its key, or -1.
func (t *Table) Column(key string) int {
	for i := range t.Columns {
		if t.Columns[i].Key == key {
			return i
		}
	}
	return -1
}

func words(text string) Value { return Value{Kind: Words, Text: text} }

func figure(number float64) Value { return Value{Kind: Figure, Number: number} }

func count(number int) Value { return figure(float64(number)) }

func open() Value { return Value{Kind: Open} }

// dated gives a date, or says that nobody set it.
func dated(date units.Date) Value {
	if !date.IsSet() {
		return words("not set")
	}
	return Value{Kind: Day, Date: date}
}

func yesNo(yes bool) Value {
	if yes {
		return words("yes")
	}
	return words("no")
}

// field is a column and how its value follows from a row.
type field[R any] struct {
	Column
	value func(row R) Value
}

// fill makes the rows of a table, so that headings and values cannot part.
func fill[R any](head Table, fields []field[R], rows []R) Table {
	for _, f := range fields {
		head.Columns = append(head.Columns, f.Column)
	}
	for _, row := range rows {
		values := make([]Value, len(fields))
		for i, f := range fields {
			values[i] = f.value(row)
		}
		head.Rows = append(head.Rows, values)
	}
	return head
}

// groupBy notes the rows where the key changes.
func groupBy[R any, K comparable](table Table, rows []R, key func(R) K) Table {
	for i := 1; i < len(rows); i++ {
		if key(rows[i]) != key(rows[i-1]) {
			table.Groups = append(table.Groups, i)
		}
	}
	return table
}
