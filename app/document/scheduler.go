package document

import "time"

// Inline runs everything at once on the calling goroutine: for tests and for
// programs without a window.
type Inline struct{}

// Background runs work now.
func (Inline) Background(work func()) { work() }

// Screen runs f now.
func (Inline) Screen(f func()) { f() }

// AfterFrame runs f now: nobody waits for frames.
func (Inline) AfterFrame(f func()) { f() }

// frame is how long the screen's goroutine is left alone for a frame.
const frame = 2 * time.Millisecond

// Threads runs work on goroutines and hands results to the screen's goroutine
// through Post, which the window gives.
type Threads struct{ Post func(func()) }

// Background starts a goroutine.
func (s Threads) Background(work func()) { go work() }

// Screen posts f to the screen.
func (s Threads) Screen(f func()) { s.Post(f) }

// AfterFrame posts f to the screen a little later.
func (s Threads) AfterFrame(f func()) { time.AfterFunc(frame, func() { s.Post(f) }) }

// AfterFrame runs f on the screen's goroutine once it could draw a frame: for
// work that is done in steps.
func (d *Document) AfterFrame(f func()) { d.scheduler.AfterFrame(f) }

// OnScreen runs f on the screen's goroutine: for progress of work in the
// background.
func (d *Document) OnScreen(f func()) { d.scheduler.Screen(f) }

// Background runs work away from the screen, then done on it: for figures a
// screen works out for itself. By then the trip may be another; done must
// look.
func (d *Document) Background(work, done func()) {
	d.scheduler.Background(func() {
		work()
		d.scheduler.Screen(done)
	})
}
