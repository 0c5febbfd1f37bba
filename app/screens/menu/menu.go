// Package menu is the screen of the meals: a grid of days and meals for each
// cook group, beside it what the chosen slot serves to whom and what other
// recipes would change, and below the need of each member against their food.
package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// Screen is the menu on the screen.
type Screen struct {
	bench   *bench.Bench
	seen    *overview
	board   *board
	side    *side
	food    *foodPicture
	beside  *bench.Part  // the side
	below   *bench.Part  // the picture of need and food
	group   trip.GroupID // shown; 0: all
	groups  *widget.Select
	drags   *widget.Select
	filler  *filler
	held    *clipboard
	pending *pending // what the next slot chosen is for
	missing *fyne.Container
	content fyne.CanvasObject

	modifiers func() fyne.KeyModifier // held down now
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, modifiers: keyModifiers}
	s.look()
	s.board = newBoard(hears{
		facts: func(k slot) facts { return s.seen.facts(k) }, selected: s.selected, choose: s.choose,
		search: func(letter rune) { s.side.search(string(letter)) }, erase: s.onSlot(s.clear), lock: s.onSlot(s.lock),
		leave: s.leavePending, shortcut: s.typedShortcut, dropped: func(from, to slot, how transfer) { _ = s.transfer(from, to, how) },
		refusal: s.refusal, how: s.how,
	})
	s.side = newSide(s)
	s.food = newFoodPicture(s)
	s.groups = widget.NewSelect(nil, s.chooseGroup)
	s.drags = widget.NewSelect([]string{lang.L("Dragging swaps"), lang.L("Dragging moves"), lang.L("Dragging copies")}, nil)
	s.drags.SetSelectedIndex(0)
	s.filler = newFiller(s)
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("What is eaten when?"))), wide(s.groups, 130), wide(s.drags, 160))
	s.missing = s.noRecipes()
	s.beside = bench.NewPart(s.side.content, s.onChosen(s.side.show), s.side)
	s.below = bench.NewPart(s.food.content, s.onChosen(s.food.show))
	middle := container.NewVSplit(container.NewStack(s.board, s.missing), s.below.Place)
	middle.Offset = 0.72
	split := bench.Beside(middle, s.beside.Place, 0.66, 560)
	s.content = bench.Headed(split, head, s.filler.content)
	b.InSteps(s.board.sheet, s.beside, s.below)
	return s
}

// noRecipes says what comes here where there is nothing to serve yet.
func (s *Screen) noRecipes() *fyne.Container {
	words := look.NewParagraph(lang.L("Here every meal of every day gets its dishes. They are chosen from your recipes, and there are none yet."), look.Body, look.Ink)
	words.Align = fyne.TextAlignCenter
	button := widget.NewButton(lang.L("Go to the recipes"), func() { s.bench.Document.GoTo(document.Place{Screen: "recipes"}) })
	button.Importance = widget.HighImportance
	return container.NewBorder(container.NewVBox(words, container.NewCenter(button)), nil, nil, nil)
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "menu" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Menu") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// look reads trip and plan anew.
func (s *Screen) look() {
	s.seen = newOverview(s.bench.Trip(), s.bench.Plan(), !s.bench.Document.Planning())
}

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	s.look()
	t := s.seen.trip
	if t.Group(s.group) == nil {
		s.group = 0
	}
	s.showGroups()
	s.filler.show()
	show(s.missing, len(t.Recipes) == 0)
	show(s.board, len(t.Recipes) > 0)
	first := len(s.board.rows) == 0
	s.board.show(s.rows(), s.columns())
	if first {
		s.toFirstMeal()
	}
	s.beside.Refresh()
	s.below.Refresh()
}

// onChosen does something with the slot under the cursor.
func (s *Screen) onChosen(do func(slot)) func() {
	return func() {
		if k, ok := s.board.selected(); ok {
			do(k)
		}
	}
}

// toFirstMeal puts the cursor on the first slot that somebody eats.
func (s *Screen) toFirstMeal() {
	for row := range s.board.rows {
		if k, ok := s.board.slot(place{row, 0}); ok && s.seen.eaten(k) {
			s.board.cursor = place{row, 0}
			s.board.sheet.placeMarks()
			return
		}
	}
}

// selected hears that the cursor came to a slot.
func (s *Screen) selected(k slot, tapped bool) {
	if s.pending != nil && tapped {
		s.complete(k)
		return
	}
	s.side.show(k)
	s.food.show(k)
}

// choose is Enter: it ends a transfer that waits, else opens the choice.
func (s *Screen) choose() {
	if k, ok := s.board.selected(); ok && s.pending != nil {
		s.complete(k)
		return
	}
	s.side.search("")
}

// onSlot makes a command of an edit of the slot under the cursor.
func (s *Screen) onSlot(edit func(slot) error) func() {
	return func() {
		if k, ok := s.board.selected(); ok {
			_ = edit(k)
		}
	}
}

func (s *Screen) typedShortcut(shortcut fyne.Shortcut) {
	k, ok := s.board.selected()
	if !ok {
		return
	}
	switch shortcut.(type) {
	case *fyne.ShortcutCopy:
		s.take(k, false)
	case *fyne.ShortcutCut:
		s.take(k, true)
	case *fyne.ShortcutPaste:
		_ = s.paste(k)
	}
}

// Waiting counts what must be fixed or looked at in the meals.
func (s *Screen) Waiting() int {
	n := bench.CountFindings(s.bench, findings.Menu, findings.Portions, findings.Cooking)
	if p := s.bench.Plan(); p != nil {
		for _, f := range p.Findings {
			if f.Stage == findings.Spoilage && f.Severity != findings.Note && f.Place.Day > 0 {
				n++
			}
		}
	}
	return n
}

// Focus gives the keyboard to the slots.
func (s *Screen) Focus() { s.bench.Window.Canvas().Focus(s.board.sheet) }

// GoTo puts the cursor on the slot of a place, or on its day and member.
func (s *Screen) GoTo(at findings.Place) {
	k, had := s.board.selected()
	if at.Group == 0 {
		if m := s.seen.trip.Member(at.Member); m != nil {
			at.Group = m.Group
		}
	}
	if at.Group != 0 {
		k.group = at.Group
		if s.group != 0 && s.group != at.Group {
			s.group = at.Group
			s.Refresh()
		}
	}
	if at.Day > 0 {
		k.day = at.Day
	}
	if at.Meal != "" {
		k.meal = at.Meal
	}
	if to, ok := s.board.placeOf(k); ok && had {
		s.board.moveTo(to, false)
	}
	if at.Meal == "" && at.Member != 0 {
		s.food.chooseMember(at.Member)
	}
	s.side.showMeal()
	s.board.sheet.focus()
}

// Commit ends what is being typed; the menu stores every step as it is made.
func (s *Screen) Commit() bool {
	s.leavePending()
	return true
}
