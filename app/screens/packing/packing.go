// Package packing is the screen of packing night: the bags in the plan's
// order, big enough to read across a table, ticked off with one key; what the
// scale shows and what that changes; and beside it the label of the chosen bag
// and the pack or box it goes into.
package packing

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/exporter/print/prints"
)

// Screen is packing night on the screen.
type Screen struct {
	bench *bench.Bench
	work  *work // nil without a plan
	view  view

	left, time *look.Text
	search     *searchEntry
	verdict    *look.Text // what came of a code in the final check
	views      *widget.RadioGroup
	onlyLeft   *widget.Check
	clean      *fyne.Container
	cleanText  *look.Paragraph
	list       *list
	label      *label
	evening    *fyne.Container
	empty      *fyne.Container
	content    fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, left: look.NewText("", look.Night, look.Ink), time: look.NewText("", look.Figure, look.Quiet)}
	s.left.Bold = true
	s.list = newList(func(r row) rowLook { return s.work.draw(r) })
	s.list.onSelect, s.list.onTick = s.choose, s.tick
	s.list.onOpen = s.openScale
	s.list.onDigit = func(digit rune) {
		s.search.SetText(string(digit))
		s.search.CursorColumn = 1
		s.focus(s.search)
	}
	s.search = newSearchEntry(s)
	s.label = newLabel(s)
	s.views = widget.NewRadioGroup(viewWords(), nil)
	s.views.Horizontal, s.views.Required, s.views.Selected = true, true, lang.L("Bag by bag")
	s.views.OnChanged = func(word string) { s.showView(view(slices.Index(viewWords(), word))) }
	s.verdict = look.NewText("", look.Figure, look.Spruce)
	s.verdict.Bold = true
	s.verdict.Hide()
	s.onlyLeft = widget.NewCheck(lang.L("Only what is left"), func(bool) { s.Refresh(); s.Focus() })
	s.makeClean()
	s.makeContent()
	return s
}

// viewWords names the ways to go through the evening, in the order of views.
func viewWords() []string {
	return []string{lang.L("Bag by bag"), lang.L("Food by food"), lang.L("Final check")}
}

// makeClean makes the banner that cannot be missed.
func (s *Screen) makeClean() {
	word := look.NewText(lang.L("Clean now"), look.Night, look.Plum)
	word.Bold = true
	s.cleanText = toned(look.Plum)
	s.clean = container.NewStack(look.NewDoubleFrame(look.Plum, container.NewBorder(nil, nil, word, nil, container.NewPadded(s.cleanText))))
	s.clean.Hide()
}

