package window

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/backups"
	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/tripfile"
	"sumpter/app/written"
	"sumpter/domain/compare"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// kept puts the day's copy before the first edit of a day.
func (w *Workbench) kept(file *tripfile.File) document.Store {
	return &backups.Store{Store: file, Shelf: w.shelf, Failed: func(err error) {
		w.scheduler.Screen(func() {
			w.sayAlways(lang.X("no-backup", "Today's copy could not be made: {{.Why}} Your edits are saved all the same.", map[string]any{"Why": written.Error(err)}))
		})
	}}
}

// earlierCopies lets the leader look at the trip as it was on earlier days.
func (w *Workbench) earlierCopies() {
	copies, err := w.shelf.Copies(w.document.Path())
	if err != nil {
		w.sayAlways(written.Error(err))
		return
	}
	if len(copies) == 0 {
		w.say(lang.L("No earlier copy yet: one is kept before the first change of each day."))
		return
	}
	var shown *dialog.CustomDialog
	list := bench.NewDialogList(func() int { return len(copies) },
		func() fyne.CanvasObject { return widget.NewLabel("") },
		func(i widget.ListItemID, object fyne.CanvasObject) {
			object.(*widget.Label).SetText(lang.X("copy-of-day", "As it was before the changes of {{.Day}}", map[string]any{"Day": copyDay(copies[i])}))
		})
	list.OnSelected = func(i widget.ListItemID) {
		shown.Hide()
		w.compareWith(copies[i].Path, copyDay(copies[i]))
	}
	explain := look.NewParagraph(lang.L("Choose one to see what has changed since, and take back what you want. Nothing is overwritten."), look.Body, look.Ink)
	shown = bench.NewDialog(w.window, lang.L("Earlier copies"), container.NewBorder(explain, nil, nil, nil, list),
		bench.NewDialogButton(lang.L("Close"), func() { shown.Hide() }))
	shown.Resize(fyne.NewSize(560, 420))
	shown.Show()
	w.window.Canvas().Focus(list)
}

func copyDay(kept backups.Copy) string {
	year, month, day := kept.Day.Date()
	date, err := units.NewDate(year, int(month), day)
	if err != nil {
		return kept.Day.Format("2006-01-02")
	}
	return bench.DateWords(date)
}

// askCompare asks for the other copy of the trip.
func (w *Workbench) askCompare() {
	w.askFile([]string{ending}, func(path string) { w.compareWith(path, filepath.Base(path)) })
}

// compareWith shows in what another copy differs, for the leader to choose
// what to take from it.
func (w *Workbench) compareWith(path, name string) {
	mine := w.document.Trip()
	w.scheduler.Background(func() {
		theirs, err := readAside(path)
		var found []compare.Difference
		if err == nil {
			found, err = compare.Between(mine, theirs)
		}
		w.scheduler.Screen(func() {
			switch {
			case err != nil:
				w.sayAlways(written.Error(err))
			case len(found) == 0:
				w.say(lang.X("no-difference", "{{.Name}} holds the same as this trip.", map[string]any{"Name": name}))
			default:
				w.showDifferences(theirs, found, name)
			}
		})
	})
}

