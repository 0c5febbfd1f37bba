package resupply

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func date(t *testing.T, text string) units.Date {
	t.Helper()
	d, err := units.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// Check values of testdata/check_values.csv, topic resupply, and the same days
// across a year's end and a leap day.
func TestPostingWindow(t *testing.T) {
	for _, c := range []struct{ pickUp, from, by string }{
		{"2026-07-20", "2026-06-20", "2026-07-09"},
		{"2027-01-04", "2026-12-05", "2026-12-24"},
		{"2028-03-05", "2028-02-04", "2028-02-23"},
		{"2027-03-05", "2027-02-03", "2027-02-22"},
	} {
		p := trip.ResupplyPoint{TransitDays: 7, FastestDays: 2, BufferDays: 4, HoldDays: optional.Of(30), HoldMargin: 2}
		w := postingWindow(&p, date(t, c.pickUp))
		if w.from.String() != c.from || w.by.String() != c.by {
			t.Errorf("pick-up %s: %s to %s, want %s to %s", c.pickUp, w.from, w.by, c.from, c.by)
		}
	}
}

func anyPoint(rt *rapid.T) *trip.ResupplyPoint {
	n := func(name string, most int) int { return rapid.IntRange(0, most).Draw(rt, name) }
	p := &trip.ResupplyPoint{
		ID: 1, Name: "Mill", Kind: trip.PostOffice, AfterDay: 1 + n("after", 20), Use: true,
		TransitDays: n("transit", 15), BufferDays: n("buffer", 14), HoldMargin: n("margin", 3),
	}
	p.FastestDays = n("fastest", p.TransitDays)
	if n("hold known", 3) > 0 {
		p.HoldDays = optional.Of(n("hold", 40))
	}
	for i, day := range trip.OpenDayNames() {
		if n("open", 3) > 0 {
			p.OpenDays = append(p.OpenDays, trip.OpenDayNames()[i])
			_ = day
		}
	}
	return p
}

// Whatever the calendar: a box posted within its window, however fast or slow
// within its transit, is there on the day and has not been sent back.
func TestABoxPostedInTimeIsThere(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := anyPoint(rt)
		start := date(t, "2023-12-01").AddDays(rapid.IntRange(0, 1900).Draw(rt, "start"))
		for range rapid.IntRange(0, 3).Draw(rt, "closed") {
			p.ClosedDates = append(p.ClosedDates, start.AddDays(rapid.IntRange(0, 25).Draw(rt, "day")))
		}
		tr := &trip.Trip{Start: start, Days: make([]trip.Day, 25)}
		box := Box{Posted: true}
		list := box.date(tr, p)
		codes := map[string]bool{}
		for _, f := range list {
			codes[f.Code] = true
		}
		if openOn(p, box.PickUp) == codes["point-closed"] {
			rt.Fatalf("picked up %s, a %s: %v", box.PickUp, box.PickUp.Weekday().Short(), list)
		}
		if late := box.PickUp - tr.DateOf(p.AfterDay); late < 0 || late > 1 || (late == 1) != codes["pick-up-moved"] {
			rt.Fatalf("picked up %d days late: %v", late, list)
		}
		hold, known := p.HoldDays.Get()
		if known == codes["hold-unknown"] || known != box.PostFrom.IsSet() {
			rt.Fatalf("hold %v, window from %s: %v", p.HoldDays, box.PostFrom, list)
		}
		if known && (box.PostFrom > box.PostBy) != codes["no-posting-day"] {
			rt.Fatalf("window %s to %s: %v", box.PostFrom, box.PostBy, list)
		}
		for day := max(box.PostFrom, box.PostBy-30); day <= box.PostBy; day++ {
			for transit := p.FastestDays; transit <= p.TransitDays; transit++ {
				arrival := day.AddDays(transit)
				if arrival > box.PickUp || known && box.PickUp > arrival.AddDays(hold) && p.HoldMargin >= 0 {
					rt.Fatalf("posted %s, there after %d days, picked up %s, held %d", day, transit, box.PickUp, hold)
				}
			}
		}
		if known && holdNeeded(p) > 0 {
			p.HoldDays = optional.Of(holdNeeded(p))
			if w := postingWindow(p, box.PickUp); w.from != w.by {
				rt.Fatalf("with the hold asked for the window is %s to %s", w.from, w.by)
			}
		}
	})
}

