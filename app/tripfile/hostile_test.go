package tripfile

import (
	"context"
	"database/sql"
	"os"
	"path/filepath"
	"testing"
)

// tampered runs SQL on a trip file as another program could.
func tampered(t *testing.T, statements ...string) string {
	t.Helper()
	path, _ := closedFile(t)
	db, err := sql.Open("sqlite", "file:"+path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for _, statement := range statements {
		if _, err := db.Exec(statement); err != nil {
			t.Fatalf("%s: %v", statement, err)
		}
	}
	return path
}

const rewriteSchema = "PRAGMA writable_schema = 1"

func TestTamperedFilesAreRefused(t *testing.T) {
	for name, statements := range map[string][]string{
		"a trigger":             {"CREATE TRIGGER steal AFTER UPDATE ON member BEGIN DELETE FROM food; END"},
		"a view":                {"CREATE VIEW looks AS SELECT * FROM member"},
		"an extra table":        {"CREATE TABLE extra (id INTEGER)"},
		"an index":              {"CREATE INDEX quick ON member (name)"},
		"statistics":            {"ANALYZE"},
		"a virtual table":       {"CREATE VIRTUAL TABLE words USING fts5(body)"},
		"a view for a table":    {"PRAGMA foreign_keys = 0", "DROP TABLE pin", "CREATE VIEW pin AS SELECT 1 AS place, 'x' AS bag, NULL AS gear, NULL AS member, 0 AS forbid"},
		"a table less":          {"DROP TABLE pin"},
		"a column more":         {"ALTER TABLE pin ADD COLUMN why TEXT"},
		"a column renamed":      {"ALTER TABLE pin RENAME COLUMN bag TO sack"},
		"a generated column":    {"ALTER TABLE pin ADD COLUMN why TEXT GENERATED ALWAYS AS (upper(bag)) VIRTUAL"},
		"checks taken out":      {rewriteSchema, "UPDATE sqlite_schema SET sql = replace(sql, ' CHECK (forbid IN (0, 1))', '') WHERE name = 'pin'"},
		"a schema of nonsense":  {rewriteSchema, "UPDATE sqlite_schema SET sql = 'CREATE TABLE pin (((' WHERE name = 'pin'"},
		"two tables on a page":  {rewriteSchema, "UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE name = 'gear') WHERE name = 'pin'"},
		"a table on no page":    {rewriteSchema, "UPDATE sqlite_schema SET rootpage = 99999 WHERE name = 'pin'"},
		"text for a number":     looseThen("UPDATE cook_group SET place = 'first'"),
		"a number for text":     looseThen("UPDATE cook_group SET name = 5"),
		"bytes for text":        looseThen("UPDATE cook_group SET name = x'00ff'"),
		"nothing for text":      looseThen("UPDATE cook_group SET name = NULL"),
		"a member of no group":  {"PRAGMA foreign_keys = 0", "UPDATE member SET cook_group = 4711"},
		"an orphan":             {"PRAGMA foreign_keys = 0", "DELETE FROM food WHERE id = (SELECT min(id) FROM food)"},
		"no trip":               {"PRAGMA foreign_keys = 0", "DELETE FROM settings", "DELETE FROM trip"},
		"a date of nonsense":    {"UPDATE trip SET start = 'tomorrow'"},
		"an age beyond numbers": {"UPDATE member SET age_years = 9e18", "UPDATE fuel_container SET place = place + 7"},
	} {
		t.Run(name, func(t *testing.T) {
			path := tampered(t, statements...)
			for opener, open := range map[string]func(string) (*File, error){"Open": Open, "OpenReadOnly": OpenReadOnly} {
				file, err := open(path)
				if err == nil { // what only the trip's own rules forbid is seen when it is read
					_, err = file.Read(context.Background())
					file.Close()
				}
				if err == nil {
					t.Fatalf("%s took it", opener)
				}
				wantError(t, err, ErrDamaged)
			}
		})
	}
}

// looseThen changes a row while its table is not strict, then declares the
// table strict again, as if nothing had happened.
func looseThen(statement string) []string {
	return []string{
		rewriteSchema,
		"UPDATE sqlite_schema SET sql = replace(replace(replace(sql, 'STRICT', ''), 'NOT NULL', ''), 'TEXT', '') WHERE name = 'cook_group'",
		"PRAGMA writable_schema = RESET",
		statement,
		rewriteSchema,
		"UPDATE sqlite_schema SET sql = '" + strictGroups + "' WHERE name = 'cook_group'",
	}
}

const strictGroups = "CREATE TABLE cook_group (\n  id INTEGER PRIMARY KEY,\n  name TEXT NOT NULL,\n  place INTEGER NOT NULL\n) STRICT"

// Nothing that a file holds may end the program, and what is refused stays as
// it was.
func FuzzOpen(f *testing.F) {
	_, good := closedFile(f)
	for _, at := range []int{0, 16, 18, 28, 40, 52, 56, 60, 68, 96, 100, 105, 4096, 5000, len(good) - 1} {
		f.Add(at, byte(0xff), at+1, byte(0x01), len(good))
	}
	f.Add(0, byte('S'), 1, byte('Q'), 5000)
	f.Fuzz(func(t *testing.T, at int, to byte, at2 int, to2 byte, length int) {
		spoilt := append([]byte{}, good...)
		for i, b := range map[int]byte{at: to, at2: to2} {
			if i >= 0 {
				spoilt[i%len(spoilt)] = b
			}
		}
		if length >= 0 {
			spoilt = spoilt[:min(length, len(spoilt))]
		}
		path := filepath.Join(t.TempDir(), "fuzz.trip")
		if err := os.WriteFile(path, spoilt, 0o600); err != nil {
			t.Fatal(err)
		}
		file, err := OpenReadOnly(path)
		if err != nil {
			return
		}
		defer file.Close()
		content, err := file.Read(context.Background())
		if err != nil {
			return
		}
		file.Close()
		if file, err = Open(path); err != nil {
			return
		}
		defer file.Close()
		content.Title += "!"
		if err := file.Save(context.Background(), content); err == nil {
			wantContent(t, file, content)
		}
	})
}
