package tripbook

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// zeros gives as many bytes as are asked for.
type zeros struct{}

func (zeros) Read(p []byte) (int, error) {
	clear(p)
	return len(p), nil
}

// bomb is a small zip with parts that unpack to size blanks each.
func bomb(t testing.TB, parts int, size int64) []byte {
	t.Helper()
	var out bytes.Buffer
	archive := zip.NewWriter(&out)
	for i := range parts {
		part, err := archive.Create(fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.CopyN(part, zeros{}, size); err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// lying is a bomb whose directory claims small parts.
func lying(t testing.TB) []byte {
	data := bomb(t, 1, 200<<20)
	directory := bytes.LastIndex(data, []byte("PK\x01\x02"))
	binary.LittleEndian.PutUint32(data[directory+24:], 1000)
	return data
}

func manyParts(t testing.TB) []byte {
	t.Helper()
	var out bytes.Buffer
	archive := zip.NewWriter(&out)
	for i := range maxParts + 1 {
		if _, err := archive.Create(fmt.Sprintf("xl/media/%d.png", i)); err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// Each hostile file is refused with a reason, and with little memory.
func TestHostileFilesAreRefusedWithLittleMemory(t *testing.T) {
	good := written(t, sample(), units.Metric)
	cases := []struct {
		name string
		file io.Reader
		says string
	}{
		{"a gigabyte", io.LimitReader(zeros{}, 1<<30), "too large"},
		{"one part that blows up", bytes.NewReader(bomb(t, 1, 200<<20)), "too large"},
		{"many parts that blow up", bytes.NewReader(bomb(t, 10, 20<<20)), "too large"},
		{"a part that claims to be small", bytes.NewReader(lying(t)), "damaged"},
		{"very many parts", bytes.NewReader(manyParts(t)), "too large"},
		{"nothing", strings.NewReader(""), "not a workbook"},
		{"text", strings.NewReader("Name;Age\nJo;40\n"), "not a workbook"},
		{"locked or old", strings.NewReader("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 and so on"), "password"},
		{"an empty zip", bytes.NewReader(bomb(t, 0, 0)), "damaged"},
		{"cut off", bytes.NewReader(good[:len(good)*2/3]), "not a workbook"},
		{"another workbook", bytes.NewReader(otherWorkbook(t)), "none of the sheets"},
		{"entities", bytes.NewReader(withPart(t, good, "xl/worksheets/sheet3.xml", entities)), "damaged"},
		{"a broken sheet", bytes.NewReader(withPart(t, good, "xl/worksheets/sheet3.xml", "<worksheet><sheetData><row r=\"2000000\"><c r=\"A1\"/></row>")), ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			read, problems, err := Read(c.file)
			runtime.ReadMemStats(&after)
			if read != nil || c.says != "" && (err == nil || !strings.Contains(err.Error(), c.says)) || err == nil && len(problems) == 0 {
				t.Errorf("trip %v, problems %v, error %v", read != nil, problems, err)
			}
			if megabytes := (after.TotalAlloc - before.TotalAlloc) >> 20; megabytes > 150 {
				t.Errorf("allocated %d MB in all", megabytes)
			}
		})
	}
}

const entities = `<?xml version="1.0"?><!DOCTYPE w [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>
<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>&b;</t></is></c></row></sheetData></worksheet>`

func otherWorkbook(t testing.TB) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := excelize.NewFile().Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// withPart replaces one part of a workbook.
func withPart(t testing.TB, data []byte, name, content string) []byte {
	t.Helper()
	from, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	to := zip.NewWriter(&out)
	replaced := false
	for _, part := range from.File {
		if part.Name != name {
			if err := to.Copy(part); err != nil {
				t.Fatal(err)
			}
			continue
		}
		replaced = true
		writer, err := to.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := io.WriteString(writer, content); err != nil {
			t.Fatal(err)
		}
	}
	if err := to.Close(); err != nil || !replaced {
		t.Fatal("no part replaced", err)
	}
	return out.Bytes()
}

// One cell in the last row there is, or the last column, costs no more than
// itself, and is not left out unseen.
func TestACellAtTheEndOfASheetDoesNotHurt(t *testing.T) {
	for _, cell := range []string{"A1048576", "XFD3"} {
		data := edited(t, units.Metric, func(f *excelize.File) { set(t, f, sheetGear, cell, "Kettle") })
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, problems, err := Read(bytes.NewReader(data))
		runtime.ReadMemStats(&after)
		if err != nil || len(problems) == 0 || find(problems, sheetGear, cell) == (Problem{}) {
			// A name alone in the last row lacks the rest of its row.
			if find(problems, sheetGear, "B1048576") == (Problem{}) {
				t.Errorf("%s: %v %v", cell, problems, err)
			}
		}
		if megabytes := (after.TotalAlloc - before.TotalAlloc) >> 20; megabytes > 100 {
			t.Errorf("%s: allocated %d MB in all", cell, megabytes)
		}
	}
}

func TestAFailingReaderIsNoShortWorkbook(t *testing.T) {
	gone := errors.New("the disk is gone")
	if _, _, err := Read(io.MultiReader(strings.NewReader("PK"), failing{gone})); !errors.Is(err, gone) {
		t.Error(err)
	}
}

type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }

func FuzzRead(f *testing.F) {
	plain := plainWorkbook(f)
	f.Add(plain, []byte(nil))
	f.Add(bomb(f, 2, 100), []byte(nil))
	f.Add([]byte(nil), []byte(`<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Name</t></is></c><c r="B1" t="str"><v>ID</v></c></row><row r="2"><c r="A2" t="s"><v>0</v></c><c r="B2"><v>1</v></c></row></sheetData></worksheet>`))
	f.Fuzz(func(t *testing.T, data, sheet []byte) {
		if len(sheet) > 0 {
			data = withPart(t, plain, "xl/worksheets/sheet1.xml", string(sheet))
		}
		read, problems, err := Read(bytes.NewReader(data))
		if read == nil && err == nil && !Faulty(problems) {
			t.Fatal("no trip and no reason")
		}
		if read != nil && len(trip.Validate(read)) > 0 {
			t.Fatal("a trip that cannot be planned came through")
		}
	})
}

// plainWorkbook is a small workbook with one of our sheets, so that the fuzzer
// gets through many.
func plainWorkbook(t testing.TB) []byte {
	t.Helper()
	file := excelize.NewFile()
	if err := file.SetSheetName("Sheet1", sheetGroups); err != nil {
		t.Fatal(err)
	}
	set(t, file, sheetGroups, "A1", "Name")
	set(t, file, sheetGroups, "A2", "All")
	var out bytes.Buffer
	if err := file.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// FuzzCell puts any text into cells of each kind.
func FuzzCell(f *testing.F) {
	for _, text := range []string{"1,5", "20.07.2026", "yes", "peanuts (severe); milk", `"a;b";c`, "160 lb", "1e999", "=1", "\x00"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s := newScope()
		s.currency = "EUR"
		for _, sheet := range sheets() {
			heads := sheet.heads()
			g := &grid{sheet: sheet.title(), heads: heads, single: sheet.downwards(), rows: []gridRow{{number: 2}}}
			for j, h := range heads {
				g.columns = append(g.columns, gridColumn{place: j, unit: h.unit(units.US)})
				g.rows[0].cells = append(g.rows[0].cells, text)
			}
			r := &reading{scope: s, trip: &trip.Trip{}, faulty: map[origin]bool{}, origins: map[string]origin{}}
			sheet.read(g, r)
			for _, p := range r.problems {
				if p.Sheet == "" || p.Cell == "" || p.Wrong == "" || p.Allowed == "" {
					t.Fatalf("%q: half a problem: %v", text, p)
				}
			}
		}
	})
}