// readAside reads a trip file through a copy of it, so that one that may not
// be changed, is open elsewhere or is of an older version can be looked at,
// and stays as it is.
func readAside(path string) (t *trip.Trip, err error) {
	folder, err := os.MkdirTemp("", "sumpter")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	aside := filepath.Join(folder, "copy"+ending)
	if err := copyFile(path, aside); err != nil {
		return nil, err
	}
	file, err := tripfile.Open(aside)
	if err != nil {
		var own *tripfile.Error
		if errors.As(err, &own) {
			own.Path = path
		}
		return nil, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	return file.Read(context.Background())
}

// mostCopied is above any trip file; a larger one is no trip.
const mostCopied = 256 << 20

func copyFile(from, to string) error {
	source, err := os.Open(from)
	if err != nil {
		return err
	}
	defer source.Close()
	target, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	written, err := io.Copy(target, io.LimitReader(source, mostCopied+1))
	if err == nil && written > mostCopied {
		err = prose.Errorf("%s: too large for a trip file", from)
	}
	return errors.Join(err, target.Close())
}

// showDifferences lists what differs; what is ticked is taken in one step
// that can be undone.
func (w *Workbench) showDifferences(theirs *trip.Trip, found []compare.Difference, name string) {
	system := w.document.Trip().Units
	chosen := make([]bool, len(found))
	why := look.NewText("", look.Caption, look.Brick)
	list := bench.NewDialogList(func() int { return len(found) },
		func() fyne.CanvasObject {
			text := widget.NewLabel("")
			text.Truncation = fyne.TextTruncateEllipsis
			return container.NewBorder(nil, nil, bench.NewDialogCheck("", nil), nil, text)
		},
		func(i widget.ListItemID, object fyne.CanvasObject) {
			row := object.(*fyne.Container)
			text, tick := row.Objects[0].(*widget.Label), row.Objects[1].(*bench.DialogCheck)
			text.SetText(differenceText(found[i], system))
			tick.OnChanged = nil
			tick.SetChecked(chosen[i])
			tick.OnChanged = func(on bool) { chosen[i] = on }
		})
	list.OnSelected = func(i widget.ListItemID) {
		list.Unselect(i)
		chosen[i] = !chosen[i]
		list.RefreshItem(i)
	}
	tickAll := func(on bool) {
		for i := range chosen {
			chosen[i] = on
		}
		list.Refresh()
	}
	var shown *dialog.CustomDialog
	take := bench.NewDialogButton(lang.L("Take what is ticked"), func() {
		var wanted []compare.Difference
		for i, on := range chosen {
			if on {
				wanted = append(wanted, found[i])
			}
		}
		if len(wanted) == 0 {
			why.SetContent(lang.L("Tick what to take first."))
			return
		}
		if err := w.take(theirs, wanted, name); err != nil {
			why.SetContent(written.Error(err))
			return
		}
		shown.Hide()
	})
	shown = bench.NewDialog(w.window,
		lang.X("what-differs", "What differs: here, and {{.Name}}", map[string]any{"Name": name}),
		container.NewBorder(nil, why, nil, nil, list),
		bench.NewDialogButton(lang.L("Tick all"), func() { tickAll(true) }),
		bench.NewDialogButton(lang.L("Tick none"), func() { tickAll(false) }),
		bench.NewDialogButton(lang.L("Close"), func() { shown.Hide() }),
		take.First())
	shown.Resize(fyne.NewSize(860, 560))
	shown.Show()
	w.window.Canvas().Focus(list)
}

// take makes the chosen differences part of the open trip.
func (w *Workbench) take(theirs *trip.Trip, wanted []compare.Difference, name string) error {
	edit := written.Counted(len(wanted), prose.Say("take one difference from %s", name), prose.Say("take %d differences from %s", len(wanted), name))
	return w.document.Edit(edit, func(t *trip.Trip) error {
		merged, err := compare.Take(t, theirs, wanted)
		if err != nil {
			return err
		}
		*t = *merged
		return nil
	})
}

// savePrivate writes a copy that tells nothing of anybody's body or health.
func (w *Workbench) savePrivate() {
	w.askNewFile(lang.L("Save a copy without personal data"), lang.X("private-name", "to hand on"), func(path string) {
		bare := w.document.Trip().WithoutPersonalData()
		w.scheduler.Background(func() {
			file, err := tripfile.Create(path, bare)
			if err == nil {
				err = file.Close()
			}
			w.scheduler.Screen(func() {
				if err != nil {
					w.sayAlways(written.Error(err))
					return
				}
				w.say(lang.X("private-saved", "Saved without names, bodies, diets and allergies: {{.Path}}. Your own notes are in it: read them before you hand it on.", map[string]any{"Path": path}))
			})
		})
	})
}

// offerElsewhere is shown once when edits can no longer be stored.
func (w *Workbench) offerElsewhere(why error) {
	if w.offered {
		return
	}
	w.offered = true
	text := look.NewParagraph(written.Error(why)+"\n\n"+lang.L("Every edit of this window is still here. Save the trip elsewhere and go on, or put the fault right: the next edit tries again."), look.Body, look.Ink)
	var shown *dialog.CustomDialog
	elsewhere := bench.NewDialogButton(lang.L("Save elsewhere…"), func() {
		shown.Hide()
		w.saveElsewhere()
	})
	shown = bench.NewDialog(w.window, lang.L("The trip cannot be saved"), text,
		bench.NewDialogButton(lang.L("Later"), func() { shown.Hide() }), elsewhere.First())
	shown.Resize(fyne.NewSize(620, 260))
	shown.Show()
}

// saveElsewhere puts the open trip into a new file and goes on in it, with
// all that can be undone.
func (w *Workbench) saveElsewhere() {
	w.askNewFile(lang.L("Save elsewhere"), lang.X("rescued-name", "rescued"), func(path string) {
		moving, t := w.document, w.document.Trip()
		w.scheduler.Background(func() {
			file, err := tripfile.Create(path, t)
			w.scheduler.Screen(func() {
				switch {
				case err != nil:
					w.sayAlways(written.Error(err))
				case w.document != moving: // it was closed meanwhile
					_ = file.Close()
				default:
					w.goOnIn(file)
				}
			})
		})
	})
}

// goOnIn goes on with the open trip in another file; it is saved there once
// more, with what was changed while the file was written.
func (w *Workbench) goOnIn(file *tripfile.File) {
	w.document.MoveTo(w.kept(file))
	w.remember(file.Path())
	w.offered = false
	w.retitle()
	w.makeMenu()
	w.say(lang.L("The trip now lives here:") + " " + file.Path())
}
