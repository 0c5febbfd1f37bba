package fairsplit

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// hinderedProblem draws a problem that can be enumerated and that one rule stands
// in the way of, as a rule.
func hinderedProblem(t *rapid.T, rule Rule, limit Limit) Problem {
	between := func(name string, low, high int) int64 { return int64(rapid.IntRange(low, high).Draw(t, name)) }
	p := Problem{Days: 1, HoursTenths: []int64{1}}
	var grams, bulk int64
	for range between("items", 2, 5) {
		it := Item{MassGrams: between("mass", 1, 9), VolumeMl: between("volume", 1, 9), GoneAfter: 1}
		if rule == WholeItemsMisfit {
			it.MassGrams, it.VolumeMl = 3*between("threes", 1, 3), 5*between("fives", 1, 3)
		}
		p.Items, grams, bulk = append(p.Items, it), grams+it.MassGrams, bulk+it.VolumeMl
	}
	for range between("members", 2, 3) {
		p.Crew = append(p.Crew, Member{Strength: 1, BaseGrams: between("kit", 0, 5), MaxGrams: Unlimited, VolumeMl: Unlimited})
	}
	people := int64(len(p.Crew))
	// limits sets what each may take to about parts of what there is.
	limits := func(low, high int) {
		for i := range p.Crew {
			part := between("part", low, high)
			if limit == MassLimit {
				p.Crew[i].MaxGrams = p.Crew[i].BaseGrams + grams*part/100/people
			} else {
				p.Crew[i].VolumeMl = bulk * part / 100 / people
			}
		}
	}
	size := func(it Item) int64 {
		if limit == MassLimit {
			return it.MassGrams
		}
		return it.VolumeMl
	}
	allow := func(i int, room int64) {
		if limit == MassLimit {
			p.Crew[i].MaxGrams = p.Crew[i].BaseGrams + room
		} else {
			p.Crew[i].VolumeMl = room
		}
	}
	last := len(p.Crew) - 1
	some := int(between("which item", 0, len(p.Items)-1))
	switch rule {
	case NobodyMayCarry:
		p.Items[some].Allowed = []int{}
	case OwnKitOverLimit:
		p.Crew[last].BaseGrams = 3
		p.Crew[last].MaxGrams = between("limit", 0, 2)
	case ItemTooLarge:
		p.Items[some].MassGrams, p.Items[some].VolumeMl = 30, 30
		limits(20, 60)
	case PinnedTooMuch:
		sum, largest := int64(0), int64(0)
		for j := range p.Items {
			if j == some || j == (some+1)%len(p.Items) || between("pinned too", 0, 1) == 1 {
				p.Items[j].Allowed = []int{last}
				sum, largest = sum+size(p.Items[j]), max(largest, size(p.Items[j]))
			}
		}
		if limit == ClassLimit {
			p.Classes = []Class{{Name: "dinner", Share: Ratio{between("share", 10, 90), 100}}}
			for j := range p.Items {
				p.Items[j].Class, p.Items[j].Energy = "dinner", between("energy", 0, 6)
			}
			break
		}
		limits(40, 90)
		p.Crew[0].MaxGrams, p.Crew[0].VolumeMl = Unlimited, Unlimited
		allow(last, sum-between("short", 1, int(sum-largest)))
	case TotalTooMuch:
		limits(40, 99)
	case ClassTooTight:
		p.Classes = []Class{{Name: "dinner", Share: Ratio{between("share", 10, 60), 100}}}
		for j := range p.Items {
			p.Items[j].Class, p.Items[j].Energy = "dinner", between("energy", 0, 6)
			if between("choosy", 0, 2) == 0 {
				p.Items[j].Allowed = []int{0, last}
			}
		}
	case SubsetTooSmall:
		p.Crew = append(p.Crew, Member{Strength: 1, MaxGrams: Unlimited, VolumeMl: Unlimited})
		for j := range p.Items {
			if j < 2 || between("choosy", 0, 1) == 1 {
				p.Items[j].Allowed = []int{0, 1}
			} else if between("pinned", 0, 1) == 1 {
				p.Items[j].Allowed = []int{0}
			}
		}
		limits(40, 120)
		p.Crew[last+1].MaxGrams, p.Crew[last+1].VolumeMl = Unlimited, Unlimited
		sum, largest, pinned := int64(0), int64(0), int64(0)
		for _, it := range p.Items {
			if it.Allowed != nil {
				sum, largest = sum+size(it), max(largest, size(it))
			}
			if len(it.Allowed) == 1 {
				pinned += size(it)
			}
		}
		first := max(largest, pinned)
		allow(0, first)
		allow(1, max(0, sum-first-between("short", 1, 3)))
	case WholeItemsMisfit:
		limits(95, 120)
	}
	return p
}

