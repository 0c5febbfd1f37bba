package loads

import (
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
)

// banned is a thing that was just kept from a member. Who has it instead only
// the next plan knows.
type banned struct {
	thing thing // as it was
	pin   trip.Pin
}

// tellBanned says where the banned thing went, once the plan knows.
func (s *Screen) tellBanned() {
	b := s.banned
	if b == nil || s.view == nil {
		return
	}
	if !slices.Contains(s.bench.Trip().Pins, b.pin) { // taken back meanwhile
		s.banned = nil
		return
	}
	if !slices.Contains(s.view.plan.Trip.Pins, b.pin) {
		return
	}
	s.banned = nil
	if now, ok := s.view.find(b.thing.id(), s.day); ok {
		s.bench.Say(s.view.bannedWords(b, now, s.day))
	}
}

// bannedWords tells who carries a banned thing now, and that pack's load.
func (v *view) bannedWords(b *banned, now thing, day int) string {
	values := data{"Thing": now.title(), "Name": v.memberName(b.pin.Member), "To": v.memberName(now.carrier)}
	if now.carrier == b.pin.Member {
		return lang.X("banned-stays", "{{.Thing}} stays with {{.Name}}: nobody else can take it. See the findings.", values)
	}
	load, _ := v.load(now.carrier, day)
	values["Share"], values["Day"] = percent(load.Share), day
	return lang.X("banned-went", "{{.Thing}} is kept from {{.Name}}. {{.To}} carries it: {{.Share}} on day {{.Day}}.", values)
}
