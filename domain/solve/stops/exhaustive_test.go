package stops

import (
	"cmp"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
)

// score is a choice as its measures, in the order of Measure.
type score [measures]int64

// exhaustive tries, for every set of points with at most one at a boundary,
// every way to say where each day's food is taken on, in order. It computes
// all figures from the definition, morning by morning.
func exhaustive(p Problem) []score {
	var found []score
	var use []int
	var sets func(i int)
	sets = func(i int) {
		if i == len(p.Points) {
			found = append(found, assignments(p, use)...)
			return
		}
		sets(i + 1)
		pt := p.Points[i]
		taken := slices.ContainsFunc(use, func(u int) bool { return p.Points[u].Day == pt.Day })
		if pt.Shut == "" && pt.Day >= 1 && pt.Day < len(p.FoodGrams) && !taken {
			use = append(use, i)
			sets(i + 1)
			use = use[:len(use)-1]
		}
	}
	sets(0)
	return found
}

func assignments(p Problem, use []int) []score {
	order := slices.Clone(use)
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(p.Points[a].Day, p.Points[b].Day) })
	where := make([]int, len(p.FoodGrams)) // index into order, -1 start
	var found []score
	var walk func(d, from int)
	walk = func(d, from int) {
		if d == len(where) {
			if s, ok := judge(p, order, where); ok {
				found = append(found, s)
			}
			return
		}
		for at := from; at < len(order); at++ {
			if at >= 0 && p.Points[order[at]].Day > d {
				break
			}
			where[d] = at
			walk(d+1, at)
		}
	}
	walk(0, -1)
	return found
}

func judge(p Problem, order, where []int) (s score, ok bool) {
	days := len(p.FoodGrams)
	day := func(at int) int {
		if at < 0 {
			return 0
		}
		return p.Points[order[at]].Day
	}
	for morning := range days {
		var load int64
		for d := morning; d < days; d++ {
			if day(where[d]) <= morning {
				load += p.FoodGrams[d]
			}
		}
		if load > p.RoomGrams[morning] {
			return s, false
		}
		s[ByCarried] += load
		s[ByPeak] = max(s[ByPeak], load)
	}
	for at, point := range order {
		pt := p.Points[point]
		var g int64
		first, last := 0, 0
		for d := range days {
			if where[d] == at {
				g += p.FoodGrams[d]
				if first == 0 {
					first = d + 1
				}
				last = d + 1
			}
		}
		if g == 0 {
			return s, false // the smaller set of points covers this
		}
		parcels := (g + pt.ParcelGrams - 1) / pt.ParcelGrams
		if pt.ParcelsFor != nil {
			parcels = pt.ParcelsFor(first, last)
		}
		if parcels > pt.Parcels {
			return s, false
		}
		s[ByMoney] += 1000*(pt.StopCents+parcels*pt.ParcelCents) + pt.PremiumCents*g
		s[ByDetour] += pt.Detour
		s[ByCost] += 1000 * pt.Detour * pt.DetourCents
		if p.WholeLegs {
			for d := pt.Day; d < days; d++ {
				if p.FoodGrams[d] > 0 && where[d] < at {
					return s, false
				}
			}
		}
	}
	s[ByCost] += s[ByMoney] + p.CarryCents*s[ByCarried]
	return s, true
}

// unbeaten keeps the scores that no other beats, by pairwise comparison.
func unbeaten(all []score, by []Measure) []string {
	project := func(s score) []int64 {
		var v []int64
		for _, m := range by {
			v = append(v, s[m])
		}
		return v
	}
	set := map[string]bool{}
	for _, a := range all {
		beaten := slices.ContainsFunc(all, func(b score) bool {
			better := false
			for _, m := range by {
				if b[m] > a[m] {
					return false
				}
				better = better || b[m] < a[m]
			}
			return better
		})
		if !beaten {
			set[fmt.Sprint(project(a))] = true
		}
	}
	var list []string
	for s := range set {
		list = append(list, s)
	}
	slices.Sort(list)
	return list
}

func (c Choice) score() score {
	var s score
	s[ByCost], s[ByMoney], s[ByPeak], s[ByCarried], s[ByDetour] = c.Cost, c.Money, c.PeakGrams, c.CarriedGramDays, c.Detour
	return s
}

func randomProblem(r *rand.Rand, maxDays, maxPoints int) Problem {
	days := 1 + r.IntN(maxDays)
	p := Problem{CarryCents: int64(r.IntN(4) * 5), WholeLegs: r.IntN(3) == 0}
	room := int64(1+r.IntN(days+2)) * 1000
	for range days {
		p.FoodGrams = append(p.FoodGrams, int64(r.IntN(4)*r.IntN(4))*150+int64(r.IntN(2)*r.IntN(200)))
		p.RoomGrams = append(p.RoomGrams, room-int64(r.IntN(2)*r.IntN(500)))
	}
	for range r.IntN(maxPoints + 1) {
		pt := Point{Day: r.IntN(days + 2), StopCents: int64(r.IntN(4) * 20), Detour: int64(r.IntN(4)), DetourCents: int64(r.IntN(30)),
			ParcelGrams: Boundless, Parcels: Boundless}
		if r.IntN(3) > 0 {
			pt.ParcelGrams, pt.ParcelCents = int64(1+r.IntN(8))*400, int64(r.IntN(3)*15)
		}
		if r.IntN(2) == 0 {
			pt.Parcels = int64(1 + r.IntN(3))
		}
		if r.IntN(3) == 0 {
			pt.PremiumCents = int64(r.IntN(30))
		}
		if r.IntN(6) == 0 {
			pt.Shut = "closed"
		}
		if pt.ParcelGrams == Boundless {
			pt.Parcels = Boundless
		}
		if pt.Parcels == Boundless && r.IntN(3) == 0 {
			pt.ParcelsFor = everyOtherDay(p.FoodGrams, int64(1+r.IntN(8))*400)
			pt.ParcelCents = int64(r.IntN(3) * 15)
		}
		p.Points = append(p.Points, pt)
	}
	return p
}

