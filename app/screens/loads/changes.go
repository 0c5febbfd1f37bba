package loads

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/charts"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// changes is the tab of what goes into another pack after a change by hand:
// few hand-overs against a fair load, and one of the choices to take.
type changes struct {
	screen  *Screen
	state   *look.Paragraph
	stay    *widget.Button
	freely  *widget.Button
	take    *widget.Button
	chart   *charts.ChoiceChart
	table   *grid.Grid[int] // places in the choices of the stage
	of      *carry.Choice   // the first of those choices
	title   *look.Text
	moves   *look.Paragraph
	beside  *mornings // the choices
	alone   *mornings // where there is nothing to choose
	pick    *widget.Select
	choice  *fyne.Container
	content fyne.CanvasObject
}

func newChanges(s *Screen) *changes {
	c := &changes{screen: s, state: look.NewParagraph("", look.Body, look.Ink), title: look.NewHeading("").Yielding(), moves: look.NewParagraph("", look.Body, look.Ink)}
	c.stay = widget.NewButton(lang.L("Stay near the packs as they are"), s.stayNear)
	c.freely = widget.NewButton(lang.L("Split freely"), s.splitFreely)
	c.take = widget.NewButton(lang.L("Take this choice (Enter)"), c.takeSelected)
	c.take.Importance = widget.HighImportance
	c.pick = widget.NewSelect(nil, c.pickStage)
	whole := func(value float64) string { return written.Number(value, 0) }
	c.chart = charts.NewChoiceChart(lang.L("things that change packs"), lang.L("heavier than the fairest split"), whole, whole)
	c.table = grid.New(c.columns(), grid.Options[int]{
		Key: func(i int) string { return fmt.Sprint(i) }, OnOpen: c.takeChoice, OnProblem: s.bench.Say, Clipboard: s.bench.Clipboard,
		OnSelect: func(int) { c.showMoves() },
	})
	left := container.NewBorder(nil, container.NewHBox(c.take), nil, nil, container.NewVSplit(c.chart, c.table))
	c.beside, c.alone = newMornings(), newMornings()
	right := container.NewBorder(c.title, nil, nil, nil, bench.NewScroll(container.NewVBox(c.moves, c.beside.content)))
	split := container.NewHSplit(left, right)
	split.Offset = 0.6
	c.choice = container.NewStack(split)
	head := container.NewVBox(
		container.NewBorder(nil, nil, look.NewHeading(lang.L("Few hand-overs or a fair load")), container.NewHBox(c.pick, c.stay, c.freely)),
		c.state)
	c.content = container.NewBorder(head, nil, nil, nil, container.NewStack(c.choice, c.alone.place))
	return c
}

// stage is the stage whose choices are shown.
func (c *changes) stage() *carry.Stage {
	if v := c.screen.view; v != nil {
		return v.stage(c.screen.day)
	}
	return nil
}

func (c *changes) choices() []carry.Choice {
	if stage := c.stage(); stage != nil {
		return stage.Choices
	}
	return nil
}

func (c *changes) show() {
	s := c.screen
	kept := len(s.bench.Trip().Kept) > 0
	onWay := s.view != nil && s.view.rest != nil
	c.showStages()
	bench.SetShown(c.freely, kept && !onWay)
	bench.SetShown(c.stay, !onWay)
	list := c.choices()
	choose := !onWay && kept && len(list) > 0
	bench.SetShown(c.alone.place, !onWay && !choose)
	if onWay {
		bench.SetShown(c.choice, false)
		c.state.SetContent(lang.L("The group is under way: what changes hands each morning, and how few hand-overs are worth how fair a load, is chosen under On trail. The choices here belong to packing night."))
		return
	}
	bench.SetShown(c.choice, choose)
	words := c.stateWords(kept, list)
	if kept && passesLimits(list) {
		words += " " + lang.L("For these days no split was found that keeps every limit. The choices differ in how far they pass limits, too; without your choice they are passed by at most 2 % more than the least that was found. The tab on how fair the split is can raise them.")
	}
	if aside := c.screen.view.asideWords(c.stage()); kept && aside != "" {
		words += " " + aside
	}
	c.state.SetContent(words)
	if !choose {
		c.alone.show(s.view, c.stage())
		return
	}
	c.beside.show(s.view, c.stage())
	rows := make([]int, len(list))
	up, drawable := c.heightOf(list)
	var drawn []charts.Choice
	for i, choice := range list {
		rows[i] = i
		if !drawable {
			continue
		}
		drawn = append(drawn, charts.Choice{
			Name: choiceName(list, i), Across: float64(choice.HandOvers + choice.Must), Up: up.of(choice),
			Chosen: choice.Taken, Tapped: func() { c.takeChoice(i) },
		})
	}
	bench.SetShown(c.chart, len(drawn) > 1)
	c.chart.SetUp(up.name, up.format)
	c.chart.Set(drawn)
	c.table.SetRows(rows)
	if c.of != &list[0] { // of another plan or stretch of days
		c.of = &list[0]
		c.table.SelectKey(fmt.Sprint(takenOf(list)))
	}
	c.showMoves()
}

