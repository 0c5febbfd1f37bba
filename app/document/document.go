// Package document is the open trip: edits that can be undone, saving as they
// are made, and planning away from the screen with the newest edit winning.
//
// A Document belongs to one goroutine, the screen's. Work that takes time runs
// elsewhere through a Scheduler and comes back through it, so that tests run
// the same code in one thread.
package document

import (
	"context"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Store keeps a trip on disk. Package tripfile has the real one.
type Store interface {
	// Save writes what changed, in one transaction.
	Save(ctx context.Context, t *trip.Trip) error
	// SaveCopy writes the whole trip to a new file.
	SaveCopy(path string) error
	// Path is the file the trip lives in.
	Path() string
	// Close ends the use of the file.
	Close() error
}

// Scheduler runs work away from the screen and brings results back to it.
type Scheduler interface {
	// Background runs work on another goroutine, in no order.
	Background(work func())
	// Screen runs f on the screen's goroutine, soon.
	Screen(f func())
	// AfterFrame runs f on the screen's goroutine once it could hear keys and
	// draw a frame.
	AfterFrame(f func())
}

// mostUndo is how many edits can be taken back.
const mostUndo = 200

// Document is one open trip.
type Document struct {
	trip      *trip.Trip
	scheduler Scheduler
	done      []edit  // edits that can be undone, oldest first
	undone    []edit  // edits that can be redone, last undone last
	gathering *string // the name of the last edit of those that become one step; nil: each is its own
	planner   planner
	saver     *saver
	closed    func(error) // told when the trip is closed; not nil: no edit is taken any more
	listeners listeners
}

// edit is one step of undo. Trips are never changed once they are in it.
type edit struct {
	name          string
	merge         string
	before, after *trip.Trip
}

// New makes a document of a trip that is kept in a store. It does not plan
// yet: call Replan once the listeners are there.
func New(t *trip.Trip, store Store, scheduler Scheduler) *Document {
	d := &Document{trip: t.Clone(), scheduler: scheduler}
	d.planner = planner{document: d, make: func(ctx context.Context, t *trip.Trip, say func(prose.Text)) (*plan.Plan, error) {
		return plan.Make(ctx, t, plan.Options{Progress: say})
	}}
	d.saver = &saver{document: d, store: store}
	return d
}

// Trip is the trip as it is now. It must not be changed: use Edit.
func (d *Document) Trip() *trip.Trip { return d.trip }

// Path is the file the trip lives in.
func (d *Document) Path() string { return d.saver.store.Path() }

// Edit changes the trip in one step that can be undone. The change works on a
// copy; if it returns an error, or the trip would no longer have a meaning,
// nothing happens and the error says why. What was noted of things that the
// change takes out of the trip goes with them.
// The name completes "Undo: …", as in "move bag 23 to another pack".
func (d *Document) Edit(name string, change func(t *trip.Trip) error) error {
	return d.EditMerged(name, "", change)
}

// EditMerged is Edit for runs of small steps, such as letters typed into one
// field: steps in a row with the same merge key are undone as one.
func (d *Document) EditMerged(name, mergeKey string, change func(t *trip.Trip) error) error {
	if d.closed != nil {
		return errClosing
	}
	next := d.trip.Clone()
	if err := change(next); err != nil {
		return err
	}
	next.Tidy(d.trip)
	if trip.Equal(d.trip, next) {
		return nil
	}
	if problems := trip.Validate(next); len(problems) > 0 {
		return prose.Errorf("%s", problems[0])
	}
	if d.gathering != nil {
		*d.gathering = name
		d.trip = next
		d.listeners.tellTrip()
		return nil
	}
	d.note(name, mergeKey, next)
	return nil
}

// note makes a trip the current one in a step that can be undone.
func (d *Document) note(name, mergeKey string, next *trip.Trip) {
	before := d.trip
	if last := len(d.done) - 1; mergeKey != "" && last >= 0 && d.done[last].merge == mergeKey && len(d.undone) == 0 {
		d.done[last].after, d.done[last].name = next, name
	} else {
		d.done = append(d.done, edit{name: name, merge: mergeKey, before: before, after: next})
		if len(d.done) > mostUndo {
			d.done = append([]edit(nil), d.done[len(d.done)-mostUndo:]...)
		}
	}
	d.undone = nil
	d.show(next)
}

// Together makes the edits of steps one step of undo, which is named, saved and
// planned as the last of them. If steps returns an error, the trip is as it was.
func (d *Document) Together(steps func() error) error {
	if d.gathering != nil {
		return steps()
	}
	before, name := d.trip, ""
	d.gathering = &name
	err := steps()
	next := d.trip
	d.gathering, d.trip = nil, before
	if err != nil || trip.Equal(before, next) {
		d.listeners.tellTrip()
		return err
	}
	d.note(name, "", next)
	return nil
}

// UndoName names the edit that Undo would take back; empty if there is none.
func (d *Document) UndoName() string {
	if len(d.done) == 0 {
		return ""
	}
	return d.done[len(d.done)-1].name
}

// RedoName names the edit that Redo would make again; empty if there is none.
func (d *Document) RedoName() string {
	if len(d.undone) == 0 {
		return ""
	}
	return d.undone[len(d.undone)-1].name
}

// ErrNothing is given by Undo and Redo when there is nothing to do.
var ErrNothing = prose.Errorf("there is nothing to take back")

// Undo takes back the last edit.
func (d *Document) Undo() error {
	if d.closed != nil {
		return errClosing
	}
	if len(d.done) == 0 {
		return ErrNothing
	}
	last := d.done[len(d.done)-1]
	d.done = d.done[:len(d.done)-1]
	last.merge = ""
	d.undone = append(d.undone, last)
	d.show(last.before)
	return nil
}

// Redo makes the last undone edit again.
func (d *Document) Redo() error {
	if d.closed != nil {
		return errClosing
	}
	if len(d.undone) == 0 {
		return ErrNothing
	}
	last := d.undone[len(d.undone)-1]
	d.undone = d.undone[:len(d.undone)-1]
	d.done = append(d.done, last)
	d.show(last.after)
	return nil
}

// show makes a trip the current one: it is saved, planned and told.
func (d *Document) show(t *trip.Trip) {
	was := d.trip
	d.trip = t
	d.saver.save(t)
	if !d.planner.keep(was, t) {
		d.planner.start(t)
	}
	d.listeners.tellTrip()
}

// SaveCopy writes the trip to another file and goes on with this one: away
// from the screen, after the edits that are still being saved. What came of it
// is told to done.
func (d *Document) SaveCopy(path string, done func(error)) {
	saver, err := d.saver, error(nil)
	saver.retry()
	d.Background(func() {
		if err = saver.settle(); err != nil {
			err = prose.Errorf("the last edits could not be saved, so no copy was made: %s", err)
			return
		}
		err = saver.store.SaveCopy(path)
	}, func() { done(err) })
}

// MoveTo goes on in another store that already holds the trip, when the old
// one can no longer be written. What can be undone stays. The old one is given
// up: a save that hangs in it keeps nobody waiting. A trip that is being closed is
// closed there.
func (d *Document) MoveTo(store Store) {
	old := d.saver
	d.saver = &saver{document: d, store: store}
	d.saver.save(d.trip)
	old.giveUp()
	d.scheduler.Background(func() {
		_ = old.settle()
		_ = old.store.Close() // why it is given up is known already
	})
	if d.closed != nil {
		d.finish()
	}
}

var errClosing = prose.Errorf("the trip is being closed: its last edit is still being saved")

// Close ends the use of the file once every edit is on disk, and then tells
// done. If an edit could not be saved it says so, and the document stays open.
// Nobody has to wait: until done is told no edit is taken, afterwards none if
// the file was closed.
func (d *Document) Close(done func(error)) {
	if d.closed != nil {
		return
	}
	d.closed = done
	d.planner.stop()
	d.finish()
}

// finish closes the file in which the trip lives now. If the trip moves meanwhile,
// what came of it is told nobody: the new file is then to be closed.
func (d *Document) finish() {
	saver, last, err := d.saver, d.trip, error(nil)
	d.Background(func() {
		if err = saver.wait(last); err == nil {
			err = saver.store.Close()
		}
	}, func() {
		if saver != d.saver {
			return
		}
		done := d.closed
		if err != nil {
			d.closed = nil
		}
		done(err)
	})
}
