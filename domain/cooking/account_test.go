package cooking_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/cooking"
	"sumpter/domain/needs"
	"sumpter/domain/portions/portionstest"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func accountsOf(t *trip.Trip) (*cooking.Accounts, cooking.Result) {
	c := t.Canonical()
	n, p := needs.Compute(c, nil), portionstest.Serve(c)
	made := cooking.Compute(c, n, p, c.Legs())
	return cooking.AccountsOf(c, n, p, c.Legs(), made), made
}

func TestAccountOfADinner(t *testing.T) {
	made := kettle()
	made.Settings.HotDrink, made.Settings.WashUp = units.FromLitres(0.4), units.FromLitres(0.5)
	made.Recipes[0].Simmer = 10
	accounts, result := accountsOf(made)
	lines := accounts.Meal(1, trip.Dinner, 1)
	var said []string
	for _, line := range lines {
		said = append(said, line.What.String()+" | "+line.Figure.String()+" | "+line.Basis.String())
	}
	whole := strings.Join(said, "\n")
	for _, want := range []string{
		"Tea: 1.0 L of water in Pot | ", "kJ from water of 15 °C; it boils at 100.0 °C here; simmers 10 min here, 10 at sea level",
		"Hot drinks: 400 mL", "Washing up: 500 mL, to 45 °C", "Fuel of the meal | " + result.Meals[0].FuelMass.String(),
		"gas mix gives 45.7 kJ a gram, of which 55 % reach the pot", "Water of the meal | 1.9 L | 1.0 L into the food, 900 mL for drinks and washing up",
		"Until the last eater eats | ", "1 burner of 2000 W",
	} {
		if !strings.Contains(whole, want) {
			t.Errorf("the account lacks %q:\n%s", want, whole)
		}
	}
	if none := accounts.Meal(1, trip.Breakfast, 1); len(none) != 0 {
		t.Errorf("no breakfast, yet %d lines", len(none))
	}
	fuel := accounts.Fuel(0, 1)
	if len(fuel) < 3 || fuel[0].Figure.String() != result.Meals[0].FuelMass.String() || fuel[1].Figure.String() != result.Fuel[0].Needed.String() {
		t.Errorf("fuel of the leg: %v", fuel)
	}
}

// Whatever the trip, the account ends in the figures of the plan and changes
// none of them.
func TestAccountsEndInThePlansFigures(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		accounts, made := accountsOf(triptest.Trip().Draw(rt, "trip"))
		for _, m := range made.Meals {
			lines := accounts.Meal(m.Day, m.Meal, m.Group)
			if m.FuelMass == 0 {
				continue
			}
			found := map[string]bool{}
			for _, line := range lines {
				if line.Total {
					found[line.Figure.String()] = true
				}
			}
			if !found[m.FuelMass.String()] || !found[(m.FoodWater+m.OtherWater).String()] {
				rt.Fatalf("day %d %s: fuel %s and water %s are not among %v", m.Day, m.Meal, m.FuelMass, m.FoodWater+m.OtherWater, found)
			}
		}
		days := map[int]int{}
		for _, w := range made.Water {
			days[w.Day]++
		}
		for day, drinkers := range days {
			lines, told := accounts.Water(day, nil), 0
			for _, line := range lines {
				if !line.Total {
					told++
				}
			}
			if told != drinkers {
				rt.Fatalf("day %d: %d of %d drinkers", day, told, drinkers)
			}
		}
		for _, f := range made.Fuel {
			if f.Needed > 0 && len(accounts.Fuel(f.Leg, f.Group)) < 2+len(f.Containers) {
				rt.Fatalf("leg %d: the fuel is not told", f.Leg)
			}
		}
	})
}
