package document

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// paper is a store in memory that can be told to fail.
type paper struct {
	saved  []*trip.Trip
	copies []string
	fail   error
	closed bool
}

func (p *paper) Save(_ context.Context, t *trip.Trip) error {
	if p.fail != nil {
		return p.fail
	}
	p.saved = append(p.saved, t)
	return nil
}

func (p *paper) SaveCopy(path string) error { p.copies = append(p.copies, path); return nil }
func (p *paper) Path() string               { return "paper.trip" }
func (p *paper) Close() error               { p.closed = true; return nil }

// open makes a document with a planner that only notes what it was given.
func open(t *trip.Trip, scheduler Scheduler) (*Document, *paper) {
	store := &paper{}
	d := New(t, store, scheduler)
	d.planner.make = func(ctx context.Context, t *trip.Trip, _ func(prose.Text)) (*plan.Plan, error) {
		return &plan.Plan{Trip: t}, ctx.Err()
	}
	return d, store
}

func retitle(title string) func(*trip.Trip) error {
	return func(t *trip.Trip) error { t.Title = title; return nil }
}

func TestEditIsSavedPlannedAndTold(t *testing.T) {
	d, store := open(triptest.Large(3, 2, 1), Inline{})
	told := 0
	d.OnTrip(func() { told++ })
	if err := d.Edit("rename the trip", retitle("Autumn walk")); err != nil {
		t.Fatal(err)
	}
	if d.Trip().Title != "Autumn walk" || told != 1 {
		t.Errorf("title %q, told %d times", d.Trip().Title, told)
	}
	if len(store.saved) != 1 || store.saved[0].Title != "Autumn walk" {
		t.Errorf("the store holds %d trips", len(store.saved))
	}
	if d.Plan() == nil || d.Plan().Trip.Title != "Autumn walk" {
		t.Error("the edit was not planned")
	}
	if d.UndoName() != "rename the trip" || d.RedoName() != "" {
		t.Errorf("undo %q, redo %q", d.UndoName(), d.RedoName())
	}
}

func TestEditThatFailsOrBreaksTheTripChangesNothing(t *testing.T) {
	d, store := open(triptest.Large(3, 2, 1), Inline{})
	before := d.Trip().Clone()
	refusal := errors.New("no")
	if err := d.Edit("x", func(t *trip.Trip) error { t.Title = "half done"; return refusal }); !errors.Is(err, refusal) {
		t.Errorf("got %v", err)
	}
	if err := d.Edit("x", func(t *trip.Trip) error { t.Crew[0].BodyMass = -1; return nil }); err == nil {
		t.Error("a member of negative mass was accepted")
	}
	if !trip.Equal(before, d.Trip()) || len(store.saved) != 0 || d.UndoName() != "" {
		t.Error("a refused edit left something behind")
	}
}

func TestMergedEditsUndoAsOne(t *testing.T) {
	d, _ := open(triptest.Large(3, 2, 1), Inline{})
	start := d.Trip().Title
	for _, title := range []string{"A", "Au", "Aut"} {
		if err := d.EditMerged("rename the trip", "title", retitle(title)); err != nil {
			t.Fatal(err)
		}
	}
	if err := d.Undo(); err != nil || d.Trip().Title != start {
		t.Errorf("one undo gives %q (%v), want %q", d.Trip().Title, err, start)
	}
	if err := d.Redo(); err != nil || d.Trip().Title != "Aut" {
		t.Errorf("redo gives %q (%v)", d.Trip().Title, err)
	}
	if err := d.EditMerged("rename the trip", "title", retitle("Autumn")); err != nil {
		t.Fatal(err)
	}
	if err := d.Undo(); err != nil || d.Trip().Title != "Aut" {
		t.Errorf("a step after redo is a step of its own, got %q", d.Trip().Title)
	}
}

