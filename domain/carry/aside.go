package carry

import (
	"context"
	"math/big"
	"slices"

	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
)

// aside is a stage without those who hold more than a fair load in any case, on
// every day of it. Whatever is split, theirs is the heaviest pack, and to make that
// light says nothing about the others: among them the load is split as if they
// were alone.
type aside struct {
	whole   fairsplit.Problem
	problem fairsplit.Problem
	seats   []int // of the whole, by seat among the others
	items   []int // of the whole, by item among the others
	alone   []int // by item of the whole: the seat of who alone may carry it; Nobody for what the others share
}

// standAside leaves out who holds more than a fair load; nil where that is
// nobody, or nobody else could carry some piece.
func (c *calculation) standAside(r run, problem fairsplit.Problem) *aside {
	a := &aside{whole: problem, problem: problem}
	out := make([]bool, len(problem.Crew))
	among := make([]int, len(problem.Crew)) // by seat of the whole
	a.problem.Crew = nil
	for seat, place := range r.present {
		out[seat] = c.heldOver(place, r)
		if !out[seat] {
			among[seat] = len(a.seats)
			a.seats, a.problem.Crew = append(a.seats, seat), append(a.problem.Crew, problem.Crew[seat])
		}
	}
	if len(a.seats) == 0 || len(a.seats) == len(problem.Crew) {
		return nil
	}
	total, rest := map[string]int64{}, map[string]int64{}
	a.problem.Items = nil
	for i, item := range problem.Items {
		total[item.Class] += item.Energy
		a.alone = append(a.alone, fairsplit.Nobody)
		if len(item.Allowed) == 1 && out[item.Allowed[0]] {
			a.alone[i] = item.Allowed[0]
			continue
		}
		var allowed []int
		for _, seat := range item.Allowed {
			if !out[seat] {
				allowed = append(allowed, among[seat])
			}
		}
		if len(allowed) == 0 {
			return nil
		}
		item.Allowed = allowed
		rest[item.Class] += item.Energy
		a.items, a.problem.Items = append(a.items, i), append(a.problem.Items, item)
	}
	a.problem.Classes = nil
	for _, class := range problem.Classes {
		if left := rest[class.Name]; left > 0 {
			most := total[class.Name] * class.Share.Num / class.Share.Den
			class.Share = fairsplit.Ratio{Num: min(most, left), Den: left}
			a.problem.Classes = append(a.problem.Classes, class)
		}
	}
	return a
}

// heldOver tells whether own kit and what only they may carry are more than a
// fair load on every day of a stage.
func (c *calculation) heldOver(place int, r run) bool {
	for day := r.first; day <= r.last; day++ {
		if f := &c.floors[place][day-1]; f.capability == 0 || f.held <= f.capability.Scale(f.fair) {
			return false
		}
	}
	return true
}

// narrow gives carriers of the whole as seats among the others, Nobody for who
// stands aside.
func (a *aside) narrow(carriers []int) []int {
	if carriers == nil {
		return nil
	}
	seats := make([]int, len(a.items))
	for i, item := range a.items {
		seats[i] = slices.Index(a.seats, carriers[item])
	}
	return seats
}

// measure gives the shares of a split among the others; those of the whole where
// who stands aside has something the others may carry.
func (a *aside) measure(split fairsplit.Resplit) (first, days *big.Rat) {
	seats := a.narrow(split.Carrier)
	if slices.Contains(seats, fairsplit.Nobody) {
		return split.R1, split.S
	}
	among, err := fairsplit.Evaluate(a.problem, seats)
	if err != nil {
		return split.R1, split.S
	}
	return among.R1, among.S
}

// measuredBeside gives who the shares of some splits leave out, nil where they
// are those of everybody.
func (c *calculation) measuredBeside(r run, pieces []piece, splits []fairsplit.Resplit) *aside {
	if !slices.ContainsFunc(r.present, func(place int) bool { return c.heldOver(place, r) }) {
		return nil
	}
	a := c.standAside(r, c.problem(r, pieces))
	if a == nil {
		return nil
	}
	for _, split := range splits {
		if whole, err := fairsplit.Evaluate(a.whole, split.Carrier); err == nil && whole.R1 != nil && (split.R1.Cmp(whole.R1) < 0 || split.S.Cmp(whole.S) < 0) {
			return a
		}
	}
	return nil
}

// asideOf names who stands aside.
func (c *calculation) asideOf(r run, a *aside) []trip.MemberID {
	if a == nil {
		return nil
	}
	var list []trip.MemberID
	for seat, place := range r.present {
		if !slices.Contains(a.seats, seat) {
			list = append(list, c.Trip.Crew[place].ID)
		}
	}
	return list
}

// had tells whether somebody who stands aside had a thing that others may carry.
func (a *aside) had(previous []int) bool {
	for _, item := range a.items {
		if previous != nil && previous[item] != fairsplit.Nobody && !slices.Contains(a.seats, previous[item]) {
			return true
		}
	}
	return false
}

// widen gives carriers among the others as seats of the whole.
func (a *aside) widen(carriers []int) []int {
	seats := slices.Clone(a.alone)
	for i, seat := range carriers {
		if seat != fairsplit.Nobody {
			seats[a.items[i]] = a.seats[seat]
		}
	}
	return seats
}

// solve splits the whole by splitting among the others. It is false where that
// keeps not every limit, or the heaviest packs would not be of who stands aside.
// The choices are measured among the others.
func (a *aside) solve(ctx context.Context, options fairsplit.Options) (fairsplit.Result, bool, error) {
	if a.had(options.Previous) {
		return fairsplit.Result{}, false, nil // that it may stay there is a choice, too
	}
	options.Previous, options.Known = a.narrow(options.Previous), a.narrow(options.Known)
	if slices.Contains(options.Known, fairsplit.Nobody) {
		options.Known = nil
	}
	among, err := fairsplit.Solve(ctx, a.problem, options)
	if err != nil || !among.Feasible {
		return among, false, err
	}
	carriers := a.widen(among.Carrier)
	solved, err := fairsplit.Evaluate(a.whole, carriers)
	if err != nil || !solved.Proven {
		return solved, false, err
	}
	solved.Changes, solved.Forced = among.Changes, among.Forced
	for _, choice := range among.Choices {
		choice.Carrier = a.widen(choice.Carrier)
		solved.Choices = append(solved.Choices, choice)
	}
	return solved, true, nil
}
