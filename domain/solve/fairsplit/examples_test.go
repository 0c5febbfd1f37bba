package fairsplit

import (
	"context"
	"encoding/json"
	"math/big"
	"os"
	"slices"
	"strings"
	"testing"
)

// example is one worked case of testdata/planning_examples.json: a planning problem
// small enough to be enumerated by hand, its optimum verified with two MILP solvers.
type example struct {
	Name     string
	Instance struct {
		Problem     string
		Days        int
		HoursTenths []int64 `json:"hours_tenths"`
		Crew        []struct {
			Strength int64 `json:"w"`
			Base     int64 `json:"base_g"`
			Max      int64 `json:"max_g"`
			Volume   int64 `json:"vol_ml"`
		}
		Items []struct {
			Mass      int64 `json:"mass_g"`
			Volume    int64 `json:"vol_ml"`
			GoneAfter int   `json:"gone_after"`
			Residual  int64 `json:"residual_g"`
			Energy    int64 `json:"kcal"`
			Class     *string
			Allowed   []int
		}
		Classes []struct {
			Name  string
			Share json.Number
		}
	}
	Expect struct {
		R1, Sum, Level string
		PerDay         []string `json:"per_day"`
		Leximin        []string
		Infeasible     string
	}
}

func (e example) problem(t *testing.T) Problem {
	p := Problem{Days: e.Instance.Days, HoursTenths: e.Instance.HoursTenths}
	for _, m := range e.Instance.Crew {
		p.Crew = append(p.Crew, Member{m.Strength, m.Base, m.Max, m.Volume})
	}
	for _, it := range e.Instance.Items {
		class := ""
		if it.Class != nil {
			class = *it.Class
		}
		p.Items = append(p.Items, Item{it.Mass, it.Volume, it.GoneAfter, it.Residual, nil, it.Energy, class, it.Allowed})
	}
	for _, c := range e.Instance.Classes {
		share := fraction(t, c.Share.String())
		p.Classes = append(p.Classes, Class{c.Name, Ratio{share.Num().Int64(), share.Denom().Int64()}})
	}
	return p
}

func fraction(t *testing.T, text string) *big.Rat {
	t.Helper()
	v, ok := new(big.Rat).SetString(text)
	if !ok {
		t.Fatalf("no fraction: %q", text)
	}
	return v
}

func carryExamples(t *testing.T) []example {
	t.Helper()
	text, err := os.ReadFile("../../../testdata/planning_examples.json")
	if err != nil {
		t.Fatal(err)
	}
	var all []example
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	return slices.DeleteFunc(all, func(e example) bool { return e.Instance.Problem != "carry" })
}

func TestWorkedExamples(t *testing.T) {
	examples := carryExamples(t)
	if len(examples) != 12 {
		t.Fatalf("%d worked carry examples, want 12", len(examples))
	}
	rules := map[string]Rule{"class dinner": ClassTooTight, "mass: 6500": TotalTooMuch, "mass: whole": WholeItemsMisfit}
	for _, e := range examples {
		t.Run(strings.ReplaceAll(e.Name, " ", "_"), func(t *testing.T) {
			p := e.problem(t)
			r, err := Solve(context.Background(), p, Options{})
			if err != nil {
				t.Fatal(err)
			}
			checkResult(t, p, r)
			if e.Expect.Infeasible != "" {
				if r.Feasible || len(r.Reasons) == 0 {
					t.Fatalf("feasible %v with reasons %v", r.Feasible, r.Reasons)
				}
				for start, rule := range rules {
					if strings.HasPrefix(e.Expect.Infeasible, start) && r.Reasons[0].Rule != rule {
						t.Errorf("rule %v, want %v (%s)", r.Reasons[0].Rule, rule, e.Expect.Infeasible)
					}
				}
				return
			}
			checkExample(t, e, r)
		})
	}
}

func checkExample(t *testing.T, e example, r Result) {
	t.Helper()
	if !r.Feasible || !r.Proven {
		t.Fatalf("feasible %v, proven %v", r.Feasible, r.Proven)
	}
	if want := fraction(t, e.Expect.R1); r.R1.Cmp(want) != 0 {
		t.Errorf("R1 = %v, want %v", r.R1, want)
	}
	if want := fraction(t, e.Expect.Sum); r.S.Cmp(want) != 0 {
		t.Errorf("S = %v, want %v", r.S, want)
	}
	for d, text := range e.Expect.PerDay {
		if want := fraction(t, text); r.Days[d].Largest.Cmp(want) != 0 {
			t.Errorf("day %d: largest %v, want %v", d+1, r.Days[d].Largest, want)
		}
	}
	if e.Expect.Level != "" {
		if want := fraction(t, e.Expect.Level); r.Days[0].Level.Cmp(want) != 0 {
			t.Errorf("water level %v, want %v", r.Days[0].Level, want)
		}
	}
	if e.Expect.Leximin == nil {
		return
	}
	var burdens []*big.Rat
	for i, m := range e.Instance.Crew {
		burdens = append(burdens, big.NewRat(r.Days[0].Grams[i], m.Strength))
	}
	slices.SortFunc(burdens, func(a, b *big.Rat) int { return b.Cmp(a) })
	for k, text := range e.Expect.Leximin {
		if want := fraction(t, text); burdens[k].Cmp(want) != 0 {
			t.Errorf("burden number %d is %v, want %v", k+1, burdens[k], want)
		}
	}
}
