package settings

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// sidePanel says what the chosen setting does, what it may be, and gives it
// its usual value back. The notes of the trip are written here.
type sidePanel struct {
	choices *choicesTab
	row     int
	title   *look.Text
	value   *look.Paragraph
	about   *look.Paragraph
	allowed *look.Paragraph
	usual   *widget.Button
	notes   *bench.LongText
	content fyne.CanvasObject
}

func newSidePanel(c *choicesTab) *sidePanel {
	s := &sidePanel{choices: c, row: 1, title: look.NewHeading("").Yielding(), value: look.NewParagraph("", look.Figure, look.Ink), about: look.NewParagraph("", look.Body, look.Ink), allowed: bench.SmallPrint("")}
	s.usual = widget.NewButton(lang.L("Back to usual"), func() { c.backToUsual(&c.rows[s.row]) })
	s.notes = bench.NewLongText(lang.L("Anything about the trip"), s.keepNotes)
	top := container.NewVBox(bench.Inset(s.title), s.value, s.about, s.allowed, container.NewHBox(s.usual))
	s.content = container.New(layout.NewCustomPaddedLayout(0, 0, look.SpaceWide, look.SpaceSmall), container.NewBorder(top, nil, nil, nil,
		container.NewStack(s.notes))) // a stack lays out what is hidden too
	return s
}

func (s *sidePanel) show(row int) {
	s.row = row
	s.refresh()
}

func (s *sidePanel) refresh() {
	one, t := &s.choices.rows[s.row], s.choices.bench.Trip()
	s.title.SetContent(one.title)
	bench.SetShown(s.usual, one.usual != nil)
	bench.SetShown(s.notes, one.name == "notes")
	if one.name == "" {
		s.value.SetContent("")
		s.about.SetContent(lang.L("Choose a setting to read what it does."))
		s.allowed.SetContent("")
		return
	}
	value := one.text(t)
	if unit := one.unit(t); unit != "" && value != "" {
		value += " " + unit
	}
	if one.name == "notes" {
		value = ""
		s.notes.ShowOf("notes", t.Notes)
	}
	s.value.SetContent(value)
	s.about.SetContent(one.about)
	s.allowed.SetContent(s.allowedWords(one, t))
	if isUsual(one, t) {
		s.usual.Disable()
	} else {
		s.usual.Enable()
	}
}

func (s *sidePanel) allowedWords(one *setting, t *trip.Trip) string {
	text := lang.L("Allowed:") + " " + withUnit(allowedText(one, t), one, t)
	if one.usual != nil {
		text += "\n" + lang.L("Usual:") + " " + withUnit(s.choices.usualText(one, t), one, t)
	}
	return text
}

func withUnit(text string, one *setting, t *trip.Trip) string {
	if unit := one.unit(t); unit != "" && one.usual != nil {
		return text + " " + unit
	}
	return text
}

// open goes to where a setting is written that is not written in the table.
func (s *sidePanel) open(row int) {
	s.show(row)
	if s.choices.rows[row].name == "notes" && s.choices.bench.Window != nil {
		s.choices.bench.Window.Canvas().Focus(s.notes)
	}
}

func (s *sidePanel) keepNotes(_, text string) error {
	return s.choices.bench.Edit(lang.L("change the notes of the trip"), func(t *trip.Trip) error { t.Notes = text; return nil })
}
