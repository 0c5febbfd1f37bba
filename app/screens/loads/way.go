package loads

import (
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/onward"
	"sumpter/domain/trip"
)

// way is what the screen knows of a trip that is under way: the packs of the
// rest as they now stand, and the switch back to those of packing night.
type way struct {
	screen   *Screen
	rest     *onward.Rest // nil: all is as it was packed
	asPacked bool         // the leader looks at packing night
	asked    int          // number of the last reckoning that was begun
	waiting  bool         // for its answer
	which    *widget.RadioGroup
	state    *look.Text
	content  *fyne.Container
}

func newWay(s *Screen) *way {
	w := &way{screen: s, state: look.NewText("", look.Body, look.Ink).Yielding()}
	w.which = widget.NewRadioGroup(nil, func(name string) { w.choose(name == asPackedWord()) })
	w.which.Horizontal, w.which.Required = true, true
	toTrail := widget.NewButton(lang.L("Go to On trail"), func() { s.bench.Document.GoTo(document.Place{Screen: "trail"}) })
	w.content = container.NewBorder(nil, nil, w.which, toTrail, w.state)
	w.content.Hide()
	return w
}

// shown is the rest that is to be looked at, nil for packing night.
func (w *way) shown() *onward.Rest {
	if w.asPacked {
		return nil
	}
	return w.rest
}

// reckon plans the rest anew where something differs from what was packed. What
// was shown stays until it is there.
func (w *way) reckon() {
	s := w.screen
	w.asked++
	asked := w.asked
	if s.bench.Plan() == nil || !s.bench.Trip().Progress.UnderWay() {
		w.rest, w.waiting = nil, false
		return
	}
	w.waiting = true
	during := true
	s.bench.Rest(s.bench.Morning(), func(rest *onward.Rest) {
		if asked != w.asked {
			return
		}
		if !rest.Changed {
			rest = nil
		}
		w.rest, w.waiting = rest, false
		if !during {
			s.showTab()
		}
	})
	during = false
}

func asPackedWord() string { return lang.L("As packed on packing night") }

func (w *way) choose(asPacked bool) {
	if w.asPacked != asPacked {
		w.asPacked = asPacked
		w.screen.showTab()
	}
}

// show offers both, once they differ.
func (w *way) show() {
	bench.SetShown(w.content, w.rest != nil)
	if w.rest == nil {
		return
	}
	w.which.Options = []string{lang.X("packs-from-day", "From the morning of day {{.Day}} on", data{"Day": w.rest.From}), asPackedWord()}
	w.which.Selected = w.which.Options[0]
	if w.asPacked {
		w.which.Selected = w.which.Options[1]
	}
	w.which.Refresh()
	w.state.SetContent(w.words())
}

func (w *way) words() string {
	switch {
	case w.asPacked:
		return lang.L("These are the packs as planned for packing night, before anything happened.")
	case !w.rest.Decided && len(w.rest.HandOvers) > 0:
		return lang.L("As proposed for this morning; it is decided under On trail.")
	default:
		return lang.L("As things stand after what happened on the way.")
	}
}

func pinsOfPackingNight() string {
	return lang.L("Under way things are handed over; pins, bans and kept packs belong to packing night. Look at the packs as packed to change them.")
}

// refuses says so where the packs on the way are shown.
func (w *way) refuses() bool {
	if w.screen.view == nil || w.screen.view.rest == nil {
		return false
	}
	w.screen.bench.Say(pinsOfPackingNight())
	return true
}

// give hands a thing to another on the morning that is shown.
func (w *way) give(t thing, to trip.MemberID) error {
	s := w.screen
	rest := s.view.rest
	decided, ok := rest.Give(t.thing(), s.day, to)
	if !ok || to == t.carrier {
		return errors.New(t.fixed())
	}
	words := data{"Thing": t.title(), "Name": s.view.memberName(to), "Day": s.day, "More": len(decided.HandOvers) - 1}
	name := lang.X("undo-hand-over", "hand {{.Thing}} to {{.Name}} on day {{.Day}}", words)
	if len(decided.HandOvers) > 1 {
		name = lang.X("undo-hand-over-decide", "hand {{.Thing}} to {{.Name}} on day {{.Day}}, with what else was proposed ({{.More}})", words)
	}
	return s.bench.Edit(name, func(on *trip.Trip) error {
		onward.Store(&on.Progress, decided)
		return nil
	})
}
