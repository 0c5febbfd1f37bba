package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
)

// pending is a transfer that waits for the other slot.
type pending struct {
	from slot
	how  transfer
}

// how is what a drop does: Ctrl copies, Shift moves, else what is chosen
// above the grid.
func (s *Screen) how() transfer {
	held := s.modifiers()
	switch {
	case held&fyne.KeyModifierShortcutDefault != 0:
		return copying
	case held&fyne.KeyModifierShift != 0:
		return moving
	}
	return []transfer{swapping, moving, copying}[max(0, s.drags.SelectedIndex())]
}

// wait lets the next slot chosen be the other end of a transfer.
func (s *Screen) wait(how transfer) {
	k, ok := s.board.selected()
	if !ok || len(s.seen.dishes(k)) == 0 {
		s.bench.Say(lang.L("Nothing is served there."))
		return
	}
	s.pending = &pending{from: k, how: how}
	s.bench.Say(waitWords(how, s.namesOfDishes(s.seen.dishes(k)), k.words(s.seen.trip)))
	s.board.sheet.focus()
}

// waitWords says what waits for the other slot.
func waitWords(how transfer, names, from string) string {
	data := map[string]any{"Names": names, "Slot": from}
	switch how {
	case copying:
		return lang.X("menu-wait-copy", "Copy {{.Names}} ({{.Slot}}): now choose the other slot, tap it, or go there and press Enter. Escape stops.", data)
	case moving:
		return lang.X("menu-wait-move", "Move {{.Names}} ({{.Slot}}): now choose the other slot, tap it, or go there and press Enter. Escape stops.", data)
	default:
		return lang.X("menu-wait-swap", "Swap {{.Names}} ({{.Slot}}): now choose the other slot, tap it, or go there and press Enter. Escape stops.", data)
	}
}

func (s *Screen) complete(to slot) {
	p := *s.pending
	s.leavePending()
	if p.from != to {
		_ = s.transfer(p.from, to, p.how)
	}
	s.side.show(to)
	s.food.show(to)
}

func (s *Screen) leavePending() {
	if s.pending != nil {
		s.pending = nil
		s.bench.Say("")
	}
}

// keyModifiers asks the desktop which keys are held down.
func keyModifiers() fyne.KeyModifier {
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok {
		return d.CurrentKeyModifiers()
	}
	return 0
}
