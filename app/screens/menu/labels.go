package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// painter writes the texts of a line of days or a column of meals and gives
// the room they take.
type painter func(add func(text string, x, y, width float32, caption bool, tone fyne.ThemeColorName)) fyne.Size

// labels is the line of days or the column of meals, which moves with the
// grid in one direction.
type labels struct {
	widget.BaseWidget
	paint painter
	inner *fyne.Container
	texts []*canvas.Text
	size  fyne.Size
}

func newLabels(paint painter) *labels {
	l := &labels{paint: paint, inner: &fyne.Container{}}
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer shows the texts.
func (l *labels) CreateRenderer() fyne.WidgetRenderer {
	r := &labelsRenderer{l}
	r.Refresh()
	return r
}

type labelsRenderer struct{ l *labels }

func (r *labelsRenderer) Destroy()                     {}
func (r *labelsRenderer) MinSize() fyne.Size           { return fyne.NewSize(1, 1) }
func (r *labelsRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.l.inner} }
func (r *labelsRenderer) Layout(fyne.Size)             {}

// Refresh writes the texts anew, into the objects there are.
func (r *labelsRenderer) Refresh() {
	l, used := r.l, 0
	var measured fitter
	l.size = l.paint(func(content string, x, y, width float32, caption bool, tone fyne.ThemeColorName) {
		if used == len(l.texts) {
			l.texts = append(l.texts, canvas.NewText("", nil))
			l.inner.Objects = append(l.inner.Objects, l.texts[used])
		}
		t := l.texts[used]
		used++
		t.TextSize, t.TextStyle = theme.TextSize(), fyne.TextStyle{Bold: !caption}
		if caption {
			t.TextSize = theme.CaptionTextSize()
		}
		measured.set(width, t.TextSize)
		content = measured.cut(content, t.TextStyle)
		t.Move(fyne.NewPos(x, y))
		if ink := theme.Color(tone); t.Text != content || t.Color != ink {
			t.Text, t.Color = content, ink
		}
		t.Resize(t.MinSize())
		t.Refresh()
	})
	for _, spare := range l.texts[used:] {
		spare.Text = ""
		spare.Refresh()
	}
	l.inner.Resize(l.size)
}
