package tripfile

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sumpter/domain/trip/triptest"
)

// older is a made-up history of the present format: its version 1 did not
// know of boxes that did not come, its version 2 does.
func older(t *testing.T) format {
	t.Helper()
	whole := present().steps[0]
	at := strings.Index(whole, "CREATE TABLE missing_box")
	if at < 0 {
		t.Fatal("there is no table of missing boxes to begin with")
	}
	return format{steps: append([]string{whole[:at], whole[at:]}, present().steps[1:]...)}
}

// ofVersionOne writes a trip file as the made-up version 1 would have.
func ofVersionOne(t *testing.T, path string) {
	t.Helper()
	two := older(t)
	content := triptest.Large(4, 3, 1)
	file, err := two.create(path, content)
	if err != nil {
		t.Fatal(err)
	}
	ctx := context.Background()
	err = inTransaction(ctx, path, file.conn, func() error {
		_, err := file.conn.ExecContext(ctx, "DROP TABLE missing_box; PRAGMA user_version = 1")
		return err
	})
	if err := errors.Join(err, file.Close()); err != nil {
		t.Fatal(err)
	}
}

func TestOlderFileIsBroughtForward(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "tour.trip")
	ofVersionOne(t, path)
	before, err := readHeader(path)
	if err != nil || before.version != 1 {
		t.Fatalf("version %d, %v", before.version, err)
	}
	two := older(t)
	_, err = two.open(path, reading)
	wantError(t, err, ErrReadOnly)

	file, err := two.open(path, writing)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	wantContent(t, file, triptest.Large(4, 3, 1))
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
	if after, err := readHeader(path); err != nil || after.version != 2 {
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
	ofVersionOne(t, path)
	taken := filepath.Join(folder, "tour (version 1).trip")
	if err := os.WriteFile(taken, []byte("somebody's"), 0o600); err != nil {
		t.Fatal(err)
	}
	file, err := older(t).open(path, writing)
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
	ofVersionOne(t, path)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	broken := older(t)
	broken.steps[1] += "\nUPDATE member SET name = 'Nobody'; CREATE TABLE pin (id INTEGER);"
	_, err = broken.open(path, writing)
	wantError(t, err, ErrDamaged)
	after, err := os.ReadFile(path)
	if err != nil || string(after) != string(before) {
		t.Errorf("the file was changed: %v", err)
	}
	file, err := older(t).open(path, writing)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	wantContent(t, file, triptest.Large(4, 3, 1))
}

// The tables of the format must be those that rows writes.
func TestSchemaHoldsTheRows(t *testing.T) {
	file := made(t, filepath.Join(t.TempDir(), "tour.trip"), triptest.Large(2, 2, 1))
	wantColumns(t, file)
}
