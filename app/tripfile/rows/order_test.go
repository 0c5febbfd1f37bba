package rows

import (
	"cmp"
	"slices"
)

// inOrder sorts rows by their table's Order, as ORDER BY does.
func inOrder(table Table, byKey map[Key]Row) []Row {
	var columns []int
	for _, name := range table.Order {
		columns = append(columns, slices.Index(table.Columns, name))
	}
	var list []Row
	for _, row := range byKey {
		list = append(list, row)
	}
	slices.SortFunc(list, func(a, b Row) int {
		for _, column := range columns {
			if c := compareValues(a[column], b[column]); c != 0 {
				return c
			}
		}
		return 0
	})
	return list
}

func compareValues(a, b any) int {
	if n, ok := a.(int64); ok {
		return cmp.Compare(n, b.(int64))
	}
	return cmp.Compare(a.(string), b.(string))
}
