package charts

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Point is one place of the way.
type Point struct {
	Distance float64 // from the start, in the reader's unit
	Height   float64
}

// Stop is a labelled place on the way, such as a camp or a box.
type Stop struct {
	Distance float64
	Label    string
	Strong   bool
}

// ProfileChart is the height of the way.
type ProfileChart struct {
	base
	distanceUnit, heightUnit string
	points                   []Point
	stops                    []Stop
}

// NewProfileChart makes an empty profile.
func NewProfileChart(distanceUnit, heightUnit string) *ProfileChart {
	c := &ProfileChart{distanceUnit: distanceUnit, heightUnit: heightUnit}
	c.least = fyne.NewSize(260, 150)
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// Set draws another way, in units of its own.
func (c *ProfileChart) Set(distanceUnit, heightUnit string, points []Point, stops []Stop) {
	c.distanceUnit, c.heightUnit, c.points, c.stops = distanceUnit, heightUnit, points, stops
	c.Refresh()
}

func (c *ProfileChart) paint(d *drawing) {
	const left, right, top, foot = 56, 12, 34, 22
	if len(c.points) < 2 {
		return
	}
	low, high := c.points[0].Height, c.points[0].Height
	for _, p := range c.points {
		low, high = min(low, p.Height), max(high, p.Height)
	}
	if high-low < 50 {
		high = low + 50
	}
	room := (high - low) * 0.1
	d.text(c.heightUnit, left-6, 8, fyne.TextAlignTrailing, look.Quiet)
	vertical := d.upright(low-room, high+room, left, d.size.Width-right, top, d.size.Height-foot, short)
	end := c.points[len(c.points)-1].Distance
	across := scale{low: 0, high: max(end, 1e-9), from: left, to: d.size.Width - right}
	for _, value := range ticks(0, across.high, max(2, int((across.to-across.from)/90))) {
		d.text(short(value)+" "+c.distanceUnit, across.at(value), d.size.Height-foot/2, fyne.TextAlignCenter, look.Quiet)
	}
	for i := 1; i < len(c.points); i++ {
		a, b := c.points[i-1], c.points[i]
		d.line(across.at(a.Distance), vertical.at(a.Height), across.at(b.Distance), vertical.at(b.Height), 2, look.Slate)
	}
	c.paintStops(d, across, top)
}

// paintStops writes labels in two rows, so that near ones do not overlap.
func (c *ProfileChart) paintStops(d *drawing, across scale, top float32) {
	ends := [2]float32{-1000, -1000}
	for _, stop := range c.stops {
		x := across.at(stop.Distance)
		tone := look.Quiet
		if stop.Strong {
			tone = look.Spruce
		}
		d.line(x, top, x, d.size.Height-22, 1, look.Line)
		row := 0
		if ends[0] > x-4 {
			row = 1
		}
		if ends[row] > x-4 {
			continue
		}
		size := d.text(stop.Label, x+3, 10+float32(row)*14, fyne.TextAlignLeading, tone)
		ends[row] = x + size.Width
	}
}
