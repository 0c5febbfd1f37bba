package grid

import (
	"cmp"
	"slices"
)

// atOnce is how many cells one call of Fill fills.
const atOnce = 12

// Hold keeps the cells empty that are made from now on, until Fill has filled
// them: a page of a table is some hundred pieces of text, and to shape and draw
// them all takes longer than a frame.
func (g *Grid[R]) Hold() {
	g.held, g.toFill = true, nil
	clear(g.cells) // the toolkit may have forgotten them; it tells of those there are
}

// Fill fills some of the cells that are kept empty, from the top, and tells
// whether any are left.
func (g *Grid[R]) Fill() bool {
	if !g.held {
		return false
	}
	if len(g.toFill) == 0 {
		g.toFill = g.heldCells()
	}
	some := g.toFill[:min(atOnce, len(g.toFill))]
	for _, c := range some {
		c.held = false
		g.paint(g.cells[c], c)
	}
	g.toFill = g.toFill[len(some):]
	g.held = len(some) > 0
	return g.held
}

// heldCells are the cells kept empty, row by row.
func (g *Grid[R]) heldCells() []*cell {
	var list []*cell
	for c := range g.cells {
		if c.held {
			list = append(list, c)
		}
	}
	slices.SortFunc(list, func(a, b *cell) int {
		return cmp.Or(cmp.Compare(g.cells[a].Row, g.cells[b].Row), cmp.Compare(g.cells[a].Col, g.cells[b].Col))
	})
	return list
}
