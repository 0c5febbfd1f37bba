package tripfile

import (
	"context"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"sumpter/domain/trip/triptest"
)

// ofVersion copies a trip file as a version of the format wrote it: the demo
// trip of that day, kept in testdata.
func ofVersion(t *testing.T, path string, version int) {
	t.Helper()
	kept, err := os.ReadFile(filepath.Join("testdata", fmt.Sprintf("version-%d.trip", version)))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, kept, 0o600); err != nil {
		t.Fatal(err)
	}
}

// wantAllOf compares every value that a version knew with the file as that
// version wrote it.
func wantAllOf(t *testing.T, file *File, version int) {
	t.Helper()
	ctx := context.Background()
	path := filepath.Join(t.TempDir(), "kept.trip")
	ofVersion(t, path, version)
	kept, err := format{steps: present().steps[:version]}.open(path, reading)
	if err != nil {
		t.Fatal(err)
	}
	defer kept.Close()
	tables, err := valuesOf(ctx, kept.conn, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
	if err != nil || len(tables) < 10 {
		t.Fatalf("%d tables, %v", len(tables), err)
	}
	total := 0
	for _, table := range tables {
		columns, err := valuesOf(ctx, kept.conn, "SELECT group_concat('\"' || name || '\"') FROM pragma_table_info('"+table+"')")
		if err != nil {
			t.Fatal(err)
		}
		query := "SELECT json_array(" + columns[0] + ") FROM \"" + table + "\" ORDER BY 1"
		want, err := valuesOf(ctx, kept.conn, query)
		if err != nil {
			t.Fatal(err)
		}
		have, err := valuesOf(ctx, file.conn, query)
		if err != nil || !slices.Equal(have, want) {
			t.Errorf("table %s: have %q, want %q, %v", table, have, want, err)
		}
		total += len(want)
	}
	if total < 500 {
		t.Errorf("only %d rows were compared", total)
	}
	if content, err := file.Read(ctx); err != nil || len(content.Crew) != 11 || content.Title != "Saltmarsh to the High Tarns" {
		t.Errorf("the trip cannot be read any more: %v", err)
	}
}

// A file of every version opens, with all that is in it. A version that was
// released has its file in testdata, and its step of the schema never changes.
func TestAFileOfEveryVersionOpens(t *testing.T) {
	for version := 1; version <= present().version(); version++ {
		path := filepath.Join(t.TempDir(), "tour.trip")
		ofVersion(t, path, version)
		file, err := present().open(path, writing)
		if err != nil {
			t.Errorf("version %d: %v", version, err)
			continue
		}
		wantAllOf(t, file, version)
		if err := file.Close(); err != nil {
			t.Error(err)
		}
	}
}

// valuesOf gives the first column of a query as text.
func valuesOf(ctx context.Context, conn *sql.Conn, query string) ([]string, error) {
	rows, err := conn.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var values []string
	for rows.Next() {
		var value string
		if err := rows.Scan(&value); err != nil {
			return nil, err
		}
		values = append(values, value)
	}
	return values, rows.Err()
}

func TestOlderFileIsBroughtForward(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "tour.trip")
	ofVersion(t, path, 1)
	before, err := readHeader(path)
	if err != nil || before.version != 1 {
		t.Fatalf("version %d, %v", before.version, err)
	}
	two := present()
	_, err = two.open(path, reading)
	wantError(t, err, ErrReadOnly)

	file, err := two.open(path, writing)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	wantAllOf(t, file, 1)
	if want := filepath.Join(folder, "tour (version 1).trip"); file.Backup() != want {
		t.Errorf("the backup is %q, want %q", file.Backup(), want)
	}
	if kept, err := readHeader(file.Backup()); err != nil || kept.version != 1 || kept.application != applicationID {
		t.Errorf("the backup has version %d, %v", kept.version, err)
	}
	one := format{steps: two.steps[:1]}
	if backup, err := one.open(file.Backup(), reading); err != nil {
		t.Errorf("the old program cannot open its file any more: %v", err)
	} else {
		backup.Close()
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	if after, err := readHeader(path); err != nil || int(after.version) != two.version() {
		t.Errorf("version %d, %v", after.version, err)
	}
	wantFolder(t, folder, "tour.trip", "tour (version 1).trip")

	again, err := two.open(path, writing)
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if again.Backup() != "" {
		t.Errorf("a second backup %q", again.Backup())
	}
}

func TestABackupReplacesNothing(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "tour.trip")
	ofVersion(t, path, 1)
	taken := filepath.Join(folder, "tour (version 1).trip")
	if err := os.WriteFile(taken, []byte("somebody's"), 0o600); err != nil {
		t.Fatal(err)
	}
	file, err := present().open(path, writing)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if want := filepath.Join(folder, "tour (version 1, 2).trip"); file.Backup() != want {
		t.Errorf("the backup is %q, want %q", file.Backup(), want)
	}
	if kept, err := os.ReadFile(taken); err != nil || string(kept) != "somebody's" {
		t.Errorf("have %q, %v", kept, err)
	}
}

// A step that fails half way leaves the old file whole, and its backup.
func TestFailedStepChangesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tour.trip")
	ofVersion(t, path, 1)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	broken := format{steps: slices.Clone(present().steps)}
	broken.steps[1] += "\nUPDATE member SET name = 'Nobody'; CREATE TABLE pin (id INTEGER);"
	_, err = broken.open(path, writing)
	wantError(t, err, ErrDamaged)
	after, err := os.ReadFile(path)
	if err != nil || string(after) != string(before) {
		t.Errorf("the file was changed: %v", err)
	}
	file, err := present().open(path, writing)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	wantAllOf(t, file, 1)
}

// The tables of the format must be those that rows writes.
func TestSchemaHoldsTheRows(t *testing.T) {
	file := made(t, filepath.Join(t.TempDir(), "tour.trip"), triptest.Large(2, 2, 1))
	wantColumns(t, file)
}
