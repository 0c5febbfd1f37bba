// Package foods is the screen of what is bought: the library to search, the
// trip's foods as a table, and beside it what the label says of the chosen
// food, how it is sold, how it keeps and where it is eaten.
package foods

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Screen is the foods on the screen.
type Screen struct {
	bench   *bench.Bench
	units   units.System // the headings were made for
	fields  []field      // of the table
	table   *grid.Grid[trip.FoodID]
	search  *search
	side    *sidePanel
	beside  *bench.Part // the side
	left    *timeLeft
	filter  *widget.Entry
	empty   *fyne.Container
	tableOn *fyne.Container // the table, or the word that there is none
	toggle  *widget.Button
	content fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, units: b.Units()}
	s.fields = tableFields(b)
	s.side = newSidePanel(s)
	s.search = newSearch(s)
	s.left = newTimeLeft(b, s.selectFood)
	s.table = grid.New(s.columns(), grid.Options[trip.FoodID]{
		Key:       key,
		OnSelect:  s.side.show,
		OnOpen:    func(trip.FoodID) { s.side.readLabel() },
		OnDelete:  s.remove,
		OnNew:     s.addPasted,
		OnAdded:   s.saidOfPasted,
		HeadOf:    headOfLabel,
		OnPaste:   s.paste,
		Together:  b.Together,
		OnProblem: b.Say,
		Sticky:    1,
		Clipboard: b.Clipboard,
	})
	s.content = s.layOut()
	b.InSteps(s.table, s.beside)
	return s
}

func (s *Screen) layOut() fyne.CanvasObject {
	s.filter = widget.NewEntry()
	s.filter.SetPlaceHolder(lang.L("Find in the table"))
	s.filter.OnChanged = s.table.Filter
	s.toggle = widget.NewButton(lang.L("Time left"), s.toggleView)
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("What is bought, and what does its label say?"))), bench.Wide(170, s.filter), s.toggle,
		widget.NewButton(lang.L("Remove"), s.table.Delete), widget.NewButton(lang.L("Food from a label"), s.side.openForm))
	s.empty = bench.Empty(lang.L("The foods of the trip come here. Type what you want to take into the search above, such as oats, and press Return; or copy their table in a spreadsheet, with heads such as Name, Energy, Protein, Fat, Carbohydrate, Fibre and Salt for 100 g, and paste it here with Ctrl+V."))
	s.beside = bench.NewPart(s.side.content, s.showChosen)
	s.tableOn = container.NewStack(s.table, s.empty)
	return bench.Headed(bench.Beside(container.NewStack(s.tableOn, s.left.content), s.beside.Place, 0.6, 640), head, s.search.content)
}

func key(id trip.FoodID) string { return bench.IDText(int64(id)) }

// Name is the screen's name in places.
func (s *Screen) Name() string { return "foods" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Foods") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	warmLibrary()
	t := s.bench.Trip()
	rows := make([]trip.FoodID, len(t.Foods))
	for i := range t.Foods {
		rows[i] = t.Foods[i].ID
	}
	s.table.SetRows(rows)
	bench.SetShown(s.empty, len(rows) == 0)
	s.beside.Refresh()
	s.left.refresh()
}

// showChosen shows the food under the cursor at the side.
func (s *Screen) showChosen() {
	id, _ := s.table.Selected()
	s.side.show(id)
}

// Waiting counts the labels that must be read before somebody may eat, and
// what the plan finds wrong with how food keeps.
func (s *Screen) Waiting() int {
	waiting := len(labelsToRead(s.bench.Trip()))
	if p := s.bench.Document.Plan(); p != nil {
		for _, finding := range p.Findings {
			if finding.Stage == findings.Spoilage && finding.Place.Day == 0 && finding.Severity != findings.Note {
				waiting++
			}
		}
	}
	return waiting
}

// Focus gives the keyboard to the table, or to the search while the table is
// empty.
func (s *Screen) Focus() {
	if len(s.bench.Trip().Foods) == 0 {
		s.bench.Window.Canvas().Focus(s.search.entry)
		return
	}
	s.table.FocusOn(s.bench.Window.Canvas())
}

// GoTo puts the cursor on a food.
func (s *Screen) GoTo(place findings.Place) {
	s.showTable()
	if place.Food != 0 {
		s.selectFood(place.Food)
	}
	s.table.Focus()
}

// selectFood puts the cursor on a food, though the filter hides it.
func (s *Screen) selectFood(id trip.FoodID) {
	s.showTable()
	if !s.table.SelectKey(key(id)) {
		s.filter.SetText("")
		s.table.SelectKey(key(id))
	}
}

// pasteTable takes the foods a spreadsheet copied, wherever the cursor is.
func (s *Screen) pasteTable() {
	s.showTable()
	s.table.Paste(s.bench.Clipboard().Content())
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool { return s.table.Commit() && s.side.commit() }

// toggleView changes between the table and the time each food has left.
func (s *Screen) toggleView() {
	if s.left.content.Visible() {
		s.showTable()
		return
	}
	if !s.table.Commit() {
		return
	}
	s.toggle.SetText(lang.L("Table"))
	s.tableOn.Hide()
	s.left.content.Show()
	s.left.refresh()
}

func (s *Screen) showTable() {
	s.toggle.SetText(lang.L("Time left"))
	s.left.content.Hide()
	s.tableOn.Show()
}

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	return []bench.Action{
		{Name: lang.L("Search the food library"), Do: func() { s.focus(s.search.entry) }},
		{Name: lang.L("Food from a label"), Do: s.side.openForm},
		{Name: lang.L("Paste a table of foods"), Do: s.pasteTable},
		{Name: lang.L("Read the label of the food"), Do: s.side.readLabel},
		{Name: lang.L("Next label to read"), Do: s.nextLabel},
		{Name: lang.L("Packages of the food"), Do: func() { s.side.tab(tabPackages) }},
		{Name: lang.L("How the food keeps"), Do: func() { s.side.tab(tabKeeps) }},
		{Name: lang.L("Where the food is used"), Do: func() { s.side.tab(tabUsed) }},
		{Name: lang.L("Time left for each food"), Do: s.toggleView},
		{Name: lang.L("Remove the food"), Do: s.table.Delete},
		{Name: lang.L("Find in the table"), Do: func() { s.focus(s.filter) }},
	}
}

func (s *Screen) focus(on fyne.Focusable) {
	if s.bench.Window != nil {
		s.bench.Window.Canvas().Focus(on)
	}
}
