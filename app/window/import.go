package window

import (
	"errors"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/importer"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/exporter/tripbook"
)

// addTable adds the members, foods, gear or recipes of a table to the open trip.
func (w *Workbench) addTable() {
	w.askFile([]string{".csv", ".tsv", ".txt", ".xlsx"}, w.addTablePath)
}

// addTablePath reads off the screen; what comes is one edit that can be undone.
func (w *Workbench) addTablePath(path string) {
	w.addFrom(filepath.Base(path), func(before *trip.Trip) (tripbook.Added, []importer.Problem, error) {
		return importer.AddFile(before, path)
	})
}

// addPasted adds the table that a spreadsheet copied.
func (w *Workbench) addPasted() {
	text := fyne.CurrentApp().Clipboard().Content()
	w.addFrom(lang.L("the clipboard"), func(before *trip.Trip) (tripbook.Added, []importer.Problem, error) {
		return importer.AddText(before, text)
	})
}

func (w *Workbench) addFrom(name string, read func(*trip.Trip) (tripbook.Added, []importer.Problem, error)) {
	before := w.document.Trip()
	w.scheduler.Background(func() {
		added, problems, err := read(before)
		w.scheduler.Screen(func() {
			switch {
			case err != nil:
				w.showLines(lang.L("Nothing was added"), []string{written.Error(err)})
			case added.Trip == nil:
				w.showLines(lang.L("Nothing was added"), problemLines(problems))
			default:
				w.takeTable(before, added, problems, name)
			}
		})
	})
}

func (w *Workbench) takeTable(before *trip.Trip, added tripbook.Added, problems []importer.Problem, name string) {
	edit := written.Counted(added.Count, prose.Say("add a line of %s", name), prose.Say("add %d lines of %s", added.Count, name))
	err := w.document.Edit(edit, func(t *trip.Trip) error {
		if !trip.Equal(t, before) {
			return errors.New(lang.L("The trip was changed meanwhile: add the file once more."))
		}
		*t = *added.Trip
		return nil
	})
	if err != nil {
		w.sayAlways(written.Error(err))
		return
	}
	said := written.Counted(added.Count, prose.Say("Added a line of %s.", name), prose.Say("Added %d lines of %s.", added.Count, name))
	if len(added.Trip.Foods) > len(before.Foods) {
		said += " " + lang.L("Foods of a table have no allergens yet: read each label.")
	}
	if len(added.Assumed) > 0 {
		said += " " + lang.X("table-assumed", "Not in the table, so taken as usual: {{.Columns}}.", map[string]any{"Columns": strings.Join(added.Assumed, ", ")})
	}
	for _, problem := range problems {
		said += " " + problem.String() + "." // notes: whatever is more leaves the trip as it is
	}
	w.say(said)
}

// importTrip reads a workbook or JSON into a new trip file beside it.
func (w *Workbench) importTrip() {
	w.askFile([]string{".xlsx", ".json"}, w.importPath)
}

// importPath reads off the screen.
func (w *Workbench) importPath(path string) {
	w.scheduler.Background(func() {
		t, problems, err := importer.ReadFile(path)
		w.scheduler.Screen(func() {
			if err == nil && t != nil {
				w.createAt(freeName(strings.TrimSuffix(path, filepath.Ext(path))), t)
				return
			}
			var lines []string
			if err != nil {
				lines = append(lines, written.Error(err))
			}
			w.showLines(lang.L("Nothing was imported"), append(lines, problemLines(problems)...))
		})
	})
}

func problemLines(problems []importer.Problem) []string {
	lines := make([]string, len(problems))
	for i, problem := range problems {
		lines[i] = problem.String()
	}
	return lines
}
