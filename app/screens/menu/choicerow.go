package menu

import (
	"fmt"
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
	"sumpter/domain/units"
)

// choiceRow is a recipe of the list: its name, and what it would change.
type choiceRow struct {
	widget.BaseWidget
	ground       *canvas.Rectangle
	name, change *canvas.Text
	content      [2]string
	current      bool
	tone         fyne.ThemeColorName
	fit          fitter
}

func newChoiceRow() *choiceRow {
	r := &choiceRow{ground: canvas.NewRectangle(nil), name: canvas.NewText("", nil), change: canvas.NewText("", nil)}
	r.ExtendBaseWidget(r)
	return r
}

func (r *choiceRow) show(name, change string, current bool, tone fyne.ThemeColorName) {
	if content := [2]string{name, change}; content != r.content || current != r.current || tone != r.tone {
		r.content, r.current, r.tone = content, current, tone
		r.Refresh()
	}
}

// CreateRenderer draws the two lines.
func (r *choiceRow) CreateRenderer() fyne.WidgetRenderer {
	renderer := &choiceRowRenderer{r}
	renderer.Refresh()
	return renderer
}

type choiceRowRenderer struct{ r *choiceRow }

func (c *choiceRowRenderer) Destroy() {}
func (c *choiceRowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(120, theme.TextSize()*1.45+theme.CaptionTextSize()*1.4+8)
}

func (c *choiceRowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{c.r.ground, c.r.name, c.r.change}
}

func (c *choiceRowRenderer) Layout(size fyne.Size) {
	c.r.ground.Resize(size)
	c.r.name.Move(fyne.NewPos(6, 3))
	c.r.change.Move(fyne.NewPos(6, 3+theme.TextSize()*1.45))
	c.Refresh()
}

func (c *choiceRowRenderer) Refresh() {
	r := c.r
	r.ground.FillColor = theme.Color(look.Panel)
	if r.current {
		r.ground.FillColor = theme.Color(look.Wash)
	}
	r.name.TextSize, r.change.TextSize = theme.TextSize(), theme.CaptionTextSize()
	width := max(0, r.Size().Width-12)
	r.fit.set(width, r.name.TextSize)
	set(r.name, r.fit.cut(r.content[0], r.name.TextStyle), look.Ink, fyne.TextStyle{Bold: r.current})
	r.fit.set(width, r.change.TextSize)
	set(r.change, r.fit.cut(r.content[1], r.change.TextStyle), r.tone, fyne.TextStyle{})
	r.ground.Refresh()
}

func (c *chooser) fill(i int, r *choiceRow) {
	if i >= len(c.found) {
		return
	}
	one := &c.all[c.found[i]]
	tone := look.Quiet
	if one.tried && len(one.outcome.Without) > 0 {
		tone = look.Ochre
	}
	r.show(one.name, c.changes(one), i == c.at, tone)
}

// changes says what a recipe would change: food and energy of an eater's day,
// and the minutes of the meal; then what speaks against it.
func (c *chooser) changes(one *choice) string {
	var words []string
	u, o := c.s.seen.trip.Units, &one.outcome
	switch {
	case !one.tried:
		words = append(words, "…")
	case one.served:
		words = append(words, lang.L("served now"), written.Quantity(o.MealFood, u), fmt.Sprintf("%.0f kcal", float64(o.MealKcal)))
	case c.now.MealKcal == 0:
		words = append(words, written.Quantity(o.MealFood, u), fmt.Sprintf("%.0f kcal", float64(o.MealKcal)))
	default:
		words = append(words, signedMass(o.DayFood-c.now.DayFood, u), signedNumber(float64(o.DayKcal-c.now.DayKcal))+" kcal")
	}
	if one.tried {
		if minutes := c.minutes(one); minutes != "" {
			words = append(words, minutes)
		}
		if n := len(o.Without); n > 0 {
			words = append(words, lang.X("menu-n-without", "{{.N}} go without", map[string]any{"N": n}))
		}
	}
	if !one.suits {
		words = append(words, lang.L("not meant for here"))
	}
	if len(one.days) > 0 {
		words = append(words, lang.L("also day")+" "+joined(one.days))
	}
	return strings.Join(words, " · ")
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
