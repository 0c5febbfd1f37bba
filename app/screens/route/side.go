package route

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// dayPanel is what the chosen day asks for: meals from the packs, how long
// the walk takes by which rule, and what to look at.
type dayPanel struct {
	screen  *Screen
	number  int
	name    *look.Text
	time    *look.Paragraph
	meals   map[trip.Meal]*widget.Check
	showing bool // the marks are being set, not clicked
	list    *fyne.Container
	water   *bench.Ledger
	stove   *bench.Ledger
	tabs    *bench.Tabs
	content fyne.CanvasObject
}

// Places of the tabs.
const (
	tabWalk = iota
	tabWater
	tabStove
)

func newDayPanel(s *Screen) *dayPanel {
	p := &dayPanel{screen: s, name: look.NewHeading("").Yielding(), time: look.NewParagraph("", look.Body, look.Ink), meals: map[trip.Meal]*widget.Check{}, list: container.NewVBox()}
	p.water, p.stove = bench.NewLedger(s.bench.Document.AfterFrame), bench.NewLedger(s.bench.Document.AfterFrame)
	row := container.NewGridWithColumns(2)
	for _, meal := range trip.Meals() {
		check := widget.NewCheck(lang.L(string(meal)), func(on bool) { p.setMeal(meal, on) })
		p.meals[meal] = check
		row.Add(check)
	}
	walk := bench.NewScroll(container.NewVBox(
		p.time, bench.Inset(look.NewText(lang.L("Eaten from the packs"), look.Caption, look.Quiet)), row, p.list))
	p.tabs = bench.NewTabs(
		container.NewTabItem(lang.L("Walk"), walk),
		container.NewTabItem(lang.L("Water"), p.water),
		container.NewTabItem(lang.L("Stove"), p.stove),
	)
	p.tabs.OnSelected = func(*container.TabItem) { p.showTab() }
	p.content = container.NewBorder(bench.Inset(p.name), nil, nil, nil, p.tabs)
	return p
}

// show shows a day.
func (p *dayPanel) show(number int) {
	day := p.screen.dayOf(number)
	if day == nil {
		return
	}
	p.number = number
	name := fmt.Sprintf("%s %d, %s", lang.L("Day"), number, bench.DateWords(p.screen.bench.Trip().DateOf(number)))
	p.name.SetContent(name)
	p.time.SetContent(p.timeText(day))
	p.showing = true
	for meal, check := range p.meals {
		check.SetChecked(hasMeal(day, meal))
	}
	p.showing = false
	p.list.RemoveAll()
	for _, finding := range routeFindings(p.screen.bench, number) {
		p.list.Add(findingRow(finding, p.screen.bench.Units()))
	}
	p.showTab()
}

// showTab fills only the tab that is seen.
func (p *dayPanel) showTab() {
	switch p.tabs.SelectedIndex() {
	case tabWater:
		p.water.Set(p.waterEntries())
	case tabStove:
		p.stove.Set(p.stoveEntries())
	}
}

// timeText says where the hours of the walk come from.
func (p *dayPanel) timeText(day *trip.Day) string {
	walk := p.screen.walk(p.number)
	if walk.Hours <= 0 {
		return lang.L("No walk: enter distance, ascent and descent.")
	}
	data := map[string]any{
		"Hours": hours(walk.Hours), "Tobler": hours(walk.ToblerHours), "Stops": hours(walk.StopHours),
		"Party": written.AtMost(p.screen.bench.Trip().Settings.PartyFactor, 2),
	}
	if day.MovingHours.Known() {
		return lang.X("time-given", "{{.Hours}} h on the move, as you entered; Tobler's rule says {{.Tobler}} h. Stops {{.Stops}} h more. Clear the cell to have the time reckoned.", data)
	}
	return lang.X("time-reckoned", "{{.Hours}} h on the move by Naismith and Langmuir, {{.Tobler}} h by Tobler, both times {{.Party}} for the party. Stops {{.Stops}} h more. Snow, heat, height and children take longer.", data)
}

func (p *dayPanel) setMeal(meal trip.Meal, on bool) {
	if p.showing {
		return
	}
	number := p.number
	name := lang.X("edit-day", "change {{.What}} of day {{.Day}}", map[string]any{"What": lang.L("Meals from the packs"), "Day": number})
	_ = p.screen.bench.Edit(name, func(t *trip.Trip) error {
		day := &t.Days[number-1]
		var meals []trip.Meal
		for _, known := range trip.Meals() {
			if known == meal && on || known != meal && hasMeal(day, known) {
				meals = append(meals, known)
			}
		}
		day.Meals = meals
		return nil
	})
}

// routeFindings lists what the plan says of the way, on one day or, for 0, on
// all.
func routeFindings(b *bench.Bench, day int) []findings.Finding {
	p := b.Plan()
	if p == nil {
		return nil
	}
	var list []findings.Finding
	for _, finding := range p.Findings {
		at := finding.Place
		if at.Day == 0 || at.Member != 0 || at.Food != 0 || at.Recipe != 0 || finding.Stage != findings.Needs && finding.Code != "dry-camp" {
			continue
		}
		if day == at.Day || day == 0 && finding.Severity != findings.Note {
			list = append(list, finding)
		}
	}
	return list
}

// findingRow shows a finding with its sign, word and remedy.
func findingRow(finding findings.Finding, system units.System) fyne.CanvasObject {
	words := look.NewParagraph(lang.L(string(finding.Severity))+": "+written.Text(finding.What.Then(finding.Remedy), system), look.Caption, look.Ink)
	return container.NewBorder(nil, nil, container.NewVBox(look.NewSign(finding.Severity)), nil, words)
}
