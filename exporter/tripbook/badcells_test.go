package tripbook

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// edited writes a small trip, lets change work on the file, and gives it back.
func edited(t testing.TB, system units.System, change func(*excelize.File)) []byte {
	t.Helper()
	file, err := excelize.OpenReader(bytes.NewReader(written(t, sample(), system)))
	if err != nil {
		t.Fatal(err)
	}
	change(file)
	var out bytes.Buffer
	if err := file.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// sample is a small trip with something on most sheets.
func sample() *trip.Trip {
	made := triptest.Large(3, 6, 2)
	made.Currency = "EUR"
	made.Recipes = made.Recipes[:6]
	used := map[trip.FoodID]bool{}
	for _, recipe := range made.Recipes {
		for _, ingredient := range recipe.Ingredients {
			used[ingredient.Food] = true
			for _, swap := range ingredient.Swaps {
				used[swap.Food] = true
			}
		}
	}
	made.Foods = slices.DeleteFunc(made.Foods, func(f trip.Food) bool { return !used[f.ID] })
	made.Menu = slices.DeleteFunc(made.Menu, func(c trip.Cell) bool { return made.Recipe(c.Dishes[0].Recipe) == nil })
	return made
}

// at finds the cell of a heading's column, rows below it.
func at(t testing.TB, file *excelize.File, sheet, heading string, below int) string {
	t.Helper()
	rows, err := file.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows {
		if row[0] == heading && sheet == sheetTrip {
			return cellName(1, i+1)
		}
	}
	for j, text := range rows[0] {
		if text == heading {
			return cellName(j, 1+below)
		}
	}
	t.Fatalf("sheet %s has no heading %s", sheet, heading)
	return ""
}

// Each bad cell makes exactly one problem, in its place, that says what was
// found and what is allowed.
func TestEachBadCellIsOneProblemInItsPlace(t *testing.T) {
	cases := []struct {
		sheet, heading string
		value          any
		wrong, allowed string
	}{
		{sheetTrip, "Title", "", "is empty", "text"},
		{sheetTrip, "First day", "3/4/2026", "can be read in two ways", "a date"},
		{sheetTrip, "First day", "2026-02-30", "the calendar does not have", "a date"},
		{sheetTrip, "Packing night", "soon", "is not a date", "a date"},
		{sheetTrip, "Currency", "euro", "not the code", "EUR"},
		{sheetTrip, "Walking equation", "by feel", "is not known", "Pandolf 1977"},
		{sheetTrip, "Stops", "a lot", "is not a number", "a number"},
		{sheetTrip, "Helpers on packing night", 2.5, "is not a whole number", "a whole number"},
		{sheetTrip, "Reserve is made of", "moonshine", "is not the name of a recipe", "sheet Recipes"},
		{sheetTrip, "Home, highest", "20 kg", "unit that does not belong", "°C, °F"},
		{sheetTrip, "Budget", "1,234", "can be read in two ways", "EUR"},
		{sheetCrew, "Name", "", "is empty", "text"},
		{sheetCrew, "Cook group", "nobody", "is not the name of a cook group", "sheet Cook groups"},
		{sheetCrew, "Sex", "unsure", "is not known", "not given"},
		{sheetCrew, "Age", "thirty", "is not a number", "whole number"},
		{sheetCrew, "Body mass (kg)", "", "is empty", "kg, lb"},
		{sheetCrew, "Body mass (kg)", "72 st", "unit that does not belong", "kg, lb"},
		{sheetCrew, "Body mass (kg)", "#REF!", "error of the spreadsheet", "a number"},
		{sheetCrew, "Body mass (kg)", 1e12, "is too large", "a number"},
		{sheetCrew, "Allergies", "peanuts severe", "is not an allergen", "(severe)"},
		{sheetCrew, "Dislikes", "Moon dust", "is not the name of a food", "sheet Foods"},
		{sheetCrew, "Body mass (kg)", 7200, "7200", "kg"}, // kept by trip.Validate
		{sheetCrew, "First day", 9, "9", "6"},
		{sheetDays, "Day", 9, "is beyond the 6 days", "once"},
		{sheetDays, "Day", "-2", "is not a whole number from 0", "from 0"},
		{sheetDays, "Ground", "ice", "is not known", "rough trail"},
		{sheetDays, "Meals from the packs", "dinner; tea", "is not known", "breakfast"},
		{sheetDays, "No flame", "perhaps", "neither yes nor no", "yes or no"},
		{sheetDays, "Lowest air (°C)", "1.234.5", "is not a number", "°C"},
		{sheetDays, "Lowest air (°C)", 65, "65", "°C"},
		{sheetFoods, "Carbohydrate is", "", "is empty", "total, available"},
		{sheetFoods, "Must stay cold", "sometimes", "is not known", "unknown"},
		{sheetFoods, "ID", "new", "not a whole number", "nothing"},
		{sheetFoods, "Refuse", "150%", "refuse share is 1.5", "below 1"},
		{sheetSafety, "Peanuts", "a little", "is not known", "contains, may contain"},
		{sheetSafety, "Other allergens", "kiwi", "has no colon", "colon"},
		{sheetSafety, "Vegan", "yes", "is not known", "suits"},
		{sheetPackages, "Food", "Moon dust", "is not the name of a food", "sheet Foods"},
		{sheetPackages, "Price", "1.234 USD", "is not a number", "EUR"},
		{sheetPackages, "Price", 1.2345, "more decimals than EUR", "EUR"},
		{sheetPackages, "In stock", -1, "is not a whole number", "whole number"},
		{sheetRecipes, "Meals", "", "is empty", "none"},
		{sheetRecipes, "Water (mL)", "two cups", "is not a number", "mL, fl oz"},
		{sheetIngredients, "Amount (g)", "", "is empty", "g, oz"},
		{sheetIngredients, "Role", "garnish", "is not known", "base, to taste"},
		{sheetIngredients, "Swap amount (g)", "", "is empty beside a food", "g, oz"},
		{sheetMenu, "Recipe", "Moonshine", "is not the name of a recipe", "sheet Recipes"},
		{sheetMenu, "Meal", "tea", "is not known", "breakfast"},
		{sheetMenu, "Only for", "Nobody", "is not the name of a member", "sheet Crew"},
		{sheetGear, "Kind", "kettle", "is not known", "stove, pot"},
		{sheetFuels, "Fuel", "coal", "is not known", "gas mix"},
		{sheetBagTypes, "Usable part", "full", "is not a number", "a number"},
		{sheetResupply, "Open on", "Mon; Funday", "is not known", "Mon, Tue"},
		{sheetResupply, "Closed on dates", "2026-07-20; 5/6/2026", "in two ways", "a date"},
		{sheetResupply, "Held for", "weeks", "is not a number", "unknown"},
	}
	for _, c := range cases {
		t.Run(c.sheet+" "+c.heading+" "+c.wrong, func(t *testing.T) {
			var cell string
			data := edited(t, units.Metric, func(file *excelize.File) {
				below := 1
				if c.heading == "Swap amount (g)" || c.heading == "Amount (g)" {
					below = rowWithSwap(t, file)
				}
				cell = at(t, file, c.sheet, c.heading, below)
				set(t, file, c.sheet, cell, c.value)
			})
			read, problems, err := Read(bytes.NewReader(data))
			if err != nil || read != nil {
				t.Fatalf("trip %v, error %v", read != nil, err)
			}
			// Who has no name, or no ID, cannot be found by others either.
			first := problems[0]
			if c.heading == "ID" || c.heading == "Name" {
				first = find(problems, c.sheet, cell)
			} else if len(problems) != 1 {
				t.Fatalf("%d problems: %v", len(problems), problems)
			}
			if first.Sheet != c.sheet || first.Cell != cell || !strings.Contains(first.Wrong, c.wrong) || !strings.Contains(first.Allowed, c.allowed) || first.Note {
				t.Errorf("wanted %s %s, got %v", c.sheet, cell, first)
			}
		})
	}
}

func find(problems []Problem, sheet, cell string) Problem {
	for _, p := range problems {
		if p.Sheet == sheet && p.Cell == cell {
			return p
		}
	}
	return Problem{}
}

func rowWithSwap(t testing.TB, file *excelize.File) int {
	t.Helper()
	rows, err := file.GetRows(sheetIngredients)
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows[1:] {
		if len(row) > 5 && row[1] != "" && row[5] != "" && row[5] != leaveOut {
			return i + 1
		}
	}
	t.Fatal("no ingredient has a swap")
	return 0
}

func set(t testing.TB, file *excelize.File, sheet, cell string, value any) {
	t.Helper()
	if value == "" {
		value = nil
	}
	if err := file.SetCellValue(sheet, cell, value); err != nil {
		t.Fatal(err)
	}
}

func TestBadCellsOfProgress(t *testing.T) {
	for _, c := range []struct {
		name, sheet string
		row         []any
		cell, wrong string
	}{
		{"nothing bought", sheetPurchases, []any{nil, nil, nil, nil, "village shop"}, "A2", "not exactly one"},
		{"bought a ghost", sheetPurchases, []any{"Moon dust"}, "A2", "is not the name of a food"},
		{"none bought", sheetPurchases, []any{nil, nil, "car fuel", nil, nil, 0}, "F2", "0"},
		{"weighed nothing of a food", sheetPacked, []any{"d1 dinner g1 r1 b1 pot 1", "yes", sample().Foods[0].Name}, "D2", "is empty"},
		{"weighed of no food", sheetPacked, []any{"d1 dinner g1 r1 b1 pot 1", "yes", nil, 20}, "C2", "is empty"},
		{"weighs less than nothing", sheetPacked, []any{"d1 dinner g1 r1 b1 pot 1", "yes", sample().Foods[0].Name, -1}, "D2", "-"},
		{"unknown end", sheetBagEnds, []any{"d1 dinner g1 r1 b1 pot 1", "sold", 1}, "B2", "is not known"},
		{"gone after the trip", sheetBagEnds, []any{"d1 dinner g1 r1 b1 pot 1", "eaten", 9}, "C2", "9"},
		{"box missing nowhere", sheetMissingBoxes, []any{"Moon base"}, "A2", "is not the name of a resupply point"},
	} {
		t.Run(c.name, func(t *testing.T) {
			data := edited(t, units.Metric, func(file *excelize.File) {
				if err := file.SetSheetRow(c.sheet, "A2", &c.row); err != nil {
					t.Fatal(err)
				}
			})
			_, problems, err := Read(bytes.NewReader(data))
			if err != nil || len(problems) != 1 {
				t.Fatalf("%v, %v", problems, err)
			}
			if p := problems[0]; p.Sheet != c.sheet || p.Cell != c.cell || !strings.Contains(p.Wrong, c.wrong) {
				t.Errorf("wanted %s %s %q, got %v", c.sheet, c.cell, c.wrong, p)
			}
		})
	}
}

func TestAllFaultsAreToldAtOnceInOrder(t *testing.T) {
	data := edited(t, units.Metric, func(file *excelize.File) {
		set(t, file, sheetPins, "A2", "Moon buggy")
		set(t, file, sheetTrip, at(t, file, sheetTrip, "Stops", 0), "many")
		set(t, file, sheetCrew, "D3", "old")
		set(t, file, sheetCrew, "C3", "unsure")
		set(t, file, sheetCrew, "D2", "old")
	})
	_, problems, err := Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	var places []string
	for _, p := range problems {
		places = append(places, p.Sheet+" "+p.Cell)
	}
	const want = "Trip B13, Crew D2, Crew C3, Crew D3, Pins A2, Pins C2, Pins D2"
	if got := strings.Join(places, ", "); got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
}

func TestWhatRowsMustBeTogether(t *testing.T) {
	cases := []struct {
		name   string
		change func(*testing.T, *excelize.File)
		sheet  string
		wrong  string
	}{
		{"two members of one name", func(t *testing.T, f *excelize.File) { copyCell(t, f, sheetCrew, "A2", "A3") }, sheetCrew, "is the name of row 2 already"},
		{"two foods of one ID", func(t *testing.T, f *excelize.File) {
			copyCell(t, f, sheetFoods, at(t, f, sheetFoods, "ID", 1), at(t, f, sheetFoods, "ID", 2))
		}, sheetFoods, "is the ID of row 2 already"},
		{"two rows of one food", func(t *testing.T, f *excelize.File) { copyCell(t, f, sheetSafety, "A2", "A3") }, sheetSafety, "has a row already"},
		{"a day twice", func(t *testing.T, f *excelize.File) { copyCell(t, f, sheetDays, "A2", "A3") }, sheetDays, "is the day of row 2 already"},
		{"a heading twice", func(t *testing.T, f *excelize.File) { set(t, f, sheetCrew, "Z1", "Age") }, sheetCrew, "stands there twice"},
		{"a heading without its unit", func(t *testing.T, f *excelize.File) { set(t, f, sheetCrew, "E1", "Body mass") }, sheetCrew, "does not tell its unit"},
		{"a heading with a wrong unit", func(t *testing.T, f *excelize.File) { set(t, f, sheetCrew, "E1", "Body mass (km)") }, sheetCrew, "does not tell its unit"},
		{"a heading missing", func(t *testing.T, f *excelize.File) { set(t, f, sheetCrew, "D1", "Years") }, sheetCrew, "the heading Age is missing"},
		{"a sheet missing", func(t *testing.T, f *excelize.File) {
			if err := f.DeleteSheet(sheetDays); err != nil {
				t.Fatal(err)
			}
		}, sheetDays, "is missing"},
		{"an accepted risk without a dish", func(t *testing.T, f *excelize.File) {
			rows, _ := f.GetRows(sheetMenu)
			member, _ := f.GetCellValue(sheetCrew, "A2")
			food, _ := f.GetCellValue(sheetFoods, "A2")
			other, _ := f.GetCellValue(sheetRecipes, "A3")
			for i, text := range []string{rows[1][0], rows[1][1], rows[1][2], other, member, food, "asked"} {
				set(t, f, sheetAccepted, cellName(i, 2), text)
			}
		}, sheetAccepted, "is not served at this meal"},
		{"a swap without an ingredient", func(t *testing.T, f *excelize.File) { set(t, f, sheetIngredients, "B2", "") }, sheetIngredients, "the row above is no ingredient"},
		{"a cell far below", func(t *testing.T, f *excelize.File) {
			for i := range maxRows {
				_ = f.SetCellStr(sheetPins, cellName(0, i+2), "x")
			}
		}, sheetPins, "is beyond what is read"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			data := edited(t, units.Metric, func(file *excelize.File) { c.change(t, file) })
			read, problems, err := Read(bytes.NewReader(data))
			if read != nil || err != nil {
				t.Fatalf("trip %v, error %v", read != nil, err)
			}
			for _, p := range problems {
				if p.Sheet == c.sheet && strings.Contains(p.Wrong, c.wrong) {
					return
				}
			}
			if len(problems) > 8 {
				problems = problems[:8]
			}
			t.Errorf("got %v", problems)
		})
	}
}

func copyCell(t testing.TB, file *excelize.File, sheet, from, to string) {
	t.Helper()
	text, err := file.GetCellValue(sheet, from)
	if err != nil {
		t.Fatal(err)
	}
	set(t, file, sheet, to, text)
}
