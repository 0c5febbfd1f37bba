package window

import (
	"fmt"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// TestWorkBesideTheScreen edits, plans, saves, keeps copies and exports on
// goroutines of their own, as the program does, while the leader goes from
// screen to screen: the race detector tells of anything that is shared.
func TestWorkBesideTheScreen(t *testing.T) {
	queue := make(chan func(), 10_000)
	w := New(test.NewTempApp(t), document.Threads{Post: func(f func()) { queue <- f }}, shelfFor(t))
	until := func(what string, done func() bool) {
		t.Helper()
		for !done() {
			select {
			case f := <-queue:
				f()
			case <-t.Context().Done():
				t.Fatal(what)
			}
		}
	}
	small := demo.Trip()
	small.Days, small.Points, small.Menu = small.Days[:2], nil, nil
	for i := range small.Crew {
		small.Crew[i].FirstDay, small.Crew[i].LastDay = 0, 0
	}
	path := filepath.Join(t.TempDir(), "small.trip")
	file, err := tripfile.Create(path, &small)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	w.OpenPath(path)
	until("the trip did not open", func() bool { return w.document != nil })
	until("no plan came", func() bool { return w.document.Plan() != nil && !w.document.Planning() })

	edit := func(kilograms int) {
		t.Helper()
		err := w.document.Edit(fmt.Sprintf("kit %d", kilograms), func(on *trip.Trip) error {
			for i := range on.Crew {
				on.Crew[i].OwnKit = units.Mass(kilograms) * units.Kilogram
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for i := range w.screens {
		edit(5 + i%3) // the plan before it is thrown away half-way
		w.showScreen(i)
		for tabs, at := tabsIn(w.middle), 1; tabs != nil; at++ {
			if tabs.SelectIndex(at); tabs.SelectedIndex() != at {
				break
			}
		}
		w.toggleFindings()
		edit(6 + i%4)
		if i%3 == 0 {
			if err := w.document.Undo(); err != nil {
				t.Fatal(err)
			}
			w.document.CancelPlanning()
		}
		for range len(queue) { // what has come meanwhile, in the middle of it all
			(<-queue)()
		}
	}
	edit(9)
	until("the last plan did not come", func() bool { return !w.document.Planning() })
	if kit := w.document.Plan().Trip.Crew[0].OwnKit; kit != 9*units.Kilogram {
		t.Errorf("the plan shown is of %v of kit", kit)
	}
	copied := false
	w.document.SaveCopy(filepath.Join(t.TempDir(), "copy.trip"), func(err error) {
		if copied = true; err != nil {
			t.Error(err)
		}
	})
	edit(5)
	until("no copy was made, or no plan", func() bool { return copied && !w.document.Planning() })
	folder := t.TempDir()
	printPlace(t, w).SaveTo(folder)
	edit(4)
	until("nothing was exported", func() bool {
		found, _ := filepath.Glob(filepath.Join(folder, "* papers", "workbook.xlsx"))
		return len(found) == 1 && !w.document.Planning()
	})
	closed := false
	w.leave(func() { closed = true }, func() { t.Error("the trip could not be closed") })
	until("the trip was not closed", func() bool { return closed })
	file, err = tripfile.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	kept, err := file.Read(t.Context())
	if closing := file.Close(); err != nil || closing != nil {
		t.Fatal(err, closing)
	}
	if kept.Crew[0].OwnKit != 4*units.Kilogram {
		t.Errorf("on disk is %v of kit", kept.Crew[0].OwnKit)
	}
}

// Opening and closing trips leaves no goroutine behind.
func TestAClosedTripLeavesNothingRunning(t *testing.T) {
	queue := make(chan func(), 10_000)
	w := New(test.NewTempApp(t), document.Threads{Post: func(f func()) { queue <- f }}, shelfFor(t))
	example := demo.Trip()
	path := filepath.Join(t.TempDir(), "demo.trip")
	file, err := tripfile.Create(path, &example)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	// settled is how many goroutines there are once none ends any more.
	settled := func() int {
		least := runtime.NumGoroutine()
		for quiet := 0; quiet < 20; quiet++ {
			time.Sleep(10 * time.Millisecond)
			for range len(queue) {
				(<-queue)()
			}
			if now := runtime.NumGoroutine(); now < least {
				least, quiet = now, 0
			}
		}
		return least
	}
	first := 0
	for n := range 6 {
		w.OpenPath(path)
		for w.document == nil || w.document.Plan() == nil {
			(<-queue)()
		}
		w.showScreen(n)
		closed := false
		w.leave(func() { closed = true }, func() { t.Error("the trip could not be closed") })
		for !closed {
			(<-queue)()
		}
		w.showWelcome()
		if now := settled(); n == 0 {
			first = now
		} else if now > first {
			t.Fatalf("%d goroutines after %d trips, %d after one", now, n+1, first)
		}
	}
}
