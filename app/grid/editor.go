package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// step is where the cursor goes after an edit: rows up or down, or to the next
// cell to the right or left that can be edited.
type step struct{ rows, columns int }

// editor is the one entry that is laid over the cell being edited.
type editor struct {
	widget.Entry
	commit func(step)
	cancel func()
	offers *offers
	shift  bool
}

func newEditor(commit func(step), cancel func()) *editor {
	e := &editor{commit: commit, cancel: cancel}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) { e.commit(step{rows: 1}) }
	e.Hide()
	return e
}

func (e *editor) open() bool { return e.Visible() }

// AcceptsTab keeps Tab in the table: it stores and goes to the next cell.
func (e *editor) AcceptsTab() bool { return true }

// KeyDown notes the shift key.
func (e *editor) KeyDown(event *fyne.KeyEvent) {
	e.shift = e.shift || isShift(event)
	e.Entry.KeyDown(event)
}

// KeyUp notes the shift key.
func (e *editor) KeyUp(event *fyne.KeyEvent) {
	e.shift = e.shift && !isShift(event)
	e.Entry.KeyUp(event)
}

func isShift(event *fyne.KeyEvent) bool {
	return event.Name == desktop.KeyShiftLeft || event.Name == desktop.KeyShiftRight
}

// TypedKey leaves the cell with Escape, Tab, Up and Down.
func (e *editor) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyEscape:
		e.cancel()
	case fyne.KeyTab:
		if e.shift {
			e.commit(step{columns: -1})
			return
		}
		e.commit(step{columns: 1})
	case fyne.KeyDown:
		e.down(1)
	case fyne.KeyUp:
		e.down(-1)
	default:
		e.Entry.TypedKey(event)
	}
}

// down chooses among what is offered, else it stores and leaves the cell.
func (e *editor) down(rows int) {
	if e.offers.Visible() {
		e.offers.move(rows)
		return
	}
	e.commit(step{rows: rows})
}

// FocusLost stores what was typed when the user clicks elsewhere.
func (e *editor) FocusLost() {
	e.Entry.FocusLost()
	if e.Visible() {
		e.commit(step{})
	}
}
