package trip_test

import (
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
)

// Rows of testdata/check_values.csv, "TCS decision by aw and pH" (FDA Food
// Code 1-201.10, tables A and B), and what was entered by hand before them.
func TestControlFollowsTheFoodCode(t *testing.T) {
	known, unknown := optional.Of[float64], optional.Unknown[float64]()
	cases := []struct {
		name    string
		storage trip.Storage
		want    trip.TCS
	}{
		{"dry enough", trip.Storage{TCS: trip.TCSUnknown, WaterActivity: known(0.60)}, trip.TCSNo},
		{"moist, sour enough", trip.Storage{TCS: trip.TCSUnknown, WaterActivity: known(0.91), PH: known(4.5)}, trip.TCSNo},
		{"moist and mild", trip.Storage{TCS: trip.TCSUnknown, WaterActivity: known(0.91), PH: known(4.8)}, trip.TCSUnknown},
		{"the same, heated in its package", trip.Storage{TCS: trip.TCSUnknown, WaterActivity: known(0.91), PH: known(4.8), HeatTreated: true}, trip.TCSNo},
		{"moist, acidity not known", trip.Storage{TCS: trip.TCSUnknown, WaterActivity: known(0.91), PH: unknown}, trip.TCSUnknown},
		{"nothing known", trip.Storage{TCS: trip.TCSUnknown}, trip.TCSUnknown},
		{"said to need cooling, whatever its figures", trip.Storage{TCS: trip.TCSYes, WaterActivity: known(0.5), PH: known(4)}, trip.TCSYes},
	}
	for _, c := range cases {
		if have := c.storage.Control(); have != c.want {
			t.Errorf("%s: %q, want %q", c.name, have, c.want)
		}
	}
	doubted := trip.Storage{TCS: trip.TCSNo, WaterActivity: known(0.95), PH: known(6)}
	sound := trip.Storage{TCS: trip.TCSNo, WaterActivity: known(0.7)}
	untold := trip.Storage{TCS: trip.TCSNo}
	if !doubted.Doubted() || sound.Doubted() || untold.Doubted() {
		t.Error("doubt is for figures that speak against what was entered, and for those alone")
	}
}

func TestWetterOrMilderNeverKeepsBetter(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		activity, ph := rapid.Float64Range(0, 1).Draw(rt, "activity"), rapid.Float64Range(0, 14).Draw(rt, "pH")
		food := trip.Storage{
			TCS: rapid.SampledFrom(trip.TCSStates()).Draw(rt, "entered"), HeatTreated: rapid.Bool().Draw(rt, "heated"),
			WaterActivity: optional.Of(activity), PH: optional.Of(ph),
		}
		worse := food
		worse.WaterActivity = optional.Of(rapid.Float64Range(activity, 1).Draw(rt, "wetter"))
		worse.PH = optional.Of(rapid.Float64Range(ph, 14).Draw(rt, "milder"))
		if food.Control() != trip.TCSNo && worse.Control() == trip.TCSNo {
			rt.Fatalf("%+v needs more care than %+v", food, worse)
		}
	})
}
