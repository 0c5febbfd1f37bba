package trip_test

import (
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// The usual bags are a plan's first bags in both countries: each list is valid,
// has something for liquids, and sizes near each other's.
func TestUsualBagsAreThoseOfTheReadersShops(t *testing.T) {
	metric, us := trip.UsualBags(units.Metric), trip.UsualBags(units.US)
	for _, list := range [][]trip.BagType{metric, us} {
		made := trip.New("Walk", 20_000)
		made.Bags = list
		if problems := trip.Validate(made); len(problems) > 0 {
			t.Errorf("%v", problems)
		}
	}
	if len(us) != len(metric) {
		t.Fatalf("%d and %d kinds", len(us), len(metric))
	}
	for i := range us {
		if us[i].Liquids != metric[i].Liquids || us[i].Nominal < metric[i].Nominal.Scale(0.75) || us[i].Nominal > metric[i].Nominal.Scale(1.3) {
			t.Errorf("%s of %v stands for %s of %v", us[i].Name, us[i].Nominal, metric[i].Name, metric[i].Nominal)
		}
	}
	if quart := us[2]; quart.Name != "quart bag" || quart.Nominal.Format(units.US) != "4 cups" && quart.Nominal.Format(units.US) != "1 qt" {
		t.Errorf("%s holds %s", quart.Name, quart.Nominal.Format(units.US))
	}
}
