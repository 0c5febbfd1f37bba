package window

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/units"
)

const findingsWidth float32 = 330

// findingsList is everything the leader must know, worst first; a tap goes
// to the place.
type findingsList struct {
	document *document.Document
	list     *widget.List
	counts   *look.Text // how many of each severity
	shown    []findings.Finding
	content  fyne.CanvasObject
}

func newFindingsList(d *document.Document) *findingsList {
	l := &findingsList{document: d, counts: look.NewText("", look.Caption, look.Quiet)}
	l.list = widget.NewList(
		func() int { return len(l.shown) },
		func() fyne.CanvasObject { return newFindingRow() },
		func(i widget.ListItemID, object fyne.CanvasObject) { l.fill(i, object) },
	)
	l.list.OnSelected = func(i widget.ListItemID) {
		l.list.Unselect(i)
		if i < len(l.shown) {
			d.GoTo(document.Place{Screen: screenOf(l.shown[i]), Place: l.shown[i].Place})
		}
	}
	width := canvas.NewRectangle(color.Transparent)
	width.SetMinSize(fyne.NewSize(findingsWidth, 0))
	l.content = container.NewStack(width, container.NewBorder(container.NewPadded(container.NewVBox(look.NewHeading(lang.L("Findings")), l.counts)), nil, nil, nil, l.list))
	return l
}

func (l *findingsList) refresh() {
	l.shown = nil
	if p := l.document.Plan(); p != nil {
		l.shown = p.Findings
	}
	notes := findings.Count(l.shown, findings.Note)
	data := map[string]any{"Must": findings.Count(l.shown, findings.MustFix), "Look": findings.Count(l.shown, findings.LookAt), "Notes": notes}
	if notes == 1 {
		l.counts.SetContent(lang.X("findings-count-one", "{{.Must}} must fix · {{.Look}} look at · {{.Notes}} note", data))
	} else {
		l.counts.SetContent(lang.X("findings-count", "{{.Must}} must fix · {{.Look}} look at · {{.Notes}} notes", data))
	}
	for i := range l.shown {
		l.list.SetItemHeight(i, findingHeight(l.shown[i], l.document.Trip().Units))
	}
	l.list.Refresh()
}

func severityWord(severity findings.Severity) string { return lang.L(string(severity)) }

// findingRow is a finding: sign, word, what, remedy.
type findingRow struct {
	widget.BaseWidget
	sign         *widget.Icon
	word         *look.Text
	what, remedy *widget.Label
	box          *fyne.Container
}

func newFindingRow() *findingRow {
	r := &findingRow{sign: widget.NewIcon(nil), word: look.NewText("", look.Caption, look.Quiet), what: widget.NewLabel(""), remedy: widget.NewLabel("")}
	r.what.Wrapping, r.remedy.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	r.remedy.Importance = widget.LowImportance
	r.remedy.SizeName = theme.SizeNameCaptionText
	r.box = container.NewBorder(nil, nil, container.NewVBox(r.sign), nil, container.NewVBox(r.word, r.what, r.remedy))
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer lays the row out.
func (r *findingRow) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(r.box) }

func (l *findingsList) fill(i widget.ListItemID, object fyne.CanvasObject) {
	row, finding := object.(*findingRow), l.shown[i]
	row.sign.SetResource(look.SignOf(finding.Severity))
	row.word.SetTone(look.ToneOf(finding.Severity))
	row.word.SetContent(severityWord(finding.Severity) + " · " + placeWords(l.document.Trip(), finding.Place))
	row.what.SetText(written.Text(finding.What, l.document.Trip().Units))
	row.remedy.SetText(written.Text(finding.Remedy, l.document.Trip().Units))
}

// findingHeight estimates the lines a finding wraps to in the list's width.
func findingHeight(finding findings.Finding, system units.System) float32 {
	lines := func(text string, perLine int) float32 { return float32((len([]rune(text)) + perLine - 1) / perLine) }
	return 26 + lines(written.Text(finding.What, system), 38)*19 + 12 + lines(written.Text(finding.Remedy, system), 46)*16 + 12
}
