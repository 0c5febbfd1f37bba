package workbook

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/plan"
	"sumpter/domain/trip/triptest"
	"sumpter/exporter/plantest"
	"sumpter/exporter/tables"
)

// The workbook in the hands of programs that are not ours. They are skipped
// where the program is not installed; .ci installs both.

func program(t *testing.T, name string) string {
	t.Helper()
	if testing.Short() {
		t.Skip("takes seconds")
	}
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed", name)
	}
	return path
}

// throughLibreOffice opens a workbook in LibreOffice and saves it again.
func throughLibreOffice(t *testing.T, path string) *excelize.File {
	t.Helper()
	office := program(t, "soffice")
	folder := t.TempDir()
	command := exec.Command(office, "-env:UserInstallation=file://"+filepath.Join(folder, "profile"),
		"--headless", "--convert-to", "xlsx", "--outdir", folder, path)
	if out, err := command.CombinedOutput(); err != nil {
		t.Fatalf("soffice: %v\n%s", err, out)
	}
	file, err := excelize.OpenFile(filepath.Join(folder, filepath.Base(path)))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { file.Close() })
	return file
}

func saved(t *testing.T, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "workbook.xlsx")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// forgetful saves a workbook without the stored results of its formulas, so
// that whoever opens it must reckon.
func forgetful(t *testing.T, file *excelize.File) string {
	t.Helper()
	if err := file.UpdateLinkedValue(); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "forgetful.xlsx")
	if err := file.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestLibreOfficeReckonsTheSame(t *testing.T) {
	program(t, "soffice")
	p, err := plan.Make(context.Background(), triptest.Large(5, 6, 2), plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	ours, theirs := opened(t, p), throughLibreOffice(t, forgetful(t, opened(t, p)))
	for _, sheet := range ours.GetSheetList() {
		want, err := ours.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		got, err := theirs.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for i, cells := range want {
			for j, text := range cells {
				other := ""
				if i < len(got) && j < len(got[i]) {
					other = got[i][j]
				}
				if !sameFigure(text, other) {
					t.Errorf("%s row %d column %d: %q became %q", sheet, i+1, j+1, text, other)
				}
			}
		}
	}
}

// A leader who buys one package more finds it in the costs.
func TestLibreOfficeFollowsAChange(t *testing.T) {
	program(t, "soffice")
	p := plantest.Small()
	file, shopping := opened(t, p), tables.From(p).Shopping
	for i, values := range shopping.Rows {
		if values[shopping.Column("food")].Text == "rice" {
			if err := file.SetCellInt(shoppingSheet, cellAt(t, &shopping, "count", i), 3); err != nil {
				t.Fatal(err)
			}
		}
	}
	if got := raw(t, throughLibreOffice(t, forgetful(t, file)), costsSheet, "B7"); !sameFigure(got, "21.47") { // 3 × 1.99 + 12.00 + 3.50
		t.Errorf("the trip costs %q, want 21.47", got)
	}
}

// openpyxl reads the file without a warning and finds tables and figures.
func TestOpenpyxlReadsIt(t *testing.T) {
	python := program(t, "python3")
	if exec.Command(python, "-c", "import openpyxl").Run() != nil {
		if python = "/usr/bin/python3"; exec.Command(python, "-c", "import openpyxl").Run() != nil {
			t.Skip("openpyxl is not installed")
		}
	}
	script := `
import sys, warnings
warnings.simplefilter("error")
import openpyxl
book = openpyxl.load_workbook(sys.argv[1], data_only=True)
print(len(book.sheetnames), book["Costs"]["B7"].value, ",".join(book["Bagging list"].tables), book["Crew"]["A5"].value, book["Crew"]["A5"].data_type != "f")
`
	p := plantest.Small()
	out, err := exec.Command(python, "-c", script, saved(t, written(t, p))).CombinedOutput()
	sheets := len(opened(t, p).GetSheetList())
	if got, want := strings.TrimSpace(string(out)), fmt.Sprintf("%d 19.48 t_bags =1+1 True", sheets); err != nil || got != want {
		t.Errorf("%v: %q, want %q", err, got, want)
	}
}
