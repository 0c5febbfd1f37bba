package packing

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// Measures of rows at the usual size of text.
const (
	// roomyWidth is from where code, texts and figure stand side by side; in a
	// narrower row, or with larger text, the texts stand below the other two.
	roomyWidth float32 = 480
	// mostLines is how many lines of text a narrow row has.
	mostLines = 4
	// belowInset is the room above and below the lines of a narrow row, within
	// the double frame of the cleaning.
	belowInset float32 = 7
)

// isNarrow tells whether rows of that width have their texts below.
func isNarrow(width float32) bool { return width < roomyWidth*look.Scale() }

// rowHeight is that of all rows of a list.
func rowHeight(narrow bool) float32 {
	if !narrow {
		return look.NightHeight * look.Scale()
	}
	return lineOf(look.Night) + lineOf(look.Figure) + 2*lineOf(look.Body) + 2*belowInset
}

func lineOf(size look.Size) float32 {
	return fyne.MeasureText("M", size.Points(), fyne.TextStyle{}).Height
}

// wording is a text with its look; lines of it share them.
type wording struct {
	content string
	size    float32
	tone    fyne.ThemeColorName
	bold    bool
}

// cut gives at most so many lines of that width; what has no room ends in an
// ellipsis.
func (w wording) cut(width float32, most int) []wording {
	if w.content == "" || most < 1 {
		return nil
	}
	style := fyne.TextStyle{Bold: w.bold}
	var lines []string
	if most == 1 {
		lines = []string{w.content}
	} else if lines = look.Wrap(w.content, w.size, style, width); len(lines) > most {
		lines = append(lines[:most-1], strings.Join(lines[most-1:], " "))
	}
	cut := make([]wording, len(lines))
	for i, line := range lines {
		cut[i] = w
		cut[i].content = look.Cut(line, w.size, style, width)
	}
	return cut
}

func (w wording) width() float32 {
	return fyne.MeasureText(w.content, w.size, fyne.TextStyle{Bold: w.bold}).Width
}

func (w wording) height() float32 {
	return fyne.MeasureText("M", w.size, fyne.TextStyle{Bold: w.bold}).Height
}

// wordings are the two texts of a row.
func (l rowLook) wordings() (main, note wording) {
	main = wording{l.main, look.Figure.Points(), look.Ink, l.kind == roundRow || l.kind == stowRow || l.kind == foodRow}
	if l.kind == cleanRow {
		main.size = look.Lead.Points()
	}
	if l.ticked {
		main.tone = look.Quiet
	}
	note = wording{l.note, look.Body.Points(), l.noteTone, l.noteTone == look.Plum}
	if note.tone == "" {
		note.tone = look.Quiet
	}
	return main, note
}

// firstHeight is the height of what the box stands beside: the whole row, or
// the line of the code where the texts stand below.
func (r *rowRenderer) firstHeight(size fyne.Size) float32 {
	if isNarrow(size.Width) && r.v.look.code+r.v.look.figure != "" {
		return lineOf(look.Night) + 2*belowInset
	}
	return size.Height
}

func (r *rowRenderer) layoutTexts(x float32, size fyne.Size) {
	for _, line := range r.v.lines {
		line.Text = ""
	}
	r.v.aside.Text, r.v.figure.TextSize = r.v.look.aside, look.Night.Points()
	if isNarrow(size.Width) {
		r.layoutBelow(x, size)
	} else {
		r.layoutBeside(x, size)
	}
}

