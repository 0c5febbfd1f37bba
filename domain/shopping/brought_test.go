package shopping_test

import (
	"reflect"
	"testing"

	"sumpter/domain/cooking"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
)

// A canister carried ahead for a leg without fuel is bought once.
func TestFuelCarriedAheadIsBoughtOnce(t *testing.T) {
	tr, b, r := pantry(priced(600, 250))
	c := cooking.Result{Fuel: []cooking.LegFuel{
		{Leg: 0, Group: 1, Fuel: trip.GasMix, Containers: []cooking.Container{{Name: "large"}, {Name: "large", Ahead: true}}},
		{Leg: 1, Group: 1, Fuel: trip.GasMix, Containers: []cooking.Container{{Name: "large", Brought: true}}},
	}}
	if got := shopping.Compute(tr, b, r, c).Fuel; !reflect.DeepEqual(got, []shopping.FuelLine{{Name: "large", Fuel: trip.GasMix, Count: 2}}) {
		t.Errorf("%+v", got)
	}
}
