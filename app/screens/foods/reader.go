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
	row := r.rowAt(event.Position.Y)
	if row < 0 {
		return
	}
	r.moveTo(row)
	edges := r.columns(r.Size().Width)
	for word := range r.words {
		if event.Position.X >= edges[word] && event.Position.X < edges[word+1] {
			r.set(row, word)
		}
	}
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
	tops := x.r.tops(x.size.Width)
	return fyne.NewSize(x.r.least(), tops[len(tops)-1])
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
	edges, tops := x.r.columns(x.size.Width), x.r.tops(x.size.Width)
	for i, word := range x.r.words {
		x.text(word.text, (edges[i]+edges[i+1])/2, 0, fyne.TextAlignCenter, look.Quiet, false)
	}
	for i, row := range x.r.rows {
		top := tops[i]
		if i == x.r.cursor && x.r.focused {
			x.box(0, top, x.size.Width, tops[i+1]-top, look.Wash, look.Spruce)
		}
		x.text(row.name, readerMargin, top, fyne.TextAlignLeading, row.tone, row.note != "")
		for j, word := range x.r.words {
			x.mark(row.chosen == j, word, edges[j], top, edges[j+1]-edges[j])
		}
		if beneath := x.r.beneath(row, edges[0], x.size.Width); len(beneath) > 0 {
			for n, line := range beneath {
				x.text(line, 2*readerMargin, top+rowHeight()*0.8+lineHeight()*float32(n)-(rowHeight()-lineHeight())/2, fyne.TextAlignLeading, row.tone, false)
			}
		} else if row.note != "" {
			x.text(row.note, readerMargin+row.nameWidth()+readerGap, top, fyne.TextAlignLeading, row.tone, false)
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

func (x *readerRenderer) text(content string, at, top float32, align fyne.TextAlign, tone fyne.ThemeColorName, bold bool) {
	t := canvas.NewText(content, theme.Color(tone))
	t.TextSize, t.TextStyle.Bold = theme.CaptionTextSize(), bold
	size := t.MinSize()
	if align == fyne.TextAlignCenter {
		at -= size.Width / 2
	}
	t.Move(fyne.NewPos(at, top+(rowHeight()-size.Height)/2))
	t.Resize(size)
	x.objects = append(x.objects, t)
}
