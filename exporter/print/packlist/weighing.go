package packlist

import (
	"slices"

	"sumpter/domain/packing"
	"sumpter/domain/prose"
	"sumpter/domain/units"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// Weighing draws the list of foods, round by round: how much to take out in
// all, and what of it goes into each bag, with room for what the scale showed.
func Weighing(p *press.Press) []page.Page {
	flow := p.Flow(press.Layout{
		Title:   p.Tell(prose.Say("Packing night: weighing")),
		Note:    p.Tell(prose.Say("One food at a time into many bags. Write what the scale shows where it differs.")),
		Columns: weighingColumns(p),
	})
	if len(p.Plan.Packing.Bulk) == 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("There is nothing to weigh yet."))))
	}
	before := -1
	for i := range p.Plan.Packing.Bulk {
		bulk := &p.Plan.Packing.Bulk[i]
		if bulk.Round != before {
			flow.NewPage()
			flow.Add(weighingRound(p, bulk.Round, flow.Width()))
			before = bulk.Round
		}
		flow.Gap(8)
		food(p, flow, bulk)
	}
	return flow.Finish()
}

// weighingColumns is how many columns leave room for an amount in one piece: one
// that is counted, or told in ounces and grams, is too long for three.
func weighingColumns(p *press.Press) int {
	long := p.Reader.Units == units.US || slices.ContainsFunc(p.Plan.Packing.Bulk, func(b packing.Bulk) bool {
		food := p.Trip.Food(b.Food)
		return food != nil && food.PieceMass > 0
	})
	if long {
		return 2
	}
	return 3
}

func weighingRound(p *press.Press, number int, width press.Points) press.Block {
	if number < 0 || number >= len(p.Plan.Packing.Rounds) {
		return press.Block{}
	}
	round := &p.Plan.Packing.Rounds[number]
	title := p.Tell(prose.Say("Round %d of %d", number+1, len(p.Plan.Packing.Rounds)))
	blocks := []press.Block{p.Text(press.Style{Size: 13, Bold: true, Ink: p.Inks.Ink}, width, title)}
	if len(round.FreeOf) > 0 {
		blocks = append(blocks, p.Text(press.Style{Size: 9.5, Bold: true, Ink: p.Inks.Ink}, width, p.Tell(prose.Say("free of %s", prose.List(", ", round.FreeOf)))))
	}
	if round.CleanFirst {
		blocks = append(blocks, p.Banner(press.Style{Size: 10}, p.Inks.Alarm, 4, width, typeset.Bold(p.Tell(prose.Say("CLEAN FIRST")))))
	}
	return press.Stack(3, blocks...)
}

// food is one food with the bags it goes into.
func food(p *press.Press, flow *press.Flow, bulk *packing.Bulk) {
	width := flow.Width()
	name := press.Style{Size: 10, Bold: true, Ink: p.Inks.Ink}
	head := func(continued bool) press.Block {
		title := p.FoodName(bulk.Food)
		if continued {
			title = p.Tell(prose.Say("%s, continued", title))
		}
		blocks := []press.Block{p.Text(name, width, title)}
		if !continued {
			blocks = append(blocks, p.Text(press.Style{Size: 9, Ink: p.Inks.Ink}, width,
				p.Tell(prose.Say("take out %s for %s", p.Amount(bulk.Food, bulk.Total), press.CountBags(len(bulk.Into))))))
		}
		return press.Stack(0, blocks...).Under(2, width, 0.8, p.Inks.Ink)
	}
	table := p.Table(width, 2, press.Column{Width: 12}, press.Column{Width: 48}, press.Column{Right: true}, press.Column{Width: 40})
	rows := make([]press.Block, len(bulk.Into))
	for i, into := range bulk.Into {
		code := into.Bag
		if bag := p.Bag(into.Bag); bag != nil {
			code = bag.Code
		}
		rows[i] = table.Row(p.TickCell(9), p.CodeCell(10, code),
			p.Cell(press.Style{Size: 10, Ink: p.Inks.Ink}, p.Amount(bulk.Food, into.Mass)), line(p))
	}
	flow.Section(head, rows)
}

// line is room to write a figure.
func line(p *press.Press) press.Drawing {
	return func(width press.Points, _ bool) press.Block {
		return press.Block{Height: 12, Draw: func(on *page.Page, x, y press.Points) {
			on.Add(page.Rule{X1: x, Y1: y + 11.5, X2: x + width, Y2: y + 11.5, Thick: 0.5, Ink: p.Inks.Ink})
		}}
	}
}
