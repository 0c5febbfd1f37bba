package window

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"sumpter/app/demo"
	"sumpter/app/screens/bench"
)

// stepwise keeps what is to be done on the screen's goroutine while a screen
// comes up, to do it step by step; otherwise all is done at once.
type stepwise struct {
	holding bool
	steps   []func()
}

// AfterFrame keeps a step.
func (s *stepwise) AfterFrame(f func()) { s.Screen(f) }

// Screen keeps a step.
func (s *stepwise) Screen(f func()) {
	if !s.holding {
		f()
		return
	}
	s.steps = append(s.steps, f)
}

// Background does the work while everything else waits, beside the screen's
// goroutine where steps are measured.
func (s *stepwise) Background(work func()) {
	if !s.holding {
		work()
		return
	}
	done := make(chan struct{})
	go func() {
		defer close(done)
		work()
	}()
	<-done
}

// next runs a step, if there is one.
func (s *stepwise) next() bool {
	if len(s.steps) == 0 {
		return false
	}
	step := s.steps[0]
	s.steps = s.steps[1:]
	step()
	return true
}

// tabsIn finds the first tabs that are seen in an object, nil if there are none.
func tabsIn(object fyne.CanvasObject) *bench.Tabs {
	if !object.Visible() {
		return nil
	}
	var inside []fyne.CanvasObject
	switch o := object.(type) {
	case *bench.Tabs:
		return o
	case *fyne.Container:
		inside = o.Objects
	case fyne.Widget:
		inside = test.WidgetRenderer(o).Objects()
	}
	for _, one := range inside {
		if tabs := tabsIn(one); tabs != nil {
			return tabs
		}
	}
	return nil
}

// placed lists the texts that are seen, each with its place in the window.
func placed(object fyne.CanvasObject, at fyne.Position, found map[string]bool) {
	if !object.Visible() {
		return
	}
	at = at.Add(object.Position())
	switch o := object.(type) {
	case *canvas.Text:
		if o.Text != "" {
			found[fmt.Sprintf("%q at %.0f, %.0f", o.Text, at.X, at.Y)] = true
		}
	case *fyne.Container:
		for _, inside := range o.Objects {
			placed(inside, at, found)
		}
	case fyne.Widget:
		for _, inside := range test.WidgetRenderer(o).Objects() {
			placed(inside, at, found)
		}
	}
}

// seenTexts counts how often each text is seen, wherever it stands: the test
// driver lays wrapped texts out once, and the window again once they know their
// width.
func (w *Workbench) seenTexts() map[string]int {
	places, texts := map[string]bool{}, map[string]int{}
	placed(w.middle, fyne.Position{}, places)
	for text := range places {
		texts[text[:strings.LastIndex(text, " at ")]]++
	}
	return texts
}

// A screen comes up in steps; what is seen of it stays where it is, and in the
// end everything is there.
func TestAScreenComesUpInSteps(t *testing.T) {
	example := demo.Trip()
	steps := &stepwise{}
	w := openOnWith(t, &example, steps)
	w.window.Resize(fyne.NewSize(openWidth, openHeight))
	for i, screen := range w.screens {
		steps.holding = true
		w.showScreen(i)
		for n := 1; ; n++ {
			before, after := map[string]bool{}, map[string]bool{}
			placed(w.middle, fyne.Position{}, before)
			if !steps.next() {
				break
			}
			placed(w.middle, fyne.Position{}, after)
			for text := range before {
				if !after[text] && !strings.HasPrefix(text, `"Drawing the pages`) {
					t.Errorf("%s: step %d moves or takes away %s", screen.Name(), n, text)
				}
			}
		}
		steps.holding = false
		inSteps := w.seenTexts()
		w.screens[i], w.steps[i], w.shown = allScreens[i](w.bench), bench.NewSteps(nil), -1
		w.showScreen(i)
		if atOnce := w.seenTexts(); !maps.Equal(inSteps, atOnce) {
			t.Errorf("%s: in steps %v, at once %v", screen.Name(), inSteps, atOnce)
		}
	}
}

// Who leaves a screen before it is whole, or comes back after a long time,
// finds it whole all the same.
func TestAScreenIsWholeAfterItWasLeft(t *testing.T) {
	example := demo.Trip()
	steps := &stepwise{}
	w := openOnWith(t, &example, steps)
	w.window.Resize(fyne.NewSize(openWidth, openHeight))
	for i, screen := range w.screens {
		w.showScreen(i)
		whole := w.seenTexts()
		for _, newLook := range []bool{false, true} {
			other := (i + 1) % len(w.screens)
			w.showScreen(other)
			if newLook {
				w.looks++ // all of it is made anew
			}
			steps.holding = true
			w.showScreen(i)
			steps.next()
			w.showScreen(other)
			w.showScreen(i)
			for steps.next() {
			}
			steps.holding = false
			if again := w.seenTexts(); !maps.Equal(whole, again) {
				t.Errorf("%s, new look %v: was %v, is %v", screen.Name(), newLook, whole, again)
			}
		}
	}
}
