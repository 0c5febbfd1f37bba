package window

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
)

const navigationWidth float32 = 156

// navigation is the work in order, a word each, with a count where something
// waits.
type navigation struct {
	screens []bench.Screen
	entries []*entry
	content fyne.CanvasObject
}

func newNavigation(screens []bench.Screen, open func(int)) *navigation {
	n := &navigation{screens: screens}
	column := container.New(rungs{})
	for i, screen := range screens {
		e := newEntry(screen.Title(), func() { open(i) })
		n.entries = append(n.entries, e)
		if i == len(screens)-1 {
			column.Add(widget.NewSeparator()) // it is no step of the work
		}
		column.Add(e)
	}
	spread := canvas.NewRectangle(color.Transparent)
	spread.SetMinSize(fyne.NewSize(navigationWidth, 0))
	n.content = container.NewStack(spread, container.NewPadded(column))
	return n
}

func (n *navigation) refresh() {
	for i, screen := range n.screens {
		n.entries[i].set(n.entries[i].current, screen.Waiting())
	}
}

func (n *navigation) mark(current int) {
	for i, e := range n.entries {
		e.set(i == current, e.waiting)
	}
}

// Heights of an entry above that of its word: as it is nice to see and to hit,
// and as it must be in a low window.
const (
	entryRoom  float32 = 14
	entryLeast float32 = 2
)

// rungs lays the entries below each other, closer where the window is low.
type rungs struct{}

// MinSize is as high as the entries are at their closest.
func (rungs) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.NewSize(0, -look.SpaceSmall)
	for _, object := range objects {
		least := object.MinSize()
		size.Width, size.Height = max(size.Width, least.Width), size.Height+least.Height+look.SpaceSmall
	}
	return size
}

// Layout gives every entry the same share of the height there is too much.
func (r rungs) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	entries := 0
	for _, object := range objects {
		if _, ok := object.(*entry); ok {
			entries++
		}
	}
	more := max(0, min(entryRoom-entryLeast, (size.Height-r.MinSize(objects).Height)/float32(max(1, entries))))
	y := float32(0)
	for _, object := range objects {
		height := object.MinSize().Height
		if _, ok := object.(*entry); ok {
			height += more
		}
		object.Move(fyne.NewPos(0, y))
		object.Resize(fyne.NewSize(size.Width, height))
		y += height + look.SpaceSmall
	}
}

// entry is one word of the navigation.
type entry struct {
	widget.BaseWidget
	word    string
	open    func()
	current bool
	waiting int
	ground  *canvas.Rectangle
	text    *canvas.Text
	count   *canvas.Text
}

func newEntry(word string, open func()) *entry {
	e := &entry{word: word, open: open, ground: canvas.NewRectangle(color.Transparent), text: canvas.NewText(word, nil), count: canvas.NewText("", nil)}
	e.ExtendBaseWidget(e)
	return e
}

func (e *entry) set(current bool, waiting int) {
	if e.current != current || e.waiting != waiting {
		e.current, e.waiting = current, waiting
		e.Refresh()
	}
}

// Tapped opens the screen.
func (e *entry) Tapped(*fyne.PointEvent) { e.open() }

// CreateRenderer draws the word and its count.
func (e *entry) CreateRenderer() fyne.WidgetRenderer {
	r := &entryRenderer{e}
	r.Refresh()
	return r
}

type entryRenderer struct{ e *entry }

func (r *entryRenderer) Destroy() {}
func (r *entryRenderer) MinSize() fyne.Size {
	word := fyne.MeasureText(r.e.word, theme.TextSize(), fyne.TextStyle{Bold: true})
	count := fyne.MeasureText("000", theme.CaptionTextSize(), fyne.TextStyle{}).Width
	return fyne.NewSize(max(navigationWidth-2*look.SpaceSmall, look.SpaceWide+word.Width+count+look.Space), word.Height+entryLeast)
}

func (r *entryRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.e.ground, r.e.text, r.e.count}
}

func (r *entryRenderer) Layout(size fyne.Size) {
	e := r.e
	e.ground.Resize(size)
	e.text.Move(fyne.NewPos(look.SpaceWide, (size.Height-e.text.MinSize().Height)/2))
	count := e.count.MinSize()
	e.count.Move(fyne.NewPos(size.Width-count.Width-look.Space, (size.Height-count.Height)/2))
}

func (r *entryRenderer) Refresh() {
	e := r.e
	e.ground.FillColor, e.ground.CornerRadius = theme.Color(look.Ground), 3
	e.text.Color, e.text.TextSize, e.text.TextStyle.Bold = theme.Color(look.Ink), theme.TextSize(), e.current
	if e.current {
		e.ground.FillColor = theme.Color(look.Wash)
	}
	e.count.Text = ""
	if e.waiting > 0 {
		e.count.Text = strconv.Itoa(e.waiting)
	}
	e.count.Color, e.count.TextSize = theme.Color(look.Ochre), theme.CaptionTextSize()
	r.Layout(e.Size())
	e.ground.Refresh()
	e.text.Refresh()
	e.count.Refresh()
}
