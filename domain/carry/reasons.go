package carry

import (
	"math"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/units"
)

// sayReasons turns limits that cannot all be kept into findings: which limit
// breaks on whom and by how much, the plainest rule behind it, and the
// smallest change that would let everything fit.
func (c *calculation) sayReasons(r run, pieces []piece, solved fairsplit.Result) {
	if solved.Feasible {
		return
	}
	why, remedy := c.explain(r, pieces, solved.Reasons)
	for _, overrun := range solved.Overruns {
		member := &c.Trip.Crew[r.present[overrun.Member]]
		place := findings.Place{Day: r.first, Member: member.ID}
		c.find(findings.MustFix, "over-limit", place, c.overrunText(overrun, member.Name), why, remedy)
	}
	if len(solved.Overruns) == 0 {
		c.find(findings.MustFix, "no-split", findings.Place{Day: r.first}, prose.Say("The bags of these days cannot all be carried."), why, remedy)
	}
}

func (c *calculation) overrunText(overrun fairsplit.Overrun, name string) prose.Text {
	switch overrun.Limit {
	case fairsplit.MassLimit:
		return prose.Say("%s carries %s more than their limit.", name, amount(fairsplit.MassLimit, overrun.Over))
	case fairsplit.VolumeLimit:
		return prose.Say("%s's pack has %s too little room.", name, amount(fairsplit.VolumeLimit, overrun.Over))
	default:
		return prose.Say("%s carries more of the %s than one pack should hold.", name, c.className(overrun.Class))
	}
}

// amount gives a solver's number its unit.
func amount(limit fairsplit.Limit, value int64) prose.Text {
	switch limit {
	case fairsplit.MassLimit:
		return prose.Say("%s", units.Mass(value)*decigram)
	case fairsplit.VolumeLimit:
		return prose.Say("%s", units.Volume(value)*units.Millilitre)
	default:
		return prose.Say("%d kcal", value)
	}
}

// explain writes why nothing fits, and the change that would help.
func (c *calculation) explain(r run, pieces []piece, reasons []fairsplit.Reason) (why, remedy prose.Text) {
	if len(reasons) == 0 {
		return prose.Say("No split of whole pieces was found that keeps every limit."), raiseALimit()
	}
	var whys, remedies []prose.Text
	for _, reason := range reasons {
		whys = append(whys, c.reasonText(r, pieces, reason))
		if len(reason.Change) > 1 {
			remedies = append(remedies, c.changesText(r, reason.Change))
			continue
		}
		for _, change := range reason.Change {
			remedies = append(remedies, c.changeText(r, pieces, change))
		}
	}
	if len(remedies) == 0 {
		return prose.List(" ", whys), raiseALimit()
	}
	return prose.List(" ", whys), prose.Say("%s.", prose.List("; ", remedies))
}

// changesText names limits that have to be raised together.
func (c *calculation) changesText(r run, changes []fairsplit.Change) prose.Text {
	var names []prose.Text
	for _, change := range changes {
		switch {
		case change.Kind == fairsplit.RaiseShare:
			names = append(names, c.shareText(change))
		case change.Member >= 0 && change.Member < len(r.present):
			names = append(names, prose.Say("%s by %s", c.Trip.Crew[r.present[change.Member]].Name, amount(change.Limit, change.By)))
		}
	}
	return prose.Say("Raise limits together: %s; or bring that much less", joinNames(names))
}

func (c *calculation) shareText(change fairsplit.Change) prose.Text {
	part := 100 * float64(change.Share.Num) / float64(max(1, change.Share.Den))
	return prose.Say("Allow %.0f %% of the %s in one pack", math.Ceil(part), c.className(change.Class))
}

func raiseALimit() prose.Text {
	return prose.Say("Raise a limit, send more food ahead, or leave shared gear at home.")
}

