package look

import (
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Paragraph is text that wraps at spaces into the width it gets, with the
// padding of a Label. Each word is measured once: a Label that wraps measures
// all the rest of its text for every line, which takes tens of milliseconds
// for a long one.
type Paragraph struct {
	widget.BaseWidget
	Content string
	Step    Size
	Tone    fyne.ThemeColorName // Ink if empty
	Align   fyne.TextAlign
	Bold    bool
	lines   []string
	of      wrapping // what the lines are of
}

// wrapping is all on which lines depend.
type wrapping struct {
	content string
	points  float32
	bold    bool
	width   float32
}

// NewParagraph makes a text that wraps.
func NewParagraph(content string, size Size, tone fyne.ThemeColorName) *Paragraph {
	p := &Paragraph{Content: content, Step: size, Tone: tone}
	p.ExtendBaseWidget(p)
	return p
}

// SetContent changes the text.
func (p *Paragraph) SetContent(content string) {
	if p.Content != content {
		p.Content = content
		p.Refresh()
	}
}

// SetTone changes the colour.
func (p *Paragraph) SetTone(tone fyne.ThemeColorName) {
	if p.Tone != tone {
		p.Tone = tone
		p.Refresh()
	}
}

// linesNow are the lines at the width there is.
func (p *Paragraph) linesNow() []string {
	of := wrapping{p.Content, p.Step.Points(), p.Bold, p.Size().Width - 2*theme.InnerPadding()}
	if p.lines == nil || p.of != of {
		p.lines, p.of = Wrap(p.Content, of.points, fyne.TextStyle{Bold: p.Bold}, of.width), of
	}
	return p.lines
}

// CreateRenderer draws the lines.
func (p *Paragraph) CreateRenderer() fyne.WidgetRenderer {
	r := &paragraphRenderer{p: p}
	r.set()
	r.place(p.Size()) // made anew after it was hidden, it is not laid out again
	return r
}

type paragraphRenderer struct {
	p     *Paragraph
	texts []*canvas.Text
}

// set gives each line its text, and tells whether any is another.
func (r *paragraphRenderer) set() bool {
	p := r.p
	lines, tone := p.linesNow(), p.Tone
	if tone == "" {
		tone = Ink
	}
	ink := theme.Color(tone)
	changed := len(lines) != len(r.texts)
	r.texts = r.texts[:min(len(lines), len(r.texts))]
	for i, line := range lines {
		if i == len(r.texts) {
			r.texts = append(r.texts, canvas.NewText("", nil))
		}
		text := r.texts[i]
		same := text.Text == line && text.TextSize == p.of.points && text.TextStyle.Bold == p.Bold && text.Color == ink
		text.Text, text.TextSize, text.TextStyle.Bold = line, p.of.points, p.Bold
		text.Color, text.Alignment = ink, p.Align
		if !same {
			text.Refresh()
			changed = true
		}
	}
	return changed
}

// place puts the lines one below the other.
func (r *paragraphRenderer) place(size fyne.Size) {
	padding, height := theme.InnerPadding(), r.lineHeight()
	for i, text := range r.texts {
		text.Move(fyne.NewPos(padding, padding+float32(i)*height))
		text.Resize(fyne.NewSize(max(0, size.Width-2*padding), height))
	}
}

func (r *paragraphRenderer) lineHeight() float32 {
	return fyne.MeasureText("M", r.p.Step.Points(), fyne.TextStyle{Bold: r.p.Bold}).Height
}

func (r *paragraphRenderer) Layout(size fyne.Size) {
	if r.set() {
		canvas.Refresh(r.p)
	}
	r.place(size)
}

func (r *paragraphRenderer) MinSize() fyne.Size {
	padding := 2 * theme.InnerPadding()
	return fyne.NewSize(padding, float32(len(r.p.linesNow()))*r.lineHeight()+padding)
}

func (r *paragraphRenderer) Objects() []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, len(r.texts))
	for i, text := range r.texts {
		objects[i] = text
	}
	return objects
}

func (r *paragraphRenderer) Destroy() {}
func (r *paragraphRenderer) Refresh() {
	r.set()
	r.place(r.p.Size())
	canvas.Refresh(r.p)
}

// Wrap parts a text at its spaces into lines no wider than that, a word wider
// than all of a line inside the word. Without a width there is a line for each
// that the text has itself; there is always at least one.
func Wrap(content string, size float32, style fyne.TextStyle, width float32) []string {
	own := strings.Split(content, "\n")
	if width <= 0 {
		return own
	}
	var lines []string
	for _, line := range own {
		lines = append(lines, wrapLine(line, width, func(s string) float32 { return fyne.MeasureText(s, size, style).Width })...)
	}
	return lines
}

// wrapLine wraps one line. Each word is measured by itself: letters of
// neighbouring words do not change each other's width.
func wrapLine(line string, width float32, measure func(string) float32) []string {
	var lines []string
	space := measure(" ")
	from, to, taken := 0, 0, float32(0) // the words from there to there have that width
	for begin := 0; begin <= len(line); {
		word, _, _ := strings.Cut(line[begin:], " ")
		end := begin + len(word)
		if word != "" {
			gap, wide := float32(begin-to)*space, measure(word)
			if to > from && taken+gap+wide > width {
				lines = append(lines, line[from:to])
				from, taken, gap = begin, 0, 0
			}
			taken, to = taken+gap+wide, end
			for taken > width && to-from > 1 {
				head := fitting(line[from:to], width, measure)
				if head == to-from {
					break
				}
				lines = append(lines, line[from:from+head])
				from += head
				taken = measure(line[from:to])
			}
		}
		begin = end + 1
	}
	return append(lines, line[from:to])
}

// fitting is how many bytes of a text fit, one letter at least.
func fitting(text string, width float32, measure func(string) float32) int {
	ends := make([]int, 0, len(text)) // of each letter
	for i := range text {
		if i > 0 {
			ends = append(ends, i)
		}
	}
	ends = append(ends, len(text))
	fit := sort.Search(len(ends), func(i int) bool { return measure(text[:ends[i]]) > width })
	return ends[max(0, fit-1)]
}
