package packing

import (
	"fyne.io/fyne/v2/lang"

	"sumpter/app/look"
	"sumpter/app/written"
	"sumpter/domain/findings"
)

// draw says what a row shows.
func (w *work) draw(r row) rowLook {
	switch r.kind {
	case roundRow:
		return rowLook{kind: r.kind, main: w.roundWords(r.round), note: w.roundLeft(r.round)}
	case cleanRow:
		return rowLook{kind: r.kind, code: lang.L("Clean first"), main: cleanWords(), note: w.apartWords(r.round), noteTone: look.Plum}
	case stationRow:
		return rowLook{kind: r.kind, main: lang.L("Station") + ": " + written.Text(r.station.Name(), w.trip.Units)}
	case foodRow:
		return w.drawFood(r)
	case weighRow:
		return w.drawWeighing(r)
	case bagRow:
		return w.drawBag(r)
	case stowRow:
		return w.drawStow(r)
	case stowedRow:
		return w.drawStowed(r)
	default:
		return rowLook{
			kind: r.kind, main: r.stray.Bag, note: lang.L("Packed, but in the plan no longer: open it and take the food back. Space takes it off the list."),
			noteTone: look.Ochre, tickable: true, ticked: true,
		}
	}
}

func (w *work) drawBag(r row) rowLook {
	bag := r.bag
	l := rowLook{
		kind: r.kind, code: bag.Code, main: w.dishName(bag), tickable: true, ticked: w.isDone(bag), part: w.share(bag) > 0,
		note: joinWords(w.eaterWords(bag), partWords(bag), w.slotWords(bag)), figure: w.mass(bag.Food), aside: w.stationsOf(bag),
	}
	far := len(w.farOffIn(bag)) > 0
	if more := w.difference(bag); more != 0 || far {
		l.aside, l.warns = w.onScaleWords(more, far), far
	}
	if told := allergenWords(bag.Allergens, w.trip.Units); told != "" {
		l.note, l.noteTone = told+" · "+l.note, look.Plum
	}
	if w.outdated(bag) {
		l.note, l.noteTone = lang.L("The plan has changed since it was packed: open it again."), look.Ochre
	}
	return l
}

func (w *work) drawFood(r row) rowLook {
	in, all := w.allIn(r.bulk)
	l := rowLook{
		kind: r.kind, main: w.foodName(r.bulk.Food), figure: w.mass(r.bulk.Total), tickable: true, ticked: in == all, part: in > 0,
		aside: lang.X("packing-into", "bags it goes into: {{.Count}}, still open: {{.Left}}", data{"Count": all, "Left": all - in}),
	}
	if told := allergenWords(w.foodAllergens(r.bulk.Food), w.trip.Units); told != "" {
		l.note, l.noteTone = told, look.Plum
	}
	if aside := w.setAside(r); aside != "" {
		l.note, l.noteTone = aside, look.Plum
	}
	return l
}

// setAside is what the plan says of a food that is used again in a later
// round, which must be kept clean for it.
func (w *work) setAside(r row) string {
	for _, finding := range w.plan.Packing.Findings {
		if finding.Code == "set-aside" && finding.Place.Food == r.bulk.Food && finding.Severity != findings.Note {
			return written.Text(finding.Remedy, w.trip.Units)
		}
	}
	return ""
}

func (w *work) drawWeighing(r row) rowLook {
	mass, noted := w.weighed(r.bag.Key, r.bulk.Food)
	l := rowLook{
		kind: r.kind, code: r.bag.Code, figure: w.amount(r.bulk.Food, r.weighing.Mass), tickable: true, ticked: w.isIn(r.bag, r.bulk.Food),
		main: w.dishName(r.bag), note: joinWords(w.eaterWords(r.bag), partWords(r.bag), w.slotWords(r.bag)),
	}
	if more := w.beyondScale(r.weighing.Mass, mass); noted && more != 0 {
		l.warns = w.farOff(r.weighing.Mass, mass)
		l.aside = w.onScaleWords(more, l.warns)
	}
	return l
}

func joinWords(words ...string) string {
	text := ""
	for _, word := range words {
		if word != "" && text != "" {
			text += " · "
		}
		text += word
	}
	return text
}