// layoutBeside has the texts between the code and the figure.
func (r *rowRenderer) layoutBeside(x float32, size fyne.Size) {
	v := r.v
	if v.look.code != "" {
		v.code.Move(fyne.NewPos(x, middle(v.code, size.Height)))
		x += max(v.code.MinSize().Width, r.codeWidth()) + codeAfter
	}
	right := size.Width - rowInset
	figure, aside := v.figure.MinSize(), v.aside.MinSize()
	v.figure.Move(fyne.NewPos(right-figure.Width, middle(v.figure, size.Height)))
	if v.look.aside != "" {
		v.figure.Move(fyne.NewPos(right-figure.Width, (size.Height-figure.Height-aside.Height)/2+1))
		v.aside.Move(fyne.NewPos(right-aside.Width, (size.Height+figure.Height-aside.Height)/2-1))
	}
	room := right - codeAfter - x
	main, note := v.look.wordings()
	noteRoom := room - max(figure.Width, aside.Width)
	if keepAway := note.cut(noteRoom, 2); v.look.kind == cleanRow && len(keepAway) > 1 { // what to keep away is never cut for how to wash
		r.write(keepAway, x, (size.Height-2*note.height())/2)
		return
	}
	if note.content == "" {
		r.write(main.cut(room-figure.Width, 1), x, (size.Height-main.height())/2)
		return
	}
	top := (size.Height - main.height() - note.height()) / 2
	r.write(main.cut(room-figure.Width, 1), x, top+2)
	note = note.cut(noteRoom, 1)[0]
	r.put(v.lines[1], note, x, top+main.height()-1)
}

// layoutBelow has code and figure on the first line, and the texts below over
// the whole width.
func (r *rowRenderer) layoutBelow(x float32, size fyne.Size) {
	v := r.v
	right, top := size.Width-rowInset, belowInset
	main, note := v.look.wordings()
	left := rowInset
	if v.look.kind == cleanRow {
		left = x
	}
	codeEnd := x + v.code.MinSize().Width + codeAfter
	if v.look.code != "" || v.look.figure != "" {
		v.code.Move(fyne.NewPos(x, top))
		if wide := v.figure.MinSize().Width; codeEnd+wide > right { // smaller rather than cut
			v.figure.TextSize = max(theme.CaptionTextSize(), v.figure.TextSize*(right-codeEnd)/wide)
		}
		v.figure.Move(fyne.NewPos(right-v.figure.MinSize().Width, top+(lineOf(look.Night)-v.figure.MinSize().Height)*0.8))
		top += lineOf(look.Night)
	}
	high := size.Height - belowInset - top
	besides := int((high - main.height()) / note.height()) // lines of the note with one of the main text
	room, aside := right-left, v.aside.MinSize()
	switch begins := right - v.figure.MinSize().Width - codeAfter - aside.Width; {
	case v.look.aside == "":
	case begins > codeEnd: // before the figure, on its foot
		v.aside.Move(fyne.NewPos(begins, top-aside.Height-look.SpaceSmall))
	case !v.look.warns && main.width() > room-aside.Width-codeAfter:
		v.aside.Text = ""
		note.content = joinWords(note.content, v.look.aside)
	default:
		v.aside.Move(fyne.NewPos(right-aside.Width, top+main.height()-aside.Height-look.SpaceSmall))
		r.write(append(main.cut(room-aside.Width-codeAfter, 1), note.cut(room, besides)...), left, top)
		return
	}
	if v.look.kind == cleanRow { // what to keep away is never cut for how to wash
		besides = int(high / note.height())
	}
	below := note.cut(room, besides)
	r.write(append(main.cut(room, int((high-note.height()*float32(len(below)))/main.height())), below...), left, top)
}

func middle(text *canvas.Text, height float32) float32 { return (height - text.MinSize().Height) / 2 }

// write puts lines one below the other.
func (r *rowRenderer) write(lines []wording, x, top float32) {
	for i, line := range lines {
		if i < len(r.v.lines) {
			r.put(r.v.lines[i], line, x, top)
			top += line.height()
		}
	}
}

func (r *rowRenderer) put(text *canvas.Text, line wording, x, y float32) {
	text.Text, text.TextSize, text.TextStyle.Bold, text.Color = line.content, line.size, line.bold, theme.Color(line.tone)
	text.Move(fyne.NewPos(x, y))
}

// codeWidth is the room of the widest code as long as this one, so that the
// texts behind the codes stand in one line.
func (r *rowRenderer) codeWidth() float32 {
	if !r.v.look.tickable || len(r.v.look.code) < 2 {
		return 0
	}
	widest := strings.Repeat("0", len(r.v.look.code)-2) + "-W"
	return fyne.MeasureText(widest, r.v.code.TextSize, r.v.code.TextStyle).Width
}
