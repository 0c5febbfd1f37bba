package settings

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// bag types into the table of bags, in a row and the column of a title.
func (s *shown) bag(row int, title, text string) {
	s.T.Helper()
	s.Do("Kinds of bag")
	s.bags.table.MoveCursor(row, slices.IndexFunc(s.bags.fields, func(f bagField) bool { return f.title == title }))
	s.bags.table.Focus()
	s.Press(fyne.KeyReturn)
	s.Overwrite(text)
	s.Press(fyne.KeyReturn)
}

func TestTypingChangesAKindOfBag(t *testing.T) {
	s := open(t)
	s.bag(0, "Name", "freezer bag")
	s.bag(0, "Size", "0.8")
	s.bag(0, "Closes filled to", "70")
	s.bag(0, "Empty", "4.5 g")
	s.bag(0, "Liquids and spreads", "y")
	want := trip.BagType{Name: "freezer bag", Nominal: 800 * units.Millilitre, Fill: 0.7, Tare: 4500 * units.Milligram, Liquids: true}
	if got := s.Document.Trip().Bags[0]; got != want {
		t.Errorf("the bag is %+v; said %q", got, s.Said)
	}
	s.WantUndo("change Liquids and spreads of freezer bag")
	if got := s.bags.fields[3].text(s.bags.at(0)); got != "0.56" {
		t.Errorf("it holds %s l", got)
	}
	s.bag(0, "Closes filled to", "120")
	if s.Document.Trip().Bags[0].Fill != 0.7 || !strings.Contains(s.Said, "at most 100 %") {
		t.Errorf("said %q", s.Said)
	}
}

func TestKindsOfBagComeAndGo(t *testing.T) {
	s := open(t)
	before := len(s.Document.Trip().Bags)
	s.Do("Add a kind of bag")
	s.Do("Add a kind of bag")
	if bags := s.Document.Trip().Bags; len(bags) != before+2 || bags[before].Name == bags[before+1].Name {
		t.Fatalf("bags %+v", bags)
	}
	if at, _ := s.bags.table.Selected(); at != before+1 {
		t.Errorf("the cursor stands on %d", at)
	}
	s.Do("Remove the kind of bag")
	s.Do("Remove the kind of bag")
	for range before + 1 {
		s.Do("Remove the kind of bag")
	}
	if left := len(s.Document.Trip().Bags); left != 1 || !strings.Contains(s.Said, "must stay") {
		t.Errorf("%d kinds are left; said %q", left, s.Said)
	}
	s.Do("Add the usual kinds of bag")
	for _, usual := range trip.UsualBags(units.Metric) {
		if !hasBag(s.Document.Trip(), usual.Name) {
			t.Errorf("%s is not there", usual.Name)
		}
	}
	s.Do("Add the usual kinds of bag")
	if !strings.Contains(s.Said, "are there") {
		t.Errorf("with nothing to add it says %q", s.Said)
	}
}

// A bag of another size packs the food another way at once.
func TestTheTableCountsTheBagsOfThePlan(t *testing.T) {
	s := openTrip(t, benchtest.DemoDays(2))
	s.Do("Kinds of bag")
	all := 0
	for _, bag := range s.Bench.Plan().Bags.Bags {
		if bag.Type != trip.AsBought {
			all++
		}
	}
	counted := 0
	for row := range s.Document.Trip().Bags {
		counted += planned(s.Bench, s.bags.at(row))
	}
	if counted != all || all == 0 {
		t.Errorf("the table counts %d bags of %d", counted, all)
	}
}
