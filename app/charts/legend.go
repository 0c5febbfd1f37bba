package charts

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// Legend names the layers of a PackChart from the ground up, and its lines.
type Legend struct {
	base
	parts       []Part
	fair, limit string
}

// NewLegend makes a legend; each part's Label is its name.
func NewLegend(parts []Part, fair, limit string) *Legend {
	l := &Legend{parts: parts, fair: fair, limit: limit}
	l.draw = l.paint
	width := float32(0)
	for _, name := range l.names() {
		width += 24 + captionWidth(name) + look.SpaceWide
	}
	l.least = fyne.NewSize(width, 18)
	l.ExtendBaseWidget(l)
	return l
}

func (l *Legend) names() []string {
	var names []string
	for _, part := range l.parts {
		names = append(names, part.Label)
	}
	return append(names, l.fair, l.limit)
}

func (l *Legend) paint(d *drawing) {
	x, y := float32(0), d.size.Height/2
	for i, name := range l.names() {
		switch {
		case i < len(l.parts):
			d.rectangle(x, y-6, 18, 12, l.parts[i].Tone)
			if l.parts[i].Hollow {
				d.rectangle(x+1.5, y-4.5, 15, 9, look.Panel)
			}
		case i == len(l.parts):
			d.line(x, y, x+18, y, 2, look.Ink)
		default:
			d.line(x, y, x+18, y, 3, look.Brick)
		}
		x += 24 + d.text(name, x+24, y, fyne.TextAlignLeading, look.Quiet).Width + look.SpaceWide
	}
}
