package carry

import (
	"context"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/cooking"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// dryWork is a random crew with a dry camp on a day.
func dryWork(rt *rapid.T) (Work, int) {
	w := crewWork(rt)
	day := rapid.IntRange(1, len(w.Trip.Days)).Draw(rt, "dry day")
	for i := range w.Trip.Crew {
		m := &w.Trip.Crew[i]
		switch rapid.IntRange(0, 5).Draw(rt, "kind of member") {
		case 0:
			m.LoadLimit = optional.Of(m.OwnKit + units.Mass(rapid.IntRange(1, 12).Draw(rt, "limit"))*units.Kilogram)
		case 1:
			m.Strength = 0
		case 2:
			m.PackRoom = units.Volume(rapid.IntRange(5, 30).Draw(rt, "room")) * units.Litre
		}
		w.Cooking.Water = append(w.Cooking.Water, cooking.Water{
			Day: day, Member: m.ID, CarriedDrink: units.Volume(rapid.IntRange(900, 2200).Draw(rt, "drink")) * units.Millilitre,
		})
	}
	for _, g := range w.Trip.Groups {
		w.Cooking.DryCamps = append(w.Cooking.DryCamps, cooking.DryCamp{Day: day, Group: g.ID, Cooking: units.Volume(rapid.IntRange(0, 9000).Draw(rt, "cooking")) * units.Millilitre})
	}
	return w, day
}

// To a dry camp all of the water is carried, each one's drink by who drinks it;
// no tenth of a litre could go from a pack to a less loaded one of the group
// that may take it, so that the most loaded cannot be relieved; and nobody is
// over a limit as long as another of the group has place.
func TestWaterToADryCampIsShared(t *testing.T) {
	uneven, full := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		w, day := dryWork(rt)
		r := mustCompute(rt, w)
		for _, camp := range w.Cooking.DryCamps {
			var group []int
			sum, able := units.Volume(0), false
			for i := range w.Trip.Crew {
				load := &r.Members[i].Days[day-1]
				if w.Trip.Crew[i].Group != camp.Group {
					continue
				}
				if drink := w.Cooking.Water[i].CarriedDrink; load.Present && load.CarryIn()-load.ToCookWith() != drink {
					rt.Fatalf("member %d carries %v to drink, not %v", i, load.CarryIn()-load.ToCookWith(), drink)
				}
				sum += load.ToCookWith()
				if load.Present {
					group = append(group, i)
					able = able || r.Members[i].Capability > 0
				}
			}
			if len(group) == 0 {
				continue
			}
			if sum != camp.Cooking {
				rt.Fatalf("%v is carried of %v", sum, camp.Cooking)
			}
			for _, from := range group {
				giver := &r.Members[from].Days[day-1]
				if giver.ToCook == 0 {
					continue
				}
				if able && r.Members[from].Capability == 0 {
					rt.Fatalf("member %d carries nothing by their strength, and %v of cooking water", from, giver.ToCook)
				}
				step := min(giver.ToCook, 100*units.Gram)
				for _, to := range group {
					taker := &r.Members[to].Days[day-1]
					if to == from || r.Members[to].Capability == 0 {
						continue
					}
					takes := placeFor(w, to, taker, step)
					if takes && overFilled(w, from, giver) {
						rt.Fatalf("member %d is over a limit with water that %d has place for", from, to)
					}
					before := burden(r, from, giver, 0)
					if takes && burden(r, to, taker, step) < before-1e-9 && step == 100*units.Gram {
						rt.Fatalf("100 mL of member %d (%.4f) could go to %d (%.4f)", from, before, to, burden(r, to, taker, step))
					}
					if !takes {
						full++
					}
					if giver.ToCook != taker.ToCook {
						uneven++
					}
				}
			}
		}
	})
	if uneven == 0 || full == 0 {
		t.Errorf("%d shares differed and %d packs were full: the draw must give both", uneven, full)
	}
}

func burden(r Result, place int, d *Day, more units.Mass) float64 {
	if r.Members[place].Capability == 0 {
		return math.Inf(1)
	}
	return float64(d.Load+d.Water+more) / float64(r.Members[place].Capability)
}

func placeFor(w Work, place int, d *Day, more units.Mass) bool {
	limit, limited := w.Trip.Crew[place].LoadLimit.Get()
	return (!limited || d.Load+d.Water+more <= limit) && d.Volume+d.CarryIn()+units.FromMillilitres(more.Grams()) <= w.Trip.Crew[place].PackRoom
}

// overFilled tells whether cooking water brings a pack over its limit.
func overFilled(w Work, place int, d *Day) bool {
	limit, limited := w.Trip.Crew[place].LoadLimit.Get()
	return limited && d.Load+d.Water > limit
}

// Two of one strength, one of half of it: each step by hand. 5 kg at 60, 5 kg at
// 60, 2 kg at 30 and 2 L: after four steps the third is level, the rest goes
// round by strength.
func TestWaterIsPouredByStrength(t *testing.T) {
	jugs := []jug{
		{strength: 600, load: 5 * units.Kilogram, most: 1 << 50, room: 9 * units.Litre},
		{strength: 600, load: 5 * units.Kilogram, most: 1 << 50, room: 9 * units.Litre},
		{strength: 300, load: 2 * units.Kilogram, most: 1 << 50, room: 9 * units.Litre},
	}
	pour(2050*units.Millilitre, jugs)
	var got []units.Volume
	for _, j := range jugs {
		got = append(got, j.water)
	}
	// Level at (14.05 kg) / 1500 hg: 5.62, 5.62 and 2.81 kg.
	if want := []units.Volume{650 * units.Millilitre, 600 * units.Millilitre, 800 * units.Millilitre}; !slices.Equal(got, want) {
		t.Errorf("poured %v, want %v", got, want)
	}
}

