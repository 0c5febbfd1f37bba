package foods

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/document"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// usedTab is where the food is eaten and how it gets there.
type usedTab struct {
	side    *sidePanel
	uses    []use
	recipes *look.Text
	table   *grid.Grid[int] // places of the uses
	why     *look.Paragraph
	content fyne.CanvasObject
}

// use is the food in one slot of the plan.
type use struct {
	fate spoilage.Fate
	mass units.Mass
}

func newUsedTab(side *sidePanel) *usedTab {
	u := &usedTab{side: side, recipes: look.NewText("", look.Caption, look.Quiet).Yielding(), why: bench.SmallPrint("")}
	b := side.screen.bench
	u.table = grid.New([]grid.Column[int]{
		{Title: lang.L("Eaten"), Width: 190, Text: func(at int) string { return u.where(at) }, Compare: func(x, y int) int { return x - y }},
		{Title: lang.L("Amount"), Width: 74, Right: true, Text: func(at int) string { return written.Quantity(u.uses[at].mass, b.Units()) }},
		{Title: lang.L("Safe?"), Width: 84, Text: func(at int) string { return lang.L(string(u.uses[at].fate.Verdict)) },
			Tone: func(at int) fyne.ThemeColorName { return verdictTone(u.uses[at].fate.Verdict) }},
		{Title: lang.L("Left"), Width: 86, Right: true, Text: func(at int) string { return daysLeft(&u.uses[at].fate) }},
	}, grid.Options[int]{Key: strconv.Itoa, OnSelect: u.explain, OnOpen: u.open, OnProblem: b.Say, Clipboard: b.Clipboard})
	u.content = container.NewBorder(bench.Inset(u.recipes), bench.Tall(110, bench.NewScroll(u.why)), nil, nil, u.table)
	return u
}

func (u *usedTab) show(food *trip.Food) {
	t := u.side.screen.bench.Trip()
	if used := recipesWith(t, food.ID); len(used) > 0 {
		u.recipes.SetContent(lang.L("In the recipes:") + " " + recipeNames(used))
	} else {
		u.recipes.SetContent(lang.L("No recipe needs it yet."))
	}
	u.uses = usesOf(u.side.screen.bench.Plan(), food.ID)
	rows := make([]int, len(u.uses))
	for i := range rows {
		rows[i] = i
	}
	u.table.SetRows(rows)
	if at, ok := u.table.Selected(); ok {
		u.explain(at)
	} else {
		u.why.SetContent(lang.L("The menu does not serve it."))
	}
}

// usesOf joins the fates of a food with the grams of each slot.
func usesOf(p *plan.Plan, food trip.FoodID) []use {
	if p == nil {
		return nil
	}
	var uses []use
	for _, fate := range p.Spoilage.Fates {
		if fate.Food != food {
			continue
		}
		one := use{fate: fate}
		for i := range p.Portions.Batches {
			b := &p.Portions.Batches[i]
			if b.Day != fate.Day || b.Meal != fate.Meal || b.Group != fate.Group {
				continue
			}
			for _, amount := range b.Totals {
				if amount.Food == food {
					one.mass += amount.Mass
				}
			}
		}
		uses = append(uses, one)
	}
	return uses
}

func (u *usedTab) where(at int) string {
	fate := &u.uses[at].fate
	text := fmt.Sprintf("%s %d %s", lang.L("day"), fate.Day, lang.L(string(fate.Meal)))
	t := u.side.screen.bench.Trip()
	if group := t.Group(fate.Group); group != nil && len(t.Groups) > 1 {
		text += ", " + group.Name
	}
	return text
}

// daysLeft says how long it could still wait, at the warmth of that day.
func daysLeft(fate *spoilage.Fate) string {
	if !fate.QualityKnown {
		return notKnown
	}
	return lang.X("days-left", "{{.Days}} days", map[string]any{"Days": written.Number(max(0, fate.DaysLeft), decimalsOf(fate.DaysLeft))})
}

func decimalsOf(days float64) int {
	if days < 10 {
		return 1
	}
	return 0
}

func verdictTone(verdict spoilage.Verdict) fyne.ThemeColorName {
	switch verdict {
	case spoilage.Safe:
		return look.Spruce
	case spoilage.NotSafe:
		return look.Brick
	default:
		return look.Ochre
	}
}

// explain says why, and how the food came there.
func (u *usedTab) explain(at int) {
	if at >= len(u.uses) {
		return
	}
	fate, system := &u.uses[at].fate, u.side.screen.bench.Units()
	text := written.Text(fate.Why, system)
	if fate.Melts {
		text += " " + lang.L("It melts on the way.")
	}
	if fate.LatestDay > 0 {
		text += " " + lang.X("latest-day", "The last day it can be eaten is day {{.Day}}.", map[string]any{"Day": fate.LatestDay})
	}
	for _, stretch := range fate.Path {
		warmth := lang.L("warmth not known")
		if stretch.Known {
			warmth = written.Quantity(stretch.Low, system) + " – " + written.Quantity(stretch.High, system)
		}
		text += fmt.Sprintf("\n%s: %s, %s", lang.L(stretch.Where),
			lang.X("days-left", "{{.Days}} days", map[string]any{"Days": written.Number(stretch.Days, 1)}), warmth)
	}
	u.why.SetContent(text)
}

// open goes to the slot on the menu.
func (u *usedTab) open(at int) {
	fate := &u.uses[at].fate
	u.side.screen.bench.Document.GoTo(document.Place{Screen: "menu", Place: findings.Place{Day: fate.Day, Meal: fate.Meal, Group: fate.Group, Food: fate.Food}})
}
