package shopping

import (
	"testing"

	"pgregory.net/rapid"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/trip"
)

// What was bought is there when the trip is opened again.
func TestTheTripFileRemembersTheShopping(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	s.tabs.SelectIndex(moneyPlace)
	s.payers.SetSelected(s.Document.Trip().Crew[1].Name)
	s.space()
	s.table.Add()
	r, _ := s.table.Selected()
	s.write(t, r, "Paid", "9.90")
	later := open(t, benchtest.Reopened(t, s.Document.Trip()))
	later.tabs.SelectIndex(moneyPlace)
	if later.list.paid != s.list.paid || later.list.total.done != 1 || len(later.purchases()) != 2 {
		t.Errorf("paid %v of %v, %d lines done", later.list.paid, s.list.paid, later.list.total.done)
	}
	if later.account.settle.Content != s.account.settle.Content {
		t.Errorf("it is settled by %q, before by %q", later.account.settle.Content, s.account.settle.Content)
	}
}

// Everything done on the screen can be taken back, to the very trip before,
// and leaves a valid trip on the way.
func TestAllOfItCanBeTakenBack(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	before := s.Document.Trip()
	rapid.Check(t, func(rt *rapid.T) {
		edits := 0
		for range rapid.IntRange(1, 5).Draw(rt, "acts") {
			now := s.Document.Trip()
			rows := s.table.Rows()
			r := rows[rapid.IntRange(0, len(rows)-1).Draw(rt, "row")]
			s.table.SelectKey(r.key)
			switch rapid.IntRange(0, 4).Draw(rt, "act") {
			case 0, 1:
				s.space()
			case 2:
				_ = s.change(s.column(t, "Bought"), r, rapid.SampledFrom([]string{"0", "1", "2", "40", ""}).Draw(rt, "bought"))
			case 3:
				_ = s.change(s.column(t, "Paid"), r, rapid.SampledFrom([]string{"0", "1.50", ""}).Draw(rt, "paid"))
			case 4:
				s.table.Add()
			}
			if s.Document.Trip() == now {
				continue
			}
			edits++
			if problems := trip.Validate(s.Document.Trip()); len(problems) > 0 {
				rt.Fatalf("the trip is no longer valid: %v", problems[0])
			}
			if s.Document.UndoName() == "" {
				rt.Fatal("an edit has no name")
			}
		}
		for range edits {
			if err := s.Document.Undo(); err != nil {
				rt.Fatal(err)
			}
		}
		if !trip.Equal(before, s.Document.Trip()) {
			rt.Fatalf("after taking %d steps back: %+v", edits, s.Document.Trip().Progress)
		}
	})
}

// What is left of a row whose package the shop no longer has stays with its
// food beside the list, so that somebody can go on entering packages.
func TestTheSideStaysWithTheFoodWhenThePlanBuysOtherPackages(t *testing.T) {
	s := open(t, benchtest.DemoDays(2))
	r := s.first(t)
	s.table.SelectKey(r.key)
	food := s.Document.Trip().Food(r.goods.food)
	if err := s.Document.Edit("sell it by the sack", func(t *trip.Trip) error {
		sold := &t.Food(food.ID).Packages
		*sold = append(append([]trip.Package(nil), (*sold)[:r.buy.Package]...), (*sold)[r.buy.Package+1:]...)
		if len(*sold) == 0 {
			*sold = nil
		}
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	if at, _ := s.table.Selected(); at.goods.food != food.ID || s.food.food != food.ID {
		t.Errorf("beside the list stands food %d, the cursor is on food %d, it was on %d", s.food.food, at.goods.food, food.ID)
	}
}
