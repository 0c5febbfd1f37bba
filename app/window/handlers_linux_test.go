package window

import (
	"fmt"
	"runtime"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// BenchmarkHandlers taps, drags, scrolls, types into and presses keys on all
// that is seen of each screen and its tabs, does its actions and takes every
// edit back, on a trip of 60 people and 21 days. It tells how long the longest
// step keeps the screen's goroutine, and lists the longest by name. Once is
// enough (-benchtime 1x): it takes minutes.
func BenchmarkHandlers(b *testing.B) {
	steps := &stepwise{}
	w := openWith(b, largeTrip(), steps)
	defer left(w)
	w.window.Resize(fyne.NewSize(openWidth, openHeight))
	for i, screen := range w.screens {
		b.Run(screen.Name(), func(b *testing.B) {
			runtime.LockOSThread()
			defer runtime.UnlockOSThread()
			for b.Loop() {
				h := &hands{w: w, steps: steps, tried: map[string]int{}}
				h.screen(i)
				slices.SortFunc(h.done, func(a, b doing) int { return int(b.took - a.took) })
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(milliseconds(h.done[0].took), "ms/longest")
				for _, d := range h.done[:min(5, len(h.done))] {
					b.Logf("%5.1f ms: step %d of %s", milliseconds(d.took), d.step, d.what)
				}
			}
		})
	}
}

func milliseconds(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

// doing is one step of what was done.
type doing struct {
	what string
	step int
	took time.Duration
}

// hands do all there is to do.
type hands struct {
	w     *Workbench
	steps *stepwise
	done  []doing
	tried map[string]int // how often, by what it is
}

const (
	mostAlike = 3   // objects of one kind and name are tried
	mostSteps = 400 // are waited for: a menu that is filled says how far it is
	mostUndo  = 5   // edits of one handler are taken back
)

// screen goes through a screen.
func (h *hands) screen(i int) {
	screen := h.w.screens[i]
	h.do(screen.Name()+", shown", func() { h.w.showScreen(i) })
	h.everything(screen.Name(), i)
	tabs := tabsIn(h.w.middle)
	for at := 1; tabs != nil; at++ {
		h.do(fmt.Sprintf("%s, tab %d", screen.Name(), at), func() { tabs.SelectIndex(at) })
		if tabs.SelectedIndex() != at {
			break
		}
		h.everything(screen.Name()+", "+tabs.Selected().Text, i)
	}
	for _, action := range screen.Actions() {
		h.w.showScreen(i)
		h.andBack(screen.Name()+", action "+action.Name, action.Do)
	}
	h.w.showScreen(i)
}

// do measures each step of something; its edits stay.
func (h *hands) do(what string, f func()) {
	h.steps.holding = true
	h.steps.steps = []func(){f}
	for n := 0; len(h.steps.steps) > 0 && n < mostSteps; n++ {
		next := h.steps.steps[0]
		h.steps.steps = h.steps.steps[1:]
		began := threadTime()
		next()
		h.done = append(h.done, doing{what, n, threadTime() - began})
	}
	h.steps.holding = false
}

// andBack does something, closes what came up over the window and takes the
// edits back.
func (h *hands) andBack(what string, f func()) {
	before := h.w.document.Trip()
	h.do(what, f)
	overlays := h.w.window.Canvas().Overlays()
	for top := overlays.Top(); top != nil; top = overlays.Top() {
		h.do(what+", closed", func() { top.Hide(); overlays.Remove(top) })
	}
	for n := 0; h.w.document.Trip() != before && n < mostUndo; n++ {
		h.do(what+", taken back", func() { _ = h.w.document.Undo() })
	}
}

// everything tries all that is seen of a screen.
func (h *hands) everything(where string, i int) {
	var list []fyne.CanvasObject
	visible(h.w.screens[i].Content(), func(o fyne.CanvasObject) { list = append(list, o) })
	for _, o := range list {
		what := fmt.Sprintf("%s, %T", where, o)
		if button, ok := o.(*widget.Button); ok {
			what += " " + button.Text
		}
		if h.tried[what]++; h.tried[what] <= mostAlike && h.seen(i, o) {
			h.mouse(what, o)
			h.keys(what, o)
		}
	}
	h.w.window.Canvas().Unfocus()
}

// seen tells whether an object is still seen after what was done to others.
func (h *hands) seen(i int, wanted fyne.CanvasObject) bool {
	found := false
	visible(h.w.screens[i].Content(), func(o fyne.CanvasObject) { found = found || o == wanted })
	return found
}

func (h *hands) mouse(what string, o fyne.CanvasObject) {
	at := fyne.NewPos(o.Size().Width/2, o.Size().Height/2)
	point := fyne.PointEvent{Position: at, AbsolutePosition: h.w.app.Driver().AbsolutePositionForObject(o).Add(at)}
	if on, ok := o.(fyne.Tappable); ok {
		h.andBack(what+", tapped", func() { on.Tapped(&point) })
	}
	if on, ok := o.(fyne.SecondaryTappable); ok {
		h.andBack(what+", menu", func() { on.TappedSecondary(&point) })
	}
	if on, ok := o.(desktop.Hoverable); ok {
		h.do(what+", pointed at", func() {
			on.MouseIn(&desktop.MouseEvent{PointEvent: point})
			on.MouseMoved(&desktop.MouseEvent{PointEvent: point})
			on.MouseOut()
		})
	}
	if on, ok := o.(fyne.Scrollable); ok {
		for _, by := range []float32{-200, -200, 5000} {
			h.do(what+", scrolled", func() { on.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(0, by)}) })
		}
	}
	if on, ok := o.(fyne.Draggable); ok {
		for n := range 3 {
			by := fyne.NewDelta(40, 30)
			moved := fyne.PointEvent{Position: at.AddXY(float32(n)*by.DX, float32(n)*by.DY), AbsolutePosition: point.AbsolutePosition.AddXY(float32(n)*by.DX, float32(n)*by.DY)}
			h.do(what+", dragged", func() { on.Dragged(&fyne.DragEvent{PointEvent: moved, Dragged: by}) })
		}
		h.andBack(what+", dropped", on.DragEnd)
	}
}

func (h *hands) keys(what string, o fyne.CanvasObject) {
	on, ok := o.(fyne.Focusable)
	if !ok {
		return
	}
	h.do(what+", focused", func() { h.w.window.Canvas().Focus(on) })
	if _, text := o.(interface{ SelectedText() string }); text {
		for _, letter := range "ri1" {
			h.do(what+", typed", func() { on.TypedRune(letter) })
		}
	}
	for _, key := range []fyne.KeyName{fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyRight, fyne.KeyLeft, fyne.KeyEnd,
		fyne.KeyHome, fyne.KeySpace, fyne.KeyReturn, fyne.KeyEscape, fyne.KeyF2, fyne.KeyDelete, fyne.KeyInsert} {
		h.andBack(what+", "+string(key), func() { on.TypedKey(&fyne.KeyEvent{Name: key}) })
	}
}
