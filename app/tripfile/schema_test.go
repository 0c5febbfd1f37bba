package tripfile

import (
	"context"
	"slices"
	"testing"

	"sumpter/app/tripfile/rows"
)

func wantColumns(t *testing.T, file *File) {
	t.Helper()
	objects, err := schemaOf(context.Background(), file.conn)
	if err != nil {
		t.Fatal(err)
	}
	var tables []string
	for _, o := range objects {
		if o.kind != "table" {
			t.Errorf("the schema holds a %s %s", o.kind, o.name)
		}
		tables = append(tables, o.name)
	}
	for _, table := range rows.Tables() {
		if !slices.Contains(tables, table.Name) {
			t.Errorf("no table %s", table.Name)
			continue
		}
		var columns, keys []string
		found, err := file.conn.QueryContext(context.Background(), "SELECT name, pk FROM pragma_table_info(?) ORDER BY cid", table.Name)
		if err != nil {
			t.Fatal(err)
		}
		for found.Next() {
			var name string
			var key int
			if err := found.Scan(&name, &key); err != nil {
				t.Fatal(err)
			}
			columns = append(columns, name)
			if key > 0 {
				keys = append(keys, name)
			}
		}
		found.Close()
		slices.Sort(columns)
		ours := slices.Clone(table.Columns)
		slices.Sort(ours)
		if !slices.Equal(columns, ours) {
			t.Errorf("%s has the columns\n%v, the rows have\n%v", table.Name, columns, ours)
		}
		if !slices.Equal(keys, table.Columns[:table.Keys]) {
			t.Errorf("%s has the key %v, the rows have %v", table.Name, keys, table.Columns[:table.Keys])
		}
	}
	if len(tables) != len(rows.Tables()) {
		t.Errorf("%d tables for %d of the rows", len(tables), len(rows.Tables()))
	}
}
