// Package recipes is the screen of the meals that can be cooked: a list with
// what each gives and whom it suits, and beside it the chosen recipe to edit,
// to try on the crew and to scale.
package recipes

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/exporter/print/prints"
)

// Screen is the recipes on the screen.
type Screen struct {
	bench   *bench.Bench
	fields  []field // of the list
	kitchen *kitchen
	table   *grid.Grid[trip.RecipeID]
	side    *sidePanel
	beside  *bench.Part // the side
	filter  *widget.Entry
	empty   *fyne.Container
	content fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, kitchen: newKitchen(b.Trip())}
	s.fields = s.listFields()
	s.side = newSidePanel(s)
	s.table = grid.New(s.columns(), grid.Options[trip.RecipeID]{
		Key:      key,
		OnSelect: s.side.show,
		OnOpen:   func(trip.RecipeID) { s.side.tab(tabIngredients) },
		OnAdd:    s.add,
		OnDelete: s.remove,
		OnPaste:  s.paste,
		OnTable:  s.takeTable,
		Together: b.Together, OnProblem: b.Say,
		Sticky:    1,
		Clipboard: b.Clipboard,
	})
	s.filter = widget.NewEntry()
	s.filter.SetPlaceHolder(lang.L("Find in the table"))
	s.filter.OnChanged = s.table.Filter
	add := widget.NewButton(lang.L("Add a recipe"), s.table.Add)
	add.Importance = widget.HighImportance
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("What can be cooked, and for whom?"))), bench.Wide(170, s.filter), widget.NewButton(lang.L("From a trip…"), s.takeFromTrip), widget.NewButton(lang.L("Import…"), s.importTable),
		widget.NewButton(lang.L("Duplicate"), s.duplicate), widget.NewButton(lang.L("Remove"), s.table.Delete), add)
	s.empty = bench.Empty(lang.L("The recipes of the trip come here, each for one standard eater. Add foods first, then a recipe; or take recipes with their foods from another trip or the demo; or import a sheet with a row for each ingredient under the headings Name, Meals, Ingredient, Amount, Water, Minutes, Method, with amounts such as 80 g or 3 oz and foods that are in the trip."))
	s.beside = bench.NewPart(s.side.content, s.showChosen)
	s.content = bench.Headed(bench.Beside(container.NewStack(s.table, s.empty), s.beside.Place, 0.52, 760), head)
	b.InSteps(s.table, s.beside)
	return s
}

func key(id trip.RecipeID) string { return bench.IDText(int64(id)) }

// keyed is the recipe of a key.
func keyed(text string) trip.RecipeID { return trip.RecipeID(bench.IDOf(text)) }

// Name is the screen's name in places.
func (s *Screen) Name() string { return "recipes" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Recipes") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the trip as it is now.
func (s *Screen) Refresh() {
	t := s.bench.Trip()
	s.kitchen = s.kitchen.of(t)
	rows := make([]trip.RecipeID, len(t.Recipes))
	for i := range t.Recipes {
		rows[i] = t.Recipes[i].ID
	}
	s.table.SetRows(rows)
	bench.SetShown(s.empty, len(rows) == 0)
	s.beside.Refresh()
}

// showChosen shows the recipe under the cursor at the side.
func (s *Screen) showChosen() {
	id, _ := s.table.Selected()
	s.side.show(id)
}

// Waiting counts the recipes that cannot be served to everybody.
func (s *Screen) Waiting() int {
	s.kitchen = s.kitchen.of(s.bench.Trip())
	return s.kitchen.waiting()
}

// Focus gives the keyboard to the table.
func (s *Screen) Focus() { s.table.FocusOn(s.bench.Window.Canvas()) }

// GoTo puts the cursor on a recipe, though the filter hides it.
func (s *Screen) GoTo(place findings.Place) {
	if place.Recipe != 0 && !s.table.SelectKey(key(place.Recipe)) {
		s.filter.SetText("")
		s.table.SelectKey(key(place.Recipe))
	}
	s.table.Focus()
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool { return s.table.Commit() && s.side.commit() }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	return []bench.Action{
		{Name: lang.L("Add a recipe"), Do: s.table.Add},
		{Name: lang.L("Import recipes from a sheet…"), Do: s.importTable},
		{Name: lang.L("Take recipes from another trip…"), Do: s.takeFromTrip},
		{Name: lang.L("Take recipes from the demo trip…"), Do: s.takeFromDemo},
		{Name: lang.L("Duplicate the recipe"), Do: s.duplicate},
		{Name: lang.L("Remove the recipe"), Do: s.table.Delete},
		{Name: lang.L("Ingredients of the recipe"), Do: func() { s.side.tab(tabIngredients) }},
		{Name: lang.L("How the recipe is made"), Do: func() { s.side.tab(tabMaking) }},
		{Name: lang.L("Who can eat the recipe"), Do: func() { s.side.tab(tabEaters) }},
		{Name: lang.L("Recipe card for a number of eaters"), Do: func() { s.side.tab(tabCard) }},
		{Name: lang.L("Print the recipe card"), Do: s.printCard},
		{Name: lang.L("Find in the table"), Do: func() { s.focus(s.filter) }},
	}
}

// importTable adds the recipes of a sheet, after what is being typed is stored.
func (s *Screen) importTable() {
	if s.Commit() {
		s.bench.AddTable()
	}
}

// takeFromTrip takes recipes of another trip file.
func (s *Screen) takeFromTrip() {
	if s.Commit() {
		s.bench.TakeRecipes()
	}
}

// takeFromDemo takes recipes of the demo.
func (s *Screen) takeFromDemo() {
	if s.Commit() {
		s.bench.TakeDemoRecipes()
	}
}

// takeTable adds the recipes of a copied table with a row for each ingredient,
// as from a file: its rows are no rows of the list.
func (s *Screen) takeTable(heads []string) bool {
	if !slices.ContainsFunc(heads, func(head string) bool { return strings.EqualFold(strings.TrimSpace(head), "Ingredient") }) {
		return false
	}
	if s.Commit() {
		s.bench.AddCopied()
	}
	return true
}

// printCard shows the chosen recipe as it is printed.
func (s *Screen) printCard() {
	if id, ok := s.table.Selected(); ok && s.Commit() {
		s.bench.Document.GoTo(document.Place{Screen: "print", Paper: string(prints.Booklet), Place: findings.Place{Recipe: id}})
	}
}

func (s *Screen) focus(on fyne.Focusable) {
	if s.bench.Window != nil {
		s.bench.Window.Canvas().Focus(on)
	}
}
