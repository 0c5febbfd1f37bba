package resupply_test

import (
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/resupply"
)

// Fuel that comes along from an earlier leg is in no box, and a point without
// fuel is then no fault.
func TestFuelCarriedAheadIsInNoBox(t *testing.T) {
	tr := week()
	tr.Points[0].TakesFuel, tr.Points[0].SellsFuel = false, false
	fuel := cooking.Result{Fuel: []cooking.LegFuel{{Leg: 1, Containers: []cooking.Container{{Key: "second", Brought: true}}}}}
	legs := tr.Legs()
	r := resupply.Compute(tr, bags.Compute(tr, bagstest.Batches(tr), fuel, legs), fuel, legs)
	if len(r.Boxes[0].Fuel) != 0 || r.Boxes[0].FuelBoughtThere {
		t.Errorf("%+v", r.Boxes[0])
	}
	for _, finding := range r.Findings {
		if strings.Contains(finding.Code, "fuel") {
			t.Errorf("%s: %s", finding.Code, finding.What)
		}
	}
}
