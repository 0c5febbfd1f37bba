package trip_test

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func TestAnotherCurrencyKeepsTheFigures(t *testing.T) {
	for _, c := range []struct {
		from, to     string
		before, want units.Money
	}{
		{"EUR", "USD", 1250, 1250},
		{"EUR", "JPY", 1250, 13},
		{"JPY", "EUR", 13, 1300},
		{"EUR", "KWD", 1250, 12500},
		{"KWD", "JPY", 12499, 12},
	} {
		tr := plain()
		tr.Currency, tr.Settings.Budget = c.from, optional.Of(c.before)
		tr.UseCurrency(c.to)
		if got := tr.Settings.Budget.Or(-1); got != c.want || tr.Currency != c.to {
			t.Errorf("%s becomes %s", c.before.Format(c.from), got.Format(tr.Currency))
		}
	}
}

// amounts lists every amount of money in the JSON form of a trip, found by the
// names such fields have.
func amounts(t *testing.T, tr *trip.Trip) []float64 {
	text, err := json.Marshal(tr)
	if err != nil {
		t.Fatal(err)
	}
	var document any
	if err := json.Unmarshal(text, &document); err != nil {
		t.Fatal(err)
	}
	var list []float64
	var walk func(name string, at any)
	walk = func(name string, at any) {
		switch at := at.(type) {
		case map[string]any:
			for key, inner := range at {
				walk(key, inner)
			}
		case []any:
			for _, inner := range at {
				walk(name, inner)
			}
		case float64:
			if strings.HasSuffix(name, "price") || name == "paid" || name == "least_order" || name == "budget" || strings.Contains(name, "fee") {
				list = append(list, at)
			}
		}
	}
	walk("", document)
	return list
}

func TestNoPriceIsForgottenInAnotherCurrency(t *testing.T) {
	found := 0
	rapid.Check(t, func(rt *rapid.T) {
		tr := triptest.Trip().Draw(rt, "trip")
		tr.Currency = "EUR"
		before := sum(amounts(t, tr))
		found += len(amounts(t, tr))
		tr.UseCurrency("KWD")
		if after := sum(amounts(t, tr)); after != 10*before {
			rt.Fatalf("all prices together are %v, were %v with a tenth of the decimals", after, before)
		}
		if problems := trip.Validate(tr); len(problems) > 0 && !strings.Contains(problems[0].What.String(), "KWD") {
			rt.Fatal(problems)
		}
	})
	if found == 0 {
		t.Error("no generated trip has a price")
	}
}

func sum(list []float64) float64 {
	total := 0.0
	for _, value := range list {
		total += value
	}
	return total
}
