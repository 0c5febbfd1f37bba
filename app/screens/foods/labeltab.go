package foods

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// labelTab is what the label says: allergens and diets, and in words what is
// not known.
type labelTab struct {
	side      *sidePanel
	listed    []trip.Allergen
	allergens *reader
	diets     *reader
	words     *look.Note
	rest      *widget.Button // the label names none of the rest
	further   *widget.Button // to the next label
	content   fyne.CanvasObject
}

func newLabelTab(side *sidePanel) *labelTab {
	l := &labelTab{side: side, words: look.NewNote()}
	l.allergens = newReader([]readerWord{
		{presenceWord(trip.Contains), 'c', look.Plum}, {presenceWord(trip.MayContain), 'm', look.Plum},
		{presenceWord(trip.Free), 'f', look.Spruce}, {presenceWord(trip.NotKnown), 'u', look.Ochre},
	}, l.setAllergen)
	l.allergens.next, l.allergens.key = l.nextUnread, l.letter
	l.diets = newReader([]readerWord{
		{lang.L("suits"), 's', look.Spruce}, {lang.L("does not suit"), 'd', look.Brick}, {lang.L("unknown"), 'u', look.Ochre},
	}, l.setDiet)
	keys := bench.SmallPrint(lang.L("Keys: C contains, M may contain, F free, U unknown, each goes on to the next. R: the label names none of the rest. N: next label."))
	caution := bench.SmallPrint(lang.L("The label in your hand rules; recipes change. \"May contain\" need not be printed: where traces harm, ask the maker and, in doubt, the member's doctor."))
	l.rest = widget.NewButton(lang.L("The label names none of the rest"), func() { l.letter('r') })
	l.further = widget.NewButton(lang.L("Next label"), func() { l.letter('n') })
	l.content = bench.NewScroll(container.NewVBox(l.words, l.allergens, container.NewHBox(l.rest, l.further), keys, caution, bench.Inset(look.NewHeading(lang.L("Diets"))), l.diets))
	return l
}

// presences in the order of the words.
func presences() []trip.Presence {
	return []trip.Presence{trip.Contains, trip.MayContain, trip.Free, trip.NotKnown}
}

func suitabilities() []trip.Suitability {
	return []trip.Suitability{trip.Suits, trip.DoesNotSuit, trip.SuitsUnknown}
}

func (l *labelTab) show(food *trip.Food) {
	t := l.side.screen.bench.Trip()
	l.listed = allergensFor(t, food)
	rows := make([]readerRow, len(l.listed))
	for i, allergen := range l.listed {
		state := food.Presence(allergen)
		rows[i] = readerRow{name: bench.AllergenWord(allergen, t.Units), tone: look.Ink, note: allergicTo(t, allergen), chosen: slices.Index(presences(), state)}
		if state != trip.Free && rows[i].note != "" {
			rows[i].tone = look.Plum
		}
	}
	l.allergens.show(rows)
	tone := look.Quiet
	if len(unreadOf(food)) > 0 {
		tone = look.Ochre
	}
	l.words.Set(labelWords(food, t.Units), tone, len(withPresence(food, trip.Contains))+len(withPresence(food, trip.MayContain)) > 0)
	var diets []readerRow
	for _, diet := range trip.KnownDiets() {
		diets = append(diets, readerRow{name: bench.DietWord(diet), tone: look.Ink, chosen: slices.Index(suitabilities(), food.Suitability(diet))})
	}
	l.diets.show(diets)
}

// allergensFor lists what a label must declare, then what else the food names
// or somebody is allergic to.
func allergensFor(t *trip.Trip, food *trip.Food) []trip.Allergen {
	list := trip.DeclaredAllergens()
	var more []trip.Allergen
	for allergen := range food.Allergens {
		more = append(more, allergen)
	}
	for i := range t.Crew {
		for _, allergy := range t.Crew[i].Allergies {
			more = append(more, allergy.Allergen)
		}
	}
	slices.Sort(more)
	for _, allergen := range slices.Compact(more) {
		if !slices.Contains(list, allergen) {
			list = append(list, allergen)
		}
	}
	return list
}

// labelWords says what is in the food and what is not known, in full.
func labelWords(food *trip.Food, system units.System) string {
	text := ""
	for _, part := range []struct {
		state trip.Presence
		words string
	}{
		{trip.Contains, lang.L("Contains")}, {trip.MayContain, lang.L("May contain")},
		{trip.NotKnown, lang.L("Not known, so not safe:")},
	} {
		if list := withPresence(food, part.state); len(list) > 0 {
			text += part.words + " " + named(list, system) + ". "
		}
	}
	if text == "" {
		return lang.L("The label names none of the allergens that must be declared.")
	}
	return text
}

func (l *labelTab) setAllergen(row, word int) {
	_ = l.side.screen.setPresence(l.side.food, l.listed[row:row+1], presences()[word]) // said in the line below
	l.refresh()
}

func (l *labelTab) setDiet(row, word int) {
	_ = l.side.screen.setDiet(l.side.food, trip.KnownDiets()[row], suitabilities()[word]) // said in the line below
	l.refresh()
}

// refresh shows the food as it is now, since the window refreshes the screen
// only if it is in one.
func (l *labelTab) refresh() {
	if food := l.side.current(); food != nil {
		l.show(food)
	}
}

// nextUnread gives the next row of which nothing is known, else the row after.
func (l *labelTab) nextUnread(row int) int {
	unknown := slices.Index(presences(), trip.NotKnown)
	for i := row + 1; i < len(l.allergens.rows); i++ {
		if l.allergens.rows[i].chosen == unknown {
			return i
		}
	}
	return row + 1
}

func (l *labelTab) toFirstUnread() { l.allergens.moveTo(max(0, l.nextUnread(-1))) }

// letter hears the keys that are not a state's.
func (l *labelTab) letter(letter rune) {
	food := l.side.current()
	if food == nil {
		return
	}
	switch letter {
	case 'r':
		if rest := unreadOf(food); len(rest) > 0 {
			_ = l.side.screen.setPresence(food.ID, rest, trip.Free) // said in the line below
			l.refresh()
		}
	case 'n':
		l.side.screen.nextLabel()
	}
}
