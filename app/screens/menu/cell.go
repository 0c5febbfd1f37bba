package menu

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
	"sumpter/domain/findings"
)

// padlock marks a locked slot beside its word.
var padlock = fyne.NewStaticResource("locked.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path fill="#000000" fill-rule="evenodd" d="M5 11 H7 V8 A5 5 0 0 1 17 8 V11 H19 V21 H5 Z M9.4 11 H14.6 V8 A2.6 2.6 0 0 0 9.4 8 Z"/></svg>`))

// nameLines is how many lines the names of the dishes have.
const nameLines = 3

// cell draws one slot. Cells are used again and again: a few texts and shapes
// that change only where what they show has changed.
type cell struct {
	waits               bool // it is out of view until it is filled
	box                 *fyne.Container
	ground, bar         *canvas.Rectangle
	names               [nameLines]*canvas.Text
	figures, word, mark *canvas.Text
	signs               []*canvas.Image // in the order of severities
	lock                *canvas.Image
	painted             bool
	shown               facts
}

var severities = []findings.Severity{findings.MustFix, findings.LookAt, findings.Note}

func newCell() *cell {
	c := &cell{ground: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent)}
	objects := []fyne.CanvasObject{c.ground, c.bar}
	text := func() *canvas.Text {
		t := canvas.NewText("", color.Transparent)
		objects = append(objects, t)
		return t
	}
	for i := range c.names {
		c.names[i] = text()
	}
	c.figures, c.word, c.mark = text(), text(), text()
	picture := func(resource fyne.Resource) *canvas.Image {
		image := canvas.NewImageFromResource(resource)
		image.FillMode = canvas.ImageFillContain
		image.Hide()
		objects = append(objects, image)
		return image
	}
	for _, severity := range severities {
		c.signs = append(c.signs, picture(look.SignOf(severity)))
	}
	c.lock = picture(theme.NewColoredResource(padlock, look.Spruce))
	c.box = &fyne.Container{Objects: objects}
	return c
}

// place lays the cell out for the sizes of text there are now.
func (c *cell) place(m metrics) {
	c.box.Resize(m.cell)
	c.ground.Resize(m.cell)
	c.bar.Move(fyne.NewPos(0, 0))
	c.bar.Resize(fyne.NewSize(4, m.cell.Height))
	for i, name := range c.names {
		name.Move(fyne.NewPos(m.inset, 5+float32(i)*m.line))
		name.TextSize = m.body
	}
	c.figures.TextSize, c.word.TextSize, c.mark.TextSize = m.caption, m.caption, m.caption
	c.figures.Move(fyne.NewPos(m.inset, m.figuresAt))
	c.word.Move(fyne.NewPos(m.inset+m.sign+3, m.wordAt))
	for _, sign := range c.signs {
		sign.Resize(fyne.NewSize(m.sign, m.sign))
		sign.Move(fyne.NewPos(m.inset, m.wordAt+1))
	}
	c.lock.Resize(fyne.NewSize(m.sign, m.sign))
	c.lock.Move(fyne.NewPos(m.inset, 8))
	c.painted = false
}

// wait takes the cell out of view until it is filled.
func (c *cell) wait() {
	c.waits = true
	c.box.Hide()
}

// paint shows other facts.
func (c *cell) paint(f facts, m metrics, fit *fitter) {
	if c.painted && f == c.shown {
		return
	}
	c.painted, c.shown = true, f
	c.paintGround(f)
	tone, style := look.Ink, fyne.TextStyle{Italic: f.state == proposed}
	if f.state == open || f.state == away {
		tone = look.Quiet
	}
	lines := c.lines(f, fit, style)
	for i, text := range c.names {
		set(text, lines[i], tone, style)
	}
	set(c.figures, f.figures, look.Quiet, fyne.TextStyle{})
	set(c.word, trouble(f.word, m), look.ToneOf(f.severity), fyne.TextStyle{})
	for i, severity := range severities {
		show(c.signs[i], f.severity == severity)
	}
	c.paintMark(f, m)
}

// trouble cuts the word of what is wrong to the cell; how much more is wrong
// stays to be read.
func trouble(word string, m metrics) string {
	room := m.cell.Width - m.inset - m.sign - look.Space
	more := ""
	if at := strings.LastIndex(word, " +"); at >= 0 {
		word, more = word[:at], word[at:]
		room -= fyne.MeasureText(more, m.caption, fyne.TextStyle{}).Width
	}
	return look.Cut(word, m.caption, fyne.TextStyle{}, room) + more
}

// lines breaks the names of the dishes; a mark takes the first line.
func (c *cell) lines(f facts, fit *fitter, style fyne.TextStyle) (lines [nameLines]string) {
	first := 0
	if f.mark != "" {
		first = 1
	}
	for i, line := range strings.Split(fit.fit(f.dishes, nameLines-first, style), "\n") {
		lines[first+i] = line
	}
	return lines
}

// paintMark writes who filled the slot or that it is locked, above the names.
func (c *cell) paintMark(f facts, m metrics) {
	set(c.mark, f.mark, look.Spruce, fyne.TextStyle{})
	x := m.inset
	if f.locked {
		x += m.sign + 3
	}
	c.mark.Move(fyne.NewPos(x, 7))
	show(c.lock, f.locked)
}

// paintGround tells by shape who filled the slot: a card with a bar is
// decided, a round outline is proposed, a bare place is open.
func (c *cell) paintGround(f facts) {
	c.ground.FillColor, c.ground.StrokeColor, c.ground.StrokeWidth = theme.Color(look.Panel), theme.Color(look.Line), 1
	c.ground.CornerRadius = 2
	c.bar.FillColor = color.Transparent
	switch {
	case f.state == away:
		c.ground.FillColor, c.ground.StrokeWidth = theme.Color(look.Ground), 0
	case f.locked || f.state == decided:
		c.bar.FillColor = theme.Color(look.Spruce)
	case f.state == proposed:
		c.ground.FillColor, c.ground.StrokeColor, c.ground.CornerRadius = theme.Color(look.Ground), theme.Color(look.Spruce), 14
	default:
		c.ground.FillColor = theme.Color(look.Stripe)
	}
	c.ground.Refresh()
	c.bar.Refresh()
}

// set changes a text if it says something else.
func set(t *canvas.Text, content string, tone fyne.ThemeColorName, style fyne.TextStyle) {
	ink := theme.Color(tone)
	if t.Text == content && t.Color == ink && t.TextStyle == style {
		return
	}
	t.Text, t.Color, t.TextStyle = content, ink, style
	t.Resize(t.MinSize())
	t.Refresh()
}

func show(object fyne.CanvasObject, visible bool) {
	if object.Visible() == visible {
		return
	}
	if visible {
		object.Show()
	} else {
		object.Hide()
	}
}
