package menu

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/demo"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// dragTo carries one slot to another, with a stop in between.
func (s *shown) dragTo(from, to slot) {
	s.t.Helper()
	s.board.scrollTo(fyne.Position{})
	start, end := s.middle(from), s.middle(to)
	way := fyne.NewDelta(end.X-start.X, end.Y-start.Y)
	half := start.AddXY(way.DX/2, way.DY/2)
	s.board.sheet.drag.pressed = fyne.Position{}
	s.board.sheet.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: half}, Dragged: fyne.NewDelta(way.DX/2, way.DY/2)})
	s.board.sheet.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: end}, Dragged: fyne.NewDelta(way.DX/2, way.DY/2)})
}

func TestDraggingSwaps(t *testing.T) {
	s := openDemo(t)
	s.dragTo(dinner3, dinner4)
	d := &s.board.sheet.drag
	if !d.target.Visible() || !d.card.Visible() {
		t.Error("neither the target nor what is dragged is marked")
	}
	if at, _ := s.board.placeOf(dinner4); d.target.Position() != s.board.m.corner(at).SubtractXY(3, 3) {
		t.Errorf("the frame is at %v", d.target.Position())
	}
	s.board.sheet.DragEnd()
	s.want(dinner3, chilli+" + "+pudding, "swap dinner of day 3 (Larch) with dinner of day 4 (Larch)")
	s.want(dinner4, dal+" + "+crumble, "")
	if d.target.Visible() || d.card.Visible() {
		t.Error("the marks stay after the drop")
	}
	if k, _ := s.board.selected(); k != dinner4 {
		t.Errorf("the cursor is on %v", k)
	}
}

func TestDraggingWithControlCopiesAndWithShiftMoves(t *testing.T) {
	s := openDemo(t)
	s.modifiers = func() fyne.KeyModifier { return fyne.KeyModifierControl }
	s.dragTo(dinner3, dinner4)
	s.board.sheet.DragEnd()
	s.want(dinner4, dal+" + "+crumble, "copy dinner of day 3 (Larch) to dinner of day 4 (Larch)")
	s.want(dinner3, dal+" + "+crumble, "")
	s.modifiers = func() fyne.KeyModifier { return fyne.KeyModifierShift }
	s.dragTo(dinner4, lunch3)
	s.board.sheet.DragEnd()
	s.want(lunch3, dal+" + "+crumble, "move dinner of day 4 (Larch) to lunch of day 3 (Larch)")
	s.want(dinner4, "", "")
}

func TestTheChoiceAboveTheGridSaysWhatDraggingDoes(t *testing.T) {
	s := openDemo(t)
	s.drags.SetSelectedIndex(2)
	s.dragTo(dinner3, dinner4)
	s.board.sheet.DragEnd()
	s.want(dinner4, dal+" + "+crumble, "copy dinner of day 3 (Larch) to dinner of day 4 (Larch)")
}

func TestNothingIsDroppedOnALockedSlotOrNowhere(t *testing.T) {
	s := openDemo(t)
	s.at(dinner4)
	s.key(fyne.KeySpace)
	locked := s.Document.UndoName()
	for _, target := range []slot{dinner4, {1, trip.Breakfast, 1}, dinner3} {
		s.dragTo(dinner3, target)
		s.board.sheet.DragEnd()
		s.want(dinner3, dal+" + "+crumble, locked)
	}
	s.dragTo(dinner3, lunch3)
	s.key(fyne.KeyEscape)
	s.board.sheet.DragEnd()
	s.want(dinner3, dal+" + "+crumble, locked)
}

func TestADragAtTheRimScrolls(t *testing.T) {
	s := openTrip(t, triptest.Large(12, 14, 5))
	s.board.scrollTo(fyne.Position{})
	from, _ := s.board.slot(place{1, 0})
	start := s.middle(from)
	for range 30 {
		at := s.board.scroll.Offset.AddXY(s.board.scroll.Size().Width-5, start.Y)
		s.board.sheet.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at}, Dragged: fyne.NewDelta(at.X-start.X, 0)})
	}
	if s.board.scroll.Offset.X < 20*edge {
		t.Errorf("the view moved by %v", s.board.scroll.Offset.X)
	}
	s.board.sheet.stopDrag()
}

func TestSwapMoveAndCopyByKeyboard(t *testing.T) {
	s := openDemo(t)
	s.at(dinner3)
	s.wait(swapping)
	s.key(fyne.KeyRight)
	s.want(dinner3, dal+" + "+crumble, "")
	s.key(fyne.KeyReturn)
	s.want(dinner3, chilli+" + "+pudding, "swap dinner of day 3 (Larch) with dinner of day 4 (Larch)")
	s.wait(copying)
	s.at(lunch3)
	s.want(lunch3, dal+" + "+crumble, "copy dinner of day 4 (Larch) to lunch of day 3 (Larch)")
	s.wait(moving)
	s.key(fyne.KeyEscape, fyne.KeyUp, fyne.KeyReturn)
	if s.pending != nil || s.side.tabs.Selected() != s.side.other {
		t.Error("Escape does not end the wait for the other slot")
	}
}

// What was accepted by hand holds for its own cell only, and a dish for some
// goes only to those of them who eat in the other slot.
func TestAcceptedDangersStayBehind(t *testing.T) {
	s := openDemo(t)
	s.edit(func(t *trip.Trip) {
		cell := t.Cell(3, trip.Dinner, 1)
		cell.Dishes[0].For = []trip.MemberID{1, 3}
		cell.Dishes[0].Accepted = []trip.Acceptance{{Member: 3, Food: t.Foods[0].ID, Reason: "read the label"}}
	})
	for _, how := range []transfer{copying, swapping} {
		if err := s.transfer(dinner3, dinner4, how); err != nil {
			t.Fatal(err)
		}
		dish := s.Document.Trip().Cell(4, trip.Dinner, 1).Dishes[0]
		if len(dish.Accepted) != 0 || !slices.Equal(dish.For, []trip.MemberID{1, 3}) {
			t.Errorf("%s: %+v", how, dish)
		}
	}
	if err := s.transfer(dinner4, slot{4, trip.Dinner, 2}, copying); err != nil {
		t.Fatal(err)
	}
	if dish := s.Document.Trip().Cell(4, trip.Dinner, 2).Dishes[0]; len(dish.For) != 0 {
		t.Errorf("in a group where none of them eats: %+v", dish)
	}
}

func TestGoToShowsTheSlotOrTheMember(t *testing.T) {
	s := openDemo(t)
	s.groups.SetSelectedIndex(1)
	s.GoTo(findings.Place{Day: 5, Meal: trip.Lunch, Group: 2})
	if k, _ := s.board.selected(); k != (slot{5, trip.Lunch, 2}) {
		t.Errorf("the cursor is on %v", k)
	}
	on := demo.Trip()
	s.GoTo(findings.Place{Day: 6, Member: on.Crew[6].ID})
	if k, _ := s.board.selected(); k.day != 6 || s.food.member != on.Crew[6].ID {
		t.Errorf("the cursor is on %v, the picture of member %d", k, s.food.member)
	}
}
