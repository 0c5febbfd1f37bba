package posting_test

import (
	"testing"

	"pgregory.net/rapid"

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

// fetched makes a trip that reaches a point on an evening.
func fetched(evening units.Date, p *trip.ResupplyPoint) *trip.Trip {
	p.AfterDay = 3
	return &trip.Trip{Start: evening.AddDays(-2), Days: make([]trip.Day, 5), Points: []trip.ResupplyPoint{*p}}
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
		p := trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 7, FastestDays: 2, BufferDays: 4, HoldDays: optional.Of(30), HoldMargin: 2}
		got := posting.Of(fetched(date(t, c.pickUp), &p), &p)
		if got.From.String() != c.from || got.By.String() != c.by || got.On != got.By || got.Chosen || got.LiesThere != 4 {
			t.Errorf("pick-up %s: %+v, want %s to %s", c.pickUp, got, c.from, c.by)
		}
	}
}

// A post near home that is shut on Sunday moves both ends inwards: by 12 July
// 2026, a Sunday, is by the 11th; from 21 June, a Sunday, is from the 22nd.
func TestSundaysAreNoPostingDays(t *testing.T) {
	p := trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 5, FastestDays: 1, BufferDays: 3, HoldDays: optional.Of(30), HoldMargin: 2}
	tr := fetched(date(t, "2026-07-20"), &p)
	tr.Posting = trip.UsualPosting()
	got := posting.Of(tr, &p)
	if got.By != date(t, "2026-07-11") || got.From != date(t, "2026-06-22") || got.LiesThere != 4 {
		t.Errorf("%+v", got)
	}
	tr.Posting.ClosedDates = []units.Date{got.By, got.From}
	if got := posting.Of(tr, &p); got.By != date(t, "2026-07-10") || got.From != date(t, "2026-06-23") {
		t.Errorf("with holidays %+v", got)
	}
	p.Kind = trip.Cache
	if got := posting.Of(tr, &p); got.By != date(t, "2026-07-12") || got.Sent {
		t.Errorf("brought by somebody %+v", got)
	}
}

func TestChosenDay(t *testing.T) {
	p := trip.ResupplyPoint{Kind: trip.PostOffice, TransitDays: 7, BufferDays: 4}
	p.Sending.SendOn = date(t, "2026-07-01")
	tr := fetched(date(t, "2026-07-20"), &p)
	if got := posting.Of(tr, &p); got.On != p.Sending.SendOn || !got.Chosen || got.LiesThere != 12 || got.OnTheWay != 7 || !got.Holds(got.On) {
		t.Errorf("%+v", got)
	}
	p.Sending.SendOn = date(t, "2026-07-18")
	if got := posting.Of(tr, &p); got.LiesThere != 0 || got.Holds(got.On) {
		t.Errorf("too late: %+v", got)
	}
}

func TestWhoMeetsTheGroupComesOnTheDay(t *testing.T) {
	p := trip.ResupplyPoint{Kind: trip.Meeting, TransitDays: 3, BufferDays: 3, HoldDays: optional.Of(1)}
	got := posting.Of(fetched(20_000, &p), &p)
	if got.On != 20_000 || got.From.IsSet() || got.Sent || got.LiesThere != 0 {
		t.Errorf("%+v", got)
	}
}

func TestWithoutAStartThereAreNoDays(t *testing.T) {
	p := trip.ResupplyPoint{Kind: trip.PostOffice, AfterDay: 1}
	p.Sending.SendOn = 20_000
	if got := posting.Of(&trip.Trip{}, &p); got != (posting.Calendar{Sent: true}) {
		t.Errorf("%+v", got)
	}
}

