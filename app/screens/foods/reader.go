package foods

import (
	"image/color"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// readerRow is one thing of which one of a few words is true.
type readerRow struct {
	name   string
	note   string // whom it concerns, thin beside the name
	tone   fyne.ThemeColorName
	chosen int // place of the word
}

// readerWord is one of the words, with the letter that chooses it.
type readerWord struct {
	text   string
	letter rune
	tone   fyne.ThemeColorName
}

// reader is a grid of things and words, one word true of each: what a label
// says, read by keys. A letter writes its word and steps to the next row.
type reader struct {
	widget.BaseWidget
	words   []readerWord
	rows    []readerRow
	cursor  int
	focused bool
	set     func(row, word int)
	// next gives where to go from a row that was just set.
	next func(row int) int
	// key hears letters that are no word's.
	key func(letter rune)
}

func newReader(words []readerWord, set func(row, word int)) *reader {
	r := &reader{words: words, set: set}
	r.ExtendBaseWidget(r)
	return r
}

// show shows other rows; the cursor stays where it is.
func (r *reader) show(rows []readerRow) {
	r.rows = rows
	r.cursor = max(0, min(r.cursor, len(rows)-1))
	r.Refresh()
}

func (r *reader) moveTo(row int) {
	r.cursor = max(0, min(row, len(r.rows)-1))
	r.Refresh()
}

// write sets a word of the row at the cursor and goes on.
func (r *reader) write(word int) {
	if r.cursor >= len(r.rows) {
		return
	}
	row := r.cursor
	r.set(row, word)
	if r.next != nil {
		r.moveTo(r.next(row))
		return
	}
	r.moveTo(row + 1)
}

// TypedRune writes the word of a letter.
func (r *reader) TypedRune(letter rune) {
	letter = unicode.ToLower(letter)
	for i, word := range r.words {
		if word.letter == letter {
			r.write(i)
			return
		}
	}
	if r.key != nil {
		r.key(letter)
	}
}

// TypedKey moves the cursor; left and right change the word.
func (r *reader) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyDown:
		r.moveTo(r.cursor + 1)
	case fyne.KeyUp:
		r.moveTo(r.cursor - 1)
	case fyne.KeyHome:
		r.moveTo(0)
	case fyne.KeyEnd:
		r.moveTo(len(r.rows) - 1)
	case fyne.KeyLeft, fyne.KeyRight:
		if r.cursor < len(r.rows) {
			step := 1
			if event.Name == fyne.KeyLeft {
				step = -1
			}
			r.set(r.cursor, max(0, min(len(r.words)-1, r.rows[r.cursor].chosen+step)))
		}
	}
}

// FocusGained shows the cursor.
func (r *reader) FocusGained() { r.focused = true; r.Refresh() }

// FocusLost hides it.
func (r *reader) FocusLost() { r.focused = false; r.Refresh() }

// Tapped writes the word that was tapped.
func (r *reader) Tapped(event *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(r); c != nil {
		c.Focus(r)
	}
	high := rowHeight()
	row := int((event.Position.Y - high) / high)
	if event.Position.Y < high || row >= len(r.rows) {
		return
	}
	r.moveTo(row)
	left, width := r.columns(r.Size().Width)
	if event.Position.X < left {
		return
	}
	r.set(row, max(0, min(len(r.words)-1, int((event.Position.X-left)/width))))
}

const (
	readerRowHeight float32 = 24
	readerWord0     float32 = 72 // least width of a word
)

// rowHeight is that of a row at the reader's size of text.
func rowHeight() float32 { return readerRowHeight * look.Scale() }

// narrowest is how wide the words are at least, so that none touches the next.
func (r *reader) narrowest() float32 {
	widest := readerWord0 * look.Scale()
	for _, word := range r.words {
		widest = max(widest, fyne.MeasureText(word.text, theme.CaptionTextSize(), fyne.TextStyle{Bold: true}).Width+look.SpaceSmall)
	}
	return widest
}

