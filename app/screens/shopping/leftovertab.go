package shopping

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/shopping"
)

// mostLeftovers is how many leftovers are worth a look.
const mostLeftovers = 30

// leftoverTab offers what is left of whole packages to the menu.
type leftoverTab struct {
	screen  *Screen
	list    *fyne.Container
	content fyne.CanvasObject
}

func newLeftoverTab(s *Screen) *leftoverTab {
	t := &leftoverTab{screen: s, list: container.NewVBox()}
	t.content = container.NewBorder(look.NewText(lang.L("What is left of whole packages, and what more it would make"), look.Caption, look.Quiet), nil, nil, nil, container.NewVScroll(t.list))
	return t
}

func (t *leftoverTab) show() {
	t.list.Objects = nil
	for _, left := range t.screen.list.rest.Leftovers {
		if len(left.Uses) > 0 && len(t.list.Objects) < mostLeftovers {
			t.list.Add(t.offer(left))
		}
	}
	if len(t.list.Objects) == 0 {
		t.list.Add(look.NewText(lang.L("Nothing is left that would make a helping more."), look.Body, look.Quiet))
	}
	t.list.Refresh()
}

// offer is one leftover with a button that leads to the menu.
func (t *leftoverTab) offer(left shopping.Leftover) fyne.CanvasObject {
	trip, use := t.screen.list.trip, left.Uses[0]
	food, recipe := "", ""
	if f := trip.Food(left.Food); f != nil {
		food = f.Name
	}
	if r := trip.Recipe(use.Recipe); r != nil {
		recipe = r.Name
	}
	values := data{"Mass": written.Quantity(left.Mass, trip.Units), "Food": food, "Recipe": recipe, "Helpings": use.Helpings, "Meals": use.Meals}
	words := lang.X("leftover-helpings", "{{.Mass}} {{.Food}} left over: {{.Helpings}} more helpings of {{.Recipe}}", values)
	switch {
	case use.Meals > 1:
		words = lang.X("leftover-meals", "{{.Mass}} {{.Food}} left over: {{.Meals}} more meals of {{.Recipe}} for all", values)
	case use.Meals == 1:
		words = lang.X("leftover-meal", "{{.Mass}} {{.Food}} left over: one more meal of {{.Recipe}} for all", values)
	case use.Helpings == 1:
		words = lang.X("leftover-helping", "{{.Mass}} {{.Food}} left over: one more helping of {{.Recipe}}", values)
	}
	label := widget.NewLabel(words)
	label.Wrapping = fyne.TextWrapWord
	open := widget.NewButton(lang.L("To the menu"), func() {
		t.screen.bench.Document.GoTo(document.Place{Screen: "menu", Place: findings.Place{Meal: use.Meal, Recipe: use.Recipe}})
	})
	return container.NewBorder(nil, nil, nil, container.NewCenter(open), label)
}
