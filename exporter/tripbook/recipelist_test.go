package tripbook

import (
	"bytes"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// recipeTable is two recipes over the first foods of a trip, as a spreadsheet copies them.
func recipeTable(t *trip.Trip) [][]string {
	a, b, c := t.Foods[0].Name, t.Foods[1].Name, t.Foods[2].Name
	return [][]string{
		{"Name", "Meals", "Ingredient", "Amount [g]", "Goes into", "Water [mL]", "Minutes", "Method"},
		{"Hut stew", "dinner", a, "80", "", "350", "12", "Boil the water."},
		{"", "", b, "20.5", "", "", "", "Stir."},
		{"Trail mix", "lunch; snack", c, "60", "bowl", "", "", ""},
	}
}

func tabbed(rows [][]string) string {
	var lines []string
	for _, row := range rows {
		lines = append(lines, strings.Join(row, "\t"))
	}
	return strings.Join(lines, "\n")
}

// Heads need no unit where each cell tells its own, as people write recipes.
func TestAmountsWithTheirUnitsNeedNoneInTheHead(t *testing.T) {
	base := triptest.Large(3, 2, 1)
	rows := recipeTable(base)
	rows[0][3], rows[0][5] = "Amount", "Water"
	rows[1][3], rows[2][3], rows[3][3], rows[1][5] = "3 oz", "20.5 g", "60g", "1.5 cups"
	added, problems, err := AddTable(base, "list", strings.NewReader(tabbed(rows)))
	if err != nil || added.Trip == nil {
		t.Fatalf("%v, %v", problems, err)
	}
	stew := added.Trip.Recipes[len(base.Recipes)]
	if ounces := stew.Ingredients[0].Amount.Ounces(); ounces < 2.999 || ounces > 3.001 || stew.Ingredients[1].Amount != units.FromGrams(20.5) {
		t.Errorf("amounts %v and %v", stew.Ingredients[0].Amount, stew.Ingredients[1].Amount)
	}
	if cups := stew.Water.Cups(); cups < 1.499 || cups > 1.501 { // NIST Handbook 44
		t.Errorf("water %v", stew.Water)
	}
	rows[2][3] = "20.5" // of what?
	if added, problems, _ = AddTable(base, "list", strings.NewReader(tabbed(rows))); added.Trip != nil || len(problems) == 0 {
		t.Errorf("a bare number without a unit anywhere is taken: %v", problems)
	}
}

// Text and workbook give the same recipes.
func TestAddRecipes(t *testing.T) {
	base := triptest.Large(3, 2, 1)
	rows := recipeTable(base)
	file := excelize.NewFile()
	for i, row := range rows {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		if err := file.SetSheetRow("Sheet1", cell, &row); err != nil {
			t.Fatal(err)
		}
	}
	var book bytes.Buffer
	if err := file.Write(&book); err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"pasted": tabbed(rows), "workbook": book.String()} {
		added, problems, err := AddTable(base, "list", strings.NewReader(text))
		if err != nil || added.Trip == nil {
			t.Fatalf("%s: %v, %v", name, problems, err)
		}
		n := len(base.Recipes)
		if added.Count != 2 || len(added.Trip.Recipes) != n+2 {
			t.Fatalf("%s: %d recipes", name, added.Count)
		}
		stew, mix := added.Trip.Recipes[n], added.Trip.Recipes[n+1]
		if stew.Name != "Hut stew" || stew.Water != 350*units.Millilitre || stew.Simmer != 12 || len(stew.Method) != 2 || len(stew.Ingredients) != 2 ||
			stew.Ingredients[1].Amount != units.FromGrams(20.5) || stew.Ingredients[0].Place != trip.InPot || stew.Ingredients[0].Food != base.Foods[0].ID {
			t.Errorf("%s: %+v", name, stew)
		}
		if len(mix.Meals) != 2 || mix.Ingredients[0].Place != trip.AtBowl || mix.ID == stew.ID {
			t.Errorf("%s: %+v", name, mix)
		}
	}
}

// Every fault is told at once, with its cell, and nothing is added.
func TestFaultsOfRecipesAreToldTogether(t *testing.T) {
	base := triptest.Large(3, 2, 1)
	rows := recipeTable(base)
	rows[1][3] = "plenty"                                                                   // D2
	rows[2][2] = "Moon cheese"                                                              // C3
	rows[3][1] = "elevenses"                                                                // B4
	rows = append(rows, []string{base.Recipes[0].Name, "dinner", base.Foods[0].Name, "50"}, // A5: there already
		[]string{"Bare", "", base.Foods[0].Name, "50"},    // B6: no meal
		[]string{"Airy", "lunch", base.Foods[0].Name, ""}) // D7: no amount
	added, problems, err := AddTable(base, "list", strings.NewReader(tabbed(rows)))
	if err != nil || added.Trip != nil {
		t.Fatalf("%v, added %v", err, added.Trip != nil)
	}
	var all []string
	for _, p := range problems {
		all = append(all, p.String())
	}
	for _, cell := range []string{"D2", "C3", "B4", "A5", "B6", "D7"} {
		if !strings.Contains(strings.Join(all, "\n"), cell) {
			t.Errorf("the fault at %s is not told:\n%s", cell, strings.Join(all, "\n"))
		}
	}
}
