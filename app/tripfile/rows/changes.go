package rows

import "fmt"

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
		change := Change{Table: table}
		old := make(map[Key]Row, len(from[i]))
		for _, row := range from[i] {
			old[table.KeyOf(row)] = row
		}
		if table.placed {
			keepPlaces(table, old, to[i])
		}
		seen := make(map[Key]bool, len(to[i]))
		for _, row := range to[i] {
			key := table.KeyOf(row)
			if seen[key] {
				return nil, fmt.Errorf("%s %v is there twice", table.Name, row[:table.Keys])
			}
			seen[key] = true
			if before, ok := old[key]; !ok {
				change.Insert = append(change.Insert, row)
			} else if !equal(before, row) {
				change.Update = append(change.Update, row)
			}
		}
		for _, row := range from[i] {
			if key := table.KeyOf(row); !seen[key] {
				change.Delete = append(change.Delete, key)
			}
		}
		if len(change.Delete)+len(change.Update)+len(change.Insert) > 0 {
			changes = append(changes, change)
		}
	}
	return changes, nil
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

func equal(a, b Row) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
