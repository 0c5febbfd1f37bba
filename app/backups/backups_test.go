package backups

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// desk is a trip file with a shelf whose clock stands still.
type desk struct {
	*Store
	now    time.Time
	trip   *trip.Trip
	failed []error
}

func newDesk(t *testing.T) *desk {
	t.Helper()
	d := &desk{now: time.Date(2027, 3, 1, 21, 30, 0, 0, time.Local), trip: triptest.Large(2, 2, 1)}
	file, err := tripfile.Create(filepath.Join(t.TempDir(), "tour.trip"), d.trip)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { file.Close() })
	d.Store = &Store{Store: file, Shelf: Shelf{Folder: filepath.Join(t.TempDir(), "shelf"), Now: func() time.Time { return d.now }},
		Failed: func(err error) { d.failed = append(d.failed, err) }}
	return d
}

func (d *desk) edit(t *testing.T, title string) {
	t.Helper()
	d.trip = d.trip.Clone()
	d.trip.Title = title
	if err := d.Save(context.Background(), d.trip); err != nil {
		t.Fatal(err)
	}
}

// titles reads what each copy holds, newest first.
func (d *desk) titles(t *testing.T) (days, titles []string) {
	t.Helper()
	copies, err := d.Shelf.Copies(d.Path())
	if err != nil {
		t.Fatal(err)
	}
	for _, kept := range copies {
		file, err := tripfile.OpenReadOnly(kept.Path)
		if err != nil {
			t.Fatal(err)
		}
		content, err := file.Read(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		file.Close()
		days, titles = append(days, kept.Day.Format("Jan 2")), append(titles, content.Title)
	}
	return days, titles
}

func TestTheStateBeforeTheFirstChangeOfADayIsKept(t *testing.T) {
	d := newDesk(t)
	first := d.trip.Title
	d.edit(t, "one")
	d.edit(t, "two")
	d.now = d.now.AddDate(0, 0, 1)
	d.edit(t, "three")
	d.now = d.now.AddDate(0, 0, 5)
	d.edit(t, "four")
	days, titles := d.titles(t)
	if len(days) != 3 || days[0] != "Mar 7" || days[1] != "Mar 2" || days[2] != "Mar 1" {
		t.Errorf("days %q", days)
	}
	if titles[0] != "three" || titles[1] != "two" || titles[2] != first {
		t.Errorf("titles %q", titles)
	}
}

// A second window on the same day finds the copy and leaves it.
func TestTheFirstCopyOfTheDayStays(t *testing.T) {
	d := newDesk(t)
	first := d.trip.Title
	d.edit(t, "one")
	d.keptFor = "" // as after opening again
	d.edit(t, "two")
	if _, titles := d.titles(t); len(titles) != 1 || titles[0] != first || len(d.failed) > 0 {
		t.Errorf("titles %q, %v", titles, d.failed)
	}
}

func TestTheOldestCopiesGo(t *testing.T) {
	d := newDesk(t)
	for range Kept + 3 {
		d.now = d.now.AddDate(0, 0, 1)
		d.edit(t, d.now.Format("2 January"))
	}
	days, titles := d.titles(t)
	if len(days) != Kept || titles[0] != d.now.AddDate(0, 0, -1).Format("2 January") {
		t.Errorf("%d copies, newest %q", len(days), titles[0])
	}
}

func TestTwoFilesOfOneNameHaveTheirOwnCopies(t *testing.T) {
	shelf := Shelf{Folder: t.TempDir(), Now: time.Now}
	one, err := shelf.of("a/tour.trip")
	if err != nil {
		t.Fatal(err)
	}
	if two, err := shelf.of("b/tour.trip"); err != nil || one == two {
		t.Errorf("both are kept in %q, %v", one, err)
	}
}

// Where no copy can be made, the edit is stored all the same and it is said
// once.
func TestSavingGoesOnWithoutABackup(t *testing.T) {
	d := newDesk(t)
	if err := os.WriteFile(d.Shelf.Folder, []byte("a file where the folder should be"), 0o600); err != nil {
		t.Fatal(err)
	}
	d.edit(t, "one")
	d.edit(t, "two")
	if len(d.failed) != 1 {
		t.Errorf("told %d times: %v", len(d.failed), errors.Join(d.failed...))
	}
}
