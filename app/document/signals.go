package document

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
)

// Place is where on the screens something is: a screen by its name and the
// thing on it. Screens jump to each other through it, never directly.
type Place struct {
	Screen string
	Paper  string // on the screen that prints: which paper to show
	findings.Place
}

// listeners is who wants to know. They are called on the screen's goroutine.
type listeners struct {
	trip     []func()
	plan     []func()
	planning []func(stage prose.Text)
	saved    []func(error)
	place    []func(Place)
}

// OnTrip calls f after every change of the trip, undo included.
func (d *Document) OnTrip(f func()) { d.listeners.trip = append(d.listeners.trip, f) }

// OnPlan calls f when a new plan is there, or planning was cancelled.
func (d *Document) OnPlan(f func()) { d.listeners.plan = append(d.listeners.plan, f) }

// OnPlanning calls f while a plan is being made, with the stage it is at.
func (d *Document) OnPlanning(f func(stage prose.Text)) {
	d.listeners.planning = append(d.listeners.planning, f)
}

// OnSaved calls f after every attempt to save, with what went wrong.
func (d *Document) OnSaved(f func(error)) { d.listeners.saved = append(d.listeners.saved, f) }

// OnPlace calls f when somebody wants to go to a place.
func (d *Document) OnPlace(f func(Place)) { d.listeners.place = append(d.listeners.place, f) }

// GoTo asks whoever shows the screens to go to a place.
func (d *Document) GoTo(place Place) {
	for _, f := range d.listeners.place {
		f(place)
	}
}

func (l *listeners) tellTrip() { call(l.trip) }
func (l *listeners) tellPlan() { call(l.plan) }

func call(list []func()) {
	for _, f := range list {
		f()
	}
}

func (l *listeners) tellPlanning(stage prose.Text) {
	for _, f := range l.planning {
		f(stage)
	}
}

func (l *listeners) tellSaved(err error) {
	for _, f := range l.saved {
		f(err)
	}
}
