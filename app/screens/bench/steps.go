package bench

import "time"

// Steps bring a screen up little by little, so that no frame waits for all of
// it: a screen holds some thousand pieces of text, and each has to be shaped
// and drawn. Its frame is seen at once; then tables fill from the top, and one
// part after another comes into the place that is kept for it.
type Steps struct {
	later  func(step func()) // runs a step on the screen's goroutine after a frame
	pieces []Piece
	done   int       // pieces that are filled
	round  int       // steps of an earlier round do nothing
	left   time.Time // when the screen was last seen
}

// Piece is what comes up in steps of its own.
type Piece interface {
	// Hold empties it, or keeps empty what it will be made of.
	Hold()
	// Fill fills in a little, in a few milliseconds, and tells whether there is
	// more to come.
	Fill() bool
}

const (
	// spell is for how long pieces are filled before a frame is let in.
	spell = 4 * time.Millisecond
	// kept is for how long the toolkit surely keeps what it made of a screen that
	// is not seen; it forgets after a minute.
	kept = 45 * time.Second
)

// NewSteps makes steps; later runs each of them, after a frame was drawn.
func NewSteps(later func(step func())) *Steps { return &Steps{later: later} }

// InSteps has pieces of a screen come up in this order, those first that
// matter first. Without steps they are simply there.
func (b *Bench) InSteps(pieces ...Piece) {
	if b.Steps == nil {
		return
	}
	for _, p := range pieces {
		p.Hold()
	}
	b.Steps.pieces = append(b.Steps.pieces, pieces...)
}

// Begin gets a screen ready to be seen: what the toolkit may have forgotten
// since comes up in steps again. After a change of the look all of it does.
func (s *Steps) Begin(newLook bool) {
	s.round++
	if !newLook && time.Since(s.left) < kept {
		return
	}
	s.done = 0
	for _, p := range s.pieces {
		p.Hold()
	}
}

// Go brings up what is not there yet, a step after each frame.
func (s *Steps) Go() {
	if s.done < len(s.pieces) {
		round := s.round
		s.later(func() { s.step(round) })
	}
}

func (s *Steps) step(round int) {
	if round != s.round {
		return
	}
	began := time.Now()
	for s.done < len(s.pieces) && time.Since(began) < spell {
		if !s.pieces[s.done].Fill() {
			s.done++
		}
	}
	s.Go()
}

// Leave notes that the screen is seen no more.
func (s *Steps) Leave() {
	s.round++
	s.left = time.Now()
}
