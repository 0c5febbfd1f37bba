package stops

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
)

func plain(days int, grams, room int64, points ...Point) Problem {
	p := Problem{CarryCents: 10, Points: points}
	for range days {
		p.FoodGrams = append(p.FoodGrams, grams)
		p.RoomGrams = append(p.RoomGrams, room)
	}
	return p
}

func shop(day int, cents int64) Point {
	return Point{Day: day, StopCents: cents, ParcelGrams: Boundless, Parcels: Boundless}
}

func TestTwoPointsOnOneBoundaryTakeTheCheaper(t *testing.T) {
	f, err := Unbeaten(plain(4, 1000, 2500, shop(2, 500), shop(2, 300)))
	if err != nil {
		t.Fatal(err)
	}
	if len(f.Choices) != 1 || f.Choices[0].Stops[1].Point != 1 {
		t.Errorf("%+v", f.Choices)
	}
}

func TestEqualChoicesHaveFewestStops(t *testing.T) {
	p := plain(4, 1000, 9000, shop(1, 0), shop(2, 0), shop(3, 0))
	p.CarryCents = 0
	f, err := Unbeaten(p, ByCost)
	if err != nil || len(f.Choices) != 1 || len(f.Choices[0].Stops) != 1 {
		t.Errorf("%+v, %v", f.Choices, err)
	}
}

func TestFastingDaysNeedNoParcel(t *testing.T) {
	p := plain(5, 1000, 9000, Point{Day: 3, ParcelCents: 1, ParcelGrams: 100, Parcels: 1})
	p.FoodGrams[3], p.FoodGrams[4] = 0, 0
	f, err := Unbeaten(p)
	if err != nil || len(f.Choices) != 1 || f.Choices[0].Money != 0 || len(f.Choices[0].Stops) != 1 {
		t.Errorf("%+v, %v", f.Choices, err)
	}
	p = plain(3, 0, 0)
	f, err = Unbeaten(p)
	if err != nil || len(f.Choices) != 1 || len(f.Choices[0].Stops) != 0 || f.Choices[0].Cost != 0 {
		t.Errorf("nothing eaten: %+v, %v", f.Choices, err)
	}
}

// Room that shrinks when a member leaves binds on that later morning.
func TestRoomOfALaterMorning(t *testing.T) {
	p := plain(6, 1000, 9000)
	p.RoomGrams[3] = 2500
	_, err := Unbeaten(p)
	var no *InfeasibleError
	if !errors.As(err, &no) {
		t.Fatal(err)
	}
	want := []Gap{{FirstDay: 4, LastDay: 6, NeedGrams: 3000, TakeGrams: 2500}}
	if !reflect.DeepEqual(no.Gaps, want) {
		t.Errorf("%+v, want %+v", no.Gaps, want)
	}
}

func TestHeavyDayIsNamed(t *testing.T) {
	p := plain(3, 1000, 2000)
	p.FoodGrams[1] = 2300
	if _, err := Unbeaten(p); err == nil || !strings.Contains(err.Error(), "day 2 alone needs 2300 g, packs take 2000 g") {
		t.Errorf("%v", err)
	}
}

func TestEveryGapIsNamedWithItsShutPoints(t *testing.T) {
	closed := shop(3, 0)
	closed.Shut = "closed on Sundays"
	none := shop(9, 0)
	none.Parcels = 0
	p := plain(12, 1000, 5000, closed, shop(6, 0), none)
	_, err := Unbeaten(p)
	var no *InfeasibleError
	if !errors.As(err, &no) {
		t.Fatal(err)
	}
	want := []Gap{
		{FirstDay: 1, LastDay: 6, NeedGrams: 6000, TakeGrams: 5000, Shut: []ShutPoint{{0, 3, "closed on Sundays"}}},
		{FirstDay: 7, LastDay: 12, NeedGrams: 6000, TakeGrams: 5000, Shut: []ShutPoint{{2, 9, "no parcel may wait there"}}},
	}
	if !reflect.DeepEqual(no.Gaps, want) {
		t.Errorf("%+v, want %+v", no.Gaps, want)
	}
}

func TestParcelLimitIsNamed(t *testing.T) {
	p := plain(8, 1000, 4000, Point{Day: 4, ParcelGrams: 1500, Parcels: 2})
	_, err := Unbeaten(p)
	var no *InfeasibleError
	if !errors.As(err, &no) {
		t.Fatal(err)
	}
	want := []Gap{{FirstDay: 5, LastDay: 8, NeedGrams: 4000, TakeGrams: 3000, Parcels: true}}
	if !reflect.DeepEqual(no.Gaps, want) {
		t.Errorf("%+v, want %+v", no.Gaps, want)
	}
	if !strings.Contains(err.Error(), "parcels") {
		t.Errorf("%q does not speak of parcels", err)
	}
}

