package charts

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
)

// Intake is one bar of a NeedChart: what is eaten over what is needed.
type Intake struct {
	Label     string  // under the bar: the day, the member
	Eaten     float64 // the bar
	Need      float64 // the mark that the bar should reach
	Low, High float64 // bracket of the published equations
	Short     bool    // below what the trip allows
	Absent    bool    // nothing is drawn
	Tapped    func()
}

// NeedChart is energy needed against eaten, a bar for food over a bracket for
// need.
type NeedChart struct {
	base
	bars []Intake
	unit string
}

// NewNeedChart makes an empty chart; the unit stands above the axis.
func NewNeedChart(unit string) *NeedChart {
	c := &NeedChart{unit: unit}
	c.least = fyne.NewSize(200, 140)
	c.draw = c.paint
	c.ExtendBaseWidget(c)
	return c
}

// Set draws other bars.
func (c *NeedChart) Set(bars []Intake) {
	c.bars = bars
	c.Refresh()
}

func (c *NeedChart) paint(d *drawing) {
	const left, right, top, foot = 52, 8, 20, 22
	highest := 1.0
	for _, bar := range c.bars {
		highest = max(highest, bar.Eaten, bar.Need, bar.High)
	}
	d.text(c.unit, left-6, 8, fyne.TextAlignTrailing, look.Quiet)
	s := d.upright(0, highest*1.05, left, d.size.Width-right, top, d.size.Height-foot, short)
	if len(c.bars) == 0 {
		return
	}
	pitch := (d.size.Width - left - right) / float32(len(c.bars))
	each := c.labelled(pitch)
	word := lang.L("short")
	wide, free := captionWidth(word), float32(0) // free: right of the words before
	for i, bar := range c.bars {
		centre := left + (float32(i)+0.5)*pitch
		if i%each == 0 {
			d.text(d.cut(bar.Label, pitch*float32(each)-4), centre, d.size.Height-foot/2, fyne.TextAlignCenter, look.Quiet)
		}
		if !bar.Absent {
			paintIntake(d, bar, s, centre, pitch)
		}
		if bar.Short && !bar.Absent && centre-wide/2 >= free { // the line above a bar tells it too
			d.text(word, centre, s.at(bar.Eaten)-8, fyne.TextAlignCenter, look.Ochre)
			free = centre + wide/2 + 2
		}
		d.onTap(centre-pitch/2, top, centre+pitch/2, d.size.Height, bar.Tapped)
	}
}

// labelled says which bars have a label: every one, or where short labels such
// as days would not fit, every second, third and so on.
func (c *NeedChart) labelled(pitch float32) int {
	widest := float32(0)
	for _, bar := range c.bars {
		widest = max(widest, captionWidth(bar.Label))
	}
	const short = 24 // a longer one is cut rather than left out
	if widest > short {
		return 1
	}
	return max(1, int(math.Ceil(float64((widest+4)/pitch))))
}

func paintIntake(d *drawing, bar Intake, s scale, centre, pitch float32) {
	width := min(pitch*0.5, 36)
	tone := look.Spruce
	if bar.Short {
		tone = look.Ochre
	}
	d.rectangle(centre-width/2, s.at(0), width, s.at(bar.Eaten)-s.at(0), tone)
	reach := min(pitch*0.4, 26)
	if bar.High > bar.Low {
		x := centre + width/2 + 3
		d.line(x, s.at(bar.Low), x, s.at(bar.High), 1, look.Quiet)
		d.line(x-3, s.at(bar.Low), x+3, s.at(bar.Low), 1, look.Quiet)
		d.line(x-3, s.at(bar.High), x+3, s.at(bar.High), 1, look.Quiet)
	}
	d.line(centre-reach, s.at(bar.Need), centre+reach, s.at(bar.Need), 2, look.Ink)
}
