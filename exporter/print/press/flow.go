package press

import (
	"sumpter/domain/prose"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/typeset"
)

// Layout is how the pages of a paper look.
type Layout struct {
	Title   string
	Note    string // beside the title: what the paper is for
	Columns int    // 0 is 1
	// Panels: each page is a card to be folded twice, of four panels with the
	// title at the foot of each.
	Panels bool
}

// Margins: the usual one leaves room for printers and for holes; panels keep
// clear of folds and of what printers do not reach.
const (
	usualMargin = 14 * Millimetre
	panelMargin = 6 * Millimetre
	columnGap   = 6 * Millimetre
	footRoom    = 7 * Millimetre
)

// area is where blocks are laid down.
type area struct{ x, top, width, bottom Points }

// Flow lays blocks down the columns of pages, with the title above and the
// number of the page below each.
type Flow struct {
	press  *Press
	layout Layout
	pages  []page.Page
	areas  []area // of the page
	at     int    // the area in use
	y      Points // where the next block goes
	fresh  bool   // nothing is in this area yet
}

// Flow begins a paper.
func (p *Press) Flow(layout Layout) *Flow {
	layout.Columns = max(1, layout.Columns)
	f := &Flow{press: p, layout: layout}
	f.turn()
	return f
}

// Width is the width there is for a block.
func (f *Flow) Width() Points { return f.areas[f.at].width }

// turn begins a page.
func (f *Flow) turn() {
	f.pages = append(f.pages, page.Page{Width: f.press.Paper.Width, Height: f.press.Paper.Height})
	if f.layout.Panels {
		f.areas = f.panels()
	} else {
		f.areas = f.columns(f.head())
	}
	f.enter(0)
}

func (f *Flow) enter(at int) { f.at, f.y, f.fresh = at, f.areas[at].top, true }

// head draws the head of a page and gives where it ends.
func (f *Flow) head() Points {
	p, sheet := f.press, f.sheet()
	width := sheet.Width - 2*usualMargin
	first := len(f.pages) == 1
	title := Style{Size: 11, Bold: true, Ink: p.Inks.Ink}
	quiet := Style{Size: 8.5, Ink: p.Inks.Quiet}
	if first {
		title.Size = 19
	}
	trip := p.TripTitle()
	right := min(width*0.45, p.Set.Width(quiet.Size, typeset.Plain(trip)))
	head := Beside(
		Placed{Block: p.Text(title, width-right-12, f.layout.Title)},
		Placed{X: width - right, Block: p.Right(quiet, right+0.01, trip)},
	)
	if first {
		head = Stack(1, head, p.Text(Style{Size: 9, Ink: p.Inks.Quiet}, width, f.layout.Note))
	}
	head = head.Under(1.5, width, 1.2, p.Inks.Accent)
	head.Draw(sheet, usualMargin, usualMargin)
	return usualMargin + head.Height
}

func (f *Flow) columns(below Points) []area {
	sheet := f.sheet()
	width := (sheet.Width - 2*usualMargin - columnGap*Points(f.layout.Columns-1)) / Points(f.layout.Columns)
	areas := make([]area, f.layout.Columns)
	for i := range areas {
		areas[i] = area{usualMargin + Points(i)*(width+columnGap), below + 7, width, sheet.Height - usualMargin - footRoom}
	}
	return areas
}

// panels gives the quarters of the page and draws where it is folded.
func (f *Flow) panels() []area {
	p, sheet := f.press, f.sheet()
	across, down := sheet.Width/2, sheet.Height/2
	fold := page.Rule{Thick: 0.4, Dash: 2, Ink: p.Inks.Line}
	upright, level := fold, fold
	upright.X1, upright.X2, upright.Y2 = across, across, sheet.Height
	level.Y1, level.Y2, level.X2 = down, down, sheet.Width
	sheet.Add(upright, level)
	var areas []area
	for i := range 4 {
		x, y := across*Points(i%2), down*Points(i/2)
		areas = append(areas, area{x + panelMargin, y + panelMargin, across - 2*panelMargin, y + down - panelMargin - 10})
	}
	return areas
}

