package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
)

func control(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
}

// Actions are the screen's commands. Copy and paste have their usual keys in
// the grid only, so that texts keep theirs.
func (s *Screen) Actions() []bench.Action {
	onSlot := func(do func(slot)) func() {
		return func() {
			if k, ok := s.board.selected(); ok {
				do(k)
			}
		}
	}
	return []bench.Action{
		{Name: lang.L("Fill the open slots"), Do: func() { s.filler.start(false) }},
		{Name: lang.L("Choose all dishes anew that are not locked"), Do: func() { s.filler.start(true) }},
		{Name: lang.L("Take out all dishes that are not locked"), Do: s.emptyAll},
		{Name: lang.L("Choose a dish"), Shortcut: control(fyne.KeyD), Do: func() { s.side.search("") }},
		{Name: lang.L("Lock or unlock the slot"), Shortcut: control(fyne.KeyL), Do: s.onSlot(s.lock)},
		{Name: lang.L("Keep what is proposed"), Do: s.onSlot(s.keep)},
		{Name: lang.L("Clear the slot"), Do: s.onSlot(s.clear)},
		{Name: lang.L("Copy the slot"), Do: onSlot(func(k slot) { s.take(k, false) })},
		{Name: lang.L("Cut the slot"), Do: onSlot(func(k slot) { s.take(k, true) })},
		{Name: lang.L("Paste into the slot"), Do: s.onSlot(s.paste)},
		{Name: lang.L("Swap with another slot"), Do: func() { s.wait(swapping) }},
		{Name: lang.L("Move to another slot"), Do: func() { s.wait(moving) }},
		{Name: lang.L("Copy to another slot"), Do: func() { s.wait(copying) }},
		{Name: lang.L("Next slot with something wrong"), Shortcut: control(fyne.KeyJ), Do: s.nextTrouble},
		{Name: lang.L("Next cook group"), Do: s.nextGroup},
	}
}

// nextTrouble goes to the next slot, by day, with something that must be
// fixed or looked at.
func (s *Screen) nextTrouble() {
	rows, days := len(s.board.rows), len(s.board.columns)
	if rows == 0 || days == 0 {
		return
	}
	start := s.board.cursor.column*rows + s.board.cursor.row
	for step := 1; step <= rows*days; step++ {
		i := (start + step) % (rows * days)
		at := place{row: i % rows, column: i / rows}
		k, _ := s.board.slot(at)
		if severity := s.seen.facts(k).severity; severity == findings.MustFix || severity == findings.LookAt {
			s.board.moveTo(at, false)
			s.side.showMeal()
			return
		}
	}
	s.bench.Say(lang.L("Nothing is wrong in the slots shown."))
}

func (s *Screen) nextGroup() {
	if n := len(s.groups.Options); n > 1 {
		s.groups.SetSelectedIndex((s.groups.SelectedIndex() + 1) % n)
	}
}
