package resupply

import (
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/posting"
	"sumpter/domain/science/checkvalues"
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

// Every row of testdata/check_values.csv, topic resupply: posts' limits, how
// they measure a carton, and the days of posting.
func TestPublishedLimitsAndDays(t *testing.T) {
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	pickUp := date(t, "2026-07-20")
	p := trip.ResupplyPoint{Kind: trip.PostOffice, AfterDay: 1, TransitDays: 7, FastestDays: 2, BufferDays: 4, HoldDays: optional.Of(30), HoldMargin: 2}
	days := func(p trip.ResupplyPoint) posting.Calendar {
		return posting.Of(&trip.Trip{Start: pickUp, Days: make([]trip.Day, 3)}, &p)
	}
	inches := func(in checkvalues.Inputs) units.Metres { return units.FromFeet(in.Number(0) / 12) }
	checkvalues.Check(t, file, "resupply", checkvalues.Answers{
		"latest posting day":   func(checkvalues.Row) any { return days(p).By.String() },
		"earliest posting day": func(checkvalues.Row) any { return days(p).From.String() },
		"earliest arrival": func(checkvalues.Row) any {
			slow := p
			slow.FastestDays = 0
			return days(slow).From.String()
		},
		"Sunday pick-up": func(row checkvalues.Row) any {
			day := date(t, string(row.Inputs))
			if p := (trip.ResupplyPoint{Opening: trip.UsualPosting().Opening}); p.OpenOn(day) || !p.OpenOn(day+1) {
				return "open"
			}
			return "Sunday"
		},
		"USPS parcel weight limit": func(row checkvalues.Row) any {
			mass := units.FromGrams(row.Inputs.Number(0) * 453.59237)
			return (limitOf(&trip.ResupplyPoint{MaxParcel: optional.Of(mass)}).mass + cartonMass).Kilograms()
		},
		"length plus girth limit": func(row checkvalues.Row) any { return 100 * float64(inches(row.Inputs)) },
		"length plus girth": func(row checkvalues.Row) any {
			return float64(lengthAndGirth(units.Metres(row.Inputs.Number(0)), units.Metres(row.Inputs.Number(1)), units.Metres(row.Inputs.Number(2))))
		},
	})
}

// A parcel filled to the limit needs a carton that just keeps it, and no
// carton of that room has more than 5 % less length and girth: with sides a, b
// and c it is at least three times the cube root of 4abc.
func TestCartonOfAFullParcel(t *testing.T) {
	for _, metres := range []units.Metres{2.7432, 3.302, 1} { // 108 in and 130 in, US Postal Service
		room := limitOf(&trip.ResupplyPoint{MaxGirth: optional.Of(metres)})
		full := Parcel{Volume: room.volume}
		full.carton()
		if math.Abs(float64(full.Girth-metres)) > 1e-6*float64(metres) {
			t.Errorf("limit of %v m: a full parcel has %v m", metres, full.Girth)
		}
		least := 3 * math.Cbrt(4*full.Carton.Litres()/1000)
		if share := least / float64(full.Girth); share < 0.95 || share > 1 {
			t.Errorf("the best carton has %.3f of it", share)
		}
		long := units.Metres(math.Cbrt(2 * full.Carton.Litres() / 1000 * 2))
		if got := lengthAndGirth(long, long/2, long/2); math.Abs(float64(got)-least) > 1e-9 {
			t.Errorf("twice as long as wide: %v, least %v", got, least)
		}
	}
}
