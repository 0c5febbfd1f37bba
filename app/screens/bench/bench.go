// Package bench is what every screen is given to work with, and the few
// pieces they all build from, so that each screen only says what is its own.
package bench

import (
	"fyne.io/fyne/v2"

	"sumpter/app/document"
	"sumpter/app/written"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Bench joins a screen to the open trip and to the window around it.
type Bench struct {
	Document *document.Document
	// Window is for dialogs that need a file name or confirm what cannot be undone.
	Window fyne.Window
	// Say shows one line to the user: why something could not be done. Empty
	// text takes it back.
	Say func(text string)
	// AddTable asks for a file with a table of members, foods, gear or recipes
	// and adds them to the trip, in one step of undo.
	AddTable func()
	// AddCopied does so with the table that was copied.
	AddCopied func()
	// TakeRecipes asks for another trip and takes recipes of it, TakeDemoRecipes
	// takes those of the demo.
	TakeRecipes, TakeDemoRecipes func()
	// Clipboard gives the system's clipboard.
	Clipboard func() fyne.Clipboard
	// Steps are those of the screen that is being made; nil: it comes all at once.
	Steps *Steps
	// Calendar gives the date of today; nil: the system's.
	Calendar func() units.Date

	rests []*restOf // asked for last
}

// Trip is the trip as it is now; it must not be changed.
func (b *Bench) Trip() *trip.Trip { return b.Document.Trip() }

// Plan is the newest plan, nil before the first or if the trip cannot be
// planned.
func (b *Bench) Plan() *plan.Plan {
	p := b.Document.Plan()
	if p == nil || p.Refused() {
		return nil
	}
	return p
}

// Units is the system the leader reads.
func (b *Bench) Units() units.System { return b.Trip().Units }

// Edit changes the trip in one step of undo and shows why if it cannot be.
func (b *Bench) Edit(name string, change func(t *trip.Trip) error) error {
	err := b.Document.Edit(name, change)
	if err != nil {
		b.Say(written.Error(err))
	} else {
		b.Say("")
	}
	return err
}

// Together makes the edits of steps one step of undo, all of them or none.
func (b *Bench) Together(steps func() error) error { return b.Document.Together(steps) }
