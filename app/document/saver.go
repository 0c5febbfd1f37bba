package document

import (
	"context"
	"errors"
	"sync"

	"sumpter/domain/trip"
)

// saver writes trips to the store one after another, away from the screen.
// Waiting trips that a newer one replaces are skipped: each edit on disk is a
// whole one either way.
type saver struct {
	document *Document
	store    Store
	lock     sync.Mutex
	waiting  *trip.Trip
	running  bool
	idle     *sync.Cond
	failed   error
	givenUp  bool // what comes of it is told nobody
}

func (s *saver) save(t *trip.Trip) {
	s.lock.Lock()
	s.waiting = t
	start := !s.running
	s.running = true
	s.lock.Unlock()
	if start {
		s.document.scheduler.Background(s.run)
	}
}

func (s *saver) run() {
	for {
		s.lock.Lock()
		next := s.waiting
		s.waiting = nil
		if next == nil {
			s.running = false
			if s.idle != nil {
				s.idle.Broadcast()
			}
			s.lock.Unlock()
			return
		}
		s.lock.Unlock()
		err := s.store.Save(context.Background(), next)
		s.lock.Lock()
		s.failed = err
		tell := !s.givenUp
		s.lock.Unlock()
		if tell {
			s.document.scheduler.Screen(func() { s.document.listeners.tellSaved(err) })
		}
	}
}

// retry saves once more what could not be saved.
func (s *saver) retry() {
	s.lock.Lock()
	failed := s.failed != nil
	s.lock.Unlock()
	if failed {
		s.save(s.document.trip)
	}
}

// settle blocks until nothing is left to save, and gives the last failure.
func (s *saver) settle() error {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.idle == nil {
		s.idle = sync.NewCond(&s.lock)
	}
	for s.running {
		s.idle.Wait()
	}
	return s.failed
}

// giveUp saves nothing more, and lets a save on its way end unheard.
func (s *saver) giveUp() {
	s.lock.Lock()
	defer s.lock.Unlock()
	s.waiting, s.givenUp = nil, true
}

var errGivenUp = errors.New("the trip lives elsewhere by now")

// wait blocks until nothing is left to save, tries the last trip once more if
// that failed and the store is not given up, and gives the last failure.
func (s *saver) wait(last *trip.Trip) error {
	_ = s.settle()
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.givenUp {
		return errGivenUp
	}
	if s.failed != nil {
		s.failed = s.store.Save(context.Background(), last)
	}
	return s.failed
}
