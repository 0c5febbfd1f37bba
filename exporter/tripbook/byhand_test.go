package tripbook

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Changes people make that mean nothing: the trip must stay what it was.
func TestWhatPeopleDoToWorkbooksChangesNothing(t *testing.T) {
	cases := map[string]func(*testing.T, *excelize.File){
		"sheets in another order": func(t *testing.T, f *excelize.File) {
			for _, sheet := range []string{sheetPins, sheetIngredients, sheetCrew} {
				if err := f.MoveSheet(sheet, sheetTrip); err != nil {
					t.Fatal(err)
				}
			}
		},
		"a sheet in capitals": func(t *testing.T, f *excelize.File) {
			if err := f.SetSheetName(sheetGroups, "COOK  GROUPS"); err != nil {
				t.Fatal(err)
			}
		},
		"columns in another order": func(t *testing.T, f *excelize.File) { reverseColumns(t, f, sheetFoods, sheetCrew, sheetIngredients) },
		"headings in capitals and brackets": func(t *testing.T, f *excelize.File) {
			set(t, f, sheetCrew, "D1", " AGE ")
			set(t, f, sheetCrew, "E1", "body-mass [KG]")
		},
		"a title above": func(t *testing.T, f *excelize.File) {
			if err := f.InsertRows(sheetCrew, 1, 3); err != nil {
				t.Fatal(err)
			}
			set(t, f, sheetCrew, "A2", "Who comes along")
		},
		"blank rows": func(t *testing.T, f *excelize.File) {
			for _, sheet := range []string{sheetDays, sheetFoods, sheetIngredients, sheetTrip} {
				if err := f.InsertRows(sheet, 3, 2); err != nil {
					t.Fatal(err)
				}
				set(t, f, sheet, "A4", "  \u00a0")
			}
		},
		"names with blanks and capitals": func(t *testing.T, f *excelize.File) {
			changeTexts(t, f, sheetMenu, 3, func(text string) string { return "  " + strings.ToUpper(text) + " " })
			changeTexts(t, f, sheetCrew, 1, func(text string) string { return strings.ToLower(text) + "\u00a0" })
		},
		"numbers as text with a comma": func(t *testing.T, f *excelize.File) {
			changeTexts(t, f, sheetFoods, 4, func(text string) string { return strings.ReplaceAll(text, ".", ",") })
			changeTexts(t, f, sheetCrew, 4, func(text string) string { return strings.ReplaceAll(text, ".", ",") + " kg" })
		},
		"dates as text": func(t *testing.T, f *excelize.File) {
			for _, heading := range []string{"First day", "Packing night", "Shopping day"} {
				cell := at(t, f, sheetTrip, heading, 0)
				raw, _ := f.GetCellValue(sheetTrip, cell, excelize.Options{RawCellValue: true})
				day, wrong := parseDate(raw, false)
				if wrong != "" {
					t.Fatal(wrong)
				}
				set(t, f, sheetTrip, cell, day.Spoken())
			}
		},
		"yes and no as spreadsheets have them": func(t *testing.T, f *excelize.File) {
			rows, _ := f.GetRows(sheetDays)
			for i := range rows[1:] {
				cell := at(t, f, sheetDays, "No flame", i+1)
				text, _ := f.GetCellValue(sheetDays, cell)
				set(t, f, sheetDays, cell, text == "yes")
			}
		},
		"another unit in a heading": func(t *testing.T, f *excelize.File) {
			rows, _ := f.GetRows(sheetCrew, excelize.Options{RawCellValue: true})
			set(t, f, sheetCrew, "E1", "Body mass (lb)")
			for i, row := range rows[1:] {
				kilograms, _ := bodyMass.whole(row[4], bodyMass.units[0])
				if err := f.SetCellDefault(sheetCrew, cellName(4, i+2), bodyMass.units[1].writeWhole(kilograms)); err != nil {
					t.Fatal(err)
				}
			}
		},
		"computed cells": func(t *testing.T, f *excelize.File) {
			raw, _ := f.GetCellValue(sheetCrew, "D2")
			if err := f.SetCellFormula(sheetCrew, "D2", raw+"+0"); err != nil {
				t.Fatal(err)
			}
			if err := f.UpdateLinkedValue(); err != nil {
				t.Fatal(err)
			}
			set(t, f, sheetCrew, "D2", 0)
			set(t, f, sheetCrew, "D2", raw)
		},
		"no first sheet and no lists": func(t *testing.T, f *excelize.File) {
			for _, sheet := range []string{sheetReadMe, sheetLists} {
				if err := f.DeleteSheet(sheet); err != nil {
					t.Fatal(err)
				}
			}
		},
	}
	for name, change := range cases {
		t.Run(name, func(t *testing.T) {
			read, problems, err := Read(bytes.NewReader(edited(t, units.Metric, func(f *excelize.File) { change(t, f) })))
			if err != nil || len(problems) > 0 {
				t.Fatal(problems, err)
			}
			if want := sample(); !trip.Equal(want, read) {
				t.Error(firstDifference(reflect.ValueOf(*want), reflect.ValueOf(*read), "trip"))
			}
		})
	}
}

