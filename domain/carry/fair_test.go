package carry

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// kilograms is a member who can carry so much and holds so much.
func kilograms(capability, held float64) holding {
	return holding{held: units.FromKilograms(held), capability: units.FromKilograms(capability)}
}

func TestFairLevelsByHand(t *testing.T) {
	limited := kilograms(50, 5)
	limited.limit = optional.Of(units.FromKilograms(6))
	for _, c := range []struct {
		name   string
		crew   []holding
		shared float64
		want   float64
	}{
		{"two equal", []holding{kilograms(50, 5), kilograms(50, 5)}, 10, 0.2},
		{"by strength", []holding{kilograms(60, 6), kilograms(40, 6)}, 10, 0.22}, // the page of planning problems, C2
		{"who holds more than the others get stands aside", []holding{kilograms(50, 20), kilograms(50, 5), kilograms(50, 5)}, 10, 0.2},
		{"who is at a limit leaves the rest to the others", []holding{limited, kilograms(50, 5), kilograms(50, 5)}, 11, 0.2},
		{"limits too low for all are left out", []holding{limited, limited}, 10, 0.2},
		{"nothing shared", []holding{kilograms(50, 20), kilograms(50, 5)}, 0, 0.4},
		{"who carries nothing does not count", []holding{kilograms(0, 5), kilograms(50, 5)}, 5, 0.2},
		{"nobody carries", []holding{kilograms(0, 5)}, 5, 0},
	} {
		if got := fairLevel(c.crew, units.FromKilograms(c.shared)); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: level %.6f, want %.6f", c.name, got, c.want)
		}
	}
}

// At the level the packs take just what is shared, and each pack is at the level,
// at its limit, or holds more in any case.
func TestAtTheFairLevelThePacksTakeAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		crew := make([]holding, rapid.IntRange(1, 9).Draw(t, "people"))
		room := units.Mass(0)
		for i := range crew {
			crew[i] = kilograms(float64(rapid.IntRange(30, 90).Draw(t, "capability")), float64(rapid.IntRange(3, 25).Draw(t, "held")))
			if rapid.Bool().Draw(t, "limited") {
				limit := crew[i].held + units.FromKilograms(float64(rapid.IntRange(0, 9).Draw(t, "spare")))
				crew[i].limit, room = optional.Of(limit), room+limit-crew[i].held
			} else {
				room += units.FromKilograms(1000)
			}
		}
		shared := units.FromGrams(float64(rapid.IntRange(1, 60_000).Draw(t, "shared")))
		if shared > room {
			t.Skip("the limits leave no level")
		}
		level := fairLevel(crew, shared)
		takes := 0.0
		for _, m := range crew {
			target := level * float64(m.capability)
			if limit, has := m.limit.Get(); has {
				target = min(target, float64(limit))
			}
			takes += max(0, target-float64(m.held))
		}
		if math.Abs(takes-float64(shared)) > float64(units.Gram) {
			t.Fatalf("at %.6f the packs take %.3f of %v", level, takes, shared)
		}
	})
}

// Each reason why somebody is over the fair level, in the case that has it.
func TestWhoIsOverTheFairLevelIsToldWithTheReason(t *testing.T) {
	only := func(r Result, want trip.MemberID, says string) Excess {
		t.Helper()
		if len(r.Stages[0].Over) != 1 || r.Stages[0].Over[0].Member != want || !strings.Contains(r.Stages[0].Over[0].Why.String(), says) {
			t.Fatalf("over the fair level: %+v, want %d because %q", r.Stages[0].Over, want, says)
		}
		return r.Stages[0].Over[0]
	}
	bagsOf := func(n int, kilograms float64) []bags.Bag {
		var list []bags.Bag
		for i := range n {
			list = append(list, bagOf(string(rune('a'+i)), 1, kilograms))
		}
		return list
	}
	heavy := walkers(1, 60, 60, 60)
	heavy.Crew[0].OwnKit = units.FromKilograms(9)
	r := compute(t, heavy, bagsOf(8, 1)...)
	over := only(r, 1, "own kit alone is 9000 g")
	if math.Abs(r.Stages[0].Fair[0]-4.0/60) > 1e-9 || over.Fair != units.FromKilograms(4) || over.Over != units.FromKilograms(5) {
		t.Errorf("the fair level is %.4f, the excess %+v; two share 8 kg", r.Stages[0].Fair[0], over)
	}

	pinned := walkers(1, 60, 60, 60)
	pinned.Pins = []trip.Pin{{Bag: "a", Member: 2}, {Bag: "b", Member: 2}, {Bag: "c", Member: 2}, {Bag: "d", Member: 2}}
	only(compute(t, pinned, bagsOf(10, 1)...), 2, "what only B may carry are 4")

	group := walkers(1, 60, 60, 60)
	group.Groups = append(group.Groups, trip.CookGroup{ID: 2, Name: "Small"})
	group.Crew[2].Group = 2
	group.Crew = append(group.Crew, group.Crew[2])
	group.Crew[3].ID, group.Crew[3].Name = 4, "D"
	group.Gear = []trip.Gear{{ID: 1, Name: "Tent", Group: 2, Mass: units.FromKilograms(4)}, {ID: 2, Name: "Pot", Group: 2, Mass: units.FromKilograms(4)}}
	r = compute(t, group, bagsOf(4, 1)...)
	if len(r.Stages[0].Over) != 2 || !strings.Contains(r.Stages[0].Over[0].Why.String(), "cook group Small makes 6.7 %") {
		t.Errorf("gear of a group: %+v", r.Stages[0].Over)
	}

	tight := walkers(1, 60, 60)
	tight.Crew[0].PackRoom = 2 * units.Litre
	only(compute(t, tight, bagsOf(8, 1)...), 2, "fair part with A")

	whole := walkers(1, 60, 60)
	only(compute(t, whole, bagsOf(3, 1)...), compute(t, whole, bagsOf(3, 1)...).Stages[0].Over[0].Member, "whole bags")

	if r := compute(t, walkers(1, 60, 60), bagsOf(4, 1)...); len(r.Stages[0].Over) > 0 {
		t.Errorf("an even split has somebody over it: %+v", r.Stages[0].Over)
	}
}
