package portions_test

import (
	"strings"
	"testing"

	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
)

// rich gives a food of everything a day asks for, so that one figure can be spoilt at a time.
func rich() trip.Food {
	f := food(400, 15)
	f.Per100g.FatGrams, f.Per100g.CarbGrams = optional.Of(12.0), optional.Of(60.0)
	f.Per100g.FibreGrams, f.Per100g.SodiumMilligrams = optional.Of(9.0), optional.Of(900.0)
	return f
}

// TestRangesOverTheTrip: fat of 20 to 35 % of the energy, fibre and sodium as reference intakes ask for (IOM 2005, National Academies 2019,
// from memory); a tenth beside the range is not told, and what is not known is not taken for little.
func TestRangesOverTheTrip(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*trip.Nutrients)
		code  string // "": none
		says  string
	}{
		{"all well", func(*trip.Nutrients) {}, "", ""},
		{"fat 27 %", func(n *trip.Nutrients) { n.FatGrams = optional.Of(12.0) }, "", ""},
		{"fat 36 %: within a tenth of the range", func(n *trip.Nutrients) { n.FatGrams = optional.Of(16.0) }, "", ""},
		{"fat 45 %", func(n *trip.Nutrients) { n.FatGrams = optional.Of(20.0) }, "fat-high", "g are the most"},
		{"fat 11 %", func(n *trip.Nutrients) { n.FatGrams = optional.Of(5.0) }, "fat-low", "Little fat"},
		{"fibre", func(n *trip.Nutrients) { n.FibreGrams = optional.Of(1.0) }, "fibre-low", "Little fibre"},
		{"fibre not known", func(n *trip.Nutrients) { n.FibreGrams = optional.Unknown[float64]() }, "", ""},
		{"salt", func(n *trip.Nutrients) { n.SodiumMilligrams = optional.Of(50.0) }, "salt-low", "mg sodium"},
	} {
		t.Run(c.name, func(t *testing.T) {
			foods := map[trip.Meal]trip.Food{}
			for _, meal := range trip.Meals() {
				f := rich()
				c.spoil(&f.Per100g)
				foods[meal] = f
			}
			_, _, _, got := plan(t, table(foods))
			var codes []string
			for _, f := range got.Findings {
				switch f.Code {
				case "fat-high", "fat-low", "fibre-low", "salt-low":
					codes = append(codes, f.Code)
					if f.Severity != findings.Note || f.Why.IsZero() || f.Remedy.IsZero() || !strings.Contains(f.What.String(), c.says) {
						t.Errorf("got %+v", f)
					}
				}
			}
			if got := strings.Join(codes, " "); got != c.code {
				t.Errorf("findings %q, want %q", got, c.code)
			}
		})
	}
}
