package trip

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"testing"
)

// Every constant of a closed choice must be in its list: a value that is
// planned with but cannot be chosen or read would be lost.
func TestChoicesHoldEveryConstant(t *testing.T) {
	lists := map[string][]string{
		"Sex": words(Sexes()), "Terrain": words(Terrains()), "WalkingEquation": words(WalkingEquations()),
		"CarbConvention": words(CarbConventions()), "TCS": words(TCSStates()), "Form": words(Forms()),
		"Presence": words(Presences()), "Suitability": words(Suitabilities()), "Role": words(Roles()),
		"Place": words(Places()), "GearKind": words(GearKinds()), "PointKind": words(PointKinds()),
		"FuelKind": words(FuelKinds()), "Meal": words(Meals()),
	}
	declared := declaredConstants(t)
	for kind, list := range lists {
		if len(declared[kind]) != len(list) {
			t.Errorf("%s: %d constants, %d in the list", kind, len(declared[kind]), len(list))
		}
		listed := map[string]bool{}
		for _, word := range list {
			listed[word] = true
		}
		for _, word := range declared[kind] {
			if !listed[word] {
				t.Errorf("%s %q is declared but not in the list", kind, word)
			}
		}
	}
}

func words[T ~string](list []T) []string {
	plain := make([]string, len(list))
	for i, word := range list {
		plain[i] = string(word)
	}
	return plain
}

// declaredConstants reads the typed text constants from the package's source.
func declaredConstants(t *testing.T) map[string][]string {
	t.Helper()
	found := map[string][]string{}
	for _, file := range []string{"trip.go", "food.go", "gear.go", "points.go", "recipe.go", "safety.go", "settings.go"} {
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(parsed, func(node ast.Node) bool {
			spec, ok := node.(*ast.ValueSpec)
			if !ok || len(spec.Values) != 1 {
				return true
			}
			kind, typed := spec.Type.(*ast.Ident)
			literal, text := spec.Values[0].(*ast.BasicLit)
			if typed && text && literal.Kind == token.STRING {
				word, err := strconv.Unquote(literal.Value)
				if err != nil {
					t.Fatal(err)
				}
				found[kind.Name] = append(found[kind.Name], word)
			}
			return true
		})
	}
	return found
}
