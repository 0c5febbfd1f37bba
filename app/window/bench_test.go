package window

import (
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// largeTrip is of 60 people and 21 days.
func largeTrip() *trip.Trip { return triptest.Large(60, 21, 5) }

// openTrip puts a trip into a file and opens it in a window.
func openTrip(b *testing.B, t *trip.Trip) *Workbench {
	b.Helper()
	return openWith(b, t, document.Inline{})
}

func openWith(b testing.TB, t *trip.Trip, scheduler document.Scheduler) *Workbench {
	b.Helper()
	path := filepath.Join(b.TempDir(), "bench.trip")
	file, err := tripfile.Create(path, t)
	if err != nil {
		b.Fatal(err)
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	w := New(test.NewApp(), scheduler, shelfFor(b))
	w.OpenPath(path)
	if w.document == nil {
		b.Fatal(w.message.Content)
	}
	return w
}

// BenchmarkStart is from an empty program to the first frame with the figures
// of the demo trip: its file is checked and read, planned and drawn.
func BenchmarkStart(b *testing.B) {
	path := filepath.Join(b.TempDir(), "bench.trip")
	example := demo.Trip()
	file, err := tripfile.Create(path, &example)
	if err != nil {
		b.Fatal(err)
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		w := New(test.NewApp(), document.Inline{}, shelfFor(b))
		w.OpenPath(path)
		w.window.Resize(fyne.NewSize(openWidth, openHeight))
		w.window.Canvas().Capture()
		if w.document == nil || w.strip.figures[0].value.Content == "" {
			b.Fatal("no figures are shown")
		}
		left(w)
	}
}

// BenchmarkEditToFigures is an edit, its saving, the new plan and the screen
// that shows it, one after another; in the window they run side by side.
func BenchmarkEditToFigures(b *testing.B) {
	example := demo.Trip()
	w := openTrip(b, &example)
	defer left(w)
	for i := 0; b.Loop(); i++ {
		kit := units.Mass(7000+i%100) * units.Gram
		if err := w.document.Edit("change own kit", func(t *trip.Trip) error { t.Crew[0].OwnKit = kit; return nil }); err != nil {
			b.Fatal(err)
		}
	}
}

// overScreens runs a benchmark for each screen of a trip of 60 people and 21
// days, in a window as large as many have.
func overScreens(b *testing.B, run func(b *testing.B, w *Workbench, screen int)) {
	w := openTrip(b, largeTrip())
	defer left(w)
	w.window.Resize(fyne.NewSize(1920, 1080))
	for i, screen := range w.screens {
		b.Run(screen.Name(), func(b *testing.B) { run(b, w, i) })
	}
}

// BenchmarkShowScreens is what the screen's goroutine has to do when a screen
// is shown that was shown before.
func BenchmarkShowScreens(b *testing.B) {
	overScreens(b, func(b *testing.B, w *Workbench, i int) {
		w.showScreen(i)
		for b.Loop() {
			w.shown = -1
			w.showScreen(i)
		}
	})
}

// BenchmarkAfterEdit is what it has to do on each screen after an edit, while
// the plan is still being made.
func BenchmarkAfterEdit(b *testing.B) {
	overScreens(b, func(b *testing.B, w *Workbench, i int) {
		w.showScreen(i)
		for b.Loop() {
			w.tripChanged()
		}
	})
}

// BenchmarkAfterPlan is what it has to do when the plan of an edit comes.
func BenchmarkAfterPlan(b *testing.B) {
	overScreens(b, func(b *testing.B, w *Workbench, i int) {
		w.showScreen(i)
		for b.Loop() {
			w.planChanged()
		}
	})
}