func (s *Screen) makeContent() {
	time := bench.Inset(container.NewVBox(layout.NewSpacer(), s.time.Yielding(), layout.NewSpacer()))
	head := bench.Head(s.left, bench.Wide(306, time), bench.Wide(200, s.search), widget.NewButton(lang.L("Print labels…"), s.printLabels))
	choices := container.NewHBox(s.views, s.onlyLeft)
	split := bench.Beside(s.list, container.NewPadded(s.label.content), 0.61, 760)
	s.evening = container.NewBorder(container.NewVBox(head, choices, s.clean, s.verdict), nil, nil, nil, split)
	menu := widget.NewButton(lang.L("Go to the menu"), func() { s.bench.Document.GoTo(document.Place{Screen: "menu"}) })
	menu.Importance = widget.HighImportance
	s.empty = container.NewCenter(container.NewVBox(
		look.NewText(lang.L("Here come the bags of packing night, in the order that keeps allergens apart."), look.Figure, look.Ink),
		look.NewText(lang.L("They are made from what the menu serves."), look.Body, look.Quiet), container.NewHBox(menu)))
	s.content = container.NewStack(s.evening, s.empty)
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "packing" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Packing night") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the plan and what is done of it.
func (s *Screen) Refresh() {
	p := s.bench.Plan()
	if p == nil || len(p.Bags.Bags) == 0 && len(s.bench.Trip().Progress.Packed) == 0 {
		s.work = nil
		s.evening.Hide()
		s.empty.Show()
		return
	}
	s.work = newWork(s.bench.Trip(), p)
	s.empty.Hide()
	s.evening.Show()
	s.showLeft()
	s.list.setRows(s.work.rows(s.view, s.onlyLeft.Checked))
	if r, ok := s.list.selected(); ok {
		s.choose(r)
	} else {
		s.label.show(row{})
	}
}

// showLeft says how much is left, and to clean where the next round asks for it.
func (s *Screen) showLeft() {
	all := len(s.work.plan.Bags.Bags)
	bench.SetShown(s.verdict, s.view == byStow && s.verdict.Content != "")
	if s.view == byStow {
		in, bags := s.work.checked()
		s.left.SetContent(lang.X("check-count", "Bags checked in: {{.In}} of {{.Count}}", data{"In": in, "Count": bags}))
		s.time.SetContent(lang.L("type the code of each bag"))
		s.clean.Hide()
		return
	}
	if s.work.done == all {
		s.left.SetContent(lang.X("packing-all-done", "Every bag is packed: {{.Count}}", data{"Count": all}))
		s.time.SetContent(lang.L("now the final check of packs and boxes"))
	} else {
		s.left.SetContent(lang.X("packing-left", "Bags left: {{.Left}} of {{.Count}}", data{"Left": all - s.work.done, "Count": all}))
		s.time.SetContent(nightWords(s.work.minutes, s.work.trip.Settings.Helpers))
	}
	place, clean := s.work.cleanNow()
	if !clean || place == 0 {
		s.clean.Hide()
		return
	}
	s.cleanText.SetContent(joinWords(s.work.roundWords(place), cleanWords(), s.work.apartWords(place)))
	s.clean.Show()
}

// choose shows the bag or the food of a row beside the list.
func (s *Screen) choose(r row) { s.label.show(r) }

// showView goes through the evening in another way.
func (s *Screen) showView(v view) {
	var bag *bags.Bag
	if r, ok := s.list.selected(); ok {
		bag = r.bag
	}
	s.view = v
	s.verdict.SetContent("")
	s.Refresh()
	switch {
	case bag != nil && v == byBag:
		s.list.selectKey(bag.Key)
	case v == byStow:
		s.goToOpen()
	}
	s.Focus()
}

// tick ticks off what a row stands for and goes on to what is left.
func (s *Screen) tick(r row) {
	var err error
	switch r.kind {
	case bagRow:
		err = s.tickBag(r.bag)
	case weighRow:
		err = s.tickWeighing(r.bag, r.bulk.Food, r.weighing.Mass)
	case foodRow:
		err = s.tickFood(r.bulk)
	case strayRow:
		err = s.dropStray(r.stray.Bag)
	case stowedRow:
		err = s.tickStowed(r.bag)
	}
	if err == nil && s.work != nil {
		s.warn(r)
		s.goOn(r)
	}
}

// warn tells when a round was begun before a cleaner one is finished.
func (s *Screen) warn(r row) {
	if r.bag == nil || r.kind == stowedRow || s.work.share(r.bag) == 0 {
		return
	}
	for i := range r.round {
		if open := len(s.work.rounds[i].bags) - s.work.rounds[i].done; open > 0 {
			s.bench.Say(lang.X("packing-early", "Bags of round {{.Round}} that are still open: {{.Open}}. Clean the table before you go back to that round.", data{"Open": open, "Round": i + 1}))
			return
		}
	}
}

// goOn moves from a row that was just ticked off to the next that is not: the
// next below, and after the last the first that was left out.
func (s *Screen) goOn(ticked row) {
	at, ok := s.list.selected()
	if !ok || at.key() != ticked.key() || !s.work.draw(at).ticked {
		return
	}
	for step := 1; step < len(s.list.rows); step++ {
		i := (s.list.cursor + step) % len(s.list.rows)
		if next := s.list.rows[i]; next.kind == ticked.kind && !s.work.draw(next).ticked {
			s.list.moveTo(i)
			return
		}
	}
}

// openScale goes to the field of the chosen food.
func (s *Screen) openScale() {
	if r, ok := s.list.selected(); ok && r.bag != nil {
		food := r.bag.Contents[0].Food
		if r.kind == weighRow {
			food = r.bulk.Food
		}
		s.label.focusFood(food)
	}
}

// showBag puts the cursor on a bag, whatever the list leaves out just now.
func (s *Screen) showBag(key string) bool {
	if s.work == nil || s.work.bags[key] == nil {
		return false
	}
	if s.view == byBag && s.list.selectKey(key) {
		return true
	}
	s.onlyLeft.Checked, s.views.Selected, s.view = false, lang.L("Bag by bag"), byBag
	s.onlyLeft.Refresh()
	s.views.Refresh()
	s.Refresh()
	return s.list.selectKey(key)
}

func (s *Screen) focus(on fyne.Focusable) {
	if c := s.bench.Window.Canvas(); c != nil {
		c.Focus(on)
	}
}

// Waiting counts what must be seen to in bags and packing.
func (s *Screen) Waiting() int {
	return bench.CountFindings(s.bench, findings.Bags, findings.Packing)
}

// Focus gives the keyboard to the bags, to tick them off.
func (s *Screen) Focus() { s.focus(s.list) }

// GoTo puts the cursor on a bag, or on the first use of a food.
func (s *Screen) GoTo(place findings.Place) {
	s.focus(s.list)
	if place.Bag != "" {
		s.showBag(place.Bag)
		return
	}
	if place.Food == 0 {
		return
	}
	s.views.SetSelected(lang.L("Food by food"))
	for i, r := range s.list.rows {
		if r.kind == foodRow && r.bulk.Food == place.Food {
			s.list.moveTo(i)
			return
		}
	}
}

// printLabels goes to the labels, for their printer.
func (s *Screen) printLabels() {
	s.bench.Document.GoTo(document.Place{Screen: "print", Paper: string(prints.Labels)})
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool { return s.label.commit() }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	find := &desktop.CustomShortcut{KeyName: fyne.KeyF, Modifier: fyne.KeyModifierShortcutDefault}
	return []bench.Action{
		{Name: lang.L("Tick off"), Do: s.list.tick},
		{Name: lang.L("Write what the scale shows"), Do: s.openScale},
		{Name: lang.L("Find a bag by its code"), Shortcut: find, Do: func() { s.focus(s.search) }},
		{Name: lang.L("Bag by bag"), Do: func() { s.views.SetSelected(lang.L("Bag by bag")) }},
		{Name: lang.L("Food by food"), Do: func() { s.views.SetSelected(lang.L("Food by food")) }},
		{Name: lang.L("Final check"), Do: func() { s.views.SetSelected(lang.L("Final check")) }},
		{Name: lang.L("Print labels…"), Do: s.printLabels},
		{Name: lang.L("Print the lists for the helpers…"), Do: func() { s.bench.Document.GoTo(document.Place{Screen: "print", Paper: string(prints.Rounds)}) }},
		{Name: lang.L("Only what is left"), Do: func() { s.onlyLeft.SetChecked(!s.onlyLeft.Checked) }},
	}
}
