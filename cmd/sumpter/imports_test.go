package main

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Data flows one way: trip file, trip, plan, screens and exports. These tests
// read the imports of every package and say which rule a new one breaks.

const module = "sumpter/"

// listed is what `go list -json` tells of a package.
type listed struct {
	ImportPath string
	Standard   bool
	Imports    []string
	Deps       []string
}

// side gives the top folder of one of our packages.
func side(path string) (string, bool) {
	rest, ours := strings.CutPrefix(path, module)
	if !ours {
		return "", false
	}
	top, _, _ := strings.Cut(rest, "/")
	return top, true
}

// left lists, for each top folder, the top folders it may import.
var left = map[string][]string{
	"domain":   {"domain"},
	"exporter": {"domain", "exporter"},
	"app":      {"domain", "exporter", "app"},
	"cmd":      {"domain", "exporter", "app", "cmd"},
}

// uiPackages are the only ones under app/ that may know the toolkit.
var uiPackages = []string{"app/window", "app/screens", "app/grid", "app/charts", "app/look", "app/written"}

func TestImportsPointOneWay(t *testing.T) {
	packages := listPackages(t)
	if len(packages) < 15 {
		t.Fatalf("go list shows %d of our packages: the test looks in the wrong place", len(packages))
	}
	for _, p := range packages {
		top, _ := side(p.ImportPath)
		for _, imported := range p.Imports {
			if target, ours := side(imported); ours && !slices.Contains(left[top], target) {
				t.Errorf("%s imports %s: %s/ may import only %v", p.ImportPath, imported, top, left[top])
			}
		}
	}
}

func TestDomainKnowsNoFilesClockToolkitOrDatabase(t *testing.T) {
	for _, p := range listPackages(t) {
		if top, _ := side(p.ImportPath); top != "domain" || isTestSupport(p.ImportPath) {
			continue
		}
		for _, imported := range p.Imports {
			if _, ours := side(imported); !ours && strings.Contains(imported, ".") {
				t.Errorf("%s imports %s: domain/ is the standard library and itself", p.ImportPath, imported)
			}
			if slices.Contains([]string{"os", "time", "io/fs", "path/filepath", "net", "math/rand", "database/sql", "log", "unsafe"}, imported) {
				t.Errorf("%s imports %s: a plan depends on the trip alone, not on files, clocks or chance", p.ImportPath, imported)
			}
		}
	}
}

// What people entrust to a trip stays on their machine: none of our packages
// can open a connection. Names and addresses of the net package that take
// texts apart, as net/url does, are no connection.
func TestNothingGoesOverANetwork(t *testing.T) {
	for _, p := range listPackages(t) {
		for _, imported := range p.Imports {
			if imported == "net" || strings.HasPrefix(imported, "net/") && imported != "net/url" || strings.HasPrefix(imported, "golang.org/x/net") {
				t.Errorf("%s imports %s: nothing goes over any network", p.ImportPath, imported)
			}
		}
	}
}

func TestOnlyTheCommandImportsTheWindowDriver(t *testing.T) {
	for _, p := range listPackages(t) {
		top, _ := side(p.ImportPath)
		for _, dependency := range p.Deps {
			switch {
			case top != "cmd" && (dependency == "fyne.io/fyne/v2/app" || strings.HasPrefix(dependency, "github.com/go-gl/")):
				t.Errorf("%s reaches %s: only cmd/ may, so that all else builds without cgo", p.ImportPath, dependency)
			case top != "cmd" && strings.HasPrefix(dependency, "fyne.io/") && !isUI(p.ImportPath):
				t.Errorf("%s reaches %s: of app/ only %v know the toolkit", p.ImportPath, dependency, uiPackages)
			case (top == "domain" || top == "exporter") && (dependency == "database/sql" || strings.HasPrefix(dependency, "modernc.org/sqlite")):
				t.Errorf("%s reaches %s: only app/tripfile knows the database", p.ImportPath, dependency)
			}
		}
	}
}

func isUI(path string) bool {
	rest := strings.TrimPrefix(path, module)
	return slices.ContainsFunc(uiPackages, func(ui string) bool { return rest == ui || strings.HasPrefix(rest, ui+"/") })
}

// isTestSupport names the packages that only tests import.
func isTestSupport(path string) bool {
	return strings.HasSuffix(path, "test") || strings.HasSuffix(path, "/checkvalues")
}

func listPackages(t *testing.T) []listed {
	t.Helper()
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	command := exec.Command("go", "list", "-json=ImportPath,Standard,Imports,Deps", "./...")
	command.Dir = root
	command.Env = append(os.Environ(), "CGO_ENABLED=0")
	out, err := command.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var packages []listed
	decoder := json.NewDecoder(strings.NewReader(string(out)))
	for {
		var p listed
		if err := decoder.Decode(&p); errors.Is(err, io.EOF) {
			return packages
		} else if err != nil {
			t.Fatalf("go list: %v", err)
		}
		packages = append(packages, p)
	}
}
