package window

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/screens/bench"
	"sumpter/app/tripfile"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// No screen may push the window wider or higher than it opens: the toolkit
// grows it to the least size of what it shows, past the edge of a small screen.
func TestEveryScreenFitsTheWindow(t *testing.T) {
	example := demo.Trip()
	for _, c := range []struct {
		name, language string
		on             *trip.Trip
	}{
		{"demo in English", "en_US.UTF-8", &example},
		{"demo in German", "de_DE.UTF-8", &example},
		{"the longest names", "en_US.UTF-8", longNames()},
		{"60 people for 21 days in German", "de_DE.UTF-8", triptest.Large(60, 21, 5)},
	} {
		t.Run(c.name, func(t *testing.T) {
			speak(t, c.language)
			w := openOn(t, c.on)
			for i, screen := range w.screens {
				w.showScreen(i)
				checkFits(t, w, screen.Name())
				var tabs *bench.Tabs
				visible(screen.Content(), func(object fyne.CanvasObject) {
					if found, ok := object.(*bench.Tabs); ok {
						tabs = found
					}
				})
				for n := 1; tabs != nil; n++ {
					tabs.SelectIndex(n)
					if tabs.SelectedIndex() != n {
						break
					}
					checkFits(t, w, screen.Name()+", "+tabs.Selected().Text)
				}
			}
		})
	}
}

// longNames is a trip in which everything has the longest name there can be.
func longNames() *trip.Trip {
	t := triptest.Large(6, 4, 3)
	long := func(kind string, i int) string {
		name := fmt.Sprintf("%s %d ", kind, i)
		return name + strings.Repeat("Wm", (trip.MaxNameRunes-len(name))/2)
	}
	t.Title = long("Trip", 0)
	for i := range t.Groups {
		t.Groups[i].Name = long("Group", i)
	}
	for i := range t.Crew {
		t.Crew[i].Name = long("Member", i)
	}
	for i := range t.Days {
		t.Days[i].Name = long("Day", i)
	}
	for i := range t.Foods {
		t.Foods[i].Name = long("Food", i)
	}
	for i := range t.Recipes {
		t.Recipes[i].Name = long("Recipe", i)
	}
	for i := range t.Gear {
		t.Gear[i].Name = long("Gear", i)
	}
	for i := range t.Points {
		t.Points[i].Name = long("Point", i)
	}
	for i := range t.Bags {
		t.Bags[i].Name = long("Bag", i)
	}
	return t
}

// checkFits wants nothing to scroll to in the window as it opens.
func checkFits(t *testing.T, w *Workbench, place string) {
	t.Helper()
	least := w.window.Content().MinSize().Subtract(w.view.MinSize()).Add(w.middle.MinSize())
	if least.Width > openWidth || least.Height > openHeight-menuBar {
		t.Errorf("%s asks for %v by %v, the window has %v by %v", place, least.Width, least.Height, openWidth, openHeight-menuBar)
	}
}

const menuBar = 28

// On a small screen nothing is cut off, though there may be something to scroll
// to; what the leader plans with needs no scrolling sideways.
func TestPlanningFitsASmallWindow(t *testing.T) {
	example := demo.Trip()
	speak(t, "en_US.UTF-8")
	w := openOn(t, &example)
	w.window.Resize(fyne.NewSize(853, 533))
	for i, screen := range w.screens {
		if !slices.Contains([]string{"crew", "route", "foods", "recipes", "menu", "shopping", "settings"}, screen.Name()) {
			continue
		}
		w.showScreen(i)
		if needs, has := w.middle.MinSize().Width, w.view.Size().Width; needs > has {
			t.Errorf("%s is %v wide, there is room for %v", screen.Name(), needs, has)
		}
	}
	w.toggleFindings()
	if least := w.window.Content().MinSize(); least.Width > 853 || least.Height > 533-menuBar {
		t.Errorf("with the findings the window asks for %v by %v", least.Width, least.Height)
	}
}

// openOn opens a trip in a window whose work runs in one thread.
func openOn(t *testing.T, on *trip.Trip) *Workbench {
	t.Helper()
	return openOnWith(t, on, document.Inline{})
}

func openOnWith(t *testing.T, on *trip.Trip, scheduler document.Scheduler) *Workbench {
	t.Helper()
	path := filepath.Join(t.TempDir(), "some.trip")
	file, err := tripfile.Create(path, on)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	w := New(test.NewTempApp(t), scheduler, shelfFor(t))
	w.OpenPath(path)
	if w.document == nil {
		t.Fatalf("the trip did not open: %s", w.message.Content)
	}
	t.Cleanup(func() { left(w) })
	return w
}
