package tables

import (
	"bytes"
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/exporter/plantest"
)

func asCSV(t interface{ Fatal(...any) }, table *Table) string {
	var buffer bytes.Buffer
	if err := WriteCSV(&buffer, table); err != nil {
		t.Fatal(err)
	}
	return buffer.String()
}

// The rows of topic csv in testdata/check_values.csv: RFC 4180 section 2 and
// OWASP, CSV injection.
func TestCheckValues(t *testing.T) {
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
		if record[0] != "csv" {
			continue
		}
		input, want := strings.TrimPrefix(record[2], "text cell: "), record[3]
		table := &Table{Columns: []Column{{Heading: "h"}}, Rows: [][]Value{{words(input)}}}
		if got := asCSV(t, table); got != "h\r\n"+want+"\r\n" {
			t.Errorf("%s: %q is written %q, want %q", record[1], input, got, want)
		}
		checked++
	}
	if checked != 7 {
		t.Errorf("checked %d rows, want 7", checked)
	}
}

func TestCSVValues(t *testing.T) {
	table := &Table{
		Columns: []Column{{Heading: "n"}, {Heading: "d"}, {Heading: "o"}, {Heading: "=t"}},
		Rows: [][]Value{
			{figure(-5), dated(plantest.Start), open(), words("a\nb")},
			{figure(0.1 + 0.2), dated(0), open(), words("\ttab")},
			{figure(-0.00001), dated(0), open(), words("")},
		},
	}
	want := "n,d,o,'=t\r\n-5,2026-07-20,,\"a\r\nb\"\r\n0.3,not set,,'\ttab\r\n0,not set,,\r\n"
	if got := asCSV(t, table); got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Whatever is typed comes back from a reader of CSV as it was, one apostrophe
// taken off where it was put on.
func TestTextComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := strings.ReplaceAll(rapid.String().Draw(t, "text"), "\r", "")
		table := &Table{Columns: []Column{{Heading: "h"}, {Heading: "i"}}, Rows: [][]Value{{words(text), words("end")}}}
		records, err := csv.NewReader(strings.NewReader(asCSV(t, table))).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		got := records[1][0]
		if guard(text) != text {
			got = strings.TrimPrefix(got, "'")
		}
		if got != text {
			t.Fatalf("%q came back as %q", text, got)
		}
		if first := records[1][0]; first != "" && strings.ContainsRune("=+-@\t", rune(first[0])) {
			t.Fatalf("%q would run as a formula", first)
		}
	})
}

func TestEveryTableIsRegularCSV(t *testing.T) {
	for _, table := range From(plantest.Small()).List() {
		records, err := csv.NewReader(strings.NewReader(asCSV(t, table))).ReadAll()
		if err != nil || len(records) != len(table.Rows)+1 {
			t.Errorf("%s: %d records (%v), want %d", table.Name, len(records), err, len(table.Rows)+1)
		}
	}
}
