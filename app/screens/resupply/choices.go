package resupply

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/charts"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// mostShown is how many choices a person can tell apart in one picture.
const mostShown = 12

// choices shows the sets of points that nothing beats, to take one.
type choices struct {
	bench   *bench.Bench
	shown   []resupply.Choice
	chart   *charts.ChoiceChart
	table   *grid.Grid[int]
	words   *look.Paragraph
	content fyne.CanvasObject
}

func newChoices(b *bench.Bench) *choices {
	c := &choices{bench: b, words: look.NewParagraph("", look.Caption, look.Ink)}
	c.chart = charts.NewChoiceChart(lang.L("heaviest morning"), lang.L("fees"), c.massText, c.moneyText)
	c.table = grid.New(c.columns(), grid.Options[int]{Key: func(i int) string { return c.keyOf(i) }, OnOpen: func(i int) { c.take(c.shown[i]) }, OnProblem: b.Say, Clipboard: b.Clipboard})
	use := widget.NewButton(lang.L("Use these points"), c.takeSelected)
	bottom := container.NewBorder(nil, container.NewVBox(c.words, container.NewHBox(use)), nil, nil, c.table)
	split := container.NewHSplit(c.chart, bottom)
	split.Offset = 0.42
	c.content = container.NewBorder(bench.Inset(look.NewHeading(lang.L("Which points? Cost against the heaviest morning"))), nil, nil, nil, split)
	return c
}

func (c *choices) massText(value float64) string {
	return fmt.Sprintf("%s %s", plain(value), typed.MassUnit(c.bench.Units(), true))
}

func (c *choices) moneyText(value float64) string {
	return written.Money(units.Money(value), c.bench.Trip().Currency)
}

func plain(value float64) string { return written.AtMost(value, 1) }

func (c *choices) keyOf(i int) string {
	if i < 0 || i >= len(c.shown) {
		return ""
	}
	return fmt.Sprint(c.shown[i].Points)
}

func (c *choices) show() {
	p := c.bench.Plan()
	c.shown = nil
	total := 0
	if p != nil {
		total = len(p.Resupply.Choices)
		c.shown = readable(p.Resupply.Choices, mostShown)
	}
	var drawn []charts.Choice
	rows := make([]int, len(c.shown))
	for i, choice := range c.shown {
		rows[i] = i
		drawn = append(drawn, charts.Choice{
			Name: c.shortName(choice), Across: inUnit(choice.HeaviestFood, c.bench.Units()), Up: float64(choice.Money),
			Chosen: choice.Current, Advised: choice.Recommended, Tapped: func() { c.take(choice) },
		})
	}
	c.chart.Set(drawn)
	c.table.SetRows(rows)
	c.words.SetContent(c.tell(total))
}

func inUnit(m units.Mass, system units.System) float64 {
	if system == units.US {
		return m.Pounds()
	}
	return m.Kilograms()
}

// tell says which choice is in use, which is advised and why.
func (c *choices) tell(total int) string {
	if total == 0 {
		return lang.L("The choices come with the plan.")
	}
	var lines []string
	for _, choice := range c.shown {
		switch {
		case choice.Recommended && choice.Current:
			lines = append(lines, lang.X("choice-advised-used", "In use, and advised: {{.Why}}", data{"Why": written.Text(choice.Why, c.bench.Units())}))
		case choice.Recommended:
			lines = append(lines, lang.X("choice-advised", "Advised: {{.Points}}. {{.Why}}", data{"Points": c.name(choice), "Why": written.Text(choice.Why, c.bench.Units())}))
		case choice.Current && choice.Beaten:
			lines = append(lines, lang.L("What is in use is beaten: another choice is as good in everything and better in something, or a point in use is closed or too slow."))
		}
	}
	if total > len(c.shown) {
		lines = append(lines, lang.X("choices-few", "{{.Shown}} of {{.All}} choices are shown: of those that no other beats by cost and heaviest morning, the ones that differ most.", data{"Shown": len(c.shown), "All": total}))
	}
	return strings.Join(lines, "\n")
}

