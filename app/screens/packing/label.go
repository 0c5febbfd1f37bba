package packing

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/bags"
	"sumpter/domain/packing"
	"sumpter/domain/trip"
)

// label is the chosen bag at the side: what its label says, where it goes, and
// a field for each food on the scale; or a chosen food with all its bags.
type label struct {
	screen  *Screen
	row     row // what is shown
	code    *look.Text
	into    *look.Paragraph
	state   *look.Paragraph
	dish    *look.Paragraph
	danger  *look.Paragraph
	frame   *look.DoubleFrame
	free    *look.Paragraph
	scale   *look.Text
	lines   []*contentLine
	list    *fyne.Container
	farOff  *look.Paragraph // asks to look again at a weight
	effect  *look.Paragraph
	cook    *look.Paragraph
	bagType *look.Paragraph
	tick    *widget.Button
	body    *fyne.Container // all below the code
	content *fyne.Container
}

func newLabel(s *Screen) *label {
	l := &label{
		screen: s, code: look.NewText("", look.Board, look.Ink), into: toned(look.Spruce), state: wrapped(),
		dish: wrapped(), free: wrapped(), effect: wrapped(), cook: wrapped(), bagType: wrapped(), danger: toned(look.Plum), farOff: toned(look.Ochre),
		scale: look.NewText("", look.Caption, look.Quiet), list: container.NewVBox(),
	}
	l.code.Bold = true
	l.into.Step, l.dish.Step = look.Figure, look.Lead
	l.frame = look.NewDoubleFrame(look.Plum, l.danger)
	l.bagType.Step, l.state.Step, l.free.Step = look.Caption, look.Caption, look.Caption
	l.tick = widget.NewButton("", func() { s.tick(l.row) })
	l.tick.Importance = widget.HighImportance
	head := container.NewBorder(nil, nil, bench.Inset(l.code), container.NewCenter(l.tick))
	l.body = container.NewVBox(l.into, l.dish, l.frame, l.free, bench.Inset(l.scale, l.list), l.farOff, l.effect, l.cook, l.state, l.bagType)
	l.content = container.NewBorder(head, nil, nil, nil, bench.NewScroll(l.body))
	l.content.Hide()
	return l
}

func wrapped() *look.Paragraph { return look.NewParagraph("", look.Body, look.Ink) }

// toned is a bold text in a colour that wraps.
func toned(tone fyne.ThemeColorName) *look.Paragraph {
	text := look.NewParagraph("", look.Body, tone)
	text.Bold = true
	return text
}

// show shows the bag or the food of a row.
func (l *label) show(r row) {
	l.row = r
	switch {
	case r.bag != nil:
		if r.kind != stowedRow {
			l.row.kind = bagRow
		}
		l.showBag(r.bag)
	case r.bulk != nil:
		l.showFood(r)
	default:
		l.content.Hide()
		return
	}
	l.content.Show()
	l.body.Refresh()
}

func (l *label) showBag(bag *bags.Bag) {
	w := l.screen.work
	l.code.SetContent(bag.Code)
	l.into.SetContent(w.into(bag.Key))
	l.state.SetContent(joinWords(w.stateWords(bag), w.roundWords(w.round[bag.Key])))
	l.dish.SetContent(w.slotWords(bag) + "\n" + joinWords(w.dishName(bag), w.eaterWords(bag), partWords(bag)))
	l.showDanger(allergenWords(bag.Allergens, w.trip.Units))
	l.scale.SetContent(lang.X("packing-scale", "Weigh in, and write what the scale shows ({{.Unit}})", data{"Unit": l.unit()}))
	l.scale.Show()
	l.showContents(bag)
	setOrHide(l.farOff, w.farOffWords(bag))
	setOrHide(l.effect, w.effectWords(bag))
	setOrHide(l.cook, w.cookWords(bag))
	setOrHide(l.bagType, w.bagWords(bag))
	l.tick.SetText(l.tickWords(bag))
}

// tickWords says what Space does with a bag.
func (l *label) tickWords(bag *bags.Bag) string {
	w := l.screen.work
	switch {
	case l.row.kind == stowedRow && w.stowed(bag):
		return lang.L("Take out again (Space)")
	case l.row.kind == stowedRow:
		return lang.L("Check in (Space)")
	case w.isDone(bag):
		return lang.L("Open again (Space)")
	default:
		return lang.L("Tick off (Space)")
	}
}

