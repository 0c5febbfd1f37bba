package window

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// message is the line that says why something could not be done, or that it
// was. It takes no room while it says nothing, and as many lines as it needs.
type message struct {
	Content string
	note    *look.Note
}

func newMessage() *message {
	m := &message{note: look.NewNote()}
	m.note.Hide()
	return m
}

// say shows a text; empty text takes the last one back.
func (m *message) say(text string, tone fyne.ThemeColorName) {
	m.Content = text
	m.note.Set(text, tone, false)
	if text == "" {
		m.note.Hide()
	} else {
		m.note.Show()
	}
}
