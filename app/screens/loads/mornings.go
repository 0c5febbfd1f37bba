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
	var overs, left []trip.HandOver
	for _, item := range stage.HandedOver() {
		if over, ok := (carry.Thing{Kind: item.Kind, Key: item.Key}).HandOver(); ok {
			over.From, over.To = item.From, item.Carrier
			if v.miss(over.From, over.To, stage.FirstDay) {
				left = append(left, over)
			} else {
				overs = append(overs, over)
			}
		}
	}
	m.title.SetContent(lang.X("morning-title", "Handed over before day {{.Day}} begins: {{.Count}}", data{"Day": stage.FirstDay, "Count": len(overs) + len(left)}))
	lines := v.moveLines(overs, stage.FirstDay)
	for _, line := range v.moveLines(left, stage.FirstDay) {
		lines = append(lines, lang.X("left-behind", "{{.Line}} (left with somebody who stays: they do not meet)", data{"Line": line}))
	}
	if len(lines) == 0 {
		lines = []string{lang.L("Nothing changes packs at its start.")}
	}
	m.lines.SetContent(strings.Join(lines, "\n"))
}

// miss tells whether a giver has gone before the taker comes.
func (v *view) miss(giver, taker trip.MemberID, day int) bool {
	there := func(id trip.MemberID, day int) bool {
		place := v.place(id)
		return place >= 0 && day <= len(v.plan.Carry.Members[place].Days) && v.plan.Carry.Members[place].Days[day-1].Present
	}
	return day > 1 && !there(giver, day) && !there(taker, day-1)
}