func TestDatesThatTroubleAreTold(t *testing.T) {
	saturday := date(t, "2026-08-15")
	base := trip.ResupplyPoint{ID: 4, Name: "Mill", Kind: trip.PostOffice, AfterDay: 2, TransitDays: 5, FastestDays: 2, BufferDays: 5,
		HoldDays: optional.Of(30), HoldMargin: 2, Opening: trip.Opening{OpenDays: []string{"Mon", "Tue", "Wed", "Thu", "Fri"}}}
	for _, c := range []struct {
		name     string
		start    units.Date
		change   func(*trip.ResupplyPoint)
		code     string
		severity findings.Severity
		says     string
	}{
		{"closed over Sunday", saturday - 1, nil, "point-closed", findings.MustFix, "opens on Mon 17 Aug 2026: move the start by 2 days"},
		{"open next morning", saturday - 1, func(p *trip.ResupplyPoint) { p.OpenDays = []string{"Sun"} }, "pick-up-moved", findings.LookAt, "Sun 16 Aug 2026"},
		{"holiday", saturday - 3, func(p *trip.ResupplyPoint) { p.ClosedDates = []units.Date{saturday - 2, saturday - 1} }, "point-closed", findings.MustFix, "Mon 17 Aug 2026"},
		{"never open", saturday - 1, func(p *trip.ResupplyPoint) { p.OpenDays = []string{"never"} }, "point-closed", findings.MustFix, "Enter its opening days"},
		{"short hold", saturday - 5, func(p *trip.ResupplyPoint) { p.HoldDays = optional.Of(5) }, "no-posting-day", findings.MustFix, "A hold of 10 days would do"},
		{"no hold", saturday - 5, func(p *trip.ResupplyPoint) { p.HoldDays = optional.Unknown[int]() }, "hold-unknown", findings.LookAt, "Ask there"},
		{"far along", saturday - 12, func(p *trip.ResupplyPoint) { p.AfterDay, p.HoldDays, p.OpenDays = 20, optional.Of(14), nil }, "posted-on-trip", findings.LookAt, "posts it by"},
		{"packed late", saturday - 5, nil, "packed-too-late", findings.MustFix, "Pack at least 9 days earlier"},
	} {
		p := base
		if c.change != nil {
			c.change(&p)
		}
		tr := &trip.Trip{Start: c.start, Days: make([]trip.Day, 30)}
		tr.Settings.PackingNight = c.start.AddDays(-1)
		if c.code == "packed-too-late" {
			// Picked up on the second day, ten days after the latest posting.
			tr.Settings.PackingNight = c.start
		}
		box := Box{Posted: true}
		found := false
		for _, f := range box.date(tr, &p) {
			if f.Code == c.code {
				found = true
				if f.Severity != c.severity || !strings.Contains(f.What.String()+f.Remedy.String(), c.says) || f.Place.Point != 4 || f.Why.IsZero() {
					t.Errorf("%s: %+v", c.name, f)
				}
			}
		}
		if !found {
			t.Errorf("%s: no %s", c.name, c.code)
		}
	}
}

func TestWithoutAStartThereAreNoDates(t *testing.T) {
	box := Box{Posted: true}
	p := trip.ResupplyPoint{AfterDay: 1, Opening: trip.Opening{OpenDays: []string{"Mon"}}}
	if list := box.date(&trip.Trip{}, &p); list != nil || box.PickUp.IsSet() || box.PostBy.IsSet() {
		t.Errorf("%+v, %+v", box, list)
	}
}
