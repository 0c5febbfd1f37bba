package foods

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/document"
	"sumpter/app/library"
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

// BenchmarkKeystroke is one more letter in the search, results shown.
func BenchmarkKeystroke(b *testing.B) {
	s := largeScreen(b)
	library.Search("oats", 1)
	words := []string{"o", "oa", "oat", "oats", "oats r"}
	for i := 0; b.Loop(); i++ {
		s.search.look(words[i%len(words)])
	}
}

// BenchmarkRefresh is what an edit costs the screen on 60 people for 21 days.
func BenchmarkRefresh(b *testing.B) {
	s := largeScreen(b)
	for b.Loop() {
		s.Refresh()
	}
}
