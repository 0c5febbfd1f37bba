package fairsplit

import "testing"

// TestBarterKeepsAccount: after each barter the sums kept are those of the split made
// anew, heavy items have moved, and nobody has an item that is not for them.
func TestBarterKeepsAccount(t *testing.T) {
	in := newInstance(inventCrew(300, 12, 7, tightAll))
	b := newBounds(in)
	d := newDescent(newSplit(in), 1)
	d.build(b, 200_000)
	d.setTargets(b.day)
	d.free(in.movable)
	a := newAnnealer(d, in.movable, func(v, w score) bool { return v.sum < w.sum })
	a.barter, a.heat = newBarter(in, b.day), 1<<24
	if a.barter == nil {
		t.Fatal("a crew with gear of up to 1.9 kg has no heavy item")
	}
	made := 0
	for range 4000 {
		if !a.tryBarter() {
			continue
		}
		made++
		total := a.total
		a.recost()
		if a.total != total {
			t.Fatalf("barter %d: cost %d, made anew %d", made, total, a.total)
		}
	}
	if made < 100 {
		t.Errorf("only %d barters of 4000 tries at a heat that allows nearly all", made)
	}
	again := in.splitOf(a.carrier)
	for i, grams := range again.load {
		if a.load[i] != grams {
			t.Fatalf("load %d: %d g, made anew %d", i, a.load[i], grams)
		}
	}
	for j, i := range a.carrier {
		if !in.canCarry(int32(j), int(i)) {
			t.Errorf("item %d is with member %d, who may not carry it", j, i)
		}
	}
}

// TestBarterComesOutEven: what is given for a heavy item weighs nearly the same.
func TestBarterComesOutEven(t *testing.T) {
	in := newInstance(inventCrew(301, 12, 7, tightAll))
	b := newBounds(in)
	d := newDescent(newSplit(in), 1)
	d.build(b, 200_000)
	d.free(in.movable)
	a := newAnnealer(d, in.movable, func(v, w score) bool { return v.sum < w.sum })
	x := newBarter(in, b.day)
	seen := 0
	for _, j := range x.heavy {
		i := int(a.carrier[j])
		for k := range in.members {
			if k == i || !x.collect(a, j, i, k) {
				continue
			}
			seen++
			grams := int32(0)
			for _, l := range x.smalls {
				if int(a.carrier[l]) != k {
					t.Errorf("item %d is given by member %d, who does not have it", l, k)
				}
				grams += in.mass[l]
			}
			if more := grams - in.mass[j]; more != x.more[0] || more < -barterGap || more > barterGap {
				t.Errorf("%d g given for %d g, %d g told", grams, in.mass[j], x.more[0])
			}
		}
	}
	if seen == 0 {
		t.Error("no barter was found for any heavy item")
	}
}
