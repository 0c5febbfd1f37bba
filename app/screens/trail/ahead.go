package trail

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trail"
)

func (p *sidePanel) showFuel() {
	u := p.screen.bench.Units()
	p.all.Add(heading(lang.L("Fuel this morning")))
	if len(p.screen.day.Fuel) == 0 {
		p.all.Add(paragraph(lang.L("No fuel is carried on this part of the way.")))
	}
	for _, fuel := range p.screen.day.Fuel {
		p.all.Add(paragraph(lang.X("fuel-left", "{{.Group}}: {{.Left}} of {{.Fuel}} left if all went as planned (containers not empty: {{.Count}}); today takes {{.Today}}, more in wind.", map[string]any{
			"Group": p.screen.groupName(fuel.Group), "Left": written.Quantity(fuel.Left, u), "Fuel": lang.L(string(fuel.Kind)), "Count": len(fuel.Full), "Today": written.Quantity(fuel.Today, u)})))
		p.showContainers(fuel)
	}
}

func (p *sidePanel) showBoxes() {
	made := p.screen.bench.Plan()
	boxes := trail.Ahead(made, p.screen.number)
	if len(boxes) == 0 {
		return
	}
	p.all.Add(heading(lang.L("Boxes to come")))
	for _, box := range boxes {
		p.addBox(made, box)
	}
}

func (p *sidePanel) addBox(made *plan.Plan, box resupply.Box) {
	t := p.screen.bench.Trip()
	point := t.Point(box.Point)
	if point == nil {
		return
	}
	u := t.Units
	gone := slices.Contains(t.Progress.MissingBoxes, box.Point)
	p.all.Add(line(fmt.Sprintf("%s, %s, %s", point.Name, dayNumber(point.AfterDay), written.Quantity(box.Mass, u)), look.Body))
	word := lang.L("This box did not come")
	if gone {
		word = lang.L("It came after all")
		short := trail.IfMissing(made, &t.Progress, box, p.screen.number)
		p.all.Add(findingRow(short.Finding(p.screen.number), u))
	}
	p.all.Add(container.NewHBox(widget.NewButton(word, func() { p.screen.missing(box.Point) })))
}
