package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// LongText is a text of several lines that is stored when the keyboard leaves
// it, with Tab as well; Escape brings back what is stored.
type LongText struct {
	widget.Entry
	of    string // whose text it is, empty: nobody's
	shown string
	keep  func(of, text string) error
}

// NewLongText makes an empty one. Keep stores what was typed for whomever it
// was shown.
func NewLongText(hint string, keep func(of, text string) error) *LongText {
	l := &LongText{keep: keep}
	l.MultiLine, l.Wrapping = true, fyne.TextWrapWord
	l.ExtendBaseWidget(l)
	l.SetPlaceHolder(hint)
	return l
}

// ShowOf shows the text of a thing; what is being typed into it stays.
func (l *LongText) ShowOf(of, text string) {
	if l.of == of && l.shown == text {
		return
	}
	l.of, l.shown = of, text
	l.SetText(text)
}

// Commit keeps what was typed; it tells whether that could be.
func (l *LongText) Commit() bool {
	if l.Text == l.shown || l.of == "" {
		return true
	}
	before := l.shown
	l.shown = l.Text
	if l.keep(l.of, l.Text) != nil {
		l.shown = before
		return false
	}
	return true
}

// AcceptsTab lets Tab go on to the next field: the toolkit would keep it.
func (l *LongText) AcceptsTab() bool { return false }

// FocusLost stores what was typed.
func (l *LongText) FocusLost() {
	l.Entry.FocusLost()
	l.Commit()
}

// TypedKey goes back to what is stored with Escape.
func (l *LongText) TypedKey(event *fyne.KeyEvent) {
	if event.Name == fyne.KeyEscape {
		l.SetText(l.shown)
		return
	}
	l.Entry.TypedKey(event)
}
