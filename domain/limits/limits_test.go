package limits

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"

	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// tight gives everybody's pack so much above their own kit, and so much room.
func tight(people, days int, seed uint64, load units.Mass, room units.Volume) *trip.Trip {
	t := triptest.Large(people, days, seed)
	for i := range t.Crew {
		m := &t.Crew[i]
		m.LoadLimit, m.PackRoom = optional.Of(m.OwnKit+load+units.Mass(i%4)*300*units.Gram), room
	}
	return t
}

func mustMake(t *testing.T, on *trip.Trip) *plan.Plan {
	t.Helper()
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// With the raised limits the trip is planned without a limit that is passed.
func TestWithRaisedLimitsThePlanPassesNone(t *testing.T) {
	for _, c := range []struct {
		people, days int
		load         units.Mass
		room         units.Volume
	}{
		{3, 4, units.Kilogram, 60 * units.Litre},
		{5, 6, 2 * units.Kilogram, 20 * units.Litre},
		{6, 8, 5 * units.Kilogram, 10 * units.Litre},
		{9, 7, 4 * units.Kilogram, 60 * units.Litre},
		{12, 6, 2 * units.Kilogram, 8 * units.Litre},
	} {
		for seed := uint64(1); seed <= 2; seed++ {
			t.Run(fmt.Sprintf("%d people, %d days, seed %d", c.people, c.days, seed), func(t *testing.T) {
				on := tight(c.people, c.days, seed, c.load, c.room)
				untouched := on.Clone()
				if len(overLimit(mustMake(t, on))) == 0 {
					t.Fatal("the trip is not tight")
				}
				var over []int
				list, err := Raise(context.Background(), on, func(n int) { over = append(over, n) })
				if err != nil {
					t.Fatal(err)
				}
				if !trip.Equal(on, untouched) {
					t.Error("the trip was changed")
				}
				Set(on, list)
				after := mustMake(t, on)
				if named := overLimit(after); len(named) > 0 || len(Passed(after)) > 0 {
					t.Errorf("after %v members over a limit it is still passed: %v", over, named)
				}
				for _, one := range list {
					was, is := untouched.Member(one.Member), on.Member(one.Member)
					if is.LoadLimit.Or(0) < was.LoadLimit.Or(0) || is.PackRoom < was.PackRoom {
						t.Errorf("%s has a lower limit", is.Name)
					}
				}
				again, _ := Raise(context.Background(), untouched, nil)
				if !slices.Equal(list, again) {
					t.Error("the same trip gives other limits")
				}
				t.Log(over)
			})
		}
	}
}

func TestLimitsThatAreKeptAreNotRaised(t *testing.T) {
	on := triptest.Large(4, 4, 1)
	for i := range on.Crew {
		on.Crew[i].LoadLimit, on.Crew[i].PackRoom = optional.Value[units.Mass]{}, 60*units.Litre
	}
	if mustMake(t, on).Refused() {
		t.Fatal("the trip cannot be planned")
	}
	if list, err := Raise(context.Background(), on, nil); err != nil || len(list) > 0 {
		t.Errorf("raised %v, %v", list, err)
	}
}

func TestRaiseEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Raise(ctx, tight(3, 4, 1, units.Kilogram, 60*units.Litre), nil); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestOfATripThatCannotBePlannedNothingIsRaised(t *testing.T) {
	on := tight(3, 4, 1, units.Kilogram, 60*units.Litre)
	on.Crew[0].ID = on.Crew[1].ID
	if list, err := Raise(context.Background(), on, nil); err != nil || len(list) > 0 {
		t.Errorf("raised %v, %v", list, err)
	}
}
