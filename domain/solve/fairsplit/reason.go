package fairsplit

// Rule names what stands in the way of every split.
type Rule int

// The rules, in the order in which they are looked at: the plainest reason is named.
const (
	NobodyMayCarry   Rule = iota // an item has no possible carrier
	OwnKitOverLimit              // a member's own kit is more than they may carry
	ItemTooLarge                 // an item fits in no pack of those who may carry it
	PinnedTooMuch                // items with one possible carrier are too much for them
	TotalTooMuch                 // the crew has not the room for all items
	ClassTooTight                // a class cannot be spread over the crew within its share
	SubsetTooSmall               // items that only some may carry are too much for them
	WholeItemsMisfit             // there is room in total, but not for whole items
	LimitsTogether               // limits of several kinds cannot all be kept, even by items cut up
	RuledOut                     // every split was looked at or ruled out
	NotFound                     // no split was found; there may be one
)

// Reason says why no split is within the limits, and what smallest change would help.
type Reason struct {
	Rule    Rule
	Limit   Limit
	Items   []int   // the items meant, if they are not all
	Members []int   // the members meant, if they are not all
	Class   string  // for ClassLimit
	Limits  []Limit // for LimitsTogether, the kinds meant; Need is then so many parts of Have
	Need    int64   // grams, millilitres or energy
	Have    int64
	Change  []Change // together they lift this reason
	Least   []Change // for LimitsTogether, a proven least: if no other limit is raised, this one needs as much or more
}

// Change is a change of the problem that would help.
type Change struct {
	Kind   ChangeKind
	Member int   // for RaiseLimit; Nobody if it does not matter whose, or it is spread
	Item   int   // for AddCarrier
	By     int64 // for RaiseLimit: grams or millilitres more
	Limit  Limit // for RaiseLimit
	Class  string
	Share  Ratio // for RaiseShare: the share needed
}

// ChangeKind is a kind of change.
type ChangeKind int

// The kinds of change.
const (
	RaiseLimit ChangeKind = iota // a pack takes more, or so much less is brought
	RaiseShare                   // a class may have a larger part in one pack
	AddCarrier                   // one more member may carry an item
)

// plainReasons looks for what rules every split out, the plainest rule first. One
// reason is given per item, member or class concerned; later rules are left out once
// one has spoken.
func (in *instance) plainReasons(p Problem) []Reason {
	checks := []func(Problem) []Reason{
		in.nobodyMayCarry, in.ownKitOverLimit, in.itemTooLarge, in.pinnedTooMuch,
		in.totalTooMuch, in.classTooTight, in.subsetTooSmall, in.wholeItemsMisfit,
	}
	for _, check := range checks {
		if found := check(p); found != nil {
			return found
		}
	}
	return nil
}

// reasons says why the search ended without a split within the limits.
func (h *hunt) reasons(p Problem, overruns []Overrun) []Reason {
	if len(h.hopeless) == 1 && h.hopeless[0].Rule == LimitsTogether && len(overruns) > 0 {
		return []Reason{h.in.withEnough(p, h.hopeless[0], overruns)}
	}
	if h.hopeless != nil {
		return h.hopeless
	}
	rule := NotFound
	if h.exhausted {
		rule = RuledOut
	}
	return []Reason{h.in.leastOverrun(p, rule, overruns)}
}

// withEnough names the changes that let the best split fit beside the proof that
// none does. What the proof says of one limit alone stays where that is no more than
// the split lacks of its kind; else raising that limit alone is no way out.
func (in *instance) withEnough(p Problem, r Reason, overruns []Overrun) Reason {
	lacking := int64(0)
	for _, o := range overruns {
		if o.Limit == r.Limit {
			lacking += o.Over
		}
	}
	if r.Limit != ClassLimit && len(r.Change) == 1 && r.Change[0].By <= lacking {
		r.Least = r.Change
	}
	r.Change = in.leastOverrun(p, r.Rule, overruns).Change
	return r
}

