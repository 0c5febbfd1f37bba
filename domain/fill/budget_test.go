package fill_test

import (
	"context"
	"testing"

	"sumpter/domain/fill"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/portions"
	"sumpter/domain/units"
)

// A sketch made with every edit keeps to the budget as the thorough menu does, and what else must be paid counts.
func TestSketchKeepsToTheBudget(t *testing.T) {
	for _, c := range []struct {
		budget, beside units.Money
		want           string
	}{{2000, 0, "nuts"}, {500, 0, "corn"}, {2000, 1900, "corn"}} {
		tr := evening(member(1))
		light(tr)
		pair(tr)
		tr.Settings.MenuAim, tr.Settings.Budget = 0, optional.Of(c.budget)
		tr.Foods[nuts-1].Packages[0].Price = optional.Of(units.Money(1600))
		n := needs.Compute(tr.Canonical(), nil)
		for _, steps := range []int64{fill.Sketch, fill.Sketch + 1} {
			p, err := fill.Menu(context.Background(), tr.Canonical(), n, fill.Options{Steps: steps, Beside: c.beside})
			if err != nil || len(p.Cells) != 1 {
				t.Fatal(p, err)
			}
			if got := tr.Recipe(p.Cells[0].Dishes[0].Recipe).Name; got != c.want {
				t.Errorf("%d steps, budget %v less %v: %s, want %s", steps, c.budget, c.beside, got, c.want)
			}
		}
	}
}

// What a plan costs beside its meals is what whole packages of their food do not explain.
func TestBesideTheMeals(t *testing.T) {
	tr := evening(member(1))
	pair(tr)
	tr = tr.Canonical()
	n := needs.Compute(tr, nil)
	p, err := fill.Menu(context.Background(), tr, n, fill.Options{Steps: fill.Sketch})
	if err != nil {
		t.Fatal(err)
	}
	sized := portions.Figures(tr, n, menu.Servings(tr, p.Cells))
	if got := fill.Beside(tr, sized, 1000); got != 600 { // a package for 400
		t.Errorf("beside a package for 4.00 stand %v of 10.00", got)
	}
	if got := fill.Beside(tr, sized, 100); got != 0 {
		t.Errorf("less than nothing: %v", got)
	}
}
