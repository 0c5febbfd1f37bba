// Package boxlabels prints the labels of the boxes that are sent ahead: two on
// a page, with the address, when it is fetched, where it goes back to, and what
// is in it.
package boxlabels

import (
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/units"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// margin keeps labels clear of the edge and of the cut in the middle.
const margin = 12 * press.Millimetre

// label is one parcel of a box.
type label struct {
	*press.Press
	box    *resupply.Box
	parcel int // from 0
	of     int
	bags   []string
	mass   units.Mass
	width  press.Points
	height press.Points
}

// Draw draws a label for each parcel of the boxes, and none where no box is
// sent ahead.
func Draw(p *press.Press) []page.Page {
	var pages []page.Page
	half := p.Paper.Height / 2
	for i, l := range labels(p) {
		if i%2 == 0 {
			pages = append(pages, page.Page{Width: p.Paper.Width, Height: p.Paper.Height})
			pages[len(pages)-1].Add(page.Rule{Y1: half, X2: p.Paper.Width, Y2: half, Thick: 0.4, Dash: 2, Ink: p.Inks.Line})
		}
		l.width, l.height = p.Paper.Width-2*margin, half-2*margin
		l.draw(&pages[len(pages)-1], margin, half*press.Points(i%2)+margin)
	}
	return pages
}

func labels(p *press.Press) []label {
	var list []label
	for i := range p.Plan.Resupply.Boxes {
		box := &p.Plan.Resupply.Boxes[i]
		if len(box.Parcels) == 0 {
			list = append(list, label{Press: p, box: box, of: 1, bags: box.Bags, mass: box.Mass})
		}
		for j := range box.Parcels {
			list = append(list, label{Press: p, box: box, parcel: j, of: len(box.Parcels), bags: box.Parcels[j].Bags, mass: box.Parcels[j].Mass})
		}
	}
	return list
}

func (l *label) draw(on *page.Page, x, y press.Points) {
	top := press.Stack(8, l.from(), l.to(), l.expected())
	top.Draw(on, x, y)
	foot := l.foot(l.height - top.Height - 12)
	foot.Draw(on, x, y+l.height-foot.Height)
}

// from is where the box goes back to.
func (l *label) from() press.Block {
	style := press.Style{Size: 9, Ink: l.Inks.Ink}
	if len(l.box.Label.From) == 0 {
		return l.blank(l.Tell(prose.Say("From")), 1)
	}
	return l.Spans(style, l.width, typeset.Bold(l.Tell(prose.Say("From"))+"  "), typeset.Plain(strings.Join(l.box.Label.From, ", ")))
}

// to is the address, as large as it fits.
func (l *label) to() press.Block {
	if len(l.box.Label.To) == 0 {
		return l.blank(l.Tell(prose.Say("To")), 4)
	}
	var blocks []press.Block
	size := press.Points(22)
	if len(l.box.Label.To) > 5 {
		size = 16
	}
	for i, line := range l.box.Label.To {
		blocks = append(blocks, l.OneLine(press.Style{Size: size, Bold: i == 0, Ink: l.Inks.Ink}, l.width, line))
	}
	return press.Stack(0, blocks...)
}

// blank is room to write what nobody entered.
func (l *label) blank(word string, lines int) press.Block {
	const step = 24
	return press.Block{Height: press.Points(lines) * step, Draw: func(on *page.Page, x, y press.Points) {
		l.Text(press.Style{Size: 9, Bold: true, Ink: l.Inks.Ink}, l.width, word).Draw(on, x, y+6)
		for i := range lines {
			at := y + step*press.Points(i+1) - 3
			on.Add(page.Rule{X1: x + 40, Y1: at, X2: x + l.width, Y2: at, Thick: 0.5, Ink: l.Inks.Quiet})
		}
	}}
}

// expected tells the place when the box is fetched.
func (l *label) expected() press.Block {
	if !l.box.PickUp.IsSet() {
		return press.Block{}
	}
	return l.Banner(press.Style{Size: 13}, l.Inks.Ink, 6, l.width, typeset.Bold(l.Tell(prose.Say("PLEASE HOLD. Fetched on %s", l.box.PickUp))))
}

// foot is for those who pack, send and fetch the box.
func (l *label) foot(room press.Points) press.Block {
	body := press.Style{Size: 9, Ink: l.Inks.Ink}
	head := l.Spans(press.Style{Size: 12, Ink: l.Inks.Ink}, l.width, typeset.Bold(l.PlaceName(l.box.Point)), typeset.Plain("  "+l.Tell(prose.Say("parcel %d of %d", l.parcel+1, l.of))+"  ·  "+l.Load(l.mass)))
	blocks := []press.Block{head, l.Text(body, l.width, l.sending())}
	codes := make([]string, 0, len(l.bags))
	for _, key := range l.bags {
		if bag := l.Bag(key); bag != nil {
			codes = append(codes, bag.Code)
		}
	}
	list := l.Text(press.Style{Size: 8, Ink: l.Inks.Quiet}, l.width, l.Tell(prose.Say("%s: %s", press.CountBags(len(codes)), strings.Join(codes, " "))))
	all := press.Stack(2, append(blocks, list)...)
	if all.Height > room { // more codes than fit: the packing list has them
		list = l.Text(press.Style{Size: 8, Ink: l.Inks.Quiet}, l.width, l.Tell(prose.Say("%s: see the list of what is in the boxes", press.CountBags(len(codes)))))
		all = press.Stack(2, append(blocks, list)...)
	}
	return all.Over(3, l.width, 0.8, l.Inks.Ink)
}

// sending says when the box leaves.
func (l *label) sending() string {
	var parts []string
	switch {
	case !l.box.Posted && l.box.SendOn.IsSet():
		parts = append(parts, l.Tell(prose.Say("brought by somebody, leaves home on %s", l.box.SendOn)))
	case !l.box.Posted:
		parts = append(parts, l.Tell(prose.Say("brought by somebody")))
	case l.box.SendOn.IsSet():
		parts = append(parts, l.Tell(prose.Say("send on %s", l.box.SendOn)))
		if l.box.PostBy.IsSet() && l.box.PostBy != l.box.SendOn {
			parts = append(parts, l.Tell(prose.Say("latest %s", l.box.PostBy)))
		}
	default:
		parts = append(parts, l.Tell(prose.Say("by post, latest %s", l.Date(l.box.PostBy))))
	}
	return strings.Join(append(parts, l.Tell(prose.Say("no fuel, no lighter inside"))), " · ")
}
