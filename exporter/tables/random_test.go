package tables

import (
	"context"
	"math"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/plan"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// For any trip: every row has a value for each heading, no figure is none at
// all, nothing unknown is blank, and the tables add up to the plan.
func TestAnyTripIsLaidOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made := triptest.Trip().Draw(t, "trip")
		made.Units = units.Metric
		p, err := plan.Make(context.Background(), made, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		all := From(p)
		for _, table := range all.List() {
			for i, values := range table.Rows {
				if len(values) != len(table.Columns) {
					t.Fatalf("%s row %d has %d values for %d headings", table.Name, i, len(values), len(table.Columns))
				}
				for j, value := range values {
					if value.Kind == Figure && (math.IsNaN(value.Number) || math.IsInf(value.Number, 0)) {
						t.Fatalf("%s row %d %s is no figure", table.Name, i, table.Columns[j].Key)
					}
				}
			}
		}
		sumsAgree(t, p, all)
	})
}

func sumsAgree(t *rapid.T, p *plan.Plan, all *Tables) {
	if len(all.Bags.Rows) != len(p.Bags.Bags) || len(all.Findings.Rows) != len(p.Findings) {
		t.Fatalf("%d bags and %d findings, the plan has %d and %d", len(all.Bags.Rows), len(all.Findings.Rows), len(p.Bags.Bags), len(p.Findings))
	}
	var bags, boxed, packed units.Mass
	for i := range p.Bags.Bags {
		bags += p.Bags.Bags[i].Mass()
	}
	for _, box := range p.Resupply.Boxes {
		boxed += box.Mass
	}
	for _, bulk := range p.Packing.Bulk {
		packed += bulk.Total
	}
	for _, c := range []struct {
		name, key string
		table     *Table
		want      units.Mass
	}{
		{"bags", "mass", &all.Bags, bags}, {"boxes", "mass", &all.BoxBags, boxed}, {"weighing", "mass", &all.Weighing, packed},
	} {
		sum, at := 0.0, c.table.Column(c.key)
		for _, values := range c.table.Rows {
			sum += values[at].Number
		}
		if math.Abs(sum-c.want.Grams()) > 1e-6*math.Max(1, sum) {
			t.Fatalf("the table of %s adds up to %.3f g, the plan to %.3f g", c.name, sum, c.want.Grams())
		}
	}
}
