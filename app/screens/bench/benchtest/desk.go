// Package benchtest puts a screen on a window of the test driver, so that the
// tests of every screen work at it as a person does: type, press keys, tap,
// and look at the document. Only tests import it.
package benchtest

import (
	"context"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// Desk is a trip, a bench for its screens and a window, with what came of the
// work at it.
type Desk struct {
	T        testing.TB
	Bench    *bench.Bench
	Document *document.Document
	Window   fyne.Window
	Said     string           // the line the user reads, empty if it was taken back
	Places   []document.Place // where jumps led
	Tables   int              // how often a table to add was asked for
	Copied   int              // how often the copied table was to be added
	Taken    int              // how often recipes of a trip were asked for
	Saved    *trip.Trip       // as the last edit was stored, nil before the first

	screen bench.Screen
}

// New lays a trip on a desk whose work all runs in the thread of the test.
func New(t testing.TB, on *trip.Trip) *Desk { return NewWith(t, on, document.Inline{}) }

// NewWith lays a trip on a desk whose work away from the screen is run by a
// scheduler.
func NewWith(t testing.TB, on *trip.Trip, scheduler document.Scheduler) *Desk {
	t.Helper()
	app := test.NewTempApp(t)
	app.Settings().SetTheme(look.Theme{Variant: look.Light})
	d := &Desk{T: t, Window: test.NewTempWindow(t, nil)}
	d.Document = document.New(on, &shelf{desk: d, path: filepath.Join(t.TempDir(), "desk.trip")}, scheduler)
	d.Document.OnPlace(func(place document.Place) { d.Places = append(d.Places, place) })
	d.Bench = &bench.Bench{Document: d.Document, Window: d.Window, Say: func(text string) { d.Said = text }, AddTable: func() { d.Tables++ }, AddCopied: func() { d.Copied++ }, TakeRecipes: func() { d.Taken++ }, TakeDemoRecipes: func() { d.Taken++ }, Clipboard: app.Clipboard}
	return d
}

// Show puts a screen of the desk's bench into the window, has it follow every
// edit and plan, and plans the trip.
func (d *Desk) Show(screen bench.Screen, width, height float32) {
	d.T.Helper()
	d.screen = screen
	d.Window.SetContent(screen.Content())
	d.Window.Resize(fyne.NewSize(width, height))
	d.Document.OnTrip(screen.Refresh)
	d.Document.OnPlan(screen.Refresh)
	d.Document.Replan()
	screen.Refresh()
}

// shelf keeps the last trip it was given, in the place of a file.
type shelf struct {
	desk *Desk
	path string
}

func (s *shelf) Save(_ context.Context, t *trip.Trip) error { s.desk.Saved = t; return nil }
func (s *shelf) SaveCopy(string) error                      { return nil }
func (s *shelf) Path() string                               { return s.path }
func (s *shelf) Close() error                               { return nil }
