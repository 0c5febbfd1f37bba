package loads

import (
	"cmp"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/domain/trip"
)

// openMenu offers what can be done with a thing, at a place of the window.
func (p *packPanel) openMenu(t thing, at fyne.Position) {
	p.tap(t)
	if s := p.screen; s.bench.Window != nil {
		widget.ShowPopUpMenuAtPosition(s.menuOf(t), s.bench.Window.Canvas(), at)
	}
}

// menuOf lists what can be done with a thing. Who may not take it stands there
// too: choosing them says why not.
func (s *Screen) menuOf(t thing) *fyne.Menu {
	v := s.view
	give, away := fyne.NewMenu(""), fyne.NewMenu("")
	for _, id := range s.takers(t) {
		label := v.memberName(id) + " · " + percent(v.worstAfter(move{thing: t, to: id}, s.day))
		if v.obstacle(&t, id, s.day) != "" {
			label = lang.X("menu-not", "{{.Name}} · why not?", data{"Name": v.memberName(id)})
		}
		give.Items = append(give.Items, fyne.NewMenuItem(label, func() { s.giveAndFollow(t, id) }))
		away.Items = append(away.Items, fyne.NewMenuItem(v.memberName(id), func() { _ = s.ban(t, id) }))
	}
	carrier := data{"Name": v.memberName(t.carrier)}
	to := fyne.NewMenuItem(lang.L("Give it to (heaviest pack then)"), nil)
	to.ChildMenu = give
	pin := fyne.NewMenuItem(lang.X("menu-pin", "Pin it to {{.Name}} (P)", carrier), func() { _ = s.give(t, t.carrier) })
	ban := fyne.NewMenuItem(lang.X("menu-ban", "Keep it away from {{.Name}} (K)", carrier), func() { _ = s.ban(t, t.carrier) })
	from := fyne.NewMenuItem(lang.L("Keep it away from"), nil)
	from.ChildMenu = away
	free := fyne.NewMenuItem(lang.L("Take its pins off (U)"), func() { _ = s.free(t) })
	free.Disabled = !slices.ContainsFunc(s.bench.Trip().Pins, t.concerns)
	if why := t.fixed(); why != "" {
		return fyne.NewMenu("", fyne.NewMenuItem(lang.L("Why can it not be moved?"), func() { s.bench.Say(why) }))
	}
	if v.rest != nil {
		return fyne.NewMenu("", to)
	}
	return fyne.NewMenu("", to, pin, ban, from, fyne.NewMenuItemSeparator(), free)
}

// takers lists the others who are there: first who may take the thing, the one
// with whom the heaviest pack is lightest before the rest.
func (s *Screen) takers(t thing) []trip.MemberID {
	v := s.view
	var list []trip.MemberID
	weight := map[trip.MemberID]float64{}
	for _, i := range v.order {
		m := &v.plan.Trip.Crew[i]
		if m.ID == t.carrier || !v.there(m.ID, s.day) {
			continue
		}
		weight[m.ID] = v.worstAfter(move{thing: t, to: m.ID}, s.day)
		if v.obstacle(&t, m.ID, s.day) != "" {
			weight[m.ID] = 1e9
		}
		list = append(list, m.ID)
	}
	slices.SortStableFunc(list, func(a, b trip.MemberID) int { return cmp.Compare(weight[a], weight[b]) })
	return list
}

// giveAndFollow gives a thing to a member and shows it there.
func (s *Screen) giveAndFollow(t thing, to trip.MemberID) {
	if s.give(t, to) == nil {
		s.chosen = t.id()
		s.showMember(to)
	}
}
