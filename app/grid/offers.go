package grid

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// mostOffers is how many choices are seen at once.
const mostOffers = 8

// offers is the list under the editor of what may be stored in the cell. It
// narrows while one types; the arrows choose, a tap takes.
type offers struct {
	widget.BaseWidget
	matching []string
	chosen   int // -1: none
	first    int // the first that is seen
	taken    func()
}

func newOffers(taken func()) *offers {
	o := &offers{taken: taken, chosen: -1}
	o.ExtendBaseWidget(o)
	o.Hide()
	return o
}

// narrow shows the choices that fit what is typed. What is there when the
// editor opens narrows nothing: the others must be seen to be chosen.
func (o *offers) narrow(text string, choices []string, typed bool) {
	o.matching, o.chosen, o.first = choices, -1, 0
	if typed {
		o.matching = matching(text, choices)
		if text != "" && len(o.matching) > 0 {
			o.chosen = 0
		}
	}
	for i, choice := range o.matching {
		if strings.EqualFold(choice, text) {
			o.chosen = i
		}
	}
	if len(o.matching) == 0 {
		o.Hide()
		return
	}
	o.Show()
	o.move(0)
}

// move chooses another one.
func (o *offers) move(rows int) {
	if rows != 0 || o.chosen >= 0 {
		o.chosen = max(0, min(o.chosen+rows, len(o.matching)-1))
		o.first = max(min(o.first, o.chosen), o.chosen-mostOffers+1)
	}
	o.Refresh()
}

// pick gives the chosen one, or the text as typed.
func (o *offers) pick(text string) string {
	if o.Visible() && o.chosen >= 0 && o.chosen < len(o.matching) && text != "" {
		return o.matching[o.chosen]
	}
	return text
}

// matching lists the choices that begin with the text, then those with a word
// that does, then those that hold it.
func matching(text string, choices []string) []string {
	text = strings.ToLower(strings.TrimSpace(text))
	var begins, words, holds []string
	for _, choice := range choices {
		switch lower := strings.ToLower(choice); {
		case strings.HasPrefix(lower, text):
			begins = append(begins, choice)
		case strings.Contains(lower, " "+text):
			words = append(words, choice)
		case strings.Contains(lower, text):
			holds = append(holds, choice)
		}
	}
	return append(append(begins, words...), holds...)
}

// Tapped takes the one under the finger.
func (o *offers) Tapped(event *fyne.PointEvent) {
	row := o.first + int(event.Position.Y/rowHeight())
	if row < len(o.matching) {
		o.chosen = row
		o.taken()
	}
}

// CreateRenderer draws the list.
func (o *offers) CreateRenderer() fyne.WidgetRenderer { return &offersRenderer{o: o} }

type offersRenderer struct {
	o       *offers
	objects []fyne.CanvasObject
}

func (r *offersRenderer) Destroy()                     {}
func (r *offersRenderer) Layout(fyne.Size)             { r.draw() }
func (r *offersRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *offersRenderer) Refresh()                     { r.draw(); canvas.Refresh(r.o) }

// MinSize holds the widest of all that match.
func (r *offersRenderer) MinSize() fyne.Size {
	width := float32(60)
	for _, choice := range r.o.matching {
		width = max(width, fyne.MeasureText(choice, theme.TextSize(), fyne.TextStyle{}).Width)
	}
	return fyne.NewSize(width+2*cellInset, rowHeight()*float32(min(len(r.o.matching), mostOffers)))
}

func (r *offersRenderer) draw() {
	o, size := r.o, r.o.Size()
	ground := canvas.NewRectangle(theme.Color(look.Panel))
	ground.StrokeWidth, ground.StrokeColor = 1, theme.Color(look.Spruce)
	ground.Resize(size)
	r.objects = []fyne.CanvasObject{ground}
	for i := o.first; i < min(len(o.matching), o.first+mostOffers); i++ {
		top := rowHeight() * float32(i-o.first)
		if i == o.chosen {
			wash := canvas.NewRectangle(theme.Color(look.Wash))
			wash.Move(fyne.NewPos(1, top+1))
			wash.Resize(fyne.NewSize(size.Width-2, rowHeight()-2))
			r.objects = append(r.objects, wash)
		}
		text := canvas.NewText(o.matching[i], theme.Color(look.Ink))
		text.TextSize = theme.TextSize()
		text.Move(fyne.NewPos(cellInset, top+(rowHeight()-text.MinSize().Height)/2))
		r.objects = append(r.objects, text)
	}
}

// offer lists what may be stored under the editor, or above it where there is
// no room below.
func (g *Grid[R]) offer(typed bool) {
	choices := g.choices()
	if len(choices) == 0 || !g.editor.open() {
		g.offers.Hide()
		return
	}
	g.offers.narrow(g.editor.Text, choices, typed)
	size := g.offers.MinSize()
	size.Width = max(size.Width, g.editor.Size().Width)
	at := g.editor.Position().AddXY(0, g.editor.Size().Height)
	if at.Y+size.Height > g.Size().Height && g.editor.Position().Y > g.Size().Height/2 {
		at.Y = g.editor.Position().Y - size.Height
	}
	at.X = max(0, min(at.X, g.Size().Width-size.Width))
	g.offers.Move(at)
	g.offers.Resize(size)
	g.offers.Refresh()
}

// choices of the cell at the cursor, none where anything may be stored.
func (g *Grid[R]) choices() []string {
	row, ok := g.Selected()
	if column := g.columns[g.cursor.Col]; ok && column.Choices != nil {
		return column.Choices(row)
	}
	return nil
}
