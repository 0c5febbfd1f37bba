package loads

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/findings"
	"sumpter/domain/limits"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Where packs are over their limits one press raises these until the plan
// passes none, in one step of undo; where none is, nothing is offered.
func TestPassedLimitsAreRaisedInOneStep(t *testing.T) {
	on := benchtest.Demo()
	for i := range on.Crew {
		m := &on.Crew[i]
		m.LoadLimit = optional.Of(m.OwnKit + units.Kilogram)
	}
	before := on.Crew[0].LoadLimit
	s := openTrip(t, on)
	s.tabs.SelectIndex(fairnessTab)
	if !s.fairness.raise.content.Visible() || len(limits.Passed(s.view.plan)) == 0 {
		t.Fatal("nothing is offered though limits are passed")
	}
	test.Tap(s.fairness.raise.button)
	if left := limits.Passed(s.view.plan); len(left) > 0 || s.fairness.raise.content.Visible() {
		t.Errorf("still passed: %+v", left)
	}
	if at := slices.IndexFunc(s.view.plan.Findings, func(f findings.Finding) bool { return f.Code == "over-limit" }); at >= 0 {
		t.Errorf("found: %s", s.view.plan.Findings[at].What)
	}
	if err := s.Document.Undo(); err != nil || s.Document.Trip().Crew[0].LoadLimit != before {
		t.Error("one undo does not bring the limits back")
	}
}

// Where no split keeps all limits it is said why few choices are offered.
func TestChoicesOfPassedLimitsAreExplained(t *testing.T) {
	on := benchtest.Demo()
	s := openTrip(t, on)
	s.stayNear()
	free := s.changes.state.Content
	err := s.Document.Edit("tighten", func(on *trip.Trip) error {
		for i := range on.Crew {
			on.Crew[i].LoadLimit = optional.Of(on.Crew[i].OwnKit + units.Kilogram)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	const said = "no split was found that keeps every limit"
	if s.tabs.SelectIndex(changesTab); strings.Contains(free, said) || !strings.Contains(s.changes.state.Content, said) {
		t.Errorf("it says %q, and %q with passed limits", free, s.changes.state.Content)
	}
}
