package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// side is everything about the slot under the cursor: what it serves, and
// what else it could.
type side struct {
	s         *Screen
	k         slot
	title     *look.Text
	under     *look.Text
	lock      *widget.Button
	keep      *widget.Button
	tabs      *bench.Tabs
	meal      *container.TabItem
	other     *container.TabItem
	page      *fyne.Container
	rest      []fyne.CanvasObject // of the page, still to be filled in
	held      bool                // the page is filled in little by little
	stack     *paragraphs
	scroll    *bench.Scroll
	chooser   *chooser
	content   fyne.CanvasObject
	eatersOf  trip.RecipeID  // the dish whose eaters are being chosen
	accepting findings.Place // the danger that is being taken on
	form      *acceptForm
}

func newSide(s *Screen) *side {
	d := &side{s: s, title: look.NewHeading("").Yielding(), under: look.NewText("", look.Caption, look.Quiet).Yielding(), stack: &paragraphs{}}
	d.chooser = newChooser(s)
	button := func(word string, do func()) *widget.Button { return widget.NewButton(word, do) }
	d.lock = button(lang.L("Lock"), s.onSlot(s.lock))
	d.keep = button(lang.L("Keep"), s.onSlot(s.keep))
	buttons := bench.Row(d.keep, d.lock, button(lang.L("Clear"), s.onSlot(s.clear)),
		button(lang.L("Swap…"), func() { s.wait(swapping) }), button(lang.L("Move…"), func() { s.wait(moving) }),
		button(lang.L("Copy…"), func() { s.wait(copying) }))
	d.page = container.New(d.stack)
	d.scroll = bench.NewScroll(d.page)
	d.stack.grown = d.scroll.Refresh
	d.meal = container.NewTabItem(lang.L("This meal"), d.scroll)
	d.other = container.NewTabItem(lang.L("Choose a dish"), d.chooser.content)
	d.tabs = bench.NewTabs(d.meal, d.other)
	d.tabs.OnSelected = func(*container.TabItem) { d.show(d.k) }
	d.content = container.New(layout.NewCustomPaddedLayout(0, 0, look.Space, 0),
		bench.Headed(d.tabs, bench.Inset(d.title, d.under), buttons))
	return d
}

// show shows a slot; a form that is being filled in stays while it is about
// the same thing.
func (d *side) show(k slot) {
	if k != d.k {
		d.k, d.eatersOf, d.accepting, d.form = k, 0, findings.Place{}, nil
		d.scroll.ScrollToTop()
	}
	o := d.s.seen
	d.title.SetContent(d.heading())
	d.under.SetContent(d.stateWords())
	if o.locked(k) {
		d.lock.SetText(lang.L("Unlock"))
	} else {
		d.lock.SetText(lang.L("Lock"))
	}
	show(d.keep, o.proposal(k) != nil)
	if d.tabs.Selected() == d.other {
		d.chooser.show(k)
		return
	}
	d.chooser.stop()
	d.page.Objects, d.rest = d.sections(), nil
	if d.held {
		d.page.Objects, d.rest = nil, d.page.Objects
	}
	d.stack.width, d.stack.height = d.scroll.Size().Width, 0
	d.page.Refresh()
}

// Hold keeps the page empty until it is filled in.
func (d *side) Hold() { d.held, d.page.Objects = true, nil }

// Fill fills in the next section of the page and tells whether there are more.
func (d *side) Fill() bool {
	if len(d.rest) > 0 {
		d.page.Objects, d.rest = append(d.page.Objects, d.rest[0]), d.rest[1:]
		d.page.Layout.Layout(d.page.Objects, d.page.Size())
	}
	d.held = len(d.rest) > 0
	return d.held
}

func (d *side) heading() string {
	t := d.s.seen.trip
	text := mealTitle(d.k.meal) + ", " + lang.L("day") + " " + bareNumber(d.k.day)
	if date := t.DateOf(d.k.day); date.IsSet() {
		text += ", " + bench.DateWords(date)
	}
	return text
}

func eatersWords(n int) string {
	return written.Counted(n, prose.Say("one eats"), prose.Say("%d eat", n))
}

// stateWords says in one line whose slot it is and how it came about.
func (d *side) stateWords() string {
	o, k := d.s.seen, d.k
	text := ""
	if g := o.trip.Group(k.group); g != nil {
		text = g.Name + " · "
	}
	text += eatersWords(len(o.trip.Eaters(k.day, k.group)))
	switch f := o.facts(k); f.state {
	case away:
		text += " · " + lang.L("not from the packs")
	case open:
		text += " · " + lang.L("nothing served")
	case proposed:
		text += " · " + lang.L("proposed by the program")
	default:
		text += " · " + lang.L("chosen by you")
	}
	if o.locked(k) {
		text += " · " + lang.L("locked")
	}
	return text
}

// search opens the choice of a dish, with the first letter typed.
func (d *side) search(first string) {
	k, ok := d.s.board.selected()
	if !ok || len(d.s.seen.trip.Recipes) == 0 {
		return
	}
	d.k = k
	d.tabs.Select(d.other)
	d.chooser.show(k)
	d.chooser.begin(first)
}

// showMeal brings back what the slot serves.
func (d *side) showMeal() {
	d.tabs.Select(d.meal)
	d.show(d.k)
}

// sections lists the page of the slot from top to bottom.
func (d *side) sections() []fyne.CanvasObject {
	list := d.allSections()
	switch first := list[0].(type) { // the tabs above end in a line
	case *widget.Separator:
		return list[1:]
	case *fyne.Container:
		if _, line := first.Objects[0].(*widget.Separator); line {
			first.Objects = first.Objects[1:]
		}
	}
	return list
}

func (d *side) allSections() []fyne.CanvasObject {
	o, k := d.s.seen, d.k
	dishes := o.dishes(k)
	if len(dishes) == 0 {
		return append([]fyne.CanvasObject{d.nothing()}, d.findings()...)
	}
	var list []fyne.CanvasObject
	for _, dish := range dishes {
		list = append(list, d.dish(dish)...)
	}
	if !o.fresh(k) {
		return append(list, note(lang.L("Portions and water come with the plan.")))
	}
	if known := d.findings(); o.facts(k).severity == findings.Note {
		list = append(list, known...)
	} else {
		list = append(known, list...) // what is wrong comes first
	}
	list = append(list, d.boosters()...)
	list = append(list, d.cooking()...)
	return append(list, d.keeping()...)
}

func (d *side) nothing() fyne.CanvasObject {
	text := lang.L("Nothing is served here yet. Press Enter or type a recipe's name to choose, or let the program fill the open slots.")
	if !d.s.seen.eaten(d.k) {
		text = lang.L("Nobody of the group eats this meal from the packs on this day. Days and their meals are set on Route.")
	}
	return words(text)
}
