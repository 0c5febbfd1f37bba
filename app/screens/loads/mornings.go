package loads

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/carry"
	"sumpter/domain/trip"
)

// mornings tells what changes hands when a stretch of days begins, by giver and
// taker, whatever was in which pack before the last edit.
type mornings struct {
	title   *look.Text
	lines   *look.Paragraph
	content *fyne.Container
	place   *bench.Scroll // around the content, where it stands alone
}

func newMornings() *mornings {
	m := &mornings{title: look.NewHeading("").Yielding(), lines: look.NewParagraph("", look.Body, look.Ink)}
	m.content = container.NewVBox(m.title, m.lines)
	m.place = bench.NewScroll(m.content)
	return m
}

// show tells of a stage; of the first there is nothing to tell.
func (m *mornings) show(v *view, stage *carry.Stage) {
	known := v != nil && stage != nil && stage.FirstDay > 1
	bench.SetShown(m.content, known)
	if !known {
		return
	}
	var overs []trip.HandOver
	for _, item := range stage.HandedOver() {
		if over, ok := (carry.Thing{Kind: item.Kind, Key: item.Key}).HandOver(); ok {
			over.From, over.To = item.From, item.Carrier
			overs = append(overs, over)
		}
	}
	m.title.SetContent(lang.X("morning-title", "Handed over before day {{.Day}} begins: {{.Count}}", data{"Day": stage.FirstDay, "Count": len(overs)}))
	lines := v.moveLines(overs, stage.FirstDay)
	if len(lines) == 0 {
		lines = []string{lang.L("Nothing changes packs at its start.")}
	}
	m.lines.SetContent(strings.Join(lines, "\n"))
}
