package packing

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Sizes of a line: the name of the food above, and below it what to weigh in,
// the field for what the scale shows, and the difference.
const (
	planWidth       float32 = 130
	scaleWidth      float32 = 84
	differenceWidth float32 = 84
	nameHeight      float32 = 24
	lineHeight      float32 = 62
)

// contentLine is one food of the bag: what to weigh in, and what the scale
// showed.
type contentLine struct {
	label      *label
	bag        *bags.Bag
	food       trip.FoodID
	planned    units.Mass
	shown      string // what the field held when it was filled
	name       *look.Text
	fullName   string
	plan       *look.Text
	entry      *scaleEntry
	difference *look.Text
	content    *fyne.Container
}

func newContentLine(l *label) *contentLine {
	c := &contentLine{
		label: l, name: look.NewText("", look.Lead, look.Ink), plan: look.NewText("", look.Night, look.Ink),
		difference: look.NewText("", look.Body, look.Ochre),
	}
	c.plan.Bold = true
	c.entry = newScaleEntry(c)
	c.content = container.New(c, c.name, c.plan, c.entry, c.difference)
	return c
}

// MinSize is that of a line with a short name.
func (c *contentLine) MinSize([]fyne.CanvasObject) fyne.Size {
	scale := look.Scale()
	return fyne.NewSize((planWidth+scaleWidth+differenceWidth)*scale, lineHeight*scale)
}

// Layout puts the name above the amount, the field and the difference.
func (c *contentLine) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	scale := look.Scale()
	c.name.SetContent(look.Cut(c.fullName, look.Lead.Points(), fyne.TextStyle{}, size.Width))
	c.name.Move(fyne.NewPos(0, look.SpaceSmall))
	c.name.Resize(fyne.NewSize(size.Width, nameHeight*scale))
	top := nameHeight * scale
	x := float32(0)
	place := func(object fyne.CanvasObject, width, gap float32) {
		height := object.MinSize().Height
		object.Move(fyne.NewPos(x, top+(size.Height-top-height)/2))
		object.Resize(fyne.NewSize(width-gap, height))
		x += width
	}
	place(c.plan, max(planWidth*scale, c.plan.MinSize().Width+look.SpaceWide), look.Space)
	place(c.entry, scaleWidth*scale, look.Space)
	place(c.difference, differenceWidth*scale, 0)
}

func (l *label) unit() string { return typed.MassUnit(l.screen.bench.Units(), false) }

// show fills the line; what is being typed for the same food stays.
func (c *contentLine) show(bag *bags.Bag, content bags.Content) {
	w, system := c.label.screen.work, c.label.screen.bench.Units()
	typing := c.entry.focused && c.bag != nil && c.bag.Key == bag.Key && c.food == content.Food && c.entry.Text != c.shown
	c.bag, c.food, c.planned = bag, content.Food, content.Mass
	c.fullName = w.foodName(content.Food)
	c.plan.SetContent(w.amount(content.Food, content.Mass))
	text, difference := "", ""
	if mass, noted := w.weighed(bag.Key, content.Food); noted {
		text = written.Bare(typed.MassText(mass, system, false))
		difference = lang.L("as planned")
		if more := w.beyondScale(content.Mass, mass); more != 0 {
			difference = w.signed(more)
		}
	}
	c.difference.SetTone(look.Ochre)
	if difference == lang.L("as planned") {
		c.difference.SetTone(look.Spruce)
	}
	c.difference.SetContent(difference)
	c.content.Refresh()
	c.entry.SetPlaceHolder(written.Bare(typed.MassText(w.onScale(content.Mass), system, false)))
	c.shown = text
	if !typing {
		c.entry.SetText(text)
	}
}

// store notes what was typed; an empty field forgets the weight. It tells
// whether it could.
func (c *contentLine) store() bool {
	text := strings.TrimSpace(c.entry.Text)
	s := c.label.screen
	if text == c.shown || c.bag == nil {
		return true
	}
	if text == "" {
		return s.unweigh(c.bag, c.food) == nil
	}
	mass, err := typed.Mass(text, s.bench.Units(), false)
	if err != nil {
		s.bench.Say(written.Error(err))
		return false
	}
	// What reads the same is the same: no rounding of the planned amount.
	if text == written.Bare(typed.MassText(c.planned, s.bench.Units(), false)) {
		mass = c.planned
	}
	return s.weigh(c.bag, c.food, mass) == nil
}

// scaleEntry is the field for what the scale shows. Return stores and goes on
// to the next food; Escape goes back to the list.
type scaleEntry struct {
	widget.Entry
	line    *contentLine
	focused bool
}

func newScaleEntry(line *contentLine) *scaleEntry {
	e := &scaleEntry{line: line}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) {
		if line.store() {
			line.label.next(line)
		}
	}
	return e
}

// FocusGained notes that somebody types here, with all of it chosen.
func (e *scaleEntry) FocusGained() {
	e.focused = true
	e.Entry.FocusGained()
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// FocusLost stores what was typed.
func (e *scaleEntry) FocusLost() {
	e.Entry.FocusLost()
	e.focused = false
	if !e.line.store() {
		e.SetText(e.line.shown)
	}
}

// TypedKey leaves with Escape, and by Up and Down for the list.
func (e *scaleEntry) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyEscape:
		e.SetText(e.line.shown)
		e.line.label.screen.focus(e.line.label.screen.list)
	case fyne.KeyDown:
		if e.line.store() {
			e.line.label.next(e.line)
		}
	default:
		e.Entry.TypedKey(event)
	}
}
