package tripfile

import (
	"context"
	"database/sql"
	"net/url"
	"path/filepath"
	"strings"

	"modernc.org/sqlite"
)

// access is what a connection may do.
type access string

const (
	reading access = "ro"
	writing access = "rw"
)

// dataSource names a file for the driver. A URL keeps names with blanks, #, ?
// and % whole. Pragmas stand in it since they hold for one connection only.
func dataSource(path string, may access) string {
	query := url.Values{
		"mode":       {string(may)},
		"_defensive": {"1"}, // SQL cannot rewrite the schema or the journal mode
		"_dqs":       {"0"}, // "text" is a name, never a string
		"_pragma": {
			"busy_timeout(500)", "foreign_keys(1)", "trusted_schema(0)", "cell_size_check(1)", "synchronous(FULL)",
		},
	}
	if may == writing {
		// The lock is kept until closing: nobody else writes between two edits.
		query["_pragma"] = append(query["_pragma"], "locking_mode(EXCLUSIVE)", "journal_mode(DELETE)")
	}
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // C:/trips
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: query.Encode()}).String()
}

// Limits on what a file can make SQLite do (sqlite.org/limits.html).
const (
	limitLength, mostBytes       = 0, 1 << 20 // of one text or row
	limitSQLLength, mostSQLBytes = 1, 1 << 16
	limitAttached, mostAttached  = 7, 1 // VACUUM INTO needs one
)

// connect opens the one connection a File works with.
func connect(ctx context.Context, path string, may access) (*sql.DB, *sql.Conn, error) {
	db, err := sql.Open("sqlite", dataSource(path, may))
	if err != nil {
		return nil, nil, explain(path, err)
	}
	db.SetMaxOpenConns(1)
	conn, err := db.Conn(ctx)
	if err != nil {
		db.Close()
		return nil, nil, explain(path, err)
	}
	for _, limit := range [][2]int{{limitLength, mostBytes}, {limitSQLLength, mostSQLBytes}, {limitAttached, mostAttached}} {
		if _, err := sqlite.Limit(conn, limit[0], limit[1]); err != nil {
			conn.Close()
			db.Close()
			return nil, nil, explain(path, err)
		}
	}
	return db, conn, nil
}
