package loads

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/domain/carry"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// board is the columns of all members, with the axis that stays.
type board struct {
	axis    *charts.PackAxis
	chart   *charts.PackChart
	scroll  *container.Scroll
	content *keyed
	members []trip.MemberID // by column
}

func newBoard(keys func(*fyne.KeyEvent), letters func(rune)) *board {
	b := &board{axis: charts.NewPackAxis(), chart: charts.NewPackChart()}
	b.scroll = container.NewHScroll(b.chart)
	b.scroll.OnScrolled = func(offset fyne.Position) { b.chart.See(offset.X, b.scroll.Size().Width) }
	b.content = newKeyed(container.New(besideAxis{b}, b.axis, b.scroll), keys, letters)
	return b
}

// besideAxis lays the columns out beside the axis and tells them what can be
// seen of them.
type besideAxis struct{ b *board }

func (l besideAxis) MinSize([]fyne.CanvasObject) fyne.Size {
	axis := l.b.axis.MinSize()
	return fyne.NewSize(axis.Width+120, axis.Height)
}

func (l besideAxis) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	b, axis := l.b, l.b.axis.MinSize().Width
	b.axis.Resize(fyne.NewSize(axis, size.Height))
	b.axis.Move(fyne.NewPos(0, 0))
	b.chart.See(b.scroll.Offset.X, size.Width-axis)
	b.scroll.Move(fyne.NewPos(axis, 0))
	b.scroll.Resize(fyne.NewSize(size.Width-axis, size.Height))
	b.scroll.Refresh()
}

// parts of a column from the ground up; food is what the split is about.
func parts(d carry.Day, word func(units.Mass) string, value func(units.Mass) float64) []charts.Part {
	part := func(m units.Mass, tone fyne.ThemeColorName, hollow bool) charts.Part {
		return charts.Part{Value: value(m), Label: word(m), Tone: tone, Hollow: hollow}
	}
	return []charts.Part{
		part(d.OwnKit, look.Line, false), part(d.Gear, look.Quiet, false), part(d.Fuel, look.Ink, false),
		part(d.Food, look.Spruce, false), part(d.Waste, look.Quiet, true),
	}
}

func newLegend() *charts.Legend {
	names := []string{lang.L("own kit"), lang.L("gear"), lang.L("fuel"), lang.L("food bags"), lang.L("wrappings")}
	list := parts(carry.Day{}, func(units.Mass) string { return "" }, func(units.Mass) float64 { return 0 })
	for i := range list {
		list[i].Label = names[i]
	}
	list = append(list, charts.Part{Label: lang.L("water to a dry camp"), Tone: look.Slate, Hollow: true})
	return charts.NewLegend(list, lang.L("fair"), lang.L("limit"))
}

// column is a member's column for a load.
func (s *Screen) column(i int, d carry.Day, state charts.PackState) charts.Pack {
	v := s.view
	m := &v.plan.Trip.Crew[i]
	capability := v.plan.Carry.Members[i].Capability
	pack := charts.Pack{Name: m.Name, Group: v.groupName(m.Group), State: state, Faint: s.bench.Document.Planning(), Tapped: func() { s.tapColumn(m.ID) }}
	if !d.Present {
		pack.Notes = []string{lang.X("pack-absent", "not there")}
		return pack
	}
	word := func(mass units.Mass) string { return tenths(v.inUnit(mass)) }
	value := func(mass units.Mass) float64 { return 0 }
	if capability > 0 {
		value = func(mass units.Mass) float64 { return 100 * float64(mass) / float64(capability) }
	}
	pack.Notes = []string{v.kilograms(d.Load), percent(d.Share)}
	pack.Parts, pack.Fair = parts(d, word, value), 100*v.fair(s.day)
	pack.Apart = charts.Part{Value: value(d.Water), Label: word(d.Water), Tone: look.Slate, Hollow: true}
	if limit, limited := m.LoadLimit.Get(); limited {
		pack.Limit, pack.Warn = value(limit), d.Load+d.Water > limit
		if pack.Warn {
			pack.Notes[1] = lang.L("over limit")
		}
	}
	return pack
}

// showBoard draws the board as things stand, a move under way included.
func (s *Screen) showBoard() {
	v := s.view
	packs := make([]charts.Pack, len(v.order))
	s.board.members = s.board.members[:0]
	var o outcome
	if s.move != nil {
		o = v.weigh(*s.move, s.day)
	}
	for column, i := range v.order {
		id := v.plan.Trip.Crew[i].ID
		s.board.members = append(s.board.members, id)
		d, state := v.plan.Carry.Members[i].Days[s.day-1], charts.AtRest
		if id == s.member {
			state = charts.Chosen
		}
		if s.move != nil {
			switch {
			case id == s.move.thing.carrier:
				d, state = o.from, charts.Giving
			case id == s.move.to && o.obstacle != "":
				state = charts.Refused
			case id == s.move.to:
				d, state = o.to, charts.Taking
			default:
				state = charts.AtRest
			}
		}
		packs[column] = s.column(i, d, state)
		if state == charts.Refused {
			packs[column].Notes = []string{lang.L("not to"), packs[column].Name}
		}
	}
	top := 100 * v.top * 1.05
	width := s.board.chart.MinSize().Width
	s.board.chart.Set(packs, top)
	if s.board.chart.MinSize().Width != width {
		s.board.scroll.Refresh()
	}
	fair := v.fair(s.day)
	s.board.axis.Set("%", top, 100*fair, lang.L("fair")+" "+tenths(100*fair))
}

// reveal scrolls a member's column into view.
func (b *board) reveal(id trip.MemberID) {
	for i, member := range b.members {
		if member != id {
			continue
		}
		from, to := b.chart.Span(i)
		x := b.scroll.Offset.X
		if from < x {
			x = from
		} else if width := b.scroll.Size().Width; to > x+width {
			x = to - width
		}
		b.scrollTo(x)
	}
}

func (b *board) scrollTo(x float32) {
	x = max(0, min(x, b.chart.MinSize().Width-b.scroll.Size().Width))
	if x != b.scroll.Offset.X {
		b.scroll.ScrollToOffset(fyne.NewPos(x, 0))
		b.chart.See(x, b.scroll.Size().Width)
	}
}

// edge is how near to a side a drag scrolls the columns, and by how much.
const edge float32 = 28

// under gives the member whose column is at a place of the window, scrolling
// where the place is at the edge.
func (b *board) under(at fyne.Position) trip.MemberID {
	origin := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.scroll)
	size, x, y := b.scroll.Size(), at.X-origin.X, at.Y-origin.Y
	if x < 0 || y < 0 || x > size.Width || y > size.Height {
		return 0
	}
	if x < edge {
		b.scrollTo(b.scroll.Offset.X - edge)
	} else if x > size.Width-edge {
		b.scrollTo(b.scroll.Offset.X + edge)
	}
	if i := b.chart.At(x + b.scroll.Offset.X); i >= 0 && i < len(b.members) {
		return b.members[i]
	}
	return 0
}
