package wholepacks

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
)

func single(need int64, packs ...Package) Item {
	return Item{Name: "rice", NeedGrams: []int64{need}, Keeps: true, Packages: packs}
}

func pack(net, price, available int64) Package {
	return Package{NetGrams: net, Offers: []Offer{{PriceCents: price, Available: available}}}
}

func TestTiesGoToFewerPackagesThenTheEarlierOne(t *testing.T) {
	got, err := Solve(single(1000, pack(250, 100, Unlimited), pack(500, 200, Unlimited), pack(500, 200, Unlimited)))
	if err != nil {
		t.Fatal(err)
	}
	want := [][]int64{{0}, {2}, {0}}
	if !reflect.DeepEqual(got.Counts, want) {
		t.Errorf("counts %v, want %v", got.Counts, want)
	}
}

func TestNothingNeededNothingBought(t *testing.T) {
	got, err := Solve(Item{Name: "salt", NeedGrams: []int64{0, 0}})
	if err != nil || got.Packages != 0 || got.CostCents != 0 || got.LeftGrams != 0 {
		t.Errorf("%+v, %v", got, err)
	}
}

func TestUnsoldIsTold(t *testing.T) {
	_, err := Solve(Item{Name: "ghee", NeedGrams: []int64{0, 80}, Packages: []Package{{NetGrams: 100, Offers: []Offer{{PriceCents: 1, Available: Unlimited}, {}}}}})
	var e *ShortError
	if !errors.As(err, &e) || !e.Unsold || e.Deadline != 1 || e.ShortGrams != 80 {
		t.Errorf("%v", err)
	}
	if !strings.Contains(err.Error(), "ghee") || !strings.Contains(err.Error(), "deadline 2") {
		t.Errorf("message %q names neither food nor deadline", err)
	}
}

func TestMeaninglessInputIsRejected(t *testing.T) {
	cases := map[string]Item{
		"negative need":  single(-1, pack(1, 1, 1)),
		"huge need":      single(1<<41, pack(1<<20, 1, Unlimited)),
		"net of 0":       single(1, pack(0, 1, 1)),
		"huge net":       single(1, pack(1<<32, 1, 1)),
		"negative price": single(1, pack(1, -1, 1)),
		"negative stock": single(1, pack(1, 1, -1)),
		"price of minus": {Name: "rice", NeedGrams: []int64{1}, Packages: []Package{{NetGrams: 1, Offers: []Offer{{Available: 1, ManyFrom: 2, ManyCents: -1}}}}},
		"two in a stock": {Name: "rice", NeedGrams: []int64{1, 1}, Packages: []Package{{NetGrams: 1, OneStock: true, Offers: []Offer{{Available: 1}, {Available: 2}}}}},
		"offer missing":  {Name: "rice", NeedGrams: []int64{1, 1}, Packages: []Package{pack(1, 1, 1)}},
		"step too fine":  single(1<<30, pack(1, 1, Unlimited)),
	}
	for name, it := range cases {
		_, err := Solve(it)
		var short *ShortError
		if err == nil || errors.As(err, &short) || !strings.Contains(err.Error(), "rice") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Largest values allowed, all at once: nothing overflows.
func TestLargeValues(t *testing.T) {
	got, err := Solve(single(1<<33, pack(MostNetGrams, MostPriceCents, Unlimited), pack(1<<12, MostPriceCents, 1<<40)))
	if err != nil {
		t.Fatal(err)
	}
	if got.CostCents != 4*MostPriceCents || got.LeftGrams != 0 || got.Counts[0][0] != 4 {
		t.Errorf("%+v", got)
	}
}

// More stock, lower prices or a longer life never make the answer dearer.
func TestRelaxingNeverCostsMore(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 5))
	for n := range 2000 {
		it := randomItem(r)
		before, err := Solve(it)
		if err != nil {
			continue
		}
		p, k := r.IntN(len(it.Packages)), r.IntN(len(it.NeedGrams))
		it = it.without(func(int, int) bool { return false })
		switch o := &it.Packages[p].Offers[k]; r.IntN(3) {
		case 0:
			o.Available = Unlimited
			it.Packages[p].OneStock = false
		case 1:
			o.PriceCents /= 2
			o.ManyCents /= 2
			it.Packages[p].OneStock = false
		default:
			it.Keeps = true
		}
		after, err := Solve(it)
		if err != nil || after.CostCents > before.CostCents {
			t.Fatalf("case %d: %d cents became %d (%v)", n, before.CostCents, after.CostCents, err)
		}
	}
}

// shelf is food as shops sell it: three to five sizes, larger ones cheaper per gram.
func shelf(r *rand.Rand, deadlines int, people int64) Item {
	it := Item{Name: "food", Keeps: r.IntN(4) > 0}
	for range deadlines {
		it.NeedGrams = append(it.NeedGrams, people*int64(40+r.IntN(400)))
	}
	unit := 20 + r.IntN(200)
	for _, net := range []int64{100, 250, 400, 500, 1000}[r.IntN(3):] {
		p := Package{NetGrams: net}
		for range deadlines {
			o := Offer{PriceCents: int64(unit) * net / 100 * int64(80+r.IntN(40)) / 100 * 1000 / (800 + net), Available: Unlimited}
			if r.IntN(4) == 0 {
				o.Available = int64(r.IntN(30))
			}
			p.Offers = append(p.Offers, o)
		}
		it.Packages = append(it.Packages, p)
	}
	return it
}

// The goals: 12 foods in 2 ms, 80 in 10 ms, 150 in 250 ms.
func BenchmarkSolve(b *testing.B) {
	for _, size := range []struct {
		foods, deadlines int
		people           int64
	}{{12, 1, 6}, {80, 2, 12}, {150, 4, 60}} {
		r := rand.New(rand.NewPCG(1, 2))
		items := make([]Item, size.foods)
		for i := range items {
			items[i] = shelf(r, size.deadlines, size.people)
		}
		b.Run(fmt.Sprintf("%dfoods", size.foods), func(b *testing.B) {
			for b.Loop() {
				for _, it := range items {
					if _, err := Solve(it); err != nil {
						var short *ShortError
						if !errors.As(err, &short) {
							b.Fatal(err)
						}
					}
				}
			}
		})
	}
}
