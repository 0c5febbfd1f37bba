package press

import (
	"sumpter/exporter/cautions"
	"sumpter/exporter/print/typeset"
)

// Cautions draws topics of cautions, each rule whole.
func Cautions(p *Press, flow *Flow, topics ...cautions.Topic) {
	width := flow.Width()
	for _, topic := range topics {
		var rows []Block
		for _, rule := range topic.Rules {
			rows = append(rows, p.Spans(Style{Size: 8.5, Ink: p.Inks.Ink}, width,
				typeset.Bold(p.Tell(rule.Short)+".  "), typeset.Plain(p.Tell(rule.Text))).Below(3))
		}
		flow.Gap(8)
		flow.Section(func(bool) Block {
			return p.Text(Style{Size: 10.5, Bold: true, Ink: p.Inks.Alarm}, width, p.Tell(topic.Title)).Below(2)
		}, rows)
	}
}
