package window

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// menuGroup is one menu of the bar and its actions; nil parts them by a line.
type menuGroup struct {
	name    string
	actions []*bench.Action
}

func control(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
}

func controlShift(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
}

// groups lists every action there is now; the menu bar and the list of all
// actions are both made from it.
func (w *Workbench) groups() []menuGroup {
	groups := []menuGroup{w.fileGroup()}
	if w.document != nil {
		groups = append(groups, w.editGroup())
		if w.shown >= 0 {
			if own := w.screens[w.shown].Actions(); len(own) > 0 {
				groups = append(groups, menuGroup{w.screens[w.shown].Title(), pointers(own)})
			}
		}
		groups = append(groups, w.goGroup())
	}
	return append(groups, w.viewGroup(), w.helpGroup())
}

func pointers(list []bench.Action) []*bench.Action {
	var actions []*bench.Action
	for i := range list {
		actions = append(actions, &list[i])
	}
	return actions
}

func (w *Workbench) fileGroup() menuGroup {
	actions := []*bench.Action{
		{Name: lang.L("New trip…"), Shortcut: control(fyne.KeyN), Do: w.newTrip},
		{Name: lang.L("Open trip…"), Shortcut: control(fyne.KeyO), Do: w.openTrip},
		{Name: lang.L("Import a workbook…"), Shortcut: control(fyne.KeyI), Do: w.importTrip},
		{Name: lang.L("Make the demo trip…"), Do: w.makeDemo},
	}
	for _, path := range w.recent() {
		actions = append(actions, &bench.Action{Name: lang.X("open-recent", "Open {{.Path}}", map[string]any{"Path": shortPath(path)}), Do: func() { w.openPath(path) }})
	}
	if w.document != nil {
		actions = append(actions, nil,
			&bench.Action{Name: lang.L("Save a copy…"), Shortcut: controlShift(fyne.KeyS), Do: w.saveCopy},
			&bench.Action{Name: lang.L("Save a copy without personal data…"), Do: w.savePrivate},
			&bench.Action{Name: lang.L("Add members, foods, gear or recipes from a table…"), Do: w.addTable},
			&bench.Action{Name: lang.L("Add the table that was copied from a spreadsheet"), Do: w.addPasted},
			&bench.Action{Name: lang.L("Earlier copies…"), Do: w.earlierCopies},
			&bench.Action{Name: lang.L("Compare with another copy…"), Do: w.askCompare},
			&bench.Action{Name: lang.L("Print and save…"), Do: func() { w.goTo(document.Place{Screen: "print"}) }},
			&bench.Action{Name: lang.L("Close trip"), Shortcut: control(fyne.KeyW), Do: w.closeTrip},
		)
	}
	actions = append(actions, nil, &bench.Action{Name: lang.L("Quit"), Shortcut: control(fyne.KeyQ), Do: w.quit, Above: true})
	return menuGroup{lang.L("File"), actions}
}

func (w *Workbench) editGroup() menuGroup {
	undo, redo := lang.L("Undo"), lang.L("Redo")
	if name := w.document.UndoName(); name != "" {
		undo = fmt.Sprintf("%s: %s", undo, name)
	}
	if name := w.document.RedoName(); name != "" {
		redo = fmt.Sprintf("%s: %s", redo, name)
	}
	return menuGroup{lang.L("Edit"), []*bench.Action{
		{Name: undo, Shortcut: &fyne.ShortcutUndo{}, Above: true, Do: func() { w.takeBack(&fyne.ShortcutUndo{}, w.document.Undo) }},
		{Name: redo, Shortcut: &fyne.ShortcutRedo{}, Above: true, Do: func() { w.takeBack(&fyne.ShortcutRedo{}, w.document.Redo) }},
		nil,
		{Name: lang.L("Find an action…"), Shortcut: control(fyne.KeyK), Do: w.findAction, Above: true},
		{Name: lang.L("Sort by the column of the cursor"), Shortcut: controlShift(fyne.KeyO), Do: w.sortTable},
	}}
}

// takeBack leaves undo to a text that is being typed, and else undoes edits
// of the trip.
func (w *Workbench) takeBack(shortcut fyne.Shortcut, undo func() error) {
	if typing, ok := w.window.Canvas().Focused().(fyne.Shortcutable); ok {
		if _, isText := w.window.Canvas().Focused().(interface{ SelectedText() string }); isText {
			typing.TypedShortcut(shortcut)
			return
		}
	}
	if w.window.Canvas().Overlays().Top() != nil {
		return // nobody sees what would be taken back
	}
	if err := undo(); err != nil {
		w.say(lang.L("There is nothing to take back."))
		return
	}
	w.say("") // what was said was about the edit
}