// A document behaves as a list of trips with a finger on one of them.
func TestUndoAndRedoFollowAModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, store := open(triptest.Large(2, 1, 1), Inline{})
		titles, at := []string{d.Trip().Title}, 0
		t.Repeat(map[string]func(*rapid.T){
			"edit": func(t *rapid.T) {
				title := rapid.StringMatching(`[A-Z][a-z]{1,8}`).Draw(t, "title")
				if title == titles[at] {
					return
				}
				if err := d.Edit("rename", retitle(title)); err != nil {
					t.Fatal(err)
				}
				titles, at = append(titles[:at+1], title), at+1
			},
			"undo": func(t *rapid.T) {
				if err := d.Undo(); (err == nil) != (at > 0) {
					t.Fatalf("undo at %d of %d: %v", at, len(titles), err)
				}
				at = max(0, at-1)
			},
			"redo": func(t *rapid.T) {
				if err := d.Redo(); (err == nil) != (at < len(titles)-1) {
					t.Fatalf("redo at %d of %d: %v", at, len(titles), err)
				}
				at = min(len(titles)-1, at+1)
			},
			"": func(t *rapid.T) {
				if d.Trip().Title != titles[at] {
					t.Fatalf("title %q, want %q", d.Trip().Title, titles[at])
				}
				if n := len(store.saved); n > 0 && store.saved[n-1].Title != titles[at] {
					t.Fatalf("on disk %q, want %q", store.saved[n-1].Title, titles[at])
				}
			},
		})
	})
}

func TestCloseKeepsWhatCouldNotBeSaved(t *testing.T) {
	d, store := open(triptest.Large(3, 2, 1), Inline{})
	var heard []error
	d.OnSaved(func(err error) { heard = append(heard, err) })
	store.fail = errors.New("disk full")
	if err := d.Edit("rename", retitle("Autumn")); err != nil {
		t.Fatal(err)
	}
	if len(heard) != 1 || !errors.Is(heard[0], store.fail) {
		t.Errorf("the failure was told as %v", heard)
	}
	d.Close(func(err error) {
		if !errors.Is(err, store.fail) || store.closed {
			t.Errorf("close gives %v, store closed: %v", err, store.closed)
		}
	})
	if err := d.Edit("rename", retitle("Winter")); err != nil {
		t.Errorf("what could not be closed takes no edit: %v", err)
	}
	store.fail = nil
	closed := false
	d.Close(func(err error) {
		if closed = true; err != nil || !store.closed || len(store.saved) != 1 {
			t.Errorf("second close gives %v with %d trips saved", err, len(store.saved))
		}
	})
	if !closed {
		t.Error("nobody is told that it is closed")
	}
}

// Closing keeps nobody waiting: what is saved last goes on its way, and until it
// is there no edit is taken that would be lost.
func TestClosingDoesNotWait(t *testing.T) {
	queue := &later{}
	d, store := open(triptest.Large(3, 2, 1), queue)
	if err := d.Edit("rename", retitle("Autumn")); err != nil {
		t.Fatal(err)
	}
	closed := false
	d.Close(func(err error) { closed = err == nil })
	for name, change := range map[string]func() error{
		"edit": func() error { return d.Edit("rename", retitle("Lost")) }, "undo": d.Undo, "redo": d.Redo,
	} {
		if err := change(); err == nil || errors.Is(err, ErrNothing) {
			t.Errorf("%s while it is closed: %v", name, err)
		}
	}
	if closed || store.closed {
		t.Error("it is closed before the last edit is saved")
	}
	queue.runAll()
	if !closed || !store.closed || len(store.saved) != 1 || store.saved[0].Title != "Autumn" {
		t.Errorf("closed %v, %d trips saved", closed, len(store.saved))
	}
	if err := d.Edit("rename", retitle("Lost")); err == nil {
		t.Error("a closed document took an edit")
	}
}

// stuck is a store on a drive that does not answer.
type stuck struct {
	Store
	begun, answer chan struct{}
	closed        chan struct{}
}

func (s *stuck) Save(context.Context, *trip.Trip) error {
	close(s.begun)
	<-s.answer
	return errors.New("too late")
}
func (s *stuck) Close() error { close(s.closed); return nil }

func TestMovingDoesNotWaitForADriveThatHangs(t *testing.T) {
	screen := make(chan func(), 100)
	hung := &stuck{begun: make(chan struct{}), answer: make(chan struct{}), closed: make(chan struct{})}
	d := New(triptest.Large(3, 2, 1), hung, Threads{Post: func(f func()) { screen <- f }})
	var heard []error
	d.OnSaved(func(err error) { heard = append(heard, err) })
	if err := d.Edit("rename", retitle("Autumn")); err != nil {
		t.Fatal(err)
	}
	<-hung.begun
	_, store := open(triptest.Large(3, 2, 1), Inline{})
	d.MoveTo(store)
	if err := d.Edit("rename", retitle("Winter")); err != nil {
		t.Fatal(err)
	}
	closed := false
	d.Close(func(err error) { closed = err == nil })
	for !closed {
		(<-screen)()
	}
	if n := len(store.saved); n == 0 || store.saved[n-1].Title != "Winter" || !store.closed {
		t.Errorf("%d trips saved", n)
	}
	close(hung.answer)
	<-hung.closed
	for _, err := range heard {
		if err != nil {
			t.Errorf("what was given up is told: %v", err)
		}
	}
}

