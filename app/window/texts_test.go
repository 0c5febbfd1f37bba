package window

import (
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The collector below reads the program's own source and lists every text that
// goes through the toolkit's lang package. It follows three ways of saying a
// text: a literal, a value of a closed choice (listed in spoken), and a
// function that hands its own parameters on to lang.

// texts are the texts found in the source.
type texts struct {
	english map[string]string // key → English text; for lang.L both are the text
	where   map[string]string // key → the first place that says it
	dynamic map[string]string // "package: expression" → the first place that says it
	wrong   []string          // what can be told from the source alone to be wrong
}

// source is one parsed file and the short name of its package.
type source struct {
	pack string
	name string
	test bool // only tests import it
	file *ast.File
}

// forward is a function that hands parameters on to lang: texts stand at key
// and fallback in its calls. For lang.L the two are the same.
type forward struct {
	pack, name    string
	key, fallback int
}

// parseSource reads what speaks through the window: app/, domain/ and the papers of
// exporter/.
func parseSource(t *testing.T) (*token.FileSet, []source) {
	t.Helper()
	set := token.NewFileSet()
	var sources []source
	for _, root := range []string{"..", "../../domain", "../../exporter"} {
		err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
			if err != nil || entry.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
				return err
			}
			file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
			if err == nil {
				pack := filepath.Base(filepath.Dir(path))
				sources = append(sources, source{pack, path, strings.HasSuffix(pack, "test"), file})
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return set, sources
}

func collectTexts(t *testing.T) *texts {
	t.Helper()
	set, sources := parseSource(t)
	found := &texts{english: map[string]string{}, where: map[string]string{}, dynamic: map[string]string{}}
	var forwards []forward
	for _, s := range sources {
		found.calls(set, s, func(call *ast.CallExpr, in *ast.FuncDecl) (forward, bool) {
			name, ok := langCall(call)
			if !ok {
				return forward{}, false
			}
			f := forward{pack: s.pack, name: name}
			if strings.HasPrefix(name, "X") {
				f.fallback = 1
			}
			if in != nil {
				if on, ok := handedOn(call, f, in); ok {
					forwards = append(forwards, on)
					return forward{}, false
				}
			}
			return f, true
		})
	}
	for _, s := range sources {
		found.calls(set, s, func(call *ast.CallExpr, _ *ast.FuncDecl) (forward, bool) {
			name := calledName(call)
			i := slices.IndexFunc(forwards, func(f forward) bool { return f.pack == s.pack && f.name == name })
			if i < 0 {
				return forward{}, false
			}
			return forwards[i], true
		})
	}
	for _, s := range sources {
		if !s.test {
			found.prose(set, s)
		}
	}
	found.addChoices()
	return found
}

// calls visits every call of a file and takes the texts of those that say one.
func (x *texts) calls(set *token.FileSet, s source, says func(*ast.CallExpr, *ast.FuncDecl) (forward, bool)) {
	for _, declaration := range s.file.Decls {
		in, _ := declaration.(*ast.FuncDecl)
		ast.Inspect(declaration, func(node ast.Node) bool {
			call, ok := node.(*ast.CallExpr)
			if !ok {
				return true
			}
			if f, ok := says(call, in); ok && f.fallback < len(call.Args) {
				x.take(set, s, call, f)
			}
			return true
		})
	}
}

// prose takes the formats and words of the plan's texts, each a literal.
func (x *texts) prose(set *token.FileSet, s source) {
	ast.Inspect(s.file, func(node ast.Node) bool {
		call, ok := node.(*ast.CallExpr)
		if !ok || len(call.Args) == 0 {
			return true
		}
		name := ""
		switch called := call.Fun.(type) {
		case *ast.SelectorExpr:
			if from, ok := called.X.(*ast.Ident); ok && from.Name == "prose" {
				name = called.Sel.Name
			}
		case *ast.Ident:
			if s.pack == "prose" {
				name = called.Name
			}
		}
		at := set.Position(call.Pos()).String()
		switch text, known := literal(call.Args[0]); {
		case (name == "Say" || name == "Errorf") && !known:
			x.wrong = append(x.wrong, at+": a format is a literal, so that its translation can be looked for")
		case name == "Say", name == "Errorf", name == "Word" && known:
			x.add(at, text, text)
		}
		return true
	})
}

func (x *texts) take(set *token.FileSet, s source, call *ast.CallExpr, f forward) {
	at := set.Position(call.Pos()).String()
	key, keyKnown := literal(call.Args[f.key])
	english, known := literal(call.Args[f.fallback])
	if !keyKnown || !known {
		var said strings.Builder
		_ = printer.Fprint(&said, set, call.Args[f.key])
		x.dynamic[s.pack+": "+said.String()] = at
		return
	}
	x.add(at, key, english)
	if given, ok := givenNames(call); ok && f.pack == s.pack {
		for _, name := range variables(english) {
			if !slices.Contains(given, name) {
				x.wrong = append(x.wrong, at+": nothing is given for {{."+name+"}}")
			}
		}
	}
}

func (x *texts) add(at, key, english string) {
	if was, twice := x.english[key]; twice && was != english {
		x.wrong = append(x.wrong, at+": the key "+strconv.Quote(key)+" means "+strconv.Quote(english)+" here and "+strconv.Quote(was)+" at "+x.where[key])
	}
	x.english[key] = english
	if x.where[key] == "" {
		x.where[key] = at
	}
}

// langCall gives the name of the function of lang that a call asks.
func langCall(call *ast.CallExpr) (string, bool) {
	selector, ok := call.Fun.(*ast.SelectorExpr)
	if !ok {
		return "", false
	}
	from, ok := selector.X.(*ast.Ident)
	if !ok || from.Name != "lang" {
		return "", false
	}
	return selector.Sel.Name, slices.Contains([]string{"L", "X", "N", "XN"}, selector.Sel.Name)
}

func calledName(call *ast.CallExpr) string {
	switch called := call.Fun.(type) {
	case *ast.Ident:
		return called.Name
	case *ast.SelectorExpr:
		if from, ok := called.X.(*ast.Ident); ok && from.Name == "lang" {
			return ""
		}
		return called.Sel.Name
	}
	return ""
}

// handedOn tells whether the texts of a call are parameters of its function.
func handedOn(call *ast.CallExpr, f forward, in *ast.FuncDecl) (forward, bool) {
	if f.fallback >= len(call.Args) {
		return f, false
	}
	var parameters []string
	for _, list := range in.Type.Params.List {
		for _, name := range list.Names {
			parameters = append(parameters, name.Name)
		}
	}
	index := func(e ast.Expr) int {
		name, ok := e.(*ast.Ident)
		if !ok {
			return -1
		}
		return slices.Index(parameters, name.Name)
	}
	on := forward{f.pack, in.Name.Name, index(call.Args[f.key]), index(call.Args[f.fallback])}
	return on, on.key >= 0 && on.fallback >= 0
}

// literal reads a literal, or literals joined by +.
func literal(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind == token.STRING {
			text, err := strconv.Unquote(e.Value)
			return text, err == nil
		}
	case *ast.BinaryExpr:
		left, ok := literal(e.X)
		right, okToo := literal(e.Y)
		return left + right, ok && okToo && e.Op == token.ADD
	case *ast.ParenExpr:
		return literal(e.X)
	}
	return "", false
}

// givenNames lists the keys of the map a call is given, where it is written
// out in the call itself.
func givenNames(call *ast.CallExpr) ([]string, bool) {
	given, ok := call.Args[len(call.Args)-1].(*ast.CompositeLit)
	if !ok {
		return nil, false
	}
	var names []string
	for _, element := range given.Elts {
		pair, ok := element.(*ast.KeyValueExpr)
		if !ok {
			return nil, false
		}
		name, ok := literal(pair.Key)
		if !ok {
			return nil, false
		}
		names = append(names, name)
	}
	return names, true
}

// wordy is a literal that reads like something said: two words or more.
var wordy = regexp.MustCompile(`\pL{2,}[.,:;]? \pL{2,}`)

// unsaid are literals of several words that nobody is shown.
var unsaid = regexp.MustCompile(`^(<svg |sumpter [a-z]+$|USDA SR28 $)`)

// TestNothingIsSaidPastTheTranslation looks for literals that read like
// sentences and have no translation, in everything that is shown.
func TestNothingIsSaidPastTheTranslation(t *testing.T) {
	found := collectTexts(t)
	said := slices.Concat(slices.Collect(maps.Keys(found.english)), slices.Collect(maps.Values(found.english)))
	set, sources := parseSource(t)
	for _, s := range sources {
		if s.test || !slices.ContainsFunc([]string{"../screens/", "../window/", "../charts/", "../grid/", "../look/", "../written/"}, func(shown string) bool {
			return strings.HasPrefix(filepath.ToSlash(s.name), shown) || s.pack == "window"
		}) {
			continue
		}
		ast.Inspect(s.file, func(node ast.Node) bool {
			if call, ok := node.(*ast.CallExpr); ok && calledName(call) == "LogError" {
				return false
			}
			if call, ok := node.(*ast.CallExpr); ok && calledName(call) == "Error" && len(call.Args) == 0 {
				t.Errorf("%s: an error is said in English only: use written.Error", set.Position(call.Pos()))
			}
			e, ok := node.(*ast.BasicLit)
			if !ok {
				return true
			}
			text, ok := literal(e)
			if ok && wordy.MatchString(text) && !unsaid.MatchString(text) && !slices.ContainsFunc(said, func(known string) bool { return strings.Contains(known, text) }) {
				t.Errorf("%s: %q is said in English only: use lang or prose", set.Position(e.Pos()), text)
			}
			return true
		})
	}
}
