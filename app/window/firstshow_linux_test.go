package window

import (
	"fmt"
	"runtime"
	"slices"
	"syscall"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"sumpter/app/demo"
	"sumpter/domain/trip"
)

// threadTime is how long this thread has worked: other programs on the machine
// do not lengthen it.
func threadTime() time.Duration {
	const thread = 1 // RUSAGE_THREAD
	var usage syscall.Rusage
	if err := syscall.Getrusage(thread, &usage); err != nil {
		panic(err)
	}
	return time.Duration(usage.Utime.Nano() + usage.Stime.Nano())
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
					benchmarkSteps(b, w, steps, func() { w.showScreen(i) })
				})
			}
			b.Run(fmt.Sprintf("%s/%.0f/all made", on.name, size.Width), func(b *testing.B) {
				benchmarkSteps(b, w, steps, w.makeScreens)
			})
			w.leave()
		}
	}
}

func benchmarkSteps(b *testing.B, w *Workbench, steps *stepwise, show func()) {
	runtime.LockOSThread()
	defer runtime.UnlockOSThread()
	var longest, together []time.Duration
	for b.Loop() {
		b.StopTimer()
		w.middle.Objects = nil
		w.window.Canvas().Unfocus()
		w.app.Settings().SetTheme(w.app.Settings().Theme()) // forgets all measured texts
		for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
			fyne.MeasureText("fonts are read when the first text is measured", 14, style)
		}
		w.makeScreens()
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
