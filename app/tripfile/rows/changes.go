package rows

import (
	"fmt"
	"slices"
)

// Change is what has to be done to one table so that it holds a new state.
type Change struct {
	Table  Table
	Delete []Key
	Update []Row
	Insert []Row
}

// Changes compares two states row by row and gives the tables that differ.
// Rows of to that only moved down a gap keep the place they had, and to is
// changed accordingly: it then is what the tables hold after the change. It
// fails if two rows have the same key.
func Changes(from, to Snapshot) ([]Change, error) {
	var changes []Change
	for i, table := range Tables() {
		change, err := changeOf(table, from[i], to[i])
		if err != nil {
			return nil, err
		}
		if len(change.Delete)+len(change.Update)+len(change.Insert) > 0 {
			changes = append(changes, change)
		}
	}
	return changes, nil
}

func changeOf(table Table, from, to []Row) (Change, error) {
	change := Change{Table: table}
	if sameKeys(table, from, to) { // most edits: no need to look anything up
		for i, row := range to {
			if table.placed {
				row[len(row)-1] = from[i][len(row)-1]
			}
			if !slices.Equal(from[i], row) {
				change.Update = append(change.Update, row)
			}
		}
		return change, nil
	}
	old := make(map[Key]Row, len(from))
	for _, row := range from {
		old[table.KeyOf(row)] = row
	}
	if table.placed {
		keepPlaces(table, old, to)
	}
	seen := make(map[Key]bool, len(to))
	for _, row := range to {
		key := table.KeyOf(row)
		if seen[key] {
			return change, fmt.Errorf("%s %v is there twice", table.Name, row[:table.Keys])
		}
		seen[key] = true
		if before, ok := old[key]; !ok {
			change.Insert = append(change.Insert, row)
		} else if !slices.Equal(before, row) {
			change.Update = append(change.Update, row)
		}
	}
	for _, row := range from {
		if key := table.KeyOf(row); !seen[key] {
			change.Delete = append(change.Delete, key)
		}
	}
	return change, nil
}

// sameKeys tells whether two states hold the same things in the same order.
func sameKeys(table Table, from, to []Row) bool {
	return slices.EqualFunc(from, to, func(a, b Row) bool {
		return slices.Equal(a[:table.Keys], b[:table.Keys])
	})
}

// keepPlaces numbers the rows of a list upwards and leaves each its old place
// where that still fits, so that taking one row out renumbers no other.
func keepPlaces(table Table, old map[Key]Row, list []Row) {
	place := len(table.Columns) - 1
	last := int64(0)
	for _, row := range list {
		was := int64(0)
		if before, known := old[table.KeyOf(row)]; known {
			was, _ = before[place].(int64)
		}
		if was <= last {
			was = last + 1
		}
		last = was
		row[place] = was
	}
}
