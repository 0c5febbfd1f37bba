package library

import (
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"sumpter/domain/science/foodenergy"
)

// pair is a food of the second table beside ours, per 100 g.
type pair struct {
	kcal       float64 // NaN: not known
	theirs     foodenergy.Composition
	ours       foodenergy.Composition
	oursKcal   float64
	takenOver  bool // the second table took its figures from ours
	fibreKnown bool
}

// TestAgreesWithASecondTable compares the library with a table made by another
// agency from other samples, and pins how far apart they lie. Source and
// licence: testdata/ciqual_extract.md (Anses, Ciqual French food composition
// table). What is compared is sorts of food, not the same samples: a cooked
// grain differs by its water, a fruit by its variety, so the spread is what a
// leader should expect between the library and the food in the shop.
func TestAgreesWithASecondTable(t *testing.T) {
	pairs := secondTable(t)
	own := slices.DeleteFunc(slices.Clone(pairs), func(p pair) bool { return p.takenOver })
	if len(pairs) != 125 || len(own) != 104 {
		t.Fatalf("%d foods, %d with figures of their own; want 125 and 104", len(pairs), len(own))
	}
	var stated, computed, protein, fat, carbohydrate, fibre []float64
	for _, p := range own {
		if !math.IsNaN(p.kcal) {
			stated = append(stated, share(p.oursKcal, p.kcal))
		}
		computed = append(computed, share(foodenergy.EUKcal(p.ours), foodenergy.EUKcal(p.theirs)))
		protein = append(protein, math.Abs(p.ours.Protein-p.theirs.Protein))
		fat = append(fat, math.Abs(p.ours.Fat-p.theirs.Fat))
		if p.fibreKnown {
			carbohydrate = append(carbohydrate, math.Abs(p.ours.AvailableCarbohydrate()-p.theirs.Carbohydrate))
			fibre = append(fibre, math.Abs(p.ours.Fibre-p.theirs.Fibre))
		}
	}
	for _, c := range []struct {
		what              string
		gaps              []float64
		foods             int
		near, far         float64 // limits, and the shares of foods within them
		nearWant, farWant float64
	}{
		{"stated energy", stated, 102, 0.10, 0.20, 0.814, 0.951},
		{"energy by the same factors", computed, 104, 0.10, 0.20, 0.788, 0.933},
		{"protein", protein, 104, 1, 2, 0.644, 0.885},
		{"fat", fat, 104, 1, 2, 0.750, 0.817},
		{"carbohydrate without fibre", carbohydrate, 102, 2, 5, 0.549, 0.873},
		{"fibre", fibre, 102, 1, 3, 0.725, 0.902},
	} {
		near, far := shareWithin(c.gaps, c.near), shareWithin(c.gaps, c.far)
		if len(c.gaps) != c.foods || math.Abs(near-c.nearWant) > 0.001 || math.Abs(far-c.farWant) > 0.001 {
			t.Errorf("%s: of %d foods %.3f within %g and %.3f within %g; want %d, %.3f, %.3f",
				c.what, len(c.gaps), near, c.near, far, c.far, c.foods, c.nearWant, c.farWant)
		}
	}
}

// share is the gap between two figures as a share of ours.
func share(ours, theirs float64) float64 { return math.Abs(theirs-ours) / ours }

func secondTable(t *testing.T) []pair {
	t.Helper()
	file, err := os.Open("../../testdata/ciqual_extract.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	number := func(text string) float64 {
		if text == "" {
			return math.NaN()
		}
		value, err := strconv.ParseFloat(text, 64)
		if err != nil {
			t.Fatal(err)
		}
		return value
	}
	var pairs []pair
	for _, row := range rows[1:] {
		e, ok := Lookup(row[7])
		if !ok {
			t.Fatalf("%s: no food %s in the library", row[1], row[7])
		}
		n := e.Per100g
		p := pair{
			kcal: number(row[2]), oursKcal: float64(n.Kcal), fibreKnown: n.FibreGrams.Known(),
			theirs: foodenergy.Composition{
				Convention: foodenergy.Available, Protein: number(row[3]), Fat: number(row[4]), Carbohydrate: number(row[5]), Fibre: number(row[6]),
			},
			ours: foodenergy.Composition{
				Convention: foodenergy.Total, Protein: n.ProteinGrams.Or(math.NaN()), Fat: n.FatGrams.Or(math.NaN()),
				Carbohydrate: n.CarbGrams.Or(math.NaN()), Fibre: n.FibreGrams.Or(0),
			},
		}
		p.takenOver = threeDigits(p.ours.Protein) == p.theirs.Protein && threeDigits(p.ours.Fat) == p.theirs.Fat
		pairs = append(pairs, p)
	}
	return pairs
}

// threeDigits rounds as the second table does.
func threeDigits(value float64) float64 {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(value, 'g', 3, 64), 64)
	if err != nil {
		return math.NaN()
	}
	return rounded
}
