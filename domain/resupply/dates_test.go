package resupply

import (
	"strings"
	"testing"

	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/posting"
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

func TestDatesThatTroubleAreTold(t *testing.T) {
	saturday := date(t, "2026-08-15")
	weekdays := trip.Opening{OpenDays: []string{"Mon", "Tue", "Wed", "Thu", "Fri"}}
	base := trip.ResupplyPoint{ID: 4, Name: "Mill", Kind: trip.PostOffice, AfterDay: 2, TransitDays: 5, FastestDays: 2, BufferDays: 5,
		HoldDays: optional.Of(30), HoldMargin: 2, Opening: weekdays}
	type point = trip.ResupplyPoint
	for _, c := range []struct {
		name     string
		start    units.Date
		change   func(*trip.Trip, *point)
		code     string
		severity findings.Severity
		says     string
	}{
		{"closed over Sunday", saturday - 1, nil, "point-closed", findings.MustFix, "opens on Mon 17 Aug 2026: move the start by 2 days"},
		{"open next morning", saturday - 1, func(_ *trip.Trip, p *point) { p.OpenDays = []string{"Sun"} }, "pick-up-moved", findings.LookAt, "Sun 16 Aug 2026"},
		{"holiday", saturday - 3, func(_ *trip.Trip, p *point) { p.ClosedDates = []units.Date{saturday - 2, saturday - 1} }, "point-closed", findings.MustFix, "Mon 17 Aug 2026"},
		{"never open", saturday - 1, func(_ *trip.Trip, p *point) { p.OpenDays = []string{"never"} }, "point-closed", findings.MustFix, "Enter its opening days"},
		{"short hold", saturday - 5, func(_ *trip.Trip, p *point) { p.HoldDays = optional.Of(5) }, "no-posting-day", findings.MustFix, "Days of hold that would do: 10."},
		{"no hold", saturday - 5, func(_ *trip.Trip, p *point) { p.HoldDays = optional.Unknown[int]() }, "hold-unknown", findings.LookAt, "Ask there"},
		{"far along", saturday - 12, func(_ *trip.Trip, p *point) { p.AfterDay, p.HoldDays, p.OpenDays = 20, optional.Of(14), nil }, "posted-on-trip", findings.LookAt, "nobody is named"},
		{"far along, by a walker", saturday - 12, func(_ *trip.Trip, p *point) { p.AfterDay, p.Sending.Sender = 20, 1 }, "sender-away", findings.MustFix, "Ann is to send"},
		{"packed late", saturday - 5, func(t *trip.Trip, _ *point) { t.Settings.PackingNight = t.Start }, "packed-too-late", findings.MustFix, "Pack at least 9 days earlier"},
		{"packed a day late", saturday - 5, func(t *trip.Trip, _ *point) { t.Settings.PackingNight = t.Start - 8 }, "packed-too-late", findings.MustFix, "Pack at least 1 day earlier"},
		{"chosen before it is packed", saturday - 5, func(t *trip.Trip, p *point) {
			t.Settings.PackingNight, p.Sending.SendOn = t.Start-12, t.Start-14
		}, "packed-too-late", findings.MustFix, "Pack at least 2 days earlier"},
		{"chosen too late", saturday - 5, func(t *trip.Trip, p *point) { p.Sending.SendOn = t.Start - 8 }, "sent-too-late", findings.MustFix, "the latest day is Sat 1 Aug 2026"},
		{"chosen too early", saturday - 5, func(t *trip.Trip, p *point) { p.Sending.SendOn = t.Start - 40 }, "sent-too-early", findings.MustFix, "before Sun 12 Jul 2026"},
		{"chosen on a Sunday", saturday - 5, func(t *trip.Trip, p *point) {
			t.Posting, p.Sending.SendOn = trip.UsualPosting(), date2(2026, 7, 26)
		}, "no-boxes-taken", findings.MustFix, "Sun 26 Jul 2026"},
		{"fetched by who is away", saturday - 5, func(t *trip.Trip, p *point) {
			t.Crew[0].FirstDay, p.Sending.Collector = 9, 1
		}, "collector-away", findings.MustFix, "not with the group on day 2"},
	} {
		p := base
		tr := &trip.Trip{Start: c.start, Days: make([]trip.Day, 30), Crew: []trip.Member{{ID: 1, Name: "Ann"}}}
		tr.Settings.PackingNight = c.start.AddDays(-60)
		if c.change != nil {
			c.change(tr, &p)
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
			t.Errorf("%s: no %s in %+v", c.name, c.code, box.date(tr, &p))
		}
	}
}

func date2(year, month, day int) units.Date {
	d, _ := units.NewDate(year, month, day)
	return d
}

// Who joins at the point in the evening may fetch the box; a helper may send
// it while all are away; a chosen day that is right is silent.
func TestDatesThatTroubleNobody(t *testing.T) {
	tr := &trip.Trip{Start: date(t, "2027-08-25"), Days: make([]trip.Day, 30), Crew: []trip.Member{{ID: 1, Name: "Ann", FirstDay: 21}}, Posting: trip.UsualPosting()}
	tr.Settings.PackingNight = date(t, "2027-08-20")
	p := trip.ResupplyPoint{ID: 4, Name: "Mill", Kind: trip.PostOffice, AfterDay: 20, TransitDays: 3, FastestDays: 1, BufferDays: 3, HoldDays: optional.Of(14), HoldMargin: 2}
	p.Sending = trip.Sending{Collector: 1, Helper: "Bo", SendOn: date(t, "2027-09-03")}
	box := Box{Posted: true}
	if list := box.date(tr, &p); len(list) > 0 {
		t.Errorf("%+v", list)
	}
	if box.PickUp != date(t, "2027-09-13") || box.PostFrom != date(t, "2027-08-31") || box.PostBy != date(t, "2027-09-07") || box.SendOn != p.Sending.SendOn || !box.SendChosen || box.LiesThere != 7 {
		t.Errorf("%+v", box)
	}
}

func TestLabelOfABox(t *testing.T) {
	tr := &trip.Trip{Posting: trip.Posting{ReturnAddress: "Heron club\n\n 1 Dyke Road \r\nSaltmarsh"}}
	p := trip.ResupplyPoint{ID: 4, Name: "Mill", Address: "Post Office\nMill Lane 2", Sending: trip.Sending{Addressee: "Ann Example", CareOf: "the warden"}}
	box := Box{Posted: true, Bags: []string{"a"}, PickUp: 20_000}
	if list := box.address(tr, &p); len(list) > 0 {
		t.Errorf("%+v", list)
	}
	if to, from := strings.Join(box.Label.To, "|"), strings.Join(box.Label.From, "|"); to != "Ann Example|c/o the warden|Post Office|Mill Lane 2" || from != "Heron club|1 Dyke Road|Saltmarsh" {
		t.Errorf("to %s, from %s, %+v", to, from, box.Label)
	}
	p.Sending.Addressee, p.Address, tr.Posting.ReturnAddress = "", " ", ""
	list := box.address(tr, &p)
	if len(list) != 1 || !strings.Contains(list[0].What.String(), "lacks the name of who fetches it, an address and a return address.") {
		t.Errorf("%+v", list)
	}
	box.Posted = false
	if list := box.address(tr, &p); len(list) > 0 {
		t.Errorf("a box that is brought needs no label: %+v", list)
	}
}

func TestWithoutAStartThereAreNoDates(t *testing.T) {
	box := Box{Posted: true}
	p := trip.ResupplyPoint{AfterDay: 1, Opening: trip.Opening{OpenDays: []string{"Mon"}}}
	if list := box.date(&trip.Trip{}, &p); list != nil || box.PickUp.IsSet() || box.PostBy.IsSet() {
		t.Errorf("%+v, %+v", box, list)
	}
}

// What somebody brings has no days of posting, whatever is known of the place;
// a hut gets its boxes so unless days of transit were given for it.
func TestWhatIsBroughtHasNoPostingDays(t *testing.T) {
	tr := &trip.Trip{Start: date(t, "2026-08-12"), Days: make([]trip.Day, 9)}
	for _, kind := range []trip.PointKind{trip.Cache, trip.Hut, trip.ShopOnWay, trip.Meeting} {
		p := trip.ResupplyPoint{ID: 4, Name: "Mill", Kind: kind, AfterDay: 4, BufferDays: 1, Sending: trip.Sending{Helper: "Bo"}}
		box := Box{Posted: posting.Sent(&p)}
		if list := box.date(tr, &p); len(list) > 0 || box.Posted || box.PostFrom.IsSet() || box.PostBy.IsSet() || !box.SendOn.IsSet() {
			t.Errorf("%s: %+v, %+v", kind, box, list)
		}
		if p.TransitDays = 2; posting.Sent(&p) != (kind == trip.Hut || kind == trip.ShopOnWay) {
			t.Errorf("%s with days of transit: sent %v", kind, posting.Sent(&p))
		}
	}
}

// One day is enough of a window.
func TestOneDayOfPostingIsEnough(t *testing.T) {
	tr := &trip.Trip{Start: date(t, "2026-08-12"), Days: make([]trip.Day, 9)}
	p := trip.ResupplyPoint{ID: 4, Name: "Mill", Kind: trip.PostOffice, AfterDay: 4, TransitDays: 5, FastestDays: 2, BufferDays: 5, HoldMargin: 2, HoldDays: optional.Of(10)}
	p.Sending.Helper = "Bo"
	box := Box{Posted: true}
	if list := box.date(tr, &p); len(list) > 0 || box.PostFrom != box.PostBy || !box.PostBy.IsSet() {
		t.Errorf("%+v, %+v", box, list)
	}
	p.HoldDays = optional.Of(9)
	if list := box.date(tr, &p); len(list) != 1 || list[0].Code != "no-posting-day" {
		t.Errorf("a day less: %+v", list)
	}
}

// Dates on either side of an edge: the last and first day of a window, packing
// on the day a box leaves, who sends it before setting off.
func TestDatesOnAnEdge(t *testing.T) {
	start := date(t, "2026-08-12")
	type point = trip.ResupplyPoint
	for _, c := range []struct {
		name   string
		change func(*trip.Trip, *point)
		codes  string
	}{
		{"on the latest day", func(_ *trip.Trip, p *point) { p.Sending.SendOn = date(t, "2026-08-03") }, ""},
		{"a day after", func(_ *trip.Trip, p *point) { p.Sending.SendOn = date(t, "2026-08-04") }, "sent-too-late"},
		{"on the earliest day", func(_ *trip.Trip, p *point) { p.Sending.SendOn = date(t, "2026-07-14") }, ""},
		{"a day before", func(_ *trip.Trip, p *point) { p.Sending.SendOn = date(t, "2026-07-13") }, "sent-too-early"},
		{"brought on a Sunday", func(tr *trip.Trip, p *point) {
			tr.Posting, p.Kind, p.TransitDays, p.BufferDays, p.Sending.SendOn = trip.UsualPosting(), trip.Cache, 0, 0, date(t, "2026-08-09")
		}, ""},
		{"packed on the day it leaves", func(tr *trip.Trip, _ *point) { tr.Settings.PackingNight = date(t, "2026-08-03") }, ""},
		{"packed the day after", func(tr *trip.Trip, _ *point) { tr.Settings.PackingNight = date(t, "2026-08-04") }, "packed-too-late"},
		{"sent by a walker before setting off", func(_ *trip.Trip, p *point) { p.Sending.Sender = 1 }, ""},
		{"sent by a walker who joins later", func(tr *trip.Trip, p *point) {
			tr.Crew[0].FirstDay, p.AfterDay, p.Sending.Sender = 9, 17, 1 // leaves home on day 7
		}, ""},
		{"sent by a walker who is there by then", func(tr *trip.Trip, p *point) {
			tr.Crew[0].FirstDay, p.AfterDay, p.Sending.Sender = 7, 17, 1
		}, "sender-away"},
		{"sent by a walker when all is over", func(_ *trip.Trip, p *point) {
			p.Sending.Sender, p.Sending.SendOn = 1, date(t, "2026-09-20")
		}, "sent-too-late"},
		{"fetched by who goes home the next day", func(tr *trip.Trip, p *point) { tr.Crew[0].LastDay, p.Sending.Collector = 2, 1 }, ""},
		{"fetched by who went home the day before", func(tr *trip.Trip, p *point) { tr.Crew[0].LastDay, p.Sending.Collector = 1, 1 }, "collector-away"},
		{"leaves on the first day", func(_ *trip.Trip, p *point) { p.AfterDay = 11 }, "posted-on-trip"},
		{"leaves the day before", func(_ *trip.Trip, p *point) { p.AfterDay = 10 }, ""},
		{"somebody meets the group", func(_ *trip.Trip, p *point) { p.Kind = trip.Meeting }, ""},
	} {
		p := trip.ResupplyPoint{ID: 4, Name: "Mill", Kind: trip.PostOffice, AfterDay: 2, TransitDays: 5, FastestDays: 2, BufferDays: 5, HoldDays: optional.Of(30), HoldMargin: 2}
		tr := &trip.Trip{Start: start, Days: make([]trip.Day, 30), Crew: []trip.Member{{ID: 1, Name: "Ann"}}}
		c.change(tr, &p)
		box := Box{Posted: posting.Sent(&p)}
		var codes []string
		for _, f := range box.date(tr, &p) {
			codes = append(codes, f.Code)
		}
		if got := strings.Join(codes, " "); got != c.codes {
			t.Errorf("%s: %q, want %q (leaves on %s)", c.name, got, c.codes, box.SendOn)
		}
	}
}