func (c *calculation) reasonText(r run, pieces []piece, reason fairsplit.Reason) prose.Text {
	room := prose.Say("place for %s, needed %s", amount(reason.Limit, reason.Have), amount(reason.Limit, reason.Need))
	switch reason.Rule {
	case fairsplit.NobodyMayCarry:
		return prose.Say("%s may be carried by nobody who is there.", c.names(pieces, reason.Items))
	case fairsplit.OwnKitOverLimit:
		return prose.Say("The own kit of %s alone is over the limit: %s.", c.crewNames(r, reason.Members), room)
	case fairsplit.ItemTooLarge:
		return prose.Say("%s fits in no pack of those who may carry it: %s.", c.names(pieces, reason.Items), room)
	case fairsplit.PinnedTooMuch:
		return prose.Say("What only %s may carry is too much for them: %s.", c.crewNames(r, reason.Members), room)
	case fairsplit.TotalTooMuch:
		if reason.Limit == fairsplit.VolumeLimit {
			return prose.Say("All packs together are too small: %s.", room)
		}
		return prose.Say("All load limits together are too low: %s.", room)
	case fairsplit.ClassTooTight:
		return prose.Say("The %s cannot be spread within the part allowed in one pack.", c.className(reason.Class))
	case fairsplit.SubsetTooSmall:
		return prose.Say("What only %s may carry does not fit their packs: %s.", c.crewNames(r, reason.Members), room)
	case fairsplit.WholeItemsMisfit:
		return prose.Say("There is place in all, but not for whole pieces: %s.", room)
	case fairsplit.LimitsTogether:
		return c.togetherText(r, reason)
	case fairsplit.RuledOut:
		return prose.Say("Every split was looked at or ruled out: none keeps every limit.")
	default:
		return prose.Say("No split was found that keeps every limit; there may be one.")
	}
}

// togetherText says of limits that each alone could be kept that they cannot all
// be, and what is proven of it.
func (c *calculation) togetherText(r run, reason fairsplit.Reason) prose.Text {
	short := prose.Say("%.1f %%", 100*float64(reason.Need-reason.Have)/float64(max(1, reason.Have)))
	text := prose.Say("It is proven that no split keeps all limits, even if every piece could be cut up. What stands in the way together: %s of %s; there is about %s too little.",
		kinds(reason.Limits), c.crewNames(r, reason.Members), short)
	if len(reason.Members) == 0 {
		text = prose.Say("It is proven that no split keeps all limits, even if every piece could be cut up. What stands in the way: %s; there is about %s too little.", kinds(reason.Limits), short)
	}
	for _, least := range reason.Least {
		if least.Member >= 0 && least.Member < len(r.present) {
			text = prose.Say("%s If no other limit is raised, %s needs at least %s more.", text, c.Trip.Crew[r.present[least.Member]].Name, amount(least.Limit, least.By))
		}
	}
	return text
}

// kinds names the kinds of limits of packs.
func kinds(limits []fairsplit.Limit) prose.Text {
	var names []prose.Text
	for _, limit := range limits {
		switch limit {
		case fairsplit.MassLimit:
			names = append(names, prose.Say("the load limits"))
		case fairsplit.VolumeLimit:
			names = append(names, prose.Say("the room in the packs"))
		default:
			names = append(names, prose.Say("the part of dinners or fuel in one pack"))
		}
	}
	if len(names) == 2 {
		return prose.Say("%s and %s", names[0], names[1])
	}
	return prose.List(", ", names)
}

func (c *calculation) changeText(r run, pieces []piece, change fairsplit.Change) prose.Text {
	switch change.Kind {
	case fairsplit.RaiseShare:
		return c.shareText(change)
	case fairsplit.AddCarrier:
		name := prose.Say("it")
		if change.Item >= 0 && change.Item < len(pieces) {
			name = c.nameOf(&pieces[change.Item])
		}
		return prose.Say("Let somebody carry %s, or leave it out", name)
	default:
		by := amount(change.Limit, change.By)
		one, room := change.Member >= 0 && change.Member < len(r.present), change.Limit == fairsplit.VolumeLimit
		switch {
		case one && room:
			return prose.Say("Find %s more room in the pack of %s, or bring that much less", by, c.Trip.Crew[r.present[change.Member]].Name)
		case one:
			return prose.Say("Raise the load limit of %s by %s, or bring that much less", c.Trip.Crew[r.present[change.Member]].Name, by)
		case room:
			return prose.Say("Find %s more room in the packs together, or bring that much less", by)
		default:
			return prose.Say("Raise the load limits together by %s, or bring that much less", by)
		}
	}
}

// mostNamed bounds how many names stand in one sentence.
const mostNamed = 6

func (c *calculation) names(pieces []piece, items []int) prose.Text {
	var names []prose.Text
	for _, i := range items {
		if i >= 0 && i < len(pieces) {
			names = append(names, c.nameOf(&pieces[i]))
		}
	}
	return joinNames(names)
}

func (c *calculation) crewNames(r run, members []int) prose.Text {
	var names []prose.Text
	for _, i := range members {
		if i >= 0 && i < len(r.present) {
			names = append(names, prose.Verbatim(c.Trip.Crew[r.present[i]].Name))
		}
	}
	return joinNames(names)
}

func joinNames(names []prose.Text) prose.Text {
	if len(names) > mostNamed {
		names = append(names[:mostNamed:mostNamed], prose.Say("%d more", len(names)-mostNamed))
	}
	return prose.List(", ", names)
}