// sortTable sorts the table that has the keyboard.
func (w *Workbench) sortTable() {
	if table, ok := w.window.Canvas().Focused().(interface{ SortByCursor() }); ok {
		table.SortByCursor()
		return
	}
	w.say(lang.L("Put the cursor into the column of a table first."))
}

func (w *Workbench) goGroup() menuGroup {
	keys := []fyne.KeyName{fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6, fyne.Key7, fyne.Key8, fyne.Key9, fyne.Key0, fyne.KeyE, fyne.KeyComma}
	var actions []*bench.Action
	for i, screen := range w.screens {
		action := &bench.Action{Name: screen.Title(), Do: func() { w.showScreen(i) }}
		if i < len(keys) {
			action.Shortcut = control(keys[i])
		}
		actions = append(actions, action)
	}
	actions = append(actions, nil,
		&bench.Action{Name: lang.L("Findings beside the screen"), Shortcut: control(fyne.KeyG), Do: w.toggleFindings},
		&bench.Action{Name: lang.L("Stop working out"), Do: w.document.CancelPlanning},
	)
	return menuGroup{lang.L("Go to"), actions}
}

func (w *Workbench) viewGroup() menuGroup {
	actions := []*bench.Action{
		{Name: lang.L("Light"), Do: func() { w.setVariant(look.Light) }},
		{Name: lang.L("Dark"), Do: func() { w.setVariant(look.Dark) }},
		{Name: lang.L("Light or dark as the system"), Do: func() { w.setVariant(look.AsSystem) }},
		nil,
		{Name: lang.L("Larger text"), Shortcut: control(largerKey()), Do: func() { w.changeScale(scaleStep) }},
		{Name: lang.L("Smaller text"), Shortcut: control(fyne.KeyMinus), Do: func() { w.changeScale(-scaleStep) }},
	}
	if w.document != nil {
		actions = append(actions, nil,
			&bench.Action{Name: lang.L("Show kilograms and kilometres"), Do: func() { w.setUnits(units.Metric) }},
			&bench.Action{Name: lang.L("Show pounds and miles"), Do: func() { w.setUnits(units.US) }},
			nil,
			&bench.Action{Name: lang.L("More room at the side"), Do: func() { w.moveDivider(true, -dividerStep) }},
			&bench.Action{Name: lang.L("Less room at the side"), Do: func() { w.moveDivider(true, dividerStep) }},
			&bench.Action{Name: lang.L("More room below"), Do: func() { w.moveDivider(false, -dividerStep) }},
			&bench.Action{Name: lang.L("Less room below"), Do: func() { w.moveDivider(false, dividerStep) }},
		)
	}
	return menuGroup{lang.L("View"), actions}
}

// largerKey is the key that bears a plus, or the one it shares with the equals
// sign, where a plus needs Shift: the toolkit tells keys by their plain sign.
func largerKey() fyne.KeyName { return fyne.KeyName(lang.X("key-larger", "=")) }

func (w *Workbench) setUnits(system units.System) {
	if err := w.document.Edit(lang.L("change the units"), func(t *trip.Trip) error { t.Units = system; return nil }); err != nil {
		w.say(written.Error(err))
	}
}

func (w *Workbench) helpGroup() menuGroup {
	return menuGroup{lang.L("Help"), []*bench.Action{
		{Name: lang.L("Cautions"), Do: w.showCautions},
	}}
}

// makeMenu builds the menu bar anew: undo names and the screen's own actions
// change with every edit and screen.
func (w *Workbench) makeMenu() {
	main := fyne.NewMainMenu()
	for g, group := range w.groups() {
		menu := fyne.NewMenu(group.name)
		for _, action := range group.actions {
			if action == nil {
				menu.Items = append(menu.Items, fyne.NewMenuItemSeparator())
				continue
			}
			item := fyne.NewMenuItem(action.Name, w.unlessUnder(action))
			item.Shortcut = action.Shortcut
			item.IsQuit = g == 0 && action.Name == lang.L("Quit")
			menu.Items = append(menu.Items, item)
		}
		main.Items = append(main.Items, menu)
	}
	w.window.SetMainMenu(main)
}

// unlessUnder is what an action of the bar does: nothing while a dialog is open,
// since the toolkit gives the keys of the bar to the screen under it. What has
// to do with the dialog itself is left.
func (w *Workbench) unlessUnder(action *bench.Action) func() {
	return func() {
		if action.Above || w.window.Canvas().Overlays().Top() == nil {
			action.Do()
		}
	}
}
