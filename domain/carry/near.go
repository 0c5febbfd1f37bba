package carry

import (
	"context"
	"math/big"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
)

// NearlyFair is how much heavier the heaviest pack may be, and how much further
// limits that cannot be kept may be passed, for the sake of fewer hand-overs: some
// hundred grams, which nobody feels and every hand-over costs more than (common
// practice, no source).
const NearlyFair = 1.02

// near is the packs that a stage stays near to, as seats of those present: those
// the leader keeps, and on the way those of the stage before.
type near struct {
	was    []int // by piece; Nobody for what is new
	chosen []int // by piece; Nobody where the leader chose nothing
	gone   int   // things whose carrier is not there any more
	held   bool  // the leader chose
}

// nearTo gives the packs a stage stays near to; nil where food comes in and none
// are kept.
func (c *calculation) nearTo(r run, pieces []piece) *near {
	packs := keptOn(c.Kept, r.first)
	if packs == nil && (r.firstOfLeg || decidedOn(c.Decided, r.first) != nil) {
		return nil
	}
	was, chosen := map[Thing]trip.MemberID{}, map[Thing]trip.MemberID{}
	if packs != nil {
		for _, over := range packs.Things {
			was[ThingOf(over)], chosen[ThingOf(over)] = over.From, over.To
		}
	}
	n := &near{was: make([]int, len(pieces)), chosen: make([]int, len(pieces))}
	for i := range pieces {
		thing := Thing{pieces[i].kind, pieces[i].key}
		from := was[thing]
		if from == 0 {
			from = c.previous[itemKey(&pieces[i])]
		}
		n.was[i], n.chosen[i] = c.seatOf(r, from), fairsplit.Nobody
		if from != 0 && n.was[i] < 0 {
			n.gone++
		}
		if seat := c.seatOf(r, chosen[thing]); seat >= 0 && slices.Contains(pieces[i].allowed, r.present[seat]) {
			n.chosen[i], n.held = seat, true
		}
	}
	return n
}

// seatOf is a member's place among those present, Nobody for who is not there.
func (c *calculation) seatOf(r run, member trip.MemberID) int {
	if place, known := c.place[member]; known {
		return slices.Index(r.present, place)
	}
	return fairsplit.Nobody
}

// stayNear takes of what was found between the packs that were and the fairest
// split the leader's choice, else the fewest hand-overs that are nearly as fair.
func (c *calculation) stayNear(ctx context.Context, r run, pieces []piece, problem fairsplit.Problem, n *near, solved fairsplit.Result) (fairsplit.Result, error) {
	carriers := solved.Carrier
	if few := fewOf(solved.Choices); few >= 0 {
		carriers = solved.Choices[few].Carrier
	}
	if n.held {
		held, err := c.hold(ctx, problem, n)
		if err != nil {
			return solved, err
		}
		if held.Feasible || !solved.Feasible {
			carriers = held.Carrier
		} else {
			c.find(findings.LookAt, "choice-not-kept", findings.Place{Day: r.first},
				prose.Say("The split that was chosen for the days from %d on no longer fits the packs.", r.first),
				c.overrunList(r, held.Overruns),
				prose.Say("Choose again how much may change packs, or take off what came on top."))
		}
	}
	if slices.Contains(carriers, fairsplit.Nobody) {
		return solved, nil // nobody can carry: the solver's own answer says so
	}
	measured, err := fairsplit.Evaluate(problem, carriers)
	if err != nil {
		return solved, err
	}
	measured.R1Bound, measured.SBound = larger(measured.R1Bound, solved.R1Bound), larger(measured.SBound, solved.SBound)
	measured.Proven = measured.Proven || solved.Proven && slices.Equal(carriers, solved.Carrier)
	measured.Reasons, measured.Choices = solved.Reasons, solved.Choices
	measured.Changes, measured.Forced = n.changes(pieces, r, carriers)
	return measured, nil
}

// hold splits with what was chosen where it was chosen.
func (c *calculation) hold(ctx context.Context, problem fairsplit.Problem, n *near) (fairsplit.Result, error) {
	bound := problem
	bound.Items = slices.Clone(problem.Items)
	for i, seat := range n.chosen {
		if seat >= 0 {
			bound.Items[i].Allowed = []int{seat}
		}
	}
	return fairsplit.Solve(ctx, bound, fairsplit.Options{Previous: n.was, Workers: 2, Steps: searchSteps})
}

func (c *calculation) overrunList(r run, overruns []fairsplit.Overrun) prose.Text {
	var list []prose.Text
	for _, overrun := range overruns {
		list = append(list, c.overrunText(overrun, c.Trip.Crew[r.present[overrun.Member]].Name))
	}
	return prose.List(" ", list)
}

// fewOf finds the fewest hand-overs nearly as fair as the fairest choice, which
// pass limits by nearly as little, -1 where there is no choice.
func fewOf(choices []fairsplit.Resplit) int {
	if len(choices) == 0 {
		return -1
	}
	best := choices[len(choices)-1]
	return slices.IndexFunc(choices, func(choice fairsplit.Resplit) bool {
		return nearlyAsLittle(choice.Over, best.Over) && ratio(choice.R1, best.R1) <= NearlyFair && ratio(choice.S, best.S) <= NearlyFair
	})
}

func ratio(a, b *big.Rat) float64 {
	if b.Sign() == 0 {
		return 1
	}
	value, _ := new(big.Rat).Quo(a, b).Float64()
	return value
}

func larger(a, b *big.Rat) *big.Rat {
	if a.Cmp(b) < 0 {
		return b
	}
	return a
}

// changes counts what is with another than before: what could have stayed,
// and what had to go.
func (n *near) changes(pieces []piece, r run, now []int) (free, must int) {
	must = n.gone
	for i, seat := range n.was {
		switch {
		case seat < 0 || seat == now[i]:
		case slices.Contains(pieces[i].allowed, r.present[seat]):
			free++
		default:
			must++
		}
	}
	return free, must
}
