package onward_test

import (
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// loadOn is what a member carries on a morning of a rest.
func loadOn(p *plan.Plan, id trip.MemberID, day int) carry.Day {
	for _, m := range p.Carry.Members {
		if m.Member == id {
			return m.Days[day-1]
		}
	}
	return carry.Day{}
}

func noFault(t *testing.T, rest *onward.Rest) {
	t.Helper()
	for _, f := range rest.Findings {
		if f.Stage == findings.Check {
			t.Errorf("from day %d: %s %s", rest.From, f.What, f.Why)
		}
	}
}

// Who is away on days 3 and 4 carries nothing then, others have what they had,
// and from day 5 on they carry again.
func TestWhoIsAwayForSomeDaysCarriesNothingThen(t *testing.T) {
	p := planned(t, triptest.Large(6, 7, 3))
	away := someCarrier(t, p, 3)
	done := trip.Progress{CrewChanges: []trip.CrewChange{{Member: away, Day: 3}, {Member: away, Day: 5, There: true}}}
	for _, from := range []int{1, 3, 4, 5} {
		rest := onwards(t, p, done, from)
		noFault(t, rest)
		for day := from; day <= 7; day++ {
			load, there := loadOn(rest.Plan, away, day), day != 3 && day != 4
			if load.Present != there || there != (load.Load > load.OwnKit) || !there && load.Load != 0 {
				t.Errorf("from day %d: on day %d there %v with %v", from, day, load.Present, load.Load)
			}
		}
		for _, stage := range rest.Plan.Carry.Stages {
			for _, item := range stage.Items {
				if item.Carrier == away && stage.FirstDay <= 4 && stage.LastDay >= 3 {
					t.Errorf("from day %d: who is away has %s on days %d to %d", from, item.Key, stage.FirstDay, stage.LastDay)
				}
			}
		}
	}
	given := 0
	for _, h := range onwards(t, p, done, 3).HandOvers {
		if h.From == away {
			given++
		}
	}
	if given == 0 {
		t.Error("who goes hands nothing over")
	}
	taken := 0
	for _, h := range onwards(t, p, done, 5).HandOvers {
		if h.To == away {
			taken++
		}
	}
	if taken == 0 {
		t.Error("who is back is given nothing")
	}
}

// somebodysBag finds a bag that is carried over several days.
func somebodysBag(t *testing.T, p *plan.Plan, fits func(*bags.Bag) bool) *bags.Bag {
	t.Helper()
	for i := range p.Bags.Bags {
		if fits(&p.Bags.Bags[i]) {
			return &p.Bags.Bags[i]
		}
	}
	t.Fatal("no such bag")
	return nil
}

// A bag that is lost on a day was in a pack that morning and in none after,
// wrapping and all; one that is eaten early leaves its wrapping.
func TestWhatIsGoneIsNotCarriedOn(t *testing.T) {
	p := planned(t, triptest.Large(5, 6, 3))
	bag := somebodysBag(t, p, func(b *bags.Bag) bool {
		return b.Day >= p.Legs[b.Leg].FirstDay+2 && len(b.Uses) == 1 && b.Tare > 0
	})
	on := p.Legs[bag.Leg].FirstDay
	for _, c := range []struct {
		end    trip.End
		leaves units.Mass
	}{{trip.Lost, 0}, {trip.ThrownAway, 0}, {trip.Eaten, bag.Tare}} {
		for _, from := range []int{on, on + 1} {
			rest := onwards(t, p, trip.Progress{Ends: []trip.BagEnd{{Bag: bag.Key, End: c.end, Day: on}}}, from)
			noFault(t, rest)
			for day := from; day <= bag.Day; day++ {
				less := sumLoads(p, day) - sumLoads(rest.Plan, day)
				want := bag.Mass() - c.leaves
				if day == on {
					want = 0
				}
				if less != want {
					t.Errorf("%s, from day %d: on day %d the packs weigh %v less, want %v", c.end, from, day, less, want)
				}
			}
		}
	}
}

func sumLoads(p *plan.Plan, day int) units.Mass {
	sum := units.Mass(0)
	for _, m := range p.Carry.Members {
		sum += m.Days[day-1].Load
	}
	return sum
}

// How fair the rest is, is told against what could be if everything were free,
// not against what the leader decided; and of this morning, not of an earlier.
func TestTheRestIsHeldAgainstTheBestThereCouldBe(t *testing.T) {
	p := planned(t, triptest.Large(4, 14, 3))
	leg := p.Legs[len(p.Legs)-1]
	on, to := leg.FirstDay+1, p.Trip.Crew[1].ID
	decided := trip.Replan{Day: on}
	for _, item := range stageOn(p, on).Items {
		if item.Kind == carry.BagItem && item.Carrier != to && len(decided.HandOvers) < 12 {
			if b := somebodysBag(t, p, func(b *bags.Bag) bool { return b.Key == item.Key }); b.Member == 0 && b.LastDay > on {
				decided.HandOvers = append(decided.HandOvers, trip.HandOver{Bag: item.Key, From: item.Carrier, To: to})
			}
		}
	}
	if len(decided.HandOvers) < 3 || leg.LastDay < on+1 {
		t.Fatal("nothing to give")
	}
	for _, from := range []int{on, on + 1} {
		rest := onwards(t, p, trip.Progress{Replans: []trip.Replan{decided}}, from)
		noFault(t, rest)
		stage := stageOn(rest.Plan, from)
		if stage.FirstDay != from {
			t.Errorf("the stage of day %d begins on day %d", from, stage.FirstDay)
		}
		if stage.Worst < 1.01*stage.WorstBound || stage.WorstBound <= 0 || stage.Proven {
			t.Errorf("from day %d: heaviest share %.4f, bound %.4f, proven %v", from, stage.Worst, stage.WorstBound, stage.Proven)
		}
	}
}

func stageOn(p *plan.Plan, day int) *carry.Stage {
	for i := range p.Carry.Stages {
		if s := &p.Carry.Stages[i]; s.FirstDay <= day && day <= s.LastDay {
			return s
		}
	}
	return &carry.Stage{}
}

func TestMorning(t *testing.T) {
	on := triptest.Large(3, 5, 1)
	on.Start = 20000
	done := trip.Progress{CrewChanges: []trip.CrewChange{{Member: 1, Day: 4}}}
	for _, c := range []struct {
		today units.Date
		done  trip.Progress
		want  int
	}{
		{20000, trip.Progress{}, 1}, {20002, done, 3}, {20004, done, 5},
		{0, done, 4}, {19999, done, 4}, {20005, done, 4}, {0, trip.Progress{}, 1},
		{0, trip.Progress{Ends: []trip.BagEnd{{Day: 2}}, PartsGone: []trip.PartGone{{Day: 3}}}, 3},
		{0, trip.Progress{FuelNotes: []trip.FuelNote{{Day: 2}}, Replans: []trip.Replan{{Day: 5}}}, 5},
		{0, trip.Progress{Ends: []trip.BagEnd{{Day: 9}}}, 5},
	} {
		if have := onward.Morning(on, &c.done, c.today); have != c.want {
			t.Errorf("on %v: day %d, want %d", c.today, have, c.want)
		}
	}
}
