package window

import (
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// openTrip puts a trip into a file and opens it in a window.
func openTrip(b *testing.B, t *trip.Trip) *Workbench {
	b.Helper()
	path := filepath.Join(b.TempDir(), "bench.trip")
	file, err := tripfile.Create(path, t)
	if err != nil {
		b.Fatal(err)
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	w := New(test.NewApp(), document.Inline{}, shelfFor(b))
	w.OpenPath(path)
	if w.document == nil {
		b.Fatal(w.message.Content)
	}
	return w
}

// BenchmarkEditToFigures is an edit, its saving, the new plan and the screen
// that shows it, one after another; in the window they run side by side.
func BenchmarkEditToFigures(b *testing.B) {
	example := demo.Trip()
	w := openTrip(b, &example)
	defer w.leave()
	for i := 0; b.Loop(); i++ {
		kit := units.Mass(7000+i%100) * units.Gram
		if err := w.document.Edit("change own kit", func(t *trip.Trip) error { t.Crew[0].OwnKit = kit; return nil }); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkShowScreens goes through every screen of a trip of 60 people and
// 21 days: what the screen's goroutine has to do when one is opened.
func BenchmarkShowScreens(b *testing.B) {
	w := openTrip(b, triptest.Large(60, 21, 5))
	defer w.leave()
	for i, screen := range w.screens {
		b.Run(screen.Name(), func(b *testing.B) {
			for b.Loop() {
				w.shown = -1
				w.showScreen(i)
			}
		})
	}
}