func (f *Flow) sheet() *page.Page { return &f.pages[len(f.pages)-1] }

// Room is how much height is left.
func (f *Flow) Room() Points { return f.areas[f.at].bottom - f.y }

// whole is the height of the area in use.
func (f *Flow) whole() Points { return f.areas[f.at].bottom - f.areas[f.at].top }

// next goes to the next column, panel or page, unless this one is empty.
func (f *Flow) next() {
	switch {
	case f.fresh:
	case f.at+1 < len(f.areas):
		f.enter(f.at + 1)
	default:
		f.turn()
	}
}

// Next goes to the next column or panel, unless this one is empty.
func (f *Flow) Next() { f.next() }

// NewPage goes on a page of its own, unless this one is empty.
func (f *Flow) NewPage() {
	if !f.fresh || f.at > 0 {
		f.turn()
	}
}

// Gap leaves space, except at the head of a column.
func (f *Flow) Gap(height Points) {
	if !f.fresh {
		f.y += height
	}
}

// Add puts a block whole on this page or the next. Only one that is longer
// than a page is parted.
func (f *Flow) Add(b Block) {
	for b.Height > 0 {
		if b.Height <= f.Room() {
			f.put(b)
			return
		}
		if !f.fresh {
			f.next()
			continue
		}
		fits, rest := b.parted(f.Room())
		if fits.Height <= 0 { // cannot be parted: better over the edge than lost
			f.put(b)
			return
		}
		f.put(fits)
		b = rest
		if b.Height > 0 {
			f.next()
		}
	}
}

func (f *Flow) put(b Block) {
	b.Draw(f.sheet(), f.areas[f.at].x, f.y)
	f.y += b.Height
	f.fresh = false
}

// Section puts rows under a head, which is drawn again, as a continued one,
// where the rows go on in another column or page. The head never stands alone.
func (f *Flow) Section(head func(continued bool) Block, rows []Block) {
	for i, row := range rows {
		if i == 0 {
			first := head(false)
			if first.Height+row.Height > f.Room() {
				f.next()
			}
			f.Add(first)
		} else if row.Height > f.Room() && !f.fresh {
			f.next()
			f.Add(head(true))
		}
		f.Add(row)
	}
}

// Keep puts blocks together on one page if they fit on one.
func (f *Flow) Keep(gap Points, blocks ...Block) {
	whole := Stack(gap, blocks...)
	if whole.Height > f.Room() && whole.Height <= f.whole() {
		f.next()
	}
	f.Add(whole)
}

// Finish numbers the pages or panels and gives the pages.
func (f *Flow) Finish() []page.Page {
	p := f.press
	if f.layout.Panels {
		count := (len(f.pages)-1)*len(f.areas) + f.at + 1
		for i := range count {
			a := f.areas[i%len(f.areas)]
			f.foot(&f.pages[i/len(f.areas)], a.x, a.bottom+2, a.width, 6.5, p.Tell(prose.Say("%d of %d", i+1, count)))
		}
		return f.pages
	}
	for i := range f.pages {
		sheet := &f.pages[i]
		f.foot(sheet, usualMargin, sheet.Height-usualMargin-8, sheet.Width-2*usualMargin, 8, p.Tell(prose.Say("page %d of %d", i+1, len(f.pages))))
	}
	return f.pages
}

func (f *Flow) foot(on *page.Page, x, y, width, size Points, number string) {
	quiet := Style{Size: size, Ink: f.press.Inks.Quiet}
	Beside(
		Placed{Block: f.press.Cut(quiet, width*0.7, f.layout.Title)},
		Placed{Block: f.press.Right(quiet, width, number)},
	).Draw(on, x, y)
}
