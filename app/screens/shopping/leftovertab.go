package shopping

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/shopping"
)

// mostLeftovers is how many leftovers are worth a look.
const mostLeftovers = 30

// leftoverTab offers what is left of whole packages to the menu.
type leftoverTab struct {
	screen  *Screen
	offers  []*offer // as many as ever were shown
	none    *look.Text
	list    *bench.Column
	content fyne.CanvasObject
}

// offer is one leftover with a button that leads to the menu.
type offer struct {
	use   shopping.LeftoverUse
	words *look.Paragraph
	row   *fyne.Container
}

func newLeftoverTab(s *Screen) *leftoverTab {
	t := &leftoverTab{screen: s, none: look.NewText(lang.L("Nothing is left that would make a helping more."), look.Body, look.Quiet)}
	list, scroll := bench.NewScrolled(s.bench.Document.AfterFrame)
	t.list = list
	t.content = container.NewBorder(look.NewText(lang.L("What is left of whole packages, and what more it would make"), look.Caption, look.Quiet), nil, nil, nil, scroll)
	return t
}

func (t *leftoverTab) show() {
	var useful []shopping.Leftover
	for _, left := range t.screen.list.rest.Leftovers {
		if len(left.Uses) > 0 && len(useful) < mostLeftovers {
			useful = append(useful, left)
		}
	}
	if len(useful) == 0 {
		t.list.Set(1, func(int) fyne.CanvasObject { return t.none })
		return
	}
	t.list.Set(len(useful), func(i int) fyne.CanvasObject {
		if i == len(t.offers) {
			t.offers = append(t.offers, t.newOffer())
		}
		o, words := t.offers[i], t.tell(useful[i])
		o.use = useful[i].Uses[0]
		o.words.SetContent(words)
		return o.row
	})
}

func (t *leftoverTab) newOffer() *offer {
	o := &offer{words: look.NewParagraph("", look.Body, look.Ink)}
	open := widget.NewButton(lang.L("To the menu"), func() {
		t.screen.bench.Document.GoTo(document.Place{Screen: "menu", Place: findings.Place{Meal: o.use.Meal, Recipe: o.use.Recipe}})
	})
	o.row = container.NewBorder(nil, nil, nil, container.NewCenter(open), o.words)
	return o
}

// tell says what more the leftover would make.
func (t *leftoverTab) tell(left shopping.Leftover) string {
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
	return words
}
