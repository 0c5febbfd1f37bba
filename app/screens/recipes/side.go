package recipes

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/trip"
)

// Places of the tabs at the side.
const (
	tabIngredients = iota
	tabMaking
	tabEaters
	tabCard
)

// sidePanel is the chosen recipe: its figures, and four ways to look at it.
type sidePanel struct {
	screen      *Screen
	recipe      trip.RecipeID // 0: none
	name        *look.Text
	figures     *look.Text
	further     *look.Text
	allergens   *look.Note
	ingredients *ingredientsTab
	making      *makingTab
	eaters      *eatersTab
	card        *cardTab
	tabs        *bench.Tabs
	details     *fyne.Container
	hint        *fyne.Container
	content     fyne.CanvasObject
}

func newSidePanel(screen *Screen) *sidePanel {
	s := &sidePanel{
		screen: screen, name: look.NewHeading("").Yielding(), figures: look.NewText("", look.Body, look.Ink).Yielding(),
		further: look.NewText("", look.Caption, look.Quiet).Yielding(), allergens: look.NewNote(),
	}
	s.ingredients, s.making, s.eaters, s.card = newIngredientsTab(s), newMakingTab(s), newEatersTab(s), newCardTab(s)
	s.tabs = bench.NewTabs(
		container.NewTabItem(lang.L("Ingredients"), s.ingredients.content),
		container.NewTabItem(lang.L("Making"), s.making.content),
		container.NewTabItem(lang.L("Who eats it"), s.eaters.content),
		container.NewTabItem(lang.L("Card"), s.card.content),
	)
	s.tabs.OnSelected = func(*container.TabItem) { s.showTab() }
	s.details = container.NewBorder(container.NewVBox(bench.Inset(s.name, s.figures, s.further), s.allergens), nil, nil, nil, s.tabs)
	hint := look.NewParagraph(lang.L("Choose a recipe to see what is in it, how it is made and who can eat it."), look.Body, look.Ink)
	s.hint = container.NewStack(hint)
	s.content = container.NewStack(s.details, s.hint)
	return s
}

// show shows a recipe.
func (s *sidePanel) show(id trip.RecipeID) {
	if id != s.recipe && !s.commit() {
		return
	}
	if id != s.recipe {
		s.recipe = id
		s.ingredients.table.MoveCursor(0, 0)
	}
	recipe := s.current()
	bench.SetShown(s.hint, recipe == nil)
	bench.SetShown(s.details, recipe != nil)
	if recipe == nil {
		return
	}
	s.name.SetContent(recipe.Name)
	s.showFigures(recipe)
	s.showTab()
}

// showFigures writes what one standard eater gets.
func (s *sidePanel) showFigures(recipe *trip.Recipe) {
	f, u := s.facts(recipe), s.screen.bench.Units()
	s.figures.SetContent(lang.X("recipe-figures", "{{.Kcal}} kcal · {{.Protein}} g protein · {{.Mass}} · {{.Density}} {{.Unit}}", map[string]any{
		"Kcal": number(float64(f.kcal), 0), "Protein": f.protein.atLeast(1), "Mass": written.Quantity(f.mass, u),
		"Density": densityText(f.density(), u), "Unit": densityUnit(u)}))
	s.further.SetContent(lang.X("recipe-further", "for one standard eater: fat {{.Fat}} g, carbohydrate {{.Carbs}} g, fibre {{.Fibre}} g, sodium {{.Sodium}} mg", map[string]any{
		"Fat": f.fat.atLeast(0), "Carbs": f.carbs.atLeast(0), "Fibre": f.fibre.atLeast(0), "Sodium": f.sodium.atLeast(0)}))
	s.allergens.Set(f.allergensInFull(u), f.allergenTone(), f.allergenTone() == look.Plum)
}

// current is the chosen recipe, nil if there is none.
func (s *sidePanel) current() *trip.Recipe { return s.screen.bench.Trip().Recipe(s.recipe) }

func (s *sidePanel) facts(recipe *trip.Recipe) *facts {
	s.screen.kitchen = s.screen.kitchen.of(s.screen.bench.Trip())
	return s.screen.kitchen.facts(recipe)
}

func (s *sidePanel) tasting(recipe *trip.Recipe) *tasting {
	s.screen.kitchen = s.screen.kitchen.of(s.screen.bench.Trip())
	return s.screen.kitchen.taste(recipe)
}

// showTab fills only the tab that is seen.
func (s *sidePanel) showTab() {
	recipe := s.current()
	if recipe == nil {
		return
	}
	switch s.tabs.SelectedIndex() {
	case tabIngredients:
		s.ingredients.show(recipe)
	case tabMaking:
		s.making.show(recipe)
	case tabEaters:
		s.eaters.show(recipe)
	case tabCard:
		s.card.show(recipe)
	}
}

// tab brings a tab up and gives it the keyboard.
func (s *sidePanel) tab(place int) {
	if !s.commit() {
		return
	}
	s.tabs.SelectIndex(place)
	switch place {
	case tabIngredients:
		s.ingredients.table.Focus()
	case tabMaking:
		s.making.table.Focus()
	case tabEaters:
		s.eaters.table.Focus()
	case tabCard:
		s.screen.focus(s.card.eaters)
	}
}

// commit stores what is being typed at the side.
func (s *sidePanel) commit() bool { return s.ingredients.commit() && s.making.commit() }
