package printing

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/packing"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/print/labels"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/prints"
)

// Names under which the reader's wishes are kept.
const (
	prefPaper = "print.paper"
	prefBlack = "print.black"
	prefSheet = "print.sheet"
	prefOwn   = "print.own"
)

// choices is how things are printed. Those that do not matter for the shown
// paper are not shown.
type choices struct {
	bench    *bench.Bench
	changed  func()
	paper    *widget.Select
	black    *widget.Check
	sheet    *widget.Select
	own      *ownGrid
	start    *widget.Entry
	unpacked *widget.Check
	days     *widget.Entry
	members  *picker
	recipes  *picker
	stations *widget.CheckGroup
	parts    map[prints.Choice]*fyne.Container
	content  *fyne.Container
	filling  bool // the fields are being filled by us
}

// described is what tells options apart, without what cannot be compared.
func described(o prints.Options) prints.Options {
	o.Reader.Words = nil
	return o
}

func newChoices(b *bench.Bench, changed func()) *choices {
	c := &choices{bench: b, parts: map[prints.Choice]*fyne.Container{}}
	c.changed = func() {
		if !c.filling {
			changed()
		}
	}
	c.filling = true
	defer func() { c.filling = false }()
	wishes := fyne.CurrentApp().Preferences()
	c.paper = widget.NewSelect([]string{press.A4.Name, press.Letter.Name}, func(name string) {
		if !c.filling { // else it is only what the units suggest
			wishes.SetString(prefPaper, name)
		}
		c.offerSheets()
		c.changed()
	})
	c.black = widget.NewCheck(lang.L("black ink only"), func(on bool) { wishes.SetBool(prefBlack, on); c.changed() })
	c.sheet = widget.NewSelect(nil, func(string) {
		wishes.SetString(prefSheet, c.sheetKey())
		c.own.show(c.sheetKey() == ownSheet)
		c.changed()
	})
	c.own = newOwnGrid(wishes, c.changed)
	c.start = field("1", func(string) { c.changed() })
	c.unpacked = widget.NewCheck(lang.L("only bags that are not packed yet"), func(bool) { c.changed() })
	c.days = field("", func(string) { c.changed() })
	c.days.SetPlaceHolder(lang.L("all, or 1-3, 5"))
	c.members = newPicker(b, lang.L("Members"), lang.L("everybody"), c.changed)
	c.recipes = newPicker(b, lang.L("Recipes"), lang.L("all that are served"), c.changed)
	c.stations = widget.NewCheckGroup(stationNames(), func([]string) { c.changed() })
	c.stations.Selected = stationNames()
	c.layOut()
	c.black.SetChecked(wishes.Bool(prefBlack))
	c.paper.SetSelected(wishes.StringWithFallback(prefPaper, usualPaper(b.Units())))
	return c
}

// field is an entry that acts on every change.
func field(text string, changed func(string)) *widget.Entry {
	entry := widget.NewEntry()
	entry.Text = text
	entry.OnChanged = changed
	return entry
}

func usualPaper(system units.System) string {
	if system == units.US {
		return press.Letter.Name
	}
	return press.A4.Name
}

func stationNames() []string {
	var names []string
	for _, station := range packing.Stations() {
		names = append(names, written.Text(station.Name(), units.Metric))
	}
	return names
}

func (c *choices) layOut() {
	row := func(words string, object fyne.CanvasObject) fyne.CanvasObject {
		return container.New(layout.NewFormLayout(), widget.NewLabel(words), object)
	}
	c.parts[prints.ByGrid] = spread(row(lang.L("Label sheet"), c.sheet), c.own.content, row(lang.L("First free label"), c.start), c.unpacked)
	c.parts[prints.ByDay] = spread(row(lang.L("Days"), c.days))
	c.parts[prints.ByRecipe] = spread(row(lang.L("Recipes"), c.recipes.button))
	c.parts[prints.ByMember] = spread(row(lang.L("Members"), c.members.button))
	c.parts[prints.ByStation] = spread(widget.NewLabel(lang.L("Stations")), c.stations)
	c.content = spread(row(lang.L("Paper"), container.NewBorder(nil, nil, nil, c.black, c.paper)),
		c.parts[prints.ByGrid], c.parts[prints.ByDay], c.parts[prints.ByRecipe], c.parts[prints.ByMember], c.parts[prints.ByStation])
}

// showFor shows the choices that matter for a paper.
func (c *choices) showFor(kind prints.Kind) {
	for choice, part := range c.parts {
		bench.SetShown(part, kind.Takes(choice))
	}
	if c.content.Size().Width > 0 { // it is seen
		c.content.Refresh()
	}
}

// refresh takes up members and days as they are now.
func (c *choices) refresh() {
	var names []string
	for i := range c.bench.Trip().Crew {
		names = append(names, c.bench.Trip().Crew[i].Name)
	}
	c.members.offer(names)
	names = nil
	for i := range c.bench.Trip().Recipes {
		names = append(names, c.bench.Trip().Recipes[i].Name)
	}
	c.recipes.offer(names)
}

