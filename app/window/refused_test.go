package window

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"sumpter/app/window/translation"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// wordsOfChecks says which arguments of what checks a trip are words for people:
// what is checked, its unit, what to take instead, and the list it stands in.
var wordsOfChecks = map[string][]int{
	"within": {1, 5}, "above": {1, 4}, "count": {1}, "line": {1}, "notes": {1}, "text": {1}, "date": {1}, "setting": {1, 3}, "price": {1},
	"missing": {1, 3}, "before": {1, 4}, "swapped": {1, 4}, "fact": {1}, "size": {0, 1}, "at": {0}, "measure": {1},
	"word": {2}, "distinct": {2}, "known": {1, 2}, "named": {1, 2},
}

// refusedWords are the words of refusals that are no literals of a prose.Word.
func refusedWords() []string {
	list := []string{"trip", "settings", "posting", "menu", "pins"}
	for _, meal := range trip.Meals() {
		list = append(list, "share of "+string(meal))
	}
	paths, _ := filepath.Glob("../../domain/trip/*.go")
	for _, path := range paths {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil || strings.HasSuffix(path, "_test.go") {
			continue
		}
		ast.Inspect(file, func(node ast.Node) bool {
			switch e := node.(type) {
			case *ast.CallExpr:
				name := ""
				switch f := e.Fun.(type) {
				case *ast.SelectorExpr:
					if on, ok := f.X.(*ast.Ident); ok && on.Name == "c" {
						name = f.Sel.Name
					}
				case *ast.Ident:
					name = f.Name
				}
				for _, at := range wordsOfChecks[name] {
					if at < len(e.Args) {
						if text, ok := literal(e.Args[at]); ok {
							list = append(list, text)
						}
					}
				}
			case *ast.CompositeLit: // what is checked in a row: a field and what it is called
				if _, typed := e.Type.(*ast.Ident); e.Type == nil && !typed && len(e.Elts) > 2 {
					first, isField := literal(e.Elts[0])
					if text, ok := literal(e.Elts[1]); ok && isField && strings.Contains(first, ".") {
						list = append(list, text)
					}
				}
			}
			return true
		})
	}
	slices.Sort(list)
	return slices.DeleteFunc(slices.Compact(list), func(word string) bool { return word == "" })
}

// What a trip refuses is said in the reader's language, whole.
func TestARefusedEditSpeaksGerman(t *testing.T) {
	if n := len(refusedWords()); n < 120 {
		t.Fatalf("%d words were found", n)
	}
	reader := translation.Reader("de")
	reader.Units = units.Metric
	made := trip.New("Walk", 20_000)
	made.Crew[0].BodyMass = 900 * units.Kilogram
	made.Crew[0].Name = "Jo"
	problems := trip.Validate(made)
	if len(problems) != 1 {
		t.Fatalf("%v", problems)
	}
	if said, want := problems[0].Text().In(reader), "Leute 1 (Jo): Körpergewicht: 900 kg; erlaubt: von 15 bis 300 kg. Trag ein: Körpergewicht, von 15 bis 300 kg."; said != want {
		t.Errorf("said %q, want %q", said, want)
	}
	if said := problems[0].String(); !strings.Contains(said, "crew 1 (Jo): body mass is 900 kg; allowed: from ") {
		t.Errorf("in English %q", said)
	}
}
