package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"sumpter/app/demo"
	"sumpter/app/tripfile"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/exporter/print/printtest"
	"sumpter/exporter/summary"
	"sumpter/exporter/tables"
)

// demoFile writes the demo trip by the command and gives its path.
func demoFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "club.trip")
	if r := call(t, "demo", path); r.code != fine || r.err != "" {
		t.Fatalf("demo: %+v", r)
	}
	return path
}

func demoPlan(t *testing.T) *plan.Plan {
	t.Helper()
	made := demo.Trip()
	p, err := plan.Make(context.Background(), &made, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// tripOf writes a trip file for a test.
func tripOf(t *testing.T, made trip.Trip) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "a.trip")
	file, err := tripfile.Create(path, &made)
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestPlanShowsTheFiguresOfThePlan(t *testing.T) {
	p := demoPlan(t)
	r := call(t, "plan", demoFile(t))
	if r.code != fine || r.err != "" {
		t.Fatalf("exit %d, %s", r.code, r.err)
	}
	for _, line := range summary.Lines(p) {
		if !strings.Contains(r.out, line.Value) || !strings.Contains(r.out, line.More) {
			t.Errorf("nothing says %+v", line)
		}
	}
	for _, member := range p.Trip.Crew {
		if !strings.Contains(r.out, "  "+member.Name+" ") {
			t.Errorf("nothing of %s", member.Name)
		}
	}
	if first := p.Findings[0].What.String(); !strings.Contains(r.out, first) {
		t.Errorf("the worst finding is missing: %s", first)
	}
}

func TestPlanInUSUnits(t *testing.T) {
	made := demo.Trip()
	made.Units = "us"
	r := call(t, "plan", tripOf(t, made))
	if r.code != fine || !strings.Contains(r.out, " lb") || strings.Contains(r.out, " kg") {
		t.Errorf("exit %d:\n%s", r.code, r.out)
	}
}

func TestPlanJSONIsThePlan(t *testing.T) {
	p := demoPlan(t)
	r := call(t, "plan", demoFile(t), "--json")
	var got struct {
		Title string
		Bags  struct {
			Bags []struct {
				Key  string
				Food float64 `json:"food_g"`
			}
		}
		Rounds int
	}
	if err := json.Unmarshal([]byte(r.out), &got); err != nil || r.code != fine {
		t.Fatalf("exit %d, %v", r.code, err)
	}
	if got.Title != p.Trip.Title || got.Rounds != p.Rounds || len(got.Bags.Bags) != len(p.Bags.Bags) {
		t.Errorf("title %q, %d rounds, %d bags", got.Title, got.Rounds, len(got.Bags.Bags))
	}
	for i, bag := range p.Bags.Bags {
		if got.Bags.Bags[i].Key != bag.Key || got.Bags.Bags[i].Food != bag.Food.Grams() {
			t.Errorf("bag %d is %+v, want %s with %v", i, got.Bags.Bags[i], bag.Key, bag.Food)
		}
	}
}

func TestExportWritesEveryPaperAndSaysWhatItIsFor(t *testing.T) {
	path, folder := demoFile(t), filepath.Join(t.TempDir(), "papers")
	r := call(t, "export", path, folder)
	if r.code != fine || r.err != "" {
		t.Fatalf("exit %d, %s", r.code, r.err)
	}
	told := 0
	for _, line := range lines(r.out) {
		name, what, ok := strings.Cut(strings.TrimSpace(line), "  ")
		if !ok {
			continue
		}
		told++
		if info, err := os.Stat(filepath.Join(folder, name)); err != nil || info.Size() == 0 || strings.TrimSpace(what) == "" {
			t.Errorf("%q: %v", line, err)
		}
	}
	if told < 20 {
		t.Errorf("%d papers told of:\n%s", told, r.out)
	}
	checkBagTable(t, filepath.Join(folder, "tables", "bags.csv"))
	if again := call(t, "export", path, folder); again.code != wrongUse || len(lines(again.err)) != told {
		t.Errorf("a second export: exit %d, %d lines for %d files", again.code, len(lines(again.err)), told)
	}
}

// checkBagTable adds up the masses of the bags in the table of bags.
func checkBagTable(t *testing.T, path string) {
	t.Helper()
	records, err := csv.NewReader(strings.NewReader(read(t, path))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	p := demoPlan(t)
	table := tables.From(p).Bags
	at, sum, want := table.Column("mass"), 0.0, 0.0
	for _, record := range records[1:] {
		grams, err := strconv.ParseFloat(record[at], 64)
		if err != nil {
			t.Fatal(err)
		}
		sum += grams
	}
	for _, bag := range p.Bags.Bags {
		want += bag.Mass().Grams()
	}
	if diff := sum - want; diff > 0.5 || diff < -0.5 {
		t.Errorf("the bags in the table weigh %.1f g, in the plan %.1f g", sum, want)
	}
}

// What is printed speaks the language that is asked for, or that of the system.
func TestExportSpeaksTheLanguageAskedFor(t *testing.T) {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANGUAGE"} {
		t.Setenv(name, "")
	}
	path := demoFile(t)
	for _, c := range []struct {
		system string
		flags  []string
		want   string
	}{
		{"de_AT.UTF-8", nil, "Einkaufsliste"},
		{"en_GB.UTF-8", []string{"--language", "de"}, "Einkaufsliste"},
		{"de_AT.UTF-8", []string{"--language", "en"}, "Shopping list"},
		{"fr_FR.UTF-8", nil, "Shopping list"},
		{"C", nil, "Shopping list"},
	} {
		t.Setenv("LANG", c.system)
		folder := filepath.Join(t.TempDir(), "papers")
		if r := call(t, append([]string{"export", path, folder}, c.flags...)...); r.code != fine || r.err != "" {
			t.Fatalf("%+v: exit %d, %s", c, r.code, r.err)
		}
		if words := printtest.Words(t, []byte(read(t, filepath.Join(folder, "print", "shopping-list.pdf")))); !strings.Contains(words, c.want) {
			t.Errorf("%+v: it says %q", c, words[:min(200, len(words))])
		}
	}
	if r := call(t, "export", path, filepath.Join(t.TempDir(), "papers"), "--language", "tlh"); r.code != wrongUse || !strings.Contains(r.err, "de, en") {
		t.Errorf("an unknown language: %+v", r)
	}
}

func TestExportIsTheSameTwice(t *testing.T) {
	path, folder := demoFile(t), filepath.Join(t.TempDir(), "papers")
	call(t, "export", path, folder)
	before := contents(t, folder)
	if r := call(t, "export", path, folder, "--force"); r.code != fine {
		t.Fatalf("%+v", r)
	}
	for name, text := range contents(t, folder) {
		if before[name] != text {
			t.Errorf("%s differs", name)
		}
	}
}

// contents reads all files below a folder.
func contents(t *testing.T, folder string) map[string]string {
	t.Helper()
	found := map[string]string{}
	err := filepath.WalkDir(folder, func(path string, entry os.DirEntry, err error) error {
		if err == nil && !entry.IsDir() {
			found[path] = read(t, path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func TestCheckTellsOfSeriousFindings(t *testing.T) {
	good := call(t, "check", demoFile(t))
	if good.code != fine || good.err != "" || !strings.Contains(good.out, "because: ") {
		t.Errorf("the demo trip: exit %d, %s", good.code, good.err)
	}
	made := demo.Trip()
	for i := range made.Crew {
		made.Crew[i].PackRoom = 0 // nobody has room for anything
	}
	bad := call(t, "check", tripOf(t, made))
	if bad.code != seriousFindings || len(lines(bad.err)) != 1 || !strings.Contains(bad.out, "must fix") {
		t.Errorf("no room: exit %d, %q", bad.code, bad.err)
	}
}

func TestBadInput(t *testing.T) {
	folder := t.TempDir()
	text := filepath.Join(folder, "text.trip")
	write(t, text, "not a trip")
	empty := filepath.Join(folder, "empty.trip")
	write(t, empty, "")
	missing := filepath.Join(folder, "missing.trip")
	out := filepath.Join(folder, "papers")
	before := contents(t, folder)
	for _, path := range []string{text, empty, missing, folder} {
		for _, args := range [][]string{{"plan", path}, {"plan", path, "--json"}, {"check", path}, {"export", path, out}} {
			r := call(t, args...)
			if r.code != badInput || r.out != "" || len(lines(r.err)) != 1 || !strings.Contains(r.err, path) {
				t.Errorf("%v: %+v, want exit 3 and one line with the name", args, r)
			}
		}
	}
	after := contents(t, folder)
	if len(after) != len(before) || names(t, folder) != "empty.trip text.trip" {
		t.Errorf("bad input left %s", names(t, folder))
	}
}

func TestATripThatCannotBePlannedSaysEachFault(t *testing.T) {
	made := demo.Trip()
	made.Crew[0].BodyMass = 0
	made.Crew[1].BodyMass = 0
	folder := filepath.Join(t.TempDir(), "papers")
	for _, args := range [][]string{{"plan"}, {"check"}, {"export", folder}} {
		args = append([]string{args[0], tripOf(t, made)}, args[1:]...)
		r := call(t, args...)
		if r.code != badInput || r.out != "" || len(lines(r.err)) < 2 {
			t.Errorf("%s: exit %d, %q", args[0], r.code, r.err)
		}
	}
	if _, err := os.Stat(folder); err == nil {
		t.Error("export made a folder all the same")
	}
}

func TestDemoNeverReplacesWithoutForce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mine.trip")
	write(t, path, "mine")
	if r := call(t, "demo", path); r.code != wrongUse || read(t, path) != "mine" {
		t.Errorf("%+v", r)
	}
	if r := call(t, "demo", path, "--force"); r.code != fine {
		t.Errorf("with force: %+v", r)
	}
	if r := call(t, "plan", path); r.code != fine {
		t.Errorf("the replaced file: %+v", r)
	}
	if left := names(t, filepath.Dir(path)); left != "mine.trip" {
		t.Errorf("left %s", left)
	}
}

func TestPlanLeavesTheTripFileAlone(t *testing.T) {
	path := demoFile(t)
	before := read(t, path)
	call(t, "plan", path)
	call(t, "check", path)
	if read(t, path) != before {
		t.Error("the file changed")
	}
	if left := names(t, filepath.Dir(path)); left != "club.trip" {
		t.Errorf("beside the file is now %s", left)
	}
}

func TestInterrupted(t *testing.T) {
	path, folder := demoFile(t), filepath.Join(t.TempDir(), "papers")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, args := range [][]string{{"plan", path}, {"check", path}, {"export", path, folder}} {
		r := callWith(ctx, args...)
		if r.code != interrupted || r.out != "" || r.err != "sumpter: interrupted\n" {
			t.Errorf("%s: %+v", args[0], r)
		}
	}
	if _, err := os.Stat(folder); err == nil {
		t.Error("an interrupted export made its folder")
	}
}

func TestAFullOrForbiddenPlaceIsAFailure(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("folders are protected another way there")
	}
	path := filepath.Join(t.TempDir(), "no", "such", "folder", "a.trip")
	if r := call(t, "demo", path); r.code != failed || len(lines(r.err)) != 1 {
		t.Errorf("%+v", r)
	}
}

func TestProgressShowsStagesToWhoWatches(t *testing.T) {
	var out, err bytes.Buffer
	c := console{out: &out, err: &err, live: true}
	if code := run(context.Background(), []string{"plan", demoFile(t)}, c); code != 0 {
		t.Fatalf("exit %d", code)
	}
	if !strings.Contains(err.String(), "\r") || !strings.HasSuffix(err.String(), "\r\x1b[K") || strings.Contains(out.String(), "\x1b") {
		t.Errorf("stderr %q", err.String())
	}
}

func TestTemplateIsAWorkbookOfBothSystems(t *testing.T) {
	folder := t.TempDir()
	metric, us := filepath.Join(folder, "metric.xlsx"), filepath.Join(folder, "us.xlsx")
	for _, args := range [][]string{{"template", metric}, {"template", us, "--us"}} {
		if r := call(t, args...); r.code != fine || r.err != "" || !strings.Contains(r.out, args[1]) {
			t.Fatalf("%v: %+v", args, r)
		}
	}
	if read(t, metric) == read(t, us) || !strings.HasPrefix(read(t, us), "PK") {
		t.Error("the templates are the same, or no workbooks")
	}
	if r := call(t, "template", metric); r.code != wrongUse {
		t.Errorf("again: %+v", r)
	}
}

// What export writes of the trip, import reads back to the same plan.
func TestImportOfWhatWasExported(t *testing.T) {
	path, folder := demoFile(t), filepath.Join(t.TempDir(), "papers")
	if r := call(t, "export", path, folder); r.code != fine {
		t.Fatalf("%+v", r)
	}
	want := call(t, "plan", path, "--json").out
	for _, name := range []string{"trip.xlsx", "trip.json"} {
		copied := filepath.Join(t.TempDir(), "copy.trip")
		if r := call(t, "import", filepath.Join(folder, name), copied); r.code != fine || r.err != "" {
			t.Fatalf("%s: %+v", name, r)
		}
		if got := call(t, "plan", copied, "--json").out; got != want {
			t.Errorf("%s: another plan of %d bytes, want %d", name, len(got), len(want))
		}
	}
}

func TestImportOfFaultyFiles(t *testing.T) {
	folder := t.TempDir()
	empty, text, document := filepath.Join(folder, "a.json"), filepath.Join(folder, "a.txt"), filepath.Join(folder, "b.json")
	write(t, empty, "")
	write(t, text, "hello")
	write(t, document, `{"title": 7, "crew": "nobody", "wheels": 4}`)
	before := names(t, folder)
	for in, faults := range map[string]int{empty: 1, text: 1, filepath.Join(folder, "none.xlsx"): 1, folder: 1, document: 3} {
		r := call(t, "import", in, filepath.Join(folder, "out.trip"))
		if r.code != badInput || r.out != "" || len(lines(r.err)) < faults {
			t.Errorf("%s: %+v, want exit 3 and a line for each of %d faults", in, r, faults)
		}
		for _, line := range lines(r.err) {
			if !strings.Contains(line, in) {
				t.Errorf("%s: the line %q does not name the file", in, line)
			}
		}
	}
	if after := names(t, folder); after != before {
		t.Errorf("faulty files left %s", after)
	}
}
