package trip_test

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func TestCloneIsEqualAndSharesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		original := triptest.Trip().Draw(t, "trip")
		copied := original.Clone()
		if !trip.Equal(original, copied) {
			t.Fatal("the copy differs")
		}
		if path := shared(reflect.ValueOf(*original), reflect.ValueOf(*copied), "trip"); path != "" {
			t.Fatalf("%s is shared between the trip and its copy", path)
		}
	})
}

// shared names the first slice or map that two values have in common.
func shared(a, b reflect.Value, path string) string {
	switch a.Kind() {
	case reflect.Slice:
		if a.Len() > 0 && a.Pointer() == b.Pointer() {
			return path
		}
		for i := range a.Len() {
			if found := shared(a.Index(i), b.Index(i), path+"[]"); found != "" {
				return found
			}
		}
	case reflect.Map:
		if a.Len() > 0 && a.Pointer() == b.Pointer() {
			return path
		}
	case reflect.Struct:
		for i := range a.NumField() {
			if found := shared(a.Field(i), b.Field(i), path+"."+a.Type().Field(i).Name); found != "" {
				return found
			}
		}
	case reflect.Pointer, reflect.Interface, reflect.Chan, reflect.Func:
		return path + " is a reference"
	}
	return ""
}
