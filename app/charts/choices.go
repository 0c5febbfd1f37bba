package charts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// Choice is one point of a ChoiceChart.
type Choice struct {
	Name    string
	Across  float64
	Up      float64
	Chosen  bool
	Advised bool
	Tapped  func()
}

// ChoiceChart shows choices that nothing beats, one figure against another,
// to pick from by tapping; the chosen one is ringed.
type ChoiceChart struct {
	base
	across, up             string
	formatAcross, formatUp func(float64) string
	choices                []Choice
}

// NewChoiceChart makes an empty chart with the names of its axes.
func NewChoiceChart(across, up string, formatAcross, formatUp func(float64) string) *ChoiceChart {
	c := &ChoiceChart{across: across, up: up, formatAcross: formatAcross, formatUp: formatUp}
	c.least = fyne.NewSize(260, 180)
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// SetUp gives the upright axis another measure.
func (c *ChoiceChart) SetUp(name string, format func(float64) string) {
	if format != nil {
		c.up, c.formatUp = name, format
	}
}

// Set draws other choices.
func (c *ChoiceChart) Set(choices []Choice) {
	c.choices = choices
	c.Refresh()
}

func (c *ChoiceChart) paint(d *drawing) {
	const right = 24
	line := captionHeight()
	top, foot := line*3/2, footOf(line)
	lowX, highX, highY := 0.0, 1e-9, 1e-9
	for i, choice := range c.choices {
		if i == 0 || choice.Across < lowX {
			lowX = choice.Across
		}
		highX, highY = max(highX, choice.Across), max(highY, choice.Up)
	}
	lowX = min(lowX*0.9, highX*0.95)
	left := 16 + max(captionWidth(c.formatUp(highY*1.15)), captionWidth(c.formatUp(0)))
	d.text(d.cut(c.up, d.size.Width-left), left-6, line*2/3, fyne.TextAlignLeading, look.Quiet)
	vertical := d.upright(0, highY*1.15, left, d.size.Width-right, top, d.size.Height-foot, c.formatUp)
	across := scale{low: lowX, high: highX * 1.05, from: left + 10, to: d.size.Width - right}
	figure := max(captionWidth(c.formatAcross(across.low)), captionWidth(c.formatAcross(across.high)))
	for _, value := range toldApart(c.formatAcross, across.low, across.high, max(2, int((across.to-across.from)/(2*figure)))) {
		d.text(c.formatAcross(value), across.at(value), d.size.Height-foot+line*3/4, fyne.TextAlignCenter, look.Quiet)
	}
	d.text(d.cut(c.across, d.size.Width-right), d.size.Width-right, d.size.Height-line*2/3, fyne.TextAlignTrailing, look.Quiet)
	taken := make([]box, len(c.choices)) // by the points, then by names
	for i, choice := range c.choices {
		x := across.at(choice.Across)
		taken[i] = box{from: x - 7, to: x + 7, y: vertical.at(choice.Up)}
	}
	for _, choice := range c.choices {
		taken = c.paintChoice(d, choice, across.at(choice.Across), vertical.at(choice.Up), taken)
	}
}

// toldApart gives at most the wanted number of round values that are written
// differently.
func toldApart(format func(float64) string, low, high float64, wanted int) []float64 {
	for ; wanted > 2; wanted-- {
		values, written := ticks(low, high, wanted), map[string]bool{}
		for _, value := range values {
			written[format(value)] = true
		}
		if len(written) == len(values) {
			return values
		}
	}
	return ticks(low, high, wanted)
}

// captionHeight is that of a line of the picture's words, captionWidth how wide
// words are, in the size of text of the moment.
func captionHeight() float32 {
	return fyne.MeasureText("0", theme.CaptionTextSize(), fyne.TextStyle{}).Height
}

func captionWidth(words string) float32 {
	return fyne.MeasureText(words, theme.CaptionTextSize(), fyne.TextStyle{}).Width
}

// footOf is the height below the picture for the figures and the name of the axis.
func footOf(line float32) float32 { return line * 5 / 2 }

// box is a place on the picture that is written on.
type box struct{ from, to, y float32 }

// clearOf moves a line of writing up until it touches no other.
func clearOf(b box, taken []box) box {
	apart := captionHeight() * 9 / 10
	for moved := true; moved; {
		moved = false
		for _, other := range taken {
			if b.from < other.to && b.to > other.from && b.y < other.y+apart && b.y > other.y-apart {
				b.y, moved = other.y-apart, true
			}
		}
	}
	return b
}

// paintChoice draws a choice, its name clear of those that are written.
func (c *ChoiceChart) paintChoice(d *drawing, choice Choice, x, y float32, taken []box) []box {
	if choice.Chosen {
		d.ring(x, y, 11, 2, look.Spruce, false)
	}
	d.ring(x, y, 5, 1, look.Spruce, true)
	name := choice.Name
	if choice.Advised {
		name += " (" + lang.L("advised") + ")"
	}
	lowest := footOf(captionHeight()) + 12 // clear of the figures below
	const edge = 4                         // letters may be a little wider than they are measured
	name = d.cut(name, d.size.Width-2*edge)
	width := captionWidth(name)
	b := box{from: x + 15, to: x + 15 + width, y: min(y, d.size.Height-lowest)}
	if b.to > d.size.Width-edge { // to the left, or where it is wider than either side, along the edge
		b.from = max(edge, x-15-width)
		b.to = b.from + width
		if b.to > x-15 {
			b.y -= 20
		}
	}
	b = clearOf(b, taken)
	d.text(name, b.from, b.y, fyne.TextAlignLeading, look.Ink)
	d.onTap(x-14, y-14, x+14, y+14, choice.Tapped)
	return append(taken, b)
}