// showFood shows a food that is taken out once for all its bags.
func (l *label) showFood(r row) {
	w := l.screen.work
	in, all := w.allIn(r.bulk)
	l.code.SetContent(w.mass(r.bulk.Total))
	l.into.SetContent(w.foodName(r.bulk.Food))
	l.state.SetContent(written.Text(packing.StationOf(w.foods[r.bulk.Food]).Name(), w.trip.Units))
	l.dish.SetContent(lang.X("packing-into", "bags it goes into: {{.Count}}, still open: {{.Left}}", data{"Count": all, "Left": all - in}))
	l.showDanger(allergenWords(w.foodAllergens(r.bulk.Food), w.trip.Units))
	l.scale.Hide()
	l.showContents(&bags.Bag{})
	setOrHide(l.farOff, "")
	setOrHide(l.effect, w.setAside(r))
	setOrHide(l.cook, "")
	setOrHide(l.bagType, "")
	l.tick.SetText(lang.L("Tick off all its bags (Space)"))
	if in == all {
		l.tick.SetText(lang.L("Take out of all its bags (Space)"))
	}
}

func (l *label) showDanger(told string) {
	if told == "" {
		l.frame.Hide()
		setOrHide(l.free, lang.L("No declared allergen, as far as the foods say. Read the packages."))
		return
	}
	setOrHide(l.free, "")
	l.danger.SetContent(lang.L("Allergens") + ": " + told)
	l.frame.Show()
}

func setOrHide(text *look.Paragraph, content string) {
	text.SetContent(content)
	if content == "" {
		text.Hide()
	} else {
		text.Show()
	}
}

// showContents fills a line for each food, from lines used again and again.
func (l *label) showContents(bag *bags.Bag) {
	for len(l.lines) < len(bag.Contents) {
		line := newContentLine(l)
		l.lines = append(l.lines, line)
		l.list.Add(line.content)
	}
	for i, line := range l.lines {
		if i < len(bag.Contents) {
			line.show(bag, bag.Contents[i])
			line.content.Show()
		} else {
			line.content.Hide()
		}
	}
}

// next gives the keyboard to the field after one, or back to the list.
func (l *label) next(after *contentLine) {
	for i, line := range l.lines {
		if line == after && i+1 < len(l.lines) && l.lines[i+1].content.Visible() {
			l.screen.focus(l.lines[i+1].entry)
			return
		}
	}
	l.screen.focus(l.screen.list)
}

// focusFood gives the keyboard to the field of a food, the first if 0.
func (l *label) focusFood(food trip.FoodID) {
	for _, line := range l.lines {
		if line.content.Visible() && (food == 0 || line.food == food) {
			l.screen.focus(line.entry)
			return
		}
	}
}

// commit stores fields that are being typed into.
func (l *label) commit() bool {
	for _, line := range l.lines {
		if line.content.Visible() && !line.store() {
			return false
		}
	}
	return true
}

func (w *work) stateWords(bag *bags.Bag) string {
	switch {
	case w.outdated(bag):
		return lang.L("packed for an older plan")
	case w.isDone(bag):
		return lang.L("packed")
	case w.share(bag) > 0:
		return lang.L("begun")
	default:
		return lang.L("to be packed")
	}
}

// effectWords says what other weights than planned change for who eats it.
func (w *work) effectWords(bag *bags.Bag) string {
	planned, packed := w.kcal(bag)
	more := w.difference(bag)
	if !w.differs(bag) || bag.Eaters < 1 {
		return ""
	}
	each := float64(packed-planned) / float64(bag.Eaters)
	words := data{
		"Mass": w.signed(more), "Now": fmt.Sprintf("%.0f", float64(packed)/float64(bag.Eaters)),
		"Planned": fmt.Sprintf("%.0f", float64(planned)/float64(bag.Eaters)), "Change": signed(each), "Share": "–",
	}
	if planned > 0 {
		words["Share"] = signed(100*float64(packed-planned)/float64(planned)) + " %"
	}
	return lang.X("packing-effect", "{{.Mass}} in this bag: {{.Now}} kcal for each eater instead of {{.Planned}} ({{.Change}} kcal, {{.Share}}).", words)
}

// bagWords says what it is packed in.
func (w *work) bagWords(bag *bags.Bag) string {
	words := bag.Type
	if bag.Type == trip.AsBought {
		words = lang.L("stays as bought")
	}
	if bag.Double {
		words += ", " + lang.L("double-bagged")
	}
	if bag.Crushable {
		words += ", " + lang.L("breaks easily")
	}
	if bag.Melts {
		words += ", " + lang.L("melts in heat")
	}
	volume := written.Quantity(bag.Volume, w.trip.Units)
	if !bag.VolumeKnown {
		volume = lang.X("at-most-volume", "at most {{.Volume}}", data{"Volume": volume})
	}
	return joinWords(words, volume, lang.X("packing-with-bag", "{{.Mass}} with its bag", data{"Mass": w.mass(bag.Mass())}))
}
