package recipes

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// mostEaters of a card: no pot is larger.
const mostEaters = trip.MaxMembers

// cardTab is the recipe scaled to a number of standard eaters, to cook by.
type cardTab struct {
	side    *sidePanel
	eaters  *countEntry
	count   int
	water   *look.Text
	times   *look.Text
	table   *grid.Grid[int] // places of the ingredients
	method  *look.Paragraph
	content fyne.CanvasObject
}

func newCardTab(side *sidePanel) *cardTab {
	c := &cardTab{
		side: side, count: max(1, len(side.screen.bench.Trip().Crew)), water: look.NewText("", look.Body, look.Slate),
		times: look.NewText("", look.Body, look.Ink), method: look.NewParagraph("", look.Body, look.Ink),
	}
	c.eaters = newCountEntry(c.read)
	c.eaters.SetText(strconv.Itoa(c.count))
	b := side.screen.bench
	c.table = grid.New([]grid.Column[int]{
		{Title: lang.L("Food"), Width: 190, Text: func(at int) string {
			return c.of(at, func(i *trip.Ingredient) string { return foodName(b.Trip(), i.Food) })
		}},
		{Title: lang.L("For one"), Width: 120, Right: true, Text: func(at int) string {
			return c.of(at, func(i *trip.Ingredient) string { return amountText(b.Trip(), i.Food, i.Amount) })
		}},
		{Title: lang.L("For all"), Width: 130, Right: true, Text: func(at int) string {
			return c.of(at, func(i *trip.Ingredient) string { return amountText(b.Trip(), i.Food, c.forAll(i.Amount)) })
		}},
		{Title: lang.L("Into"), Width: 80, Text: func(at int) string {
			return c.of(at, func(i *trip.Ingredient) string { return lang.L(string(i.Place)) })
		}},
	}, grid.Options[int]{Key: strconv.Itoa, OnProblem: b.Say, Clipboard: b.Clipboard})
	head := container.NewBorder(nil, nil, nil, widget.NewButton(lang.L("Print…"), side.screen.printCard),
		container.NewHBox(look.NewText(lang.L("Standard eaters"), look.Body, look.Ink), bench.Wide(64, c.eaters)))
	foot := bench.Tall(200, bench.NewScroll(c.method))
	c.content = container.NewBorder(bench.Inset(head, c.water, c.times), foot, nil, nil, c.table)
	return c
}

func amountText(t *trip.Trip, food trip.FoodID, mass units.Mass) string {
	if f := t.Food(food); f != nil {
		return written.Amount(f, mass, t.Units)
	}
	return written.Quantity(mass, t.Units)
}

func (c *cardTab) of(at int, ask func(i *trip.Ingredient) string) string {
	if recipe := c.side.current(); recipe != nil && at < len(recipe.Ingredients) {
		return ask(&recipe.Ingredients[at])
	}
	return ""
}

func (c *cardTab) forAll(one units.Mass) units.Mass { return one * units.Mass(c.count) }

// read takes another number of eaters, as soon as it is one.
func (c *cardTab) read(text string) {
	if strings.TrimSpace(text) == "" {
		return
	}
	count, err := typed.Whole(text, 1, mostEaters)
	if err != nil {
		c.side.screen.bench.Say(written.Error(err))
		return
	}
	c.side.screen.bench.Say("")
	c.count = count
	if recipe := c.side.current(); recipe != nil {
		c.show(recipe)
	}
}

func (c *cardTab) show(recipe *trip.Recipe) {
	rows := make([]int, len(recipe.Ingredients))
	for i := range rows {
		rows[i] = i
	}
	c.table.SetRows(rows)
	c.water.SetContent(c.waterWords(recipe))
	c.times.SetContent(timeWords(recipe))
	text := ""
	for i, step := range recipe.Method {
		text += fmt.Sprintf("%d. %s\n", i+1, step)
	}
	if recipe.Notes != "" {
		text += "\n" + recipe.Notes
	}
	if text == "" {
		text = lang.L("No method is written yet.")
	}
	c.method.SetContent(text)
}

// waterWords says how much water goes in and how much is poured off.
func (c *cardTab) waterWords(recipe *trip.Recipe) string {
	u, all := c.side.screen.bench.Units(), units.Volume(c.count)
	if recipe.Water == 0 && recipe.PourOff == 0 {
		return lang.L("No water")
	}
	text := lang.L("Water") + " " + written.Quantity(recipe.Water*all, u)
	if recipe.PourOff > 0 {
		text += ", " + lang.X("pour-off", "and {{.Volume}} boiled and poured off", map[string]any{"Volume": written.Quantity(recipe.PourOff*all, u)})
	}
	return text
}

// timeWords says how long it takes at sea level after the boil.
func timeWords(recipe *trip.Recipe) string {
	var parts []string
	if recipe.Simmer > 0 {
		parts = append(parts, lang.X("simmer", "simmer {{.Minutes}} min at sea level, longer higher up", map[string]any{"Minutes": number(float64(recipe.Simmer), 0)}))
	}
	if recipe.Soak > 0 {
		parts = append(parts, lang.X("soak", "soak {{.Minutes}} min off the flame", map[string]any{"Minutes": number(float64(recipe.Soak), 0)}))
	}
	if recipe.ColdOK {
		parts = append(parts, lang.L("can be made cold"))
	}
	if len(parts) == 0 {
		return lang.L("ready to eat")
	}
	return strings.Join(parts, ", ")
}

// countEntry is a small entry whose arrows count up and down.
type countEntry struct{ widget.Entry }

func newCountEntry(changed func(string)) *countEntry {
	e := &countEntry{}
	e.ExtendBaseWidget(e)
	e.OnChanged = changed
	return e
}

// TypedKey counts with the arrows.
func (e *countEntry) TypedKey(event *fyne.KeyEvent) {
	step := map[fyne.KeyName]int{fyne.KeyUp: 1, fyne.KeyDown: -1}[event.Name]
	if count, err := strconv.Atoi(e.Text); err == nil && step != 0 {
		e.SetText(strconv.Itoa(max(1, min(mostEaters, count+step))))
		return
	}
	e.Entry.TypedKey(event)
}