func reverseColumns(t *testing.T, f *excelize.File, sheets ...string) {
	t.Helper()
	for _, sheet := range sheets {
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		width := len(rows[0])
		for i, row := range rows {
			for j := range width {
				text := ""
				if place := width - 1 - j; place < len(row) {
					text = row[place]
				}
				set(t, f, sheet, cellName(j, i+1), text)
			}
		}
	}
}

func changeTexts(t *testing.T, f *excelize.File, sheet string, column int, change func(string) string) {
	t.Helper()
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows[1:] {
		if column < len(row) && row[column] != "" {
			set(t, f, sheet, cellName(column, i+2), change(row[column]))
		}
	}
}

func TestWhatIsNotKnownIsLeftAsideWithANote(t *testing.T) {
	data := edited(t, units.Metric, func(f *excelize.File) {
		set(t, f, sheetCrew, "Z1", "Shoe size")
		set(t, f, sheetCrew, "Z2", "44")
		if _, err := f.NewSheet("Car sharing"); err != nil {
			t.Fatal(err)
		}
	})
	read, problems, err := Read(bytes.NewReader(data))
	if err != nil || read == nil || !trip.Equal(sample(), read) {
		t.Fatal(problems, err)
	}
	if len(problems) != 2 || !problems[0].Note || !problems[1].Note || Faulty(problems) ||
		problems[0].Sheet != "Car sharing" || problems[1].String() != `sheet Crew, cell Z1: "Shoe size" is no heading of this sheet: it is left aside` {
		t.Errorf("%v", problems)
	}
}

// A leader fills in an empty workbook: names only, no IDs, blanks where a
// blank has a meaning.
func TestAFilledInTemplateIsATrip(t *testing.T) {
	for _, system := range systems {
		t.Run(string(system), func(t *testing.T) {
			var out bytes.Buffer
			if err := WriteTemplate(&out, system); err != nil {
				t.Fatal(err)
			}
			file, err := excelize.OpenReader(&out)
			if err != nil {
				t.Fatal(err)
			}
			fillIn(t, file, system)
			var filled bytes.Buffer
			if err := file.Write(&filled); err != nil {
				t.Fatal(err)
			}
			read, problems, err := Read(&filled)
			if err != nil || len(problems) > 0 {
				t.Fatal(problems, err)
			}
			jo, oats := read.Crew[1], read.Foods[0]
			if read.Units != system || jo.ID != 2 || jo.Group != read.Groups[0].ID || jo.Appetite != 1 || jo.LoadLimit.Known() || len(jo.Dislikes) != 1 {
				t.Errorf("Jo is %+v", jo)
			}
			if oats.Presence(trip.Gluten) != trip.NotKnown || oats.Storage.TCS != trip.TCSUnknown || !oats.Storage.TCSWhenOpen || oats.Per100g.FatGrams.Known() {
				t.Errorf("what nobody said about oats became known: %+v", oats)
			}
			if low := read.Days[0].Low; low != 10 || read.Settings.DayLow != 0.95 {
				t.Errorf("lowest air %v, day low %v", low, read.Settings.DayLow)
			}
		})
	}
}

