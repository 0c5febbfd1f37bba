package loads

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
	"sumpter/domain/trip"
)

// The same move is made in three ways: a thing is dragged to a column; or it
// is taken up by M and a column is chosen with the keys or by tapping.

// dragTo carries a thing along with the pointer.
func (s *Screen) dragTo(t thing, at fyne.Position) {
	if s.view == nil {
		return
	}
	if s.move == nil {
		if why := t.fixed(); why != "" {
			s.bench.Say(why)
			return
		}
		s.move, s.chosen = &move{thing: t}, t.id()
	}
	s.move.to, s.move.away = s.board.under(at), false
	onWay := s.view.rest != nil
	if !onWay && s.ghost.overAway(at) {
		s.move.to, s.move.away = t.carrier, true
	}
	s.showMove(at)
	if onWay {
		return
	}
	s.ghost.offerAway(lang.X("drop-away", "Drop here to keep it away from {{.Name}}", data{"Name": s.view.memberName(t.carrier)}), s.move.away)
}

// showMove shows both loads as they would be, and the tag at a place of the
// window.
func (s *Screen) showMove(at fyne.Position) {
	o := s.view.weigh(*s.move, s.day)
	s.ghost.show(s.move.thing.title()+" · "+written.Quantity(s.move.thing.mass, s.view.plan.Trip.Units), s.view.say(*s.move, o), o.obstacle != "" || o.over > 0 || o.cramped, at)
	s.showBoard()
}

// drop ends a move: over another member the thing is pinned there.
func (s *Screen) drop() {
	m := s.move
	s.cancelMove()
	if m == nil || s.view == nil || m.to == 0 {
		return
	}
	s.focus(s.pack.list)
	if m.away {
		_ = s.ban(m.thing, m.to)
		return
	}
	if m.to == m.thing.carrier {
		return
	}
	s.giveAndFollow(m.thing, m.to)
}

// cancelMove leaves the thing where it is.
func (s *Screen) cancelMove() {
	if s.move == nil {
		return
	}
	s.move = nil
	s.bench.Say("")
	s.ghost.hide()
	if s.view != nil {
		s.showBoard()
	}
}

// startMove takes up the chosen thing and offers it to the member with whom
// the heaviest pack would be lightest.
func (s *Screen) startMove() {
	if t, ok := s.toHand(); ok {
		s.takeUp(&move{thing: t}, s.view.best(t, s.day))
		s.bench.Say(lang.L("Choose who takes it: arrows, a first letter, or a tap on a column. Return moves it, Escape leaves it."))
	}
}

// startAway takes up the chosen thing to keep it from a member.
func (s *Screen) startAway() {
	if s.way.refuses() {
		return
	}
	if t, ok := s.toHand(); ok {
		s.takeUp(&move{thing: t, away: true}, t.carrier)
		s.bench.Say(lang.L("Choose from whom it is kept: arrows, a first letter, or a tap on a column. Return keeps it away, Escape leaves it."))
	}
}

// toHand gives the chosen thing, and says why where a hand cannot move it.
func (s *Screen) toHand() (thing, bool) {
	if s.view == nil {
		return thing{}, false
	}
	t, i := s.pack.current()
	if i < 0 {
		return thing{}, false
	}
	if why := t.fixed(); why != "" {
		s.bench.Say(why)
		return thing{}, false
	}
	return t, true
}

func (s *Screen) takeUp(m *move, target trip.MemberID) {
	s.move = m
	s.moveTarget(target)
	s.focus(s.board.content)
}

// best gives who could take a thing best, the carrier if nobody else may.
func (v *view) best(t thing, day int) trip.MemberID {
	best, worst := t.carrier, 0.0
	for _, i := range v.order {
		id := v.plan.Trip.Crew[i].ID
		if id == t.carrier || v.obstacle(&t, id, day) != "" {
			continue
		}
		if after := v.worstAfter(move{thing: t, to: id}, day); best == t.carrier || after < worst {
			best, worst = id, after
		}
	}
	return best
}

// moveTarget offers the thing to a member.
func (s *Screen) moveTarget(to trip.MemberID) {
	s.move.to = to
	s.board.reveal(to)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.board.scroll)
	for i, id := range s.board.members {
		if id == to {
			_, right := s.board.chart.Span(i)
			at = at.AddXY(right-s.board.scroll.Offset.X, 40)
		}
	}
	s.showMove(at)
}

// tapColumn chooses a member, or drops there what was taken up.
func (s *Screen) tapColumn(id trip.MemberID) {
	s.focus(s.board.content)
	if s.move != nil {
		s.move.to = id
		s.drop()
		return
	}
	s.showMember(id)
}

// banChosen keeps the chosen thing from who carries it.
func (s *Screen) banChosen() {
	if t, i := s.pack.current(); i >= 0 {
		_ = s.ban(t, t.carrier)
	}
}

// pinChosen pins the chosen thing where it is.
func (s *Screen) pinChosen() {
	if t, i := s.pack.current(); i >= 0 && !s.way.refuses() {
		_ = s.give(t, t.carrier)
	}
}

// freeChosen takes every pin and ban off the chosen thing.
func (s *Screen) freeChosen() {
	if t, i := s.pack.current(); i >= 0 {
		_ = s.free(t)
	}
}
