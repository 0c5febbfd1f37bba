package tripbook

import (
	"bytes"
	"fmt"
	"io"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

var systems = []units.System{units.Metric, units.US}

func written(t testing.TB, made *trip.Trip, system units.System) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, made, system); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// One draw serves one system: a workbook of a drawn trip takes a third of a
// second to write and read, and a hundred draws hold plenty of both.
func TestReadGivesBackWhatWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made, system := triptest.Trip().Draw(t, "trip"), rapid.SampledFrom(systems).Draw(t, "system")
		var out bytes.Buffer
		if err := Write(&out, made, system); err != nil {
			t.Fatal(err)
		}
		read, problems, err := Read(&out)
		if err != nil || len(problems) > 0 {
			t.Fatal(problems, err)
		}
		if !trip.Equal(made, read) {
			t.Fatal(firstDifference(reflect.ValueOf(*made), reflect.ValueOf(*read), "trip"))
		}
	})
}

// firstDifference names the place where two values part.
func firstDifference(a, b reflect.Value, path string) string {
	if reflect.DeepEqual(a.Interface(), b.Interface()) {
		return ""
	}
	switch {
	case a.Kind() == reflect.Struct && a.NumField() > 0 && a.Type().Field(0).IsExported():
		for i := range a.NumField() {
			if found := firstDifference(a.Field(i), b.Field(i), path+"."+a.Type().Field(i).Name); found != "" {
				return found
			}
		}
	case a.Kind() == reflect.Slice && a.Len() == b.Len():
		for i := range a.Len() {
			if found := firstDifference(a.Index(i), b.Index(i), fmt.Sprintf("%s[%d]", path, i)); found != "" {
				return found
			}
		}
	}
	return fmt.Sprintf("%s: %#v became %#v", path, a.Interface(), b.Interface())
}

func TestLargeTripsComeBack(t *testing.T) {
	for _, system := range systems {
		made := triptest.Large(60, 21, 3)
		read, problems, err := Read(bytes.NewReader(written(t, made, system)))
		if err != nil || len(problems) > 0 {
			t.Fatal(problems, err)
		}
		if !trip.Equal(made, read) {
			t.Fatal(firstDifference(reflect.ValueOf(*made), reflect.ValueOf(*read), "trip"))
		}
	}
}

func TestTheSameTripIsTheSameFile(t *testing.T) {
	made := triptest.Large(6, 4, 3)
	if !bytes.Equal(written(t, made, units.Metric), written(t, made, units.Metric)) {
		t.Error("two files of one trip differ")
	}
}

func BenchmarkWrite(b *testing.B) {
	for _, size := range [][2]int{{11, 9}, {60, 21}} {
		large := triptest.Large(size[0], size[1], 1)
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := Write(io.Discard, large, units.US); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkRead(b *testing.B) {
	for _, size := range [][2]int{{11, 9}, {60, 21}} {
		data := written(b, triptest.Large(size[0], size[1], 1), units.US)
		b.Run(fmt.Sprintf("%dx%d", size[0], size[1]), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, problems, err := Read(bytes.NewReader(data)); err != nil || problems != nil {
					b.Fatal(problems, err)
				}
			}
		})
	}
}
