package window

import (
	"image/color"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/units"
)

const findingsWidth float32 = 330

// findingsList is everything the leader must know, worst first; a tap goes
// to the place.
type findingsList struct {
	bench   *bench.Bench
	list    *widget.List
	counts  *look.Text // how many of each severity
	shown   []shownFinding
	content fyne.CanvasObject
}

// shownFinding is one of the plan, or of the rest of the way from a morning.
type shownFinding struct {
	findings.Finding
	morning int // 0: of the plan
}

// place is where it is seen to.
func (f shownFinding) place() document.Place {
	if f.morning == 0 {
		return document.Place{Screen: screenOf(f.Finding), Place: f.Place}
	}
	there := f.Place
	there.Day = f.morning // that day tells how the rest stands
	return document.Place{Screen: "trail", Place: there}
}

func newFindingsList(b *bench.Bench) *findingsList {
	l := &findingsList{bench: b, counts: look.NewText("", look.Caption, look.Quiet)}
	l.list = widget.NewList(
		func() int { return len(l.shown) },
		func() fyne.CanvasObject { return newFindingRow() },
		func(i widget.ListItemID, object fyne.CanvasObject) { l.fill(i, object) },
	)
	l.list.OnSelected = func(i widget.ListItemID) {
		l.list.Unselect(i)
		if i < len(l.shown) {
			b.Document.GoTo(l.shown[i].place())
		}
	}
	width := canvas.NewRectangle(color.Transparent)
	width.SetMinSize(fyne.NewSize(findingsWidth, 0))
	l.content = container.NewStack(width, container.NewBorder(container.NewPadded(container.NewVBox(look.NewHeading(lang.L("Findings")), l.counts)), nil, nil, nil, l.list))
	return l
}

func (l *findingsList) refresh() {
	l.shown = l.all()
	count := func(severity findings.Severity) (n int) {
		for i := range l.shown {
			if l.shown[i].Severity == severity {
				n++
			}
		}
		return n
	}
	notes := count(findings.Note)
	data := map[string]any{"Must": count(findings.MustFix), "Look": count(findings.LookAt), "Notes": notes}
	if notes == 1 {
		l.counts.SetContent(lang.X("findings-count-one", "{{.Must}} must fix · {{.Look}} look at · {{.Notes}} note", data))
	} else {
		l.counts.SetContent(lang.X("findings-count", "{{.Must}} must fix · {{.Look}} look at · {{.Notes}} notes", data))
	}
	width := max(findingsWidth, l.list.Size().Width)
	for i := range l.shown {
		l.list.SetItemHeight(i, heightOf(l.shown[i].Finding, l.bench.Units(), width))
	}
	l.list.Refresh()
}

// all is what is to be told, worst first, and of the same weight what happened
// on the way first.
func (l *findingsList) all() []shownFinding {
	var list []shownFinding
	if way := l.bench.Way(); way != nil {
		for _, finding := range way.Findings {
			list = append(list, shownFinding{finding, way.From})
		}
	}
	if p := l.bench.Document.Plan(); p != nil {
		for _, finding := range p.Findings {
			list = append(list, shownFinding{Finding: finding})
		}
	}
	slices.SortStableFunc(list, func(a, b shownFinding) int { return a.Severity.Compare(b.Severity) })
	return list
}

func severityWord(severity findings.Severity) string { return lang.L(string(severity)) }

// findingRow is a finding: sign, word, what, remedy.
type findingRow struct {
	widget.BaseWidget
	sign         *widget.Icon
	word         *look.Text
	what, remedy *look.Paragraph
	box          *fyne.Container
}

func newFindingRow() *findingRow {
	r := &findingRow{sign: widget.NewIcon(nil), word: look.NewText("", look.Caption, look.Quiet), what: look.NewParagraph("", look.Body, look.Ink), remedy: look.NewParagraph("", look.Caption, look.Quiet)}
	margin := canvas.NewRectangle(color.Transparent) // of the bar of the list
	margin.SetMinSize(fyne.NewSize(theme.Size(theme.SizeNameScrollBarSmall), 0))
	r.box = container.NewBorder(nil, nil, container.NewVBox(r.sign), margin, container.NewVBox(r.word, r.what, r.remedy))
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer lays the row out.
func (r *findingRow) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(r.box) }

func (l *findingsList) fill(i widget.ListItemID, object fyne.CanvasObject) {
	row, finding := object.(*findingRow), l.shown[i]
	row.sign.SetResource(look.SignOf(finding.Severity))
	row.word.SetTone(look.ToneOf(finding.Severity))
	words := []string{severityWord(finding.Severity)}
	if finding.morning > 0 {
		words = append(words, lang.L("On trail"))
	}
	if where := placeWords(l.bench.Trip(), finding.Place); where != "" {
		words = append(words, where)
	}
	row.word.SetContent(strings.Join(words, " · "))
	row.what.SetContent(written.Text(finding.What, l.bench.Units()))
	row.remedy.SetContent(written.Text(finding.Remedy, l.bench.Units()))
}

// heightOf reckons how high the row of a finding is in a list of a width, as
// its words will wrap.
func heightOf(finding findings.Finding, system units.System, width float32) float32 {
	beside := theme.IconInlineSize() + theme.Size(theme.SizeNameScrollBarSmall) + 2*theme.Padding()
	room := width - beside - 2*theme.InnerPadding()
	line := func(size look.Size) float32 {
		return fyne.MeasureText("M", size.Points(), fyne.TextStyle{}).Height
	}
	paragraph := func(text prose.Text, size look.Size) float32 {
		lines := look.Wrap(written.Text(text, system), size.Points(), fyne.TextStyle{}, room)
		return float32(len(lines))*line(size) + 2*theme.InnerPadding()
	}
	return line(look.Caption) + paragraph(finding.What, look.Body) + paragraph(finding.Remedy, look.Caption) + 2*theme.Padding()
}
