package packing

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// searchEntry finds a bag by its code while it is typed. Return, Down and
// Escape go back to the list.
type searchEntry struct {
	widget.Entry
	screen *Screen
}

func newSearchEntry(s *Screen) *searchEntry {
	e := &searchEntry{screen: s}
	e.ExtendBaseWidget(e)
	e.SetPlaceHolder(lang.L("Find a bag: type its code"))
	e.OnChanged = s.findCode
	e.OnSubmitted = func(string) { e.leave() }
	return e
}

func (s *Screen) findCode(text string) {
	if s.work == nil {
		return
	}
	bag, why := s.work.find(text)
	if s.view == byStow {
		switch {
		case bag != nil && plainCode(text) == plainCode(bag.Code):
			s.search.SetText("") // ready for the next
			s.scan(bag)
		case why != "" && endsInLetter(plainCode(text)):
			s.search.SetText("")
			s.judge(look.Brick, why)
		}
		return
	}
	s.bench.Say(why)
	if bag != nil {
		s.showBag(bag.Key)
	}
}

func (e *searchEntry) leave() {
	e.SetText("")
	e.screen.focus(e.screen.list)
}

// TypedKey leaves with Escape and Down.
func (e *searchEntry) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyEscape, fyne.KeyDown:
		e.leave()
	default:
		e.Entry.TypedKey(event)
	}
}
