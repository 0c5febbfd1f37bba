package onward_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/findings"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// sound fails on whatever the independent check finds.
func sound(rt *rapid.T, rest *onward.Rest) {
	for _, f := range rest.Findings {
		if f.Stage == findings.Check {
			rt.Fatalf("from day %d: %s %s", rest.From, f.What, f.Why)
		}
	}
}

// anEvening draws what happens between the morning of a day and the next.
func anEvening(rt *rapid.T, p *plan.Plan, done *trip.Progress, day int) {
	for _, bag := range p.Bags.Bags {
		if bag.LastDay < day || done.BagEnd(bag.Key) != nil {
			continue
		}
		switch rapid.IntRange(0, 25).Draw(rt, "bag") {
		case 0:
			done.Ends = append(done.Ends, trip.BagEnd{Bag: bag.Key, End: rapid.SampledFrom(trip.Ends()).Draw(rt, "end"), Day: day})
		case 1:
			done.PartsGone = append(done.PartsGone, trip.PartGone{Bag: bag.Key, Day: day, End: trip.ThrownAway, Mass: units.Mass(rapid.Int64Range(1, 2*int64(bag.Food)+1).Draw(rt, "gone"))})
		}
	}
	for i := range p.Trip.Crew {
		id := p.Trip.Crew[i].ID
		if day < len(p.Trip.Days) && i > 0 && rapid.IntRange(0, 5).Draw(rt, "crew") == 0 {
			done.CrewChanges = append(done.CrewChanges, trip.CrewChange{Member: id, Day: day + 1, There: rapid.Bool().Draw(rt, "there")})
		}
	}
	for _, leg := range p.Legs {
		if leg.From != 0 && leg.FirstDay == day+1 && rapid.Bool().Draw(rt, "box missing") {
			done.MissingBoxes = append(done.MissingBoxes, leg.From)
		}
	}
	for _, fuel := range p.Cooking.Fuel {
		for _, c := range fuel.Containers {
			if rapid.IntRange(0, 9).Draw(rt, "fuel") == 0 {
				done.FuelNotes = append(done.FuelNotes, trip.FuelNote{Container: c.Key, Day: day, Left: units.Mass(rapid.Int64Range(0, int64(c.Fuel)).Draw(rt, "left"))})
			}
		}
	}
}

// packingNight draws what the scale showed and what was ticked.

func packingNight(rt *rapid.T, p *plan.Plan, done *trip.Progress) {
	for _, bag := range p.Bags.Bags {
		if rapid.IntRange(0, 3).Draw(rt, "weighed") > 0 || len(bag.Contents) == 0 {
			continue
		}
		packed := trip.PackedBag{Bag: bag.Key, Done: rapid.Bool().Draw(rt, "ticked")}
		for _, c := range bag.Contents {
			if rapid.Bool().Draw(rt, "this food") {
				packed.Weighed = append(packed.Weighed, trip.Weighing{Food: c.Food, Mass: units.Mass(rapid.Int64Range(0, 2*int64(c.Mass)).Draw(rt, "mass"))})
			}
		}
		done.Packed = append(done.Packed, packed)
	}
}

// Whatever happens on any trip, on several mornings, and whatever the leader
// makes of what is proposed, the rest is sound: nobody eats what is not there
// or harms them, each bag is in one pack, and what cannot be kept is said.
func TestTheRestIsSoundWhateverHappens(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := planOf(rt, triptest.Trip().Draw(rt, "trip"))
		mornings(rt, p)
	})
}

// The same on a full trip of two cook groups, where dishes can move.
func TestTheRestOfAFullTripIsSound(t *testing.T) {
	on := triptest.Large(18, 7, 7)
	guest := on.Crew[0]
	guest.ID, guest.Name, guest.Standby, guest.FirstDay, guest.LastDay = 99, "Guest", true, 0, 0
	on.Crew = append(on.Crew, guest)
	p := planned(t, on)
	if len(p.Trip.Groups) < 2 || len(p.Legs) < 2 {
		t.Fatal("one cook group or no box: nothing to move or to lose")
	}
	rapid.Check(t, func(rt *rapid.T) { mornings(rt, p) })
}

func mornings(rt *rapid.T, p *plan.Plan) {
	var done trip.Progress
	packingNight(rt, p, &done)
	for day := 1; day <= len(p.Trip.Days); day++ {
		if rapid.Bool().Draw(rt, "looked at") {
			rest := onwards(rt, p, done, day)
			sound(rt, rest)
			noAllergenNorAbsent(rt, p, &done, rest)
			if rapid.Bool().Draw(rt, "accepted") {
				onward.Store(&done, rest.Decide(rapid.IntRange(-1, max(0, len(rest.Choices)-1)).Draw(rt, "choice"), true))
				sound(rt, onwards(rt, p, done, day))
			}
		}
		anEvening(rt, p, &done, day)
	}
}

// noAllergenNorAbsent says the two things that must never go wrong in the
// simplest words, apart from both planner and check.
func noAllergenNorAbsent(rt *rapid.T, p *plan.Plan, done *trip.Progress, rest *onward.Rest) {
	known := *p.Trip
	known.Progress = *done
	for _, s := range rest.Servings {
		m := known.Member(s.Member)
		if !known.There(m, s.Day) {
			rt.Fatalf("%s eats on day %d and is not there", m.Name, s.Day)
		}
		if s.Mass == 0 || portioned(p, s.Member, s.Food) {
			continue
		}
		for _, o := range m.Objections(p.Trip.Food(s.Food)) {
			if o.Dangerous() {
				rt.Fatalf("%s is given %s on day %d: %+v", m.Name, p.Trip.Food(s.Food).Name, s.Day, o)
			}
		}
	}
}

// portioned tells whether packing night planned a food for a member anywhere.
func portioned(p *plan.Plan, id trip.MemberID, food trip.FoodID) bool {
	for _, b := range p.Portions.Batches {
		for _, portion := range b.Portions {
			if portion.Member == id && slices.ContainsFunc(portion.Amounts, func(a portions.Amount) bool { return a.Food == food }) {
				return true
			}
		}
	}
	return false
}
