// Package page describes drawn pages, so that the same drawing becomes a PDF
// and a picture on the screen.
//
// Places are in points from the upper left corner of the paper, y downwards.
package page

import "sumpter/exporter/print/typeset"

// Points is a length on paper, 1/72 inch.
type Points = typeset.Points

// Millimetre is a millimetre in points.
const Millimetre = typeset.Millimetre

// Ink is a colour.
type Ink struct{ R, G, B uint8 }

// Page is one side of paper with what is drawn on it, the first below.
type Page struct {
	Width, Height Points
	Marks         []Mark
}

// Mark is one thing that is drawn: a Text, Box, Rule or Shape.
type Mark interface{ mark() }

// Text is a line of text that begins at X on the baseline Y.
type Text struct {
	X, Y Points
	Line typeset.Line
	Ink  Ink
}

// Box is a filled rectangle.
type Box struct {
	X, Y, Width, Height Points
	Ink                 Ink
}

// Rule is a straight line; Dash, if not 0, is the length of its strokes and gaps.
type Rule struct {
	X1, Y1, X2, Y2 Points
	Thick          Points
	Dash           Points
	Ink            Ink
}

// Point is a place on the page.
type Point struct{ X, Y Points }

// Shape is a filled polygon.
type Shape struct {
	Corners []Point
	Ink     Ink
}

func (Text) mark()  {}
func (Box) mark()   {}
func (Rule) mark()  {}
func (Shape) mark() {}

// Add draws marks over what is there.
func (p *Page) Add(marks ...Mark) { p.Marks = append(p.Marks, marks...) }

// Frame gives the four rules of a rectangle, drawn inside its edges.
func Frame(x, y, width, height, thick Points, ink Ink) []Mark {
	half := thick / 2
	return []Mark{
		Rule{X1: x, Y1: y + half, X2: x + width, Y2: y + half, Thick: thick, Ink: ink},
		Rule{X1: x, Y1: y + height - half, X2: x + width, Y2: y + height - half, Thick: thick, Ink: ink},
		Rule{X1: x + half, Y1: y, X2: x + half, Y2: y + height, Thick: thick, Ink: ink},
		Rule{X1: x + width - half, Y1: y, X2: x + width - half, Y2: y + height, Thick: thick, Ink: ink},
	}
}
