package importer

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
	"sumpter/exporter/tripbook"
	"sumpter/exporter/tripjson"
)

func asJSON(t testing.TB, made *trip.Trip) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := tripjson.Write(&out, made); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func asWorkbook(t testing.TB, made *trip.Trip) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := tripbook.Write(&out, made, units.US); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func saved(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestBothKindsGiveTheSameTrip(t *testing.T) {
	made := triptest.Large(4, 3, 5)
	for name, data := range map[string][]byte{
		"trip.xlsx": asWorkbook(t, made), "trip.json": asJSON(t, made),
		"TRIP.XLSX": asWorkbook(t, made), "download": asWorkbook(t, made), // the contents tell the kind
		"marked.json": append([]byte("\xef\xbb\xbf\n"), asJSON(t, made)...),
		"named.xlsx":  asJSON(t, made),
	} {
		read, problems, err := ReadFile(saved(t, name, data))
		if err != nil || len(problems) > 0 || !trip.Equal(made, read) {
			t.Errorf("%s: same trip %v, problems %v, error %v", name, read != nil && trip.Equal(made, read), problems, err)
		}
	}
}

// A trip that can be read but not planned is refused, with its place.
func TestATripThatCannotBePlannedDoesNotComeIn(t *testing.T) {
	made := triptest.Large(4, 3, 5)
	made.Crew[1].Age = 300
	made.Foods[0].RefuseShare = 1.5

	read, problems, err := Read("trip.json", bytes.NewReader(asJSON(t, made)))
	if read != nil || err != nil || len(problems) != 2 {
		t.Fatalf("trip %v, problems %v, error %v", read != nil, problems, err)
	}
	if !strings.HasPrefix(problems[0].Path, "crew[1].age_years") || !strings.Contains(problems[0].String(), "300") {
		t.Errorf("got %v", problems[0])
	}

	read, problems, err = Read("trip.xlsx", bytes.NewReader(asWorkbook(t, made)))
	if read != nil || err != nil || len(problems) != 2 {
		t.Fatalf("trip %v, problems %v, error %v", read != nil, problems, err)
	}
	if p := problems[0]; p.Sheet != "Crew" || p.Cell != "D3" || p.Found != "300" || p.Allowed == "" || !strings.HasPrefix(p.String(), `sheet Crew, cell D3: "300" `) {
		t.Errorf("got %v", p)
	}
}

func TestFaultsOfTheContentsAreTold(t *testing.T) {
	text := strings.Replace(string(asJSON(t, triptest.Large(2, 2, 1))), `"strength": 1`, `"strength": "much"`, 1)
	read, problems, err := Read("x.json", strings.NewReader(text))
	const want = `crew[0].strength: "much" is not allowed here; allowed: a number`
	if read != nil || err != nil || len(problems) != 1 || problems[0].String() != want {
		t.Errorf("trip %v, problems %v, error %v", read != nil, problems, err)
	}
}

func TestOtherKindsAreRefusedWithAdvice(t *testing.T) {
	cases := []struct{ name, data, says string }{
		{"empty.json", "", "empty"},
		{"old.xls", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", "save it as xlsx"},
		{"sheet.ods", "PK\x03\x04", "save it as xlsx"},
		{"crew.csv", "Name;Age\n", "paste"},
		{"ridge.trip", "SQLite format 3\x00\x10", "open it instead"},
		{"photo.png", "\x89PNG\r\n", "xlsx"},
		{"list.json", "[1, 2]", "trip JSON"},
		{"letter.docx", "PK\x03\x04", "xlsx"},
	}
	for _, c := range cases {
		_, problems, err := ReadFile(saved(t, c.name, []byte(c.data)))
		if !errors.Is(err, ErrUnknownKind) || !strings.Contains(err.Error(), c.says) || !strings.Contains(err.Error(), c.name) || problems != nil {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

func TestFilesThatCannotBeRead(t *testing.T) {
	folder := t.TempDir()
	if _, _, err := ReadFile(filepath.Join(folder, "none.xlsx")); !errors.Is(err, fs.ErrNotExist) {
		t.Error(err)
	}
	if _, _, err := ReadFile(folder); !errors.Is(err, ErrUnknownKind) {
		t.Error(err)
	}
	large := saved(t, "large.json", []byte("{"))
	if err := os.Truncate(large, 100<<20); err != nil {
		t.Fatal(err)
	}
	if _, _, err := ReadFile(large); err == nil || !strings.Contains(err.Error(), "100 MB") {
		t.Error(err)
	}
	broken := errors.New("the disk is gone")
	if _, _, err := Read("x.json", failing{broken}); !errors.Is(err, broken) {
		t.Error(err)
	}
	if _, _, err := Read("x.xlsx", strings.NewReader("PK and no more")); err == nil || errors.Is(err, ErrUnknownKind) {
		t.Error(err)
	}
}

type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }
