package tripfile

import (
	"context"
	"database/sql"
	"errors"
	"slices"

	"sumpter/domain/prose"
)

// verify checks, within a transaction, that the database is what its version
// says, whole, and consistent. The schema comes first: a foreign one could
// make the other checks run foreign code.
func verify(ctx context.Context, path string, conn *sql.Conn, f format, version int) error {
	expected, err := f.expected(ctx, version)
	if err != nil {
		return explain(path, err)
	}
	found, err := schemaOf(ctx, conn)
	if err != nil {
		return damaged(path, err)
	}
	if !slices.Equal(found, expected) {
		return fail(path, ErrDamaged, prose.Say("its tables are not those of version %d: %s", version, difference(found, expected)))
	}
	var report string
	if err := conn.QueryRowContext(ctx, "PRAGMA quick_check(1)").Scan(&report); err != nil {
		return damaged(path, err)
	}
	if report != "ok" {
		return fail(path, ErrDamaged, prose.Verbatim(report))
	}
	return checkReferences(ctx, path, conn)
}

func checkReferences(ctx context.Context, path string, conn *sql.Conn) error {
	rows, err := conn.QueryContext(ctx, "PRAGMA foreign_key_check")
	if err != nil {
		return damaged(path, err)
	}
	defer rows.Close()
	if rows.Next() {
		var table, target string
		var row sql.NullInt64
		var key int
		if err := rows.Scan(&table, &row, &target, &key); err != nil {
			return damaged(path, err)
		}
		return fail(path, ErrDamaged, prose.Say("a row of %s refers to a %s that is not there", table, target))
	}
	return damaged(path, rows.Err())
}

// damaged is for errors of reading a file that passed for a trip file: short
// of a lock or the disk, they mean damage.
func damaged(path string, err error) error {
	explained := explain(path, err)
	var own *Error
	if errors.As(explained, &own) && (errors.Is(own.Kind, ErrUnsound) || errors.Is(own.Kind, ErrFolder)) {
		own.Kind = ErrDamaged
	}
	return explained
}

// difference names the first table that is not as expected.
func difference(found, expected []object) prose.Text {
	for _, o := range found {
		if !slices.Contains(expected, o) {
			return prose.Say("unexpected is %s %.40q", o.kind, o.name)
		}
	}
	for _, o := range expected {
		if !slices.Contains(found, o) {
			return prose.Say("missing is %s %q", o.kind, o.name)
		}
	}
	return prose.Text{}
}
