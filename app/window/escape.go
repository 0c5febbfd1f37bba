package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// leaveByEscape closes the dialog on top with Escape, which the toolkit leaves
// to the program. A field of a dialog that has the keyboard hears the key
// itself.
func (w *Workbench) leaveByEscape() {
	w.window.Canvas().SetOnTypedKey(func(event *fyne.KeyEvent) {
		if top := w.window.Canvas().Overlays().Top(); event.Name == fyne.KeyEscape && top != nil {
			top.Hide()
		}
	})
}

// dialogEntry is a field of a dialog, which Escape leaves.
type dialogEntry struct {
	widget.Entry
	leave func()
}

func newDialogEntry(leave func()) *dialogEntry {
	e := &dialogEntry{leave: leave}
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey leaves with Escape.
func (e *dialogEntry) TypedKey(event *fyne.KeyEvent) {
	if event.Name == fyne.KeyEscape {
		e.leave()
		return
	}
	e.Entry.TypedKey(event)
}

// TypedRune types a letter. A space in front of all is none that anybody wants:
// it is the key that pressed the button behind the dialog.
func (e *dialogEntry) TypedRune(letter rune) {
	if letter == ' ' && e.SelectedText() == e.Text {
		return
	}
	e.Entry.TypedRune(letter)
}

// dialogList is a list of a dialog, which Escape leaves.
type dialogList struct {
	widget.List
	leave func()
}

func newDialogList(length func() int, create func() fyne.CanvasObject, update func(widget.ListItemID, fyne.CanvasObject)) *dialogList {
	l := &dialogList{List: widget.List{Length: length, CreateItem: create, UpdateItem: update}}
	l.ExtendBaseWidget(l)
	return l
}

// TypedKey leaves with Escape.
func (l *dialogList) TypedKey(event *fyne.KeyEvent) {
	if event.Name == fyne.KeyEscape {
		l.leave()
		return
	}
	l.List.TypedKey(event)
}
