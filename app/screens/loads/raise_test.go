package loads

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench/benchtest"
	"sumpter/domain/carry"
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

// tightened is the demo near its packs, with limits that cannot all be kept: some
// below what is carried by more than the others have to spare.
func tightened(t *testing.T) *shown {
	t.Helper()
	s := openTrip(t, benchtest.Demo())
	s.stayNear()
	if strings.Contains(s.changes.state.Content, noSplit) {
		t.Fatalf("it says %q of free limits", s.changes.state.Content)
	}
	loads := s.view.plan.Carry.Members
	err := s.Document.Edit("tighten", func(on *trip.Trip) error {
		for i := range on.Crew {
			load := loads[i].Days[0].Load
			if i%2 == 0 {
				load -= 1800 * units.Gram
			} else {
				load += 300 * units.Gram
			}
			on.Crew[i].LoadLimit = optional.Of(max(load, on.Crew[i].OwnKit))
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	s.tabs.SelectIndex(changesTab)
	return s
}

const noSplit = "no split was found that keeps every limit"

// Where no split keeps all limits the choices say how far each passes them, and
// the one that is taken is held.
func TestChoicesWhereLimitsArePassed(t *testing.T) {
	s := tightened(t)
	stage := s.view.stage(1)
	list := stage.Choices
	if !strings.Contains(s.changes.state.Content, noSplit) || len(list) < 3 {
		t.Fatalf("%d choices; it says %q", len(list), s.changes.state.Content)
	}
	last := len(list) - 1
	nearly := func(a, b carry.Choice) bool {
		return a.OverLimit.Grams() <= b.OverLimit.Grams()*carry.NearlyFair+10
	}
	if list[0].OverLimit <= list[last].OverLimit || list[last].OverLimit == 0 || takenOf(list) == 0 || !nearly(list[takenOf(list)], list[last]) {
		t.Fatalf("over limits: %v, at last %v; taken is %d", list[0].OverLimit, list[last].OverLimit, takenOf(list))
	}
	for i, choice := range list {
		if got := s.changes.columns()[2].Text(i); !strings.Contains(got, choice.OverLimit.Format(units.Metric)) {
			t.Errorf("choice %d: over limits %q, it is %v", i, got, choice.OverLimit)
		}
		over, sum := units.Mass(0), map[trip.MemberID]units.Mass{}
		for _, item := range stage.Items {
			sum[choice.Carriers[carry.Thing{Kind: item.Kind, Key: item.Key}]] += item.Mass
		}
		for _, m := range s.Document.Trip().Crew {
			if limit, _ := m.LoadLimit.Get(); m.Present(1) {
				over += max(0, m.OwnKit+sum[m.ID]-limit)
			}
		}
		if apart := choice.OverLimit - over; apart < 0 || apart > 30*units.Gram { // tenths of grams are rounded up
			t.Errorf("choice %d is said to be %v over limits, it is %v", i, choice.OverLimit, over)
		}
	}
	if name := s.changes.choiceState(last); !strings.HasPrefix(name, "least over limits") {
		t.Errorf("the last is called %q", name)
	}
	if !s.changes.chart.Visible() {
		t.Error("there is no picture")
	}
	s.changes.table.SelectKey("0")
	test.Tap(s.changes.take)
	now := s.view.stage(1).Choices
	// Other loads ask for a little other food, and so for other bags.
	if got := now[takenOf(now)]; math.Abs(got.OverLimit.Grams()-list[0].OverLimit.Grams()) > 50 || got.HandOvers != list[0].HandOvers {
		t.Errorf("taken were %d hand-overs and %.1f g over limits, now %d and %.1f g", list[0].HandOvers, list[0].OverLimit.Grams(), got.HandOvers, got.OverLimit.Grams())
	}
	if err := s.Document.Undo(); err != nil {
		t.Fatal(err)
	}
	now = s.view.stage(1).Choices
	if got := now[takenOf(now)]; !nearly(got, list[last]) {
		t.Errorf("after undo %v over limits", got.OverLimit)
	}
}
