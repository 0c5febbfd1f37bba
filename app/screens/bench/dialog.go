package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// NewDialog makes a dialog over the window with the buttons below its content.
// Everything in it that can have the keyboard must be one of this file's, for
// the toolkit's own swallow the Escape that leaves a dialog.
func NewDialog(over fyne.Window, title string, content fyne.CanvasObject, buttons ...*DialogButton) *dialog.CustomDialog {
	d := dialog.NewCustomWithoutButtons(title, content, over)
	objects := make([]fyne.CanvasObject, len(buttons))
	for i, button := range buttons {
		objects[i] = button
	}
	d.SetButtons(objects)
	return d
}

// LeaveByEscape closes the dialog on top of a canvas if the key is Escape, and
// tells whether it was.
func LeaveByEscape(canvas fyne.Canvas, event *fyne.KeyEvent) bool {
	if event.Name != fyne.KeyEscape || canvas == nil {
		return false
	}
	if top := canvas.Overlays().Top(); top != nil {
		top.Hide()
	}
	return true
}

func leaves(from fyne.CanvasObject, event *fyne.KeyEvent) bool {
	return LeaveByEscape(fyne.CurrentApp().Driver().CanvasForObject(from), event)
}

// DialogButton is a button of a dialog, which Escape leaves.
type DialogButton struct{ widget.Button }

// NewDialogButton makes one.
func NewDialogButton(label string, tapped func()) *DialogButton {
	b := &DialogButton{widget.Button{Text: label, OnTapped: tapped}}
	b.ExtendBaseWidget(b)
	return b
}

// First makes it the one that does what the dialog is for.
func (b *DialogButton) First() *DialogButton {
	b.Importance = widget.HighImportance
	return b
}

// TypedKey leaves with Escape.
func (b *DialogButton) TypedKey(event *fyne.KeyEvent) {
	if !leaves(b, event) {
		b.Button.TypedKey(event)
	}
}

// DialogCheck is a box of a dialog, which Escape leaves.
type DialogCheck struct{ widget.Check }

// NewDialogCheck makes one.
func NewDialogCheck(label string, changed func(bool)) *DialogCheck {
	c := &DialogCheck{widget.Check{Text: label, OnChanged: changed}}
	c.ExtendBaseWidget(c)
	return c
}

// TypedKey leaves with Escape.
func (c *DialogCheck) TypedKey(event *fyne.KeyEvent) {
	if !leaves(c, event) {
		c.Check.TypedKey(event)
	}
}

// DialogEntry is a field of a dialog, which Escape leaves.
type DialogEntry struct{ widget.Entry }

// NewDialogEntry makes one.
func NewDialogEntry() *DialogEntry {
	e := &DialogEntry{}
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey leaves with Escape.
func (e *DialogEntry) TypedKey(event *fyne.KeyEvent) {
	if !leaves(e, event) {
		e.Entry.TypedKey(event)
	}
}

// TypedRune types a letter. A space in front of all is none that anybody wants:
// it is the key that pressed the button behind the dialog.
func (e *DialogEntry) TypedRune(letter rune) {
	if letter == ' ' && e.SelectedText() == e.Text {
		return
	}
	e.Entry.TypedRune(letter)
}

// DialogList is a list of a dialog, which Escape leaves.
type DialogList struct{ widget.List }

// NewDialogList makes one.
func NewDialogList(length func() int, create func() fyne.CanvasObject, update func(widget.ListItemID, fyne.CanvasObject)) *DialogList {
	l := &DialogList{widget.List{Length: length, CreateItem: create, UpdateItem: update}}
	l.ExtendBaseWidget(l)
	return l
}

// TypedKey leaves with Escape.
func (l *DialogList) TypedKey(event *fyne.KeyEvent) {
	if !leaves(l, event) {
		l.List.TypedKey(event)
	}
}
