package printing

import (
	"bytes"
	"context"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/exporter/papers"
	"sumpter/exporter/print/prints"
)

// saver writes papers, and opens one for printing.
type saver struct {
	screen  *Screen
	save    *widget.Button
	print   *widget.Button
	stop    *widget.Button
	said    *look.Paragraph
	content fyne.CanvasObject
	ending  context.CancelFunc // of what is being saved; nil: nothing
}

func newSaver(s *Screen) *saver {
	v := &saver{screen: s, said: look.NewParagraph("", look.Caption, look.Ink)}
	v.said.Hide()
	v.save = widget.NewButton(lang.L("Save what is ticked…"), v.askFolder)
	v.save.Importance = widget.HighImportance
	v.print = widget.NewButton(lang.L("Open to print"), v.open)
	v.stop = widget.NewButton(lang.L("Stop"), v.cancel)
	v.stop.Hide()
	v.content = container.NewVBox(widget.NewSeparator(), v.said, container.NewBorder(nil, nil, v.print, v.stop, v.save))
	return v
}

// tell shows how saving goes, beside the buttons.
func (v *saver) tell(text string) {
	v.said.SetContent(text)
	if text == "" {
		v.said.Hide()
	} else {
		v.said.Show()
	}
}

// ready gives the options if there is a newest plan to save.
func (v *saver) ready() (prints.Options, bool) {
	s := v.screen
	options, problem := s.choices.options()
	switch {
	case v.ending != nil:
		v.tell(lang.L("Wait until what is being saved is there, or stop it."))
	case s.bench.Plan() == nil || s.bench.Document.Planning():
		v.tell(lang.L("Wait until the plan is worked out."))
	case problem != "":
		v.tell(problem)
	default:
		return options, true
	}
	return options, false
}

// askFolder asks where the papers go.
func (v *saver) askFolder() {
	if _, ok := v.ready(); !ok {
		return
	}
	d := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		if err == nil && folder != nil {
			v.saveTo(folder.Path())
		}
	}, v.screen.bench.Window)
	if at, err := storage.ListerForURI(storage.NewFileURI(filepath.Dir(v.screen.bench.Document.Path()))); err == nil {
		d.SetLocation(at)
	}
	d.SetTitleText(lang.L("Save into which folder?"))
	d.SetConfirmText(lang.L("Save here"))
	d.Resize(fyne.NewSize(820, 560))
	d.Show()
}

// saveTo writes what is ticked into a new folder below the given one, and
// never over files that are there.
func (v *saver) saveTo(folder string) {
	options, ok := v.ready()
	if !ok {
		return
	}
	s := v.screen
	p, path := s.bench.Plan(), s.bench.Document.Path()
	list := s.list.ticked(papers.List(p, stampOf(path), options))
	if len(list) == 0 {
		v.tell(lang.L("Nothing is ticked that this plan has."))
		return
	}
	stem := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	name := freeFolder(filepath.Join(folder, lang.X("papers-folder", "{{.Trip}} papers", map[string]any{"Trip": stem})))
	ctx, cancel := context.WithCancel(context.Background())
	v.begin(cancel)
	var made []papers.Made
	var err error
	done := 0
	s.bench.Document.Background(func() {
		made, err = papers.Make(ctx, list, func(paper papers.Paper) {
			done++
			v.progress(paper, done, len(list))
		})
		if err == nil {
			err = papers.WriteFolder(ctx, name, made)
		}
	}, func() {
		v.end()
		switch {
		case ctx.Err() != nil && err != nil:
			v.tell(lang.L("Stopped; nothing was written."))
		case err != nil:
			v.tell(written.Error(err))
		default:
			v.tell(strings.Join(append([]string{lang.L("Written:") + " " + name}, v.notes(made)...), "\n"))
		}
	})
}

// progress tells which paper is being made; it is called away from the screen.
func (v *saver) progress(paper papers.Paper, number, of int) {
	text := lang.X("saving-paper", "{{.Number}} of {{.Of}}: {{.Name}}", map[string]any{"Number": number, "Of": of, "Name": paper.Name})
	v.screen.bench.Document.OnScreen(func() {
		if v.ending != nil {
			v.tell(text)
		}
	})
}

// notes are what a person should know of the papers, each once.
func (v *saver) notes(made []papers.Made) []string {
	var list []string
	seen := map[string]bool{}
	for _, paper := range made {
		if note := written.Text(paper.Note, v.screen.bench.Units()); note != "" && !seen[note] {
			seen[note] = true
			list = append(list, note)
		}
	}
	return list
}

func (v *saver) begin(cancel context.CancelFunc) {
	v.ending = cancel
	v.save.Disable()
	v.stop.Show()
}

func (v *saver) end() {
	if v.ending != nil {
		v.ending()
	}
	v.ending = nil
	v.save.Enable()
	v.stop.Hide()
}

func (v *saver) cancel() {
	if v.ending != nil {
		v.ending()
	}
}

// open writes the shown paper into a folder for passing files and has the
// system's reader open it, which can print.
func (v *saver) open() {
	options, ok := v.ready()
	if !ok {
		return
	}
	s := v.screen
	p, kind := s.bench.Plan(), s.shown
	ctx, cancel := context.WithCancel(context.Background())
	v.begin(cancel)
	v.tell(lang.L("Drawing the pages…"))
	var path string
	var err error
	s.bench.Document.Background(func() {
		path, err = writePassing(ctx, func() (*prints.Print, error) { return prints.Draw(ctx, p, kind, options, nil) }, kind)
	}, func() {
		v.end()
		switch {
		case err != nil:
			v.tell(written.Error(err))
		default:
			v.tell("")
			v.view(path)
		}
	})
}

func writePassing(ctx context.Context, draw func() (*prints.Print, error), kind prints.Kind) (string, error) {
	made, err := draw()
	if err != nil {
		return "", err
	}
	if len(made.Pages) == 0 {
		return "", fmt.Errorf("%s", lang.L("This plan has nothing of it."))
	}
	var content bytes.Buffer
	if err := made.Write(ctx, &content); err != nil {
		return "", err
	}
	folder, err := os.MkdirTemp("", "sumpter-print-")
	if err != nil {
		return "", err
	}
	path := filepath.Join(folder, string(kind)+".pdf")
	return path, os.WriteFile(path, content.Bytes(), 0o600)
}

// view has the system open a file; where it cannot, the file is named.
func (v *saver) view(path string) {
	address := &url.URL{Scheme: "file", Path: filepath.ToSlash(path)}
	if err := fyne.CurrentApp().OpenURL(address); err != nil {
		v.tell(lang.X("open-yourself", "Nothing here opens a PDF. It is at {{.Path}}", map[string]any{"Path": path}))
	}
}

// stampOf is when the trip was last saved: a calendar tells by it which of two
// copies is newer.
func stampOf(path string) time.Time {
	if info, err := os.Stat(path); err == nil {
		return info.ModTime().UTC()
	}
	return time.Unix(0, 0).UTC()
}

// freeFolder gives the name of a folder that is not there yet.
func freeFolder(stem string) string {
	for n := 1; ; n++ {
		name := stem
		if n > 1 {
			name = fmt.Sprintf("%s %d", stem, n)
		}
		if _, err := os.Stat(name); os.IsNotExist(err) {
			return name
		}
	}
}
