package resupply

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/resupply"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// However many choices there are, few are shown; the one in use, the advised
// one, the cheapest and the lightest are always among them, and no shown one
// is invented.
func TestReadableKeepsWhatMatters(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(1, 120).Draw(rt, "choices")
		front := rapid.Bool().Draw(rt, "dearer is lighter")
		var all []resupply.Choice
		for i := range n {
			mass := rapid.IntRange(1, 200).Draw(rt, "mass")
			money := 200 - mass
			if !front {
				money = rapid.IntRange(0, 60).Draw(rt, "money")
			}
			all = append(all, resupply.Choice{
				Points: []trip.PointID{trip.PointID(i + 1)}, Money: units.Money(money), HeaviestFood: units.Mass(mass) * units.Kilogram,
			})
		}
		all[rapid.IntRange(0, n-1).Draw(rt, "current")].Current = true
		all[rapid.IntRange(0, n-1).Draw(rt, "advised")].Recommended = true
		few := readable(all, mostShown)
		if len(few) > mostShown || len(few) == 0 {
			rt.Fatalf("%d of %d are shown", len(few), n)
		}
		if n <= mostShown && len(few) != n {
			rt.Fatalf("%d of %d, though all could be read", len(few), n)
		}
		cheapest, lightest, current, advised := all[0].Money, all[0].HeaviestFood, false, false
		for _, c := range all {
			cheapest, lightest = min(cheapest, c.Money), min(lightest, c.HeaviestFood)
		}
		hasCheap, hasLight := false, false
		seen := map[trip.PointID]bool{}
		for _, c := range few {
			hasCheap, hasLight = hasCheap || c.Money == cheapest, hasLight || c.HeaviestFood == lightest
			current, advised = current || c.Current, advised || c.Recommended
			if seen[c.Points[0]] {
				rt.Fatalf("%v is shown twice", c.Points)
			}
			seen[c.Points[0]] = true
		}
		if !current || !advised || !hasCheap || !hasLight {
			rt.Fatalf("current %v, advised %v, cheapest %v, lightest %v", current, advised, hasCheap, hasLight)
		}
		if !slices.IsSortedFunc(few, func(a, b resupply.Choice) int { return int(a.HeaviestFood - b.HeaviestFood) }) {
			rt.Fatal("not from light to heavy")
		}
	})
}

func TestMiddleOfTheLongestLeg(t *testing.T) {
	on := &trip.Trip{Days: make([]trip.Day, 12), Points: []trip.ResupplyPoint{{ID: 1, AfterDay: 4, Use: true}}}
	if got := middleOfLongestLeg(on); got != 8 {
		t.Errorf("after day %d, want 8", got)
	}
	on.Days = on.Days[:1]
	on.Points = nil
	if got := middleOfLongestLeg(on); got != 1 {
		t.Errorf("on a trip of one day: after day %d", got)
	}
}

// Whatever days are open: what the table writes is read back as the same.
func TestOpenDaysSurviveTheTable(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		var p, again trip.ResupplyPoint
		for _, name := range trip.OpenDayNames() {
			if rapid.Bool().Draw(rt, name) {
				p.OpenDays = append(p.OpenDays, name)
			}
		}
		if err := setOpen(&again, openText(&p)); err != nil {
			rt.Fatalf("%q is not read: %v", openText(&p), err)
		}
		want := p.OpenDays
		if len(want) == 7 {
			want = nil // every day
		}
		if !slices.Equal(again.OpenDays, want) {
			rt.Fatalf("%v is written %q and read %v", p.OpenDays, openText(&p), again.OpenDays)
		}
	})
}
