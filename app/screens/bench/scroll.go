package bench

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// Scroll shows content that may be higher than its place. Unlike the
// toolkit's, the Tab key reaches it while there is something to scroll, and the
// keys of a reader move it.
type Scroll struct {
	widget.BaseWidget
	scroll *container.Scroll
	inside fyne.CanvasObject
	frame  *canvas.Rectangle
}

// NewScroll makes one that scrolls up and down.
func NewScroll(content fyne.CanvasObject) *Scroll {
	s := &Scroll{inside: content, frame: canvas.NewRectangle(color.Transparent)}
	s.scroll = container.NewVScroll(container.New(within{s}, content))
	s.ExtendBaseWidget(s)
	return s
}

// within lays the content out, and keeps the place of a content that became
// shorter in sight; the toolkit would show the nothing below it.
type within struct{ *Scroll }

func (w within) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(barRoom(), 0)
}

// barRoom keeps what stands at the right edge clear of the bar.
func barRoom() float32 { return theme.Size(theme.SizeNameScrollBarSmall) + theme.Padding() }

func (w within) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size.SubtractWidthHeight(barRoom(), 0))
	if w.scroll.Offset.Y > w.over() {
		w.scrollTo(w.scroll.Offset.Y)
	}
}

// CreateRenderer shows the content, and a frame while the keyboard is here.
func (s *Scroll) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(s.scroll, s.frame))
}

// SetMinSize gives the place a least size.
func (s *Scroll) SetMinSize(size fyne.Size) { s.scroll.SetMinSize(size) }

// Grown gives everything its place after something inside took another height;
// to refresh it all would wrap every text again.
func (s *Scroll) Grown() {
	if content, ok := s.inside.(*fyne.Container); ok {
		content.Layout.Layout(content.Objects, content.Size())
	}
	s.scroll.Base.Refresh() // of the bars; Scroll's own goes through the content too
}

// ScrollToTop shows the beginning.
func (s *Scroll) ScrollToTop() { s.scroll.ScrollToTop() }

// over is by how much the content is higher than its place.
func (s *Scroll) over() float32 {
	return max(0, s.scroll.Content.MinSize().Height-s.scroll.Size().Height)
}

// scrollTo shows the content from a height on.
func (s *Scroll) scrollTo(y float32) {
	s.scroll.ScrollToOffset(fyne.NewPos(0, max(0, min(y, s.over()))))
}

// Disabled keeps the Tab key away where there is nothing to scroll.
func (s *Scroll) Disabled() bool { return s.over() == 0 }

// Enable and Disable are there for the toolkit, which asks for them beside
// Disabled; only the content decides.
func (s *Scroll) Enable() {}

// Disable does nothing, see Enable.
func (s *Scroll) Disable() {}

// FocusGained shows that the keyboard is here.
func (s *Scroll) FocusGained() { s.mark(2) }

// FocusLost takes that back.
func (s *Scroll) FocusLost() { s.mark(0) }

func (s *Scroll) mark(width float32) {
	s.frame.StrokeWidth, s.frame.StrokeColor = width, color.Transparent
	if width > 0 {
		s.frame.StrokeColor = theme.Color(look.Spruce)
	}
	s.frame.Refresh()
}

// TypedRune means nothing here.
func (s *Scroll) TypedRune(rune) {}

// TypedKey scrolls by a line, a page, or to an end.
func (s *Scroll) TypedKey(event *fyne.KeyEvent) {
	line, page := look.RowHeight, s.scroll.Size().Height-look.RowHeight
	at := s.scroll.Offset.Y
	switch event.Name {
	case fyne.KeyUp:
		at -= line
	case fyne.KeyDown:
		at += line
	case fyne.KeyPageUp:
		at -= page
	case fyne.KeyPageDown, fyne.KeySpace:
		at += page
	case fyne.KeyHome:
		at = 0
	case fyne.KeyEnd:
		at = s.over()
	default:
		return
	}
	s.scrollTo(at)
}
