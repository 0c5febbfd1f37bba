// Package packlist prints what the helpers of packing night work off: the bags
// of each round with a box to tick for each station, and the foods to weigh
// out, one at a time, into many bags.
package packlist

import (
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/prose"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// bagSteps is a bag in a round with the stations it passes.
type bagSteps struct {
	bag      *bags.Bag
	stations map[packing.Station]bool
}

// Rounds draws the list of bags, round by round, for some of the stations. No
// round shares a page with another, so that each can lie on its own table.
func Rounds(p *press.Press, stations []packing.Station) []page.Page {
	flow := p.Flow(press.Layout{
		Title: p.Tell(prose.Say("Packing night: bag by bag")),
		Note:  p.Tell(prose.Say("Round by round, from top to bottom. Tick a box when the bag has passed the station. Never go back to an earlier round without cleaning.")),
	})
	if len(p.Plan.Packing.Rounds) == 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("There is nothing to pack yet."))))
		return flow.Finish()
	}
	for i := range p.Plan.Packing.Rounds {
		rows := steps(p, &p.Plan.Packing.Rounds[i], stations)
		if len(rows) == 0 {
			continue
		}
		flow.NewPage()
		round(p, flow, i, rows, stations)
	}
	return flow.Finish()
}

// steps gathers the bags of a round that pass any of the stations, in the
// order of their first step.
func steps(p *press.Press, round *packing.Round, stations []packing.Station) []bagSteps {
	wanted, at := map[packing.Station]bool{}, map[string]int{}
	for _, station := range stations {
		wanted[station] = true
	}
	var rows []bagSteps
	for _, step := range round.Steps {
		bag := p.Bag(step.Bag)
		if bag == nil || !wanted[step.Station] {
			continue
		}
		place, seen := at[step.Bag]
		if !seen {
			place = len(rows)
			at[step.Bag] = place
			rows = append(rows, bagSteps{bag, map[packing.Station]bool{}})
		}
		rows[place].stations[step.Station] = true
	}
	return rows
}

func round(p *press.Press, flow *press.Flow, number int, rows []bagSteps, stations []packing.Station) {
	columns := []press.Column{{Head: p.Tell(prose.Say("Bag")), Width: 44}}
	for _, station := range stations {
		columns = append(columns, press.Column{Head: p.Tell(station.Name()), Width: stationWidth(p, stations)})
	}
	columns = append(columns, press.Column{Head: p.Tell(prose.Say("What goes in"))}, press.Column{Head: p.Tell(prose.Say("Allergens")), Width: 96})
	table := p.Table(flow.Width(), 1.5, columns...)
	head := func(continued bool) press.Block {
		return press.Stack(4, roundHead(p, number, flow.Width(), len(rows), continued), table.Head())
	}
	var blocks []press.Block
	before := ""
	for _, row := range rows {
		block := bagRow(p, table, row, stations)
		if place := destination(p, row.bag); place != before {
			bar := p.Text(press.Style{Size: 9, Bold: true, Ink: p.Inks.Ink}, flow.Width()-8, place).On(p.Inks.Wash, 4, 2, flow.Width())
			block, before = press.Stack(0, bar, block), place // the bar never stands alone
		}
		blocks = append(blocks, block)
	}
	flow.Section(head, blocks)
}

// stationWidth is room for a box to tick and, as far as it is worth it, for the
// longest word of the headings in small letters.
func stationWidth(p *press.Press, stations []packing.Station) press.Points {
	width := press.Points(26)
	for _, station := range stations {
		for _, word := range strings.Fields(p.Tell(station.Name())) {
			width = max(width, min(34, p.Set.Width(6.5, typeset.Bold(word))+0.1))
		}
	}
	return width
}

// destination is where a bag is put when it is done.
func destination(p *press.Press, bag *bags.Bag) string {
	if box := p.Box(bag.Key); box != nil {
		return p.Tell(prose.Say("Done, into the box for %s", p.PlaceName(box.Point)))
	}
	return p.Tell(prose.Say("Done, to the packs"))
}

// roundHead names the round, and says what has to be cleaned before it and
// what must not come near it.
func roundHead(p *press.Press, number int, width press.Points, count int, continued bool) press.Block {
	planned := &p.Plan.Packing.Rounds[number]
	title := p.Tell(prose.Say("Round %d of %d", number+1, len(p.Plan.Packing.Rounds)))
	if continued {
		title = p.Tell(prose.Say("%s, continued", title))
	}
	if len(planned.FreeOf) > 0 {
		title += ": " + p.Tell(prose.Say("free of %s", prose.List(", ", planned.FreeOf)))
	} else if len(p.Plan.Packing.Rounds) > 1 {
		title += ": " + p.Tell(prose.Say("with everything the crew is allergic to"))
	}
	blocks := []press.Block{p.Text(press.Style{Size: 13, Bold: true, Ink: p.Inks.Ink}, width, title)}
	if continued {
		return blocks[0]
	}
	quiet := press.Style{Size: 9, Ink: p.Inks.Quiet}
	blocks = append(blocks, p.Text(quiet, width, p.Tell(prose.Say("%s, about %.0f minutes for the helpers there are", press.CountBags(count), float64(planned.Minutes)))))
	if planned.CleanFirst {
		blocks = append(blocks, p.Banner(press.Style{Size: 10.5}, p.Inks.Alarm, 5, width,
			typeset.Bold(p.Tell(prose.Say("CLEAN FIRST"))), typeset.Plain("  "+p.Tell(prose.Say("hands, tools and table with soap, fresh cloths")))))
	}
	return press.Stack(3, blocks...)
}

func bagRow(p *press.Press, table *press.Table, row bagSteps, stations []packing.Station) press.Block {
	bag := row.bag
	cells := []press.Drawing{p.CodeCell(13, bag.Code)}
	for _, station := range stations {
		if row.stations[station] {
			cells = append(cells, p.TickCell(11.5))
		} else {
			cells = append(cells, p.Cell(press.Style{Size: 9, Ink: p.Inks.Line}, "–"))
		}
	}
	what := func(width press.Points, _ bool) press.Block {
		style := press.Style{Size: 9, Ink: p.Inks.Ink}
		about := typeset.Plain("\u00a0· " + strings.Join(append([]string{p.Eaters(bag)}, p.Handling(bag)...), "\u00a0· "))
		if p.Plain(bag) {
			return p.Spans(style, width, append(p.Contents(bag), about)...)
		}
		return press.Stack(1, p.Spans(style, width, p.Contents(bag)...),
			p.Spans(press.Style{Size: 8, Ink: p.Inks.Quiet}, width, typeset.Plain(p.DishName(bag)), about))
	}
	warn := func(width press.Points, _ bool) press.Block {
		return p.Warning(8, width, press.Allergens(bag.Allergens))
	}
	return table.Row(append(cells, what, warn)...)
}
