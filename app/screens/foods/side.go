package foods

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// Places of the tabs at the side.
const (
	tabLabel = iota
	tabPackages
	tabKeeps
	tabUsed
)

// sidePanel is everything about the chosen food, or the form of a new one.
type sidePanel struct {
	screen   *Screen
	food     trip.FoodID // 0: none
	name     *look.Text
	energy   *look.Text
	label    *labelTab
	packages *packagesTab
	keeps    *keepsTab
	used     *usedTab
	tabs     *bench.Tabs
	details  *fyne.Container
	form     *form
	hint     *fyne.Container
	content  fyne.CanvasObject
}

func newSidePanel(screen *Screen) *sidePanel {
	s := &sidePanel{screen: screen, name: look.NewHeading("").Yielding(), energy: look.NewText("", look.Caption, look.Quiet).Yielding()}
	s.label, s.packages, s.keeps, s.used = newLabelTab(s), newPackagesTab(s), newKeepsTab(s), newUsedTab(s)
	s.tabs = bench.NewTabs(
		container.NewTabItem(lang.L("Label"), s.label.content),
		container.NewTabItem(lang.L("Packages"), s.packages.content),
		container.NewTabItem(lang.L("Keeps"), s.keeps.content),
		container.NewTabItem(lang.L("Used"), s.used.content),
	)
	s.tabs.OnSelected = func(*container.TabItem) { s.showTab() }
	s.details = container.NewBorder(bench.Inset(s.name, s.energy), nil, nil, nil, s.tabs)
	s.form = newForm(s)
	s.form.content.Hide()
	hint := look.NewParagraph(lang.L("Choose a food to see its label, packages and how it keeps."), look.Body, look.Ink)
	s.hint = container.NewStack(hint)
	s.content = container.NewStack(s.details, s.hint, s.form.content)
	return s
}

// show shows a food, unless a new one is being entered.
func (s *sidePanel) show(id trip.FoodID) {
	if id != s.food && !s.commit() {
		return
	}
	s.food = id
	food := s.current()
	if s.form.content.Visible() {
		return
	}
	bench.SetShown(s.hint, food == nil)
	bench.SetShown(s.details, food != nil)
	if food == nil {
		return
	}
	s.name.SetContent(food.Name)
	text, tone := energyWords(&food.Per100g, fromLibrary(food))
	s.energy.SetContent(text)
	s.energy.SetTone(tone)
	s.showTab()
}

// current is the chosen food, nil if there is none.
func (s *sidePanel) current() *trip.Food { return s.screen.bench.Trip().Food(s.food) }

// showTab fills only the tab that is seen.
func (s *sidePanel) showTab() {
	food := s.current()
	if food == nil {
		return
	}
	switch s.tabs.SelectedIndex() {
	case tabLabel:
		s.label.show(food)
	case tabPackages:
		s.packages.show(food)
	case tabKeeps:
		s.keeps.show(food)
	case tabUsed:
		s.used.show(food)
	}
}

// tab brings a tab up and gives it the keyboard.
func (s *sidePanel) tab(place int) {
	if !s.commit() {
		return
	}
	s.closeForm()
	s.tabs.SelectIndex(place)
	switch place {
	case tabLabel:
		s.screen.focus(s.label.allergens)
	case tabPackages:
		s.packages.table.Focus()
	case tabKeeps:
		s.keeps.table.Focus()
	case tabUsed:
		s.used.table.Focus()
	}
}

// readLabel puts the keyboard on the first allergen nobody knows.
func (s *sidePanel) readLabel() {
	s.tab(tabLabel)
	s.label.toFirstUnread()
}

// commit stores what is being typed at the side.
func (s *sidePanel) commit() bool { return s.packages.commit() && s.keeps.table.Commit() }

func (s *sidePanel) openForm() {
	if !s.screen.Commit() {
		return
	}
	s.form.open()
	s.details.Hide()
	s.hint.Hide()
	s.form.content.Show()
	s.screen.focus(s.form.name)
}

func (s *sidePanel) closeForm() {
	if !s.form.content.Visible() {
		return
	}
	s.form.content.Hide()
	s.show(s.food)
}

// energyWords says how the energy fits the nutrients.
func energyWords(n *trip.Nutrients, dataset bool) (string, fyne.ThemeColorName) {
	check := checkEnergy(n)
	values := map[string]any{"Stated": strconv.FormatFloat(float64(n.Kcal), 'f', 0, 64), "Computed": strconv.FormatFloat(check.computed, 'f', 0, 64)}
	switch {
	case !check.known:
		return lang.L("Energy cannot be checked: protein, fat or carbohydrate is not known."), look.Ochre
	case check.fits:
		return lang.X("energy-fits", "{{.Stated}} kcal in 100 g; its nutrients make {{.Computed}}: they agree.", values), look.Quiet
	case dataset:
		return lang.X("energy-dataset", "{{.Stated}} kcal in 100 g by the dataset's own factors; the general ones make {{.Computed}}.", values), look.Quiet
	default:
		return lang.X("energy-differs", "{{.Stated}} kcal in 100 g, but its nutrients make {{.Computed}}: look at the label again.", values), look.Ochre
	}
}

// nextLabel goes to the next food that keeps somebody from eating because its
// label was not read; after those, to any food with an open label.
func (s *Screen) nextLabel() {
	t := s.bench.Trip()
	open := labelsToRead(t)
	if len(open) == 0 {
		for i := range t.Foods {
			if len(unreadOf(&t.Foods[i])) > 0 {
				open = append(open, t.Foods[i].ID)
			}
		}
	}
	if len(open) == 0 {
		s.bench.Say(lang.L("Every label is read."))
		return
	}
	next := open[0]
	for i, id := range open {
		if id == s.side.food {
			next = open[(i+1)%len(open)]
		}
	}
	s.selectFood(next)
	s.side.readLabel()
}
