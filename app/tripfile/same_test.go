package tripfile

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"sumpter/domain/trip/triptest"
)

// Whatever happens to the file behind the program's back, the other's bytes
// stay as they are and the trip can be saved elsewhere.
func TestFileThatChangesBehindTheProgram(t *testing.T) {
	theirs := []byte("what the other program wrote")
	cases := map[string]struct {
		change func(path string) error
		left   []byte // nil: no file
	}{
		"deleted": {func(path string) error { return os.Remove(path) }, nil},
		"moved":   {func(path string) error { return os.Rename(path, path+".old") }, nil},
		"replaced": {func(path string) error {
			if err := os.WriteFile(path+".new", theirs, 0o600); err != nil {
				return err
			}
			return os.Rename(path+".new", path)
		}, theirs},
		"written into": {func(path string) error {
			if err := os.WriteFile(path, theirs, 0o600); err != nil {
				return err
			}
			return os.Chtimes(path, time.Time{}, time.Now().Add(time.Second))
		}, theirs},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			path := filepath.Join(folder, "tour.trip")
			content := triptest.Large(3, 2, 1)
			file := made(t, path, content)
			content.Title = "before"
			if err := file.Save(context.Background(), content); err != nil {
				t.Fatal(err)
			}
			journal, err := os.ReadFile(path + "-journal")
			if err != nil {
				t.Fatal(err)
			}
			if err := c.change(path); err != nil {
				t.Fatal(err)
			}
			content.Title = "after"
			for range 2 {
				wantError(t, file.Save(context.Background(), content), ErrReplaced)
			}
			left, err := os.ReadFile(path)
			if c.left == nil != (err != nil) || string(left) != string(c.left) {
				t.Errorf("left %q, %v", left, err)
			}
			if now, err := os.ReadFile(path + "-journal"); err != nil || string(now) != string(journal) {
				t.Errorf("a journal was begun beside a file that is not ours, %v", err)
			}
			elsewhere, err := Create(filepath.Join(folder, "elsewhere.trip"), content)
			if err != nil {
				t.Fatal(err)
			}
			defer elsewhere.Close()
			wantContent(t, elsewhere, content)
		})
	}
}

// A disk that fills up while saving costs that edit and nothing before it,
// and the next try succeeds once there is room.
func TestDiskFullWhileSaving(t *testing.T) {
	path := filepath.Join(t.TempDir(), "tour.trip")
	small := triptest.Large(2, 2, 1)
	file := made(t, path, small)
	ctx := context.Background()
	// SQLite gives the very error of a full disk when a file has reached the
	// pages allowed to it (sqlite.org/pragma.html#pragma_max_page_count).
	limit := func(pages int) {
		t.Helper()
		var allowed int
		if err := file.conn.QueryRowContext(ctx, fmt.Sprintf("PRAGMA max_page_count = %d", pages)).Scan(&allowed); err != nil {
			t.Fatal(err)
		}
	}
	limit(1) // no more than it has
	large := triptest.Large(150, 60, 2)
	for range 2 {
		wantError(t, file.Save(ctx, large), ErrFull)
		wantContent(t, file, small)
	}
	limit(100_000)
	if err := file.Save(ctx, large); err != nil {
		t.Fatal(err)
	}
	wantContent(t, file, large)
}
