package window

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
)

// finder is the list of all actions with a search, for hands that stay on the
// keyboard.
type finder struct {
	all, shown []*bench.Action
	marked     int
	list       *bench.DialogList
	none       *look.Text // in place of an empty list
	search     *searchEntry
	popup      *widget.PopUp
}

// searchEntry is an entry that leaves up, down and escape to the finder.
type searchEntry struct {
	widget.Entry
	key func(fyne.KeyName) bool
}

// TypedKey asks the finder first.
func (e *searchEntry) TypedKey(event *fyne.KeyEvent) {
	if !e.key(event.Name) {
		e.Entry.TypedKey(event)
	}
}

func (w *Workbench) findAction() {
	if w.finder != nil && w.finder.popup.Visible() {
		w.window.Canvas().Focus(w.finder.search)
		return
	}
	if w.window.Canvas().Overlays().Top() != nil {
		return // no action may reach the screen under a dialog
	}
	f := &finder{none: look.NewText(lang.L("No action here has these words in its name."), look.Body, look.Quiet).Yielding()}
	w.finder = f
	for _, group := range w.groups() {
		for _, action := range group.actions {
			if action != nil {
				f.all = append(f.all, action)
			}
		}
	}
	f.shown = f.all
	f.list = bench.NewDialogList(func() int { return len(f.shown) },
		func() fyne.CanvasObject {
			return container.New(layout.NewCustomPaddedLayout(2, 2, look.Space, look.SpaceLarge),
				container.NewBorder(nil, nil, nil, look.NewText("", look.Caption, look.Quiet), look.NewText("", look.Body, look.Ink)))
		}, f.fill)
	f.list.OnSelected = func(i widget.ListItemID) { f.run(i) }
	f.search = &searchEntry{key: f.key}
	f.search.ExtendBaseWidget(f.search)
	f.search.SetPlaceHolder(lang.L("What do you want to do?"))
	f.search.OnChanged = f.filter
	f.search.OnSubmitted = func(string) { f.run(f.marked) }
	f.popup = widget.NewModalPopUp(container.NewBorder(f.search, nil, nil, nil, container.NewStack(f.list, container.NewVBox(bench.Inset(f.none)))), w.window.Canvas())
	f.none.Hide()
	f.popup.Resize(fyne.NewSize(460, 420))
	f.popup.Show()
	w.window.Canvas().Focus(f.search)
}

func (f *finder) fill(i widget.ListItemID, object fyne.CanvasObject) {
	row := object.(*fyne.Container).Objects[0].(*fyne.Container)
	name, key := row.Objects[0].(*look.Text), row.Objects[1].(*look.Text)
	tone := look.Ink
	if i == f.marked {
		tone = look.Spruce
	}
	name.Bold = i == f.marked
	name.SetTone(tone)
	name.SetContent(f.shown[i].Name)
	name.Refresh()
	key.SetContent(keyWords(f.shown[i].Shortcut))
}

// filter keeps actions whose name holds every word typed.
func (f *finder) filter(text string) {
	f.shown, f.marked = nil, 0
	words := strings.Fields(strings.ToLower(text))
	for _, action := range f.all {
		name, fits := strings.ToLower(action.Name), true
		for _, word := range words {
			fits = fits && strings.Contains(name, word)
		}
		if fits {
			f.shown = append(f.shown, action)
		}
	}
	bench.SetShown(f.none, len(f.shown) == 0)
	f.list.Refresh()
}

func (f *finder) key(name fyne.KeyName) bool {
	switch name {
	case fyne.KeyEscape:
		f.popup.Hide()
	case fyne.KeyDown:
		f.mark(f.marked + 1)
	case fyne.KeyUp:
		f.mark(f.marked - 1)
	default:
		return false
	}
	return true
}

func (f *finder) mark(i int) {
	f.marked = max(0, min(i, len(f.shown)-1))
	f.list.ScrollTo(f.marked)
	f.list.Refresh()
}

func (f *finder) run(i int) {
	if i < 0 || i >= len(f.shown) {
		return
	}
	f.popup.Hide()
	f.shown[i].Do()
}

// keyWords writes a shortcut as it stands on the keyboard.
func keyWords(shortcut fyne.Shortcut) string {
	switch s := shortcut.(type) {
	case *desktop.CustomShortcut:
		words := ""
		if s.Modifier&fyne.KeyModifierControl != 0 || s.Modifier&fyne.KeyModifierShortcutDefault != 0 {
			words += lang.L("Ctrl") + "+"
		}
		if s.Modifier&fyne.KeyModifierShift != 0 {
			words += lang.L("Shift") + "+"
		}
		return words + string(s.KeyName)
	case *fyne.ShortcutUndo:
		return lang.L("Ctrl") + "+Z"
	case *fyne.ShortcutRedo:
		return lang.L("Ctrl") + "+Y"
	default:
		return ""
	}
}
