package demo

import (
	"context"
	"strings"
	"testing"

	"sumpter/domain/findings"
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func planned(t *testing.T) *plan.Plan {
	t.Helper()
	demo := Trip()
	p, err := plan.Make(context.Background(), &demo, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Food is at most 0.75 kg for a person and day over the trip; a day of the
// packs that begins or ends elsewhere counts by its part. Only the cold days
// above 3,000 m, which ask for a quarter more energy, may pass it.
func TestFoodIsLight(t *testing.T) {
	p := planned(t)
	var mass, days float64
	for d := range p.Trip.Days {
		var dayMass, dayDays float64
		for i, intake := range p.Portions.Intakes {
			dayMass += intake.Days[d].Food.Kilograms()
			dayDays += p.Needs.Members[i].Days[d].FromPacks
		}
		mass, days = mass+dayMass, days+dayDays
		most := 0.75
		if p.Trip.Days[d].CampHeight > 3000 {
			most = 0.85
		}
		if perPerson := dayMass / dayDays; perPerson > most {
			t.Errorf("day %d: %.3f kg for a person", d+1, perPerson)
		}
	}
	if perDay := mass / days; perDay > 0.75 {
		t.Errorf("%.3f kg for a person and day", perDay)
	}
}

// The demo shows what findings are for, and nothing in it can hurt anybody.
func TestFindingsAreFewAndNoneMustBeFixed(t *testing.T) {
	p := planned(t)
	for _, f := range p.Findings {
		if f.Severity == findings.MustFix {
			t.Errorf("%s: %s", f.Code, f.What)
		}
	}
	lookAt := findings.Count(p.Findings, findings.LookAt)
	if lookAt < 2 || lookAt > 8 {
		t.Errorf("%d findings to look at", lookAt)
	}
	if p.Shopping.Unpriced != 1 {
		t.Errorf("%d lines without a price", p.Shopping.Unpriced)
	}
}

// Foods that are counted show as pieces: what is handed out of them is whole, or halves where they may be cut.
func TestCountedFoodsComeInPieces(t *testing.T) {
	p := planned(t)
	counted := map[trip.FoodID]int{}
	for i := range p.Bags.Bags {
		for _, content := range p.Bags.Bags[i].Contents {
			food := p.Trip.Food(content.Food)
			if food.PieceStep() == 0 {
				continue
			}
			counted[food.ID]++
			if said := food.Amount(content.Mass, content.Mass.Format(units.Metric)).In(prose.Reader{}); !strings.Contains(said, " piece") {
				t.Errorf("bag %s holds %s of %s", p.Bags.Bags[i].Code, said, food.Name)
			}
		}
	}
	if len(counted) < 5 {
		t.Errorf("only %d foods are counted", len(counted))
	}
}
