package tripjson

import (
	"bytes"
	"encoding/json"
	"flag"
	"maps"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/invopop/jsonschema"
	validator "github.com/santhosh-tekuri/jsonschema/v6"
	"pgregory.net/rapid"

	"sumpter/domain/plan"
	"sumpter/domain/trip/triptest"
)

var update = flag.Bool("update", false, "rewrite comments.json from the source of the types")

// The comments in the schema are those of the source.
func TestCommentsAreThoseOfTheSource(t *testing.T) {
	source := jsonschema.Reflector{}
	for _, folder := range []string{"../../domain", "."} {
		if err := source.AddGoComments("sumpter/exporter/tripjson", folder); err != nil {
			t.Fatal(err)
		}
	}
	asked := map[string]string{}
	recording := reflector(nil)
	recording.LookupComment = func(kind reflect.Type, field string) string {
		key := commentKey(kind, field)
		if comment := source.CommentMap[key]; comment != "" {
			asked[key] = strings.Join(strings.Fields(comment), " ")
		}
		return ""
	}
	recording.Reflect(&document{})
	recording.Reflect(&planDocument{})
	want, err := json.MarshalIndent(asked, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	want = append(want, '\n')
	if *update {
		if err := os.WriteFile("comments.json", want, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if !bytes.Equal(want, commentsJSON) {
		t.Error("comments.json is out of date: run go test ./exporter/tripjson -run Comments -update")
	}
}

func compiled(t *testing.T, write func() ([]byte, error)) *validator.Schema {
	t.Helper()
	text, err := write()
	if err != nil {
		t.Fatal(err)
	}
	doc, err := validator.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := validator.NewCompiler()
	if err := compiler.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := compiler.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

func valid(schema *validator.Schema, text []byte) error {
	doc, err := validator.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		return err
	}
	return schema.Validate(doc)
}

func TestSchemaNamesItsDraftAndUnits(t *testing.T) {
	text, err := Schema()
	if err != nil {
		t.Fatal(err)
	}
	for _, wanted := range []string{
		`"$schema": "https://json-schema.org/draft/2020-12/schema"`,
		`Grams, at most three decimals; left out or null where unknown. Hard limit, own kit included.`,
		`The smallest coin of the trip's currency`,
		`"rough trail"`,
		`Kilojoules per kilogram and kelvin.`,
	} {
		if !bytes.Contains(text, []byte(wanted)) {
			t.Errorf("the schema does not say %s", wanted)
		}
	}
	again, _ := Schema()
	if !bytes.Equal(text, again) {
		t.Error("two schemas of one program differ")
	}
}

func TestWrittenTripsAreValid(t *testing.T) {
	schema := compiled(t, Schema)
	rapid.Check(t, func(rt *rapid.T) {
		var out bytes.Buffer
		if err := Write(&out, triptest.Trip().Draw(rt, "trip")); err != nil {
			rt.Fatal(err)
		}
		if err := valid(schema, out.Bytes()); err != nil {
			rt.Fatal(err)
		}
	})
}

// Reader and schema must agree on what is wrong: each breaks the other's
// promise otherwise. One thing is broken at a time, anywhere in the document.
func TestReaderAndSchemaRefuseTheSame(t *testing.T) {
	schema := compiled(t, Schema)
	rapid.Check(t, func(rt *rapid.T) {
		var out bytes.Buffer
		if err := Write(&out, triptest.Trip().Draw(rt, "trip")); err != nil {
			rt.Fatal(err)
		}
		var doc any
		if err := json.Unmarshal(out.Bytes(), &doc); err != nil {
			rt.Fatal(err)
		}
		doc = broken(rt, doc)
		text, err := json.Marshal(doc)
		if err != nil {
			rt.Fatal(err)
		}
		_, problems, err := Read(bytes.NewReader(text))
		refused := err != nil || len(problems) > 0
		if schemaErr := valid(schema, text); refused != (schemaErr != nil) {
			rt.Fatalf("reader: %v %v\nschema: %v", problems, err, schemaErr)
		}
	})
}

// broken replaces, removes or adds one value somewhere below.
func broken(rt *rapid.T, doc any) any {
	other := rapid.SampledFrom([]any{nil, true, "word", -3.0, 2.5, 0.0001, []any{}, map[string]any{}, map[string]any{"a": 1.0}})
	if rapid.IntRange(0, 9).Draw(rt, "stop") == 0 {
		return other.Draw(rt, "other")
	}
	switch node := doc.(type) {
	case []any:
		if len(node) == 0 {
			return append(node, other.Draw(rt, "other"))
		}
		i := rapid.IntRange(0, len(node)-1).Draw(rt, "entry")
		node[i] = broken(rt, node[i])
		return node
	case map[string]any:
		if len(node) == 0 {
			return other.Draw(rt, "other")
		}
		names := sortedNames(node)
		chosen := rapid.SampledFrom(names).Draw(rt, "name")
		switch rapid.IntRange(0, 4).Draw(rt, "how") {
		case 0:
			delete(node, chosen)
		case 1:
			node[strings.ToUpper(chosen)+" "] = node[chosen]
		default:
			node[chosen] = broken(rt, node[chosen])
		}
		return node
	default:
		return other.Draw(rt, "other")
	}
}

func sortedNames(node map[string]any) []string {
	return slices.Sorted(maps.Keys(node))
}

func TestWrittenPlansAreValid(t *testing.T) {
	schema := compiled(t, PlanSchema)
	empty := &plan.Plan{Trip: triptest.Large(6, 4, 1)}
	empty.Legs = empty.Trip.Legs()
	var out bytes.Buffer
	if err := WritePlan(&out, empty); err != nil {
		t.Fatal(err)
	}
	if err := valid(schema, out.Bytes()); err != nil {
		t.Error(err)
	}
	for _, wanted := range []string{`"format_version": 1`, `"title": "`, `"start": "20`, `"findings": []`, `"names": {`} {
		if !strings.Contains(out.String(), wanted) {
			t.Errorf("the plan does not say %s", wanted)
		}
	}
}
