package loads

import (
	"slices"
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// typedKey moves through members, things and days; while a thing is moved it
// chooses who takes it.
func (s *Screen) typedKey(event *fyne.KeyEvent) {
	if s.view == nil {
		return
	}
	switch event.Name {
	case fyne.KeyLeft:
		s.stepMember(-1)
	case fyne.KeyRight:
		s.stepMember(1)
	case fyne.KeyHome:
		s.stepMember(-len(s.view.order))
	case fyne.KeyEnd:
		s.stepMember(len(s.view.order))
	case fyne.KeyUp:
		s.pack.step(-1)
	case fyne.KeyDown:
		s.pack.step(1)
	case fyne.KeyPageUp:
		s.showDay(s.day - 1)
	case fyne.KeyPageDown:
		s.showDay(s.day + 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		if s.move != nil {
			s.drop()
		}
	case fyne.KeyEscape:
		s.cancelMove()
	}
}

// typedRune is a command; while a thing is moved, the first letter of who
// takes it.
func (s *Screen) typedRune(letter rune) {
	if s.view == nil {
		return
	}
	if s.move != nil {
		s.targetByLetter(letter)
		return
	}
	switch unicode.ToLower(letter) {
	case 'm':
		s.startMove()
	case 'k':
		s.banChosen()
	case 'n':
		s.startAway()
	case 'p':
		s.pinChosen()
	case 'c':
		s.open(changesTab)
	case 'u':
		s.freeChosen()
	}
}

// stepMember goes along the columns.
func (s *Screen) stepMember(by int) {
	at := s.member
	if s.move != nil {
		at = s.move.to
	}
	i := slices.Index(s.board.members, at)
	if len(s.board.members) == 0 {
		return
	}
	next := s.board.members[max(0, min(i+by, len(s.board.members)-1))]
	if s.move != nil {
		s.moveTarget(next)
	} else {
		s.showMember(next)
	}
}

// targetByLetter goes to the next member whose name begins with a letter.
func (s *Screen) targetByLetter(letter rune) {
	members := s.board.members
	from := slices.Index(members, s.move.to) + 1
	for n := range members {
		id := members[(from+n)%len(members)]
		if strings.HasPrefix(strings.ToLower(s.view.memberName(id)), strings.ToLower(string(letter))) {
			s.moveTarget(id)
			return
		}
	}
}

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	packs := func(do func()) func() {
		return func() {
			s.tabs.SelectIndex(packsTab)
			do()
		}
	}
	gear := func(do func()) func() {
		return func() {
			s.tabs.SelectIndex(gearAndFuelTab)
			s.bench.Document.AfterFrame(do) // the tab first: both at once take long
		}
	}
	return []bench.Action{
		{Name: lang.L("Next day"), Do: packs(func() { s.showDay(s.day + 1) })},
		{Name: lang.L("Day before"), Do: packs(func() { s.showDay(s.day - 1) })},
		{Name: lang.L("Move the chosen thing to another pack"), Do: packs(s.startMove)},
		{Name: lang.L("Keep the chosen thing from who carries it"), Do: packs(s.banChosen)},
		{Name: lang.L("Keep the chosen thing from another member"), Do: packs(s.startAway)},
		{Name: lang.L("Pin the chosen thing where it is"), Do: packs(s.pinChosen)},
		{Name: lang.L("Take the pins off the chosen thing"), Do: packs(s.freeChosen)},
		{Name: lang.L("Few hand-overs or a fair load: choose"), Do: func() { s.open(changesTab) }},
		{Name: lang.L("Split freely, without regard to the packs before"), Do: s.splitFreely},
		{Name: lang.L("Stay near the packs as they are"), Do: s.stayNear},
		{Name: lang.L("How fair the split is, and its pins"), Do: func() { s.open(fairnessTab) }},
		{Name: lang.L("Add a piece of gear"), Do: gear(s.gear.add)},
		{Name: lang.L("Remove the piece of gear"), Do: gear(s.gear.remove)},
		{Name: lang.L("Add a size of fuel container"), Do: gear(s.gear.addFuel)},
		{Name: lang.L("Remove the size of fuel container"), Do: gear(s.gear.removeFuel)},
	}
}

// inGroup tells whether a member shares a cook group with another.
func (v *view) inGroup(a, b trip.MemberID) bool {
	left, right := v.plan.Trip.Member(a), v.plan.Trip.Member(b)
	return left != nil && right != nil && left.Group == right.Group
}
