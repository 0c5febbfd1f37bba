package charts

import (
	"math"

	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Point is one place of the way.
type Point struct {
	Distance float64 // from the start, in the reader's unit
	Height   float64
}

// Stop is a labelled place on the way, such as a camp.
type Stop struct {
	Distance float64
	Label    string // short, such as the number of the day
	Name     string // of what waits there, if anything does
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
	line := captionHeight()
	left, right, foot := 20+max(captionWidth(short(math.Round(high))), captionWidth("0000")), float32(12), line*3/2
	end := c.points[len(c.points)-1].Distance
	across := scale{low: 0, high: max(end, 1e-9), from: left, to: d.size.Width - right}
	top := c.paintStops(d, across, d.size.Height-foot)
	d.text(c.heightUnit, left-6, line/2, fyne.TextAlignTrailing, look.Quiet)
	vertical := d.upright(low-room, high+room, left, d.size.Width-right, top, d.size.Height-foot, short)
	for _, value := range ticks(0, across.high, max(2, int((across.to-across.from)/(captionWidth("000 "+c.distanceUnit)+30)))) {
		words := short(value) + " " + c.distanceUnit
		middle := min(across.at(value), d.size.Width-captionWidth(words)/2)
		d.text(words, middle, d.size.Height-foot/2, fyne.TextAlignCenter, look.Quiet)
	}
	for i := 1; i < len(c.points); i++ {
		a, b := c.points[i-1], c.points[i]
		d.line(across.at(a.Distance), vertical.at(a.Height), across.at(b.Distance), vertical.at(b.Height), 2, look.Slate)
	}
	c.paintStops(d, across, top)
}

// paintStops writes the labels on one line and the names below, on a second
// line where two would touch, and gives where the picture begins under them.
func (c *ProfileChart) paintStops(d *drawing, across scale, bottom float32) (top float32) {
	line := captionHeight()
	labelled := float32(-1000) // where the last label ends
	ends := [2]float32{-1000, -1000}
	rows := 0
	type drop struct{ x, from float32 }
	var drops []drop
	for _, stop := range c.stops {
		x := across.at(stop.Distance)
		tone := look.Quiet
		if stop.Strong {
			tone = look.Spruce
		}
		if wide := captionWidth(stop.Label); x-wide/2 > labelled+4 {
			middle := min(x, d.size.Width-wide/2)
			d.text(stop.Label, middle, line/2, fyne.TextAlignCenter, tone)
			labelled = middle + wide/2
		}
		from := float32(0) // where its line begins, if it is not the picture
		if stop.Name != "" {
			wide := captionWidth(stop.Name)
			begins := max(across.from, min(x+4, d.size.Width-wide)) // to the left at the end of the way
			for row := range ends {
				if ends[row] > begins-8 {
					continue
				}
				d.text(d.cut(stop.Name, d.size.Width-begins), begins, line*(1.5+float32(row)), fyne.TextAlignLeading, tone)
				ends[row], rows, from = begins+wide, max(rows, row+1), line
				break
			}
		}
		drops = append(drops, drop{x, from})
	}
	top = line*float32(1+rows) + 6
	for _, drop := range drops {
		if drop.from == 0 {
			drop.from = top
		}
		d.line(drop.x, drop.from, drop.x, bottom, 1, look.Line)
	}
	return top
}
