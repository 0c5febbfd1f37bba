package tables

import (
	"context"
	"testing"

	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func TestEveryPlannedHandOverHasARow(t *testing.T) {
	on := triptest.Large(6, 5, 3)
	on.Settings.FillOpenSlots = true
	on.Crew[1].LastDay, on.Crew[4].FirstDay = 2, 3
	on.Gear[0].Group = 0
	on.Pins = append(on.Pins, trip.Pin{Gear: on.Gear[0].ID, Member: on.Crew[1].ID}) // what has to change hands when they leave
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	want, leaver, missed := 0, 0, 0
	for _, stage := range p.Carry.Stages {
		want += stage.HandOvers
	}
	table := From(p).PassedOn
	for i := range table.Rows {
		if at(t, &table, i, "from").Text == p.Trip.Crew[1].Name {
			leaver++
			when := "evening of day 2"
			if at(t, &table, i, "to").Text == p.Trip.Crew[4].Name {
				when, missed = "evening of day 2, kept by who stays until day 3", missed+1
			}
			wantText(t, &table, i, "when", when)
		}
	}
	if want == 0 || leaver == 0 || missed == 0 || len(table.Rows) != want {
		t.Errorf("%d rows, %d of who leaves, for %d hand-overs", len(table.Rows), leaver, want)
	}
}
