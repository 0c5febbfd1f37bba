package packlist

import (
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// Boxes draws what goes into which box and parcel, and what is put into its
// bags only at the point. It has no page where no box is sent ahead.
func Boxes(p *press.Press) []page.Page {
	if len(p.Plan.Resupply.Boxes) == 0 {
		return nil
	}
	flow := p.Flow(press.Layout{
		Title: p.Tell(prose.Say("What is in which box")),
		Note:  p.Tell(prose.Say("Tick each bag as it goes into its box. One copy goes along, for whoever fetches the box.")),
	})
	for i := range p.Plan.Resupply.Boxes {
		flow.Gap(16)
		box(p, flow, &p.Plan.Resupply.Boxes[i])
	}
	return flow.Finish()
}

func box(p *press.Press, flow *press.Flow, b *resupply.Box) {
	width := flow.Width()
	table := p.Table(width, 1.5, press.Column{Width: 13}, press.Column{Head: p.Tell(prose.Say("Bag")), Width: 52}, press.Column{Head: p.Tell(prose.Say("Meal")), Width: 116},
		press.Column{Head: p.Tell(prose.Say("Dish"))}, press.Column{Head: p.Tell(prose.Say("Allergens")), Width: 110}, press.Column{Head: p.Tell(prose.Say("Mass")), Width: 50, Right: true})
	parcels := b.Parcels
	if len(parcels) == 0 {
		parcels = []resupply.Parcel{{Bags: b.Bags, Mass: b.Mass}}
	}
	for i := range parcels {
		var rows []press.Block
		for _, key := range parcels[i].Bags {
			rows = append(rows, boxedBag(p, table, b, key))
		}
		flow.Gap(10)
		flow.Section(func(continued bool) press.Block {
			title := p.Tell(prose.Say("%s, parcel %d of %d", p.PlaceName(b.Point), i+1, len(parcels)))
			if continued {
				return press.Stack(2, p.Text(press.Style{Size: 12, Bold: true, Ink: p.Inks.Ink}, width, p.Tell(prose.Say("%s, continued", title))), table.Head())
			}
			note := p.Tell(prose.Say("%s, %s", press.CountBags(len(parcels[i].Bags)), p.Load(parcels[i].Mass)))
			return press.Stack(2, p.Text(press.Style{Size: 13, Bold: true, Ink: p.Inks.Ink}, width, title), p.Text(press.Style{Size: 9, Ink: p.Inks.Quiet}, width, note), table.Head())
		}, rows)
	}
	fuel(p, flow, b)
	boughtThere(p, flow, b)
}

// fuel tells how the fuel of the leg gets to the point, since no parcel holds it.
func fuel(p *press.Press, flow *press.Flow, b *resupply.Box) {
	if len(b.Fuel) == 0 {
		return
	}
	way := prose.Say("Fuel containers: %d, brought along beside the parcels.", len(b.Fuel))
	switch {
	case b.FuelBoughtThere:
		way = prose.Say("Fuel containers: %d, bought there.", len(b.Fuel))
	case b.Posted:
		way = prose.Say("Fuel containers: %d, by a carrier who is licensed for them, never in a parcel of ordinary post.", len(b.Fuel))
	}
	flow.Gap(6)
	flow.Add(p.Text(press.Style{Size: 10.5, Ink: p.Inks.Ink}, flow.Width(), p.Tell(way)))
}

func boxedBag(p *press.Press, table *press.Table, b *resupply.Box, key string) press.Block {
	body := press.Style{Size: 9, Ink: p.Inks.Ink}
	bag := p.Bag(key)
	if bag == nil {
		return table.Row(p.TickCell(9), p.CodeCell(10, key), press.NoCell, press.NoCell, press.NoCell, press.NoCell)
	}
	meal := p.BagDays(bag) + ", " + p.When(bag) + ", " + p.Eaters(bag)
	return table.Row(p.TickCell(9), p.CodeCell(10, bag.Code), p.Cell(body, meal), p.Cell(body, strings.Join(append([]string{p.DishName(bag)}, p.Care(bag)...), " · ")),
		p.Cell(press.Style{Size: 8, Ink: p.Inks.Danger}, p.InShort(press.Allergens(bag.Allergens))), p.Cell(body, p.Mass(b.Sent(bag))))
}

// boughtThere is what the bags of a box still lack when it is fetched.
func boughtThere(p *press.Press, flow *press.Flow, b *resupply.Box) {
	if len(b.BoughtThere) == 0 {
		return
	}
	width := flow.Width()
	table := p.Table(width, 1.5, press.Column{Width: 13}, press.Column{Width: 100, Right: true}, press.Column{}, press.Column{Width: 60})
	var rows []press.Block
	for _, bought := range b.BoughtThere {
		code := bought.Bag
		if bag := p.Bag(bought.Bag); bag != nil {
			code = bag.Code
		}
		rows = append(rows, table.Row(p.TickCell(9), p.Cell(press.Style{Size: 9.5, Bold: true, Ink: p.Inks.Ink}, p.Amount(bought.Food, bought.Mass)),
			p.Cell(press.Style{Size: 9.5, Ink: p.Inks.Ink}, p.FoodName(bought.Food)), p.CodeCell(10, code)))
	}
	flow.Gap(8)
	flow.Section(func(bool) press.Block {
		return p.Spans(press.Style{Size: 10.5, Ink: p.Inks.Ink}, width, typeset.Bold(p.Tell(prose.Say("Buy at %s and put into its bag", p.PlaceName(b.Point))))).Below(3)
	}, rows)
}
