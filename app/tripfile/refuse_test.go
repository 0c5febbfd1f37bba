package tripfile

import (
	"context"
	"encoding/binary"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// smallFile is the bytes of a trip file, made once: the disk is slow.
var smallFile = sync.OnceValues(func() ([]byte, error) {
	folder, err := os.MkdirTemp("", "tripfile")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	file, err := Create(filepath.Join(folder, "tour.trip"), triptest.Large(3, 3, 1))
	if err != nil {
		return nil, err
	}
	if err := file.Close(); err != nil {
		return nil, err
	}
	return os.ReadFile(file.Path())
})

// closedFile gives the path of a small trip file of its own, and its bytes.
func closedFile(t testing.TB) (path string, bytes []byte) {
	t.Helper()
	bytes, err := smallFile()
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "tour.trip")
	if err := os.WriteFile(path, bytes, 0o600); err != nil {
		t.Fatal(err)
	}
	return path, bytes
}

// wantError checks the kind of an error and that its text tells the file and
// a remedy.
func wantError(t *testing.T, err, kind error) {
	t.Helper()
	if !errors.Is(err, kind) {
		t.Fatalf("have %v\nwant %v", err, kind)
	}
	var own *Error
	if !errors.As(err, &own) || own.Path == "" || !strings.HasPrefix(err.Error(), own.Path) || remedies[kind].IsZero() ||
		!strings.HasSuffix(err.Error(), remedies[kind].String()) {
		t.Errorf("the text does not tell file and remedy: %v", err)
	}
}

func TestEveryErrorHasARemedy(t *testing.T) {
	for _, kind := range []error{
		ErrMissing, ErrExists, ErrNotTrip, ErrDamaged, ErrNewer, ErrReadOnly, ErrUnreadable, ErrInUse, ErrFolder,
		ErrFull, ErrUnsound, ErrReplaced, ErrClosed, ErrDisk,
	} {
		if remedies[kind].IsZero() {
			t.Errorf("no remedy for %v", kind)
		}
	}
	if len(remedies) != 14 {
		t.Errorf("%d remedies", len(remedies))
	}
}

func TestFilesThatAreRefused(t *testing.T) {
	_, good := closedFile(t)
	patched := func(at int, bytes ...byte) []byte {
		spoilt := append([]byte{}, good...)
		copy(spoilt[at:], bytes)
		return spoilt
	}
	newer := binary.BigEndian.AppendUint32(nil, uint32(present().version()+1))
	for _, c := range []struct {
		name    string
		content []byte
		want    error
	}{
		{"empty", nil, ErrNotTrip},
		{"a word", []byte("trip"), ErrNotTrip},
		{"a zip", append([]byte("PK\x03\x04"), make([]byte, 200)...), ErrNotTrip},
		{"a database of another program", patched(68, 0, 0, 0, 0), ErrNotTrip},
		{"header only, of another program", append([]byte("SQLite format 3\x00"), make([]byte, 84)...), ErrNotTrip},
		{"newer", patched(60, newer...), ErrNewer},
		{"newest of all", patched(60, 0xff, 0xff, 0xff, 0xff), ErrNewer},
		{"no version", patched(60, 0, 0, 0, 0), ErrDamaged},
		{"write-ahead log", patched(18, 2, 2), ErrDamaged},
		{"UTF-16", patched(56, 0, 0, 0, 2), ErrDamaged},
		{"cut off", good[:len(good)/2], ErrDamaged},
		{"cut to its header", good[:100], ErrDamaged},
		{"schema page overwritten", patched(100, make([]byte, 3000)...), ErrDamaged},
		{"a page overwritten", patched(len(good)-4096, make([]byte, 4096)...), ErrDamaged},
		{"page size of nonsense", patched(16, 0, 3), ErrDamaged},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "spoilt.trip")
			if err := os.WriteFile(path, c.content, 0o600); err != nil {
				t.Fatal(err)
			}
			for name, open := range map[string]func(string) (*File, error){"Open": Open, "OpenReadOnly": OpenReadOnly} {
				file, err := open(path)
				if err == nil {
					file.Close()
					t.Fatalf("%s took it", name)
				}
				wantError(t, err, c.want)
			}
			after, err := os.ReadFile(path)
			if err != nil || string(after) != string(c.content) {
				t.Errorf("the refused file was changed: %v", err)
			}
			wantFolder(t, filepath.Dir(path), "spoilt.trip")
		})
	}
}

func TestMissingFileAndFolder(t *testing.T) {
	folder := t.TempDir()
	_, err := Open(filepath.Join(folder, "none.trip"))
	wantError(t, err, ErrMissing)
	_, err = OpenReadOnly(filepath.Join(folder, "none.trip"))
	wantError(t, err, ErrMissing)
	_, err = Open(folder)
	wantError(t, err, ErrNotTrip)
	_, err = Create(filepath.Join(folder, "none", "new.trip"), triptest.Large(2, 2, 1))
	wantError(t, err, ErrFolder)
	wantFolder(t, folder)
}