// TestThePlainestRuleIsNamedWithTheLeastChange: for each rule that can stand in the
// way of every split, over random crews: enumeration finds no split where one is
// named, what is named is short by what is said, no smaller change of what is to be
// changed lets a split be found, and with the change that reason is gone.
func TestThePlainestRuleIsNamedWithTheLeastChange(t *testing.T) {
	for _, k := range []struct {
		Rule
		Limit
	}{
		{NobodyMayCarry, MassLimit}, {OwnKitOverLimit, MassLimit}, {ItemTooLarge, MassLimit}, {ItemTooLarge, VolumeLimit},
		{PinnedTooMuch, MassLimit}, {PinnedTooMuch, VolumeLimit}, {PinnedTooMuch, ClassLimit}, {TotalTooMuch, MassLimit}, {TotalTooMuch, VolumeLimit},
		{ClassTooTight, ClassLimit}, {SubsetTooSmall, MassLimit}, {SubsetTooSmall, VolumeLimit}, {WholeItemsMisfit, MassLimit}, {WholeItemsMisfit, VolumeLimit},
	} {
		met := 0
		rapid.Check(t, func(t *rapid.T) {
			p := hinderedProblem(t, k.Rule, k.Limit)
			for _, r := range newInstance(p).plainReasons(p) {
				if r.Rule == k.Rule && r.Limit == k.Limit {
					met++
				}
				if fits(p) {
					t.Fatalf("a split keeps all limits; %+v was said", r)
				}
				checkShortage(t, p, r)
				checkLeastChange(t, p, r)
				checkChangeHelps(t, p, r)
			}
		})
		if met == 0 {
			t.Errorf("rule %d by limit %d never stood in the way", k.Rule, k.Limit)
		}
	}
}

// TestNoRuleIsNamedWhereAllFits: where enumeration finds a split no rule speaks.
func TestNoRuleIsNamedWhereAllFits(t *testing.T) {
	met := 0
	rapid.Check(t, func(t *rapid.T) {
		rule := Rule(rapid.IntRange(int(ItemTooLarge), int(WholeItemsMisfit)).Draw(t, "rule"))
		p := hinderedProblem(t, rule, Limit(rapid.IntRange(int(MassLimit), int(VolumeLimit)).Draw(t, "limit")))
		for i := range p.Crew {
			p.Crew[i].MaxGrams, p.Crew[i].VolumeMl = p.Crew[i].MaxGrams+4, p.Crew[i].VolumeMl+4
		}
		if fits(p) {
			met++
			if reasons := newInstance(p).plainReasons(p); reasons != nil {
				t.Fatalf("all fits; %+v was said", reasons)
			}
		}
	})
	if met == 0 {
		t.Error("nothing ever fitted")
	}
}

// fits tells by enumeration whether a split keeps all limits.
func fits(p Problem) bool {
	found := false
	enumerate(p, func(carrier []int) {
		found = found || !slices.Contains(carrier, Nobody) && len(plainSums(p, carrier).overruns) == 0
	})
	return found
}

