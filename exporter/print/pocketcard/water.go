package pocketcard

import (
	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// water tells what the member carries to each dry camp of a stretch of days.
func (c *card) water(stage *carry.Stage) []press.Block {
	var rows []press.Block
	for day := max(c.from, stage.FirstDay); day <= stage.LastDay; day++ {
		d := c.morning(day)
		if d == nil || d.Water == 0 {
			continue
		}
		cook := d.ToCookWith()
		text := c.Tell(prose.Say("%s of water to the dry camp: %s to drink, %s to cook with", c.Volume(d.CarryIn()), c.Volume(d.CarryIn()-cook), c.Volume(cook)))
		rows = append(rows, c.Spans(c.body(), c.flow.Width(), typeset.Bold(c.Day(day)), typeset.Plain("  "+text)).Below(2))
	}
	if len(rows) > 0 {
		rows[len(rows)-1] = rows[len(rows)-1].Below(5)
	}
	return rows
}
