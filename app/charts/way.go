package charts

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// WayLine is one line on a card.
type WayLine struct {
	Text string
	Tone fyne.ThemeColorName // ink if empty
}

// WayStop is a place on the way where something can wait.
type WayStop struct {
	Name   string
	After  int       // day on whose evening it is reached, 1-based
	Used   bool      // filled mark; it has a card
	Chosen bool      // its card is framed
	Lines  []WayLine // on the card
	Tapped func()
}

// WayChart is the days as a line with its stops and, below, a card for each
// stop that is used: what waits there.
type WayChart struct {
	base
	days  []string // under the line
	word  string   // "day"
	stops []WayStop
}

// Measures of a WayChart.
const (
	wayGap     float32 = 12
	wayMargin  float32 = 24
	leastLines         = 5 // on a card
	mostLines          = 10
)

// wayTop is where the line of the days is, below the names of stops.
func wayTop() float32 { return 32 * max(1, look.Scale()) }

// wayPitch is the height of a line on a card.
func wayPitch() float32 { return 16 * look.Scale() }

// wayCard is the width of a card, wider for larger text.
func wayCard() float32 { return 236 * max(1, look.Scale()) }

// cardTop is where cards begin below the names of the days.
func cardTop() float32 { return wayTop() + 12 + 16*look.Scale() }

// NewWayChart makes an empty chart.
func NewWayChart(word string) *WayChart {
	c := &WayChart{word: word}
	c.least = fyne.NewSize(300, cardTop()+cardHeight(leastLines))
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// Set draws other days and stops, in the order of the days.
func (c *WayChart) Set(days int, stops []WayStop) {
	c.days = c.days[:0]
	for d := range days {
		c.days = append(c.days, strconv.Itoa(d+1))
	}
	c.stops = stops
	used, lines := 0, leastLines
	for _, stop := range stops {
		if stop.Used {
			used++
			lines = max(lines, min(mostLines, len(stop.wrapped())))
		}
	}
	c.least.Height = cardTop() + cardHeight(lines)
	c.least.Width = max(300, float32(used)*(wayCard()+wayGap)+2*wayMargin, float32(days)*20)
	c.Refresh()
}

// cardHeight has room for so many lines.
func cardHeight(lines int) float32 { return wayPitch()*float32(lines) + 16 }

// wrapped are the lines of a stop's card in its width.
func (s WayStop) wrapped() []WayLine {
	var lines []WayLine
	for _, line := range s.Lines {
		tone := line.Tone
		if tone == "" {
			tone = look.Ink
		}
		for _, part := range wrap(line.Text, wayCard()-16) {
			lines = append(lines, WayLine{part, tone})
		}
	}
	return lines
}

// at gives where the evening of a day is; 0 is the start.
func (c *WayChart) at(d *drawing, evening int) float32 {
	s := scale{low: 0, high: float64(max(1, len(c.days))), from: wayMargin, to: d.size.Width - wayMargin}
	return s.at(float64(evening))
}

func (c *WayChart) paint(d *drawing) {
	y := wayTop()
	d.line(wayMargin, y, d.size.Width-wayMargin, y, 3, look.Line)
	for i, day := range c.days {
		left, right := c.at(d, i), c.at(d, i+1)
		d.line(left, y-4, left, y+4, 1, look.Quiet)
		label := day
		if i == 0 || right-left > captionWidth(c.word+" 00")+8 {
			label = c.word + " " + day
		}
		d.text(label, (left+right)/2, y+2+captionHeight()/2, fyne.TextAlignCenter, look.Quiet)
	}
	d.line(d.size.Width-wayMargin, y-4, d.size.Width-wayMargin, y+4, 1, look.Quiet)
	places := c.places(d)
	free := float32(0) // where names end so far
	for i, stop := range c.stops {
		x := c.at(d, stop.After)
		if stop.Used {
			c.paintCard(d, stop, places[i], x, y)
		}
		tone := look.Quiet
		if stop.Used {
			tone = look.Spruce
		}
		if name := d.cut(stop.Name, 150*max(1, look.Scale())); x-captionWidth(name)/2 >= free {
			size := d.text(name, x, y-8-captionHeight()/2, fyne.TextAlignCenter, tone)
			free = x + size.Width/2 + 8
		}
		d.ring(x, y, 6, 2, tone, stop.Used)
		d.onTap(x-12, y-26, x+12, y+14, stop.Tapped)
	}
}

// places puts the cards side by side, each as near to its stop as the others
// allow.
func (c *WayChart) places(d *drawing) []float32 {
	places := make([]float32, len(c.stops))
	next := wayMargin - wayGap
	for i, stop := range c.stops {
		if stop.Used {
			places[i] = max(next+wayGap, c.at(d, stop.After)-wayCard()/2)
			next = places[i] + wayCard()
		}
	}
	limit := d.size.Width - wayGap
	for i := len(c.stops) - 1; i >= 0; i-- {
		if c.stops[i].Used {
			places[i] = max(0, min(places[i], limit-wayCard()))
			limit = places[i] - wayGap
		}
	}
	return places
}

func (c *WayChart) paintCard(d *drawing, stop WayStop, left, x, y float32) {
	top := cardTop()
	height := d.size.Height - top - 2
	d.line(x, y, x, top-6, 1, look.Spruce)
	d.line(x, top-6, max(left+8, min(x, left+wayCard()-8)), top, 1, look.Spruce)
	edge, width := look.Line, float32(1)
	if stop.Chosen {
		edge, width = look.Spruce, 2
	}
	d.rectangle(left, top, wayCard(), height, edge)
	d.rectangle(left+width, top+width, wayCard()-2*width, height-2*width, look.Panel)
	lines, pitch := stop.wrapped(), wayPitch()
	if room := int((height - 12) / pitch); len(lines) > room && room > 0 {
		lines = lines[:room]
		lines[room-1].Text = d.cut(lines[room-1].Text+" …", wayCard()-16)
	}
	for i, line := range lines {
		d.text(line.Text, left+8, top+6+(float32(i)+0.5)*pitch, fyne.TextAlignLeading, line.Tone)
	}
	d.onTap(left, top, left+wayCard(), top+height, stop.Tapped)
}

// wrap breaks a text into lines that fit. It measures words, which come again
// and again, and not lines, of which each is another.
func wrap(content string, width float32) []string {
	var lines []string
	line, at, space := "", float32(0), captionWidth(" ")
	for _, word := range strings.Fields(content) {
		long := captionWidth(word)
		if line != "" && at+space+long > width {
			lines, line = append(lines, line), ""
		}
		if line == "" {
			line, at = word, long
			continue
		}
		line, at = line+" "+word, at+space+long
	}
	return append(lines, line)
}
