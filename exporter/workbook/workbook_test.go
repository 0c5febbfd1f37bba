package workbook

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/plan"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
	"sumpter/exporter/tables"
)

func written(t testing.TB, p *plan.Plan) []byte {
	t.Helper()
	var buffer bytes.Buffer
	if err := Write(context.Background(), &buffer, p); err != nil {
		t.Fatal(err)
	}
	return buffer.Bytes()
}

func opened(t testing.TB, p *plan.Plan) *excelize.File {
	t.Helper()
	file, err := excelize.OpenReader(bytes.NewReader(written(t, p)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { file.Close() })
	return file
}

func raw(t testing.TB, file *excelize.File, sheet, at string) string {
	t.Helper()
	text, err := file.GetCellValue(sheet, at, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func cellAt(t testing.TB, table *tables.Table, key string, row int) string {
	t.Helper()
	place := table.Column(key)
	if place < 0 {
		t.Fatalf("table %s has no column %q", table.Name, key)
	}
	return fmt.Sprintf("%s%d", columnName(place), firstRow+row)
}

func TestDateSerials(t *testing.T) {
	// testdata/check_values.csv: ECMA-376 Part 1, 18.17.4.
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, record := range records {
		if record[0] != "xlsx" || record[1] != "date serial, 1900 system" {
			continue
		}
		date, err := units.ParseDate(record[2])
		if err != nil {
			continue // 1900: before any date a trip can have
		}
		want, _ := strconv.Atoi(record[3])
		if got := dateSerial(date); got != want {
			t.Errorf("%s is serial %d, want %d", record[2], got, want)
		}
		checked++
	}
	if checked != 2 {
		t.Errorf("checked %d serials, want 2", checked)
	}
	if got := columnName(702); got != "AAA" {
		t.Errorf("column 703 is %s, want AAA (check_values.csv)", got)
	}
}

// Every value of every table stands in the workbook as the plan has it.
func TestSheetsShowThePlan(t *testing.T) {
	for name, p := range map[string]*plan.Plan{"metric": plantest.Small(), "us": inUS(plantest.Small())} {
		t.Run(name, func(t *testing.T) {
			file := opened(t, p)
			all := tables.From(p)
			for sheet, table := range map[string]*tables.Table{
				"Findings": &all.Findings, "Crew": &all.Crew, "Menu": &all.Menu, "Dishes": &all.Dishes, "Needs": &all.Needs,
				"Needs by day": &all.NeedsByDay, "Shopping": &all.Shopping, "Fuel to buy": &all.Fuel, "Packing stations": &all.Rounds,
				"Weighing": &all.Weighing, "Bagging list": &all.Bags, "Boxes": &all.Boxes, "Box contents": &all.BoxBags, "Loads": &all.LoadGrid,
				"Loads in parts": &all.Loads, "Who carries what": &all.Carriers, "Fair split": &all.Splits, "Hand-overs": &all.HandOvers, "Moved meals": &all.MovedDishes, "Cooking": &all.Cooking,
				"Fuel by leg": &all.FuelByLeg, "Water": &all.Water, "How food keeps": &all.Keeping,
			} {
				compareSheet(t, file, sheet, table)
			}
		})
	}
}

func inUS(p *plan.Plan) *plan.Plan {
	p.Trip.Units = units.US
	return p
}

func compareSheet(t *testing.T, file *excelize.File, sheet string, table *tables.Table) {
	t.Helper()
	if len(table.Rows) == 0 {
		t.Errorf("table %s has no rows: nothing is compared", table.Name)
	}
	for i, column := range table.Columns {
		if got := raw(t, file, sheet, fmt.Sprintf("%s%d", columnName(i), firstRow-1)); got != column.Heading {
			t.Errorf("%s: heading %d is %q, want %q", sheet, i, got, column.Heading)
		}
	}
	for i, values := range table.Rows {
		for j, value := range values {
			at := fmt.Sprintf("%s%d", columnName(j), firstRow+i)
			got := raw(t, file, sheet, at)
			switch value.Kind {
			case tables.Figure:
				number, err := strconv.ParseFloat(got, 64)
				if err != nil || math.Abs(number-value.Number) > 1e-9*math.Max(1, math.Abs(value.Number)) {
					t.Errorf("%s!%s is %q, want %v", sheet, at, got, value.Number)
				}
			case tables.Day:
				if got != strconv.Itoa(dateSerial(value.Date)) {
					t.Errorf("%s!%s is %q, want %v", sheet, at, got, value.Date)
				}
			case tables.Open:
				if got != "" {
					t.Errorf("%s!%s is %q, want it open", sheet, at, got)
				}
			default:
				if got != value.Text {
					t.Errorf("%s!%s is %q, want %q", sheet, at, got, value.Text)
				}
			}
		}
	}
}

// Every formula gives the figure that the plan has beside it.
func TestFormulasAgreeWithThePlan(t *testing.T) {
	for name, p := range map[string]*plan.Plan{"metric": plantest.Small(), "us": inUS(plantest.Small())} {
		t.Run(name, func(t *testing.T) {
			if n := checkFormulas(t, opened(t, p)); n < 20 {
				t.Errorf("only %d formulas found", n)
			}
		})
	}
}

func checkFormulas(t *testing.T, file *excelize.File) int {
	t.Helper()
	found := 0
	for _, sheet := range file.GetSheetList() {
		rows, err := file.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for i, cells := range rows {
			for j := range cells {
				at := fmt.Sprintf("%s%d", columnName(j), i+1)
				formula, err := file.GetCellFormula(sheet, at)
				if err != nil || formula == "" {
					continue
				}
				found++
				got, err := file.CalcCellValue(sheet, at, excelize.Options{RawCellValue: true})
				if err != nil {
					t.Errorf("%s!%s =%s: %v", sheet, at, formula, err)
					continue
				}
				if !sameFigure(got, cells[j]) {
					t.Errorf("%s!%s =%s gives %q, the plan %q", sheet, at, formula, got, cells[j])
				}
			}
		}
	}
	return found
}

func sameFigure(a, b string) bool {
	if a == b {
		return true
	}
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	return errX == nil && errY == nil && math.Abs(x-y) <= 1e-6*math.Max(1, math.Abs(y))
}

// The same over a plan from the planner, with resupply and many foods.
func TestFormulasAgreeWithAMadePlan(t *testing.T) {
	p, err := plan.Make(context.Background(), triptest.Large(6, 7, 3), plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if n := checkFormulas(t, opened(t, p)); n < 100 {
		t.Errorf("only %d formulas found", n)
	}
}

func TestChangedCountsFlowThrough(t *testing.T) {
	p := plantest.Small()
	file := opened(t, p)
	shopping := tables.From(p).Shopping
	for i, values := range shopping.Rows {
		if values[shopping.Column("food")].Text != "rice" {
			continue
		}
		if err := file.SetCellInt(shoppingSheet, cellAt(t, &shopping, "count", i), 3); err != nil {
			t.Fatal(err)
		}
		for key, want := range map[string]string{"cost": "5.97", "leftover": "550"} { // 3 × 1.99; 3 × 500 − 950
			got, err := file.CalcCellValue(shoppingSheet, cellAt(t, &shopping, key, i), excelize.Options{RawCellValue: true})
			if err != nil || !sameFigure(got, want) {
				t.Errorf("%s is %q (%v), want %s", key, got, err, want)
			}
		}
	}
	got, err := file.CalcCellValue(costsSheet, "B7", excelize.Options{RawCellValue: true})
	if err != nil || !sameFigure(got, "21.47") { // 5.97 + 12.00 + 3.50
		t.Errorf("the trip costs %q (%v), want 21.47", got, err)
	}
}

func TestWeighedGramsGiveTheDifference(t *testing.T) {
	p := plantest.Small()
	file := opened(t, p)
	table := tables.From(p).Weighing
	at := cellAt(t, &table, "difference", 0)
	if got, err := file.CalcCellValue("Weighing", at); err != nil || got != "" {
		t.Errorf("before weighing the difference is %q (%v), want nothing", got, err)
	}
	if err := file.SetCellFloat("Weighing", cellAt(t, &table, "weighed", 0), 153, -1, 64); err != nil {
		t.Fatal(err)
	}
	if got, err := file.CalcCellValue("Weighing", at, excelize.Options{RawCellValue: true}); err != nil || !sameFigure(got, "3") {
		t.Errorf("the difference is %q (%v), want 3", got, err)
	}
}

func TestTypedTextIsNeverAFormula(t *testing.T) {
	p := plantest.Small()
	for i := range p.Trip.Foods {
		p.Trip.Foods[i].Name = "=2+2"
	}
	p.Trip.Title, p.Trip.Groups[0].Name, p.Trip.Recipes[0].Name = "=3+3", "@SUM(A1)", "=HYPERLINK(\"x\")"
	p.Trip.Recipes[0].Method = []string{"=4+4"}
	file := opened(t, p)
	for _, sheet := range file.GetSheetList() {
		rows, err := file.GetRows(sheet)
		if err != nil {
			t.Fatal(err)
		}
		for i, cells := range rows {
			for j := range cells {
				formula, _ := file.GetCellFormula(sheet, fmt.Sprintf("%s%d", columnName(j), i+1))
				for _, typed := range []string{"1+1", "2+2", "3+3", "4+4", "SUM(A1)", "HYPERLINK"} {
					if strings.Contains(formula, typed) {
						t.Errorf("%s row %d column %d is the formula %q", sheet, i+1, j+1, formula)
					}
				}
			}
		}
	}
	if got := raw(t, file, "Crew", "A5"); got != plantest.FormulaName {
		t.Errorf("the member is called %q, want %q", got, plantest.FormulaName)
	}
}

func TestEmptyPlanHasSheetsWithASentence(t *testing.T) {
	for name, p := range map[string]*plan.Plan{"empty trip": plantest.Empty(), "no trip": {}} {
		t.Run(name, func(t *testing.T) {
			file := opened(t, p)
			want := []string{"Overview", "Findings", "Cautions", "Crew", "Menu", "Dishes", "Needs", "Needs by day", "Shopping", "Fuel to buy", "Costs",
				"Packing stations", "Weighing", "Bagging list", "Loads", "Loads in parts", "Who carries what", "Recipe cards", "Cooking", "Water", "How food keeps"}
			if got := file.GetSheetList(); !slices.Equal(got, want) {
				t.Errorf("sheets %q, want %q", got, want)
			}
			all := tables.From(p)
			for sheet, table := range map[string]*tables.Table{"Bagging list": &all.Bags, "Shopping": &all.Shopping, "Loads": &all.LoadGrid, "Findings": &all.Findings} {
				if got := raw(t, file, sheet, "A4"); got != table.Empty || got == "" {
					t.Errorf("%s says %q, want %q", sheet, got, table.Empty)
				}
			}
		})
	}
}

func TestSamePlanSameBytes(t *testing.T) {
	first := written(t, plantest.Small())
	for range 10 {
		if !bytes.Equal(first, written(t, plantest.Small())) {
			t.Fatal("the same plan gave other bytes")
		}
	}
}

func TestReadyToPrint(t *testing.T) {
	for system, paper := range map[units.System]int{units.Metric: paperA4, units.US: paperLetter} {
		p := plantest.Small()
		p.Trip.Units = system
		file := opened(t, p)
		heads := map[string]string{}
		areas := map[string]bool{}
		for _, name := range file.GetDefinedName() {
			switch name.Name {
			case "_xlnm.Print_Titles":
				heads[name.Scope] = name.RefersTo
			case "_xlnm.Print_Area":
				areas[name.Scope] = true
			}
		}
		for _, sheet := range file.GetSheetList() {
			layout, err := file.GetPageLayout(sheet)
			if err != nil || layout.Size == nil || *layout.Size != paper {
				t.Errorf("%s: paper %v (%v), want %d", sheet, layout.Size, err, paper)
			}
			if layout.FitToWidth == nil || *layout.FitToWidth != 1 || layout.FitToHeight == nil || *layout.FitToHeight != 0 {
				t.Errorf("%s does not fit one page wide", sheet)
			}
			footer, err := file.GetHeaderFooter(sheet)
			if err != nil || footer == nil || !strings.Contains(footer.OddFooter, "Page &P of &N") || !strings.Contains(footer.OddFooter, "Three && a box") {
				t.Errorf("%s: footer %+v (%v)", sheet, footer, err)
			}
			if !areas[sheet] {
				t.Errorf("%s has no print area", sheet)
			}
		}
		if heads["Bagging list"] != "'Bagging list'!$4:$4" {
			t.Errorf("the bagging list repeats %q", heads["Bagging list"])
		}
	}
}

func TestRealTablesWithFiltersAndFrozenHeads(t *testing.T) {
	file := opened(t, plantest.Small())
	for sheet, area := range map[string]string{"Bagging list": "A4:P7", "Shopping": "A4:O6", "Findings": "A4:H6"} {
		list, err := file.GetTables(sheet)
		if err != nil || len(list) != 1 || list[0].Range != area {
			t.Errorf("%s: tables %+v (%v), want one at %s", sheet, list, err, area)
		}
		panes, err := file.GetPanes(sheet)
		if err != nil || !panes.Freeze || panes.YSplit != firstRow-1 {
			t.Errorf("%s: panes %+v (%v)", sheet, panes, err)
		}
	}
}

func TestTickBoxesTakeOnlyAnX(t *testing.T) {
	file := opened(t, plantest.Small())
	list, err := file.GetDataValidations("Bagging list")
	if err != nil || len(list) != 1 || list[0].Sqref != "A5:A7" || list[0].Formula1 != `"x"` {
		t.Errorf("validations %+v (%v)", list, err)
	}
}

// A chart that reached over the columns of its sheet would be cut in print.
func TestChartsStandWithinTheirSheets(t *testing.T) {
	to := regexp.MustCompile(`<xdr:to><xdr:col>(\d+)</xdr:col>`)
	charts := 0
	for path, part := range parts(t, written(t, plantest.Small())) {
		if !strings.HasPrefix(path, "xl/drawings/drawing") {
			continue
		}
		charts++
		found := to.FindStringSubmatch(part)
		if found == nil {
			t.Fatalf("%s has no anchor: %s", path, part)
		}
		if last, _ := strconv.Atoi(found[1]); last > 12 { // the needs have 12 columns, the loads 5 and a filler
			t.Errorf("%s reaches to column %d", path, last+1)
		}
	}
	if charts != 2 {
		t.Errorf("%d charts, want those of needs and loads", charts)
	}
}

// Columns and page breaks in another order than the format's make a
// spreadsheet offer to repair the file (ECMA-376 Part 1, 18.3.1.17).
func TestColumnsStandInOrder(t *testing.T) {
	file := opened(t, plantest.Small())
	for path, part := range parts(t, written(t, plantest.Small())) {
		if !strings.HasPrefix(path, "xl/worksheets/sheet") {
			continue
		}
		last := 0
		for _, column := range strings.Split(part, "<col min=\"")[1:] {
			number, err := strconv.Atoi(column[:strings.IndexByte(column, '"')])
			if err != nil || number <= last {
				t.Errorf("%s: column %d after %d (%v)", path, number, last, err)
			}
			last = number
		}
	}
	if width, err := file.GetColWidth("Bagging list", "H"); err != nil || width < 20 {
		t.Errorf("the contents column is %v wide (%v)", width, err)
	}
}

// parts unpacks a workbook.
func parts(t *testing.T, data []byte) map[string]string {
	t.Helper()
	reader, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]string{}
	for _, part := range reader.File {
		from, err := part.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(from)
		from.Close()
		if err != nil {
			t.Fatal(err)
		}
		found[part.Name] = string(text)
	}
	return found
}

func TestStopsWhenTold(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var buffer bytes.Buffer
	if err := Write(ctx, &buffer, plantest.Small()); err == nil || buffer.Len() != 0 {
		t.Errorf("error %v and %d bytes after cancelling", err, buffer.Len())
	}
}
