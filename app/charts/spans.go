package charts

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Span is one bar of a SpanChart: from when to when, and where time runs out.
type Span struct {
	Label    string
	From, To float64
	Ends     float64 // where it runs out
	EndKnown bool
	Warn     bool // To is past Ends, or not known
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
		tone := look.Spruce
		if span.Warn {
			tone = look.Brick
		}
		d.text(span.Label, left-8, y, fyne.TextAlignTrailing, look.Ink)
		d.rectangle(across.at(span.From), y-6, across.at(span.To)-across.at(span.From), 12, tone)
		if span.EndKnown {
			x := across.at(min(span.Ends, float64(len(c.days))))
			d.line(x, y-9, x, y+9, 2, look.Ink)
		}
		d.text(span.Word, across.to+6, y, fyne.TextAlignLeading, tone)
		d.onTap(0, y-spanRow/2, d.size.Width, y+spanRow/2, span.Tapped)
	}
}
