package carry

import (
	"fmt"
	"strings"

	"sumpter/domain/findings"
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
		c.find(findings.MustFix, "no-split", findings.Place{Day: r.first}, "The bags of these days cannot all be carried.", why, remedy)
	}
}

func (c *calculation) overrunText(overrun fairsplit.Overrun, name string) string {
	switch overrun.Limit {
	case fairsplit.MassLimit:
		return fmt.Sprintf("%s carries %s more than their limit.", name, c.amount(fairsplit.MassLimit, overrun.Over))
	case fairsplit.VolumeLimit:
		return fmt.Sprintf("%s's pack has %s too little room.", name, c.amount(fairsplit.VolumeLimit, overrun.Over))
	default:
		return fmt.Sprintf("%s carries more of the %s than one pack should hold.", name, overrun.Class)
	}
}

// amount writes a solver's number in the leader's units.
func (c *calculation) amount(limit fairsplit.Limit, value int64) string {
	switch limit {
	case fairsplit.MassLimit:
		return (units.Mass(value) * decigram).Format(c.Trip.Units)
	case fairsplit.VolumeLimit:
		return (units.Volume(value) * units.Millilitre).Format(c.Trip.Units)
	default:
		return fmt.Sprintf("%d kcal", value)
	}
}

// explain writes why nothing fits, and the change that would help.
func (c *calculation) explain(r run, pieces []piece, reasons []fairsplit.Reason) (why, remedy string) {
	if len(reasons) == 0 {
		return "No split of whole pieces was found that keeps every limit.", "Raise a limit, send more food ahead, or leave shared gear at home."
	}
	var whys, remedies []string
	for _, reason := range reasons {
		whys = append(whys, c.reasonText(r, pieces, reason))
		for _, change := range reason.Change {
			remedies = append(remedies, c.changeText(r, pieces, change))
		}
	}
	if len(remedies) == 0 {
		remedies = []string{"Raise a limit, send more food ahead, or leave shared gear at home"}
	}
	return strings.Join(whys, " "), strings.Join(remedies, "; ") + "."
}

func (c *calculation) reasonText(r run, pieces []piece, reason fairsplit.Reason) string {
	room := fmt.Sprintf("%s of room for %s", c.amount(reason.Limit, reason.Have), c.amount(reason.Limit, reason.Need))
	switch reason.Rule {
	case fairsplit.NobodyMayCarry:
		return c.names(pieces, reason.Items) + " may be carried by nobody who is there."
	case fairsplit.OwnKitOverLimit:
		return fmt.Sprintf("The own kit of %s alone is over the limit: %s.", c.crewNames(r, reason.Members), room)
	case fairsplit.ItemTooLarge:
		return fmt.Sprintf("%s fits in no pack of those who may carry it: %s.", c.names(pieces, reason.Items), room)
	case fairsplit.PinnedTooMuch:
		return fmt.Sprintf("What only %s may carry is too much for them: %s.", c.crewNames(r, reason.Members), room)
	case fairsplit.TotalTooMuch:
		return fmt.Sprintf("All packs together are too small: %s.", room)
	case fairsplit.ClassTooTight:
		return fmt.Sprintf("The %s cannot be spread within the part allowed in one pack.", reason.Class)
	case fairsplit.SubsetTooSmall:
		return fmt.Sprintf("What only %s may carry does not fit their packs: %s.", c.crewNames(r, reason.Members), room)
	case fairsplit.WholeItemsMisfit:
		return fmt.Sprintf("There is room in all, %s, but not for whole pieces.", room)
	case fairsplit.RuledOut:
		return "Every split was looked at or ruled out: none keeps every limit."
	default:
		return "No split was found that keeps every limit; there may be one."
	}
}

func (c *calculation) changeText(r run, pieces []piece, change fairsplit.Change) string {
	switch change.Kind {
	case fairsplit.RaiseShare:
		part := 100 * float64(change.Share.Num) / float64(max(1, change.Share.Den))
		return fmt.Sprintf("Allow %.0f %% of the %s in one pack", part, change.Class)
	case fairsplit.AddCarrier:
		name := "it"
		if change.Item >= 0 && change.Item < len(pieces) {
			name = c.nameOf(&pieces[change.Item])
		}
		return "Let somebody carry " + name + ", or leave it out"
	default:
		whose := "the packs together"
		if change.Member >= 0 && change.Member < len(r.present) {
			whose = c.Trip.Crew[r.present[change.Member]].Name
		}
		return fmt.Sprintf("Give %s %s more, or bring that much less", whose, c.amount(change.Limit, change.By))
	}
}

// mostNamed bounds how many names stand in one sentence.
const mostNamed = 6

func (c *calculation) names(pieces []piece, items []int) string {
	var names []string
	for _, i := range items {
		if i >= 0 && i < len(pieces) {
			names = append(names, c.nameOf(&pieces[i]))
		}
	}
	return joinNames(names)
}

func (c *calculation) crewNames(r run, members []int) string {
	var names []string
	for _, i := range members {
		if i >= 0 && i < len(r.present) {
			names = append(names, c.Trip.Crew[r.present[i]].Name)
		}
	}
	return joinNames(names)
}

func joinNames(names []string) string {
	if len(names) > mostNamed {
		names = append(names[:mostNamed:mostNamed], fmt.Sprintf("%d more", len(names)-mostNamed))
	}
	return strings.Join(names, ", ")
}
