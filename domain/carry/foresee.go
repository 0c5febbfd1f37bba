package carry

import (
	"context"

	"sumpter/domain/solve/fairsplit"
)

// foresee splits the stages of a leg on which people came or went from the last
// one back, each near to the one after it: what is eaten on a stage is free to make
// its loads fair, what is carried on lies as it will have to. Who leaves so carries
// first what is eaten before, and what somebody who joins will take over lies where
// it weighs least. The stages are then split from the first one on, near to that;
// else each morning on which people change would turn all packs over.
func (c *calculation) foresee(ctx context.Context, runs []run) error {
	scout := *c // its findings are nobody's
	for n := len(runs) - 1; n >= 0; n-- {
		r := runs[n]
		if r.firstOfLeg || len(r.present) == 0 {
			continue
		}
		pieces := scout.ruled(r)
		problem := scout.problem(r, pieces)
		options := fairsplit.Options{Previous: scout.foreseen(r, pieces, r.last+1), Workers: 2, Steps: searchSteps}
		solved, err := fairsplit.Solve(ctx, problem, options)
		if err == nil && !solved.Feasible {
			solved, err = scout.loosen(ctx, r, pieces, &problem, options, solved)
		}
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err != nil {
			continue // the split of the stage says what is wrong
		}
		solved = scout.gather(r, pieces, problem, options.Previous, solved)
		for i, seat := range solved.Carrier {
			if seat != fairsplit.Nobody {
				c.ahead[stageKey{r.first, itemKey(&pieces[i])}] = c.Trip.Crew[r.present[seat]].ID
			}
		}
	}
	return nil
}
