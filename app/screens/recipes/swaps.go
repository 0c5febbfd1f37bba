package recipes

import (
	"errors"
	"slices"
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

// swapsTable is what is taken instead of one ingredient, in the order in
// which it is tried.
type swapsTable struct {
	ingredients *ingredientsTab
	heading     *look.Text
	table       *grid.Grid[int] // places of the swaps
	content     fyne.CanvasObject
}

const swapsHeight float32 = 132

func newSwapsTable(g *ingredientsTab) *swapsTable {
	s := &swapsTable{ingredients: g, heading: look.NewText("", look.Caption, look.Quiet).Yielding()}
	b := g.side.screen.bench
	s.table = grid.New(s.columns(), grid.Options[int]{
		Key: strconv.Itoa, OnAdd: s.add, OnDelete: s.remove, Together: b.Together, OnProblem: b.Say, Clipboard: b.Clipboard,
	})
	buttons := container.NewHBox(widget.NewButton(lang.L("Add a swap"), s.table.Add), widget.NewButton(lang.L("Remove the swap"), s.table.Delete))
	s.content = container.NewVBox(widget.NewSeparator(), bench.Inset(s.heading), bench.Tall(swapsHeight, s.table), buttons)
	return s
}

// leftOut stands for no food at all.
func leftOut() string { return lang.L("leave it out") }

func (s *swapsTable) show() {
	_, ingredient := s.ingredients.chosen()
	if ingredient == nil {
		s.table.SetRows(nil)
		return
	}
	rows := make([]int, len(ingredient.Swaps))
	for i := range rows {
		rows[i] = i
	}
	s.table.SetRows(rows)
	values := map[string]any{"Food": foodName(s.ingredients.side.screen.bench.Trip(), ingredient.Food)}
	if len(rows) == 0 {
		s.heading.SetContent(lang.X("no-swap", "No swap yet: who cannot eat {{.Food}} cannot have this recipe.", values))
		return
	}
	s.heading.SetContent(lang.X("instead-of", "For who cannot eat {{.Food}}, tried in order:", values))
}

func (s *swapsTable) columns() []grid.Column[int] {
	b := s.ingredients.side.screen.bench
	u := b.Units()
	yes := []string{lang.L("yes"), lang.L("no")}
	column := func(title, unit string, width float32, right bool, text func(w *trip.Swap) string, set func(t *trip.Trip, w *trip.Swap, text string) error) grid.Column[int] {
		return grid.Column[int]{
			Title: title, Unit: unit, Width: width, Right: right,
			Text: func(at int) string {
				if _, ingredient := s.ingredients.chosen(); ingredient != nil && at < len(ingredient.Swaps) {
					return text(&ingredient.Swaps[at])
				}
				return ""
			},
			Set: func(at int, text string) error {
				return s.change(func(i *trip.Ingredient) error {
					if at >= len(i.Swaps) {
						return errGone
					}
					return set(b.Trip(), &i.Swaps[at], text)
				})
			},
		}
	}
	food := column(lang.L("Food instead"), "", 200, false, func(w *trip.Swap) string { return swapName(b.Trip(), w) }, setSwapFood)
	food.Choices = func(int) []string { return append([]string{leftOut()}, foodNames(b.Trip())...) }
	amount := column(lang.L("Amount"), typed.MassUnit(u, false), 90, true, func(w *trip.Swap) string { return written.Bare(typed.MassText(w.Amount, u, false)) },
		func(_ *trip.Trip, w *trip.Swap, text string) (err error) {
			w.Amount, err = typed.Mass(text, u, false)
			return err
		})
	all := column(lang.L("For the whole pot"), "", 150, false, func(w *trip.Swap) string {
		if w.ForAll {
			return yes[0]
		}
		return yes[1]
	}, func(_ *trip.Trip, w *trip.Swap, text string) (err error) {
		w.ForAll, err = typed.Yes(text)
		return err
	})
	all.Choices = func(int) []string { return yes }
	return []grid.Column[int]{food, amount, all}
}

// setSwapFood names the food; none of it leaves the ingredient out, and what
// comes back gets an amount to be written over.
func setSwapFood(t *trip.Trip, w *trip.Swap, text string) error {
	if text == "" || strings.EqualFold(text, leftOut()) {
		w.Food, w.Amount = 0, 0
		return nil
	}
	food, err := foodNamed(t, text)
	if err != nil {
		return err
	}
	w.Food = food
	if w.Amount == 0 {
		w.Amount = 10 * units.Gram
	}
	return nil
}

func swapName(t *trip.Trip, w *trip.Swap) string {
	if w.Food == 0 {
		return leftOut()
	}
	return foodName(t, w.Food)
}

// swapsText writes the swaps of an ingredient in one line.
func swapsText(t *trip.Trip, swaps []trip.Swap, u units.System) string {
	parts := make([]string, len(swaps))
	for i := range swaps {
		parts[i] = swapName(t, &swaps[i])
		if swaps[i].Food != 0 {
			parts[i] += " " + written.Quantity(swaps[i].Amount, u)
		}
		if swaps[i].ForAll {
			parts[i] += " (" + lang.L("whole pot") + ")"
		}
	}
	return strings.Join(parts, ", ")
}

func (s *swapsTable) change(set func(i *trip.Ingredient) error) error {
	at, ingredient := s.ingredients.chosen()
	if ingredient == nil {
		return errors.New(lang.L("Choose an ingredient first."))
	}
	what := lang.X("swaps-of", "swaps for {{.Food}}", map[string]any{"Food": foodName(s.ingredients.side.screen.bench.Trip(), ingredient.Food)})
	return s.ingredients.side.screen.change(s.ingredients.side.recipe, what, func(r *trip.Recipe) error { return set(&r.Ingredients[at]) })
}

// add begins with leaving the ingredient out, to be written over.
func (s *swapsTable) add() (string, error) {
	_, ingredient := s.ingredients.chosen()
	if ingredient == nil {
		return "", errors.New(lang.L("Choose an ingredient first."))
	}
	at := len(ingredient.Swaps)
	err := s.change(func(i *trip.Ingredient) error { i.Swaps = append(i.Swaps, trip.Swap{}); return nil })
	s.ingredients.side.showTab()
	return strconv.Itoa(at), err
}

func (s *swapsTable) remove(at int) error {
	err := s.change(func(i *trip.Ingredient) error {
		if at < len(i.Swaps) {
			i.Swaps = slices.Delete(i.Swaps, at, at+1)
		}
		return nil
	})
	s.ingredients.side.showTab()
	return err
}
