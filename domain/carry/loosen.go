package carry

import (
	"context"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
)

// loosen gives way where no split keeps everything: first own shares go into
// other packs, then the rules about lost packs are dropped. Hard limits, and
// what keeps an allergen away, never give way.
func (c *calculation) loosen(ctx context.Context, r run, pieces []piece, problem *fairsplit.Problem, options fairsplit.Options, solved fairsplit.Result) (fairsplit.Result, error) {
	if !onlyClasses(solved) && c.openOwnShares(r, pieces, solved) {
		wider := c.problem(r, pieces)
		again, err := fairsplit.Solve(ctx, wider, options)
		if err != nil {
			return solved, err
		}
		*problem, solved, c.opened = wider, again, true
	}
	if solved.Feasible || len(problem.Classes) == 0 || !onlyClasses(solved) {
		return solved, nil
	}
	c.dropped = slices.Clone(problem.Classes)
	dropClasses(problem)
	return fairsplit.Solve(ctx, *problem, options)
}

// openOwnShares lets others carry the own shares of those whose packs they
// overload; it tells whether there are any.
func (c *calculation) openOwnShares(r run, pieces []piece, solved fairsplit.Result) bool {
	over := map[int]bool{}
	for _, overrun := range solved.Overruns {
		over[r.present[overrun.Member]] = true
	}
	opened := false
	for i := range pieces {
		p := &pieces[i]
		if len(p.byHand) > 1 && len(p.allowed) == 1 && over[p.allowed[0]] {
			p.allowed, p.byHand, opened = p.byHand, nil, true
		}
	}
	return opened
}

func (c *calculation) sayOwnSharesMoved(r run, pieces []piece, solved fairsplit.Result) {
	moved := map[trip.MemberID][]prose.Text{}
	for i := range pieces {
		bag := pieces[i].bag
		if bag == nil || bag.Member == 0 || solved.Carrier[i] == fairsplit.Nobody || len(pieces[i].allowed) < 2 {
			continue
		}
		if carrier := c.Trip.Crew[r.present[solved.Carrier[i]]].ID; carrier != bag.Member {
			moved[bag.Member] = append(moved[bag.Member], c.nameOf(&pieces[i]))
		}
	}
	for _, place := range r.present {
		eater := &c.Trip.Crew[place]
		if names := moved[eater.ID]; len(names) > 0 {
			c.find(findings.LookAt, "own-share-moved", findings.Place{Day: r.first, Member: eater.ID},
				prose.Say("Others carry own food of %s: %s.", eater.Name, joinNames(slices.Clone(names))),
				prose.Say("With all of their own food their pack would be over its limit."),
				prose.Say("Raise the limit, or let them fetch it from the others each morning."))
		}
	}
}
