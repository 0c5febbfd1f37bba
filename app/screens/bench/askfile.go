package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
)

// AskFile asks for a file with one of the endings, beginning in a folder where that
// can be read, and hands on its path.
func AskFile(window fyne.Window, folder string, endings []string, take func(path string)) {
	d := dialog.NewFileOpen(func(reader fyne.URIReadCloser, err error) {
		if err != nil || reader == nil {
			return
		}
		path := reader.URI().Path()
		_ = reader.Close()
		take(path)
	}, window)
	d.SetFilter(storage.NewExtensionFileFilter(endings))
	if lister, err := storage.ListerForURI(storage.NewFileURI(folder)); err == nil {
		d.SetLocation(lister)
	}
	d.Resize(fyne.NewSize(820, 560)) // room to find one
	d.Show()
}
