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

// ingredientsTab is what is in the recipe, and under it what is taken instead
// for those who cannot eat the chosen ingredient.
type ingredientsTab struct {
	side    *sidePanel
	table   *grid.Grid[int] // places of the ingredients
	swaps   *swapsTable
	content fyne.CanvasObject
}

// tableHeight keeps some ingredients in sight on a small screen.
const tableHeight float32 = 150

func newIngredientsTab(side *sidePanel) *ingredientsTab {
	g := &ingredientsTab{side: side}
	g.swaps = newSwapsTable(g)
	b := side.screen.bench
	g.table = grid.New(g.columns(), grid.Options[int]{
		Key: strconv.Itoa, OnSelect: func(int) { g.swaps.show() }, OnAdd: g.add, OnDelete: g.remove, OnPaste: g.paste,
		OnOpen: func(int) { g.swaps.table.Focus() }, Together: b.Together, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	buttons := container.NewHBox(widget.NewButton(lang.L("Add an ingredient"), g.table.Add), widget.NewButton(lang.L("Remove it"), g.table.Delete))
	g.content = container.NewBorder(nil, g.swaps.content, nil, nil, container.NewBorder(nil, buttons, nil, nil, bench.Tall(tableHeight, g.table)))
	return g
}

func (g *ingredientsTab) commit() bool { return g.table.Commit() && g.swaps.table.Commit() }

func (g *ingredientsTab) show(recipe *trip.Recipe) {
	rows := make([]int, len(recipe.Ingredients))
	for i := range rows {
		rows[i] = i
	}
	g.table.SetRows(rows)
	g.swaps.show()
}

// chosen is the ingredient at the cursor.
func (g *ingredientsTab) chosen() (int, *trip.Ingredient) {
	at, ok := g.table.Selected()
	recipe := g.side.current()
	if !ok || recipe == nil || at >= len(recipe.Ingredients) {
		return 0, nil
	}
	return at, &recipe.Ingredients[at]
}

// part is one column of the ingredients.
type part struct {
	title, unit string
	width       float32
	right       bool
	text        func(i *trip.Ingredient) string
	set         func(t *trip.Trip, i *trip.Ingredient, text string) error
	choices     func() []string
}

func (g *ingredientsTab) parts() []part {
	b := g.side.screen.bench
	u := b.Units()
	roles, places := words(trip.Roles()), words(trip.Places())
	return []part{
		{title: lang.L("Food"), width: 150, text: func(i *trip.Ingredient) string { return foodName(b.Trip(), i.Food) }, choices: func() []string { return foodNames(b.Trip()) },
			set: func(t *trip.Trip, i *trip.Ingredient, text string) (err error) {
				i.Food, err = foodNamed(t, text)
				return err
			}},
		{title: lang.L("Amount"), unit: typed.MassUnit(u, false), width: 84, right: true, text: func(i *trip.Ingredient) string { return written.Bare(typed.MassText(i.Amount, u, false)) },
			set: func(_ *trip.Trip, i *trip.Ingredient, text string) (err error) {
				i.Amount, err = typed.Mass(text, u, false)
				return err
			}},
		{title: "kcal", width: 50, right: true, text: func(i *trip.Ingredient) string {
			if food := b.Trip().Food(i.Food); food != nil {
				return number(float64(food.Kcal(i.Amount)), 0)
			}
			return "–"
		}},
		{title: lang.L("Portion"), width: 116, text: func(i *trip.Ingredient) string { return lang.L(string(i.Role)) }, choices: func() []string { return roles },
			set: func(_ *trip.Trip, i *trip.Ingredient, text string) error { return setWord(&i.Role, trip.Roles(), text) }},
		{title: lang.L("Into"), width: 52, text: func(i *trip.Ingredient) string { return lang.L(string(i.Place)) }, choices: func() []string { return places },
			set: func(_ *trip.Trip, i *trip.Ingredient, text string) error {
				return setWord(&i.Place, trip.Places(), text)
			}},
		{title: lang.L("Instead"), width: 230, text: func(i *trip.Ingredient) string { return swapsText(b.Trip(), i.Swaps, u) }},
	}
}

func (g *ingredientsTab) columns() []grid.Column[int] {
	parts := g.parts()
	columns := make([]grid.Column[int], len(parts))
	for c, p := range parts {
		columns[c] = grid.Column[int]{
			Title: p.title, Unit: p.unit, Width: p.width, Right: p.right,
			Text: func(at int) string {
				if recipe := g.side.current(); recipe != nil && at < len(recipe.Ingredients) {
					return p.text(&recipe.Ingredients[at])
				}
				return ""
			},
		}
		if p.choices != nil {
			columns[c].Choices = func(int) []string { return p.choices() }
		}
		if p.set == nil {
			columns[c].Tone = func(int) fyne.ThemeColorName { return look.Quiet }
			continue
		}
		columns[c].Set = func(at int, text string) error {
			return g.store([]grid.Pasted[int]{{Row: at, Column: c, Text: text}}, p.title)
		}
	}
	return columns
}

// store writes texts into fields of ingredients as one step of undo.
func (g *ingredientsTab) store(cells []grid.Pasted[int], what string) error {
	parts := g.parts()
	b := g.side.screen.bench
	return g.side.screen.change(g.side.recipe, what, func(r *trip.Recipe) error {
		for _, cell := range cells {
			if cell.Row >= len(r.Ingredients) {
				return errGone
			}
			if err := parts[cell.Column].set(b.Trip(), &r.Ingredients[cell.Row], cell.Text); err != nil {
				return err
			}
		}
		return nil
	})
}

func (g *ingredientsTab) paste(cells []grid.Pasted[int]) error {
	return g.store(cells, lang.L("ingredients"))
}

// add begins with a food that is not in the recipe yet, to be written over.
func (g *ingredientsTab) add() (string, error) {
	recipe, t := g.side.current(), g.side.screen.bench.Trip()
	if recipe == nil || len(t.Foods) == 0 {
		return "", errGone
	}
	food := t.Foods[0].ID
	for i := range t.Foods {
		if !slices.ContainsFunc(recipe.Ingredients, func(in trip.Ingredient) bool { return in.Food == t.Foods[i].ID }) {
			food = t.Foods[i].ID
			break
		}
	}
	at := len(recipe.Ingredients)
	err := g.side.screen.change(recipe.ID, lang.L("ingredients"), func(r *trip.Recipe) error {
		r.Ingredients = append(r.Ingredients, trip.Ingredient{Food: food, Amount: 10 * units.Gram, Role: trip.Base, Place: trip.InPot})
		return nil
	})
	g.side.showTab()
	return strconv.Itoa(at), err
}

func (g *ingredientsTab) remove(at int) error {
	recipe := g.side.current()
	if recipe == nil || at >= len(recipe.Ingredients) {
		return errGone
	}
	if len(recipe.Ingredients) == 1 {
		return errors.New(lang.L("The last ingredient stays: write another food over it, or remove the recipe."))
	}
	err := g.side.screen.change(recipe.ID, lang.L("ingredients"), func(r *trip.Recipe) error {
		r.Ingredients = slices.Delete(r.Ingredients, at, at+1)
		return nil
	})
	g.side.showTab()
	return err
}

func words[T ~string](values []T) []string {
	list := make([]string, len(values))
	for i, value := range values {
		list[i] = lang.L(string(value))
	}
	return list
}

// setWord takes a word in the reader's language or as it is stored.
func setWord[T ~string](into *T, values []T, text string) error {
	for _, value := range values {
		if strings.EqualFold(text, lang.L(string(value))) || strings.EqualFold(text, string(value)) {
			*into = value
			return nil
		}
	}
	return errors.New(lang.L("One of") + ": " + strings.Join(words(values), ", "))
}

// foodNames lists the trip's foods by name.
func foodNames(t *trip.Trip) []string {
	names := make([]string, len(t.Foods))
	for i := range t.Foods {
		names[i] = t.Foods[i].Name
	}
	slices.SortFunc(names, func(a, b string) int { return strings.Compare(strings.ToLower(a), strings.ToLower(b)) })
	return names
}

func foodNamed(t *trip.Trip, name string) (trip.FoodID, error) {
	for i := range t.Foods {
		if strings.EqualFold(t.Foods[i].Name, strings.TrimSpace(name)) {
			return t.Foods[i].ID, nil
		}
	}
	return 0, errors.New(lang.X("no-such-food", "The trip has no food {{.Name}}: add it on the screen Foods first.", map[string]any{"Name": name}))
}