// checkShortage adds up again what is said to be short.
func checkShortage(t *rapid.T, p Problem, r Reason) {
	size := func(j int) int64 {
		if r.Limit == VolumeLimit {
			return p.Items[j].VolumeMl
		}
		return p.Items[j].MassGrams
	}
	room := func(i int) int64 {
		if r.Limit == VolumeLimit {
			return p.Crew[i].VolumeMl
		}
		return p.Crew[i].MaxGrams - p.Crew[i].BaseGrams
	}
	need, have := int64(0), int64(0)
	switch r.Rule {
	case NobodyMayCarry:
		if len(r.Items) != 1 || len(plainCarriers(p, r.Items[0])) > 0 {
			t.Fatalf("%+v may be carried", r)
		}
		return
	case OwnKitOverLimit:
		need, have = p.Crew[r.Members[0]].BaseGrams, p.Crew[r.Members[0]].MaxGrams
	case ItemTooLarge:
		need, have = size(r.Items[0]), room(r.Members[0])
	case TotalTooMuch:
		for j := range p.Items {
			need += size(j)
		}
		for i := range p.Crew {
			have += max(0, room(i))
		}
	case SubsetTooSmall:
		for _, i := range r.Members {
			have += room(i)
			for j := range p.Items {
				if possible := plainCarriers(p, j); len(possible) == 1 && possible[0] == i {
					have -= size(j)
				}
			}
		}
		for _, j := range r.Items {
			need += size(j)
			for _, i := range plainCarriers(p, j) {
				if !slices.Contains(r.Members, i) {
					t.Fatalf("item %d may go to %d, who is not named: %+v", j, i, r)
				}
			}
		}
	default:
		return // what is pinned, spread or whole is judged by what would help
	}
	if r.Need != need || r.Have != have {
		t.Fatalf("%+v: plainly %d of %d", r, need, have)
	}
}

// checkLeastChange: with less than the change named there is no split either. A
// change of the packs together is compared with the least by which any split passes
// that limit in all; where a member is named, everybody's limit may be raised by one
// less than is said.
func checkLeastChange(t *rapid.T, p Problem, r Reason) {
	raised := p
	raised.Crew, raised.Classes = slices.Clone(p.Crew), slices.Clone(p.Classes)
	sum := int64(0)
	for _, c := range r.Change {
		sum += c.By
	}
	switch c := r.Change[0]; {
	case c.Kind == AddCarrier:
		return
	case c.Kind == RaiseShare:
		c.Share.Num--
		apply(&raised, c)
	case len(r.Change) == 1 && c.Member != Nobody && r.Rule != WholeItemsMisfit:
		for i := range raised.Crew {
			if r.Rule == ItemTooLarge || i == c.Member {
				apply(&raised, Change{Kind: RaiseLimit, Member: i, Limit: c.Limit, By: c.By - 1})
			}
		}
	default:
		least := int64(1) << 40
		enumerate(p, func(carrier []int) {
			over := int64(0)
			for _, o := range plainSums(p, carrier).overruns {
				if o.Limit == r.Limit {
					over += o.Over
				}
			}
			least = min(least, over)
		})
		if least < sum {
			t.Fatalf("%+v: a split is over that limit by no more than %d in all", r, least)
		}
		return
	}
	if fits(raised) {
		t.Fatalf("less than %+v is enough", r)
	}
}

// checkChangeHelps: after the change the reason is gone.
func checkChangeHelps(t *rapid.T, p Problem, r Reason) {
	raised := p
	raised.Crew, raised.Items, raised.Classes = slices.Clone(p.Crew), slices.Clone(p.Items), slices.Clone(p.Classes)
	for _, c := range r.Change {
		switch {
		case c.Kind == AddCarrier:
			raised.Items[c.Item].Allowed = []int{0}
			continue
		case c.Kind == RaiseLimit && c.Member == Nobody:
			c.Member = len(p.Crew) - 1
			if len(r.Members) > 0 {
				c.Member = r.Members[0]
			}
		}
		apply(&raised, c)
	}
	same := func(a Reason) string {
		a.Need, a.Have, a.Change = 0, 0, nil
		return fmt.Sprintf("%+v", a)
	}
	for _, again := range newInstance(raised).plainReasons(raised) {
		if same(again) == same(r) {
			t.Fatalf("with the change of %+v it is said again: %+v", r, again)
		}
	}
}
