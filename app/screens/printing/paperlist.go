package printing

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/units"
	"sumpter/exporter/papers"
	"sumpter/exporter/print/prints"
)

// paperList is what can be printed and saved: each with a box to tick for
// saving, the printed ones with a button that shows them.
type paperList struct {
	prints, files *fyne.Container
	ticks         []*tick
	buttons       map[prints.Kind]*widget.Button
	ofTheWay      []fyne.CanvasObject // rows of what there is once the trip is under way
}

// tick is a box and the files of an export it stands for.
type tick struct {
	check *widget.Check
	of    func(name string) bool
}

func newPaperList(show func(prints.Kind)) *paperList {
	l := &paperList{buttons: map[prints.Kind]*widget.Button{}}
	l.prints, l.files = spread(), spread()
	for _, kind := range prints.Kinds() {
		button := widget.NewButton(written.Text(kind.Name(), units.Metric), func() { show(kind) })
		button.Alignment, button.Importance = widget.ButtonAlignLeading, widget.LowImportance
		l.buttons[kind] = button
		check := l.add("", func(name string) bool { return name == "print/"+string(kind)+".pdf" })
		row := container.NewBorder(nil, nil, check, nil, button)
		if kind.OfTheWay() {
			l.ofTheWay = append(l.ofTheWay, row)
		}
		l.prints.Objects = append(l.prints.Objects, row)
	}
	l.offer(false)
	for _, file := range []struct {
		words string
		of    func(string) bool
	}{
		{lang.L("Workbook, to tick off and reckon with"), func(name string) bool { return name == "workbook.xlsx" }},
		{lang.L("Calendar of buying, packing, posting"), func(name string) bool { return name == "calendar.ics" }},
		{lang.L("Every table as CSV"), func(name string) bool { return strings.HasPrefix(name, "tables/") }},
		{lang.L("What was entered, to change and import"), func(name string) bool { return strings.HasPrefix(name, "trip.") }},
		{lang.L("The whole plan as JSON"), func(name string) bool { return name == "plan.json" }},
	} {
		l.files.Objects = append(l.files.Objects, l.add(file.words, file.of))
	}
	return l
}

// offer shows the papers for the rest of the way, or hides them.
func (l *paperList) offer(onWay bool) {
	for _, row := range l.ofTheWay {
		bench.SetShown(row, onWay)
	}
}

func (l *paperList) add(words string, of func(name string) bool) *widget.Check {
	check := widget.NewCheck(words, nil)
	check.Checked = true
	l.ticks = append(l.ticks, &tick{check, of})
	return check
}

// mark shows which paper is in the preview.
func (l *paperList) mark(shown prints.Kind) {
	for kind, button := range l.buttons {
		importance := widget.LowImportance
		if kind == shown {
			importance = widget.MediumImportance
		}
		if button.Importance != importance {
			button.Importance = importance
			button.Refresh()
		}
	}
}

func (l *paperList) tickAll(on bool) {
	for _, tick := range l.ticks {
		tick.check.SetChecked(on)
	}
}

// ticked picks the files that are ticked.
func (l *paperList) ticked(list []papers.Paper) []papers.Paper {
	var wanted []papers.Paper
	for _, paper := range list {
		for _, tick := range l.ticks {
			if tick.check.Checked && tick.of(paper.Name) {
				wanted = append(wanted, paper)
				break
			}
		}
	}
	return wanted
}
