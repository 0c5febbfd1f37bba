package window

import (
	"fmt"
	"runtime"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"golang.org/x/sys/unix"

	"sumpter/app/demo"
	"sumpter/domain/trip"
)

// threadTime is how long this thread has worked, to the nanosecond: other
// programs on the machine do not lengthen it. What getrusage tells is only
// brought up to date every 4 ms.
func threadTime() time.Duration {
	var now unix.Timespec
	if err := unix.ClockGettime(unix.CLOCK_THREAD_CPUTIME_ID, &now); err != nil {
		panic(err)
	}
	return time.Duration(now.Nano())
}

// BenchmarkFirstShow brings each screen up that never was, with no text
// measured before, and tells how long its longest step keeps the screen's
// goroutine, and all of them together: the medians of the runs.
func BenchmarkFirstShow(b *testing.B) {
	example := demo.Trip()
	for _, on := range []struct {
		name string
		trip *trip.Trip
	}{{"60x21", largeTrip()}, {"demo", &example}} {
		for _, size := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1920, Height: 1080}} {
			steps := &stepwise{}
			w := openWith(b, on.trip, steps)
			w.window.Resize(size)
			for i, screen := range w.screens {
				b.Run(fmt.Sprintf("%s/%.0f/%s", on.name, size.Width, screen.Name()), func(b *testing.B) {
					benchmarkSteps(b, w, steps, func() {}, func() { w.showScreen(i) })
				})
			}
			b.Run(fmt.Sprintf("%s/%.0f/all made", on.name, size.Width), func(b *testing.B) {
				benchmarkSteps(b, w, steps, func() {}, w.makeScreens)
			})
			left(w)
		}
	}
}

// BenchmarkFirstTab opens each tab of each screen for the first time, as
// BenchmarkFirstShow does with screens.
func BenchmarkFirstTab(b *testing.B) {
	steps := &stepwise{}
	w := openWith(b, largeTrip(), steps)
	defer left(w)
	for _, size := range []fyne.Size{{Width: 1280, Height: 800}, {Width: 1920, Height: 1080}} {
		w.window.Resize(size)
		for i, screen := range w.screens {
			w.showScreen(i)
			tabs := tabsIn(w.middle)
			if tabs == nil {
				continue
			}
			for at := 1; ; at++ {
				if tabs.SelectIndex(at); tabs.SelectedIndex() != at {
					break
				}
				b.Run(fmt.Sprintf("%.0f/%s/%s", size.Width, screen.Name(), tabs.Selected().Text), func(b *testing.B) {
					benchmarkSteps(b, w, steps, func() { w.showScreen(i); tabs = tabsIn(w.middle) }, func() { tabs.SelectIndex(at) })
				})
			}
		}
	}
}

// forgetTexts has every text measured anew.
func (w *Workbench) forgetTexts() {
	w.middle.Objects = nil
	w.window.Canvas().Unfocus()
	w.app.Settings().SetTheme(w.app.Settings().Theme())
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		fyne.MeasureText("fonts are read when the first text is measured", 14, style)
	}
}

// benchmarkSteps gets ready at once, then shows step by step.
func benchmarkSteps(b *testing.B, w *Workbench, steps *stepwise, ready, show func()) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	var longest, together []time.Duration
	for b.Loop() {
		b.StopTimer()
		w.forgetTexts()
		w.makeScreens()
		ready()
		runtime.GC()
		steps.holding = true
		b.StartTimer()
		most, all := time.Duration(0), time.Duration(0)
		steps.steps = []func(){show}
		for len(steps.steps) > 0 {
			next := steps.steps[0]
			steps.steps = steps.steps[1:]
			began := threadTime()
			next()
			took := threadTime() - began
			most, all = max(most, took), all+took
		}
		steps.holding = false
		longest, together = append(longest, most), append(together, all)
	}
	b.ReportMetric(0, "ns/op")
	for name, times := range map[string][]time.Duration{"ms/longest": longest, "ms/all": together} {
		slices.Sort(times)
		b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, name)
	}
}
