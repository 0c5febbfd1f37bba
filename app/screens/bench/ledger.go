package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// Entry is a line of a Ledger. One with a What alone is a heading.
type Entry struct {
	What   string
	Figure string // with its unit, at the right
	Basis  string // below, small: how it was reckoned and by whose figures
	Total  bool   // what the lines above come to
}

// Ledger answers "why this figure?": what it is made of, line by line, with
// the figures under each other.
type Ledger struct {
	widget.BaseWidget
	entries []Entry
	rows    *Column
	scroll  *Scroll
}

// NewLedger makes an empty one, which scrolls where it is higher than its
// place. Its lines come in steps; later runs each of them after a frame.
func NewLedger(later func(step func())) *Ledger {
	l := &Ledger{}
	l.rows, l.scroll = NewScrolled(later)
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer shows the lines.
func (l *Ledger) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.scroll) }

// Entries are the lines shown.
func (l *Ledger) Entries() []Entry { return l.entries }

// Set shows other lines.
func (l *Ledger) Set(entries []Entry) {
	l.entries = entries
	l.rows.Set(len(entries), func(i int) fyne.CanvasObject { return rowOf(entries[i]) })
}

func rowOf(e Entry) fyne.CanvasObject {
	what := look.NewParagraph(e.What, look.Body, look.Ink)
	what.Bold = e.Total || e.Figure == "" && e.Basis == ""
	if e.Figure == "" && e.Basis == "" {
		return what
	}
	figure := look.NewText(e.Figure, look.Body, look.Ink)
	figure.Align, figure.Bold = fyne.TextAlignTrailing, e.Total
	// The figures stand clear of the scroll bar.
	right := container.New(layout.NewCustomPaddedLayout(0, 0, look.SpaceSmall, look.SpaceWide), figure)
	head := container.NewBorder(nil, nil, nil, right, what)
	if e.Basis == "" {
		return head
	}
	return container.New(tight{}, head, look.NewParagraph(e.Basis, look.Caption, look.Quiet))
}

// tight stacks objects without the padding that labels bring along between
// them.
type tight struct{}

// overlap is how far a basis moves up under its line.
const overlap = 8

// MinSize is the height of all.
func (tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	size := fyne.Size{}
	for i, object := range objects {
		least := object.MinSize()
		size.Width = max(size.Width, least.Width)
		size.Height += least.Height
		if i > 0 {
			size.Height -= overlap
		}
	}
	return size
}

// Layout puts one below the other.
func (tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, object := range objects {
		object.Resize(fyne.NewSize(size.Width, object.MinSize().Height))
		height := object.MinSize().Height
		object.Resize(fyne.NewSize(size.Width, height))
		object.Move(fyne.NewPos(0, y))
		y += height - overlap
	}
}
