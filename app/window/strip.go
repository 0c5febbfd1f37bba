package window

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// strip is the line at the bottom: the figures a leader watches, and what the
// last edit changed, before and after.
type strip struct {
	document *document.Document
	figures  []*figure
	stage    *look.Text
	content  *fyne.Container
}

// figure is one figure with its name; a changed one shows what it was.
type figure struct {
	name, value, before *look.Text
}

// newStrip makes the line; grown hears that it needs more or fewer lines.
func newStrip(d *document.Document, grown func()) *strip {
	s := &strip{document: d, stage: look.NewText("", look.Caption, look.Quiet)}
	row := container.New(&flow{grown: grown})
	for range 5 {
		f := &figure{name: look.NewText("", look.Caption, look.Quiet), value: look.NewText("", look.Body, look.Ink), before: look.NewText("", look.Caption, look.Spruce)}
		f.value.Bold = true
		s.figures = append(s.figures, f)
		row.Add(container.NewHBox(f.name, f.value, f.before))
	}
	row.Add(s.stage)
	s.content = row
	return s
}

// planning dims the figures while a new plan is made.
func (s *strip) planning(stage prose.Text) {
	for _, f := range s.figures {
		f.value.SetTone(look.Quiet)
	}
	if !stage.IsZero() {
		s.stage.SetContent(lang.L("working out") + ": " + written.Text(stage, s.document.Trip().Units))
	}
}

// refresh shows the newest plan against the one before.
func (s *strip) refresh() {
	s.stage.SetContent("")
	p := s.document.Plan()
	if p == nil {
		return
	}
	if p.Refused() {
		s.stage.SetContent(lang.L("This trip cannot be planned yet: see Findings."))
		return
	}
	now := figuresOf(p, p.Trip.Units)
	var before []reading
	if old := s.document.PlanBefore(); old != nil && !old.Refused() {
		before = figuresOf(old, p.Trip.Units)
	}
	for i, f := range s.figures {
		f.name.SetContent(now[i].name)
		f.value.SetContent(now[i].value)
		f.value.SetTone(look.Ink)
		was := ""
		if before != nil && before[i].value != now[i].value {
			was = lang.X("was", "was {{.Value}}", map[string]any{"Value": before[i].value})
		}
		f.before.SetContent(was)
	}
	s.content.Refresh()
}

type reading struct{ name, value string }

// figuresOf writes the watched figures in the leader's units, which may have
// changed since the plan was made.
func figuresOf(p *plan.Plan, system units.System) []reading {
	t, s := p.Trip, p.Summary()
	cost := written.Price(s.Cost, t.Currency)
	if !s.CostComplete {
		cost = lang.X("at-least", "at least {{.Cost}}", map[string]any{"Cost": cost})
	}
	return []reading{
		{lang.L("food a person and day"), written.Quantity(s.FoodPerPersonDay, system)},
		{lang.L("least fed"), leastFed(t, s)},
		{lang.L("heaviest share"), nameOf(t, s.Heaviest) + " " + written.Number(100*s.HeaviestShare, 1) + " %"},
		{lang.L("fuel"), written.Quantity(s.Fuel, system)},
		{lang.L("cost"), cost},
	}
}

// leastFed names who is fed least, if anybody is fed.
func leastFed(t *trip.Trip, s plan.Summary) string {
	if s.LeastFed == 0 {
		return nameOf(t, 0)
	}
	return fmt.Sprintf("%s %.0f %%", nameOf(t, s.LeastFed), 100*s.LeastFedShare)
}

// longestName is what the line has room for.
const longestName = 24

func nameOf(t *trip.Trip, id trip.MemberID) string {
	if m := t.Member(id); m != nil {
		if runes := []rune(m.Name); len(runes) > longestName {
			return string(runes[:longestName-1]) + "…"
		}
		return m.Name
	}
	return "–"
}
