package charts

import (
	"cmp"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
)

// Series is one line over the days.
type Series struct {
	Name   string    // empty: a line without a label
	Values []float64 // one per day
	OnTop  []float64 // what comes on top on a day, shown apart as an open mark; nil: nothing
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
				highest = max(highest, value+s.onTop(i))
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
	c.paintFair(d, across, vertical, left, d.size.Width-right)
	if c.marked >= 0 && c.marked < len(c.days) {
		x := across.at(float64(c.marked))
		d.line(x, top, x, d.size.Height-foot, 1, look.Spruce)
	}
	c.paintLines(d, across, vertical, right)
}

func (s Series) gap(i int) bool { return i < len(s.Gaps) && s.Gaps[i] }

func (s Series) onTop(i int) float64 {
	if i < len(s.OnTop) {
		return s.OnTop[i]
	}
	return 0
}

// paintFair draws the fair level as a band of 5 % to each side, a step a day,
// between the sides of the picture.
func (c *LineChart) paintFair(d *drawing, across, vertical scale, left, right float32) {
	half := (across.at(1) - across.at(0)) / 2
	for i, level := range c.fair {
		x, top, bottom := across.at(float64(i)), vertical.at(level*1.05), vertical.at(level*0.95)
		from, to := max(left, x-half), min(right, x+half)
		d.rectangle(from, top, to-from, bottom-top, look.Wash)
	}
	if len(c.fair) > 0 {
		// Above its band: the lines run within and below it.
		d.text(lang.L("fair"), across.at(0)+4, vertical.at(c.fair[0]*1.05)-8, fyne.TextAlignLeading, look.Spruce)
	}
}

func (c *LineChart) paintLines(d *drawing, across, vertical scale, right float32) {
	var names []endName
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
			if more := s.onTop(i); more > 0 {
				above := vertical.at(s.Values[i] + more)
				if s.Strong {
					d.line(x, y, x, above, 1, look.Slate)
				}
				d.ring(x, above, 2+width/2, 1, look.Slate, false)
			}
			last = i
		}
		if last >= 0 && s.Name != "" {
			names = append(names, endName{vertical.at(s.Values[last]), n, s.Strong})
		}
	}
	for _, name := range spread(names, 8, d.size.Height-8) {
		s := c.series[name.series]
		tone := look.Quiet
		if s.Strong {
			tone = look.Spruce
		}
		x := d.size.Width - right + 4
		size := d.text(d.cut(s.Name, right-4), x, name.y, fyne.TextAlignLeading, tone)
		d.onTap(x, name.y-size.Height/2, x+size.Width, name.y+size.Height/2, s.Tapped)
	}
}

// endName is the name of a line at its end.
type endName struct {
	y      float32
	series int
	strong bool
}

// spread moves names apart so that none is written over another or outside
// the picture. Where there is no room for all, the lowest lines go without
// one, strong ones last.
func spread(names []endName, top, bottom float32) []endName {
	apart := 12 * look.Scale()
	slices.SortStableFunc(names, func(a, b endName) int { return cmp.Compare(a.y, b.y) })
	for room := max(1, int((bottom-top)/apart)+1); len(names) > room; {
		at := len(names) - 1
		for at > 0 && names[at].strong {
			at--
		}
		names = slices.Delete(names, at, at+1)
	}
	lowest := top - apart
	for i := range names {
		names[i].y = max(names[i].y, lowest+apart)
		lowest = names[i].y
	}
	highest := bottom + apart
	for i := len(names) - 1; i >= 0; i-- {
		names[i].y = min(names[i].y, highest-apart)
		highest = names[i].y
	}
	return names
}
