package resupply

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// about tells of the chosen point: what is in its box, what is wrong, and
// what happens if the box does not come.
type about struct {
	bench   *bench.Bench
	name    *look.Text
	rows    []func() fyne.CanvasObject
	list    *bench.Column
	content fyne.CanvasObject
}

func newAbout(b *bench.Bench) *about {
	a := &about{bench: b, name: look.NewHeading("").Yielding()}
	list, scroll := bench.NewScrolled(b.Document.AfterFrame)
	a.list = list
	a.content = container.NewBorder(bench.Inset(a.name), nil, nil, nil, scroll)
	return a
}

func (a *about) show(id trip.PointID) {
	a.rows = nil
	a.tell(id)
	rows := a.rows
	a.list.Set(len(rows), func(i int) fyne.CanvasObject { return rows[i]() })
}

func (a *about) tell(id trip.PointID) {
	point, p := a.bench.Trip().Point(id), a.bench.Plan()
	if point == nil {
		a.name.SetContent("")
		return
	}
	a.name.SetContent(point.Name)
	if point.Use {
		a.box(p, point)
	} else {
		a.say(lang.L("Not used now. Set “Used” to yes, or take a choice at the right that uses it."), look.Quiet)
	}
	for _, finding := range findingsOf(p, id) {
		if finding.Code != "box-not-there" {
			a.finding(finding)
		}
	}
	if point.Notes != "" {
		a.say(point.Notes, look.Quiet)
	}
}

// box tells what is in the box and what if it does not come.
func (a *about) box(p *plan.Plan, point *trip.ResupplyPoint) {
	box := boxOf(p, point.ID)
	if box == nil {
		if p == nil {
			a.say(lang.L("What waits there comes with the plan."), look.Quiet)
		}
		return
	}
	if didNotCome(a.bench.Trip(), point.ID) {
		a.say(lang.L("The box did not come. “On trail” says how it goes on without it."), look.Brick)
	}
	a.say(contents(p, box), look.Ink)
	for _, words := range sendingWords(p, box) {
		a.say(words, look.Ink)
	}
	a.say(strings.Join(parcelWords(p.Trip, box), "\n"), look.Quiet)
	for _, finding := range findingsOf(p, point.ID) {
		if finding.Code == "box-not-there" {
			a.add(func() fyne.CanvasObject { return bench.WrappedHeading(turnBack(box)) })
			a.say(written.Text(finding.What.Then(finding.Remedy), p.Trip.Units), look.Ink)
			for _, paragraph := range eveningWords(p, box) {
				a.say(paragraph, look.Ink)
			}
		}
	}
}

// parcelWords tells each parcel by mass, room and the least carton.
func parcelWords(t *trip.Trip, box *resupply.Box) []string {
	var lines []string
	for i, parcel := range box.Parcels {
		lines = append(lines, lang.X("parcel-tells", "Parcel {{.Number}}: {{.Mass}}, bags: {{.Count}}; carton of {{.Carton}}, as a cube {{.Girth}} {{.Unit}} in length and girth", data{
			"Number": i + 1, "Mass": written.Quantity(parcel.Mass, t.Units), "Count": len(parcel.Bags), "Carton": written.Quantity(parcel.Carton, t.Units),
			"Girth": written.Bare(typed.StatureText(parcel.Girth, t.Units)), "Unit": typed.StatureUnit(t.Units)}))
	}
	return lines
}

// eveningWords tells, a paragraph each, who would have to live on what is left and, evening by
// evening of the leg before, what food is still in the packs, how long it lasts
// for all and for whom it lasts least, and how far it is back.
func eveningWords(p *plan.Plan, box *resupply.Box) []string {
	if box.Leg < 1 || box.Leg >= len(p.Legs) {
		return nil
	}
	var lines []string
	told := "" // of the same people
	before := p.Legs[box.Leg-1]
	for day := before.FirstDay; day <= before.LastDay; day++ {
		short, eaters := trail.IfMissing(p, &trip.Progress{}, *box, day), trail.Eaters(p, *box, day)
		if names := forWhom(p.Trip, eaters); names != told {
			lines, told = append(lines, names), names
		}
		values := data{"Day": day, "Food": written.Quantity(short.LeftFood, p.Trip.Units), "Lasts": written.Number(short.Lasts, 1), "Count": len(eaters), "Back": short.BackDays}
		text := lang.X("evening-left", "Evening of day {{.Day}}: {{.Food}} left, {{.Lasts}} days of food; eaters: {{.Count}}; days back: {{.Back}}.", values)
		if !short.ReachesBack() {
			text = lang.X("evening-short", "Evening of day {{.Day}}: {{.Food}} left, {{.Lasts}} days of food; eaters: {{.Count}}; days back: {{.Back}}, so it does not reach.", values)
		}
		if day < before.LastDay {
			text += " " + leastFar(p.Trip, eaters)
		}
		lines = append(lines, text)
	}
	return lines
}