// Who saves elsewhere because the drive hangs on closing is not left with a trip
// that takes no edit and never closes: it is closed where it lives now.
func TestMovingWhileClosingClosesTheNewFile(t *testing.T) {
	screen := make(chan func(), 100)
	hung := &stuck{begun: make(chan struct{}), answer: make(chan struct{}), closed: make(chan struct{})}
	d := New(triptest.Large(3, 2, 1), hung, Threads{Post: func(f func()) { screen <- f }})
	if err := d.Edit("rename", retitle("Autumn")); err != nil {
		t.Fatal(err)
	}
	<-hung.begun
	told := 0
	d.Close(func(err error) {
		if told++; err != nil {
			t.Errorf("close gives %v", err)
		}
	})
	_, store := open(triptest.Large(3, 2, 1), Inline{})
	d.MoveTo(store)
	for late := time.After(10 * time.Second); told == 0; {
		select {
		case f := <-screen:
			f()
		case <-late:
			t.Fatal("nobody is told that it is closed")
		}
	}
	if n := len(store.saved); n == 0 || store.saved[n-1].Title != "Autumn" || !store.closed {
		t.Errorf("%d trips saved, closed: %v", n, store.closed)
	}
	close(hung.answer)
	<-hung.closed
	(<-screen)() // of the first try to close
	if told != 1 {
		t.Errorf("told %d times", told)
	}
}

// later keeps background work until the test runs it.
type later struct{ work []func() }

func (l *later) Background(work func()) { l.work = append(l.work, work) }
func (l *later) AfterFrame(f func())    { f() }
func (l *later) Screen(f func())        { f() }

func (l *later) runAll() {
	for len(l.work) > 0 {
		next := l.work[0]
		l.work = l.work[1:]
		next()
	}
}

func TestACopyHoldsEveryEditOrIsNotMade(t *testing.T) {
	d, store := open(triptest.Large(3, 2, 1), Inline{})
	told := errors.New("nothing")
	copyIt := func() { d.SaveCopy("copy.trip", func(err error) { told = err }) }
	store.fail = errors.New("disk full")
	if err := d.Edit("rename the trip", retitle("Autumn walk")); err != nil {
		t.Fatal(err)
	}
	if copyIt(); told == nil || !strings.Contains(told.Error(), "disk full") || len(store.copies) != 0 {
		t.Errorf("with an edit that is not on disk: %v, copies %v", told, store.copies)
	}
	store.fail = nil
	if copyIt(); told != nil || len(store.copies) != 1 || len(store.saved) != 1 || store.saved[0].Title != "Autumn walk" {
		t.Errorf("afterwards: %v, copies %v of %d savings", told, store.copies, len(store.saved))
	}
}

func TestOnlyTheNewestPlanIsShown(t *testing.T) {
	queue := &later{}
	d, _ := open(triptest.Large(3, 2, 1), queue)
	var shown []string
	d.OnPlan(func() { shown = append(shown, d.Plan().Trip.Title) })
	for _, title := range []string{"One", "Two", "Three"} {
		if err := d.Edit("rename", retitle(title)); err != nil {
			t.Fatal(err)
		}
	}
	if !d.Planning() {
		t.Error("a plan should be on its way")
	}
	queue.runAll()
	if !slices.Equal(shown, []string{"Three"}) || d.Planning() {
		t.Errorf("shown %v, still planning %v", shown, d.Planning())
	}
}

func TestSavesThatANewerOneReplacesAreSkipped(t *testing.T) {
	queue := &later{}
	d, store := open(triptest.Large(3, 2, 1), queue)
	for _, title := range []string{"One", "Two", "Three"} {
		if err := d.Edit("rename", retitle(title)); err != nil {
			t.Fatal(err)
		}
	}
	queue.runAll()
	if len(store.saved) != 1 || store.saved[0].Title != "Three" {
		t.Errorf("%d saves", len(store.saved))
	}
}

