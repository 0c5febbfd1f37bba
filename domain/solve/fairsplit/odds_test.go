package fairsplit

import (
	"math"
	"testing"
)

func TestExponentialAndLogarithm(t *testing.T) {
	for _, x := range []float64{0, -1e-9, -0.3, -1, -3, -10, -30} {
		if got, want := exponential(x), math.Exp(x); math.Abs(got/want-1) > 1e-7 {
			t.Errorf("e to %v is %v, want %v", x, got, want)
		}
		if got := logarithm(math.Exp(x)); math.Abs(got-x) > 1e-9 {
			t.Errorf("logarithm of e to %v is %v", x, got)
		}
	}
}

// TestOddsCountSplits: of all splits of the bags of two days over two members, enumerated, those
// within the limits are about as many as the odds say.
func TestOddsCountSplits(t *testing.T) {
	draw := random{state: 7}
	for trial := range 12 {
		p := Problem{Days: 2, HoursTenths: []int64{50, 70}}
		volume := int64(0)
		for n := range 18 {
			it := Item{MassGrams: int64(90 + draw.below(160)), VolumeMl: int64(200 + draw.below(400)), GoneAfter: 1 + n%2}
			volume += it.VolumeMl
			p.Items = append(p.Items, it)
		}
		room := Unlimited
		if trial%2 == 1 {
			room = volume * 48 / 100
		}
		p.Crew = []Member{{Strength: 3, BaseGrams: 3000, MaxGrams: Unlimited, VolumeMl: room}, {Strength: 4, BaseGrams: 4000, MaxGrams: Unlimited, VolumeMl: Unlimited}}
		in := newInstance(p)
		l := newLayers(in, nil)
		bounds := newBounds(in)
		limit, ceiling := bounds.sum+bounds.sum/200, bounds.day[0]+bounds.day[0]/100
		if !l.mayHold(nil, limit, ceiling) {
			t.Fatal("the bags do not fit")
		}
		o := newOdds(l)
		o.setLimits(ceiling)
		if !o.settle() {
			t.Fatal("no prices fit")
		}
		count := 0
		enumerate(p, func(carrier []int) {
			inner := make([]int32, len(carrier))
			for j, i := range carrier {
				inner[j] = int32(i)
			}
			if v := in.splitOf(inner).score(); v.overrun == 0 && v.first <= ceiling && v.sum <= limit {
				count++
			}
		})
		if want := math.Log(float64(count)); math.Abs(o.count-want) > 1.5 {
			t.Errorf("crew %d: %d splits, logarithm %.2f, by the odds %.2f", trial, count, want, o.count)
		}
	}
}

// TestOddsOfUnlikeStrengths: that a child carries a fifteenth of what another does leaves splits
// whose odds are found, as the prices begin where every burden has a worth.
func TestOddsOfUnlikeStrengths(t *testing.T) {
	for child := int64(2); child <= 30; child += 4 {
		p := Problem{Days: 2, HoursTenths: []int64{50, 70}, Crew: []Member{
			{Strength: child, BaseGrams: 100 * child, MaxGrams: Unlimited, VolumeMl: Unlimited},
			{Strength: 30, BaseGrams: 3000, MaxGrams: Unlimited, VolumeMl: Unlimited},
			{Strength: 30, BaseGrams: 3000, MaxGrams: Unlimited, VolumeMl: Unlimited},
		}}
		draw := random{state: 3}
		for n := range 18 {
			p.Items = append(p.Items, Item{MassGrams: int64(30 + draw.below(80)), VolumeMl: 300, GoneAfter: 1 + n%2})
		}
		in := newInstance(p)
		l := newLayers(in, nil)
		bounds := newBounds(in)
		limit, ceiling := bounds.sum+bounds.sum/20, bounds.day[0]+bounds.day[0]/20
		if !l.mayHold(nil, limit, ceiling) {
			t.Fatal("the bags do not fit")
		}
		o := newOdds(l)
		for d := range p.HoursTenths {
			if worth := o.worth(o.start, d); worth <= 0 {
				t.Errorf("strength %d: a burden of day %d has a worth of %v at first", child, d, worth)
			}
		}
		o.setLimits(ceiling)
		if !o.settle() {
			t.Errorf("strength %d: no prices fit", child)
		}
	}
}