// leastOverrun is the reason left when no rule explains it: raising the limits that
// the best split breaks, by as much as it breaks them, makes that split fit.
func (in *instance) leastOverrun(p Problem, rule Rule, overruns []Overrun) Reason {
	r := Reason{Rule: rule}
	for n, o := range overruns {
		if n == 0 {
			r.Limit, r.Class = o.Limit, o.Class
		}
		r.Members = append(r.Members, o.Member)
		c := Change{Kind: RaiseLimit, Member: o.Member, Limit: o.Limit, By: o.Over, Item: Nobody}
		if o.Limit == ClassLimit {
			c = in.shareChange(p, o.Class, o.Over)
		}
		r.Change = append(r.Change, c)
	}
	return r
}

// shareChange raises a class's share by some energy.
func (in *instance) shareChange(p Problem, class string, over int64) Change {
	change := Change{Kind: RaiseShare, Member: Nobody, Item: Nobody, Class: class}
	for c := range p.Classes {
		if p.Classes[c].Name == class {
			change.Share = Ratio{in.classCap[c] + over, max(1, in.classTotal[c])}
		}
	}
	return change
}

func (in *instance) nobodyMayCarry(Problem) []Reason {
	var list []Reason
	for _, j := range in.homeless {
		list = append(list, Reason{
			Rule:   NobodyMayCarry,
			Items:  []int{int(j)},
			Change: []Change{{Kind: AddCarrier, Item: int(j), Member: Nobody}},
		})
	}
	return list
}

func (in *instance) ownKitOverLimit(p Problem) []Reason {
	var list []Reason
	for _, place := range in.member {
		m := p.Crew[place]
		if m.BaseGrams > m.MaxGrams {
			list = append(list, in.tooMuch(OwnKitOverLimit, MassLimit, place, m.BaseGrams, m.MaxGrams))
		}
	}
	return list
}

func (in *instance) tooMuch(rule Rule, limit Limit, place int, need, have int64) Reason {
	return Reason{
		Rule: rule, Limit: limit, Members: []int{place}, Need: need, Have: have,
		Change: []Change{{Kind: RaiseLimit, Member: place, Item: Nobody, Limit: limit, By: need - have}},
	}
}

// itemTooLarge looks for items that are more than anyone who may carry them has room
// for. Have is the most room there is.
func (in *instance) itemTooLarge(p Problem) []Reason {
	var list []Reason
	for j, allowed := range in.allowed {
		for _, limit := range []Limit{MassLimit, VolumeLimit} {
			best, bestRoom := Nobody, int64(0)
			need := int64(in.mass[j])
			if limit == VolumeLimit {
				need = in.bulk[j]
			}
			for _, i := range allowed {
				room := p.Crew[in.member[i]].MaxGrams - int64(in.base[i])
				if limit == VolumeLimit {
					room = in.room[i]
				}
				if best == Nobody || room > bestRoom {
					best, bestRoom = in.member[i], room
				}
			}
			if best != Nobody && need > bestRoom {
				r := in.tooMuch(ItemTooLarge, limit, best, need, bestRoom)
				r.Items = []int{j}
				list = append(list, r)
			}
		}
	}
	return list
}

// pinnedTooMuch looks for members whose own kit and items with no other possible
// carrier are over a limit.
func (in *instance) pinnedTooMuch(p Problem) []Reason {
	var list []Reason
	for i, place := range in.member {
		if need, have := int64(in.pinned[i*in.days]), p.Crew[place].MaxGrams; need > have {
			list = append(list, in.tooMuch(PinnedTooMuch, MassLimit, place, need, have))
		}
		if need, have := in.pinnedBulk[i], in.room[i]; need > have {
			list = append(list, in.tooMuch(PinnedTooMuch, VolumeLimit, place, need, have))
		}
		for c, have := range in.classCap {
			if need := in.pinnedClass[i*in.classes+c]; need > have {
				r := in.tooMuch(PinnedTooMuch, ClassLimit, place, need, have)
				r.Class = p.Classes[c].Name
				r.Change = []Change{in.shareChange(p, r.Class, need-have)}
				list = append(list, r)
			}
		}
	}
	return list
}
