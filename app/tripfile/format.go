package tripfile

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"io/fs"
	"sync"
)

// applicationID marks the file as ours: "SMPT" in the header field that
// SQLite leaves to applications (sqlite.org/fileformat.html, 1.3.17).
const applicationID = 0x534D5054

//go:embed schema/*.sql
var schemaFiles embed.FS

// format is the steps that lead from an empty database to the present tables:
// step n makes version n. A step never changes once it is released.
type format struct{ steps []string }

// present is the format this program writes.
var present = sync.OnceValue(func() format {
	names, err := fs.Glob(schemaFiles, "schema/*.sql")
	if err != nil {
		panic(err) // the pattern is constant
	}
	var f format
	for i, name := range names {
		if want := fmt.Sprintf("schema/%04d.sql", i+1); name != want {
			panic("schema step missing: " + want) // seen by the first test that opens a file
		}
		step, err := schemaFiles.ReadFile(name)
		if err != nil {
			panic(err) // it was listed
		}
		f.steps = append(f.steps, string(step))
	}
	return f
})

func (f format) version() int { return len(f.steps) }

// advance runs the steps after a version, within the caller's transaction.
func (f format) advance(ctx context.Context, conn *sql.Conn, from int) error {
	for i, step := range f.steps[from:] {
		if _, err := conn.ExecContext(ctx, step); err != nil {
			return fmt.Errorf("step to version %d: %w", from+i+1, err)
		}
	}
	_, err := conn.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d", f.version()))
	return err
}

// object is one entry of a database's schema.
type object struct{ kind, name, table, sql string }

// expected gives the schema that a file of a version must have, by building
// one in memory.
func (f format) expected(ctx context.Context, version int) ([]object, error) {
	db, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return nil, err
	}
	defer db.Close()
	conn, err := db.Conn(ctx)
	if err != nil {
		return nil, err
	}
	defer conn.Close()
	if err := (format{f.steps[:version]}).advance(ctx, conn, 0); err != nil {
		return nil, err
	}
	return schemaOf(ctx, conn)
}

func schemaOf(ctx context.Context, conn *sql.Conn) ([]object, error) {
	rows, err := conn.QueryContext(ctx, "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY name")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var objects []object
	for rows.Next() {
		var o object
		if err := rows.Scan(&o.kind, &o.name, &o.table, &o.sql); err != nil {
			return nil, err
		}
		objects = append(objects, o)
	}
	return objects, rows.Err()
}
