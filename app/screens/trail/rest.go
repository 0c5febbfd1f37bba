package trail

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/written"
	"sumpter/domain/onward"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
)

// showRest says how the rest now stands: who went home, how much of each day
// is left, what should be eaten elsewhere, and whose bags are free.
func (p *sidePanel) showRest() {
	s := p.screen
	for _, d := range s.bench.Trip().Progress.Departures {
		id := d.Member
		back := widget.NewButton(lang.L("Stays after all"), func() { s.stay(id) })
		p.all.Add(container.NewBorder(nil, nil, nil, back, paragraph(lang.X("gone-home", "{{.Name}} is not there from day {{.Day}} on.", map[string]any{"Name": s.memberName(id), "Day": d.Day}))))
	}
	if s.rest == nil {
		return
	}
	p.all.Add(heading(lang.L("What is left")))
	p.all.Add(paragraph(lang.X("lasts", "The packs hold food for {{.Full}} days; for {{.Most}} at 90 % of the need, for {{.Some}} at 80 %. It has to last {{.Until}} days.", map[string]any{
		"Full": oneFigure(s.rest.Lasts.Full), "Most": oneFigure(s.rest.Lasts.Most), "Some": oneFigure(s.rest.Lasts.Some), "Until": s.rest.Lasts.UntilFood})))
	if s.rest.Missing.Bags > 0 {
		p.all.Add(paragraph(lang.X("rest-missing", "Not there: {{.Bags}} bags with {{.Food}}.", map[string]any{"Bags": s.rest.Missing.Bags, "Food": written.Quantity(s.rest.Missing.Food, s.bench.Units())})))
	}
	p.all.Add(newShares(s.rest.Days))
	p.showMoves()
	p.showSpare()
	for _, finding := range s.rest.Findings {
		p.all.Add(findingRow(finding, s.bench.Units()))
	}
}

func (p *sidePanel) showMoves() {
	s := p.screen
	if len(s.rest.Moves) > 0 {
		p.all.Add(heading(lang.L("Better eaten at another meal")))
		for _, move := range s.rest.Moves {
			p.all.Add(paragraph(s.moveText(move)))
		}
		take := widget.NewButton(lang.L("Take over these meals"), s.takeOver)
		take.Importance = widget.HighImportance
		p.all.Add(container.NewHBox(take))
	}
	if moved := len(s.bench.Trip().Progress.Moves); moved > 0 {
		p.all.Add(container.NewBorder(nil, nil, nil, widget.NewButton(lang.L("As on the labels"), s.asPacked),
			paragraph(lang.X("moved-bags", "{{.Count}} bags are eaten at another meal than their label says.", map[string]any{"Count": moved}))))
	}
}

// moveText says what moves where, by the codes on the bags.
func (s *Screen) moveText(move onward.Move) string {
	name := "–"
	if recipe := s.bench.Trip().Recipe(move.Recipe); recipe != nil {
		name = recipe.Name
	}
	return lang.X("move-dish", "{{.Dish}} ({{.Group}}, {{.Bags}}): from {{.Meal}} of day {{.Day}} to {{.ToMeal}} of day {{.ToDay}}", map[string]any{
		"Dish": name, "Group": s.groupName(move.Group), "Bags": strings.Join(s.codes(move.Bags), ", "),
		"Meal": lang.L(string(move.Meal)), "Day": move.Day, "ToMeal": lang.L(string(move.ToMeal)), "ToDay": move.ToDay})
}

// codes gives what stands on the labels of bags.
func (s *Screen) codes(keys []string) []string {
	list := make([]string, 0, len(keys))
	if p := s.bench.Plan(); p != nil {
		for i := range p.Bags.Bags {
			if slices.Contains(keys, p.Bags.Bags[i].Key) {
				list = append(list, p.Bags.Bags[i].Code)
			}
		}
	}
	return list
}

func (p *sidePanel) showSpare() {
	s := p.screen
	if len(s.rest.Spare) == 0 {
		return
	}
	p.all.Add(heading(lang.L("Bags of those who went home")))
	for _, spare := range s.rest.Spare {
		var names []string
		for _, id := range spare.MayEat {
			names = append(names, s.memberName(id))
		}
		who := lang.L("nobody else")
		if len(names) > 0 {
			who = strings.Join(names, ", ")
		}
		p.all.Add(paragraph(lang.X("spare-bag", "{{.Bag}}, packed for {{.Of}}. By allergy and diet it may be eaten by: {{.Who}}.", map[string]any{
			"Bag": strings.Join(s.codes([]string{spare.Bag}), ""), "Of": s.memberName(spare.Of), "Who": who})))
	}
}

func (p *sidePanel) showHandOvers() {
	if len(p.screen.day.HandOvers) == 0 {
		return
	}
	p.all.Add(heading(lang.L("Hand over this morning")))
	for _, line := range p.screen.handOverLines() {
		p.all.Add(paragraph(line))
	}
	p.all.Add(container.NewHBox(widget.NewButton(lang.L("Copy the list"), p.screen.copyHandOvers)))
}

// handOverLines are to be read aloud: one line for each giver and taker.
func (s *Screen) handOverLines() []string {
	type pair struct{ from, to trip.MemberID }
	var order []pair
	things := map[pair][]trail.HandOver{}
	for _, h := range s.day.HandOvers {
		k := pair{h.From, h.To}
		if things[k] == nil {
			order = append(order, k)
		}
		things[k] = append(things[k], h)
	}
	slices.SortStableFunc(order, func(a, b pair) int {
		return strings.Compare(s.memberName(a.from)+"\x00"+s.memberName(a.to), s.memberName(b.from)+"\x00"+s.memberName(b.to))
	})
	var lines []string
	for _, k := range order {
		var names []string
		for _, h := range things[k] {
			names = append(names, s.side.itemName(h.Item))
		}
		lines = append(lines, lang.X("gives", "{{.From}} gives {{.To}}: {{.What}}", map[string]any{
			"From": s.memberName(k.from), "To": s.memberName(k.to), "What": strings.Join(names, ", ")}))
	}
	return lines
}

// copyHandOvers puts the list where it can be pasted into a message.
func (s *Screen) copyHandOvers() {
	lines := s.handOverLines()
	if len(lines) == 0 {
		s.bench.Say(lang.L("Nothing changes hands this morning."))
		return
	}
	s.bench.Clipboard().SetContent(strings.Join(lines, "\n"))
	s.bench.Say(lang.L("The list is copied: paste it into a message."))
}

// newShares shows what part of each day's planned food is there, as a bar and
// a figure.
func newShares(days []onward.Day) *widget.Form {
	form := widget.NewForm()
	for _, day := range days {
		bar := widget.NewProgressBar()
		bar.Max = 1
		bar.SetValue(min(1, day.Share()))
		text := written.Number(100*day.Share(), 0) + " %"
		bar.TextFormatter = func() string { return text }
		form.Append(dayNumber(day.Number), bar)
	}
	return form
}

func oneFigure(days float64) string { return written.Number(days, 1) }
