package resupply

import (
	"math"
	"slices"
	"strings"
	"testing"

	"sumpter/app/demo"
	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func day(t *testing.T, text string) units.Date {
	t.Helper()
	date, err := units.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return date
}

func TestPostingInWords(t *testing.T) {
	from, by := day(t, "2026-08-15"), day(t, "2026-08-22")
	for _, c := range []struct {
		name string
		box  resupply.Box
		want string
	}{
		{"carried", resupply.Box{}, "taken there by somebody"},
		{"no date", resupply.Box{Posted: true}, "the trip has no start date: no posting days"},
		{"hold unknown", resupply.Box{Posted: true, PostBy: by}, "post by Sat 22 Aug; how early, nobody knows"},
		{"window", resupply.Box{Posted: true, PostFrom: from, PostBy: by}, "post Sat 15 Aug to Sat 22 Aug"},
		{"one day", resupply.Box{Posted: true, PostFrom: by, PostBy: by}, "post Sat 22 Aug to Sat 22 Aug"},
		{"no day", resupply.Box{Posted: true, PostFrom: by, PostBy: from}, "no day is right to post it"},
	} {
		if got := postingLine(&c.box); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestContentsInWords(t *testing.T) {
	p := &plan.Plan{Trip: &trip.Trip{Units: units.US, Currency: "USD"}, Legs: []trip.Leg{{FirstDay: 1, LastDay: 3}, {FirstDay: 4, LastDay: 6, From: 1}}}
	box := resupply.Box{Point: 1, Leg: 1, Bags: []string{"a", "b"}, Mass: units.FromGrams(453.59237 * 20), Parcels: make([]resupply.Parcel, 1), Fees: 950}
	for _, c := range []struct {
		fuel   []string
		bought bool
		want   string
	}{
		{nil, false, "No fuel is taken on there."},
		{[]string{"x", "y"}, true, "2 fuel containers are bought there."},
		{[]string{"x"}, true, "One fuel container is bought there."},
		{[]string{"x", "y"}, false, "2 fuel containers must get there too."},
		{[]string{"x"}, false, "One fuel container must get there too."},
	} {
		box.Fuel, box.FuelBoughtThere = c.fuel, c.bought
		text := contents(p, &box)
		for _, want := range []string{"days 4 to 6", "20 lb", "2 bags", "one parcel", "9.50 USD", c.want} {
			if !strings.Contains(text, want) {
				t.Errorf("%q does not say %q", text, want)
			}
		}
	}
}

func TestTurningBackInWords(t *testing.T) {
	if got := turnBack(&resupply.Box{TurnBackBy: 2}); !strings.HasSuffix(got, "the evening of day 2") {
		t.Errorf("got %q", got)
	}
	if got := turnBack(&resupply.Box{}); !strings.Contains(got, "no evening") {
		t.Errorf("got %q", got)
	}
}

func TestChoicesAreNamedByTheirPoints(t *testing.T) {
	s := openDemo(t)
	both := resupply.Choice{Points: []trip.PointID{1, 2}, Current: true, Recommended: true, HeaviestFood: 25 * units.Kilogram, Money: 4300, Why: prose.Verbatim("Least sum.")}
	none := resupply.Choice{}
	for _, c := range []struct{ got, want string }{
		{s.choices.name(both), "Quarry Halt post office + Tarn Hut"}, {s.choices.shortName(both), "day 3 + 6"},
		{s.choices.name(none), "all food from the start"}, {s.choices.shortName(none), "no stop"},
		{stateWord(both), "in use, advised"}, {stateWord(none), ""},
		{s.choices.moneyText(4300), "43.00"}, {s.choices.massText(25), "25 kg"}, {s.choices.massText(25.5), "25.5 kg"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	s.choices.shown = []resupply.Choice{both}
	if got := s.choices.tell(40); !strings.Contains(got, "In use, and advised: Least sum.") || !strings.Contains(got, "1 of 40") {
		t.Errorf("told: %q", got)
	}
	both.Recommended, both.Beaten = false, true
	s.choices.shown = []resupply.Choice{both}
	if got := s.choices.tell(1); !strings.Contains(got, "is beaten") {
		t.Errorf("told of a beaten one: %q", got)
	}
	if got := s.choices.tell(0); got != "The choices come with the plan." {
		t.Errorf("told of none: %q", got)
	}
}

func TestTroubleIsFoundByItsPoint(t *testing.T) {
	p := &plan.Plan{Findings: []findings.Finding{
		{Severity: findings.MustFix, Place: findings.Place{Point: 2}, What: prose.Verbatim("closed")},
		{Severity: findings.Note, Place: findings.Place{Point: 1}, What: prose.Verbatim("note")},
		{Severity: findings.LookAt, What: prose.Verbatim("elsewhere")},
	}}
	if got := findingsOf(p, 2); len(got) != 1 || got[0].What.String() != "closed" {
		t.Errorf("got %v", got)
	}
	if findingsOf(nil, 2) != nil || boxOf(nil, 2) != nil || boxOf(p, 9) != nil {
		t.Error("without a plan something is found")
	}
}

func TestTheWayShowsEveryPoint(t *testing.T) {
	s := openDemo(t)
	s.Refresh()
	s.choose(2)
	if got, _ := s.table.Selected(); got != 1 {
		t.Errorf("the table is on %d", got)
	}
	if !strings.Contains(s.about.name.Content, "Tarn Hut") {
		t.Errorf("told of %q", s.about.name.Content)
	}
	s.GoTo(findings.Place{Point: 1})
	if s.point != 1 || !strings.Contains(s.about.name.Content, "Quarry Halt") {
		t.Errorf("point %d, told of %q", s.point, s.about.name.Content)
	}
	if s.Waiting() != 1 {
		t.Errorf("%d wait; nobody knows how long the hut keeps a box", s.Waiting())
	}
}

func TestPointsInPoundsAndMiles(t *testing.T) {
	on := demo.Trip()
	on.Units = units.US
	s := openTrip(t, &on)
	for _, c := range []struct {
		title, text string
		got         func(p *trip.ResupplyPoint) float64
		want        float64
	}{
		{"Parcel up to lb", "50", func(p *trip.ResupplyPoint) float64 { return p.MaxParcel.Or(0).Pounds() }, 50},
		{"Length and girth in", "130", func(p *trip.ResupplyPoint) float64 { return float64(p.MaxGirth.Or(0)) }, 3.302},
		{"Detour mi", "1", func(p *trip.ResupplyPoint) float64 { return float64(p.Detour) }, 1609.344},
		{"Warmest °F", "77", func(p *trip.ResupplyPoint) float64 { return float64(p.StoreHigh.Or(0)) }, 25},
	} {
		s.cell(1, c.title)
		s.enter(c.text)
		if got := c.got(s.Document.Trip().Point(1)); math.Abs(got-c.want) > 1e-4 {
			t.Errorf("%s %q: %v, want %v (said %q)", c.title, c.text, got, c.want, s.Said)
		}
	}
	for _, i := range s.choices.table.Rows() {
		if s.choices.keyOf(i) == "" {
			t.Error("a choice without a key")
		}
	}
	s.choices.table.SortBy(1)
	rows := s.choices.table.Rows()
	for i := 1; i < len(rows); i++ {
		if s.choices.shown[rows[i-1]].Money > s.choices.shown[rows[i]].Money {
			t.Error("choices are not sorted by fees")
		}
	}
	s.choices.table.Focus()
	s.choices.table.MoveCursor(0, 0)
	want := s.choices.shown[rows[0]].Points
	s.choices.takeSelected()
	for _, p := range s.Document.Trip().Points {
		if p.Use != slices.Contains(want, p.ID) {
			t.Errorf("%s: used %v, the choice was %v", p.Name, p.Use, want)
		}
	}
	s.table.SortBy(3)
	if s.Name() != "resupply" || s.Title() == "" {
		t.Errorf("name %q, title %q", s.Name(), s.Title())
	}
}