// everyOtherDay counts parcels for what odd days eat: the rest is bought there.
func everyOtherDay(food []int64, size int64) func(first, last int) int64 {
	return func(first, last int) int64 {
		var g int64
		for d := first; d <= last; d++ {
			if d%2 == 1 {
				g += food[d-1]
			}
		}
		return (g + size - 1) / size
	}
}

func TestUnbeatenEqualsExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 7))
	none, many := 0, 0
	for n := range 3000 {
		p := randomProblem(r, 7, 4)
		all := exhaustive(p)
		for _, by := range [][]Measure{{ByCost}, {ByCost, ByPeak}, {ByMoney, ByPeak, ByCarried, ByDetour}} {
			f, err := Unbeaten(p, by...)
			if len(all) == 0 {
				var no *InfeasibleError
				if !errors.As(err, &no) {
					t.Fatalf("case %d %+v: error %v, want an InfeasibleError", n, p, err)
				}
				checkReasons(t, p, no)
				none++
				break
			}
			if err != nil {
				t.Fatalf("case %d %+v: %v", n, p, err)
			}
			var got []score
			for _, c := range f.Choices {
				got = append(got, c.score())
				checkChoice(t, p, c)
			}
			want, have := unbeaten(all, by), unbeaten(got, by)
			if !slices.Equal(want, have) || len(have) != len(f.Choices) || !f.Complete {
				t.Fatalf("case %d %+v by %v:\n got %v\nwant %v", n, p, by, have, want)
			}
			if len(want) > 2 {
				many++
			}
		}
	}
	t.Logf("%d infeasible, %d with more than two choices", none, many)
	if none < 300 || many < 300 {
		t.Errorf("random cases too tame: %d infeasible, %d with more than two choices", none, many)
	}
}

// checkChoice recomputes a choice from its stops.
func checkChoice(t *testing.T, p Problem, c Choice) {
	t.Helper()
	var order []int
	where := make([]int, len(p.FoodGrams))
	for d := range where {
		where[d] = -1
	}
	fed := int64(0)
	for _, s := range c.Stops {
		at := -1
		if s.Point >= 0 {
			at = len(order)
			order = append(order, s.Point)
		}
		var g int64
		for d := s.FirstDay; d <= s.LastDay; d++ {
			where[d-1] = at
			g += p.FoodGrams[d-1]
		}
		if g != s.Grams || s.LeavingGrams > c.PeakGrams || s.LeavingGrams < g {
			t.Fatalf("stop %+v of %+v: %d g taken on", s, c, g)
		}
		fed += g
	}
	got, ok := judge(p, order, where)
	if !ok || got != c.score() {
		t.Fatalf("%+v: %+v is judged %v %v", p, c, got, ok)
	}
	for _, g := range p.FoodGrams {
		fed -= g
	}
	if fed != 0 {
		t.Fatalf("%+v: %d g too many", c, fed)
	}
}

// checkReasons holds an explanation to its own numbers, and tries the remedy.
func checkReasons(t *testing.T, p Problem, no *InfeasibleError) {
	t.Helper()
	if len(no.Heavy)+len(no.Gaps) == 0 {
		t.Fatalf("%+v: no reason given", p)
	}
	for _, h := range no.Heavy {
		if p.FoodGrams[h.Day-1] != h.NeedGrams || p.RoomGrams[h.Day-1] != h.RoomGrams || h.NeedGrams <= h.RoomGrams {
			t.Fatalf("%+v: heavy day %+v", p, h)
		}
	}
	for _, g := range no.Gaps {
		var need int64
		for d := g.FirstDay; d <= g.LastDay; d++ {
			need += p.FoodGrams[d-1]
		}
		if need != g.NeedGrams || g.TakeGrams >= need {
			t.Fatalf("%+v: gap %+v needs %d", p, g, need)
		}
	}
	if len(no.Gaps) == 0 {
		return
	}
	// A free shop on every boundary inside or at the edge of the gaps must do.
	for _, g := range no.Gaps {
		for d := max(g.FirstDay-1, 1); d <= g.LastDay; d++ {
			p.Points = append(p.Points, Point{Day: d, ParcelGrams: Boundless, Parcels: Boundless})
		}
	}
	p.WholeLegs = false
	if _, err := Unbeaten(p); err != nil {
		t.Fatalf("%+v: still %v", p, err)
	}
}
