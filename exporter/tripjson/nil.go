package tripjson

import (
	"fmt"
	"math"
	"reflect"

	"sumpter/domain/prose"
)

// completion makes a document ready to be encoded.
type completion struct{ reader prose.Reader }

// of copies a value so that every nil list becomes an empty one: a program
// that reads "crew": null would have to know that Go has two kinds of nothing.
// Texts are written out. It names the place of a number that JSON cannot hold.
func (c completion) of(value reflect.Value, path string) (reflect.Value, error) {
	switch value.Kind() {
	case reflect.Float64:
		if f := value.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return value, fmt.Errorf("%s is %v, which is no number: nothing was written", path, f)
		}
		return value, nil
	case reflect.Struct:
		if text, ok := value.Interface().(prose.Text); ok {
			return reflect.ValueOf(prose.Verbatim(text.In(c.reader))), nil
		}
		return c.ofStruct(value, path)
	case reflect.Slice:
		made := reflect.MakeSlice(value.Type(), value.Len(), value.Len())
		for i := range value.Len() {
			entry, err := c.of(value.Index(i), indexed(path, i))
			if err != nil {
				return value, err
			}
			made.Index(i).Set(entry)
		}
		return made, nil
	default:
		return value, nil
	}
}

func (c completion) ofStruct(value reflect.Value, path string) (reflect.Value, error) {
	made := reflect.New(value.Type()).Elem()
	made.Set(value)
	for i := range value.NumField() {
		field := value.Type().Field(i)
		if !field.IsExported() || field.Tag.Get("json") == "-" {
			continue
		}
		inner := path
		if !field.Anonymous {
			inner = joined(path, jsonName(field))
		}
		entry, err := c.of(value.Field(i), inner)
		if err != nil {
			return value, err
		}
		made.Field(i).Set(entry)
	}
	if known, ok := value.Interface().(interface{ Known() bool }); ok && known.Known() {
		content := value.MethodByName("Get").Call(nil)[0]
		_, err := c.of(content, path)
		return made, err
	}
	return made, nil
}

func indexed(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }

func joined(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