// A file that is there already is somebody's trip, or something else.
func TestNothingIsEverReplaced(t *testing.T) {
	path, good := closedFile(t)
	other := filepath.Join(filepath.Dir(path), "letter.txt")
	if err := os.WriteFile(other, []byte("Dear all"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, taken := range []string{path, other} {
		_, err := Create(taken, triptest.Large(2, 2, 2))
		wantError(t, err, ErrExists)
	}
	file, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	wantError(t, file.SaveCopy(path), ErrExists)
	wantError(t, file.SaveCopy(other), ErrExists)
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	if after, err := os.ReadFile(path); err != nil || string(after) != string(good) {
		t.Errorf("the trip file was changed: %v", err)
	}
	if after, err := os.ReadFile(other); err != nil || string(after) != "Dear all" {
		t.Errorf("the letter was changed: %q, %v", after, err)
	}
	wantFolder(t, filepath.Dir(path), "tour.trip", "letter.txt")
}

func TestTripsThatCannotBeStored(t *testing.T) {
	for name, spoil := range map[string]func(*trip.Trip){
		"not a number":         func(t *trip.Trip) { t.Crew[0].Appetite = math.NaN() },
		"endless":              func(t *trip.Trip) { t.Foods[0].Density = optional.Of(math.Inf(-1)) },
		"two of one ID":        func(t *trip.Trip) { t.Crew[1].ID = t.Crew[0].ID },
		"slot twice":           func(t *trip.Trip) { t.Menu = append(t.Menu, t.Menu[0]) },
		"group of nobody":      func(t *trip.Trip) { t.Crew[0].Group = 4711 },
		"recipe without food":  func(t *trip.Trip) { t.Foods = t.Foods[1:] },
		"menu after the end":   func(t *trip.Trip) { t.Days = t.Days[:1] },
		"text beyond measure":  func(t *trip.Trip) { t.Notes = strings.Repeat("long ", mostBytes) },
		"date beyond calendar": func(t *trip.Trip) { t.Settings.PackingNight = 1 << 30 },
	} {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			spoilt := triptest.Large(4, 3, 1)
			spoil(spoilt)
			_, err := Create(filepath.Join(folder, "new.trip"), spoilt)
			wantError(t, err, ErrUnsound)
			wantFolder(t, folder)

			content := triptest.Large(4, 3, 1)
			file := made(t, filepath.Join(folder, "tour.trip"), content)
			wantError(t, file.Save(context.Background(), spoilt), ErrUnsound)
			wantContent(t, file, content)
			content.Title = "Still usable"
			if err := file.Save(context.Background(), content); err != nil {
				t.Fatal(err)
			}
			wantContent(t, file, content)
		})
	}
}

func TestReadOnlyAndClosedFilesAreNotSaved(t *testing.T) {
	path, good := closedFile(t)
	file, err := OpenReadOnly(path)
	if err != nil {
		t.Fatal(err)
	}
	wantError(t, file.Save(context.Background(), triptest.Large(2, 2, 2)), ErrReadOnly)
	wantContent(t, file, triptest.Large(3, 3, 1))
	if !file.ReadOnly() || file.Path() != path || file.Backup() != "" {
		t.Errorf("have %v, %q, %q", file.ReadOnly(), file.Path(), file.Backup())
	}
	if err := errors.Join(file.Close(), file.Close()); err != nil {
		t.Errorf("closing twice: %v", err)
	}
	wantError(t, file.Save(context.Background(), triptest.Large(2, 2, 2)), ErrClosed)
	wantError(t, file.SaveCopy(path+"2"), ErrClosed)
	_, err = file.Read(context.Background())
	wantError(t, err, ErrClosed)
	if after, err := os.ReadFile(path); err != nil || string(after) != string(good) {
		t.Errorf("the file was changed: %v", err)
	}
}

func TestCancelledSaveChangesNothing(t *testing.T) {
	content := triptest.Large(4, 3, 1)
	file := made(t, filepath.Join(t.TempDir(), "tour.trip"), content)
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if err := file.Save(gone, triptest.Large(5, 4, 2)); !errors.Is(err, context.Canceled) {
		t.Fatalf("have %v", err)
	}
	if _, err := file.Read(gone); !errors.Is(err, context.Canceled) {
		t.Fatalf("have %v", err)
	}
	wantContent(t, file, content)
	if err := file.Save(context.Background(), triptest.Large(5, 4, 2)); err != nil {
		t.Fatal(err)
	}
	wantContent(t, file, triptest.Large(5, 4, 2))
}
