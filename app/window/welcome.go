package window

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// showWelcome offers the demo trip, an empty trip, an import, and what was
// open before.
func (w *Workbench) showWelcome() {
	w.document, w.bench, w.screens, w.shown = nil, nil, nil, -1
	title := look.NewText("Sumpter", look.Night, look.Ink)
	line := look.NewText(lang.L("Feed a group for days on foot: what each needs, what to pack, who carries it."), look.Body, look.Quiet)
	demo := widget.NewButton(lang.L("Look at the demo trip"), w.makeDemo)
	demo.Importance = widget.HighImportance
	column := container.NewVBox(title, line, widget.NewSeparator(),
		demo,
		widget.NewButton(lang.L("Start an empty trip"), w.newTrip),
		widget.NewButton(lang.L("Import a workbook"), w.importTrip),
		widget.NewButton(lang.L("Open a trip file"), w.openTrip),
	)
	if recent := w.recent(); len(recent) > 0 {
		column.Add(widget.NewSeparator())
		column.Add(look.NewHeading(lang.L("Open before")))
		for _, path := range recent {
			column.Add(widget.NewButton(shortPath(path), func() { w.openPath(path) }))
		}
	}
	w.message, w.whole = newMessage(), nil
	w.window.SetTitle("Sumpter")
	w.window.SetContent(container.NewBorder(nil, container.NewPadded(w.message.note), nil, nil, container.New(layout.NewCenterLayout(), column)))
	w.makeMenu()
}
