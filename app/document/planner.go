package document

import (
	"context"

	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// planner plans the newest trip away from the screen. A newer trip cancels
// the run of an older one, whose plan is never shown.
type planner struct {
	document *Document
	make     func(ctx context.Context, t *trip.Trip, say func(stage prose.Text)) (*plan.Plan, error)
	newest   int // number of the last run started
	cancel   context.CancelFunc
	current  *plan.Plan
	previous *plan.Plan // the plan before the last edit, to tell what it changed
	busy     bool
}

func (p *planner) start(t *trip.Trip) {
	p.stop()
	ctx, cancel := context.WithCancel(context.Background())
	p.newest++
	number := p.newest
	p.cancel, p.busy = cancel, true
	p.document.listeners.tellPlanning(prose.Text{})
	p.document.scheduler.Background(func() {
		made, err := p.make(ctx, t, func(stage prose.Text) {
			p.document.scheduler.Screen(func() {
				if number == p.newest {
					p.document.listeners.tellPlanning(stage)
				}
			})
		})
		p.document.scheduler.Screen(func() {
			if number != p.newest {
				return
			}
			cancel()
			p.busy, p.cancel = false, nil
			if err == nil {
				p.previous, p.current = p.current, made
			}
			p.document.listeners.tellPlan()
		})
	})
}

// keep keeps the finished plan if nothing but progress differs from the trip
// it was made from: progress changes no plan. It tells whether it could.
func (p *planner) keep(was, now *trip.Trip) bool {
	if p.busy || p.current == nil || p.current.Trip == nil {
		return false
	}
	before, after := *was, *now
	before.Progress, after.Progress = trip.Progress{}, trip.Progress{}
	if !trip.Equal(&before, &after) {
		return false
	}
	same, planned := *p.current, *p.current.Trip
	planned.Progress = now.Canonical().Progress
	same.Trip = &planned
	p.current = &same
	return true
}

func (p *planner) stop() {
	if p.cancel != nil {
		p.cancel()
		p.cancel = nil
	}
}

// Replan plans the trip as it is.
func (d *Document) Replan() { d.planner.start(d.trip) }

// CancelPlanning stops the run under way; the old figures stay.
func (d *Document) CancelPlanning() {
	if d.planner.busy {
		d.planner.stop()
		d.planner.newest++
		d.planner.busy = false
		d.listeners.tellPlan()
	}
}

// Plan is the newest finished plan, nil before the first.
func (d *Document) Plan() *plan.Plan { return d.planner.current }

// PlanBefore is the plan that Plan replaced, nil if there was none.
func (d *Document) PlanBefore() *plan.Plan { return d.planner.previous }

// Planning tells whether Plan is older than Trip and a new one is on its way.
func (d *Document) Planning() bool { return d.planner.busy }
