package trail

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Part of a bag is thrown away: typed in grams, less is left, undo brings it
// back. More than is in it is refused in words.
func TestPartOfABagIsThrownAway(t *testing.T) {
	s := openDemo(t, 4)
	bag := s.day.Bags[0]
	s.side.showBag(bag.Key)
	s.side.part.SetText("999999")
	s.side.part.OnSubmitted(s.side.part.Text)
	if s.Said == "" || len(s.Document.Trip().Progress.PartsGone) > 0 {
		t.Fatalf("more than is in the bag is taken: %q", s.Said)
	}
	s.side.part.SetText("")
	test.Type(s.side.part, "50")
	s.side.part.OnSubmitted(s.side.part.Text)
	parts := s.Document.Trip().Progress.PartsGone
	if len(parts) != 1 || parts[0] != (trip.PartGone{Bag: bag.Key, Day: 4, End: trip.ThrownAway, Mass: 50 * units.Gram}) {
		t.Fatalf("parts gone: %+v", parts)
	}
	now, _ := s.bag(bag.Key)
	if s.rest == nil || now.Left(4) != bag.Left(4)-50*units.Gram {
		t.Errorf("the bag holds %v, it held %v", now.Left(4), bag.Left(4))
	}
	s.Document.Undo()
	if len(s.Document.Trip().Progress.PartsGone) > 0 {
		t.Error("undo leaves it gone")
	}
}

// Bags that packing night did not tick are named, and can be said to be here
// or to have been left at home.
func TestUntickedBagsAreSetRight(t *testing.T) {
	s := openDemo(t, 4)
	first, second := s.day.Bags[0].Key, s.day.Bags[1].Key
	_ = s.Document.Edit("tick", func(on *trip.Trip) error {
		on.Progress.Packed = []trip.PackedBag{{Bag: first, Done: true}}
		return nil
	})
	if s.rest == nil || len(s.rest.Unticked) == 0 {
		t.Fatal("nobody is told of bags that were not ticked")
	}
	s.letter(second, 'N')
	if end := s.Document.Trip().Progress.BagEnd(second); end == nil || end.End != trip.NotPacked {
		t.Fatalf("the bag's end is %+v", end)
	}
	s.packedAfterAll(second)
	s.tickAll(s.rest.Unticked)
	if len(s.Document.Trip().Progress.Ends) > 0 || s.rest != nil && len(s.rest.Unticked) > 0 {
		t.Error("all bags are here, and some are still asked for")
	}
}

// A container found empty is noted for the morning, and the fuel is told to be
// short.
func TestALostContainerIsNoted(t *testing.T) {
	s := openDemo(t, 4)
	if len(s.day.Fuel) == 0 || len(s.day.Fuel[0].Held) == 0 {
		t.Fatal("no fuel on day 4")
	}
	group := s.day.Fuel[0].Group
	for _, held := range s.day.Fuel[0].Held {
		s.setFuel(held.Key, held.Name, 0)
	}
	if s.rest == nil || len(s.rest.Fuel) == 0 || s.rest.Fuel[0].Group != group || s.rest.Fuel[0].Have != 0 {
		t.Fatalf("no word of missing fuel")
	}
	for s.Document.UndoName() != "" && len(s.Document.Trip().Progress.FuelNotes) > 0 {
		s.Document.Undo()
	}
	if len(s.day.Fuel) == 0 || s.day.Fuel[0].Left == 0 {
		t.Error("undo leaves the containers empty")
	}
}
