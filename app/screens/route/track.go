package route

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/importer/gpx"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// trackPanel cuts a track into days and shows them before they are taken.
type trackPanel struct {
	screen *Screen
	taken  *gpx.Measured // the track taken in since the window was opened
	track  *gpx.Measured // the one being cut
	count  int           // days of equal walking time
	parts  bool          // a day for each track of the file instead

	name, what *look.Text
	days       *look.Text
	asInFile   *widget.Check
	preview    *widget.Label
	warning    *look.Paragraph
	take       *widget.Button
	content    fyne.CanvasObject
}

func newTrackPanel(s *Screen) *trackPanel {
	p := &trackPanel{screen: s, name: look.NewHeading("").Yielding(), what: look.NewText("", look.Caption, look.Quiet).Yielding(), days: look.NewText("", look.Figure, look.Ink), preview: widget.NewLabel(""), warning: look.NewParagraph("", look.Body, look.Ochre)}
	p.preview.TextStyle.Monospace = true
	p.preview.SizeName = "caption"
	p.asInFile = widget.NewCheck("", func(on bool) { p.parts = on; p.show() })
	p.take = widget.NewButton(lang.L("Take these days"), p.store)
	p.take.Importance = widget.HighImportance
	fewer := widget.NewButton("−", func() { p.setCount(p.count - 1) })
	more := widget.NewButton("+", func() { p.setCount(p.count + 1) })
	p.content = container.NewBorder(
		container.NewVBox(bench.Inset(p.name, p.what), container.NewHBox(fewer, p.days, more), p.asInFile, p.warning),
		container.NewHBox(p.take, widget.NewButton(lang.L("Leave it"), p.close)), nil, nil,
		bench.NewScroll(p.preview))
	return p
}

// askTrack asks for a file.
func (s *Screen) askTrack() {
	if !s.Commit() {
		return
	}
	bench.AskFile(s.bench.Window, filepath.Dir(s.bench.Document.Path()), []string{".gpx"}, s.readTrack)
}

// readTrack reads and measures a file away from the screen.
func (s *Screen) readTrack(path string) {
	s.bench.Say(lang.L("Reading the track…"))
	var measured *gpx.Measured
	var fault error
	s.bench.Document.Background(func() { measured, fault = measureFile(path) }, func() {
		if fault != nil {
			s.bench.Say(filepath.Base(path) + ": " + written.Error(fault))
			return
		}
		s.bench.Say("")
		s.track.open(filepath.Base(path), measured)
	})
}

func measureFile(path string) (*gpx.Measured, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, errors.New(lang.L("the file cannot be opened"))
	}
	way, err := gpx.Read(file)
	if err = errors.Join(err, file.Close()); err != nil {
		return nil, err
	}
	return way.Measure(), nil
}

// open shows a track to be cut.
func (p *trackPanel) open(name string, track *gpx.Measured) {
	p.track = track
	p.name.SetContent(name)
	parts := len(track.Parts())
	p.parts = parts > 1 && track.Tracks()
	p.asInFile.SetText(lang.X("as-in-file", "one day for each of the {{.Count}} parts of the file", map[string]any{"Count": parts}))
	p.asInFile.Checked = p.parts
	p.asInFile.Refresh()
	visible(p.asInFile, parts > 1 && parts <= trip.MaxDays)
	p.count = p.guessCount()
	p.screen.beside.Objects = []fyne.CanvasObject{p.content}
	p.show()
	p.screen.beside.Refresh()
}

// usualHours is a fair day on foot by Naismith, without stops (common
// practice, no source).
const usualHours = 5.5

// guessCount takes the number of days of the trip, if there is a route
// already; else fair days.
func (p *trackPanel) guessCount() int {
	if t := p.screen.bench.Trip(); len(t.Days) > 1 {
		return len(t.Days)
	}
	whole := p.track.Split(1)[0]
	return max(1, min(trip.MaxDays, int(math.Ceil(float64(whole.Hours)/usualHours))))
}

func (p *trackPanel) setCount(count int) {
	p.count = max(1, min(trip.MaxDays, count))
	p.parts, p.asInFile.Checked = false, false
	p.asInFile.Refresh()
	p.show()
}