func opening(rt *rapid.T, what string, from units.Date) (o trip.Opening) {
	for _, day := range trip.OpenDayNames() {
		if rapid.IntRange(0, 4).Draw(rt, what+" "+day) > 0 {
			o.OpenDays = append(o.OpenDays, day)
		}
	}
	for range rapid.IntRange(0, 3).Draw(rt, what+" holidays") {
		o.ClosedDates = append(o.ClosedDates, from.AddDays(rapid.IntRange(-50, 25).Draw(rt, "holiday")))
	}
	return o
}

func anyPoint(rt *rapid.T, start units.Date) *trip.ResupplyPoint {
	n := func(name string, most int) int { return rapid.IntRange(0, most).Draw(rt, name) }
	p := &trip.ResupplyPoint{
		ID: 1, Name: "Mill", Kind: rapid.SampledFrom(trip.PointKinds()).Draw(rt, "kind"), AfterDay: 1 + n("after", 20), Use: true,
		TransitDays: n("transit", 15), BufferDays: n("buffer", 14), HoldMargin: n("margin", 3), Opening: opening(rt, "point", start),
	}
	p.FastestDays = n("fastest", p.TransitDays)
	if n("hold known", 3) > 0 {
		p.HoldDays = optional.Of(n("hold", 40))
	}
	return p
}

// Whatever the calendar, over year ends, leap days, Sundays and holidays: a
// box that leaves home within its window, however fast or slow within its
// transit, is there on the day and has not been sent back; and the days at
// home, on the way and there add up.
func TestABoxSentInTimeIsThere(t *testing.T) {
	first := date(t, "2023-12-01")
	rapid.Check(t, func(rt *rapid.T) {
		start := first.AddDays(rapid.IntRange(0, 1900).Draw(rt, "start"))
		p := anyPoint(rt, start)
		tr := &trip.Trip{Start: start, Days: make([]trip.Day, 25), Posting: trip.Posting{Opening: opening(rt, "post", start)}}
		c := posting.Of(tr, p)
		if late := c.PickUp - tr.DateOf(p.AfterDay); late < 0 || late > 1 || (late == 1) != c.Morning {
			rt.Fatalf("picked up %d days late: %+v", late, c)
		}
		if c.Open != p.OpenOn(c.PickUp) || !c.Open && c.NextOpen.IsSet() && (!p.OpenOn(c.NextOpen) || c.NextOpen <= c.PickUp.AddDays(1)) {
			rt.Fatalf("open or not: %+v of %+v", c, p)
		}
		hold, known := p.HoldDays.Get()
		if known != c.From.IsSet() && p.Kind != trip.Meeting {
			rt.Fatalf("hold %v, window from %s", p.HoldDays, c.From)
		}
		if c.Sent && c.On.IsSet() && !tr.Posting.OpenOn(c.By) {
			rt.Fatalf("sent by %s, when no boxes are taken", c.By)
		}
		if c.Sent && c.From.IsSet() && !tr.Posting.OpenOn(c.From) {
			rt.Fatalf("sent from %s on, when no boxes are taken", c.From)
		}
		for day := max(c.From, c.By-60); day <= c.By; day++ {
			if !c.Holds(day) {
				rt.Fatalf("%s is not in its own window", day)
			}
			for transit := p.FastestDays; transit <= p.TransitDays && c.Sent; transit++ {
				arrival := day.AddDays(transit)
				if arrival > c.PickUp || known && c.PickUp > arrival.AddDays(hold) {
					rt.Fatalf("sent %s, there after %d days, picked up %s, held %d", day, transit, c.PickUp, hold)
				}
			}
		}
		if c.On == c.By && c.On.AddDays(c.OnTheWay+c.LiesThere) != c.PickUp {
			rt.Fatalf("%+v does not add up", c)
		}
		if known && posting.HoldNeeded(p) >= 0 && p.Kind != trip.Meeting {
			p.HoldDays = optional.Of(posting.HoldNeeded(p))
			tr.Posting = trip.Posting{}
			if c := posting.Of(tr, p); c.From != c.By {
				rt.Fatalf("with the hold asked for the window is %s to %s", c.From, c.By)
			}
		}
	})
}
