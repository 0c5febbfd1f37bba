package tripfile

import (
	"context"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"sumpter/domain/prose"
)

// migrate brings an older file to the present version in one transaction,
// after a copy of it as it was is safe on the disk beside it. It gives the
// path of the copy.
func migrate(ctx context.Context, path string, conn *sql.Conn, f format, from int) (backup string, err error) {
	backup, err = keepCopy(ctx, path, conn, from)
	if err != nil {
		return "", err
	}
	err = inTransaction(ctx, path, conn, func() error {
		if err := f.advance(ctx, conn, from); err != nil {
			return &Error{Path: path, Kind: ErrDamaged, Detail: prose.Say("it could not be brought to the present version: %s", err), Cause: err}
		}
		return verify(ctx, path, conn, f, f.version())
	})
	if err != nil {
		return "", err
	}
	return backup, nil
}

// keepCopy writes the file as it is beside itself: "tour.trip" of version 1
// to "tour (version 1).trip", or with a number if there is such a file.
func keepCopy(ctx context.Context, path string, conn *sql.Conn, version int) (string, error) {
	ending := filepath.Ext(path)
	stem := strings.TrimSuffix(path, ending)
	for n := 1; ; n++ {
		name := fmt.Sprintf("%s (version %d)%s", stem, version, ending)
		if n > 1 {
			name = fmt.Sprintf("%s (version %d, %d)%s", stem, version, n, ending)
		}
		if _, err := os.Lstat(name); err == nil {
			continue
		}
		return name, copyTo(ctx, name, conn)
	}
}

// copyTo writes the whole database to a new file. It goes through SQLite: to
// read the open file by itself would give up the locks on it.
func copyTo(ctx context.Context, path string, conn *sql.Conn) error {
	temporary, err := temporaryBeside(path)
	if err != nil {
		return explain(path, err)
	}
	defer os.Remove(temporary)
	if _, err := conn.ExecContext(ctx, "VACUUM INTO ?", temporary); err != nil {
		return explain(path, err)
	}
	return explain(path, publish(temporary, path))
}

// inTransaction runs work whole or not at all.
func inTransaction(ctx context.Context, path string, conn *sql.Conn, work func() error) error {
	if _, err := conn.ExecContext(ctx, "BEGIN IMMEDIATE"); err != nil {
		return explain(path, err)
	}
	err := work()
	if err == nil {
		_, err = conn.ExecContext(context.WithoutCancel(ctx), "COMMIT")
	}
	if err != nil {
		rollBack(ctx, conn)
		return explain(path, err)
	}
	return nil
}

// rollBack ends a transaction of which nothing is to stay. After some errors
// SQLite has already rolled back; a second time is harmless.
func rollBack(ctx context.Context, conn *sql.Conn) {
	_, _ = conn.ExecContext(context.WithoutCancel(ctx), "ROLLBACK")
}
