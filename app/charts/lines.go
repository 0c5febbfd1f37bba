package charts

import (
	"slices"

	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Series is one line over the days.
type Series struct {
	Name   string    // empty: a line without a label
	Values []float64 // one per day
	Gaps   []bool    // days on which there is no value; nil: none
	Strong bool      // the selected one
	Tapped func()
}

// LineChart is one line a member over the days, with the fair level as a band.
type LineChart struct {
	base
	unit   string
	days   []string
	series []Series
	fair   []float64 // one per day; nil: no band
	marked int       // day shown by an upright, -1 for none
	format func(float64) string
}

// NewLineChart makes an empty chart.
func NewLineChart(unit string, format func(float64) string) *LineChart {
	c := &LineChart{unit: unit, marked: -1, format: format}
	if format == nil {
		c.format = short
	}
	c.least = fyne.NewSize(260, 160)
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// Set draws other lines.
func (c *LineChart) Set(days []string, series []Series, fair []float64) {
	c.days, c.series, c.fair = days, series, fair
	c.Refresh()
}

// Mark shows a day by an upright; -1 for none.
func (c *LineChart) Mark(day int) {
	c.marked = day
	c.Refresh()
}

func (c *LineChart) paint(d *drawing) {
	const left, top, foot = 52, 20, 22
	right := float32(8)
	for _, s := range c.series {
		right = max(right, fyne.MeasureText(s.Name, 12, fyne.TextStyle{}).Width+16)
	}
	right = min(right, d.size.Width/4)
	highest := 0.0001
	for _, s := range c.series {
		for i, value := range s.Values {
			if !s.gap(i) {
				highest = max(highest, value)
			}
		}
	}
	for _, value := range c.fair {
		highest = max(highest, value)
	}
	d.text(c.unit, left-6, 8, fyne.TextAlignTrailing, look.Quiet)
	vertical := d.upright(0, highest*1.08, left, d.size.Width-right, top, d.size.Height-foot, c.format)
	if len(c.days) == 0 {
		return
	}
	across := scale{low: 0, high: float64(max(1, len(c.days)-1)), from: left + 12, to: d.size.Width - right - 12}
	for i, day := range c.days {
		d.text(day, across.at(float64(i)), d.size.Height-foot/2, fyne.TextAlignCenter, look.Quiet)
	}
	c.paintFair(d, across, vertical)
	if c.marked >= 0 && c.marked < len(c.days) {
		x := across.at(float64(c.marked))
		d.line(x, top, x, d.size.Height-foot, 1, look.Spruce)
	}
	c.paintLines(d, across, vertical, right)
}

func (s Series) gap(i int) bool { return i < len(s.Gaps) && s.Gaps[i] }

// paintFair draws the fair level as a band of 5 % to each side, a step a day.
func (c *LineChart) paintFair(d *drawing, across, vertical scale) {
	half := (across.at(1) - across.at(0)) / 2
	for i, level := range c.fair {
		x, top, bottom := across.at(float64(i)), vertical.at(level*1.05), vertical.at(level*0.95)
		d.rectangle(x-half, top, 2*half, bottom-top, look.Wash)
	}
	if len(c.fair) > 0 {
		d.text("fair", across.at(0), vertical.at(c.fair[0])-1, fyne.TextAlignCenter, look.Spruce)
	}
}

func (c *LineChart) paintLines(d *drawing, across, vertical scale, right float32) {
	type label struct {
		y      float32
		series int
	}
	var labels []label
	for n, s := range c.series {
		tone, width := look.Quiet, float32(1)
		if s.Strong {
			tone, width = look.Spruce, 3
		}
		last := -1
		for i := range s.Values {
			if s.gap(i) {
				continue
			}
			x, y := across.at(float64(i)), vertical.at(s.Values[i])
			if i > 0 && !s.gap(i-1) {
				d.line(across.at(float64(i-1)), vertical.at(s.Values[i-1]), x, y, width, tone)
			}
			d.ring(x, y, 2+width/2, 1, tone, s.Strong)
			last = i
		}
		if last >= 0 && s.Name != "" {
			labels = append(labels, label{vertical.at(s.Values[last]), n})
		}
	}
	slices.SortStableFunc(labels, func(a, b label) int { return int(a.y*16) - int(b.y*16) })
	lowest := float32(-100)
	for _, l := range labels {
		y := max(l.y, lowest+12)
		lowest = y
		s := c.series[l.series]
		tone := look.Quiet
		if s.Strong {
			tone = look.Spruce
		}
		x := d.size.Width - right + 4
		size := d.text(s.Name, x, y, fyne.TextAlignLeading, tone)
		d.onTap(x, y-size.Height/2, x+size.Width, y+size.Height/2, s.Tapped)
	}
}
