package tripfile

import (
	"context"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"sumpter/domain/trip/triptest"
)

// halfWritten gives a trip file as a power cut leaves it: some pages of an
// unfinished change are in the file, the old ones in the journal beside it.
func halfWritten(t *testing.T) string {
	t.Helper()
	path, _ := closedFile(t)
	db, err := sql.Open("sqlite", "file:"+path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for _, statement := range []string{
		"PRAGMA cache_size = 1", // pages go to the disk before the change is finished
		"BEGIN",
		"UPDATE food SET name = hex(zeroblob(400))", "UPDATE recipe SET name = hex(zeroblob(400))",
		"UPDATE ingredient SET role = hex(zeroblob(400))",
	} {
		if _, err := db.Exec(statement); err != nil {
			t.Fatal(err)
		}
	}
	cut := filepath.Join(t.TempDir(), "cut.trip")
	for _, ending := range []string{"", "-journal"} {
		bytes, err := os.ReadFile(path + ending)
		if err != nil {
			t.Fatal(err)
		}
		if ending != "" && (len(bytes) < 512 || bytes[0] == 0) {
			t.Fatal("the journal is not in use: nothing would be tested")
		}
		if err := os.WriteFile(cut+ending, bytes, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return cut
}

func TestPowerCutWhileSaving(t *testing.T) {
	path := halfWritten(t)
	_, err := OpenReadOnly(path)
	wantError(t, err, ErrReadOnly) // to mend it is to write
	file, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	content := triptest.Large(3, 3, 1)
	wantContent(t, file, content)
	content.Title = "Going on"
	if err := errors.Join(file.Save(context.Background(), content), file.Close()); err != nil {
		t.Fatal(err)
	}
	wantFolder(t, filepath.Dir(path), "cut.trip")
}

// A journal is only good for the file it belongs to: without it the half
// written file must not pass for whole.
func TestHalfWrittenWithoutItsJournal(t *testing.T) {
	path := halfWritten(t)
	if err := os.Remove(path + "-journal"); err != nil {
		t.Fatal(err)
	}
	file, err := Open(path)
	if err == nil {
		_, err = file.Read(context.Background())
		file.Close()
	}
	wantError(t, err, ErrDamaged)
}
