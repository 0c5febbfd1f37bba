package loads

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/trip"
)

// packPanel is what the chosen member carries, and for the chosen thing why
// it is there and what can be done about it.
type packPanel struct {
	screen  *Screen
	name    *look.Text
	figure  *look.Text
	detail  *look.Paragraph
	list    *thingList
	things  []thing
	title   *look.Paragraph
	why     *look.Paragraph
	move    *widget.Button
	ban     *widget.Button
	free    *widget.Button
	content fyne.CanvasObject
}

// thingList is a list with the keys of the screen.
type thingList struct {
	widget.List
	keys    func(*fyne.KeyEvent)
	letters func(rune)
}

// TypedKey hands the key to the screen.
func (l *thingList) TypedKey(event *fyne.KeyEvent) { l.keys(event) }

// TypedRune hands the letter to the screen.
func (l *thingList) TypedRune(letter rune) { l.letters(letter) }

func newPackPanel(s *Screen) *packPanel {
	p := &packPanel{
		screen: s, name: look.NewHeading("").Yielding(), figure: look.NewText("", look.Figure, look.Ink), detail: look.NewParagraph("", look.Caption, look.Quiet),
		title: bench.WrappedHeading(""), why: look.NewParagraph("", look.Caption, look.Ink),
	}
	p.list = &thingList{keys: s.typedKey, letters: s.typedRune}
	p.list.HideSeparators = true
	p.list.Length = func() int { return len(p.things) }
	p.list.CreateItem = func() fyne.CanvasObject { return newRow(p.tap, p.openMenu, s.dragTo, s.drop) }
	p.list.UpdateItem = func(i widget.ListItemID, object fyne.CanvasObject) { p.fill(i, object.(*row)) }
	p.list.ExtendBaseWidget(p.list)
	p.move = widget.NewButton(lang.L("Move… (M)"), s.startMove)
	p.ban = widget.NewButton(lang.L("Keep away (K)"), s.banChosen)
	p.free = widget.NewButton(lang.L("Unpin (U)"), s.freeChosen)
	p.move.Importance = widget.HighImportance
	foot := container.NewBorder(container.NewVBox(widget.NewSeparator(), p.title), container.NewHBox(p.move, p.ban, p.free), nil, nil, bench.NewScroll(p.why))
	split := container.NewVSplit(p.list, foot)
	split.Offset = 0.6
	p.content = container.NewBorder(container.NewVBox(p.name, p.figure, p.detail), nil, nil, nil, split)
	return p
}

// tap chooses a thing and takes the keyboard.
func (p *packPanel) tap(t thing) {
	p.screen.choose(t.id())
	p.screen.focus(p.list)
}

// show lists the things of the chosen member on the chosen day.
func (p *packPanel) show() {
	s, v := p.screen, p.screen.view
	p.things = v.things(s.member, s.day)
	p.name.SetContent(v.memberName(s.member))
	p.showLoad()
	if !s.bench.Document.Planning() && !s.way.waiting && !slices.ContainsFunc(p.things, func(t thing) bool { return t.id() == s.chosen }) {
		s.chosen = ""
		if len(p.things) > 0 {
			s.chosen = p.things[0].id()
		}
	}
	p.list.Refresh()
	p.showChosen()
}

func (p *packPanel) showLoad() {
	s, v := p.screen, p.screen.view
	d, _ := v.load(s.member, s.day)
	if !d.Present {
		p.figure.SetContent("")
		p.detail.SetContent(lang.X("not-there", "Not there on day {{.Day}}.", data{"Day": s.day}))
		return
	}
	p.figure.SetContent(v.kilograms(d.Load) + " · " + percent(d.Share))
	words := v.fairWords(s.member, s.day)
	if m := v.plan.Trip.Member(s.member); m != nil {
		if limit, limited := m.LoadLimit.Get(); limited {
			words += lang.X("load-limit", ", limit {{.Limit}}", data{"Limit": v.kilograms(limit)})
		}
		words += lang.X("load-room", ", {{.Used}} of {{.Room}} room", data{"Used": written.Quantity(d.Volume, v.plan.Trip.Units), "Room": written.Quantity(m.PackRoom, v.plan.Trip.Units)})
		if d.WasteRoom > 0 {
			words += lang.X("load-waste", ", wrappings and empties {{.Room}}", data{"Room": written.Quantity(d.WasteRoom, v.plan.Trip.Units)})
		}
	}
	if d.Water > 0 {
		words += lang.X("load-water", ", and {{.Water}} of water: {{.All}} in all", data{"Water": v.kilograms(d.Water), "All": v.kilograms(d.Load + d.Water)})
	}
	if over := v.over(s.member, s.day); over != nil {
		words += ". " + written.Text(over.Why, v.plan.Trip.Units)
	}
	p.detail.SetContent(words)
}

func (p *packPanel) fill(i int, r *row) {
	if i >= len(p.things) {
		return
	}
	t, s := p.things[i], p.screen
	l := rowLook{name: t.name, about: t.about, mass: written.Quantity(t.mass, s.view.plan.Trip.Units), chosen: t.id() == s.chosen}
	for _, pin := range s.bench.Trip().Pins {
		switch {
		case !t.concerns(pin):
		case pin.Forbid && l.tone == "":
			l.about, l.tone = lang.L("kept away")+" · "+t.about, look.Slate
		case !pin.Forbid:
			l.about, l.tone = lang.L("pinned")+" · "+t.about, look.Spruce
		}
	}
	r.show(t, l)
}

// current gives the chosen thing.
func (p *packPanel) current() (thing, int) {
	for i, t := range p.things {
		if t.id() == p.screen.chosen {
			return t, i
		}
	}
	return thing{}, -1
}

func (p *packPanel) showChosen() {
	t, i := p.current()
	buttons := []*widget.Button{p.move, p.ban, p.free}
	if i < 0 {
		p.title.SetContent("")
		p.why.SetContent(lang.L("Nothing but their own kit."))
		for _, b := range buttons {
			b.Disable()
		}
		return
	}
	onWay := p.screen.view.rest != nil
	for i, b := range buttons[:2] {
		if t.fixed() == "" && (i == 0 || !onWay) {
			b.Enable()
		} else {
			b.Disable()
		}
	}
	p.free.Disable()
	if !onWay && slices.ContainsFunc(p.screen.bench.Trip().Pins, t.concerns) {
		p.free.Enable()
	}
	p.title.SetContent(lang.X("why-carries", "Why does {{.Name}} carry {{.Thing}}?", data{"Name": p.screen.view.memberName(t.carrier), "Thing": t.title()}))
	p.why.SetContent(p.screen.why(t))
	p.list.RefreshItem(i)
}

// refuse says why a thing cannot go to a member; choosing anything takes it
// back.
func (p *packPanel) refuse(t thing, to trip.MemberID, why string) {
	p.title.SetContent(lang.X("why-not", "Why can {{.Name}} not carry {{.Thing}}?", data{"Name": p.screen.view.memberName(to), "Thing": t.title()}))
	p.why.SetContent(why)
}

// step moves the choice up or down the list.
func (p *packPanel) step(by int) {
	_, i := p.current()
	if i < 0 || len(p.things) == 0 {
		return
	}
	next := max(0, min(i+by, len(p.things)-1))
	p.screen.choose(p.things[next].id())
	p.list.ScrollTo(next)
}

// firstOf gives the first member of the board, for when nobody is chosen.
func (v *view) firstOf() trip.MemberID {
	if len(v.order) == 0 {
		return 0
	}
	return v.plan.Trip.Crew[v.order[0]].ID
}
