package menu

import (
	"fmt"
	"image/color"
	"math"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trial"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// choiceRow is a recipe of the list: its name, and what it would change.
type choiceRow struct {
	widget.BaseWidget
	ground  *canvas.Rectangle
	lines   [3]*canvas.Text // name, what the day changes by, the rest
	content [3]string
	current bool
	tone    fyne.ThemeColorName
	fit     fitter
}

func newChoiceRow() *choiceRow {
	r := &choiceRow{ground: canvas.NewRectangle(color.Transparent)}
	for i := range r.lines {
		r.lines[i] = canvas.NewText("", nil)
	}
	r.ExtendBaseWidget(r)
	return r
}

func (r *choiceRow) show(content [3]string, current bool, tone fyne.ThemeColorName) {
	if content != r.content || current != r.current || tone != r.tone {
		r.content, r.current, r.tone = content, current, tone
		r.Refresh()
	}
}

// CreateRenderer draws the lines.
func (r *choiceRow) CreateRenderer() fyne.WidgetRenderer {
	renderer := &choiceRowRenderer{r}
	renderer.Refresh()
	return renderer
}

type choiceRowRenderer struct{ r *choiceRow }

func (c *choiceRowRenderer) Destroy() {}
func (c *choiceRowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(120, theme.TextSize()*1.45+2*theme.CaptionTextSize()*1.4+8)
}

func (c *choiceRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{c.r.ground, c.r.lines[0], c.r.lines[1], c.r.lines[2]}
}

func (c *choiceRowRenderer) Layout(size fyne.Size) {
	c.r.ground.Resize(size)
	c.r.lines[0].Move(fyne.NewPos(6, 3))
	c.r.lines[1].Move(fyne.NewPos(6, 3+theme.TextSize()*1.45))
	c.r.lines[2].Move(fyne.NewPos(6, 3+theme.TextSize()*1.45+theme.CaptionTextSize()*1.4))
	c.Refresh()
}

func (c *choiceRowRenderer) Refresh() {
	r := c.r
	r.ground.FillColor = theme.Color(look.Panel)
	if r.current {
		r.ground.FillColor = theme.Color(look.Wash)
	}
	width := max(0, r.Size().Width-12)
	for i, line := range r.lines {
		line.TextSize = theme.CaptionTextSize()
		tone, style := look.Quiet, fyne.TextStyle{}
		switch i {
		case 0:
			line.TextSize = theme.TextSize()
			tone, style = look.Ink, fyne.TextStyle{Bold: r.current}
		case 2:
			tone = r.tone
		}
		r.fit.set(width, line.TextSize)
		set(line, r.fit.cut(r.content[i], line.TextStyle), tone, style)
	}
	r.ground.Refresh()
}

func (c *chooser) fill(i int, r *choiceRow) {
	if i >= len(c.found) {
		return
	}
	one := &c.all[c.found[i]]
	tone := look.Quiet
	switch {
	case len(one.unsafe) > 0:
		tone = look.Brick
	case one.tried && len(one.outcome.Without) > 0:
		tone = look.Ochre
	}
	r.show([3]string{one.name, c.changes(one), c.asides(one)}, i == c.at, tone)
}

// changes says what a recipe would change in an eater's day.
func (c *chooser) changes(one *choice) string {
	u, o := c.s.seen.trip.Units, &one.outcome
	switch {
	case !one.tried:
		return "…"
	case one.served:
		return strings.Join([]string{lang.L("served now"), written.Quantity(o.MealFood, u), fmt.Sprintf("%.0f kcal", float64(o.MealKcal))}, " · ")
	case c.now.MealKcal == 0: // nothing to change yet: what it brings
		return strings.Join([]string{
			written.Quantity(o.MealFood, u), fmt.Sprintf("%.0f kcal", float64(o.MealKcal)), signedNumber(o.Protein-c.now.Protein) + " g " + lang.L("protein"),
			costChange(c.s.seen.trip, o.Cost-c.now.Cost, o.Unpriced == c.now.Unpriced),
		}, " · ")
	}
	return dayChange(c.s.seen.trip, trial.Outcome{
		DayFood: o.DayFood - c.now.DayFood, DayKcal: o.DayKcal - c.now.DayKcal, Protein: o.Protein - c.now.Protein, Cost: o.Cost - c.now.Cost,
	}, o.Unpriced == c.now.Unpriced)
}

// dayChange says by what an eater's day changes.
func dayChange(t *trip.Trip, by trial.Outcome, priced bool) string {
	return strings.Join([]string{
		signedMass(by.DayFood, t.Units), signedNumber(float64(by.DayKcal)) + " kcal", signedNumber(by.Protein) + " g " + lang.L("protein"), costChange(t, by.Cost, priced),
	}, " · ")
}

// costChange says by what the cost of an eater's day changes, or that nobody knows.
func costChange(t *trip.Trip, by units.Money, priced bool) string {
	if !priced {
		return lang.L("cost not known")
	}
	return signedMoney(by, t.Currency)
}

// asides says what a recipe asks of the stove, and what speaks against it.
func (c *chooser) asides(one *choice) string {
	var words []string
	if len(one.unsafe) > 0 {
		words = append(words, lang.X("menu-unsafe", "not safe here: {{.Foods}}", map[string]any{"Foods": c.s.seen.foodNames(one.unsafe)}))
	}
	if n := len(one.outcome.Without); one.tried && n > 0 {
		words = append(words, written.Counted(n, prose.Say("one goes without"), prose.Say("%d go without", n)))
	}
	if !one.suits {
		words = append(words, lang.L("not meant for here"))
	}
	if one.tried {
		words = append(words, c.stove(one)...)
	}
	if len(one.days) > 0 {
		words = append(words, lang.L("also day")+" "+joined(one.days))
	}
	return strings.Join(words, " · ")
}

// stove says how long a recipe takes and what it burns.
func (c *chooser) stove(one *choice) []string {
	var words []string
	if minutes := c.minutes(one); minutes != "" {
		words = append(words, minutes)
	}
	if by := one.outcome.Fuel - c.now.Fuel; !one.served && c.now.MealKcal > 0 && math.Round(by.Grams()) != 0 {
		words = append(words, signedMass(by, c.s.seen.trip.Units)+" "+lang.L("fuel"))
	} else if c.now.MealKcal == 0 && one.outcome.Fuel > 0 {
		words = append(words, written.Quantity(one.outcome.Fuel, c.s.seen.trip.Units)+" "+lang.L("fuel"))
	}
	return words
}

func (c *chooser) minutes(one *choice) string {
	if one.outcome.Minutes == 0 && c.now.Minutes == 0 {
		return ""
	}
	text := fmt.Sprintf("%.0f min", float64(one.outcome.Minutes))
	if by := float64(one.outcome.Minutes - c.now.Minutes); math.Round(by) != 0 && !one.served && c.now.MealKcal > 0 {
		text += " (" + signedNumber(by) + ")"
	}
	return text
}

// signedMass writes a change of mass, with its sign, in whole grams.
func signedMass(mass units.Mass, u units.System) string {
	whole := units.FromGrams(math.Round(mass.Grams()))
	if whole < 0 {
		return "−" + written.Quantity(-whole, u)
	}
	return plus(float64(whole)) + written.Quantity(whole, u)
}

// signedMoney writes a change of cost, with its sign.
func signedMoney(by units.Money, currency string) string {
	if by < 0 {
		return "−" + written.Price(-by, currency)
	}
	return plus(float64(by)) + written.Price(by, currency)
}

// signedNumber writes a change in whole numbers, with its sign.
func signedNumber(value float64) string {
	whole := math.Round(value)
	if whole < 0 {
		return fmt.Sprintf("−%.0f", -whole)
	}
	return fmt.Sprintf("%s%.0f", plus(whole), math.Abs(whole))
}

func plus(value float64) string {
	if value == 0 {
		return "±"
	}
	return "+"
}

func joined(days []int) string {
	words := make([]string, len(days))
	for i, day := range days {
		words[i] = strconv.Itoa(day)
	}
	return strings.Join(words, ", ")
}

// searchEntry passes the keys of a list on to it.
type searchEntry struct {
	widget.Entry
	c *chooser
}

func newSearchEntry(c *chooser) *searchEntry {
	e := &searchEntry{c: c}
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey moves in the list, serves the recipe there, or goes back.
func (e *searchEntry) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyDown:
		e.c.step(1)
	case fyne.KeyUp:
		e.c.step(-1)
	case fyne.KeyPageDown:
		e.c.step(pageOfChoices)
	case fyne.KeyPageUp:
		e.c.step(-pageOfChoices)
	case fyne.KeyReturn, fyne.KeyEnter:
		e.c.take(e.c.at, e.c.chosenWay())
	case fyne.KeyEscape:
		e.c.leave()
	default:
		e.Entry.TypedKey(event)
	}
}

const pageOfChoices = 8

// TypedShortcut serves the recipe beside what is there with Ctrl and Enter.
func (e *searchEntry) TypedShortcut(shortcut fyne.Shortcut) {
	if custom, ok := shortcut.(*desktop.CustomShortcut); ok && custom.Modifier == fyne.KeyModifierShortcutDefault &&
		(custom.KeyName == fyne.KeyReturn || custom.KeyName == fyne.KeyEnter) {
		e.c.takeBeside(e.c.at)
		return
	}
	e.Entry.TypedShortcut(shortcut)
}
