package window

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/units"
	"sumpter/exporter/cautions"
)

// newFile asks where a new file goes: a folder and a name that is not taken.
type newFile struct {
	folder, name *bench.DialogEntry
	why          *look.Text
	then         func(path string)
	dialog       *dialog.CustomDialog
}

func showNewFile(w *Workbench, title, folder, suggestion string, then func(path string)) {
	f := &newFile{why: look.NewText("", look.Caption, look.Brick), then: then}
	f.folder, f.name = bench.NewDialogEntry(), bench.NewDialogEntry()
	f.folder.SetText(folder)
	f.name.SetText(filepath.Base(freeName(filepath.Join(folder, suggestion))))
	f.name.OnSubmitted = func(string) { f.confirm() }
	choose := bench.NewDialogButton(lang.L("Choose…"), func() {
		picker := dialog.NewFolderOpen(func(chosen fyne.ListableURI, err error) {
			if err == nil && chosen != nil {
				f.folder.SetText(chosen.Path())
			}
		}, w.window)
		if at, err := storage.ListerForURI(storage.NewFileURI(f.folder.Text)); err == nil {
			picker.SetLocation(at)
		}
		picker.Resize(fyne.NewSize(820, 560))
		picker.Show()
	})
	form := widget.NewForm(
		widget.NewFormItem(lang.L("Folder"), container.NewBorder(nil, nil, nil, choose, f.folder)),
		widget.NewFormItem(lang.L("Name"), f.name),
	)
	f.dialog = bench.NewDialog(w.window, title, container.NewVBox(form, f.why),
		bench.NewDialogButton(lang.L("Cancel"), func() { f.dialog.Hide() }), bench.NewDialogButton(lang.L("Save"), f.confirm).First())
	f.dialog.Resize(fyne.NewSize(620, 240))
	f.dialog.Show()
	w.window.Canvas().Focus(f.name)
	f.name.TypedShortcut(&fyne.ShortcutSelectAll{}) // typing puts another name in its place
}

func (f *newFile) confirm() {
	name := strings.TrimSpace(f.name.Text)
	if name == "" || name != filepath.Base(name) {
		f.why.SetContent(lang.L("Give a name without slashes."))
		return
	}
	if filepath.Ext(name) != ending {
		name += ending
	}
	path := filepath.Join(strings.TrimSpace(f.folder.Text), name)
	if _, err := os.Stat(path); err == nil {
		f.why.SetContent(lang.L("There is a file of that name; choose another, nothing is overwritten."))
		return
	}
	f.dialog.Hide()
	f.then(path)
}

// showLines shows a list of faults, each on its own line.
func (w *Workbench) showLines(title string, lines []string) {
	list := bench.NewDialogList(func() int { return len(lines) },
		func() fyne.CanvasObject { return look.NewParagraph("", look.Body, look.Ink) },
		func(i widget.ListItemID, object fyne.CanvasObject) { object.(*look.Paragraph).SetContent(lines[i]) })
	for i, line := range lines {
		list.SetItemHeight(i, float32(len([]rune(line))/95+1)*20+16)
	}
	var d *dialog.CustomDialog
	d = bench.NewDialog(w.window, title, list, bench.NewDialogButton(lang.L("Close"), func() { d.Hide() }))
	d.Resize(fyne.NewSize(760, 420))
	d.Show()
}

// showCautions shows what the program does not decide.
func (w *Workbench) showCautions() {
	reader := written.Of(units.Metric)
	lines := []string{cautions.Preface().In(reader)}
	for _, topic := range cautions.Topics() {
		for _, rule := range topic.Rules {
			lines = append(lines, prose.Say("%s · %s: %s (%s)", topic.Title, rule.Short, rule.Text, rule.Source).In(reader))
		}
	}
	w.showLines(lang.L("Cautions"), lines)
}
