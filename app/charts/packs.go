package charts

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Part is one layer of a column.
type Part struct {
	Value  float64
	Label  string // written into it where there is room
	Tone   fyne.ThemeColorName
	Hollow bool // outlined, for what is told apart
}

// PackState is what is being done with a column.
type PackState int

// States of a column.
const (
	AtRest  PackState = iota
	Chosen            // the one whose things are listed
	Giving            // something is being taken from it
	Taking            // and would come here
	Refused           // and must not come here
)

// Pack is one column of a PackChart.
type Pack struct {
	Name   string
	Group  string   // neighbours of one group stand under one heading
	Notes  []string // above the column, most important first
	Warn   bool     // the notes ask to be looked at
	Parts  []Part   // from the ground up
	Apart  Part     // above them, with a gap
	Fair   float64  // level of the fair line, 0 for none
	Limit  float64  // level not to be passed, 0 for none
	State  PackState
	Faint  bool // an old figure
	Tapped func()
}

// PackChart is a column for each pack, layer upon layer, with the fair line
// and the limits. It draws only the columns that can be seen.
type PackChart struct {
	base
	packs    []Pack
	top      float64
	width    float32 // of one column
	from, to float32 // what can be seen
}

// Measures of a PackChart.
const (
	packFoot      float32 = 44 // for name, group, and the bar to scroll by
	packGap       float32 = 8
	narrowestPack float32 = 58
	widestPack    float32 = 110
)

// packHead is the room for the notes above the columns.
func packHead() float32 { return 36 * look.Scale() }

// NewPackChart makes an empty chart.
func NewPackChart() *PackChart {
	c := &PackChart{}
	c.least = fyne.NewSize(narrowestPack, 200)
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// Set draws other columns up to a top value.
func (c *PackChart) Set(packs []Pack, top float64) {
	again := len(packs) != len(c.packs)
	c.packs, c.top = packs, top
	if again {
		c.fit()
	}
	c.Refresh()
}

// See tells which stretch can be seen, so that only it is drawn, and that
// columns should fill it where they can.
func (c *PackChart) See(from, width float32) {
	if c.from == from && c.to == from+width {
		return
	}
	c.from, c.to = from, from+width
	c.fit()
	c.Refresh()
}

func (c *PackChart) fit() {
	n := float32(max(1, len(c.packs)))
	c.width = max(narrowestPack*look.Scale(), min(widestPack, (c.to-c.from)/n))
	c.least.Width = n * c.width
}

// At gives the column at a place across the chart, -1 for none.
func (c *PackChart) At(x float32) int {
	if i := int(x / max(1, c.width)); x >= 0 && i < len(c.packs) {
		return i
	}
	return -1
}

// Span gives where a column begins and ends.
func (c *PackChart) Span(i int) (from, to float32) {
	return float32(i) * c.width, float32(i+1) * c.width
}

// level maps values onto the height of a chart.
func level(top float64, height float32) scale {
	return scale{low: 0, high: max(top, 1e-9), from: height - packFoot, to: packHead()}
}

func (c *PackChart) paint(d *drawing) {
	up := level(c.top, d.size.Height)
	group := ""
	for i, pack := range c.packs {
		from, to := c.Span(i)
		first := i == 0 || pack.Group != group
		group = pack.Group
		if to <= c.from || from >= c.to {
			continue
		}
		if first && i > 0 {
			d.line(from, packHead(), from, d.size.Height, 1, look.Line)
		}
		if first || from <= c.from {
			d.text(pack.Group, max(from, c.from)+packGap/2, d.size.Height-17, fyne.TextAlignLeading, look.Quiet)
		}
		c.paintPack(d, up, pack, from, to)
	}
}

func (c *PackChart) paintPack(d *drawing, up scale, pack Pack, from, to float32) {
	ground, middle := up.at(0), (from+to)/2
	switch pack.State {
	case Chosen, Taking:
		d.rectangle(from+1, 0, to-from-2, d.size.Height-26, look.Wash)
	case Giving:
		d.rectangle(from+1, 0, to-from-2, d.size.Height-26, look.Stripe)
	}
	y, fair := ground, up.at(pack.Fair)
	lines := []float32{fair}
	if pack.Limit > 0 {
		lines = append(lines, up.at(pack.Limit))
	}
	for _, part := range pack.Parts {
		y = c.paintPart(d, up, part, from+packGap, to-packGap, y, lines, pack.Faint)
	}
	if pack.Apart.Value > 0 {
		c.paintPart(d, up, pack.Apart, from+packGap, to-packGap, y-3, lines, pack.Faint)
	}
	d.line(from, ground, to, ground, 1, look.Quiet)
	if pack.Fair > 0 && pack.Fair <= c.top {
		d.line(from, fair, to, fair, 2, look.Ink)
	}
	if pack.Limit > 0 && pack.Limit <= c.top {
		at := up.at(pack.Limit)
		d.line(from+3, at, to-3, at, 3, look.Brick)
	}
	c.paintWords(d, pack, middle, ground)
	d.onTap(from, 0, to, d.size.Height, pack.Tapped)
}

func (c *PackChart) paintWords(d *drawing, pack Pack, middle, ground float32) {
	tone := look.Ink
	switch {
	case pack.State == Refused || pack.Warn:
		tone = look.Brick
	case pack.Faint:
		tone = look.Quiet
	}
	for n, note := range pack.Notes {
		d.text(d.cut(note, c.width-2), middle, (9+float32(n)*14)*look.Scale(), fyne.TextAlignCenter, tone)
		if tone == look.Ink {
			tone = look.Quiet
		}
	}
	name := look.Ink
	if pack.State == Chosen || pack.State == Taking {
		name = look.Spruce
	}
	d.text(d.cut(pack.Name, c.width-4), middle, ground+10, fyne.TextAlignCenter, name)
}

// besideLines gives the middle of a figure in a layer from top to bottom that
// none of the lines strikes through, false where there is no room for one.
func besideLines(top, bottom float32, lines ...float32) (float32, bool) {
	const half = 8
	free := func(middle float32) bool {
		for _, line := range lines {
			if middle > line-half && middle < line+half {
				return false
			}
		}
		return middle-half >= top-0.5 && middle+half <= bottom+0.5
	}
	places := []float32{(top + bottom) / 2}
	for _, line := range lines {
		places = append(places, line+half+1, line-half-1)
	}
	for _, middle := range places {
		if free(middle) {
			return middle, true
		}
	}
	return 0, false
}

// paintPart draws a layer that stands on y, with lines over all layers, and
// gives its upper edge.
func (c *PackChart) paintPart(d *drawing, up scale, part Part, from, to, y float32, lines []float32, faint bool) float32 {
	height := up.at(0) - up.at(part.Value)
	if height < 0.5 {
		return y
	}
	tone, words := part.Tone, look.Panel
	if part.Tone == look.Line || part.Hollow {
		words = look.Ink
	}
	if faint && tone == look.Spruce {
		tone = look.Quiet
	}
	d.rectangle(from, y-height, to-from, height, tone)
	if part.Hollow && height > 3 {
		d.rectangle(from+1.5, y-height+1.5, to-from-3, height-3, look.Panel)
	} else if height > 2 {
		d.line(from, y-height, to, y-height, 1, look.Panel)
	}
	if middle, room := besideLines(y-height, y, lines...); part.Label != "" && room {
		d.text(d.cut(part.Label, to-from-2), (from+to)/2, middle, fyne.TextAlignCenter, words)
	}
	return y - height
}
