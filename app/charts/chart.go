// Package charts draws the pictures of the screens from plain numbers: need
// against food, loads over the days, choices of cost against load, the height
// of the way, the time a food has left. It knows nothing of trips. Labels
// stand at what they name, the zero line is shown, and no colour stands alone.
package charts

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/written"
)

// base is a picture that is drawn anew whenever its numbers or its size
// change. The objects are few, so this costs less than keeping them in step.
type base struct {
	widget.BaseWidget
	least fyne.Size
	draw  func(*drawing)
	taps  []tapArea
}

type tapArea struct {
	at, to fyne.Position
	tapped func()
}

// Tapped finds what was tapped.
func (b *base) Tapped(event *fyne.PointEvent) {
	for i := len(b.taps) - 1; i >= 0; i-- {
		area := b.taps[i]
		if p := event.Position; p.X >= area.at.X && p.X <= area.to.X && p.Y >= area.at.Y && p.Y <= area.to.Y {
			area.tapped()
			return
		}
	}
}

// CreateRenderer draws the picture. The toolkit drops renderers of what was
// hidden for a minute, and lays a new one out only when the size changes: it is
// laid out here.
func (b *base) CreateRenderer() fyne.WidgetRenderer {
	r := &renderer{base: b}
	r.Layout(b.Size())
	return r
}

type renderer struct {
	base    *base
	objects []fyne.CanvasObject
	size    fyne.Size
}

func (r *renderer) MinSize() fyne.Size           { return r.base.least }
func (r *renderer) Destroy()                     {}
func (r *renderer) Objects() []fyne.CanvasObject { return r.objects }

func (r *renderer) Layout(size fyne.Size) {
	if r.size != size {
		r.size = size
		r.Refresh()
	}
}

func (r *renderer) Refresh() {
	d := &drawing{size: r.size}
	r.base.taps = nil
	if r.size.Width > 0 && r.size.Height > 0 && r.base.draw != nil {
		r.base.draw(d)
	}
	r.objects, r.base.taps = d.objects, d.taps
	canvas.Refresh(r.base)
}

// drawing collects the objects of a picture.
type drawing struct {
	size    fyne.Size
	objects []fyne.CanvasObject
	taps    []tapArea
}

func (d *drawing) rectangle(x, y, width, height float32, tone fyne.ThemeColorName) {
	r := canvas.NewRectangle(theme.Color(tone))
	if height < 0 {
		y, height = y+height, -height
	}
	r.Move(fyne.NewPos(x, y))
	r.Resize(fyne.NewSize(width, height))
	d.objects = append(d.objects, r)
}

// hatched draws an outline filled with slanting lines.
func (d *drawing) hatched(x, y, width, height float32, tone fyne.ThemeColorName) {
	const apart = 6
	for at := -height + apart; at < width; at += apart {
		// From the lower edge up to the right, cut at both ends of the bar.
		from, to := max(at, 0), min(at+height, width)
		d.line(x+from, y+height-(from-at), x+to, y+height-(to-at), 1, tone)
	}
	r := canvas.NewRectangle(color.Transparent)
	r.StrokeWidth, r.StrokeColor = 1.5, theme.Color(tone)
	r.Move(fyne.NewPos(x, y))
	r.Resize(fyne.NewSize(width, height))
	d.objects = append(d.objects, r)
}

func (d *drawing) line(x1, y1, x2, y2, width float32, tone fyne.ThemeColorName) {
	l := canvas.NewLine(theme.Color(tone))
	l.StrokeWidth = width
	l.Position1, l.Position2 = fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
	d.objects = append(d.objects, l)
}

func (d *drawing) ring(x, y, radius, width float32, tone fyne.ThemeColorName, filled bool) {
	c := canvas.NewCircle(theme.Color(tone))
	if !filled {
		c.FillColor = theme.Color(look.Panel)
	}
	c.StrokeWidth, c.StrokeColor = width, theme.Color(tone)
	c.Position1, c.Position2 = fyne.NewPos(x-radius, y-radius), fyne.NewPos(x+radius, y+radius)
	d.objects = append(d.objects, c)
}

// text writes at x by the alignment: leading begins there, trailing ends
// there, centre is centred on it. y is the middle of the line.
func (d *drawing) text(content string, x, y float32, align fyne.TextAlign, tone fyne.ThemeColorName) fyne.Size {
	t := canvas.NewText(content, theme.Color(tone))
	t.TextSize = theme.CaptionTextSize()
	size := t.MinSize()
	switch align {
	case fyne.TextAlignTrailing:
		x -= size.Width
	case fyne.TextAlignCenter:
		x -= size.Width / 2
	}
	t.Move(fyne.NewPos(x, y-size.Height/2))
	t.Resize(size)
	d.objects = append(d.objects, t)
	return size
}

// cut shortens a text so that it is no wider.
func (d *drawing) cut(content string, width float32) string {
	return look.Cut(content, theme.CaptionTextSize(), fyne.TextStyle{}, width)
}

func (d *drawing) onTap(x1, y1, x2, y2 float32, tapped func()) {
	if tapped != nil {
		d.taps = append(d.taps, tapArea{at: fyne.NewPos(x1, y1), to: fyne.NewPos(x2, y2), tapped: tapped})
	}
}

// scale maps numbers from low to high onto a length of the screen.
type scale struct {
	low, high float64
	from, to  float32
}

func (s scale) at(value float64) float32 {
	if s.high == s.low {
		return s.from
	}
	return s.from + float32((value-s.low)/(s.high-s.low))*(s.to-s.from)
}

// ticks gives about the wanted number of round values from low to high.
func ticks(low, high float64, wanted int) []float64 {
	if !(high > low) || wanted < 1 || math.IsInf(high-low, 0) {
		return []float64{low}
	}
	rough := (high - low) / float64(wanted)
	power := math.Pow(10, math.Floor(math.Log10(rough)))
	step := 10 * power
	for _, nice := range []float64{1, 2, 2.5, 5} {
		if nice*power >= rough {
			step = nice * power
			break
		}
	}
	var list []float64
	for i := math.Ceil(low/step-1e-9) + 0; i*step <= high+step*1e-9 && len(list) < 50; i++ {
		list = append(list, i*step)
	}
	return list
}

// short writes a number of an axis without needless decimals.
func short(value float64) string { return written.Short(math.Round(value*100) / 100) }

// upright draws the vertical axis with its lines and gives its scale.
func (d *drawing) upright(low, high float64, left, right, top, bottom float32, format func(float64) string) scale {
	s := scale{low: low, high: high, from: bottom, to: top}
	written := ""
	for _, value := range ticks(low, high, max(2, int((bottom-top)/40))) {
		if format(value) == written {
			continue // the same figure at another height would say nothing
		}
		written = format(value)
		y := s.at(value)
		tone := look.Line
		if value == 0 {
			tone = look.Quiet
		}
		d.line(left, y, right, y, 1, tone)
		d.text(written, left-6, y, fyne.TextAlignTrailing, look.Quiet)
	}
	return s
}
