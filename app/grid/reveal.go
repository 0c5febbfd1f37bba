package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// The toolkit reckons where a table is scrolled to as if the columns that stay
// in view took part, and so lays free columns too far left or right wherever
// widths differ: the last one could not be seen whole. Here it is said where
// it lays them, so that the cursor's column comes into view, and a blank
// column at the end gives the room for it.

// CreateRenderer keeps hold of what scrolls.
func (s *sheet) CreateRenderer() fyne.WidgetRenderer {
	r := s.Table.CreateRenderer()
	for _, object := range r.Objects() {
		if scroll, ok := object.(*container.Scroll); ok {
			s.scroll = scroll
			keepFinite(scroll)
		}
	}
	return r
}

// keepFinite bears a bar that is dragged while its rows have just become few
// enough to be seen at once: the toolkit then divides nothing by nothing, and
// its table would look for rows at no number.
func keepFinite(scroll *container.Scroll) {
	scrolled := scroll.OnScrolled
	scroll.OnScrolled = func(offset fyne.Position) {
		if offset.X-offset.X != 0 || offset.Y-offset.Y != 0 { // not a number, or without end
			offset = fyne.Position{}
			scroll.Offset = offset
		}
		scrolled(offset)
	}
}

// setWidth gives a column its width.
func (g *Grid[R]) setWidth(column int, width float32) {
	if g.widths == nil {
		g.widths = make([]float32, len(g.columns))
	}
	g.widths[column] = width
	g.table.SetColumnWidth(column, width)
}

// cellGap is what the toolkit leaves between cells.
func cellGap() float32 { return look.Tight{}.Size(theme.SizeNamePadding) }

// startOf is where a column would begin if all columns scrolled.
func (g *Grid[R]) startOf(column int) float32 {
	gap := cellGap()
	x := float32(0)
	for _, width := range g.widths[:column] {
		x += width + gap
	}
	return x
}

// firstAt is the first free column the toolkit lays when scrolled to x.
func (g *Grid[R]) firstAt(x float32) int {
	first := g.options.Sticky
	for column := range g.widths[:len(g.widths)-g.options.Sticky] {
		if g.startOf(column) <= x {
			first = column + g.options.Sticky
		}
	}
	return first
}

// laidAt is where the toolkit lays a free column when scrolled to x.
func (g *Grid[R]) laidAt(column int, x float32) float32 {
	first := g.firstAt(x)
	return g.startOf(first-g.options.Sticky) + g.startOf(column) - g.startOf(first)
}

// spareColumn is how wide the blank column at the end must be: by so much the
// toolkit may lay the others too far right. 0 where all columns are seen at once.
func (g *Grid[R]) spareColumn() float32 {
	sticky := g.options.Sticky
	if sticky == 0 || len(g.widths) <= sticky || g.startOf(len(g.widths)) <= g.table.Size().Width {
		return 0
	}
	spare := float32(0)
	for column := range g.widths[:len(g.widths)-sticky] {
		spare = max(spare, g.startOf(sticky)+g.startOf(column)-g.startOf(column+sticky))
	}
	return spare
}

// reveal scrolls sideways until the column is seen whole.
func (g *Grid[R]) reveal(column int) {
	sticky, scroll := g.options.Sticky, g.table.scroll
	if sticky == 0 || column < sticky || scroll == nil || len(g.widths) == 0 {
		return
	}
	x, view := scroll.Offset.X, scroll.Size().Width
	leading := g.startOf(column - sticky) // there it is the first that is seen
	if column < g.firstAt(x) || g.laidAt(column, x) < x {
		// The first that is seen, or near it where the table scrolls no further.
		first, most := column-sticky, max(0, scroll.Content.MinSize().Width-view)
		for first > 0 && g.startOf(first) > most {
			first--
		}
		x = g.startOf(first)
	}
	for x < leading && g.laidAt(column, x)+g.widths[column] > x+view {
		x = min(leading, max(x+1, g.laidAt(column, x)+g.widths[column]-view))
	}
	if x != scroll.Offset.X || g.startOf(len(g.widths)) > g.table.Size().Width {
		// Also where x is right: ScrollTo forgets to keep within what there is.
		g.table.ScrollToOffset(fyne.NewPos(x, scroll.Offset.Y))
	}
}
