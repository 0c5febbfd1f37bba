package bench

import (
	"fyne.io/fyne/v2"

	"sumpter/domain/findings"
)

// Screen is one place of the work. The window shows one at a time.
type Screen interface {
	// Name is the stable name places use: "crew".
	Name() string
	// Title is what the navigation shows, in the reader's language.
	Title() string
	// Content is what is shown in the middle.
	Content() fyne.CanvasObject
	// Refresh shows the trip and the plan as they are now. It is called only
	// while the screen is shown, and when it comes to be shown.
	Refresh()
	// Waiting counts what waits here for the leader, shown beside the title.
	Waiting() int
	// Focus gives the keyboard to the work of the screen.
	Focus()
	// GoTo puts the cursor on a thing.
	GoTo(place findings.Place)
	// Commit stores what is being typed; false keeps the user here.
	Commit() bool
	// Actions are the screen's commands, for the menu and the list of actions.
	Actions() []Action
}

// Action is one command: in the menu, in the list of all actions, by its key.
type Action struct {
	Name     string
	Shortcut fyne.Shortcut // nil: none
	Do       func()
	Above    bool // also while a dialog is open: it minds the dialog itself
}
