package bench

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
)

// Column is rows one below the other that are made a few at a time, with a
// frame in between: wrapped words take long to shape. Until a new row comes the
// old one stays in its place.
type Column struct {
	// Box goes into the screen.
	Box   *fyne.Container
	later func(step func())
	grown func()
	round int // steps of an earlier round do nothing
}

// NewColumn makes an empty column; later runs each step after a frame was
// drawn, grown hears that the column may be higher or lower.
func NewColumn(later func(step func()), grown func()) *Column {
	return &Column{Box: container.NewVBox(), later: later, grown: grown}
}

// NewScrolled makes an empty column in a scroll of its own.
func NewScrolled(later func(step func())) (*Column, *Scroll) {
	var scroll *Scroll
	column := NewColumn(later, func() { scroll.Grown() })
	scroll = NewScroll(column.Box)
	return column, scroll
}

// Set shows so many rows; row makes each of them, counted from 0.
func (c *Column) Set(count int, row func(i int) fyne.CanvasObject) {
	c.round++
	round := c.round
	c.later(func() { c.fill(round, 0, count, row) })
}

func (c *Column) fill(round, from, count int, row func(i int) fyne.CanvasObject) {
	if round != c.round {
		return
	}
	// Without a width the words are only wrapped later, all that there are.
	began, width := time.Now(), c.Box.Size().Width
	objects, i := slices.Clone(c.Box.Objects), from
	for ; i < count && (i == from || width > 0 && time.Since(began) < spell); i++ {
		made := row(i)
		if width > 0 {
			made.Resize(fyne.NewSize(width, made.Size().Height)) // wraps its words
		}
		canvas.Refresh(made)
		if i < len(objects) {
			objects[i] = made
		} else {
			objects = append(objects, made)
		}
	}
	if i == count {
		objects = objects[:count]
	}
	c.Box.Objects = objects
	c.Box.Layout.Layout(objects, c.Box.Size())
	c.grown()
	if i < count {
		c.later(func() { c.fill(round, i, count, row) })
	}
}
