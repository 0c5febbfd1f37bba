package trail

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/onward"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// crewPicker is where somebody is chosen who leaves or joins.
type crewPicker struct {
	screen  *Screen
	who     *widget.Select
	ids     []trip.MemberID
	evening *widget.Button
	before  *widget.Button
	joins   *widget.Button
}

func newCrewPicker(s *Screen) *crewPicker {
	c := &crewPicker{screen: s, who: widget.NewSelect(nil, nil)}
	c.who.PlaceHolder = lang.L("Somebody leaves or joins: who?")
	c.evening = widget.NewButton("", func() { c.leave(s.number) })
	c.before = widget.NewButton("", func() { c.leave(s.number - 1) })
	c.joins = widget.NewButton("", func() { s.join(c.chosen()) })
	c.who.OnChanged = func(string) { c.offer() }
	return c
}

func (c *crewPicker) chosen() trip.MemberID {
	if i := c.who.SelectedIndex(); i >= 0 && i < len(c.ids) {
		return c.ids[i]
	}
	return 0
}

func (c *crewPicker) leave(last int) {
	if id := c.chosen(); id != 0 {
		c.screen.letLeave(id, last)
	}
}

// refresh offers everybody, with who is not there marked.
func (c *crewPicker) refresh() {
	t := c.screen.bench.Trip()
	was := c.chosen()
	c.ids = nil
	names := make([]string, 0, len(t.Crew))
	for i := range t.Crew {
		m := &t.Crew[i]
		name := m.Name
		if !t.There(m, c.screen.number) {
			name = lang.X("name-not-there", "{{.Name}} (not there)", map[string]any{"Name": m.Name})
		}
		c.ids, names = append(c.ids, m.ID), append(names, name)
	}
	c.who.Options = names
	if at := slices.Index(c.ids, was); at >= 0 {
		c.who.Selected = names[at]
	} else {
		c.who.Selected = ""
	}
	c.who.Refresh()
	c.offer()
}

// offer shows what the chosen member can do on the day.
func (c *crewPicker) offer() {
	day := map[string]any{"Day": c.screen.number}
	c.evening.SetText(lang.X("leaves-evening", "Leaves after day {{.Day}}", day))
	c.before.SetText(lang.X("leaves-morning", "Left before day {{.Day}}", day))
	c.joins.SetText(lang.X("joins-morning", "Joins on day {{.Day}}", day))
	t := c.screen.bench.Trip()
	m := t.Member(c.chosen())
	for _, b := range []*widget.Button{c.evening, c.before, c.joins} {
		b.Hide()
	}
	switch {
	case m == nil:
	case t.There(m, c.screen.number):
		c.evening.Show()
		c.before.Show()
	default:
		c.joins.Show()
	}
}

// showCrew says who left and joined, and lets others do so.
func (p *sidePanel) showCrew() {
	s := p.screen
	for _, change := range s.bench.Trip().Progress.CrewChanges {
		words := map[string]any{"Name": s.memberName(change.Member), "Day": change.Day}
		text := lang.X("gone-home", "{{.Name}} is not there from day {{.Day}} on.", words)
		if change.There {
			text = lang.X("came-along", "{{.Name}} is there from day {{.Day}} on.", words)
		}
		back := widget.NewButton(lang.L("As planned after all"), func() { s.unchange(change) })
		p.all.Add(container.NewBorder(nil, nil, nil, back, paragraph(text)))
	}
	p.crew.refresh()
	p.all.Add(p.crew.who)
	p.all.Add(container.NewVBox(p.crew.evening, p.crew.before, p.crew.joins))
}

// toDecide tells whether something is proposed for the morning shown.
func (s *Screen) toDecide() bool {
	return s.rest != nil && (len(s.rest.Moves)+len(s.rest.Gifts) > 0 || !s.rest.Decided && (len(s.day.HandOvers) > 0 || len(s.rest.Choices) > 0))
}

// takenOf gives the choice the plan follows, -1 where there is none.
func takenOf(choices []onward.Choice) int {
	return slices.IndexFunc(choices, func(c onward.Choice) bool { return c.Taken })
}

// setHandOvers shows what changes hands by the chosen split.
func (s *Screen) setHandOvers() {
	if s.rest == nil {
		return
	}
	s.day.HandOvers = s.rest.HandOvers
	if s.choice >= 0 && s.choice < len(s.rest.Choices) {
		s.day.HandOvers = s.rest.Choices[s.choice].HandOvers
	}
}

