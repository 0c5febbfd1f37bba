package window

import (
	"image/color"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// markSide is how big the program's mark stands on the welcome.
const markSide float32 = 72

// showWelcome offers the demo trip, an empty trip, an import, and what was
// open before.
func (w *Workbench) showWelcome() {
	w.findRecent()
	w.document, w.bench, w.screens, w.shown = nil, nil, nil, -1
	mark := canvas.NewImageFromResource(look.Icon())
	mark.FillMode = canvas.ImageFillContain
	mark.SetMinSize(fyne.NewSquareSize(markSide))
	title := look.NewText("Sumpter", look.Night, look.Ink)
	title.Bold = true
	line := look.NewText(lang.L("Feed a group for days on foot: what each needs, what to pack, who carries it."), look.Lead, look.Quiet)
	head := container.NewHBox(mark, space(look.SpaceWide), container.NewVBox(layout.NewSpacer(), title, line, layout.NewSpacer()))
	demo := widget.NewButton(lang.L("Look at the demo trip"), w.makeDemo)
	demo.Importance = widget.HighImportance
	choices := container.New(layout.NewFormLayout(),
		demo, about(lang.L("An invented club walk, planned through to packing night.")),
		widget.NewButton(lang.L("Start an empty trip"), w.newTrip), about(lang.L("Enter the crew, the days and the food yourself.")),
		widget.NewButton(lang.L("Import a workbook"), w.importTrip), about(lang.L("A trip filled in with a spreadsheet, or from another program.")),
		widget.NewButton(lang.L("Open a trip file"), w.openTrip), about(lang.L("One you worked on before, or were sent.")),
	)
	if recent := w.recent(); len(recent) > 0 {
		choices.Add(container.NewVBox(space(look.SpaceLarge), look.NewHeading(lang.L("Open before"))))
		choices.Add(layout.NewSpacer())
		for _, path := range recent {
			choices.Add(widget.NewButton(filepath.Base(path), func() { w.openPath(path) }))
			choices.Add(about(filepath.Dir(path)))
		}
	}
	column := container.NewVBox(head, space(look.SpaceBroad), choices)
	w.message, w.whole = newMessage(), nil
	w.window.SetTitle("Sumpter")
	w.window.SetContent(container.NewBorder(nil, container.NewPadded(w.message.note), nil, nil, container.New(layout.NewCenterLayout(), column)))
	w.makeMenu()
}

// about says beside a button what it leads to.
func about(text string) fyne.CanvasObject {
	words := look.NewText(text, look.Body, look.Quiet).Yielding()
	return container.New(layout.NewCustomPaddedLayout(0, 0, look.SpaceWide, 0), container.NewVBox(layout.NewSpacer(), words, layout.NewSpacer()))
}

// space parts what stands below each other, or beside.
func space(side float32) fyne.CanvasObject {
	gap := canvas.NewRectangle(color.Transparent)
	gap.SetMinSize(fyne.NewSquareSize(side))
	return gap
}
