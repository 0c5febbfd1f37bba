package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Note is a few words that wrap, in the size of notes and a tone, with the
// double frame of allergy where they warn of one.
type Note struct {
	widget.BaseWidget
	Text   string
	plain  *Paragraph
	framed *Paragraph
	frame  *DoubleFrame
	stack  *fyne.Container
}

// NewNote makes an empty note.
func NewNote() *Note {
	n := &Note{plain: NewParagraph("", Body, Ink), framed: NewParagraph("", Body, Plum)}
	n.frame = NewDoubleFrame(Plum, n.framed)
	n.frame.Hide()
	n.stack = container.NewStack(n.plain, n.frame)
	n.ExtendBaseWidget(n)
	return n
}

// Set changes the words; an allergy is plum and framed, whatever the tone.
func (n *Note) Set(text string, tone fyne.ThemeColorName, allergy bool) {
	n.Text = text
	show, hide := fyne.CanvasObject(n.plain), fyne.CanvasObject(n.frame)
	words := n.plain
	if allergy {
		show, hide, words, tone = n.frame, n.plain, n.framed, Plum
	}
	words.SetContent(text)
	words.SetTone(tone)
	hide.Hide()
	show.Show()
	n.stack.Refresh()
}

// CreateRenderer shows the words.
func (n *Note) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(n.stack) }
