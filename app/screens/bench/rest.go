package bench

import (
	"context"
	"time"

	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// restOf is a rest of the trip with what it was made of.
type restOf struct {
	plan *plan.Plan
	trip *trip.Trip
	rest *onward.Rest
}

// mostRests are kept: that of today, and those of the mornings looked at last.
const mostRests = 4

// Today is the calendar's date.
func (b *Bench) Today() units.Date {
	if b.Calendar != nil {
		return b.Calendar()
	}
	year, month, day := time.Now().Date()
	date, err := units.NewDate(year, int(month), day)
	if err != nil {
		return 0
	}
	return date
}

// Morning is the day from whose morning the rest of the trip is ahead.
func (b *Bench) Morning() int {
	return onward.Morning(b.Trip(), &b.Trip().Progress, b.Today())
}

// Rest plans the rest of the trip from the morning of a day, away from the
// screen, and hands it to done on the screen's thread: at once if it is known
// already, not at all without a plan.
func (b *Bench) Rest(from int, done func(*onward.Rest)) {
	p, t := b.Plan(), b.Trip()
	if p == nil {
		return
	}
	for _, known := range b.rests {
		if known.plan == p && known.trip == t && known.rest.From == from {
			done(known.rest)
			return
		}
	}
	var rest *onward.Rest
	var err error
	b.Document.Background(func() {
		rest, err = onward.Make(context.Background(), p, &t.Progress, from)
	}, func() {
		if err != nil {
			return // only its context can fail, and that has no end
		}
		b.rests = append(b.rests, restOf{p, t, rest})
		if more := len(b.rests) - mostRests; more > 0 {
			b.rests = append([]restOf(nil), b.rests[more:]...)
		}
		done(rest)
	})
}