// shortName names a choice by the evenings it stops on.
func (c *choices) shortName(choice resupply.Choice) string {
	if len(choice.Points) == 0 {
		return lang.L("no stop")
	}
	var days []string
	for _, id := range choice.Points {
		if p := c.bench.Trip().Point(id); p != nil {
			days = append(days, fmt.Sprint(p.AfterDay))
		}
	}
	return lang.L("day") + " " + strings.Join(days, " + ")
}

// name names a choice by its points.
func (c *choices) name(choice resupply.Choice) string {
	var names []string
	for _, id := range choice.Points {
		if p := c.bench.Trip().Point(id); p != nil {
			names = append(names, p.Name)
		}
	}
	if len(names) == 0 {
		return lang.L("all food from the start")
	}
	return strings.Join(names, " + ")
}

// rowName begins with the evenings, so that choices differ where a long list
// of names is cut off.
func (c *choices) rowName(choice resupply.Choice) string {
	if len(choice.Points) == 0 {
		return c.name(choice)
	}
	return c.shortName(choice) + ": " + c.name(choice)
}

// take uses the points of a choice and no others.
func (c *choices) take(choice resupply.Choice) {
	name := lang.X("take-choice", "use {{.Points}}", data{"Points": c.name(choice)})
	_ = c.bench.Edit(name, func(t *trip.Trip) error {
		for i := range t.Points {
			t.Points[i].Use = slices.Contains(choice.Points, t.Points[i].ID)
		}
		return nil
	})
}

func (c *choices) takeSelected() {
	if i, ok := c.table.Selected(); ok {
		c.take(c.shown[i])
	}
}

func (c *choices) takeAdvised() {
	for _, choice := range c.shown {
		if choice.Recommended {
			c.take(choice)
			return
		}
	}
}

// carriedUnit is that of food carried, added up over all mornings.
func carriedUnit(system units.System) string {
	if system == units.US {
		return lang.L("lb days")
	}
	return lang.L("kg days")
}

// carried is a choice's food of all mornings, as if carried on one.
func carried(x resupply.Choice) units.Mass {
	return units.Kilogram.Scale(x.CarriedKgDay)
}

func (c *choices) columns() []grid.Column[int] {
	u := c.bench.Units()
	at := func(i int) resupply.Choice {
		if i < 0 || i >= len(c.shown) {
			return resupply.Choice{}
		}
		return c.shown[i]
	}
	number := func(title, unit string, width float32, of func(resupply.Choice) float64, text func(resupply.Choice) string) grid.Column[int] {
		return grid.Column[int]{Title: title, Unit: unit, Width: width, Right: true,
			Text: func(i int) string { return text(at(i)) }, Compare: func(a, b int) int { return cmp.Compare(of(at(a)), of(at(b))) }}
	}
	return []grid.Column[int]{
		{Title: lang.L("Points"), Width: 160, Text: func(i int) string { return c.rowName(at(i)) }},
		number(lang.L("Fees"), c.bench.Trip().Currency, 82, func(x resupply.Choice) float64 { return float64(x.Money) }, func(x resupply.Choice) string { return written.Money(x.Money, c.bench.Trip().Currency) }),
		number(lang.L("Heaviest"), typed.MassUnit(u, true), 94, func(x resupply.Choice) float64 { return float64(x.HeaviestFood) }, func(x resupply.Choice) string { return written.Number(inUnit(x.HeaviestFood, c.bench.Units()), 1) }),
		number(lang.L("Carried"), carriedUnit(u), 110, func(x resupply.Choice) float64 { return x.CarriedKgDay }, func(x resupply.Choice) string { return written.Number(inUnit(carried(x), u), 0) }),
		number(lang.L("Detour"), "h", 80, func(x resupply.Choice) float64 { return float64(x.DetourHours) }, func(x resupply.Choice) string { return written.Number(float64(x.DetourHours), 1) }),
		{Title: "", Width: 110, Text: func(i int) string { return stateWord(at(i)) }},
	}
}

func stateWord(choice resupply.Choice) string {
	var words []string
	if choice.Current {
		words = append(words, lang.L("in use"))
	}
	if choice.Recommended {
		words = append(words, lang.L("advised"))
	}
	return strings.Join(words, ", ")
}