func (c *choices) chosenPaper() press.Paper {
	if c.paper.Selected == press.Letter.Name {
		return press.Letter
	}
	return press.A4
}

// ownSheet is the key of the label sheet whose sizes the reader types.
const ownSheet = "own"

// offerSheets lists the label sheets of the chosen paper.
func (c *choices) offerSheets() {
	kept := fyne.CurrentApp().Preferences().String(prefSheet)
	names, at := []string{}, 0
	for i, key := range c.sheetKeys() {
		names = append(names, c.sheetName(key))
		if key == kept {
			at = i
		}
	}
	c.sheet.SetOptions(names)
	c.sheet.SetSelectedIndex(at)
}

// sheetKeys lists the sheets of the chosen paper, plain paper first.
func (c *choices) sheetKeys() []string {
	paper := c.chosenPaper()
	keys := []string{labels.Usual(paper).Key}
	for _, sheet := range labels.Sheets() {
		if sheet.Grid.Paper == paper && sheet.Key != keys[0] {
			keys = append(keys, sheet.Key)
		}
	}
	return append(keys, ownSheet)
}

func (c *choices) sheetKey() string {
	keys := c.sheetKeys()
	if at := c.sheet.SelectedIndex(); at >= 0 && at < len(keys) {
		return keys[at]
	}
	return keys[0]
}

func (c *choices) sheetName(key string) string {
	if key == ownSheet {
		return lang.L("own sizes")
	}
	grid := gridOf(key)
	count := lang.X("label-count", "{{.Columns}} × {{.Rows}}", map[string]any{"Columns": grid.Columns, "Rows": grid.Rows})
	if grid.Cut {
		return lang.X("labels-to-cut", "{{.Count}}, plain paper to cut", map[string]any{"Count": count})
	}
	return lang.X("label-sheet", "{{.Count}}, {{.Width}} × {{.Height}}", map[string]any{"Count": count, "Width": c.own.length(grid.Width), "Height": c.own.length(grid.Height)})
}

func gridOf(key string) labels.Grid {
	for _, sheet := range labels.Sheets() {
		if sheet.Key == key {
			return sheet.Grid
		}
	}
	return labels.Grid{}
}

// options are the choices for the printer, or what is wrong with one of them.
func (c *choices) options() (options prints.Options, problem string) {
	reader := written.Of(c.bench.Units())
	options = prints.Options{
		Reader: reader, Language: lang.SystemLocale().LanguageString(), Paper: c.chosenPaper(), Black: c.black.Checked, SystemFonts: true,
		Unpacked: c.unpacked.Checked, Members: c.chosenMembers(), Recipes: c.chosenRecipes(), Stations: c.chosenStations(),
		Morning: c.bench.Morning(),
	}
	var err error
	if options.Grid, err = c.grid(); err != nil {
		return options, written.Error(err)
	}
	if options.Start, err = typed.Whole(c.start.Text, 1, options.Grid.Count()); err != nil {
		return options, lang.L("First free label") + ": " + written.Error(err)
	}
	if options.Days, err = readDays(c.days.Text, len(c.bench.Trip().Days)); err != nil {
		return options, lang.L("Days") + ": " + written.Error(err)
	}
	return options, ""
}

func (c *choices) grid() (labels.Grid, error) {
	if c.sheetKey() != ownSheet {
		return gridOf(c.sheetKey()), nil
	}
	grid, err := c.own.grid(c.chosenPaper())
	if err == nil {
		err = grid.Check()
	}
	if fault := (*labels.Fault)(nil); errors.As(err, &fault) {
		err = errors.New(written.Text(fault.Text, c.bench.Units()))
	}
	return grid, err
}

// chosenMembers lists those that are picked, none for everybody.
func (c *choices) chosenMembers() []trip.MemberID {
	crew := c.bench.Trip().Crew
	var list []trip.MemberID
	for _, at := range c.members.chosen() {
		if at < len(crew) {
			list = append(list, crew[at].ID)
		}
	}
	return list
}

// chosenRecipes lists those that are picked, none for all that are served.
func (c *choices) chosenRecipes() []trip.RecipeID {
	var list []trip.RecipeID
	for _, at := range c.recipes.chosen() {
		if all := c.bench.Trip().Recipes; at < len(all) {
			list = append(list, all[at].ID)
		}
	}
	return list
}

// chooseRecipe chooses the card of one recipe.
func (c *choices) chooseRecipe(id trip.RecipeID) {
	c.refresh()
	for at := range c.bench.Trip().Recipes {
		if c.bench.Trip().Recipes[at].ID == id {
			c.recipes.pickOnly(at)
		}
	}
}

// chosenStations lists those that are ticked, none for all.
func (c *choices) chosenStations() []packing.Station {
	var list []packing.Station
	for i, name := range stationNames() {
		for _, ticked := range c.stations.Selected {
			if ticked == name {
				list = append(list, packing.Stations()[i])
			}
		}
	}
	if len(list) == len(packing.Stations()) {
		return nil
	}
	return list
}
