package tripjson

import (
	_ "embed" // the comments of the types
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"github.com/invopop/jsonschema"

	"sumpter/domain/units"
)

// Schema gives the JSON Schema (draft 2020-12) of what Write writes and Read
// accepts, made from the types of the trip. Units stand in the descriptions.
func Schema() ([]byte, error) {
	return schemaOf(&document{}, "Trip", "Everything a leader enters for one trip on foot.")
}

// PlanSchema gives the JSON Schema of what WritePlan writes.
func PlanSchema() ([]byte, error) {
	return schemaOf(&planDocument{}, "Plan", "What was worked out from one trip.")
}

func schemaOf(doc any, title, description string) ([]byte, error) {
	dictionary, err := embeddedComments()
	if err != nil {
		return nil, err
	}
	schema := reflector(dictionary).Reflect(doc)
	schema.Title, schema.Description = title, description
	if version, ok := schema.Properties.Get("format_version"); ok {
		version.Const = Version
	}
	text, err := json.MarshalIndent(schema, "", "  ")
	if err != nil {
		return nil, fmt.Errorf("write the schema: %w", err)
	}
	return append(text, '\n'), nil
}

// commentsJSON holds the doc comments of the fields, which a compiled program
// no longer has. The package's tests rewrite it with -update and fail when it
// is out of date.
//
//go:embed comments.json
var commentsJSON []byte

func embeddedComments() (map[string]string, error) {
	comments := map[string]string{}
	if err := json.Unmarshal(commentsJSON, &comments); err != nil {
		return nil, fmt.Errorf("comments of the schema: %w", err)
	}
	return comments, nil
}

func reflector(comments map[string]string) *jsonschema.Reflector {
	return &jsonschema.Reflector{
		Anonymous: true, ExpandedStruct: true,
		Mapper: mapped, Namer: defined,
		LookupComment: func(kind reflect.Type, field string) string {
			comment := comments[commentKey(kind, field)]
			if field == "" {
				return comment
			}
			found, ok := kind.FieldByName(field)
			if !ok {
				return comment
			}
			return described(unitOf(found), comment)
		},
	}
}

func commentKey(kind reflect.Type, field string) string {
	return strings.TrimSuffix(kind.PkgPath()+"."+kind.Name()+"."+field, ".")
}

// defined names a type in $defs: the trip's own plainly, those of a stage with
// the stage before them.
func defined(kind reflect.Type) string {
	path := kind.PkgPath()
	stage := path[strings.LastIndex(path, "/")+1:]
	if kind.Name() == "" || stage == "trip" || stage == "tripjson" {
		return kind.Name()
	}
	return stage + "." + kind.Name()
}

// mapped gives the schema of the types that write their own JSON, and of the
// closed choices.
func mapped(kind reflect.Type) *jsonschema.Schema {
	if inner, ok := optionalOf(kind); ok {
		known := mapped(inner)
		if known == nil {
			known = &jsonschema.Schema{Type: plainType(inner)}
		}
		return &jsonschema.Schema{AnyOf: []*jsonschema.Schema{known, {Type: "null"}}}
	}
	if list, closed := choices[kind]; closed {
		values := make([]any, len(list))
		for i, word := range list {
			values[i] = word
		}
		return &jsonschema.Schema{Type: "string", Enum: values}
	}
	switch kind {
	case reflect.TypeFor[units.Mass](), reflect.TypeFor[units.Volume]():
		return &jsonschema.Schema{Type: "number", Maximum: "1000000000", Minimum: "-1000000000", MultipleOf: "0.001"}
	case reflect.TypeFor[units.Date]():
		return &jsonschema.Schema{Type: "string", Pattern: `^(\d{4}-\d{2}-\d{2})?$`}
	}
	return nil
}

func plainType(kind reflect.Type) string {
	switch kind.Kind() {
	case reflect.Float64:
		return "number"
	case reflect.Bool:
		return "boolean"
	case reflect.String:
		return "string"
	default:
		return "integer"
	}
}
