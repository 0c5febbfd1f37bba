package stops

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
)

type example struct {
	Name     string
	Instance struct {
		Problem      string
		Days         int
		FoodG        []int64 `json:"food_g"`
		CapacityG    int64   `json:"capacity_g"`
		StartWeekday int     `json:"start_weekday"`
		HourCents    int64   `json:"hour_cents"`
		KgdayCents   int64   `json:"kgday_cents"`
		Points       []struct {
			Day          int
			FeeCents     int64 `json:"fee_cents"`
			VisitCents   int64 `json:"visit_cents"`
			DetourTenths int64 `json:"detour_tenths_h"`
			Premium      int64 `json:"premium_cents_per_kg"`
			ParcelMaxG   int64 `json:"parcel_max_g"`
			ParcelsMax   int64 `json:"parcels_max"`
			OpenWeekdays uint  `json:"open_weekdays"`
			TransitDays  int   `json:"transit_days"`
			HoldDays     int   `json:"hold_days"`
		}
	}
	Expect struct {
		CostCents     *int64 `json:"cost_cents"`
		Path          []int
		PeakG         int64 `json:"peak_g"`
		Pareto        [][2]int64
		LegInfeasible bool   `json:"leg_policy_infeasible"`
		CarryOver     *int64 `json:"carry_over_cents"`
		Infeasible    string
	}
}

func (e example) problem() Problem {
	in := e.Instance
	p := Problem{FoodGrams: in.FoodG, CarryCents: in.KgdayCents}
	for range in.Days {
		p.RoomGrams = append(p.RoomGrams, in.CapacityG)
	}
	for _, pt := range in.Points {
		q := Point{
			Day: pt.Day, StopCents: pt.VisitCents, Detour: pt.DetourTenths, DetourCents: in.HourCents / 10,
			ParcelCents: pt.FeeCents, ParcelGrams: pt.ParcelMaxG, Parcels: pt.ParcelsMax, PremiumCents: pt.Premium,
		}
		switch {
		case pt.OpenWeekdays>>((in.StartWeekday+pt.Day)%7)&1 == 0:
			q.Shut = "closed that weekday"
		case pt.Day < pt.TransitDays:
			q.Shut = fmt.Sprintf("the parcel arrives after day %d", pt.TransitDays)
		case pt.Day > pt.TransitDays+pt.HoldDays:
			q.Shut = fmt.Sprintf("the parcel goes back after day %d", pt.TransitDays+pt.HoldDays)
		}
		p.Points = append(p.Points, q)
	}
	return p
}

// The worked examples of testdata/planning_examples.json, each checked there
// with two MILP solvers.
func TestWorkedExamples(t *testing.T) {
	data, err := os.ReadFile("../../../testdata/planning_examples.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []json.RawMessage
	if err := json.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, raw := range all {
		var probe struct{ Instance struct{ Problem string } }
		if err := json.Unmarshal(raw, &probe); err != nil {
			t.Fatal(err)
		}
		if probe.Instance.Problem != "resupply" {
			continue
		}
		var e example
		if err := json.Unmarshal(raw, &e); err != nil {
			t.Fatal(err)
		}
		seen++
		t.Run(e.Name, func(t *testing.T) { checkExample(t, e) })
	}
	if seen != 8 {
		t.Errorf("%d examples of resupply, want 8", seen)
	}
}

func checkExample(t *testing.T, e example) {
	p := e.problem()
	p.WholeLegs = true
	f, err := Unbeaten(p)
	if e.Expect.Infeasible != "" || e.Expect.LegInfeasible {
		var no *InfeasibleError
		if !errors.As(err, &no) {
			t.Fatalf("error %v, want an InfeasibleError", err)
		}
	} else if err != nil {
		t.Fatal(err)
	}
	if e.Expect.Infeasible != "" {
		for _, part := range []string{"days 1 to 4", "4000 g", "packs take 2000 g", "after day 2", "back after day 1"} {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%q does not say %q", err, part)
			}
		}
	}
	if e.Expect.CostCents != nil {
		best := f.Choices[0]
		if best.Cost != 1000**e.Expect.CostCents {
			t.Errorf("cost %d, want %d cents", best.Cost, *e.Expect.CostCents)
		}
		path := []int{}
		for _, s := range best.Stops[1:] {
			path = append(path, s.Day)
		}
		if path = append(path, e.Instance.Days); fmt.Sprint(path) != fmt.Sprint(e.Expect.Path) {
			t.Errorf("path %v, want %v", path, e.Expect.Path)
		}
		if e.Expect.PeakG > 0 && best.PeakGrams != e.Expect.PeakG {
			t.Errorf("peak %d, want %d", best.PeakGrams, e.Expect.PeakG)
		}
	}
	if e.Expect.Pareto != nil {
		var got [][2]int64
		for _, c := range f.Choices {
			got = append(got, [2]int64{c.Cost / 1000, c.PeakGrams})
		}
		if fmt.Sprint(got) != fmt.Sprint(e.Expect.Pareto) {
			t.Errorf("unbeaten %v, want %v", got, e.Expect.Pareto)
		}
	}
	if e.Expect.CarryOver != nil {
		p.WholeLegs = false
		f, err := Unbeaten(p)
		if err != nil || f.Choices[0].Cost != 1000**e.Expect.CarryOver {
			t.Errorf("carry-over %+v, %v, want %d cents", f.Choices, err, *e.Expect.CarryOver)
		}
	}
}