// cut gives the days as chosen.
func (p *trackPanel) cut() []gpx.Day {
	if p.parts {
		return p.track.Parts()
	}
	return p.track.Split(p.count)
}

func (p *trackPanel) show() {
	u := p.screen.bench.Units()
	days := p.cut()
	whole := p.track.Split(1)[0]
	p.what.SetContent(fmt.Sprintf("%s, ↑ %s, ↓ %s", written.Quantity(prose.Distance(whole.Distance), u), p.height(whole.Ascent), p.height(whole.Descent)))
	p.days.SetContent(written.Counted(len(days), prose.Say("1 day"), prose.Say("%d days", len(days))))
	text := ""
	for i, day := range days {
		text += fmt.Sprintf("%2d %8s ↑%7s ↓%7s %5s h  %s\n", i+1, written.Quantity(prose.Distance(day.Distance), u), p.height(day.Ascent), p.height(day.Descent),
			written.Number(float64(day.Hours)*max(1, p.screen.bench.Trip().Settings.PartyFactor), 1), day.Name)
	}
	p.preview.SetText(text)
	p.warning.SetContent(p.warningText(len(days)))
	visible(p.warning, p.warning.Content != "")
}

func (p *trackPanel) height(m units.Metres) string {
	if !p.track.HeightsKnown {
		return "?"
	}
	return written.Quantity(prose.Height(m), p.screen.bench.Units())
}

// warningText says what taking the days does to the trip.
func (p *trackPanel) warningText(days int) string {
	text := ""
	if now := len(p.screen.bench.Trip().Days); days < now {
		text = written.Counted(now-days, prose.Say("The trip has %d days: the last one goes, with its menu.", now), prose.Say("The trip has %d days: the last %d go, with their menu.", now, now-days)) + " "
	}
	if !p.track.HeightsKnown {
		text += lang.L("The file holds no heights: ascent, descent and heights of the days stay as they are. Enter them yourself.")
	}
	return text
}

// store puts the days into the trip as one step that can be undone.
func (p *trackPanel) store() {
	days, track := p.cut(), p.track
	if p.screen.bench.Edit(lang.L("take the days from a track"), func(t *trip.Trip) error { return takeDays(t, days, track.HeightsKnown) }) != nil {
		return
	}
	p.taken = track
	p.close()
	p.screen.Refresh()
}

func (p *trackPanel) close() {
	p.track = nil
	p.screen.beside.Objects = []fyne.CanvasObject{p.screen.day.content}
	p.screen.beside.Refresh()
	p.screen.table.Focus()
}

// takeDays gives the days of a trip the lengths and heights of a track's, and
// makes them as many. Weather, ground, meals and menu stay; walking hours
// that were entered belong to the old way and are reckoned anew.
func takeDays(t *trip.Trip, days []gpx.Day, heights bool) error {
	for len(t.Days) < len(days) {
		if err := t.InsertDay(len(t.Days)+1, restAfter(t, len(t.Days))); err != nil {
			return err
		}
	}
	for len(t.Days) > len(days) {
		if err := t.RemoveDay(len(t.Days)); err != nil {
			return err
		}
	}
	for i, cut := range days {
		day := &t.Days[i]
		day.Distance, day.MovingHours = rounded(cut.Distance), optional.Unknown[units.Hours]()
		if cut.Name != "" {
			day.Name = cut.Name
		}
		if heights {
			day.Ascent, day.Descent = rounded(cut.Ascent), rounded(cut.Descent)
			day.SteepDescent = min(rounded(cut.SteepDescent), day.Descent)
			day.CampHeight, day.LunchHeight = rounded(cut.CampHeight), rounded(cut.LunchHeight)
		}
	}
	return nil
}

// rounded drops what no track knows: centimetres.
func rounded(m units.Metres) units.Metres { return units.Metres(math.Round(float64(m))) }

func visible(object fyne.CanvasObject, on bool) {
	if on {
		object.Show()
	} else {
		object.Hide()
	}
}
