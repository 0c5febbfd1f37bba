package charts

import (
	"strconv"

	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Air is the lowest and highest temperature of a day.
type Air struct {
	Label     string
	Low, High float64 // in the reader's unit
	Marked    bool    // the chosen day
	Tapped    func()
}

// TemperatureChart is a bar from the lowest to the highest temperature of
// each day, over the line at which water freezes.
type TemperatureChart struct {
	base
	unit     string
	freezing float64
	days     []Air
}

// NewTemperatureChart makes an empty chart.
func NewTemperatureChart() *TemperatureChart {
	c := &TemperatureChart{}
	c.least = fyne.NewSize(200, 120)
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// Set draws other days. Freezing is where water freezes in the unit.
func (c *TemperatureChart) Set(unit string, freezing float64, days []Air) {
	c.unit, c.freezing, c.days = unit, freezing, days
	c.Refresh()
}

func (c *TemperatureChart) paint(d *drawing) {
	const left, right, top, foot = 40, 8, 22, 20
	if len(c.days) == 0 {
		return
	}
	low, high := c.freezing, c.freezing
	for _, day := range c.days {
		low, high = min(low, day.Low), max(high, day.High)
	}
	high = max(high, low+10)
	d.text(c.unit, left-6, 8, fyne.TextAlignTrailing, look.Quiet)
	vertical := d.upright(low-2, high+2, left, d.size.Width-right, top, d.size.Height-foot, short)
	d.line(left, vertical.at(c.freezing), d.size.Width-right, vertical.at(c.freezing), 1, look.Slate)
	column := (d.size.Width - left - right) / float32(len(c.days))
	every := 1 + int(18/column) // so that the numbers of many days do not run together
	for i, day := range c.days {
		x := left + column*float32(i)
		tone := look.Quiet
		if day.Low < c.freezing {
			tone = look.Slate
		}
		width := min(column*0.6, 18)
		d.rectangle(x+(column-width)/2, vertical.at(day.High), width, max(2, vertical.at(day.Low)-vertical.at(day.High)), tone)
		if day.Marked {
			d.line(x, d.size.Height-foot+1, x+column, d.size.Height-foot+1, 2, look.Spruce)
		}
		if column >= 26 {
			d.text(whole(day.High), x+column/2, vertical.at(day.High)-8, fyne.TextAlignCenter, look.Quiet)
		}
		if i%every == 0 {
			d.text(day.Label, x+column/2, d.size.Height-foot/2+2, fyne.TextAlignCenter, look.Quiet)
		}
		d.onTap(x, 0, x+column, d.size.Height, day.Tapped)
	}
}

func whole(value float64) string { return strconv.FormatFloat(value, 'f', 0, 64) }
