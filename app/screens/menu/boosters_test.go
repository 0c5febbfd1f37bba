package menu

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Who is short is offered something dense; one click serves it to them, and one undo takes it back.
func TestOneClickAddsSomethingDense(t *testing.T) {
	s := openDemo(t)
	who := s.Document.Trip().Crew[0].ID
	if err := s.Bench.Edit("hungry", func(on *trip.Trip) error {
		on.Member(who).GivenNeed = optional.Of(units.Kcal(9000))
		return nil
	}); err != nil {
		t.Fatal(err)
	}
	k := slot{3, trip.Dinner, s.Document.Trip().Crew[0].Group}
	s.at(k)
	var button *widget.Button
	for _, object := range test.LaidOutObjects(s.side.page) {
		if b, ok := object.(*widget.Button); ok && strings.HasPrefix(b.Text, "+ ") && button == nil {
			button = b
		}
	}
	if button == nil || !strings.Contains(s.text(), "Denser food") {
		t.Fatalf("nothing dense is offered:\n%s", s.text())
	}
	before := s.Document.Plan().Portions.Intakes[0].Days[2].Kcal
	test.Tap(button)
	dishes := s.Document.Trip().Cell(k.day, k.meal, k.group).Dishes
	last := dishes[len(dishes)-1]
	if recipe := s.Document.Trip().Recipe(last.Recipe); recipe == nil || "+ "+strings.TrimSuffix(recipe.Name, " more") != button.Text || len(last.For) != 1 || last.For[0] != who {
		t.Errorf("%q gives %+v", button.Text, last)
	}
	if after := s.Document.Plan().Portions.Intakes[0].Days[2].Kcal; after <= before {
		t.Errorf("%.0f kcal before, %.0f after", float64(before), float64(after))
	}
	if err := s.Document.Undo(); err != nil || len(s.Document.Trip().Cell(k.day, k.meal, k.group).Dishes) != len(dishes)-1 {
		t.Errorf("undo: %v", err)
	}
}