// showDecision lists what changes hands and what is eaten elsewhere, to be
// accepted as a whole.
func (p *sidePanel) showDecision() {
	s := p.screen
	if s.toDecide() {
		accept := widget.NewButton(lang.X("accept", "Go on like this from day {{.Day}}", map[string]any{"Day": s.number}), s.accept)
		accept.Importance = widget.HighImportance
		p.all.Add(accept)
	} else if s.rest != nil && s.rest.Decided {
		p.all.Add(container.NewBorder(nil, nil, nil, widget.NewButton(lang.L("Decide anew"), s.withdraw),
			paragraph(lang.X("decided", "How it goes on was decided on the morning of day {{.Day}}.", map[string]any{"Day": s.number}))))
	}
	p.showChoices()
	p.showHandOvers()
	p.showMoves()
}

// showChoices offers few hand-overs against a fair load.
func (p *sidePanel) showChoices() {
	s := p.screen
	if s.rest == nil || len(s.rest.Choices) < 2 {
		return
	}
	offered := offeredOf(s.rest.Choices)
	texts := make([]string, len(offered))
	for i, at := range offered {
		choice := s.rest.Choices[at]
		texts[i] = lang.X("choice", "Changing hands: {{.Count}}; heaviest pack {{.Worst}} %", map[string]any{
			"Count": choice.Changes(), "Worst": written.Number(100*choice.Worst, 1)})
		if choice.Any() {
			texts[i] += lang.X("choice-over", "; over limits: {{.Over}}", map[string]any{"Over": written.Text(choice.Text(), s.bench.Units())})
		}
	}
	p.all.Add(heading(lang.L("Few hand-overs or a fair load")))
	if len(s.rest.Aside) > 0 {
		names := make([]string, len(s.rest.Aside))
		for i, id := range s.rest.Aside {
			names[i] = s.memberName(id)
		}
		p.all.Add(paragraph(bench.AsideWords(names)))
	}
	if p.splits == nil || !slices.Equal(p.splits.Options, texts) { // else it keeps the keyboard
		p.splits = widget.NewRadioGroup(texts, nil)
		p.splits.Required = true
	}
	p.splits.Selected = ""
	if at := slices.Index(offered, s.choice); at >= 0 {
		p.splits.Selected = texts[at]
	}
	p.splits.OnChanged = func(text string) { s.choose(offered[slices.Index(texts, text)]) }
	p.splits.Refresh()
	p.all.Add(p.splits)
}

// mostOffered choices are enough to choose from.
const mostOffered = 5

// offeredOf gives the fewest hand-overs, the proposed, the fairest, and some
// between.
func offeredOf(choices []onward.Choice) []int {
	last := len(choices) - 1
	offered := []int{0, last}
	if taken := takenOf(choices); taken >= 0 {
		offered = append(offered, taken)
	}
	for i := 1; i < mostOffered-1; i++ {
		offered = append(offered, i*last/(mostOffered-1))
	}
	slices.Sort(offered)
	return slices.Compact(offered)
}

// choose shows another split.
func (s *Screen) choose(choice int) {
	if s.rest == nil || choice < 0 || choice >= len(s.rest.Choices) || choice == s.choice {
		return
	}
	s.choice = choice
	s.setHandOvers()
	s.side.refresh()
}

func (p *sidePanel) showHandOvers() {
	s := p.screen
	if len(s.day.HandOvers) == 0 {
		return
	}
	p.all.Add(heading(lang.L("Hand over this morning")))
	p.all.Add(listed(s.handOverLines()))
	p.all.Add(container.NewHBox(widget.NewButton(lang.L("Copy the list"), s.copyHandOvers)))
}

func (p *sidePanel) showMoves() {
	s := p.screen
	if s.rest == nil {
		return
	}
	if len(s.rest.Moves) > 0 {
		p.all.Add(heading(lang.L("Better eaten at another meal")))
		moves := make([]string, len(s.rest.Moves))
		for i, move := range s.rest.Moves {
			moves[i] = s.moveText(move)
		}
		p.all.Add(listed(moves))
	}
	if len(s.rest.Gifts) > 0 {
		p.all.Add(heading(lang.L("Give to who is short")))
		gifts := make([]string, len(s.rest.Gifts))
		for i, gift := range s.rest.Gifts {
			gifts[i] = lang.X("gift", "{{.Bag}} of {{.From}} to {{.To}}, {{.Kcal}} kcal; they may eat all of it", map[string]any{
				"Bag": strings.Join(s.codes([]string{gift.Bag}), ""), "From": s.memberName(gift.From), "To": s.memberName(gift.To), "Kcal": written.Number(float64(gift.Kcal), 0)})
		}
		p.all.Add(listed(gifts))
	}
	if moved := s.movedDishes(); moved > 0 {
		p.all.Add(paragraph(written.Counted(moved, prose.Say("One dish is eaten at another meal than its label says."),
			prose.Say("%d dishes are eaten at another meal than their label says.", moved))))
	}
}

// movedDishes counts what is eaten elsewhere by what was decided.
func (s *Screen) movedDishes() int {
	n := 0
	for _, replan := range s.bench.Trip().Progress.Replans {
		n += len(replan.Moves)
	}
	return n
}
