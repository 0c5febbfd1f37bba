package window

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/demo"
	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/tripfile"
	"sumpter/app/written"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

const (
	ending     = ".trip"
	mostRecent = 5
)

// newTrip asks for a file and starts an empty trip in it.
func (w *Workbench) newTrip() {
	w.askNewFile(lang.L("Start an empty trip"), lang.L("my trip"), func(path string) {
		year, month, day := time.Now().AddDate(0, 1, 0).Date()
		start, _ := units.NewDate(year, int(month), day)
		fresh := trip.New(strings.TrimSuffix(filepath.Base(path), ending), start)
		fresh.Units, fresh.Currency = usualIn(lang.SystemLocale())
		fresh.Bags = trip.UsualBags(fresh.Units)
		w.createAt(path, fresh)
	})
}

// makeDemo puts the invented trip into a file of the user's.
func (w *Workbench) makeDemo() {
	w.askNewFile(lang.L("Make the demo trip"), lang.L("demo"), func(path string) {
		example := demo.Trip()
		w.createAt(path, &example)
	})
}

// createAt writes a trip to a new file and opens it.
func (w *Workbench) createAt(path string, t *trip.Trip) {
	w.away(func() (*tripfile.File, *trip.Trip, error) {
		tripfile.Identify(t)
		file, err := tripfile.Create(path, t)
		return file, t, err
	})
}

// OpenPath opens a trip file, as if it were chosen in the dialog.
func (w *Workbench) OpenPath(path string) { w.openPath(path) }

func (w *Workbench) openPath(path string) {
	w.away(func() (*tripfile.File, *trip.Trip, error) {
		file, err := tripfile.Open(path)
		if err != nil {
			return nil, nil, err
		}
		t, err := file.Read(context.Background())
		if err != nil {
			_ = file.Close()
			return nil, nil, err
		}
		return file, t, nil
	})
}

// away opens a file off the screen and shows its trip, or why not.
func (w *Workbench) away(open func() (*tripfile.File, *trip.Trip, error)) {
	w.leave(func() {
		w.scheduler.Background(func() {
			file, t, err := open()
			w.scheduler.Screen(func() {
				if err != nil {
					w.showWelcome()
					w.sayAlways(written.Error(err))
					return
				}
				w.remember(file.Path())
				w.showTrip(document.New(t, w.kept(file), w.scheduler))
			})
		})
	}, func() {})
}

// sayAlways shows a message on whatever is on the screen.
func (w *Workbench) sayAlways(text string) {
	w.tell(text, look.Brick)
}

// leave stores everything, closes the open trip and goes on with then, or with
// kept if something keeps it open. A slow drive keeps the window from nothing
// but edits.
func (w *Workbench) leave(then, kept func()) {
	if w.document == nil {
		then()
		return
	}
	if w.leaving {
		return
	}
	if w.shown >= 0 && !w.screens[w.shown].Commit() {
		kept()
		return
	}
	w.leaving = true
	w.say(lang.L("Saving the last edit…"))
	w.document.Close(func(err error) {
		w.leaving = false
		if err != nil {
			w.saved(err)
			kept()
			return
		}
		w.document = nil
		then()
	})
}

func (w *Workbench) closeTrip() { w.leave(w.showWelcome, func() {}) }

// quit closes the window once everything is on disk. Who asks again while a
// drive does not answer is not held.
func (w *Workbench) quit() {
	if w.leaving {
		w.askToCloseAnyway(lang.L("The last edit is still being saved. If the drive does not answer, it is lost."))
		return
	}
	w.leave(w.window.Close, func() {
		w.askToCloseAnyway(lang.L("Something could not be stored. See the line at the bottom of the window."))
	})
}

// askToCloseAnyway asks before an edit that could not be stored is lost.
func (w *Workbench) askToCloseAnyway(why string) {
	var ask *dialog.CustomDialog
	ask = bench.NewDialog(w.window, lang.L("Close without the last edit?"),
		look.NewParagraph(why, look.Body, look.Ink),
		bench.NewDialogButton(lang.L("Stay"), func() { ask.Hide() }),
		bench.NewDialogButton(lang.L("Close all the same"), w.window.Close).First())
	ask.Resize(fyne.NewSize(520, 160))
	ask.Show()
}

func (w *Workbench) openTrip() {
	w.askFile([]string{ending}, w.openPath)
}

// freeName gives a trip file name that is not taken.
func freeName(stem string) string {
	for n := 1; ; n++ {
		name := stem + ending
		if n > 1 {
			name = fmt.Sprintf("%s %d%s", stem, n, ending)
		}
		if _, err := os.Stat(name); err != nil { // not there, or in a folder that cannot be read
			return name
		}
	}
}

func (w *Workbench) saveCopy() {
	w.askNewFile(lang.L("Save a copy"), lang.X("copy-name", "copy"), func(path string) {
		w.document.SaveCopy(path, func(err error) {
			if err != nil {
				w.sayAlways(written.Error(err))
				return
			}
			w.say(lang.L("A copy was saved:") + " " + path)
		})
	})
}

// askNewFile asks for a folder and a name. The toolkit's own dialog for
// saving empties a file before it is confirmed, so this one never touches it.
func (w *Workbench) askNewFile(title, suggestion string, then func(path string)) {
	folder := startFolder()
	showNewFile(w, title, folder, suggestion, then)
}

// askFile asks for a file, from the folder of the last trip on.
func (w *Workbench) askFile(endings []string, take func(path string)) {
	bench.AskFile(w.window, w.lastFolder(), endings, take)
}

func (w *Workbench) lastFolder() string {
	if recent := w.recent(); len(recent) > 0 {
		return filepath.Dir(recent[0])
	}
	return startFolder()
}

func startFolder() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return "."
	}
	return home
}

// recent lists the trip files opened before that were still there when this was
// last looked at, last first. The menu asks for it after every edit, and a
// drive that is away may take long to say so.
func (w *Workbench) recent() []string { return w.files }

// findRecent looks which of the files opened before are still there.
func (w *Workbench) findRecent() {
	w.files = slices.DeleteFunc(w.app.Preferences().StringList(prefRecent), func(path string) bool {
		_, err := os.Stat(path)
		return err != nil
	})
}

func (w *Workbench) remember(path string) {
	w.findRecent()
	list := slices.DeleteFunc(w.files, func(known string) bool { return known == path })
	list = append([]string{path}, list...)
	w.files = list[:min(len(list), mostRecent)]
	w.app.Preferences().SetStringList(prefRecent, w.files)
}

func shortPath(path string) string {
	return filepath.Join(filepath.Base(filepath.Dir(path)), filepath.Base(path))
}
