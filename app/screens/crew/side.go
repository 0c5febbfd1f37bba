package crew

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/needs"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// sidePanel is what the chosen member needs, with the reason for the figure
// of the chosen day, and what they must not eat.
type sidePanel struct {
	bench   *bench.Bench
	member  trip.MemberID
	day     int // 1-based
	name    *look.Text
	caution *look.Note
	chart   *charts.NeedChart
	figure  *look.Text
	detail  *look.Paragraph
	why     *bench.Ledger
	content fyne.CanvasObject
}

func newSidePanel(b *bench.Bench) *sidePanel {
	s := &sidePanel{
		bench: b, day: 1, name: look.NewHeading("").Yielding(), caution: look.NewNote(), chart: charts.NewNeedChart("kcal"),
		figure: look.NewText("", look.Figure, look.Ink), detail: look.NewParagraph("", look.Caption, look.Quiet), why: bench.NewLedger(b.Document.AfterFrame),
	}
	s.content = container.New(layout.NewCustomPaddedLayout(0, 0, look.SpaceWide, look.SpaceSmall), container.NewBorder(
		container.NewVBox(bench.Inset(s.name), s.caution, bench.Inset(look.NewText(lang.L("food (bar) against need (line), day by day"), look.Caption, look.Quiet).Yielding()), s.chart, bench.Inset(s.figure), s.detail), nil, nil, nil, s.why))
	return s
}

// show shows a member; the day stays.
func (s *sidePanel) show(id trip.MemberID) {
	s.member = id
	t := s.bench.Trip()
	m := t.Member(id)
	if m == nil {
		return
	}
	s.name.SetContent(m.Name)
	s.caution.Set(cautionOf(m, s.bench.Units()), look.Ink, len(m.Allergies) > 0)
	if s.caution.Text == "" {
		s.caution.Hide()
	} else {
		s.caution.Show()
	}
	p := s.bench.Plan()
	if p == nil || p.Trip.Member(id) == nil {
		s.chart.Set(nil)
		s.figure.SetContent("")
		s.detail.SetContent(lang.L("The needs come with the plan."))
		s.why.Set(nil)
		return
	}
	s.showNeeds(p)
}

// showDay chooses the day whose figure is explained; 0 leaves it.
func (s *sidePanel) showDay(day int) {
	if day > 0 {
		s.day = day
	}
	s.show(s.member)
}

// step goes to another day.
func (s *sidePanel) step(by int) {
	s.showDay(max(1, min(s.day+by, len(s.bench.Trip().Days))))
}

// cautionOf names what a member must not be served, in full.
func cautionOf(m *trip.Member, system units.System) string {
	var plain, severe, own []string
	for _, allergy := range m.Allergies {
		if allergy.Severe {
			severe = append(severe, bench.AllergenWord(allergy.Allergen, system))
		} else {
			plain = append(plain, bench.AllergenWord(allergy.Allergen, system))
		}
	}
	for _, diet := range m.Diets {
		if diet.OwnWord() {
			own = append(own, bench.DietWord(diet))
		}
	}
	text := ""
	if len(severe) > 0 {
		text += lang.X("harmed-by-traces", "Harmed by traces of {{.List}}.", map[string]any{"List": strings.Join(severe, ", ")}) + " "
	}
	if len(plain) > 0 {
		text += lang.X("allergic-to", "Allergic to {{.List}}.", map[string]any{"List": strings.Join(plain, ", ")}) + " "
	}
	if text != "" {
		text += lang.L("Read every label; ask the member and, in doubt, their doctor.")
	}
	if len(own) > 0 {
		known := make([]string, len(trip.KnownDiets()))
		for i, diet := range trip.KnownDiets() {
			known[i] = bench.DietWord(diet)
		}
		text += " " + lang.X("own-diet", "No food says whether it suits {{.List}}: you would have to judge each. Known are {{.Known}}.",
			map[string]any{"List": strings.Join(own, ", "), "Known": strings.Join(known, ", ")})
	}
	if m.Medicine != "" {
		text += " " + lang.L("Medicine:") + " " + ended(m.Medicine)
	}
	return text
}

// ended ends what the leader wrote with a full stop, where it has no end yet.
func ended(note string) string {
	note = strings.TrimSpace(note)
	if strings.HasSuffix(note, ".") || strings.HasSuffix(note, "!") || strings.HasSuffix(note, "?") || strings.HasSuffix(note, "…") {
		return note
	}
	return note + "."
}

func (s *sidePanel) showNeeds(p *plan.Plan) {
	place := -1
	for i, member := range p.Needs.Members {
		if member.Member == s.member {
			place = i
		}
	}
	if place < 0 {
		return
	}
	member, intake := p.Needs.Members[place], p.Portions.Intakes[place]
	s.day = max(1, min(s.day, len(member.Days)))
	var bars []charts.Intake
	for d, day := range member.Days {
		bars = append(bars, charts.Intake{
			Label: strconv.Itoa(d + 1), Eaten: float64(intake.Days[d].Kcal), Need: float64(day.TargetKcal),
			Low: float64(day.Low) * day.FromPacks, High: float64(day.High) * day.FromPacks, Absent: !day.Present,
			Short:  float64(intake.Days[d].Kcal) < float64(day.TargetKcal)*p.Trip.Settings.DayLow-0.5,
			Tapped: func() { s.showDay(d + 1) },
		})
	}
	s.chart.Set(bars)
	s.explain(member.Days[s.day-1])
}

// explain writes why the figure of a day is what it is.
func (s *sidePanel) explain(day needs.Day) {
	if !day.Present {
		s.figure.SetContent("")
		s.detail.SetContent(lang.X("not-there", "Not there on day {{.Day}}.", map[string]any{"Day": s.day}))
		s.why.Set(nil)
		return
	}
	s.figure.SetContent(lang.X("day-need", "Day {{.Day}}: {{.Kcal}} kcal", map[string]any{"Day": s.day, "Kcal": strconv.FormatFloat(float64(day.Kcal), 'f', 0, 64)}))
	s.detail.SetContent(lang.X("bracket", "the equations say {{.Low}} to {{.High}}; no one is better than 10 % for one person", map[string]any{
		"Low": strconv.FormatFloat(float64(day.Low), 'f', 0, 64), "High": strconv.FormatFloat(float64(day.High), 'f', 0, 64)}))
	system := s.bench.Units()
	entries := make([]bench.Entry, 0, len(day.Steps))
	for _, step := range day.Steps {
		entries = append(entries, bench.Entry{
			What: written.Text(step.What, system), Figure: written.Number(step.Value, 0) + " " + step.Unit, Basis: written.Text(step.Basis, system), Total: step.Total,
		})
	}
	s.why.Set(entries)
}