// showStages offers the stretches of days, where there are several.
func (c *changes) showStages() {
	var names []string
	current := ""
	if v := c.screen.view; v != nil {
		for _, stage := range v.stages() {
			names = append(names, dayRange(stage))
			if stage == c.stage() {
				current = dayRange(stage)
			}
		}
	}
	bench.SetShown(c.pick, len(names) > 1)
	c.pick.Options, c.pick.Selected = names, current
	c.pick.Refresh()
}

func (c *changes) pickStage(name string) {
	v := c.screen.view
	if v == nil {
		return
	}
	for _, stage := range v.stages() {
		if dayRange(stage) == name && stage != c.stage() {
			c.screen.showDay(stage.FirstDay)
			c.show()
			return
		}
	}
}

func (c *changes) stateWords(kept bool, list []carry.Choice) string {
	switch {
	case c.screen.view == nil:
		return lang.L("This comes with the plan.")
	case !kept:
		return lang.L("The split is free: with each edit of the trip anything may go into another pack. Once you give a thing to somebody by hand, or stay near the packs as they are, only what must changes packs, and what nearly the same fairness needs; here you then choose how much.")
	case len(list) == 0:
		return lang.L("Nothing of these days was in a pack before: the split is free.")
	default:
		taken := list[takenOf(list)]
		if c.held() {
			return lang.X("changes-held", "You chose this split, and the plan holds to it. Had to change packs: {{.Must}}; change for a fairer load: {{.Free}}. What comes new into the packs goes where it is fairest.",
				data{"Must": taken.Must, "Free": taken.HandOvers})
		}
		return lang.X("changes-state", "Of what was in the packs before the last change by hand, so many must change packs: {{.Must}}; and so many do for a fairer load: {{.Free}}. Without your choice it is the fewest hand-overs with which the heaviest pack is at most 2 % heavier than in the fairest split.",
			data{"Must": taken.Must, "Free": taken.HandOvers})
	}
}

// asideWords says whose packs the shares of the choices leave out.
func (v *view) asideWords(stage *carry.Stage) string {
	if stage == nil || len(stage.Aside) == 0 {
		return ""
	}
	names := make([]string, len(stage.Aside))
	for i, id := range stage.Aside {
		names[i] = v.memberName(id)
	}
	return bench.AsideWords(names)
}

// held tells whether the leader chose the split of the stage.
func (c *changes) held() bool {
	for _, packs := range c.screen.bench.Trip().Kept {
		if packs.Day == c.stage().FirstDay {
			return slices.ContainsFunc(packs.Things, func(h trip.HandOver) bool { return h.To != 0 })
		}
	}
	return false
}

// takenOf gives the place of the choice the plan follows.
func takenOf(list []carry.Choice) int {
	return max(0, slices.IndexFunc(list, func(x carry.Choice) bool { return x.Taken }))
}

// heavier is how much heavier the heaviest pack is than in the fairest split,
// on the first morning or over the days, whichever is more.
func heavier(choice, fairest carry.Choice) float64 {
	return max(0, overBound(choice.Worst, fairest.Worst), overBound(choice.Mean, fairest.Mean))
}

// choiceName says in a word or two what a choice is.
func choiceName(list []carry.Choice, i int) string {
	switch {
	case i == 0 && list[i].HandOvers == 0 && list[i].Must == 0:
		return lang.L("nothing changes")
	case i == 0 && list[i].HandOvers == 0:
		return lang.L("only what must")
	case i == 0:
		return lang.L("fewest")
	case i == len(list)-1 && list[i].Any():
		return lang.L("least over limits")
	case i == len(list)-1:
		return lang.L("fairest")
	default:
		return ""
	}
}

func (c *changes) columns() []grid.Column[int] {
	at := func(i int) carry.Choice {
		if list := c.choices(); i >= 0 && i < len(list) {
			return list[i]
		}
		return carry.Choice{}
	}
	number := func(title, unit string, width float32, of func(carry.Choice) float64, decimals int) grid.Column[int] {
		return grid.Column[int]{Title: title, Unit: unit, Width: width, Right: true, Text: func(i int) string { return written.Number(of(at(i)), decimals) },
			Compare: func(a, b int) int { return cmp.Compare(of(at(a)), of(at(b))) }}
	}
	return []grid.Column[int]{
		{Title: lang.L("Choice"), Width: 180, Text: func(i int) string { return c.choiceState(i) }},
		number(lang.L("Change packs"), "", 112, func(x carry.Choice) float64 { return float64(x.HandOvers + x.Must) }, 0),
		{Title: lang.L("Over limits"), Width: 112, Text: func(i int) string { return c.passedWords(at(i)) },
			Tone: func(i int) fyne.ThemeColorName { return passedTone(at(i)) }, Compare: func(a, b int) int { return at(a).Passed.Compare(at(b).Passed) }},
		number(lang.L("First morning"), "%", 122, func(x carry.Choice) float64 { return 100 * x.Worst }, 2),
		number(lang.L("Over the days"), "%", 122, func(x carry.Choice) float64 { return 100 * x.Mean }, 2),
	}
}

