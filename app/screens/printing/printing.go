// Package printing is the place where the leader chooses what to print or to
// save, and sees the very pages before that.
package printing

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/exporter/print/prints"
)

// Screen is the place where things are printed and saved.
type Screen struct {
	bench   *bench.Bench
	list    *paperList
	choices *choices
	preview *preview
	saver   *saver
	content fyne.CanvasObject

	shown prints.Kind
	drawn drawing // what the preview was last drawn from
	stop  context.CancelFunc
}

// drawing is what a preview depends on.
type drawing struct {
	plan    *plan.Plan
	kind    prints.Kind
	options string
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, shown: prints.Shopping, stop: func() {}}
	s.list = newPaperList(s.show)
	s.choices = newChoices(b, s.redraw)
	s.preview = newPreview(b)
	s.saver = newSaver(s)
	left := container.NewVScroll(container.NewVBox(
		bench.Inset(look.NewHeading(lang.L("To print"))), s.list.prints,
		bench.Inset(look.NewHeading(lang.L("How"))), s.choices.content,
		bench.Inset(look.NewHeading(lang.L("For other programs"))), s.list.files,
	))
	side := container.NewBorder(nil, s.saver.content, nil, nil, left)
	s.content = container.New(&sideBySide{}, side, widget.NewSeparator(), s.preview.content)
	s.list.mark(s.shown)
	s.choices.showFor(s.shown)
	return s
}

// sideWidth is the width of what is chosen, which grows with the text; the
// preview has the rest.
func sideWidth() float32 { return 330 * max(1, look.Scale()) }

// sideBySide gives the left a width of its own.
type sideBySide struct{}

// MinSize leaves the preview a little.
func (*sideBySide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(sideWidth()+300, 300)
}

// Layout puts the objects side by side.
func (*sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	side := sideWidth()
	objects[0].Resize(fyne.NewSize(side, size.Height))
	objects[1].Move(fyne.NewPos(side+look.Space, 0))
	objects[1].Resize(fyne.NewSize(1, size.Height))
	objects[2].Move(fyne.NewPos(side+2*look.Space, 0))
	objects[2].Resize(fyne.NewSize(max(0, size.Width-side-2*look.Space), size.Height))
}

// Name of the screen in places.
func (s *Screen) Name() string { return "print" }

// Title of the screen.
func (s *Screen) Title() string { return lang.L("Print and save") }

// Content of the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the papers of the newest plan.
func (s *Screen) Refresh() {
	s.choices.refresh()
	p := s.bench.Plan()
	s.list.offer(p != nil && prints.OnWay(p))
	s.redraw()
}

// Waiting counts nothing: nobody has to print.
func (s *Screen) Waiting() int { return 0 }

// Focus gives the keyboard to the paper in the preview.
func (s *Screen) Focus() { s.bench.Window.Canvas().Focus(s.list.buttons[s.shown]) }

// GoTo chooses the card of a recipe.
func (s *Screen) GoTo(place findings.Place) {
	if place.Recipe != 0 {
		s.choices.chooseRecipe(place.Recipe)
	}
}

// ShowPaper shows a paper, if there is one of the name.
func (s *Screen) ShowPaper(name string) {
	for _, kind := range prints.Kinds() {
		if string(kind) == name {
			s.show(kind)
			s.Focus()
		}
	}
}

// Commit stores nothing: nothing typed here belongs to the trip.
func (s *Screen) Commit() bool { return true }

// show shows a paper in the preview.
func (s *Screen) show(kind prints.Kind) {
	s.shown = kind
	s.list.mark(kind)
	s.choices.showFor(kind)
	s.redraw()
}

// redraw draws the shown paper anew, away from the screen, unless nothing it
// depends on has changed.
func (s *Screen) redraw() {
	p := s.bench.Plan()
	options, problem := s.choices.options()
	now := drawing{p, s.shown, fmt.Sprintf("%+v", described(options))}
	switch {
	case p == nil:
		s.stop()
		s.drawn = drawing{}
		s.preview.say(lang.L("There is nothing to print until the plan is worked out."))
		return
	case problem != "":
		s.stop()
		s.drawn = drawing{}
		s.preview.say(problem)
		return
	case now == s.drawn:
		return
	}
	s.stop()
	s.drawn = now
	var ctx context.Context
	ctx, s.stop = context.WithCancel(context.Background())
	s.preview.working()
	var made *prints.Print
	var err error
	s.bench.Document.Background(func() {
		made, err = prints.Draw(ctx, p, now.kind, options, nil)
	}, func() {
		switch {
		case ctx.Err() != nil: // something else is shown by now
		case err != nil:
			s.preview.say(written.Error(err))
		default:
			s.preview.show(made)
		}
	})
}

// SaveTo writes what is ticked into a new folder below the given one.
func (s *Screen) SaveTo(folder string) { s.saver.saveTo(folder) }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	control := func(key fyne.KeyName, more fyne.KeyModifier) fyne.Shortcut {
		return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | more}
	}
	return []bench.Action{
		{Name: lang.L("Save what is ticked into a folder…"), Shortcut: control(fyne.KeyE, fyne.KeyModifierShift), Do: s.saver.askFolder},
		{Name: lang.L("Open the shown paper to print it"), Shortcut: control(fyne.KeyP, 0), Do: s.saver.open},
		{Name: lang.L("The page before"), Shortcut: control(fyne.KeyPageUp, 0), Do: func() { s.preview.turn(-1) }},
		{Name: lang.L("The next page"), Shortcut: control(fyne.KeyPageDown, 0), Do: func() { s.preview.turn(1) }},
		{Name: lang.L("Tick everything"), Do: func() { s.list.tickAll(true) }},
		{Name: lang.L("Tick nothing"), Do: func() { s.list.tickAll(false) }},
		{Name: lang.L("Stop saving"), Do: s.saver.cancel},
	}
}

// spread is as wide as it can be.
func spread(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedVBoxLayout(2), objects...)
}
