package summary

import (
	"slices"
	"strings"
	"testing"

	"sumpter/domain/plan"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
)

func line(t *testing.T, p *plan.Plan, what string) Line {
	t.Helper()
	for _, l := range Lines(p) {
		if l.What == what {
			return l
		}
	}
	t.Fatalf("no line %q", what)
	return Line{}
}

func TestLines(t *testing.T) {
	p := plantest.Small()
	for _, want := range []Line{
		{"Crew", "3 people, 8 person-days", "1 cook group"},
		{"Energy needed", "3000 kcal a person-day", "from 3000 (=1+1, day 1) to 3000 (=1+1, day 1); to eat from the packs 2800, planned 2660"},
		{"Food", "700 g a person-day", "5600 g in all, 3 bags"},
		{"Least-fed day", "95 % of the target", "=1+1, day 1"},
		{"Heaviest share", "17.0 % of capability", "=1+1, day 3 with 8.5 kg; nobody could split it below 17.0 %"},
		{"Fuel", "130 g with reserve", "2 × small canister"},
		{"Water to drink", "at most 4.0 L a person and day", "all together at most 10.5 L (day 1); to dry camps at most 2.0 L each (day 2)"},
		{"Cost", "19.48 EUR", "2.44 EUR a person-day; 1 price is unknown, so the true cost is higher"},
		{"Box for Valley post", "0.5 kg, 1 bag", "1 parcel: post from Tue 30 Jun 2026 to Fri 10 Jul 2026, picked up Tue 21 Jul 2026"},
		{"Findings", "1 must fix, 0 look at, 1 note", ""},
		{"Plan", "settled", "in 2 rounds; the last changed no load by 1 % or more"},
	} {
		if got := line(t, p, want.What); got != want {
			t.Errorf("got  %+v\nwant %+v", got, want)
		}
	}
	if got := When(p); got != "Mon 20 Jul 2026 to Wed 22 Jul 2026, 3 days." {
		t.Errorf("when: %q", got)
	}
}

// A container that a later leg takes over from an earlier one is still one.
func TestFuelCountsWhatIsBought(t *testing.T) {
	p := plantest.Small()
	legs := p.Cooking.Fuel
	again := legs[len(legs)-1]
	again.Needed, again.Containers = 0, slices.Clone(again.Containers)
	for i := range again.Containers {
		again.Containers[i].Brought = true
	}
	p.Cooking.Fuel = append(slices.Clone(legs), again)
	if got := line(t, p, "Fuel").More; got != "2 × small canister" {
		t.Errorf("fuel in %q", got)
	}
}

func TestUSUnits(t *testing.T) {
	p := plantest.Small()
	p.Trip.Units = units.US
	if got := line(t, p, "Heaviest share").More; !strings.Contains(got, "18.8 lb") { // 8.51 kg
		t.Errorf("heaviest share: %q", got)
	}
	if got := line(t, p, "Food").Value; got != "1.5 lb a person-day" {
		t.Errorf("food: %q", got)
	}
}

func TestNothingEntered(t *testing.T) {
	for name, p := range map[string]*plan.Plan{"empty": plantest.Empty(), "none": {}} {
		if got := line(t, p, "Plan").Value; got != "not made" {
			t.Errorf("%s: the plan is %q", name, got)
		}
		for _, l := range Lines(p) {
			if l.Value == "" {
				t.Errorf("%s: %s says nothing", name, l.What)
			}
			if strings.Contains(l.More, "unknown") {
				t.Errorf("%s: %s speaks of what is unknown: %s", name, l.What, l.More)
			}
		}
		if When(p) != "There are no days yet." {
			t.Errorf("%s: %q", name, When(p))
		}
	}
}

func TestBoundIsThatOfTheHeaviestStretch(t *testing.T) {
	p := plantest.Small()
	p.Carry.Stages[1].WorstBound = 0.1
	if got := line(t, p, "Heaviest share").More; !strings.Contains(got, "below 16.0 %") {
		t.Errorf("got %q", got)
	}
}

func TestTheDayABoxLeavesHome(t *testing.T) {
	p := plantest.Small()
	box := &p.Resupply.Boxes[0]
	box.SendOn, box.SendChosen = plantest.Start-14, true
	if got := line(t, p, "Box for Valley post").More; got != "1 parcel: post on Mon 6 Jul 2026, latest Fri 10 Jul 2026, picked up Tue 21 Jul 2026" {
		t.Errorf("chosen: %q", got)
	}
	box.Posted, box.PostFrom, box.PostBy = false, 0, 0
	if got := line(t, p, "Box for Valley post").More; got != "brought by somebody, leaves home Mon 6 Jul 2026, picked up Tue 21 Jul 2026" {
		t.Errorf("brought: %q", got)
	}
}
