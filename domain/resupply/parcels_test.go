package resupply

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fewest tries every split of the pieces into groups.
func fewest(pieces []piece, l limit) int {
	best := len(pieces)
	var filled []piece
	var walk func(i int)
	walk = func(i int) {
		if len(filled) >= best {
			return
		}
		if i == len(pieces) {
			best = len(filled)
			return
		}
		for g := range filled {
			if sum := filled[g].plus(pieces[i]); l.fits(sum) {
				before := filled[g]
				filled[g] = sum
				walk(i + 1)
				filled[g] = before
			}
		}
		filled = append(filled, pieces[i])
		walk(i + 1)
		filled = filled[:len(filled)-1]
	}
	walk(0)
	return best
}

func TestPackFewEqualsExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	several := 0
	for n := range 2000 {
		l := limit{units.Mass(10 + r.IntN(20)), units.Volume(10 + r.IntN(20))}
		if r.IntN(4) == 0 {
			l.volume = math.MaxInt64
		}
		var pieces []piece
		for range r.IntN(9) {
			pieces = append(pieces, piece{units.Mass(1 + r.IntN(int(l.mass))), units.Volume(1 + r.IntN(10))})
		}
		got := packFew(pieces, l)
		checkGroups(t, pieces, l, got)
		if want := fewest(pieces, l); len(got) != want {
			t.Fatalf("case %d: %v in %v: %d parcels, want %d", n, pieces, l, len(got), want)
		}
		if len(got) > 2 {
			several++
		}
	}
	if several < 500 {
		t.Errorf("only %d cases need more than two parcels", several)
	}
}

func checkGroups(t *testing.T, pieces []piece, l limit, groups [][]int) {
	t.Helper()
	seen := make([]int, len(pieces))
	for _, g := range groups {
		var sum piece
		for _, i := range g {
			seen[i]++
			sum = sum.plus(pieces[i])
		}
		if !slices.IsSorted(g) || !l.fits(sum) && len(g) > 1 {
			t.Fatalf("group %v of %v breaks a rule", g, pieces)
		}
	}
	if slices.ContainsFunc(seen, func(n int) bool { return n != 1 }) {
		t.Fatalf("groups %v do not hold each of %d pieces once", groups, len(pieces))
	}
}

func TestTooLargeAPieceGoesAlone(t *testing.T) {
	got := packFew([]piece{{5, 1}, {50, 1}, {5, 1}}, limit{10, 10})
	if len(got) != 2 || len(got[0]) != 2 || got[1][0] != 1 {
		t.Errorf("%v", got)
	}
}

// Hundreds of bags come within one parcel of the bound, in time.
func TestManyBags(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	l := limit{31_000 * units.Gram, 120 * units.Litre}
	var pieces []piece
	var rest []int
	for i := range 800 {
		pieces = append(pieces, piece{units.Mass(50+r.IntN(2500)) * units.Gram, units.Volume(100+r.IntN(6000)) * units.Millilitre})
		rest = append(rest, i)
	}
	got := packFew(pieces, l)
	checkGroups(t, pieces, l, got)
	if least := leastParcels(pieces, rest, l); len(got) > least+1 {
		t.Errorf("%d parcels, bound %d", len(got), least)
	}
}

// Length plus girth of 108 in (a limit of the US Postal Service): a cube of
// 54.864 cm, 165.1 L, of which four fifths are reckoned with.
func TestGirthBecomesVolume(t *testing.T) {
	p := trip.ResupplyPoint{MaxGirth: optional.Of(units.Metres(2.7432)), MaxParcel: optional.Of(units.FromGrams(31751.4659))}
	l := limitOf(&p)
	if litres := l.volume.Litres(); math.Abs(litres-0.8*165.1453) > 0.01 {
		t.Errorf("%.3f L", litres)
	}
	if l.mass != units.FromGrams(31251.4659) {
		t.Errorf("%v", l.mass)
	}
	if none := limitOf(&trip.ResupplyPoint{}); none.mass != math.MaxInt64 || none.volume != math.MaxInt64 {
		t.Errorf("no limits: %+v", none)
	}
}

// As few parcels as can be, and those about equally heavy: 15 bags of 1 kg
// into parcels of 10 kg are 8 and 7, not 10 and 5.
func TestParcelsAreAboutEquallyHeavy(t *testing.T) {
	pieces := make([]piece, 15)
	for i := range pieces {
		pieces[i] = piece{units.Kilogram, units.Litre}
	}
	groups := packFew(pieces, limit{10 * units.Kilogram, 100 * units.Litre})
	if len(groups) != 2 || len(groups[0])+len(groups[1]) != 15 || max(len(groups[0]), len(groups[1])) != 8 {
		t.Errorf("%v", groups)
	}
	// By volume only one order fits; then the masses must be as they come.
	pieces = []piece{{3, 6}, {3, 6}, {2, 4}, {2, 4}}
	if groups := packFew(pieces, limit{100, 10}); len(groups) != 2 {
		t.Errorf("%v", groups)
	}
}
