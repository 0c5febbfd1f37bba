package written_test

import (
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"pgregory.net/rapid"

	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// speakWithComma makes the toolkit's words those of a language with a decimal
// comma, as the window does with its German.
func speakWithComma(t *testing.T) {
	t.Helper()
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANGUAGE"} {
		t.Setenv(name, "")
	}
	t.Setenv("LANG", "de_DE.UTF-8")
	if err := lang.AddTranslationsForLocale([]byte(`{"decimal-sign": ",", "%s weighs %s.": "%[2]s wiegt %[1]s."}`), fyne.Locale("de")); err != nil {
		t.Fatal(err)
	}
}

func TestNumbersHaveTheReadersSign(t *testing.T) {
	speakWithComma(t)
	for want, got := range map[string]string{
		"12,5":              written.Number(12.5, 1),
		"0":                 written.Number(-0.2, 0),
		"0,00":              written.Number(-0.001, 2),
		"-1,5":              written.Number(-1.5, 1),
		"3":                 written.AtMost(3.0049, 2),
		"3,01":              written.AtMost(3.0051, 2),
		"0,125":             written.Short(0.125),
		"12,5 kg":           written.Quantity(12500*units.Gram, units.Metric),
		"27,6 lb":           written.Quantity(12500*units.Gram, units.US),
		"1,5 km":            written.Quantity(prose.Distance(1500), units.Metric),
		"4,20":              written.Money(420, "EUR"),
		"4,20 EUR":          written.Price(420, "EUR"),
		"12,5 kg wiegt Jo.": written.Text(prose.Say("%s weighs %s.", "Jo", 12500*units.Gram), units.Metric),
	} {
		if got != want {
			t.Errorf("written %q, not %q", got, want)
		}
	}
}

func TestWhatIsWrittenCanBeTyped(t *testing.T) {
	speakWithComma(t)
	rapid.Check(t, func(t *rapid.T) {
		system := rapid.SampledFrom([]units.System{units.Metric, units.US}).Draw(t, "system")
		mass := units.Mass(rapid.Int64Range(0, 1e8).Draw(t, "mass"))
		text := written.Bare(typed.MassText(mass, system, true))
		read, err := typed.Mass(text, system, true)
		if err != nil || written.Bare(typed.MassText(read, system, true)) != text {
			t.Fatalf("%v is written %s and read as %v, %v", mass, text, read, err)
		}
		amount := units.Money(rapid.Int64Range(0, 1e9).Draw(t, "amount"))
		if read, err := typed.Money(written.Price(amount, "EUR"), "EUR"); err != nil || read != amount {
			t.Fatalf("%d is written %s and read as %d, %v", amount, written.Price(amount, "EUR"), read, err)
		}
	})
}

var fractions = regexp.MustCompile(`%[-+#0 ]*\d*\.[1-9]\d*f|%g`)

// TestEveryShownNumberIsWrittenHere reads the source of everything that is
// shown: a number with a fraction that is written in another way would have a
// point in every language.
func TestEveryShownNumberIsWrittenHere(t *testing.T) {
	set, files := token.NewFileSet(), 0
	for _, folder := range []string{"../screens", "../window", "../charts", "../grid", "../look"} {
		err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
			if err == nil {
				files++
				lookForNumbers(t, set, file)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if files < 100 {
		t.Errorf("only %d files were read", files)
	}
}

func lookForNumbers(t *testing.T, set *token.FileSet, file *ast.File) {
	var bare []ast.Node // what is inside written.Bare
	ast.Inspect(file, func(node ast.Node) bool {
		call, ok := node.(*ast.CallExpr)
		if !ok {
			return true
		}
		name, from := called(call)
		if from == "written" {
			for _, arg := range call.Args {
				bare = append(bare, arg)
			}
		}
		var said strings.Builder
		_ = printer.Fprint(&said, set, call)
		switch {
		case name == "FormatDistance" || name == "FormatHeight" || name == "Decimal",
			name == "Format" && len(call.Args) == 1 && !strings.Contains(said.String(), ".Format(\"2006") && !strings.Contains(said.String(), "dayForm"),
			from == "strconv" && name == "FormatFloat" && !strings.Contains(said.String(), "'f', 0, 64") && !slices.Contains(bare, ast.Node(call)),
			from == "typed" && slices.Contains([]string{"MassText", "DistanceText", "VolumeText", "StatureText"}, name) && !slices.Contains(bare, ast.Node(call)),
			name == "Sprintf" && fractions.MatchString(said.String()):
			t.Errorf("%s: %s has a point in every language: write it with the package written", set.Position(call.Pos()), said.String())
		}
		return true
	})
}

// called gives the name of what is called, and of the package or value it
// belongs to.
func called(call *ast.CallExpr) (name, from string) {
	selector, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return "", ""
	}
	if x, ok := selector.X.(*ast.Ident); ok {
		from = x.Name
	}
	return selector.Sel.Name, from
}
