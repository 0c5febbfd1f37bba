// Package overview prints what those at home need to know of the trip: who is
// where on which day, where boxes wait and when they must be posted, and when
// to call for help. It tells nothing of anybody's body or health.
package overview

import (
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// sizes of the text: the largest with which all of it is on one page.
var sizes = []press.Points{10, 9, 8, 7, 6.5}

// Draw draws the overview on one page, or in the smallest text on more where a
// trip is too long for one.
func Draw(p *press.Press) []page.Page {
	var pages []page.Page
	for _, size := range sizes {
		pages = draw(p, size)
		if len(pages) == 1 {
			break
		}
	}
	return pages
}

// sheet is the overview in one size of text.
type sheet struct {
	*press.Press
	flow *press.Flow
	size press.Points
}

func draw(p *press.Press, size press.Points) []page.Page {
	s := &sheet{p, p.Flow(press.Layout{
		Title: p.Tell(prose.Say("For those at home")),
		Note:  p.Tell(prose.Say("Where the group is on which day, and what to do if nothing is heard of it.")),
	}), size}
	s.people()
	s.route()
	s.boxes()
	s.help()
	return s.flow.Finish()
}

func (s *sheet) body() press.Style { return press.Style{Size: s.size, Ink: s.Inks.Ink} }
func (s *sheet) bold() press.Style { return press.Style{Size: s.size, Bold: true, Ink: s.Inks.Ink} }
func (s *sheet) title(text string) press.Block {
	return s.Text(press.Style{Size: s.size * 1.3, Bold: true, Ink: s.Inks.Ink}, s.flow.Width(), text).Below(2)
}

// people names who comes, with the days of those who come later or leave early.
func (s *sheet) people() {
	var names []string
	for i := range s.Trip.Crew {
		m := &s.Trip.Crew[i]
		last := m.LastDay
		if last == 0 {
			last = len(s.Trip.Days)
		}
		if max(1, m.FirstDay) == 1 && last >= len(s.Trip.Days) {
			names = append(names, m.Name)
			continue
		}
		names = append(names, s.Tell(prose.Say("%s (%s)", m.Name, s.Days(max(1, m.FirstDay), last))))
	}
	if len(names) == 0 {
		names = []string{s.Tell(prose.Say("Nobody has been entered yet."))}
	}
	s.flow.Add(press.Stack(0, s.title(s.Tell(prose.Say("Who (%d)", len(s.Trip.Crew)))), s.Text(s.body(), s.flow.Width(), strings.Join(names, ", "))))
}

// route is the days with the camp at the end of each.
func (s *sheet) route() {
	width := s.flow.Width()
	table := s.Table(width, s.size*0.16,
		press.Column{Head: s.Tell(prose.Say("Day")), Width: s.size * 2.4}, press.Column{Head: s.Tell(prose.Say("Date")), Width: s.size * 7},
		press.Column{Head: s.Tell(prose.Say("From where to where"))}, press.Column{Head: s.Tell(prose.Say("Way")), Width: s.size * 5, Right: true},
		press.Column{Head: s.Tell(prose.Say("Up")), Width: s.size * 5, Right: true}, press.Column{Head: s.Tell(prose.Say("On foot")), Width: s.size * 5, Right: true},
		press.Column{Head: s.Tell(prose.Say("Camp at")), Width: s.size * 5, Right: true})
	var rows []press.Block
	for i := range s.Trip.Days {
		day := &s.Trip.Days[i]
		name := day.Name
		if name == "" {
			name = s.Tell(prose.Say("not named"))
		}
		hours := "–"
		if i < len(s.Plan.Needs.Walks) {
			hours = s.Tell(prose.Say("%.1f h", float64(s.Plan.Needs.Walks[i].Hours)))
		}
		rows = append(rows, table.Row(
			s.Cell(s.bold(), s.Tell(prose.Say("%d", i+1))), s.Cell(s.body(), s.ShortDate(s.Trip.DateOf(i+1))), s.Cell(s.bold(), name),
			s.Cell(s.body(), s.Tell(prose.Say("%s", prose.Distance(day.Distance)))), s.Cell(s.body(), s.Tell(prose.Say("%s", prose.Height(day.Ascent)))),
			s.Cell(s.body(), hours), s.Cell(s.body(), s.Tell(prose.Say("%s", prose.Height(day.CampHeight))))))
	}
	s.flow.Gap(s.size)
	if len(rows) == 0 {
		s.flow.Add(press.Stack(0, s.title(s.Tell(prose.Say("The way"))), s.Text(s.body(), width, s.Tell(prose.Say("There are no days yet.")))))
		return
	}
	title := s.Tell(prose.Say("The way"))
	if s.Trip.Start.IsSet() {
		title = s.Tell(prose.Say("The way, %s to %s", s.Date(s.Trip.Start), s.Date(s.Trip.DateOf(len(s.Trip.Days)))))
	}
	s.flow.Section(func(bool) press.Block {
		return press.Stack(1, s.title(title), table.Head())
	}, rows)
}

// boxes is where food waits, when it is sent and when it is fetched.
func (s *sheet) boxes() {
	if len(s.Plan.Resupply.Boxes) == 0 {
		return
	}
	width := s.flow.Width()
	table := s.Table(width, s.size*0.2,
		press.Column{Head: s.Tell(prose.Say("Box for"))}, press.Column{Head: s.Tell(prose.Say("Send")), Width: s.size * 13},
		press.Column{Head: s.Tell(prose.Say("Parcels")), Width: s.size * 9}, press.Column{Head: s.Tell(prose.Say("Fetched on")), Width: s.size * 9})
	var rows []press.Block
	for i := range s.Plan.Resupply.Boxes {
		box := &s.Plan.Resupply.Boxes[i]
		rows = append(rows, table.Row(s.where(box), s.Cell(s.body(), s.send(box)),
			s.Cell(s.body(), s.Tell(prose.Say("%d, together %s", max(1, len(box.Parcels)), s.Load(box.Mass)))), s.Cell(s.bold(), s.Date(box.PickUp))))
	}
	s.flow.Gap(s.size)
	s.flow.Section(func(bool) press.Block {
		return press.Stack(1, s.title(s.Tell(prose.Say("Boxes on the way"))), table.Head())
	}, rows)
}

func (s *sheet) where(box *resupply.Box) press.Drawing {
	address := strings.Join(box.Label.To, ", ")
	if point := s.Point(box.Point); point != nil && address == "" {
		address = point.Address
	}
	return func(width press.Points, _ bool) press.Block {
		return press.Stack(0, s.Text(s.bold(), width, s.PlaceName(box.Point)), s.Text(press.Style{Size: s.size * 0.9, Ink: s.Inks.Quiet}, width, address))
	}
}

func (s *sheet) send(box *resupply.Box) string {
	switch {
	case !box.Posted && box.SendOn.IsSet():
		return s.Tell(prose.Say("brought by somebody, leaves home on %s", s.Date(box.SendOn)))
	case !box.Posted:
		return s.Tell(prose.Say("brought by somebody"))
	case box.SendOn.IsSet():
		return s.Tell(prose.Say("send on %s, latest %s", s.ShortDate(box.SendOn), s.Date(box.PostBy)))
	case box.PostFrom.IsSet():
		return s.Tell(prose.Say("by post from %s to %s", s.ShortDate(box.PostFrom), s.Date(box.PostBy)))
	default:
		return s.Tell(prose.Say("by post, latest %s", s.Date(box.PostBy)))
	}
}

// help is filled in by hand: the program does not know whom to call.
func (s *sheet) help() {
	width := s.flow.Width()
	lines := []string{
		s.Tell(prose.Say("We call or write by")), s.Tell(prose.Say("If nothing is heard, call rescue on")),
		s.Tell(prose.Say("Number of the rescue service there")), s.Tell(prose.Say("Numbers of the group")),
		s.Tell(prose.Say("Ways out and places to look first")),
	}
	blocks := []press.Block{s.title(s.Tell(prose.Say("If nothing is heard of us")))}
	for _, line := range lines {
		blocks = append(blocks, s.fill(line, width))
	}
	blocks = append(blocks, s.Spans(press.Style{Size: s.size * 0.9, Ink: s.Inks.Ink}, width, typeset.Plain(s.Tell(prose.Say(
		"Tell rescue the names, this way and its days, what the group wears and carries, and when you last heard of it. Weather and slow days are usual; the days above are planned, not promised.")))))
	s.flow.Gap(s.size)
	s.flow.Keep(s.size*0.5, blocks...)
}

func (s *sheet) fill(label string, width press.Points) press.Block {
	text := s.Set.Width(s.size, typeset.Plain(label))
	return press.Block{Height: s.size * 1.6, Draw: func(on *page.Page, x, y press.Points) {
		s.Text(s.body(), width, label).Draw(on, x, y+s.size*0.3)
		on.Add(page.Rule{X1: x + text + 6, Y1: y + s.size*1.5, X2: x + width, Y2: y + s.size*1.5, Thick: 0.5, Ink: s.Inks.Quiet})
	}}
}
