package recipes

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip/triptest"
)

func largeScreen(b *testing.B) *Screen {
	b.Helper()
	app := test.NewApp()
	b.Cleanup(app.Quit)
	app.Settings().SetTheme(look.Theme{Variant: look.Light})
	window := app.NewWindow("bench")
	s := New(&bench.Bench{Document: document.New(triptest.Large(60, 21, 1), memory{}, document.Inline{}), Window: window, Say: func(string) {}})
	window.SetContent(s.Content())
	s.Refresh()
	return s
}

// BenchmarkRefresh is what an edit costs the screen on 60 people for 21 days.
func BenchmarkRefresh(b *testing.B) {
	s := largeScreen(b)
	for b.Loop() {
		s.kitchen = newKitchen(s.bench.Trip()) // as after an edit: nothing is known yet
		s.Refresh()
		s.Waiting()
	}
}
