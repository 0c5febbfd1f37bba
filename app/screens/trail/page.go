package trail

import (
	"fyne.io/fyne/v2"

	"sumpter/app/screens/bench"
)

// page is a column that is laid out when it is whole, a few rows after each
// frame.
type page struct {
	rows   []fyne.CanvasObject
	column *bench.Column
	scroll *bench.Scroll
}

func newPage(later func(step func())) *page {
	p := &page{}
	p.column, p.scroll = bench.NewScrolled(later)
	return p
}

// Add puts something at the end.
func (p *page) Add(object fyne.CanvasObject) { p.rows = append(p.rows, object) }

// RemoveAll empties it.
func (p *page) RemoveAll() { p.rows = nil }

// layOut shows what was added.
func (p *page) layOut() {
	rows := p.rows
	p.column.Set(len(rows), func(i int) fyne.CanvasObject { return rows[i] })
}
