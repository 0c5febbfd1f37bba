package carry

import (
	"cmp"
	"slices"

	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// mostChoices are enough to choose from.
const mostChoices = 12

// choices reads the splits between nothing that changes hands and the fairest,
// the one that is taken among them. Where their shares leave out who stands aside,
// it tells who that is.
func (c *calculation) choices(r run, pieces []piece, solved fairsplit.Result) ([]Choice, []trip.MemberID) {
	if len(solved.Choices) == 0 {
		return nil, nil
	}
	beside := c.measuredBeside(r, pieces, solved.Choices)
	var list []Choice
	taken := false
	for _, found := range solved.Choices {
		choice := c.choice(r, pieces, found, solved.Forced)
		choice.Taken = slices.Equal(found.Carrier, solved.Carrier)
		taken = taken || choice.Taken
		list = append(list, choice)
	}
	if !taken {
		split := fairsplit.Resplit{
			Changes: solved.Changes, R1: solved.R1, S: solved.S, Carrier: solved.Carrier, Over: solved.Over, Overruns: solved.Overruns,
		}
		if beside != nil {
			split.R1, split.S = beside.measure(split)
		}
		choice := c.choice(r, pieces, split, solved.Forced)
		choice.Taken = true
		list = slices.DeleteFunc(list, choice.beats)
		list = append(list, choice)
		slices.SortStableFunc(list, func(a, b Choice) int { return cmp.Compare(a.HandOvers, b.HandOvers) })
	}
	return few(list), c.asideOf(r, beside)
}

// beats tells whether a choice is no worse than another in anything.
func (c Choice) beats(other Choice) bool {
	return c.HandOvers <= other.HandOvers && c.together <= other.together && c.Worst <= other.Worst && c.Mean <= other.Mean
}

func (c *calculation) choice(r run, pieces []piece, found fairsplit.Resplit, must int) Choice {
	choice := Choice{HandOvers: found.Changes, Must: must, Worst: share(found.R1), Mean: share(found.S), Passed: passed(found)}
	choice.Carriers = c.carriersOf(r, pieces, found.Carrier)
	return choice
}

// passed adds up what a split is above limits.
func passed(split fairsplit.Resplit) Passed {
	p := Passed{together: split.Over}
	for _, overrun := range split.Overruns {
		switch overrun.Limit {
		case fairsplit.MassLimit:
			p.OverLimit += units.Mass(overrun.Over) * decigram
		case fairsplit.VolumeLimit:
			p.OverRoom += units.Volume(overrun.Over) * units.Millilitre
		case fairsplit.ClassLimit:
			p.OverPart++
		}
	}
	return p
}

func (c *calculation) carriersOf(r run, pieces []piece, seats []int) map[Thing]trip.MemberID {
	carriers := make(map[Thing]trip.MemberID, len(pieces))
	for i, seat := range seats {
		if seat != fairsplit.Nobody {
			carriers[Thing{pieces[i].kind, pieces[i].key}] = c.Trip.Crew[r.present[seat]].ID
		}
	}
	return carriers
}

// worthOffering is how much lighter, as a part, more hand-overs must make the
// heaviest pack to be a choice of their own.
const worthOffering = 0.001

// lessPassed is the part of what lies between the most and the least that limits
// are passed by, of which more hand-overs must pass them less to be a choice of
// their own.
const lessPassed = 20

// few thins the choices out: the fewest hand-overs, the fairest, the taken and
// the first that is nearly as fair stay, and of the others those that are
// fairer, or pass limits less, by what can be told, some of them where they are
// many.
func few(list []Choice) []Choice {
	last := len(list) - 1
	nearly := slices.IndexFunc(list, func(x Choice) bool {
		return x.NearlyAsLittleAs(list[last].Passed) && x.above(list[last]) <= NearlyFair-1
	})
	stays := func(i int) bool { return i == 0 || i == last || i == nearly || list[i].Taken }
	var between []int
	before, passed := list[0].above(list[last]), list[0].together
	for i := range list {
		above, over := list[i].above(list[last]), list[i].together
		less := over < passed-(list[0].together-list[last].together)/lessPassed
		if !stays(i) && (above <= before-worthOffering || less) {
			between = append(between, i)
			before, passed = above, over
		} else if stays(i) {
			before, passed = min(before, above), min(passed, over)
		}
	}
	for len(between) > mostChoices-4 {
		at := len(between) / 2
		between = slices.Delete(between, at, at+1)
	}
	var thin []Choice
	for i := range list {
		if stays(i) || slices.Contains(between, i) {
			thin = append(thin, list[i])
		}
	}
	return thin
}

// above is how much heavier the heaviest pack is than in another choice, as a
// part: on the first morning or over the days, whichever is more.
func (c Choice) above(other Choice) float64 {
	return max(0, over(c.Worst, other.Worst), over(c.Mean, other.Mean))
}

// measureAgain gives the choices of the round before their figures on the
// masses there are now, without those that no longer fit.
func (c *calculation) measureAgain(r run, pieces []piece, problem fairsplit.Problem, solved *fairsplit.Result) {
	a := c.standAside(r, problem)
	for _, choice := range c.keptChoices[r.first] {
		seats := make([]int, len(pieces))
		for i := range pieces {
			seats[i] = c.seatOf(r, choice.Carriers[Thing{pieces[i].kind, pieces[i].key}])
		}
		measured, err := fairsplit.Evaluate(problem, seats)
		if err != nil || !measured.Feasible {
			continue
		}
		split := fairsplit.Resplit{Changes: choice.HandOvers, R1: measured.R1, S: measured.S, Carrier: seats}
		if a != nil {
			split.R1, split.S = a.measure(split)
		}
		solved.Choices = append(solved.Choices, split)
		if choice.Taken {
			solved.Changes, solved.Forced = choice.HandOvers, choice.Must
		}
	}
}