// forWhom names those who would live on what is left, with what they do not
// eat: then only their own dishes feed them.
func forWhom(t *trip.Trip, eaters []trail.Eater) string {
	var names []string
	for _, e := range eaters {
		if m := t.Member(e.Member); m != nil {
			names = append(names, nameWithDiet(m, t.Units))
		}
	}
	return lang.X("missing-for", "For {{.Names}}. Who has a diet or an allergy has only their own dishes.", data{"Names": strings.Join(names, ", ")})
}

// leastFar names whose own dishes reach least far.
func leastFar(t *trip.Trip, eaters []trail.Eater) string {
	if len(eaters) == 0 {
		return ""
	}
	least := eaters[0]
	for _, e := range eaters {
		if e.Lasts < least.Lasts {
			least = e
		}
	}
	m := t.Member(least.Member)
	if m == nil {
		return ""
	}
	return lang.X("own-dishes", "Own dishes reach least far for {{.Name}}: {{.Days}} days.", data{"Name": nameWithDiet(m, t.Units), "Days": written.Number(least.Lasts, 1)})
}

// nameWithDiet is a member and what they do not eat.
func nameWithDiet(m *trip.Member, system units.System) string {
	var words []string
	for _, diet := range m.Diets {
		words = append(words, bench.DietWord(diet))
	}
	for _, allergy := range m.Allergies {
		words = append(words, lang.X("without-allergen", "no {{.Allergen}}", data{"Allergen": bench.AllergenWord(allergy.Allergen, system)}))
	}
	if len(words) == 0 {
		return m.Name
	}
	return m.Name + " (" + strings.Join(words, ", ") + ")"
}

// contents says which days a box feeds, its mass, fees and fuel.
func contents(p *plan.Plan, box *resupply.Box) string {
	words := []string{}
	if box.Leg < len(p.Legs) {
		leg := p.Legs[box.Leg]
		words = append(words, lang.X("box-days", "Food for days {{.From}} to {{.To}}", data{"From": leg.FirstDay, "To": leg.LastDay}))
	}
	words = append(words, massLine(p.Trip, box), written.Quantity(box.Volume, p.Trip.Units), lang.L("fees")+" "+written.Price(box.Fees, p.Trip.Currency))
	text := strings.Join(words, ", ") + "."
	switch {
	case len(box.Fuel) == 1 && box.FuelBoughtThere:
		text += " " + lang.L("One fuel container is bought there.")
	case len(box.Fuel) == 1:
		text += " " + lang.L("One fuel container must get there too.")
	case len(box.Fuel) == 0:
		text += " " + lang.L("No fuel is taken on there.")
	case box.FuelBoughtThere:
		text += " " + lang.X("fuel-bought", "{{.Count}} fuel containers are bought there.", data{"Count": len(box.Fuel)})
	default:
		text += " " + lang.X("fuel-sent", "{{.Count}} fuel containers must get there too.", data{"Count": len(box.Fuel)})
	}
	return text
}

// turnBack heads what happens if a box does not come with the last evening on
// which turning back is still possible.
func turnBack(box *resupply.Box) string {
	if box.TurnBackBy == 0 {
		return lang.L("If the box does not come: no evening to turn back on")
	}
	return lang.X("turn-back", "If the box does not come: turn back by the evening of day {{.Day}}", data{"Day": box.TurnBackBy})
}

// add has something made below the rest.
func (a *about) add(row func() fyne.CanvasObject) { a.rows = append(a.rows, row) }

func (a *about) say(text string, tone fyne.ThemeColorName) {
	a.add(func() fyne.CanvasObject {
		size := look.Body
		if tone == look.Quiet {
			size = look.Caption
		}
		return look.NewParagraph(text, size, tone)
	})
}

func (a *about) finding(finding findings.Finding) {
	a.add(func() fyne.CanvasObject {
		word := look.NewText(lang.L(string(finding.Severity)), look.Caption, look.ToneOf(finding.Severity))
		return container.NewHBox(look.NewSign(finding.Severity), word)
	})
	a.say(written.Text(finding.What, a.bench.Units()), look.Ink)
	a.say(written.Text(finding.Remedy, a.bench.Units()), look.Quiet)
}
