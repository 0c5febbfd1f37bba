package tripjson

import (
	"encoding"
	"encoding/json"
	"reflect"
	"strings"
)

// member is one field of an object as encoding/json sees it.
type member struct {
	name     string
	index    []int
	required bool // a missing one is a fault, as in the schema
}

// membersOf lists the fields of a struct type, embedded ones flattened.
func membersOf(kind reflect.Type) []member {
	var members []member
	for i := range kind.NumField() {
		field := kind.Field(i)
		if field.Anonymous {
			for _, inner := range membersOf(field.Type) {
				inner.index = append([]int{i}, inner.index...)
				members = append(members, inner)
			}
			continue
		}
		if field.IsExported() && field.Tag.Get("json") != "-" {
			members = append(members, member{name: jsonName(field), index: []int{i}, required: !mayBeMissing(field)})
		}
	}
	return members
}

func jsonName(field reflect.StructField) string {
	name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
	if name == "" {
		return field.Name
	}
	return name
}

func mayBeMissing(field reflect.StructField) bool {
	_, options, _ := strings.Cut(field.Tag.Get("json"), ",")
	return strings.Contains(options, "omitempty") || strings.Contains(options, "omitzero")
}

var (
	jsonReader = reflect.TypeFor[json.Unmarshaler]()
	textReader = reflect.TypeFor[encoding.TextUnmarshaler]()
)

// readsItself tells the types that read their own JSON, and the plain ones,
// from the objects, lists and maps that are walked.
func readsItself(kind reflect.Type) bool {
	pointer := reflect.PointerTo(kind)
	if pointer.Implements(jsonReader) || pointer.Implements(textReader) {
		return true
	}
	return kind.Kind() != reflect.Struct && kind.Kind() != reflect.Slice && kind.Kind() != reflect.Map
}

// optionalOf gives the T of an optional.Value[T].
func optionalOf(kind reflect.Type) (reflect.Type, bool) {
	if kind.PkgPath() != "sumpter/domain/optional" {
		return nil, false
	}
	get, ok := kind.MethodByName("Get")
	if !ok {
		return nil, false
	}
	return get.Type.Out(0), true
}
