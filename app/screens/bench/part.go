package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Part is a part of a screen that comes into its place in a step of its own.
// The place gets its size from what is around it, not from the part.
type Part struct {
	// Place goes into the screen.
	Place   *fyne.Container
	content fyne.CanvasObject
	show    func()
	inside  []Piece
	there   bool
	before  bool // it was there before
	keeps   bool // the place has its size before that
	filled  int  // of what is inside
}

// NewPart makes a part with the tables inside it that fill in steps too. Show
// brings it up to date, nil if nothing has to be.
func NewPart(content fyne.CanvasObject, show func(), inside ...Piece) *Part {
	p := &Part{content: content, show: show, inside: inside}
	p.Place = container.New(&place{}, content)
	p.there = true
	return p
}

// Keeping has the place keep the part's least size from the beginning: where
// things stand below it.
func (p *Part) Keeping() *Part {
	p.keeps = true
	return p
}

// Refresh brings the part up to date, if it is there; if not, it will be once
// it comes.
func (p *Part) Refresh() {
	if p.there && p.show != nil {
		p.show()
	}
}

// Hold leaves the place empty.
func (p *Part) Hold() {
	if p.there && (p.before || p.keeps) {
		p.Place.Layout.(*place).least = p.content.MinSize()
	}
	p.Place.Objects, p.there, p.filled = nil, false, 0
	for _, piece := range p.inside {
		piece.Hold()
	}
}

// Fill puts the part into its place, then fills what is inside.
func (p *Part) Fill() bool {
	if !p.there {
		p.there = true
		p.Refresh()
		p.Place.Objects = []fyne.CanvasObject{p.content}
		p.Place.Layout.Layout(p.Place.Objects, p.Place.Size())
		if p.before {
			p.content.Refresh() // the look may be another
		}
		p.before = true
		if c := fyne.CurrentApp().Driver().CanvasForObject(p.Place); c != nil {
			c.Refresh(p.Place)
		}
		return len(p.inside) > 0
	}
	for p.filled < len(p.inside) {
		if p.inside[p.filled].Fill() {
			return true
		}
		p.filled++
	}
	return false
}

// place is filled by one object, and keeps its least size while it is empty.
type place struct{ least fyne.Size }

// MinSize is that of the object, or what it was.
func (l *place) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if len(objects) == 0 {
		return l.least
	}
	return objects[0].MinSize()
}

// Layout gives the object all the place.
func (l *place) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, object := range objects {
		object.Move(fyne.NewPos(0, 0))
		object.Resize(size)
	}
}
