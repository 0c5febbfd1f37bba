package loads

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/trip"
)

// shareField shows and changes the largest part of something that one pack
// may hold. It is the same setting as under Settings.
type shareField struct {
	bench *bench.Bench
	title string
	name  string // of the setting
	of    func(*trip.Trip) *float64
	entry *widget.Entry
	line  fyne.CanvasObject
}

func newShareField(b *bench.Bench, title, name string, of func(*trip.Trip) *float64) *shareField {
	f := &shareField{bench: b, title: title, name: name, of: of, entry: widget.NewEntry()}
	f.entry.OnSubmitted = func(string) { f.commit() }
	f.line = container.NewHBox(bench.Wide(80, f.entry), widget.NewLabel(lang.X("at-most-share", "% at most: {{.What}}", data{"What": title})))
	return f
}

func (f *shareField) show() {
	if text := f.text(); f.entry.Text != text && (f.bench.Window == nil || f.bench.Window.Canvas().Focused() != f.entry) {
		f.entry.SetText(text)
	}
}

func (f *shareField) text() string {
	return written.Bare(typed.PercentText(*f.of(f.bench.Trip())))
}

// commit stores what was typed; false keeps the user here.
func (f *shareField) commit() bool {
	if f.entry.Text == "" || f.entry.Text == f.text() {
		return true
	}
	share, err := typed.Percent(f.entry.Text)
	if bound, _ := trip.SettingBound(f.name); err == nil && (share <= bound.Low || share > bound.High) {
		err = errors.New(lang.L("Enter a part above 0 and up to 100 %."))
	}
	if err != nil {
		f.bench.Say(written.Error(err))
		return false
	}
	name := lang.X("undo-share", "change {{.What}}", data{"What": f.title})
	return f.bench.Edit(name, func(on *trip.Trip) error {
		*f.of(on) = share
		return nil
	}) == nil
}
