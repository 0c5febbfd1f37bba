package prints

import (
	"context"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/exporter/print/booklet"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/pocketcard"
	"sumpter/exporter/print/press"
)

// OfTheWay tells whether a paper is for the rest of a trip that is under way.
func (k Kind) OfTheWay() bool { return k == RestCards || k == RestBook }

// OnWay tells whether a trip is under way and has papers for its rest.
func OnWay(p *plan.Plan) bool {
	return p.Trip != nil && !p.Refused() && len(p.Trip.Days) > 0 && len(p.Trip.Crew) > 0 && p.Trip.Progress.UnderWay()
}

// stillThere is a plan without the bags that were gone before a day.
func stillThere(p *plan.Plan, from int) *plan.Plan {
	there := *p
	there.Bags.Bags = slices.DeleteFunc(slices.Clone(p.Bags.Bags), func(b bags.Bag) bool {
		end := p.Trip.Progress.BagEnd(b.Key)
		return end != nil && end.Day < from
	})
	return &there
}

// drawRest draws a paper for the rest of a trip; nothing for one that is not
// under way.
func drawRest(ctx context.Context, packed *press.Press, kind Kind, options *Options) ([]page.Page, error) {
	if !OnWay(packed.Plan) {
		return nil, nil
	}
	done := &packed.Trip.Progress
	from := options.Morning
	if from == 0 {
		from = onward.Morning(packed.Trip, done, 0)
	}
	rest, err := onward.Make(ctx, packed.Plan, done, from)
	if err != nil {
		return nil, err
	}
	p := packed.Of(stillThere(rest.Plan, from))
	if kind == RestBook {
		return booklet.DrawRest(p, from, options.day, options.Recipes), nil
	}
	return pocketcard.DrawRest(p, options.chosen(packed), &pocketcard.Rest{
		From: from, HandOvers: rest.HandOvers, Facts: trail.Facts(packed.Plan, done),
	}), nil
}
