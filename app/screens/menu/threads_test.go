package menu

import (
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/document"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// TestWorkAwayFromTheScreen runs planning, ranking, trying and filling on
// goroutines of their own, as in the window, while the leader goes on: with
// the race detector it tells of anything shared. What comes too late is
// dropped.
func TestWorkAwayFromTheScreen(t *testing.T) {
	queue := make(chan func(), 10000)
	s := openWith(t, triptest.Large(6, 3, 4), document.Threads{Post: func(f func()) { queue <- f }})
	until := func(what string, done func() bool) {
		t.Helper()
		for !done() {
			select {
			case f := <-queue:
				f()
			case <-t.Context().Done():
				t.Fatal(what)
			}
		}
	}
	until("no plan came", func() bool { return s.Document.Plan() != nil && !s.Document.Planning() })
	first, second := slot{1, trip.Dinner, s.board.rows[0].group}, slot{2, trip.Dinner, s.board.rows[0].group}
	s.at(first)
	s.key(fyne.KeyReturn)
	s.side.chooser.leave()
	s.at(second)
	s.key(fyne.KeyReturn)
	c := s.side.chooser
	until("the recipes were not tried", func() bool { return len(c.all) > 0 && c.all[len(c.all)-1].tried })
	if c.k != second {
		t.Errorf("what came late is shown for %v", c.k)
	}
	if err := s.clear(second); err != nil {
		t.Fatal(err)
	}
	s.filler.start(false)
	until("nothing was filled", func() bool { return s.Document.UndoName() == "fill the open slots" })
	if len(s.seen.dishes(second)) == 0 {
		t.Error("the slot is still open")
	}
	until("no plan of the filled menu came", func() bool { return !s.Document.Planning() })
}