func (c *changes) choiceState(i int) string {
	list := c.choices()
	if i < 0 || i >= len(list) {
		return ""
	}
	words := []string{choiceName(list, i)}
	if list[i].Taken {
		words = append(words, lang.L("taken"))
	}
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), ", ")
}

// showMoves lists what the selected choice puts into another pack.
func (c *changes) showMoves() {
	i, ok := c.table.Selected()
	stage := c.stage()
	if !ok || stage == nil || i >= len(stage.Choices) {
		c.title.SetContent("")
		c.moves.SetContent("")
		return
	}
	moved := stage.Moved(c.screen.bench.Trip().Kept, i)
	c.title.SetContent(lang.X("moves-title", "Things in another pack: {{.Count}}", data{"Count": len(moved)}))
	c.moves.SetContent(strings.Join(c.screen.view.moveLines(moved, stage.FirstDay), "\n"))
	if stage.Choices[i].Taken {
		c.take.Disable()
	} else {
		c.take.Enable()
	}
}

// moveLines says for each giver and taker what goes from one to the other.
func (v *view) moveLines(moved []trip.HandOver, day int) []string {
	type pair struct{ from, to trip.MemberID }
	things := map[pair][]string{}
	var order []pair
	for _, over := range moved {
		k := pair{over.From, over.To}
		if things[k] == nil {
			order = append(order, k)
		}
		name := carry.ThingOf(over).Key
		if t, there := v.find(string(carry.ThingOf(over).Kind)+" "+name, day); there {
			name = t.title()
		}
		things[k] = append(things[k], name)
	}
	slices.SortFunc(order, func(a, b pair) int {
		return cmp.Or(cmp.Compare(v.memberName(a.from), v.memberName(b.from)), cmp.Compare(v.memberName(a.to), v.memberName(b.to)))
	})
	lines := make([]string, len(order))
	for i, k := range order {
		lines[i] = lang.X("pack-to-pack", "{{.From}} → {{.To}}: {{.What}}", data{"From": v.memberName(k.from), "To": v.memberName(k.to), "What": strings.Join(things[k], ", ")})
	}
	return lines
}

func (c *changes) takeSelected() {
	if i, ok := c.table.Selected(); ok {
		c.takeChoice(i)
	}
}

// takeChoice stores a choice in the trip: the plan then holds to it.
func (c *changes) takeChoice(i int) {
	stage := c.stage()
	if stage == nil || i < 0 || i >= len(stage.Choices) {
		return
	}
	c.table.SelectKey(fmt.Sprint(i))
	if stage.Choices[i].Taken {
		return
	}
	count := stage.Choices[i].HandOvers + stage.Choices[i].Must
	name := written.Counted(count, prose.Say("let one thing change packs"), prose.Say("let %d things change packs", count))
	_ = c.screen.bench.Edit(name, func(on *trip.Trip) error {
		on.Kept = carry.Choose(on.Kept, stage, i)
		return nil
	})
}

// stayNear keeps the packs as they are: later edits move only what they must,
// and what nearly the same fairness needs.
func (s *Screen) stayNear() {
	if s.view == nil || s.way.refuses() {
		return
	}
	packs := s.view.plan.Carry.Packs()
	_ = s.bench.Edit(lang.L("stay near the packs as they are"), func(on *trip.Trip) error {
		on.Kept = packs
		return nil
	})
}

// splitFreely lets the next split put anything anywhere.
func (s *Screen) splitFreely() {
	if s.way.refuses() {
		return
	}
	_ = s.bench.Edit(lang.L("split freely"), func(on *trip.Trip) error {
		on.Kept = nil
		return nil
	})
}

// changesLine says in one line what changed packs, where packs are kept.
func (v *view) changesLine(stage *carry.Stage) string {
	if stage == nil || len(stage.Choices) == 0 || v.rest != nil {
		return ""
	}
	taken := stage.Choices[takenOf(stage.Choices)]
	count := taken.HandOvers + taken.Must
	changed := written.Counted(count, prose.Say("One thing changed packs."), prose.Say("%d things changed packs.", count))
	if len(stage.Choices) == 1 {
		return changed
	}
	return changed + " " + lang.X("changes-offer", "C offers {{.Choices}} choices between few hand-overs and a fair load.", data{"Choices": len(stage.Choices)})
}
