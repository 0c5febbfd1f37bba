package benchtest

import (
	"fyne.io/fyne/v2"
)

// Keyboard is what has the keyboard.
func (d *Desk) Keyboard() fyne.Focusable {
	d.T.Helper()
	on := d.Window.Canvas().Focused()
	if on == nil {
		d.T.Fatal("nothing has the keyboard")
	}
	return on
}

// Press presses keys, each on what has the keyboard by then.
func (d *Desk) Press(names ...fyne.KeyName) {
	d.T.Helper()
	for _, name := range names {
		d.Keyboard().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

// Type types letters, each into what has the keyboard by then.
func (d *Desk) Type(text string) {
	d.T.Helper()
	for _, letter := range text {
		d.Keyboard().TypedRune(letter)
	}
}

// Overwrite puts a text in the place of all that the field with the keyboard
// holds, such as an open cell of a table.
func (d *Desk) Overwrite(text string) {
	d.T.Helper()
	field, ok := d.Keyboard().(interface{ SetText(string) })
	if !ok {
		d.T.Fatalf("the keyboard is at %T, where no text can be typed", d.Keyboard())
	}
	field.SetText("")
	d.Type(text)
}

// Do runs one of the screen's actions.
func (d *Desk) Do(name string) {
	d.T.Helper()
	for _, action := range d.screen.Actions() {
		if action.Name == name {
			action.Do()
			return
		}
	}
	d.T.Fatalf("there is no action %q", name)
}

// WantUndo fails unless undo would take back the edit of a name.
func (d *Desk) WantUndo(name string) {
	d.T.Helper()
	if have := d.Document.UndoName(); have != name {
		d.T.Errorf("undo is called %q, want %q (said: %s)", have, name, d.Said)
	}
}
