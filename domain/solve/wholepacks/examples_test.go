package wholepacks

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
)

type exampleFile []struct {
	Name     string
	Instance struct {
		Problem string
		Foods   []exampleFood
	}
	Expect struct {
		Cost, Left int64
		Infeasible string
	}
}

type exampleFood struct {
	ID       int
	NeedG    []int64 `json:"need_g"`
	Keeps    bool
	Packages []struct {
		NetG       int64    `json:"net_g"`
		PriceCents []*int64 `json:"price_cents"`
		Stock      []*int64
	}
}

func (f exampleFood) item() Item {
	it := Item{Name: fmt.Sprintf("food %d", f.ID), NeedGrams: f.NeedG, Keeps: f.Keeps}
	for _, p := range f.Packages {
		pack := Package{NetGrams: p.NetG}
		for k, price := range p.PriceCents {
			o := Offer{}
			if price != nil {
				o = Offer{PriceCents: *price, Available: Unlimited}
				if p.Stock[k] != nil {
					o.Available = *p.Stock[k]
				}
			}
			pack.Offers = append(pack.Offers, o)
		}
		it.Packages = append(it.Packages, pack)
	}
	return it
}

// The worked examples of testdata/planning_examples.json, each checked there
// with two MILP solvers and full enumeration.
func TestWorkedExamples(t *testing.T) {
	data, err := os.ReadFile("../../../testdata/planning_examples.json")
	if err != nil {
		t.Fatal(err)
	}
	var file exampleFile
	if err := json.Unmarshal(data, &file); err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, c := range file {
		if c.Instance.Problem != "packages" {
			continue
		}
		seen++
		t.Run(c.Name, func(t *testing.T) {
			var cost, left int64
			for _, f := range c.Instance.Foods {
				got, err := Solve(f.item())
				if c.Expect.Infeasible != "" {
					var short *ShortError
					if !errors.As(err, &short) {
						t.Fatalf("error %v, want a ShortError", err)
					}
					if want := fmt.Sprintf("%d g short", short.ShortGrams); !strings.Contains(c.Expect.Infeasible, want) {
						t.Errorf("%s, want %s", want, c.Expect.Infeasible)
					}
					return
				}
				if err != nil {
					t.Fatal(err)
				}
				cost += got.CostCents
				left += got.LeftGrams
			}
			if cost != c.Expect.Cost || left != c.Expect.Left {
				t.Errorf("cost %d left %d, want %d and %d", cost, left, c.Expect.Cost, c.Expect.Left)
			}
		})
	}
	if seen != 9 {
		t.Errorf("%d examples of packages, want 9", seen)
	}
}
