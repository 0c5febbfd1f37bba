package loads

import (
	"testing"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// Where packs are over their limits one press raises these so that the split
// fits, in one step of undo; where none is, nothing is offered.
func TestPassedLimitsAreRaisedInOneStep(t *testing.T) {
	on := benchtest.Demo()
	for i := range on.Crew {
		m := &on.Crew[i]
		m.LoadLimit = optional.Of(m.OwnKit + units.Kilogram)
	}
	before := on.Crew[0].LoadLimit
	s := openTrip(t, on)
	s.tabs.SelectIndex(fairnessTab)
	if !s.fairness.raise.content.Visible() || len(s.view.raisedLimits()) == 0 {
		t.Fatal("nothing is offered though limits are passed")
	}
	s.fairness.raise.do()
	if left := s.view.raisedLimits(); len(left) > 0 || s.fairness.raise.content.Visible() {
		t.Errorf("still passed: %+v", left)
	}
	s.Document.Undo()
	if s.Document.Trip().Crew[0].LoadLimit != before {
		t.Error("one undo does not bring the limits back")
	}
}