// With real goroutines nothing is lost and the race detector stays quiet.
func TestThreadsSaveTheLastEdit(t *testing.T) {
	screen := make(chan func(), 100)
	d, store := open(triptest.Large(3, 2, 1), Threads{Post: func(f func()) { screen <- f }})
	done := make(chan struct{})
	go func() {
		defer close(done)
		for _, title := range []string{"One", "Two", "Three", "Four", "Five"} {
			if err := d.Edit("rename", retitle(title)); err != nil {
				t.Error(err)
			}
		}
		closed := false
		d.Close(func(err error) {
			if closed = true; err != nil {
				t.Error(err)
			}
		})
		for !closed {
			(<-screen)()
		}
	}()
	<-done
	if n := len(store.saved); n == 0 || store.saved[n-1].Title != "Five" {
		t.Errorf("%d trips saved", n)
	}
}

// Noting what was done is saved and can be undone, and leaves the plan alone.
func TestProgressIsSavedWithoutPlanningAnew(t *testing.T) {
	d, store := open(triptest.Large(3, 6, 1), Inline{})
	d.Replan()
	plans := 0
	d.OnPlan(func() { plans++ })
	point := d.Trip().Points[0].ID
	if err := d.Edit("note that a box did not come", func(t *trip.Trip) error {
		t.Progress.MissingBoxes = append(t.Progress.MissingBoxes, point)
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if plans != 0 || len(store.saved) != 1 {
		t.Errorf("%d plans, saved %d times", plans, len(store.saved))
	}
	if !slices.Contains(d.Plan().Trip.Progress.MissingBoxes, point) {
		t.Error("the plan does not know what was done")
	}
	if err := d.Undo(); err != nil || plans != 0 || len(d.Plan().Trip.Progress.MissingBoxes) != 0 {
		t.Errorf("after undo %d plans, progress %+v, %v", plans, d.Plan().Trip.Progress, err)
	}
	if err := d.Edit("rename the trip", retitle("Other")); err != nil || plans != 1 {
		t.Errorf("an edit of the trip made %d plans, %v", plans, err)
	}
}

// Taking a thing out of the trip takes what was noted of it along.
func TestRemovingAThingTidiesProgress(t *testing.T) {
	made := triptest.Large(3, 6, 1)
	made.Progress.MissingBoxes = []trip.PointID{made.Points[0].ID}
	d, _ := open(made, Inline{})
	if err := d.Edit("remove the points", func(t *trip.Trip) error { t.Points = nil; return nil }); err != nil {
		t.Fatal(err)
	}
	if len(d.Trip().Progress.MissingBoxes) != 0 {
		t.Error("a box is missing at a point that is gone")
	}
}

func TestWorkInTheBackgroundEndsOnTheScreen(t *testing.T) {
	queue := &later{}
	d, _ := open(triptest.Large(3, 2, 1), queue)
	var steps []string
	d.Background(func() { steps = append(steps, "work") }, func() { steps = append(steps, "done") })
	if len(steps) != 0 {
		t.Fatalf("worked on the screen: %v", steps)
	}
	queue.runAll()
	if !slices.Equal(steps, []string{"work", "done"}) {
		t.Errorf("got %v", steps)
	}
}

// Steps taken together are one step of undo, or none at all.
func TestTogetherIsOneStep(t *testing.T) {
	d, store := open(triptest.Large(3, 2, 1), Inline{})
	was := d.Trip()
	told := 0
	d.OnTrip(func() { told++ })
	rename := func(name string) error {
		return d.Edit("name it "+name, retitle(name))
	}
	err := d.Together(func() error { return errors.Join(rename("one"), rename("two"), rename("three")) })
	if err != nil || d.Trip().Title != "three" || d.UndoName() != "name it three" || told < 3 || len(store.saved) != 1 {
		t.Fatalf("%v: the trip is %q, undo takes back %q, told %d times", err, d.Trip().Title, d.UndoName(), told)
	}
	refused := errors.New("no")
	if err := d.Together(func() error { return errors.Join(rename("four"), refused) }); !errors.Is(err, refused) || d.Trip().Title != "three" || d.UndoName() != "name it three" {
		t.Errorf("%v: a step that failed left %q and the undo %q", err, d.Trip().Title, d.UndoName())
	}
	if err := d.Undo(); err != nil || !trip.Equal(d.Trip(), was) || d.UndoName() != "" {
		t.Errorf("one undo left %q (%v)", d.Trip().Title, err)
	}
	if err := d.Redo(); err != nil || d.Trip().Title != "three" {
		t.Errorf("redo gave %q (%v)", d.Trip().Title, err)
	}
}
