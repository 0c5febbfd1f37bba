// Package rows turns a trip into the rows of tables and back, and tells which
// rows changed between two states of a trip. It knows no database: what it
// writes are table names, column names and plain values.
//
// Start with Dump, Load and Changes.
package rows

import (
	"fmt"

	"sumpter/domain/trip"
)

// Row is the values of one row in the order of its table's columns: int64,
// float64, string or nil.
type Row []any

// Table is one noun of the trip as rows.
type Table struct {
	Name    string
	Columns []string
	Keys    int // so many first columns tell the rows apart
	Order   []string

	placed bool // the last column is the place in a list; gaps do not matter
	dump   func(t *trip.Trip, emit func(Row, error))
	load   func(t *trip.Trip, rows []Row) error
}

// Snapshot is the rows of a whole trip: one list a table, in the order of
// Tables.
type Snapshot [][]Row

// Tables lists the tables so that what a row refers to stands before it.
func Tables() []Table { return allTables() }

// Dump gives the rows of a trip. It fails on values that no table can hold,
// such as a number that is not one, and names the first.
func Dump(t *trip.Trip) (Snapshot, error) {
	tables := Tables()
	snapshot := make(Snapshot, len(tables))
	for i, table := range tables {
		var failed error
		table.dump(t, func(row Row, err error) {
			if err != nil && failed == nil {
				failed = fmt.Errorf("%s %d: %w", table.Name, len(snapshot[i])+1, err)
			}
			snapshot[i] = append(snapshot[i], row)
		})
		if failed != nil {
			return nil, failed
		}
	}
	return snapshot, nil
}

// Load makes a trip from rows that stand in their table's Order. Lists that
// are empty come back nil. It fails on rows that no Dump made.
func Load(snapshot Snapshot) (*trip.Trip, error) {
	t := &trip.Trip{}
	for i, table := range Tables() {
		if err := table.load(t, snapshot[i]); err != nil {
			return nil, fmt.Errorf("table %s: %w", table.Name, err)
		}
	}
	return t, nil
}

// most is how many columns at most tell a row apart.
const most = 6

// Key tells the rows of one table apart.
type Key [most]any

// KeyOf gives the key of a row.
func (t Table) KeyOf(row Row) Key {
	var key Key
	copy(key[:], row[:t.Keys])
	return key
}