// columns gives where the words begin and how wide each is.
func (r *reader) columns(width float32) (left, each float32) {
	each = max(r.narrowest(), min(90, width*0.6/float32(len(r.words))))
	return max(0, width-each*float32(len(r.words))), each
}

// CreateRenderer draws the grid.
func (r *reader) CreateRenderer() fyne.WidgetRenderer {
	drawn := &readerRenderer{r: r}
	drawn.Layout(r.Size()) // made anew after it was hidden, it is not laid out again
	return drawn
}

type readerRenderer struct {
	r       *reader
	objects []fyne.CanvasObject
	size    fyne.Size
}

func (x *readerRenderer) MinSize() fyne.Size {
	return fyne.NewSize(120*look.Scale()+x.r.narrowest()*float32(len(x.r.words)), rowHeight()*float32(len(x.r.rows)+1))
}

func (x *readerRenderer) Destroy()                     {}
func (x *readerRenderer) Objects() []fyne.CanvasObject { return x.objects }

func (x *readerRenderer) Layout(size fyne.Size) {
	if x.size != size {
		x.size = size
		x.draw()
	}
}

func (x *readerRenderer) Refresh() {
	x.draw()
	canvas.Refresh(x.r)
}

func (x *readerRenderer) draw() {
	x.objects = nil
	left, width := x.r.columns(x.size.Width)
	for i, word := range x.r.words {
		x.text(word.text, left+width*(float32(i)+0.5), 0, fyne.TextAlignCenter, look.Quiet, false)
	}
	for i, row := range x.r.rows {
		top := rowHeight() * float32(i+1)
		if i == x.r.cursor && x.r.focused {
			x.box(0, top, x.size.Width, rowHeight(), look.Wash, look.Spruce)
		}
		used := x.text(row.name, 4, top, fyne.TextAlignLeading, row.tone, row.note != "")
		if row.note != "" {
			x.text(look.Cut(row.note, theme.CaptionTextSize(), fyne.TextStyle{}, left-used-16), used+12, top, fyne.TextAlignLeading, row.tone, false)
		}
		for j, word := range x.r.words {
			x.mark(row.chosen == j, word, left+width*float32(j), top, width)
		}
	}
}

// mark draws the word where it is true, else a small dot.
func (x *readerRenderer) mark(chosen bool, word readerWord, left, top, width float32) {
	if !chosen {
		x.text("·", left+width/2, top, fyne.TextAlignCenter, look.Quiet, false)
		return
	}
	x.box(left+2, top+2, width-4, rowHeight()-4, look.Panel, word.tone)
	if word.tone == look.Plum { // allergy has a double frame
		x.box(left+4, top+4, width-8, rowHeight()-8, look.Panel, word.tone)
	}
	x.text(word.text, left+width/2, top, fyne.TextAlignCenter, word.tone, true)
}

func (x *readerRenderer) box(left, top, width, height float32, ground, edge fyne.ThemeColorName) {
	r := canvas.NewRectangle(theme.Color(ground))
	r.StrokeWidth, r.StrokeColor, r.CornerRadius = 1, theme.Color(edge), 3
	if edge == "" {
		r.StrokeColor = color.Transparent
	}
	r.Move(fyne.NewPos(left, top))
	r.Resize(fyne.NewSize(width, height))
	x.objects = append(x.objects, r)
}

func (x *readerRenderer) text(content string, at, top float32, align fyne.TextAlign, tone fyne.ThemeColorName, bold bool) float32 {
	t := canvas.NewText(content, theme.Color(tone))
	t.TextSize, t.TextStyle.Bold = theme.CaptionTextSize(), bold
	size := t.MinSize()
	if align == fyne.TextAlignCenter {
		at -= size.Width / 2
	}
	t.Move(fyne.NewPos(at, top+(rowHeight()-size.Height)/2))
	t.Resize(size)
	x.objects = append(x.objects, t)
	return size.Width
}
