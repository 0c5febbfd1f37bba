package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
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
	rows    *fyne.Container
	scroll  *Scroll
	held    bool // no line is shown
}

// NewLedger makes an empty one, which scrolls where it is higher than its
// place.
func NewLedger() *Ledger {
	l := &Ledger{rows: container.NewVBox()}
	l.scroll = NewScroll(l.rows)
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
	l.rows.Objects = nil
	if !l.held {
		l.add(len(entries))
	}
}

// linesAtOnce is how many lines one call of Fill fills in.
const linesAtOnce = 3

// Hold leaves the lines out until they are filled in.
func (l *Ledger) Hold() { l.held, l.rows.Objects = true, nil }

// Fill fills in a few lines and tells whether more are left out.
func (l *Ledger) Fill() bool {
	if !l.held {
		return false
	}
	l.add(min(len(l.rows.Objects)+linesAtOnce, len(l.entries)))
	l.held = len(l.rows.Objects) < len(l.entries)
	return l.held
}

// add shows lines after those that are shown, up to a count.
func (l *Ledger) add(upTo int) {
	for _, entry := range l.entries[len(l.rows.Objects):upTo] {
		row := rowOf(entry)
		l.rows.Objects = append(l.rows.Objects, row)
		canvas.Refresh(row)
	}
	l.scroll.Grown()
}

func rowOf(e Entry) fyne.CanvasObject {
	what := widget.NewLabel(e.What)
	what.Wrapping = fyne.TextWrapWord
	what.TextStyle.Bold = e.Total || e.Figure == "" && e.Basis == ""
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
	basis := widget.NewLabel(e.Basis)
	basis.Wrapping, basis.SizeName, basis.Importance = fyne.TextWrapWord, theme.SizeNameCaptionText, widget.LowImportance
	return container.New(tight{}, head, basis)
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
