package resupply

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
)

// about tells of the chosen point: what is in its box, what is wrong, and
// what happens if the box does not come.
type about struct {
	bench   *bench.Bench
	name    *look.Text
	list    *fyne.Container
	content fyne.CanvasObject
}

func newAbout(b *bench.Bench) *about {
	a := &about{bench: b, name: look.NewHeading("").Yielding(), list: container.NewVBox()}
	a.content = container.NewBorder(bench.Inset(a.name), nil, nil, nil, bench.NewScroll(a.list))
	return a
}

func (a *about) show(id trip.PointID) {
	a.list.Objects = nil
	point, p := a.bench.Trip().Point(id), a.bench.Plan()
	defer a.list.Refresh()
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
	a.say(contents(p, box), look.Ink)
	for _, words := range sendingWords(p, box) {
		a.say(words, look.Ink)
	}
	var parcels []string
	for i, parcel := range box.Parcels {
		parcels = append(parcels, fmt.Sprintf("%s %d: %s, %s, %d %s", lang.L("Parcel"), i+1, written.Quantity(parcel.Mass, p.Trip.Units), written.Quantity(parcel.Volume, p.Trip.Units), len(parcel.Bags), lang.L("bags")))
	}
	if len(parcels) > 1 {
		a.say(strings.Join(parcels, "\n"), look.Quiet)
	}
	for _, finding := range findingsOf(p, point.ID) {
		if finding.Code == "box-not-there" {
			a.list.Add(bench.WrappedHeading(turnBack(box)))
			a.say(written.Text(finding.What.Then(finding.Remedy), p.Trip.Units), look.Ink)
		}
	}
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

func (a *about) say(text string, tone fyne.ThemeColorName) {
	label := widget.NewLabel(text)
	label.Wrapping = fyne.TextWrapWord
	if tone == look.Quiet {
		label.SizeName, label.Importance = theme.SizeNameCaptionText, widget.LowImportance
	}
	a.list.Add(label)
}

func (a *about) finding(finding findings.Finding) {
	word := look.NewText(lang.L(string(finding.Severity)), look.Caption, look.ToneOf(finding.Severity))
	a.list.Add(container.NewHBox(look.NewSign(finding.Severity), word))
	a.say(written.Text(finding.What, a.bench.Units()), look.Ink)
	a.say(written.Text(finding.Remedy, a.bench.Units()), look.Quiet)
}
