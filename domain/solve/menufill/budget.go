package menufill

import "context"

// budget counts the work done, so that the same limit gives the same plan on every machine; the context only cuts it short.
type budget struct {
	ctx     context.Context
	used    int64
	limit   int64
	asked   int64 // work at which the context was last asked
	stopped bool

	report   func() // hears of progress; may be nil
	reported int64  // work at which it last did
}

// The work between two looks at the context, about a millisecond, and between two reports.
const (
	askEvery    = 1 << 16
	reportEvery = 1 << 21
)

func (b *budget) spend(work int64) {
	b.used += work
	if b.used-b.asked >= askEvery {
		b.asked = b.used
		b.stopped = b.stopped || b.ctx.Err() != nil
	}
	if b.report != nil && b.used-b.reported >= reportEvery {
		b.reported = b.used
		b.report()
	}
}

// done tells that the work must end: the context has, or the limit is reached.
func (b *budget) done() bool { return b.stopped || b.used >= b.limit }

// past tells that the work must end or has reached a mark set for one part of it.
func (b *budget) past(mark int64) bool { return b.done() || b.used >= mark }
