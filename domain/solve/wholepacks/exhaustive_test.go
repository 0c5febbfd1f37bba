package wholepacks

import (
	"errors"
	"math/rand/v2"
	"testing"
)

// exhaustive tries every count of every package at every deadline: nothing
// shared with the solver but the objective.
func exhaustive(it Item) (best Purchase, found bool) {
	counts := make([][]int64, len(it.Packages))
	for p := range counts {
		counts[p] = make([]int64, len(it.NeedGrams))
	}
	var total int64
	for _, q := range it.NeedGrams {
		total += q
	}
	var walk func(p, k int)
	walk = func(p, k int) {
		if p == len(it.Packages) {
			p, k = 0, k+1
		}
		if k == len(it.NeedGrams) {
			if got, ok := tally(it, counts); ok && (!found || better(got, best)) {
				best, found = got, true
			}
			return
		}
		if len(it.Packages) == 0 {
			walk(0, k)
			return
		}
		o := it.Packages[p].Offers[k]
		for n := int64(0); n <= min(o.Available, max(o.ManyFrom, (total+it.Packages[p].NetGrams-1)/it.Packages[p].NetGrams)); n++ {
			counts[p][k] = n
			walk(p+1, k)
		}
		counts[p][k] = 0
	}
	walk(0, 0)
	return best, found
}

func better(a, b Purchase) bool {
	if a.CostCents != b.CostCents {
		return a.CostCents < b.CostCents
	}
	if a.LeftGrams != b.LeftGrams {
		return a.LeftGrams < b.LeftGrams
	}
	return a.Packages < b.Packages
}

// tally adds up counts by the definition of the problem.
func tally(it Item, counts [][]int64) (Purchase, bool) {
	var sum Purchase
	var surplus int64
	for p, pack := range it.Packages {
		var taken int64
		for _, n := range counts[p] {
			taken += n
		}
		if pack.OneStock && taken > pack.first().Available {
			return sum, false
		}
	}
	for k, need := range it.NeedGrams {
		if !it.Keeps {
			surplus = 0
		}
		for p, pack := range it.Packages {
			n := counts[p][k]
			if n > pack.Offers[k].Available {
				return sum, false
			}
			if from := pack.Offers[k].ManyFrom; from > 0 && n >= from {
				sum.CostCents += n * pack.Offers[k].ManyCents
			} else {
				sum.CostCents += n * pack.Offers[k].PriceCents
			}
			sum.BoughtGrams += n * pack.NetGrams
			sum.Packages += n
			surplus += n * pack.NetGrams
		}
		sum.LeftGrams -= need
		if surplus -= need; surplus < 0 {
			return sum, false
		}
	}
	sum.LeftGrams += sum.BoughtGrams
	return sum, true
}

func randomItem(r *rand.Rand) Item {
	it := Item{Name: "random", Keeps: r.IntN(3) > 0}
	deadlines := 1 + r.IntN(3)
	packages := 1 + r.IntN(3)
	if deadlines == 3 {
		packages = min(packages, 2)
	}
	for range deadlines {
		it.NeedGrams = append(it.NeedGrams, int64(r.IntN(9)*r.IntN(2))*50+int64(r.IntN(2)*r.IntN(40)))
	}
	for range packages {
		p := Package{NetGrams: int64(1+r.IntN(8)) * 50}
		if r.IntN(6) == 0 {
			p.NetGrams += int64(r.IntN(50))
		}
		for range deadlines {
			o := Offer{PriceCents: int64(r.IntN(12)) * 10, Available: Unlimited}
			switch r.IntN(5) {
			case 0:
				o.Available = int64(r.IntN(4))
			case 1:
				o.Available = int64(r.IntN(2))
			}
			if r.IntN(4) == 0 {
				o.ManyFrom, o.ManyCents = int64(2+r.IntN(3)), o.PriceCents*int64(r.IntN(10))/10
			}
			p.Offers = append(p.Offers, o)
		}
		if p.OneStock = r.IntN(2) == 0; p.OneStock {
			if p.Offers[0].Available == Unlimited && !it.Keeps {
				p.Offers[0].Available = int64(2 + r.IntN(4))
			}
			for k := range p.Offers {
				if p.Offers[k].Available > 0 {
					p.Offers[k] = p.first()
				}
			}
		}
		it.Packages = append(it.Packages, p)
	}
	return it
}

func TestSolveEqualsExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 3))
	short, deep, many, shared := 0, 0, 0, 0
	for n := range 4000 {
		it := randomItem(r)
		want, found := exhaustive(it)
		got, err := Solve(it)
		if !found {
			var e *ShortError
			if !errors.As(err, &e) {
				t.Fatalf("case %d %+v: error %v, want a ShortError", n, it, err)
			}
			short++
			continue
		}
		if err != nil {
			t.Fatalf("case %d %+v: %v", n, it, err)
		}
		again, ok := tally(it, got.Counts)
		if !ok {
			t.Fatalf("case %d %+v: %+v breaks a rule", n, it, got)
		}
		if better(again, want) || better(want, again) {
			t.Fatalf("case %d %+v: got %+v, want %+v", n, it, again, want)
		}
		if again.CostCents != got.CostCents || again.LeftGrams != got.LeftGrams || again.Packages != got.Packages || again.BoughtGrams != got.BoughtGrams || got.BoundCents != got.CostCents {
			t.Fatalf("case %d: totals %+v do not match the counts %+v", n, got, again)
		}
		if got.Packages > 1 && len(it.NeedGrams) > 1 {
			deep++
		}
		for p, pack := range it.Packages {
			if n := got.Counts[p][0]; pack.Offers[0].ManyFrom > 0 && n >= pack.Offers[0].ManyFrom {
				many++
			}
			if pack.OneStock && !it.Keeps && len(it.NeedGrams) > 1 && it.overdrawn(aloneEach(it)) == p {
				shared++
			}
		}
	}
	if short < 100 || deep < 1000 || many < 200 || shared < 20 {
		t.Errorf("random cases too tame: %d short, %d deep, %d at the price of many, %d that share a stock", short, deep, many, shared)
	}
}

// aloneEach buys for each deadline as if the stock were its own.
func aloneEach(it Item) Purchase {
	whole := it.nothing()
	for k := range it.NeedGrams {
		one := it.only(k)
		if p, err := one.solve(); err == nil {
			for i := range whole.Counts {
				whole.Counts[i][k] = p.Counts[i][0]
			}
		}
	}
	return whole
}

// Need and stock grow one gram at a time: shortage is told to the gram.
func TestShortfallIsExact(t *testing.T) {
	for need := int64(1); need <= 40; need++ {
		it := Item{Name: "rice", NeedGrams: []int64{0, need}, Keeps: true, Packages: []Package{
			{NetGrams: 7, Offers: []Offer{{PriceCents: 100, Available: 2}, {}}}, {NetGrams: 5, Offers: []Offer{{}, {PriceCents: 90, Available: 1}}}}}
		_, err := Solve(it)
		var e *ShortError
		if !errors.As(err, &e) {
			if need > 19 || err != nil {
				t.Errorf("need %d: error %v", need, err)
			}
			continue
		}
		if need <= 19 || e.ShortGrams != need-19 || e.Deadline != 1 || e.Unsold {
			t.Errorf("need %d: %+v", need, e)
		}
	}
}
