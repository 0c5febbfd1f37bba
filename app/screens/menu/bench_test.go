package menu

import (
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/trip/triptest"
)

// openLarge shows 60 people and 21 days on a canvas of a whole large screen,
// where most cells are in view.
func openLarge(b *testing.B) *shown {
	b.Helper()
	s := openTrip(b, triptest.Large(60, 21, 11))
	s.Window.Resize(fyne.NewSize(2560, 1440))
	return s
}

// BenchmarkScroll60x21 is our own work for one step of the wheel; a cell comes
// into view every few steps.
func BenchmarkScroll60x21(b *testing.B) {
	s := openLarge(b)
	step := float32(-25)
	for b.Loop() {
		before := s.board.scroll.Offset
		s.board.scroll.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.NewDelta(step, 0)})
		if s.board.scroll.Offset == before {
			step = -step
		}
	}
}

// BenchmarkScrollFar60x21 is a jump after which every cell in view is another.
func BenchmarkScrollFar60x21(b *testing.B) {
	s := openLarge(b)
	far := false
	for b.Loop() {
		if far = !far; far {
			s.board.scrollTo(fyne.NewPos(9999, 9999))
		} else {
			s.board.scrollTo(fyne.Position{})
		}
	}
}

// BenchmarkDrag60x21 is one move of the pointer with a slot held.
func BenchmarkDrag60x21(b *testing.B) {
	s := openLarge(b)
	s.board.scrollTo(fyne.Position{})
	start := fyne.NewPos(60, 160)
	x := float32(0)
	for b.Loop() {
		x += 7
		if x > 900 {
			x = 0
		}
		s.board.sheet.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: start.AddXY(x+60, 40)}, Dragged: fyne.NewDelta(x+60, 40)})
	}
	s.board.sheet.stopDrag()
}

// BenchmarkMoveCursor60x21 moves the cursor a day on; the side and the picture
// follow.
func BenchmarkMoveCursor60x21(b *testing.B) {
	s := openLarge(b)
	at := place{2, 0}
	for b.Loop() {
		at.column = (at.column + 1) % 21
		s.board.moveTo(at, false)
	}
}

// BenchmarkRefresh60x21 shows a new plan.
func BenchmarkRefresh60x21(b *testing.B) {
	s := openLarge(b)
	for b.Loop() {
		s.Refresh()
	}
}
