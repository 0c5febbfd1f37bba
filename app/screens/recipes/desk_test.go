package recipes

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// memory is a store that keeps nothing on disk.
type memory struct{}

func (memory) Save(context.Context, *trip.Trip) error { return nil }
func (memory) SaveCopy(string) error                  { return nil }
func (memory) Path() string                           { return "memory.trip" }
func (memory) Close() error                           { return nil }

// desk is the screen in a window, with what it told.
type desk struct {
	*Screen
	t      *testing.T
	said   string
	places []document.Place
}

func newDesk(t *testing.T, made *trip.Trip) *desk {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	d := &desk{t: t}
	window := test.NewTempWindow(t, nil)
	b := &bench.Bench{
		Document: document.New(made, memory{}, document.Inline{}), Window: window, Say: func(text string) { d.said = text },
		Clipboard: func() fyne.Clipboard { return fyne.CurrentApp().Clipboard() },
	}
	d.Screen = New(b)
	b.Document.OnTrip(d.Refresh)
	b.Document.OnPlan(d.Refresh)
	b.Document.OnPlace(func(p document.Place) { d.places = append(d.places, p) })
	window.SetContent(d.Content())
	window.Resize(fyne.NewSize(1180, 740))
	d.Refresh()
	return d
}

// kitchenDesk is the demo's foods, recipes and crew on a day without a menu:
// its plan is made in no time.
func kitchenDesk(t *testing.T) *desk {
	example := demo.Trip()
	example.Days, example.Menu, example.Points = example.Days[:1], nil, nil
	for i := range example.Crew {
		example.Crew[i].FirstDay, example.Crew[i].LastDay = 0, 0
	}
	return newDesk(t, &example)
}

func emptyDesk(t *testing.T) *desk { return newDesk(t, trip.New("Short walk", 20_000)) }

// press presses keys on whatever has the keyboard.
func (d *desk) press(names ...fyne.KeyName) {
	d.t.Helper()
	for _, name := range names {
		d.keyboard().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

func (d *desk) typed(text string) {
	d.t.Helper()
	for _, letter := range text {
		d.keyboard().TypedRune(letter)
	}
}

func (d *desk) keyboard() fyne.Focusable {
	d.t.Helper()
	on := d.bench.Window.Canvas().Focused()
	if on == nil {
		d.t.Fatal("nothing has the keyboard")
	}
	return on
}

// do runs one of the screen's actions.
func (d *desk) do(name string) {
	d.t.Helper()
	for _, action := range d.Actions() {
		if action.Name == name {
			action.Do()
			return
		}
	}
	d.t.Fatalf("there is no action %q", name)
}

// recipe finds a recipe of the document by its name.
func (d *desk) recipe(name string) *trip.Recipe {
	d.t.Helper()
	t := d.bench.Trip()
	for i := range t.Recipes {
		if t.Recipes[i].Name == name {
			return &t.Recipes[i]
		}
	}
	d.t.Fatalf("the trip has no %q", name)
	return nil
}

// choose puts the cursor of the list on a recipe.
func (d *desk) choose(name string) {
	d.t.Helper()
	d.GoTo(findings.Place{Recipe: d.recipe(name).ID})
}
