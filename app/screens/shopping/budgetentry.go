package shopping

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"
)

// budgetEntry is the field of the budget: stored with Return or when it is
// left, as it was after Escape.
type budgetEntry struct {
	widget.Entry
	store   func(text string) error
	shown   string
	focused bool
}

func newBudgetEntry(store func(string) error) *budgetEntry {
	e := &budgetEntry{store: store}
	e.ExtendBaseWidget(e)
	e.SetPlaceHolder(lang.L("none set"))
	e.OnSubmitted = func(string) { e.commit() }
	return e
}

// show fills the field; what is being typed stays.
func (e *budgetEntry) show(text string) {
	typing := e.focused && e.Text != e.shown
	e.shown = text
	if !typing {
		e.SetText(text)
	}
}

// commit stores what was typed and tells whether it could.
func (e *budgetEntry) commit() bool {
	text := strings.TrimSpace(e.Text)
	return text == e.shown || e.store(text) == nil
}

// FocusGained notes that somebody types here.
func (e *budgetEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
}

// FocusLost stores what was typed.
func (e *budgetEntry) FocusLost() {
	e.Entry.FocusLost()
	e.focused = false
	if !e.commit() {
		e.SetText(e.shown)
	}
}

// TypedKey takes back what was typed with Escape.
func (e *budgetEntry) TypedKey(event *fyne.KeyEvent) {
	if event.Name == fyne.KeyEscape {
		e.SetText(e.shown)
		return
	}
	e.Entry.TypedKey(event)
}
