package bench

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// tabRow is the words of tabs. The chosen one is bold with a bar below it; a
// frame around it tells that the keyboard is here.
type tabRow struct {
	widget.BaseWidget
	words   []string
	chosen  int
	hovered int // -1: none
	focused bool
	open    func(int)
	ends    []float32 // where each word's place ends
}

func newTabRow(words []string, open func(int)) *tabRow {
	r := &tabRow{words: words, open: open, hovered: -1}
	r.ExtendBaseWidget(r)
	return r
}

func (r *tabRow) choose(place int) {
	r.chosen = place
	r.Refresh()
}

// at gives the word at a point of the row, -1 where there is none.
func (r *tabRow) at(x float32) int {
	for i, end := range r.ends {
		if x < end {
			return i
		}
	}
	return -1
}

// Tapped opens the word under the pointer.
func (r *tabRow) Tapped(event *fyne.PointEvent) { r.open(r.at(event.Position.X)) }

// MouseIn marks the word under the pointer.
func (r *tabRow) MouseIn(event *desktop.MouseEvent) { r.MouseMoved(event) }

// MouseMoved marks the word under the pointer.
func (r *tabRow) MouseMoved(event *desktop.MouseEvent) { r.hover(r.at(event.Position.X)) }

// MouseOut takes the mark back.
func (r *tabRow) MouseOut() { r.hover(-1) }

func (r *tabRow) hover(place int) {
	if place != r.hovered {
		r.hovered = place
		r.Refresh()
	}
}

// FocusGained shows that the keyboard is here.
func (r *tabRow) FocusGained() { r.focused = true; r.Refresh() }

// FocusLost takes that back.
func (r *tabRow) FocusLost() { r.focused = false; r.Refresh() }

// TypedRune means nothing here.
func (r *tabRow) TypedRune(rune) {}

// TypedKey goes to the next word or the last before it, and to both ends.
func (r *tabRow) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyLeft, fyne.KeyUp:
		r.open(max(0, r.chosen-1))
	case fyne.KeyRight, fyne.KeyDown:
		r.open(min(len(r.words)-1, r.chosen+1))
	case fyne.KeyHome:
		r.open(0)
	case fyne.KeyEnd:
		r.open(len(r.words) - 1)
	}
}

// CreateRenderer draws the words.
func (r *tabRow) CreateRenderer() fyne.WidgetRenderer {
	drawn := &tabRowRenderer{row: r, line: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent), frame: canvas.NewRectangle(color.Transparent)}
	for _, word := range r.words {
		drawn.words = append(drawn.words, canvas.NewText(word, color.Transparent))
	}
	drawn.Refresh()
	if size := r.Size(); !size.IsZero() {
		drawn.Layout(size) // made anew after it was hidden, it is not laid out again
	}
	return drawn
}

type tabRowRenderer struct {
	row              *tabRow
	words            []*canvas.Text
	line, bar, frame *canvas.Rectangle
}

const tabBar float32 = 2 // thickness of the bar below the chosen word

func (d *tabRowRenderer) Destroy() {}

func (d *tabRowRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{d.line, d.bar, d.frame}
	for _, word := range d.words {
		objects = append(objects, word)
	}
	return objects
}

// width is that of a word in bold, so that choosing moves nothing.
func (d *tabRowRenderer) width(place int) float32 {
	return fyne.MeasureText(d.row.words[place], theme.TextSize(), fyne.TextStyle{Bold: true}).Width
}

func (d *tabRowRenderer) MinSize() fyne.Size {
	size := fyne.NewSize(0, fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height+2*look.Space)
	for i := range d.words {
		size.Width += d.width(i) + 2*look.Space
	}
	return size
}

func (d *tabRowRenderer) Layout(size fyne.Size) {
	// Where there is room, words stand wider apart, up to twice.
	pad := look.Space
	if n := float32(len(d.words)); n > 0 {
		pad = min(2*look.Space, look.Space+max(0, size.Width-d.MinSize().Width)/n/2)
	}
	d.row.ends = d.row.ends[:0]
	x := float32(0)
	for i, word := range d.words {
		width := d.width(i)
		word.Move(fyne.NewPos(x+pad, (size.Height-word.MinSize().Height)/2))
		if i == d.row.chosen {
			d.bar.Move(fyne.NewPos(x+pad, size.Height-tabBar))
			d.bar.Resize(fyne.NewSize(width, tabBar))
			d.frame.Move(fyne.NewPos(x+2, 3))
			d.frame.Resize(fyne.NewSize(width+2*pad-4, size.Height-tabBar-6))
		}
		x += width + 2*pad
		d.row.ends = append(d.row.ends, x)
	}
	d.line.Move(fyne.NewPos(0, size.Height-1))
	d.line.Resize(fyne.NewSize(size.Width, 1))
}

func (d *tabRowRenderer) Refresh() {
	for i, word := range d.words {
		word.TextSize, word.TextStyle.Bold = theme.TextSize(), i == d.row.chosen
		word.Color = theme.Color(look.Quiet)
		if i == d.row.chosen || i == d.row.hovered {
			word.Color = theme.Color(look.Ink)
		}
	}
	d.line.FillColor, d.bar.FillColor = theme.Color(look.Line), theme.Color(look.Spruce)
	d.frame.CornerRadius, d.frame.StrokeWidth, d.frame.StrokeColor = 3, 0, color.Transparent
	if d.row.focused {
		d.frame.StrokeWidth, d.frame.StrokeColor = 2, theme.Color(look.Spruce)
	}
	d.Layout(d.row.Size())
	canvas.Refresh(d.row)
}
