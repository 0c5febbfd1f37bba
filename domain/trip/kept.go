package trip

import (
	"cmp"
	"slices"

	"sumpter/domain/prose"
)

// KeptPacks is in whose packs things were when the split was last changed by
// hand, from a morning on as long as the same people are there. The plan stays
// near it: after a change, what need not move stays where it is.
type KeptPacks struct {
	Day    int        `json:"day"`              // 1-based; one a day
	Things []HandOver `json:"things,omitempty"` // from whose pack, and into whose the leader's choice puts it; to nobody: nothing is chosen yet
}

// keptPacks checks in whose packs things stay.
func (c *checker) keptPacks() {
	if !c.size("kept_packs", "mornings of kept packs", len(c.trip.Kept), 0, MaxDays) {
		return
	}
	for i := range c.trip.Kept {
		kept := &c.trip.Kept[i]
		c.at("kept_packs", i, 0, "")
		c.dayOf(kept.Day, prose.Say("Enter the day from whose morning on it holds."))
		if !c.count("things", "things in packs", len(kept.Things), 0, MaxNotedBags) {
			continue
		}
		distinct(c, "things", "thing", kept.Things, HandOver.thing)
		for j := range kept.Things {
			c.enter("things", j)
			c.keptThing(&kept.Things[j])
			c.leave()
		}
	}
	c.where = Where{List: "kept_packs"}
	distinct(c, "", "day", c.trip.Kept, func(k KeptPacks) int { return k.Day })
}

func (c *checker) keptThing(h *HandOver) {
	c.handedThing(h)
	if h.From == 0 && h.To == 0 {
		c.add("from", prose.Say("the thing is in nobody's pack"), prose.Say("one of the crew"), prose.Say("Name a member, or take the line out."))
	}
	if h.To != 0 && !c.members[h.To] {
		c.missing("to", "member", int64(h.To), "one of the crew, or nobody")
	}
}

// tidyKept takes out of the kept packs what speaks of members, gear and days
// that are no longer in the trip.
func (t *Trip) tidyKept() {
	gone := func(id MemberID) bool { return id != 0 && t.Member(id) == nil }
	for i := range t.Kept {
		things := t.Kept[i].Things
		for j := range things {
			if gone(things[j].From) {
				things[j].From = 0
			}
			if gone(things[j].To) {
				things[j].To = 0
			}
		}
		t.Kept[i].Things = orNil(slices.DeleteFunc(things, func(h HandOver) bool {
			return h.From == 0 && h.To == 0 || h.Gear != 0 && t.GearItem(h.Gear) == nil
		}))
	}
	t.Kept = orNil(slices.DeleteFunc(t.Kept, func(k KeptPacks) bool { return len(k.Things) == 0 || k.Day > len(t.Days) }))
}

// redateKept gives the kept packs the new numbers of their days; what held
// from a day that is gone holds from the next.
func (t *Trip) redateKept(next func(day int) int) {
	for i := range t.Kept {
		t.Kept[i].Day = min(next(t.Kept[i].Day), len(t.Days))
	}
	t.Kept = newestOf(t.Kept, func(k KeptPacks) int { return k.Day })
}

func canonicalKept(list []KeptPacks) []KeptPacks {
	sorted := sortedBy(list, func(a, b KeptPacks) int { return cmp.Compare(a.Day, b.Day) })
	for i := range sorted {
		sorted[i].Things = sortedBy(sorted[i].Things, compareHandOvers)
	}
	return sorted
}

func compareHandOvers(a, b HandOver) int {
	return cmp.Or(cmp.Compare(a.Bag, b.Bag), cmp.Compare(a.Gear, b.Gear), cmp.Compare(a.Fuel, b.Fuel))
}
