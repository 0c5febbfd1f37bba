package fairsplit

import "math/big"

// Nobody is the place given for an item that no member may carry.
const Nobody = -1

// Options steer a search. The zero value is a good default.
type Options struct {
	// Steps limits the work, in member-days looked at; 0 chooses by the size of the
	// problem. The same problem, options and steps give the same result.
	Steps int64
	// Seed varies the search. Every seed is deterministic.
	Seed uint64
	// Workers is how many processors may be used; it never changes the result. 0 is 1.
	Workers int
	// Progress, if set, hears of every better split as it is found, one call at a time.
	Progress func(Progress)

	// Previous is the carrier of each item before a re-split, Nobody for a new item. It
	// may be nil. An item whose carrier may no longer carry it counts as no change.
	// A split that prefers one carrier per item (their own food, say) is asked for in
	// the same way.
	Previous []int
	// Known is a split worth looking at beside those the search finds, such as one that
	// foresees who will carry what later. An item that its carrier may not carry, or
	// Nobody, goes where it fits. It may be nil, and counts with Previous only.
	Known []int
	// Tolerance is how much worse S may be than the best found for the sake of fewer
	// changes. The zero value is 0.5 %.
	Tolerance Ratio
	// MaxChanges, if positive, limits the changes instead; the fairest split within
	// the limit is returned.
	MaxChanges int
}

// Progress is the state of a running search.
type Progress struct {
	Steps, Limit int64
	R1, S        float64 // of the best split so far, for display
	R1Gap, SGap  float64 // above the bounds, as parts of them
	Feasible     bool
}

// Result is a split and what is known about it.
type Result struct {
	Carrier []int // place in the crew per item, or Nobody

	R1, S           *big.Rat // grams per unit of strength
	BestR1          *big.Rat // least R1 found; R1 may be up to 0.5 % above it for a better S
	R1Bound, SBound *big.Rat // no split can be below these
	Proven          bool     // R1 and S are within 0.01 % of their bounds, or every split was ruled out
	Exhausted       bool     // every split was looked at or ruled out
	Stopped         bool     // the context ended the search early

	Days  []Day
	Steps int64

	Feasible bool
	Reasons  []Reason  // why no split was found, the plainest first; empty if Feasible
	Overruns []Overrun // where Carrier breaks a limit; empty if Feasible
	Over     int64     // above all limits together, in grams and what counts like them

	Changes int       // items that change their carrier
	Forced  int       // items that had to, as their carrier may no longer carry them
	Choices []Resplit // hand-overs against fairness, from the fewest changes; nil without Previous. All are within the limits if Feasible
}

// Resplit is a split that nothing beats in both changes and fairness. Where no split
// within the limits was found, passing them by less counts before fairness.
type Resplit struct {
	Changes  int
	R1, S    *big.Rat
	Carrier  []int
	Over     int64     // above all limits together, in grams and what counts like them; 0: within them
	Overruns []Overrun // where it breaks a limit
}

// Day is what is carried on one morning.
type Day struct {
	Level   *big.Rat // burden of the ideal split into crumbs: everybody's fair part
	Bound   *big.Rat // no split has a smaller largest burden
	Largest *big.Rat // largest burden of this split
	Grams   []int64  // per member of the crew
}

// GapR1 is how far R1 is above its bound, as a part of the bound.
func (r Result) GapR1() float64 { return gap(r.R1, r.R1Bound) }

// GapS is how far S is above its bound, as a part of the bound.
func (r Result) GapS() float64 { return gap(r.S, r.SBound) }

func gap(value, bound *big.Rat) float64 {
	if bound.Sign() == 0 {
		return 0
	}
	g, _ := new(big.Rat).Sub(new(big.Rat).Quo(value, bound), big.NewRat(1, 1)).Float64()
	return max(0, g)
}

// Overrun is a limit that the split breaks.
type Overrun struct {
	Member int
	Limit  Limit
	Class  string // for ClassLimit
	Over   int64  // grams, millilitres or energy
}

// Limit is a kind of hard limit of one pack.
type Limit int

// The limits of a pack.
const (
	MassLimit Limit = iota
	VolumeLimit
	ClassLimit
)

// result turns a split into what the caller sees.
func (in *instance) result(p Problem, carrier []int32, b bounds) Result {
	r := Result{Carrier: in.places(carrier), SBound: new(big.Rat)}
	s := in.splitOf(carrier)
	for d := range in.days {
		day := in.day(p, s, d)
		day.Level, day.Bound = in.exactBurden(b.level[d]), in.exactBurden(b.day[d])
		r.SBound.Add(r.SBound, new(big.Rat).Mul(big.NewRat(in.hours[d], 1), day.Bound))
		r.Days = append(r.Days, day)
	}
	if priced := big.NewRat(b.price, max(1, in.unit)); priced.Cmp(r.SBound) > 0 {
		r.SBound = priced
	}
	r.SBound.Quo(r.SBound, big.NewRat(in.hoursTotal, 1))
	r.S = in.meanBurden(s)
	r.R1, r.R1Bound, r.BestR1 = r.Days[0].Largest, r.Days[0].Bound, r.Days[0].Largest
	r.Overruns, r.Over = in.overruns(p, s), s.overrun()
	r.Feasible = len(r.Overruns) == 0 && len(in.homeless) == 0
	return r
}

// day lists the loads of one day.
func (in *instance) day(p Problem, s *split, d int) Day {
	day := Day{Grams: make([]int64, len(p.Crew)), Largest: in.largest(s, d)}
	for i, m := range p.Crew {
		day.Grams[i] = m.BaseGrams
	}
	for i, place := range in.member {
		day.Grams[place] = int64(s.load[i*in.days+d])
	}
	return day
}

// largest is the exact largest burden of a day.
func (in *instance) largest(s *split, d int) *big.Rat {
	top := new(big.Rat)
	for i := range in.members {
		if burden := in.perStrength(i, int64(s.load[i*in.days+d])); burden.Cmp(top) > 0 {
			top = burden
		}
	}
	return top
}

// meanBurden is the exact S of a split.
func (in *instance) meanBurden(s *split) *big.Rat {
	sum := new(big.Rat)
	for d, h := range in.hours {
		sum.Add(sum, new(big.Rat).Mul(big.NewRat(h, in.hoursTotal), in.largest(s, d)))
	}
	return sum
}

// places names carriers by their places in the crew.
func (in *instance) places(carrier []int32) []int {
	list := make([]int, len(carrier))
	for j, i := range carrier {
		list[j] = Nobody
		if i != nobody {
			list[j] = in.member[i]
		}
	}
	return list
}

func (in *instance) splitOf(carrier []int32) *split {
	s := newSplit(in)
	for j, i := range carrier {
		if i != nobody {
			s.put(int32(j), int(i))
		}
	}
	return s
}

func (in *instance) overruns(p Problem, s *split) []Overrun {
	var list []Overrun
	for i, place := range in.member {
		if over := int64(s.load[i*in.days]) - p.Crew[place].MaxGrams; over > 0 {
			list = append(list, Overrun{Member: place, Limit: MassLimit, Over: over})
		}
		if over := s.bulk[i] - in.room[i]; over > 0 {
			list = append(list, Overrun{Member: place, Limit: VolumeLimit, Over: over})
		}
		for c, limit := range in.classCap {
			if over := s.inClass[i*in.classes+c] - limit; over > 0 {
				list = append(list, Overrun{Member: place, Limit: ClassLimit, Class: p.Classes[c].Name, Over: over})
			}
		}
	}
	return list
}
