package trail

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/onward"
	"sumpter/domain/prose"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
)

// showRest says how the rest now stands: how far the food reaches, how much of
// each day's need is there, whose bags are free.
func (p *sidePanel) showRest() {
	s := p.screen
	if s.rest == nil {
		return
	}
	p.all.Add(heading(lang.L("What is left")))
	var lasts []string
	for _, l := range s.rest.Lasts {
		lasts = append(lasts, lang.X("lasts-group", "{{.Group}}: the packs hold food for {{.Full}} days; for {{.Most}} at 90 % of the need, for {{.Some}} at 80 %. Days it has to last: {{.Until}}.", map[string]any{
			"Group": s.groupName(l.Group), "Full": oneFigure(l.Full), "Most": oneFigure(l.Most), "Some": oneFigure(l.Some), "Until": l.UntilFood}))
	}
	if s.rest.Missing.Bags > 0 {
		lasts = append(lasts, written.Text(prose.Plural(s.rest.Missing.Bags, prose.Say("Not there: one bag with %s.", s.rest.Missing.Food),
			prose.Say("Not there: %d bags with %s.", s.rest.Missing.Bags, s.rest.Missing.Food)), s.bench.Units()))
	}
	p.all.Add(listed(lasts))
	p.all.Add(s.newShares())
	p.showUnticked()
	p.showSpare()
	for _, finding := range s.rest.Findings {
		p.all.Add(findingRow(finding, s.bench.Units()))
	}
}

// moveText says what moves where, by the codes on the bags.
func (s *Screen) moveText(move onward.Move) string {
	name := "–"
	if recipe := s.bench.Trip().Recipe(move.Recipe); recipe != nil {
		name = recipe.Name
	}
	words := map[string]any{
		"ToGroup": s.groupName(move.ToGroup), "Dish": name, "Group": s.groupName(move.Group), "Bags": strings.Join(s.codes(move.Bags), ", "),
		"Meal": lang.L(string(move.Meal)), "Day": move.Day, "ToMeal": lang.L(string(move.ToMeal)), "ToDay": move.ToDay}
	if move.ToGroup != move.Group {
		return lang.X("move-dish-group", "{{.Dish}} ({{.Group}}, {{.Bags}}): from {{.Meal}} of day {{.Day}} to {{.ToGroup}}, {{.ToMeal}} of day {{.ToDay}}; all of them may eat it", words)
	}
	return lang.X("move-dish", "{{.Dish}} ({{.Group}}, {{.Bags}}): from {{.Meal}} of day {{.Day}} to {{.ToMeal}} of day {{.ToDay}}", words)
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
	bags := make([]string, len(s.rest.Spare))
	for i, spare := range s.rest.Spare {
		var names []string
		for _, id := range spare.MayEat {
			names = append(names, s.memberName(id))
		}
		who := lang.L("nobody else")
		if len(names) > 0 {
			who = strings.Join(names, ", ")
		}
		bags[i] = lang.X("spare-bag", "{{.Bag}}, packed for {{.Of}}. By allergy and diet it may be eaten by: {{.Who}}.", map[string]any{
			"Bag": strings.Join(s.codes([]string{spare.Bag}), ""), "Of": s.memberName(spare.Of), "Who": who})
	}
	p.all.Add(listed(bags))
}

// showUnticked names bags that packing night did not close, to be set right
// all at once; a single one is said to be not packed in the table.
func (p *sidePanel) showUnticked() {
	s := p.screen
	for _, end := range s.bench.Trip().Progress.Ends {
		if end.End == trip.NotPacked {
			back := widget.NewButton(lang.L("Still there"), func() { s.packedAfterAll(end.Bag) })
			p.all.Add(container.NewBorder(nil, nil, nil, back, paragraph(strings.Join(s.codes([]string{end.Bag}), "")+": "+lang.L(string(trip.NotPacked)))))
		}
	}
	keys := s.rest.Unticked
	if len(keys) == 0 {
		return
	}
	p.all.Add(heading(lang.L("Not ticked on packing night")))
	codes := s.codes(keys)
	more := ""
	if len(codes) > mostCodes {
		more = " …"
	}
	p.all.Add(paragraph(strings.Join(codes[:min(mostCodes, len(codes))], ", ") + more))
	p.all.Add(container.NewHBox(
		widget.NewButton(lang.L("They are all here"), func() { s.tickAll(keys) }),
		widget.NewButton(lang.L("None was packed"), func() { s.nonePacked(keys) })))
}

// mostCodes are enough to see what is meant.
const mostCodes = 24

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

// newShares shows what part of the need of each day is there, as a bar and in
// words, and who gets least of theirs.
func (s *Screen) newShares() *widget.Form {
	form := widget.NewForm()
	for _, day := range s.rest.Days {
		share, least, who := day.OfNeed()
		text := lang.X("share-of-need", "{{.Share}} % of the need, least {{.Name}} {{.Least}} %", map[string]any{
			"Share": written.Number(100*share, 0), "Name": s.memberName(who), "Least": written.Number(100*least, 0)})
		words := look.NewText(text, look.Caption, look.Ink).Yielding()
		form.Append(dayNumber(day.Number), container.NewVBox(words, newShareBar(share)))
	}
	return form
}

func oneFigure(days float64) string { return written.Number(days, 1) }
