package bench

import (
	"context"
	"slices"
	"time"

	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// restOf is a rest of the trip with what it is made of.
type restOf struct {
	plan    *plan.Plan
	trip    *trip.Trip
	from    int
	rest    *onward.Rest         // nil: on its way
	waiting []func(*onward.Rest) // who asked while it was on its way
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

// Way is the rest of the trip from this morning, nil where all is as it was
// packed or where that is not known yet.
func (b *Bench) Way() *onward.Rest {
	if b.Plan() == nil || !b.Trip().Progress.UnderWay() {
		return nil
	}
	if known := b.known(b.Morning()); known != nil && known.rest != nil && known.rest.Changed {
		return known.rest
	}
	return nil
}

// Rest plans the rest of the trip from the morning of a day, away from the
// screen, and hands it to done on the screen's thread: at once if it is known
// already, not at all without a plan.
func (b *Bench) Rest(from int, done func(*onward.Rest)) {
	p, t := b.Plan(), b.Trip()
	if p == nil {
		return
	}
	if known := b.known(from); known != nil {
		if known.rest != nil {
			done(known.rest)
		} else {
			known.waiting = append(known.waiting, done)
		}
		return
	}
	asked := &restOf{plan: p, trip: t, from: from, waiting: []func(*onward.Rest){done}}
	b.rests = append(b.rests, asked)
	if more := len(b.rests) - mostRests; more > 0 {
		b.rests = slices.Delete(b.rests, 0, more)
	}
	var rest *onward.Rest
	b.Document.Background(func() {
		rest, _ = onward.Make(context.Background(), p, &t.Progress, from) // only its context can fail, and that has no end
	}, func() {
		asked.rest = rest
		for _, tell := range asked.waiting {
			tell(rest)
		}
		asked.waiting = nil
	})
}

// known is the rest from a morning of the trip and plan as they are, or nil.
func (b *Bench) known(from int) *restOf {
	p, t := b.Plan(), b.Trip()
	for _, known := range b.rests {
		if known.plan == p && known.trip == t && known.from == from {
			return known
		}
	}
	return nil
}
