package window

import (
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"sumpter/app/importer"
)

// importTrip reads a workbook or JSON into a new trip file beside it.
func (w *Workbench) importTrip() {
	d := dialog.NewFileOpen(func(reader fyne.URIReadCloser, err error) {
		if err != nil || reader == nil {
			return
		}
		path := reader.URI().Path()
		_ = reader.Close()
		w.importPath(path)
	}, w.window)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".xlsx", ".json"}))
	w.place(d)
}

func (w *Workbench) importPath(path string) {
	t, problems, err := importer.ReadFile(path)
	if err == nil && t != nil {
		w.createAt(freeName(strings.TrimSuffix(path, filepath.Ext(path))), t)
		return
	}
	lines := make([]string, 0, len(problems)+1)
	if err != nil {
		lines = append(lines, err.Error())
	}
	for _, problem := range problems {
		lines = append(lines, problem.String())
	}
	w.showLines(lang.L("Nothing was imported"), lines)
}
