// Package labels draws the labels of the bags onto label sheets.
//
// A label has to be read by headlamp, with cold fingers, by somebody who may be
// harmed by what is in the bag: the code is large, and allergens stand out by
// their shape, whatever the printer's colours. They are never left out; if a
// label has too little room, the method is, and then the list of contents is
// shortened and says so.
package labels

import (
	"context"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
)

// Draw draws labels of bags in their order. The first is put at place start of
// the first sheet, counted from 1 along the rows, for a sheet that is used in
// part. Progress, if not nil, hears how many are drawn.
func Draw(ctx context.Context, p *press.Press, grid Grid, list []*bags.Bag, start int, progress func(done int)) ([]page.Page, error) {
	if err := grid.Check(); err != nil {
		return nil, err
	}
	if start < 1 || start > grid.Count() {
		return nil, &Fault{prose.Say("The sheet has labels 1 to %d: it cannot begin with label %d.", grid.Count(), start)}
	}
	var pages []page.Page
	maker := newMaker(p, grid.Width, grid.Height)
	for i, bag := range list {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		at := (i + start - 1) % grid.Count()
		if i == 0 || at == 0 {
			pages = append(pages, page.Page{Width: grid.Paper.Width, Height: grid.Paper.Height})
			if grid.Cut {
				cuttingLines(&pages[len(pages)-1], p, grid)
			}
		}
		x, y := grid.place(at)
		maker.draw(&pages[len(pages)-1], bag, x, y)
		if progress != nil {
			progress(i + 1)
		}
	}
	return pages, nil
}

// cuttingLines shows where plain paper is cut.
func cuttingLines(on *page.Page, p *press.Press, grid Grid) {
	right := grid.Left + press.Points(grid.Columns)*grid.Width
	bottom := grid.Top + press.Points(grid.Rows)*grid.Height
	for column := range grid.Columns + 1 {
		x := grid.Left + press.Points(column)*grid.Width
		on.Add(page.Rule{X1: x, Y1: grid.Top, X2: x, Y2: bottom, Thick: 0.4, Dash: 2, Ink: p.Inks.Line})
	}
	for row := range grid.Rows + 1 {
		y := grid.Top + press.Points(row)*grid.Height
		on.Add(page.Rule{X1: grid.Left, Y1: y, X2: right, Y2: y, Thick: 0.4, Dash: 2, Ink: p.Inks.Line})
	}
}
