package benchtest

import (
	"path/filepath"
	"slices"
	"testing"

	"sumpter/app/demo"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
)

// Demo is the demo trip.
func Demo() *trip.Trip {
	t := demo.Trip()
	return &t
}

// DemoDays is the beginning of the demo trip, planned sooner than all of it.
// Two of its crew have allergies. What happens at the end of its last day or
// later is left out; everybody is there from the first day to the last.
func DemoDays(days int) *trip.Trip {
	t := Demo()
	t.Days = t.Days[:days]
	t.Menu = slices.DeleteFunc(t.Menu, func(c trip.Cell) bool { return c.Day > days })
	t.Points = slices.DeleteFunc(t.Points, func(p trip.ResupplyPoint) bool { return p.AfterDay >= days })
	for i := range t.Crew {
		t.Crew[i].FirstDay, t.Crew[i].LastDay = 0, 0
	}
	return t
}

// Pantry is the demo's foods, recipes and crew on a day without a menu: its
// plan is made in no time.
func Pantry() *trip.Trip {
	t := DemoDays(1)
	t.Menu = nil
	return t
}

// Reopened is a trip as its file gives it back.
func Reopened(t testing.TB, kept *trip.Trip) *trip.Trip {
	t.Helper()
	path := filepath.Join(t.TempDir(), "kept.trip")
	file, err := tripfile.Create(path, kept)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	if file, err = tripfile.Open(path); err != nil {
		t.Fatal(err)
	}
	read, err := file.Read(t.Context())
	if closing := file.Close(); err != nil || closing != nil {
		t.Fatal(err, closing)
	}
	return read
}
