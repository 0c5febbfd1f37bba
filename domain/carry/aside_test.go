package carry

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// othersWorst is the heaviest share of each day among all but the last member.
func othersWorst(r Result) []float64 {
	worst := make([]float64, len(r.Members[0].Days))
	for _, m := range r.Members[:len(r.Members)-1] {
		for d := range m.Days {
			worst[d] = max(worst[d], m.Days[d].Share)
		}
	}
	return worst
}

// One heavy kit rules the heaviest pack of every day, however the others share.
// They share as if they were alone.
func TestOneHeavyKitLeavesTheOthersFair(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		days := rapid.IntRange(2, 4).Draw(rt, "days")
		on := walkers(days, 55, 60, 70, 80)
		for i := range on.Crew {
			on.Crew[i].OwnKit = units.FromKilograms(float64(rapid.IntRange(5, 8).Draw(rt, "kit")))
		}
		var list []bags.Bag
		for day := 1; day <= days; day++ {
			for n := range rapid.IntRange(5, 8).Draw(rt, "bags") {
				list = append(list, bagOf(fmt.Sprintf("%d-%d", day, n), day, float64(rapid.IntRange(1, 8).Draw(rt, "mass"))/10))
			}
		}
		alone := compute(t, on, list...)
		heavy := *on
		heavy.Crew = append(slices.Clone(on.Crew), on.Crew[0])
		heavy.Crew[4].ID, heavy.Crew[4].Name, heavy.Crew[4].OwnKit = 5, "E", units.FromKilograms(25)
		r := compute(t, &heavy, list...)
		if free := r.Members[4].Days[0]; free.Load != 25*units.Kilogram {
			rt.Fatalf("who has a heavy kit carries %v", free.Load)
		}
		if !r.Stages[0].Proven {
			rt.Fatal("nobody could lighten the heaviest pack, and it is not said")
		}
		mean := func(shares []float64) (sum float64) {
			for _, share := range shares {
				sum += share
			}
			return sum / float64(len(shares))
		}
		got, want := othersWorst(r), make([]float64, days)
		for d := range want {
			for _, m := range alone.Members {
				want[d] = max(want[d], m.Days[d].Share)
			}
		}
		if got[0] > want[0]*NearlyFair || mean(got) > mean(want)*NearlyFair {
			rt.Fatalf("beside a heavy kit the others' heaviest is %.4f, alone %.4f", got, want)
		}
	})
}

// The trade-off stays one: fairness among the others, although the heaviest pack
// is the same in every choice.
func TestChoicesBesideAHeavyKitAreOfTheOthers(t *testing.T) {
	on := walkers(2, 60, 60, 60, 60)
	on.Crew[3].OwnKit = units.FromKilograms(25)
	var list []bags.Bag
	packs := trip.KeptPacks{Day: 1}
	for i := range 12 {
		bag := bagOf(string(rune('a'+i)), 1+i%2, 1)
		list = append(list, bag)
		packs.Things = append(packs.Things, trip.HandOver{Bag: bag.Key, From: 1})
	}
	r := mustCompute(t, Work{Trip: on, Legs: on.Legs(), Bags: bags.Result{Bags: list}, Kept: []trip.KeptPacks{packs}})
	choices := r.Stages[0].Choices
	if len(choices) < 2 || choices[0].Worst <= choices[len(choices)-1].Worst {
		t.Fatalf("choices: %+v", choices)
	}
	if aside := r.Stages[0].Aside; !slices.Equal(aside, []trip.MemberID{on.Crew[3].ID}) {
		t.Errorf("the shares are said to leave out %v", aside)
	}
	on.Crew[3].OwnKit = 0
	if r := mustCompute(t, Work{Trip: on, Legs: on.Legs(), Bags: bags.Result{Bags: list}, Kept: []trip.KeptPacks{packs}}); len(r.Stages[0].Choices) == 0 || r.Stages[0].Aside != nil {
		t.Errorf("with light kits the shares are said to leave out %v", r.Stages[0].Aside)
	}
	if worst := othersWorst(r)[0]; worst > 4.0/60*NearlyFair {
		t.Errorf("the heaviest of the others has %.4f, they could share evenly", worst)
	}
}
