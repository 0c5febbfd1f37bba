package charts

import (
	"fyne.io/fyne/v2"

	"sumpter/app/look"
)

// PackAxis is the upright axis beside a PackChart; it stays while the columns
// are scrolled.
type PackAxis struct {
	base
	unit string
	top  float64
	fair float64
	word string
}

// NewPackAxis makes an axis.
func NewPackAxis() *PackAxis {
	a := &PackAxis{}
	a.least = fyne.NewSize(58, 200)
	a.draw = a.paint
	a.ExtendBaseWidget(a)
	return a
}

// Set draws other values up to a top, with the fair level named by a word; 0
// names none.
func (a *PackAxis) Set(unit string, top, fair float64, word string) {
	a.unit, a.top, a.fair, a.word = unit, top, fair, word
	a.Refresh()
}

func (a *PackAxis) paint(d *drawing) {
	up := level(a.top, d.size.Height)
	right := d.size.Width - 4
	d.text(a.unit, right, packHead()-14*look.Scale(), fyne.TextAlignTrailing, look.Quiet)
	mark := up.at(a.fair)
	for _, value := range ticks(0, a.top, max(2, int((up.from-up.to)/40))) {
		y := up.at(value)
		if a.fair > 0 && y-mark < 16 && mark-y < 16 {
			continue
		}
		d.text(short(value), right, y, fyne.TextAlignTrailing, look.Quiet)
	}
	if a.fair > 0 {
		words := wrap(a.word, right) // a longer language needs two lines
		for i, word := range words {
			d.text(word, right, mark+13*look.Scale()*(float32(i)-float32(len(words)-1)/2), fyne.TextAlignTrailing, look.Ink)
		}
	}
}
