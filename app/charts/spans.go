package charts

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Lasting is whether something lasts as long as it must.
type Lasting int

// Whether it lasts. Each has a look of its own besides its colour.
const (
	Lasts        Lasting = iota // a full bar
	RunsOut                     // a full bar that says so
	LastsUnknown                // nobody knows: only an outline, hatched
)

// Span is one bar of a SpanChart: from when to when, and where time runs out.
type Span struct {
	Label    string
	From, To float64
	Ends     float64 // where it runs out
	EndKnown bool
	Lasting  Lasting
	Word     string
	Tapped   func()
}

// SpanChart is the time each perishable has: a bar from packed to eaten, and
// a sign where it runs out.
type SpanChart struct {
	base
	days  []string
	spans []Span
}

// NewSpanChart makes an empty chart.
func NewSpanChart() *SpanChart {
	c := &SpanChart{}
	c.draw = c.paint
	c.least = fyne.NewSize(260, 60)
	c.ExtendBaseWidget(c)
	return c
}

const spanRow float32 = 22

// Set draws other bars over the days named.
func (c *SpanChart) Set(days []string, spans []Span) {
	c.days, c.spans = days, spans
	c.least = fyne.NewSize(260, 28+spanRow*float32(len(spans)))
	c.Refresh()
}

func (c *SpanChart) paint(d *drawing) {
	if len(c.days) == 0 {
		return
	}
	left := min(d.size.Width*0.3, 220)
	across := scale{low: 0, high: float64(len(c.days)), from: left, to: d.size.Width - 90}
	for i, day := range c.days {
		d.text(day, across.at(float64(i)+0.5), 10, fyne.TextAlignCenter, look.Quiet)
		d.line(across.at(float64(i)), 20, across.at(float64(i)), d.size.Height, 1, look.Line)
	}
	for i, span := range c.spans {
		y := 22 + spanRow*(float32(i)+0.5)
		tone := map[Lasting]fyne.ThemeColorName{Lasts: look.Spruce, RunsOut: look.Brick, LastsUnknown: look.Ochre}[span.Lasting]
		d.text(d.cut(span.Label, left-8), left-8, y, fyne.TextAlignTrailing, look.Ink)
		from, length := across.at(span.From), across.at(span.To)-across.at(span.From)
		if span.Lasting == LastsUnknown {
			d.hatched(from, y-6, length, 12, tone)
		} else {
			d.rectangle(from, y-6, length, 12, tone)
		}
		if span.EndKnown {
			x := across.at(min(span.Ends, float64(len(c.days))))
			d.line(x, y-9, x, y+9, 2, look.Ink)
		}
		d.text(span.Word, across.to+6, y, fyne.TextAlignLeading, tone)
		d.onTap(0, y-spanRow/2, d.size.Width, y+spanRow/2, span.Tapped)
	}
}