// What is poured step by step leaves the most loaded as little loaded as any
// sharing out of whole steps.
func TestPouringIsTheBestOfAll(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var jugs []jug
		for i := range rapid.IntRange(1, 3).Draw(rt, "people") {
			jugs = append(jugs, jug{
				place: i, strength: uint64(rapid.IntRange(1, 9).Draw(rt, "strength")), load: units.Mass(rapid.IntRange(0, 30).Draw(rt, "load")) * 50 * units.Gram,
				most: units.Mass(rapid.IntRange(0, 60).Draw(rt, "limit")) * 50 * units.Gram, room: 9 * units.Litre,
			})
		}
		dips := rapid.IntRange(0, 8).Draw(rt, "steps")
		best := math.Inf(1)
		everyPour(jugs, dips, func(shares []int) {
			worst := 0.0
			for i, n := range shares {
				load := jugs[i].load + units.Mass(n)*100*units.Gram
				if n > 0 && load > jugs[i].most {
					return
				}
				worst = max(worst, float64(load)/float64(jugs[i].strength))
			}
			best = min(best, worst)
		})
		if math.IsInf(best, 1) {
			return // does not fit
		}
		poured := slices.Clone(jugs)
		pour(units.Volume(dips)*dip, poured)
		worst := 0.0
		for i := range poured {
			if poured[i].water > 0 && poured[i].load > poured[i].most {
				rt.Fatalf("over a limit where all fits: %+v", poured[i])
			}
			worst = max(worst, float64(poured[i].load)/float64(poured[i].strength))
		}
		if worst > best*(1+1e-12) {
			rt.Fatalf("most loaded %.6f, could be %.6f", worst, best)
		}
	})
}

// everyPour gives every way to share out steps.
func everyPour(jugs []jug, steps int, visit func([]int)) {
	shares := make([]int, len(jugs))
	var place func(i, left int)
	place = func(i, left int) {
		if i == len(jugs)-1 {
			shares[i] = left
			visit(shares)
			return
		}
		for n := range left + 1 {
			shares[i] = n
			place(i+1, left-n)
		}
	}
	place(0, steps)
}

// Where nobody of the group has place, the water is carried all the same and
// each who is over their limit is told of.
func TestWaterThatFitsNobodyIsTold(t *testing.T) {
	on := walkers(1, 60, 60)
	for i := range on.Crew {
		on.Crew[i].Group = 1
		on.Crew[i].LoadLimit = optional.Of(units.FromKilograms(5))
	}
	on.Groups = []trip.CookGroup{{ID: 1, Name: "Kestrel"}}
	w := Work{Trip: on, Legs: on.Legs()}
	for _, c := range []struct {
		cooking float64
		told    int
	}{{9.9, 0}, {10.2, 2}} {
		w.Cooking.DryCamps = []cooking.DryCamp{{Day: 1, Group: 1, Cooking: units.FromLitres(c.cooking)}}
		r, told := mustCompute(t, w), 0
		for _, f := range r.Findings {
			if f.Code == "water-over-limit" {
				told++
			}
		}
		if sum := r.Members[0].Days[0].ToCookWith() + r.Members[1].Days[0].ToCookWith(); sum != units.FromLitres(c.cooking) || told != c.told {
			t.Errorf("%v L: %v carried, %d told: %v", c.cooking, sum, told, r.Findings)
		}
	}
}

// The split leaves room for the water where it can, and the finding tells of what
// is left where it cannot.
func TestTheSplitLeavesRoomForWater(t *testing.T) {
	on := walkers(2, 60, 60, 60)
	on.Crew[0].LoadLimit = optional.Of(units.FromKilograms(5))
	var list []bags.Bag
	for i := range 24 {
		list = append(list, bagOf(string(rune('a'+i)), 1+i%2, 0.5))
	}
	w := Work{Trip: on, Legs: on.Legs(), Bags: bags.Result{Bags: list}}
	for _, c := range []struct {
		day    int
		litres float64
		told   bool
	}{{1, 2, false}, {2, 4, false}, {1, 4.9, false}, {1, 6, true}} {
		w.Cooking.Water = nil
		for i := range on.Crew {
			w.Cooking.Water = append(w.Cooking.Water, cooking.Water{Day: c.day, Member: on.Crew[i].ID, CarriedDrink: units.FromLitres(c.litres)})
		}
		r := mustCompute(t, w)
		d := r.Members[0].Days[c.day-1]
		if hasFindingCode(r, "water-over-limit") != c.told || !c.told && d.Load+d.Water > 5*units.Kilogram {
			t.Errorf("%v L on day %d: %v and %v of water, findings %v", c.litres, c.day, d.Load, d.Water, r.Findings)
		}
		if s := r.Stages[0]; s.WorstBound > s.Worst || s.Proven && c.litres > 2 {
			t.Errorf("%v L on day %d: heaviest %.4f, bound %.4f, proven %v", c.litres, c.day, s.Worst, s.WorstBound, s.Proven)
		}
		again, err := Compute(context.Background(), w, &r)
		if err != nil || !reflect.DeepEqual(again.Members, r.Members) {
			t.Errorf("%v L on day %d: a second round moves things: %v", c.litres, c.day, err)
		}
	}
}
