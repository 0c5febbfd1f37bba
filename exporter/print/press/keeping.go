package press

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/spoilage"
)

// Keeps is how long a bag keeps: its worst content decides.
type Keeps struct {
	Words string
	Bad   bool // not safe, or not known to be
}

// Keeping says until when a bag is to be eaten. What is not known is said to
// be so; it never counts as safe.
func (p *Press) Keeping(bag *bags.Bag) Keeps {
	last, known := len(p.Trip.Days), true
	if bag.Kind == bags.ReserveBag {
		known = !slices.ContainsFunc(p.Plan.Findings, func(f findings.Finding) bool {
			return f.Code == "reserve-does-not-keep" && slices.ContainsFunc(bag.Contents, func(c bags.Content) bool { return c.Food == f.Place.Food })
		})
	}
	for i := range bag.Uses {
		use := &bag.Uses[i]
		for _, content := range use.Contents {
			fate := p.Fate(use.Day, use.Meal, bag.Group, content.Food)
			switch {
			case fate == nil || fate.Verdict == spoilage.NotKnown:
				known = false
			case fate.Verdict == spoilage.NotSafe || fate.LatestDay < use.Day:
				return Keeps{p.Tell(prose.Say("NOT SAFE on day %d", use.Day)), true}
			default:
				last = min(last, fate.LatestDay)
			}
		}
	}
	switch {
	case !known:
		return Keeps{p.Tell(prose.Say("not known how long it keeps")), true}
	case last < len(p.Trip.Days):
		return Keeps{Words: p.Tell(prose.Say("eat by day %d", last))}
	default:
		return Keeps{Words: p.Tell(prose.Say("keeps to the end"))}
	}
}