func TestMeaninglessInputIsRejected(t *testing.T) {
	bad := map[string]func(*Problem){
		"no days":       func(p *Problem) { p.FoodGrams = nil },
		"room missing":  func(p *Problem) { p.RoomGrams = p.RoomGrams[1:] },
		"negative food": func(p *Problem) { p.FoodGrams[0] = -1 },
		"negative cost": func(p *Problem) { p.CarryCents = -1 },
		"parcel of 0":   func(p *Problem) { p.Points[0].ParcelGrams = 0 },
		"dear stop":     func(p *Problem) { p.Points[0].StopCents = MostCents + 1 },
		"detour":        func(p *Problem) { p.Points[0].Detour = -1 },
		"parcels both ways": func(p *Problem) {
			p.Points[0].Parcels, p.Points[0].ParcelsFor = 2, func(int, int) int64 { return 1 }
		},
	}
	for name, change := range bad {
		p := plain(3, 1000, 9000, shop(1, 5))
		change(&p)
		_, err := Unbeaten(p)
		var no *InfeasibleError
		if err == nil || errors.As(err, &no) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Largest values allowed, all at once: sums stay in 64 bits.
func TestLargeValues(t *testing.T) {
	p := plain(MostDays, MostDayGrams, Boundless)
	p.CarryCents = MostRateCents
	pt := Point{Day: 1, StopCents: MostCents, Detour: 1 << 20, DetourCents: MostRateCents, ParcelCents: MostRateCents,
		ParcelGrams: 1 << 20, Parcels: Boundless, PremiumCents: MostRateCents}
	p.Points = []Point{pt}
	f, err := Unbeaten(p, ByCost)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range f.Choices {
		if c.Cost <= 0 || c.Money < 0 || c.CarriedGramDays <= 0 {
			t.Errorf("%+v overflowed", c)
		}
	}
}

// Lower fees, more room and one point more never make the best choice dearer.
func TestRelaxingNeverCostsMore(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	tried := 0
	for n := range 2000 {
		p := randomProblem(r, 12, 6)
		p.WholeLegs = false
		before, err := Unbeaten(p, ByCost)
		if err != nil {
			continue
		}
		tried++
		legs := p
		legs.WholeLegs = true
		if strict, err := Unbeaten(legs, ByCost); err == nil && strict.Choices[0].Cost < before.Choices[0].Cost {
			t.Fatalf("case %d: whole legs are cheaper", n)
		}
		switch r.IntN(3) {
		case 0:
			for d := range p.RoomGrams {
				p.RoomGrams[d] += 700
			}
		case 1:
			p.Points = append(p.Points, shop(r.IntN(len(p.FoodGrams)), 10))
		default:
			for i := range p.Points {
				p.Points[i].ParcelCents /= 2
				p.Points[i].PremiumCents /= 2
			}
		}
		after, err := Unbeaten(p, ByCost)
		if err != nil || after.Choices[0].Cost > before.Choices[0].Cost {
			t.Fatalf("case %d: dearer than before (%v)", n, err)
		}
	}
	if tried < 500 {
		t.Errorf("only %d cases tried", tried)
	}
}

// long is a trip with a point about every third day: post, huts and shops.
func long(days int, seed uint64) Problem {
	r := rand.New(rand.NewPCG(seed, 3))
	p := Problem{CarryCents: 15}
	for range days {
		p.FoodGrams = append(p.FoodGrams, int64(7000+r.IntN(2500)))
		p.RoomGrams = append(p.RoomGrams, 110_000)
	}
	for d := 2; d < days; d += 2 + r.IntN(3) {
		pt := Point{Day: d, StopCents: int64(r.IntN(900)), Detour: int64(r.IntN(12)), DetourCents: 80, ParcelGrams: Boundless, Parcels: Boundless}
		switch r.IntN(3) {
		case 0:
			pt.ParcelGrams, pt.Parcels, pt.ParcelCents = 20_000, int64(1+r.IntN(4)), 900
		case 1:
			pt.PremiumCents = int64(r.IntN(80))
		}
		p.Points = append(p.Points, pt)
	}
	return p
}

func TestLongTripIsTheSameTwice(t *testing.T) {
	a, err := Unbeaten(long(180, 1))
	if err != nil {
		t.Fatal(err)
	}
	b, _ := Unbeaten(long(180, 1))
	if !reflect.DeepEqual(a, b) || len(a.Choices) < 3 {
		t.Errorf("%d and %d choices", len(a.Choices), len(b.Choices))
	}
}

// With too many measures for the work allowed the front is by cost and peak.
func TestTooManyMeasuresFallBack(t *testing.T) {
	p := long(180, 1)
	f, err := Unbeaten(p, ByMoney, ByPeak, ByCarried, ByDetour)
	if err != nil {
		t.Fatal(err)
	}
	two, _ := Unbeaten(p)
	if f.Complete || !reflect.DeepEqual(f.Choices, two.Choices) {
		t.Errorf("complete %v, %d choices", f.Complete, len(f.Choices))
	}
}

// The goal: all unbeaten choices of a 180-day trip in 5 ms.
func BenchmarkUnbeaten(b *testing.B) {
	for _, days := range []int{21, 180} {
		p := long(days, 1)
		b.Run(fmt.Sprintf("%ddays", days), func(b *testing.B) {
			for b.Loop() {
				if _, err := Unbeaten(p); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("21days4measures", func(b *testing.B) {
		p := long(21, 1)
		for b.Loop() {
			f, err := Unbeaten(p, ByMoney, ByPeak, ByCarried, ByDetour)
			if err != nil || !f.Complete {
				b.Fatal(err)
			}
		}
	})
}