func fillIn(t *testing.T, f *excelize.File, system units.System) {
	t.Helper()
	lowest := any(10)
	if system == units.US {
		lowest = 50
	}
	set(t, f, sheetTrip, at(t, f, sheetTrip, "Title", 0), "First trip")
	set(t, f, sheetTrip, at(t, f, sheetTrip, "First day", 0), "2026-07-20")
	row := func(sheet string, below int, values map[string]any) {
		for heading, value := range values {
			set(t, f, sheet, at(t, f, sheet, headingIn(sheet, heading, system), below), value)
		}
	}
	row(sheetGroups, 1, map[string]any{"Name": "All"})
	for i, name := range []string{"Kim", "Jo"} {
		row(sheetCrew, i+1, map[string]any{"Name": name, "Cook group": "all", "Age": 40, "Body mass": "70 kg", "Own kit": "7,5 kg", "Room in the pack": "30 L", "Dislikes": "oats"})
	}
	row(sheetDays, 1, map[string]any{"Distance": "12 km", "Ascent": "400 m", "Descent": "300 m", "Camp at": "900 m", "Lunch at": "900 m", "Lowest air": lowest, "Highest air": "20 °C", "Meals from the packs": "Lunch, Dinner"})
	row(sheetFoods, 1, map[string]any{"Name": "Oats", "Energy per 100 g": 370, "Carbohydrate is": "available"})
	row(sheetBagTypes, 1, map[string]any{"Name": "Zip bag", "Nominal volume": "1 L", "Usable part": "80 %", "Tare": "6 g"})
}

func headingIn(sheet, title string, system units.System) string {
	for _, s := range sheets() {
		for _, h := range s.heads() {
			if s.title() == sheet && h.title == title {
				return h.in(system)
			}
		}
	}
	return title
}

func TestTypedTextNeverBecomesAFormula(t *testing.T) {
	made := sample()
	made.Title = "=HYPERLINK(\"x\")"
	made.Crew[0].Name = "+Jo"
	made.Crew[1].Notes = "@SUM(A1)\n-2\t_x0041_x0042_ __x000a_ &<>\"' _x000D_"
	made.Crew[2].Medicine = "-1+1"
	for _, system := range systems {
		data := written(t, made, system)
		file, err := excelize.OpenReader(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		for _, sheet := range file.GetSheetList() {
			rows, err := file.GetRows(sheet)
			if err != nil {
				t.Fatal(err)
			}
			for i, row := range rows {
				for j := range row {
					if formula, _ := file.GetCellFormula(sheet, cellName(j, i+1)); formula != "" {
						t.Errorf("%s %s holds the formula %s", sheet, cellName(j, i+1), formula)
					}
				}
			}
		}
		read, problems, err := Read(bytes.NewReader(data))
		if err != nil || len(problems) > 0 {
			t.Fatal(problems, err)
		}
		if !trip.Equal(made, read) {
			t.Error(firstDifference(reflect.ValueOf(*made), reflect.ValueOf(*read), "trip"))
		}
	}
}

func TestTextThatNoCellHoldsIsAnErrorAndNotCut(t *testing.T) {
	made := sample()
	made.Crew[0].Notes = strings.Repeat("ü", longestText+1)
	var out bytes.Buffer
	if err := Write(&out, made, units.Metric); err == nil || !strings.Contains(err.Error(), "Crew") || out.Len() > 0 {
		t.Errorf("error %v, %d bytes", err, out.Len())
	}
}

func TestEveryColumnIsExplained(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range sheets() {
		if s.purpose() == "" || seen[s.title()] || len([]rune(s.title())) > 31 {
			t.Errorf("sheet %q: no purpose, or a name that is taken or too long", s.title())
		}
		seen[s.title()] = true
		titles, fields := map[string]bool{}, map[string]bool{}
		for _, h := range s.heads() {
			if h.help == "" || len([]rune(h.help)) > longestPrompt || len([]rune(h.title)) > longestPromptTitle || h.allowed(newScope()) == "" {
				t.Errorf("%s, %s: help, or the words for what is allowed, are missing or too long", s.title(), h.title)
			}
			if titles[wordKey(h.title)] || fields[h.field] && h.field != "allergens" && h.field != "diets" {
				t.Errorf("%s, %s is there twice", s.title(), h.title)
			}
			titles[wordKey(h.title)], fields[h.field] = true, true
		}
	}
}
