package tripfile

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// made writes a trip to a new file that is closed when the test ends.
func made(t testing.TB, path string, content *trip.Trip) *File {
	t.Helper()
	file, err := Create(path, content)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { file.Close() })
	return file
}

func wantContent(t interface{ Fatalf(string, ...any) }, file *File, want *trip.Trip) {
	have, err := file.Read(context.Background())
	if err != nil {
		t.Fatalf("%v", err)
	}
	if !reflect.DeepEqual(have, want) {
		t.Fatalf("have %+v\nwant %+v", have, want)
	}
}

// One file takes one random trip after the other, so that each saving meets
// rows to take out, to change and to add.
func TestRoundTripOfRandomTrips(t *testing.T) {
	file := made(t, filepath.Join(t.TempDir(), "random.trip"), &trip.Trip{})
	rapid.Check(t, func(rt *rapid.T) {
		content := triptest.Trip().Draw(rt, "trip")
		if err := file.Save(context.Background(), content); err != nil {
			rt.Fatalf("%v", err)
		}
		wantContent(rt, file, content)
		if err := verify(context.Background(), file.path, file.conn, present(), present().version()); err != nil {
			rt.Fatalf("%v", err)
		}
	})
}

func TestTripsOutliveClosing(t *testing.T) {
	for seed := range 8 {
		content, next := triptest.Trip().Example(seed), triptest.Trip().Example(seed+100)
		path := filepath.Join(t.TempDir(), "closed.trip")
		file, err := Create(path, content)
		if err != nil {
			t.Fatal(err)
		}
		if err := file.Close(); err != nil {
			t.Fatal(err)
		}
		if file, err = Open(path); err != nil {
			t.Fatal(err)
		}
		wantContent(t, file, content)
		if err := errors.Join(file.Save(context.Background(), next), file.Close()); err != nil {
			t.Fatal(err)
		}
		if file, err = OpenReadOnly(path); err != nil {
			t.Fatal(err)
		}
		wantContent(t, file, next)
		if err := file.Close(); err != nil {
			t.Fatal(err)
		}
		wantFolder(t, filepath.Dir(path), "closed.trip")
	}
}

// Every field of every noun must come back; a field that somebody adds to the
// model and forgets here would be lost without a word.
func TestEveryFieldIsKept(t *testing.T) {
	full := &trip.Trip{}
	fillValue(t, reflect.ValueOf(full).Elem(), "trip")
	file := made(t, filepath.Join(t.TempDir(), "full.trip"), full)
	wantContent(t, file, full)
}

// fillValue sets every leaf to something that is not zero: lists and maps get
// one item, IDs and numbers 1, so that references hold.
func fillValue(t *testing.T, value reflect.Value, where string) {
	t.Helper()
	if decoder, ok := value.Addr().Interface().(json.Unmarshaler); ok {
		if err := decoder.UnmarshalJSON([]byte("1")); err != nil {
			t.Fatalf("%s: %v", where, err)
		}
		return
	}
	if decoder, ok := value.Addr().Interface().(interface{ UnmarshalText([]byte) error }); ok {
		if err := decoder.UnmarshalText([]byte("2027-02-28")); err != nil {
			t.Fatalf("%s: %v", where, err)
		}
		return
	}
	switch value.Kind() {
	case reflect.Struct:
		for i := range value.NumField() {
			fillValue(t, value.Field(i), where+"."+value.Type().Field(i).Name)
		}
	case reflect.Slice:
		value.Set(reflect.MakeSlice(value.Type(), 1, 1))
		fillValue(t, value.Index(0), where+"[0]")
	case reflect.Map:
		key, item := reflect.New(value.Type().Key()).Elem(), reflect.New(value.Type().Elem()).Elem()
		fillValue(t, key, where)
		fillValue(t, item, where)
		value.Set(reflect.MakeMap(value.Type()))
		value.SetMapIndex(key, item)
	case reflect.String:
		value.SetString("w " + where)
		if where == "trip.Menu[0].Meal" {
			value.SetString(string(trip.Dinner))
		}
	case reflect.Bool:
		value.SetBool(true)
	case reflect.Float64:
		value.SetFloat(1.1)
	case reflect.Int, reflect.Int32, reflect.Int64:
		value.SetInt(1)
	default:
		t.Fatalf("%s: a %s cannot be filled", where, value.Kind())
	}
}

func TestEmptyTripIsKept(t *testing.T) {
	empty := &trip.Trip{}
	file := made(t, filepath.Join(t.TempDir(), "empty.trip"), empty)
	wantContent(t, file, empty)
}

func TestOrderOfListsIsKept(t *testing.T) {
	content := triptest.Large(9, 4, 1)
	file := made(t, filepath.Join(t.TempDir(), "order.trip"), content)
	for _, turn := range []func(){
		func() { content.Crew[0], content.Crew[8] = content.Crew[8], content.Crew[0] },
		func() { content.Crew = append(content.Crew[:3], content.Crew[4:]...) },
		func() {
			newcomer := content.Crew[0]
			newcomer.ID, newcomer.Name = 777, "Newcomer"
			content.Crew = append([]trip.Member{newcomer}, content.Crew...)
		},
		func() { content.Menu = append(content.Menu[5:], content.Menu[:5]...) },
		func() { content.Bags = append(content.Bags[1:], content.Bags[0]) },
	} {
		turn()
		if err := file.Save(context.Background(), content); err != nil {
			t.Fatal(err)
		}
		wantContent(t, file, content)
	}
}

// What Save writes is counted by SQLite itself.
func TestAnEditTouchesOneRow(t *testing.T) {
	content := triptest.Large(30, 9, 1)
	file := made(t, filepath.Join(t.TempDir(), "edit.trip"), content)
	wantContent(t, file, content)
	touched := func(edit func()) int {
		edit()
		before := totalChanges(t, file)
		if err := file.Save(context.Background(), content); err != nil {
			t.Fatal(err)
		}
		return totalChanges(t, file) - before
	}
	for name, c := range map[string]struct {
		edit func()
		want int
	}{
		"nothing":               {func() {}, 0},
		"a member":              {func() { content.Crew[7].OwnKit += 1000 }, 1},
		"an unknown fact":       {func() { content.Foods[2].Density = trip.Food{}.Density }, 1},
		"a member with dislike": {func() { content.Crew[8].Dislikes = []trip.FoodID{content.Foods[0].ID} }, 1},
	} {
		if have := touched(c.edit); have != c.want {
			t.Errorf("%s: %d rows written, want %d", name, have, c.want)
		}
	}
	wantContent(t, file, content)
}

func totalChanges(t *testing.T, file *File) int {
	t.Helper()
	var n int
	if err := file.conn.QueryRowContext(context.Background(), "SELECT total_changes()").Scan(&n); err != nil {
		t.Fatal(err)
	}
	return n
}

func TestNamesOfFiles(t *testing.T) {
	for _, name := range []string{
		"plain.trip", "with blanks in it.trip", "hash#tag.trip", "what?.trip", "100%.trip", "%41.trip", "a&b=c+d.trip",
		"Höhenweg Süd.trip", "山の旅.trip", "quote'\"s.trip", "no ending", ".hidden.trip", "semi;colon.trip", "back\\slash.trip", "new\nline.trip",
	} {
		t.Run(name, func(t *testing.T) {
			folder := filepath.Join(t.TempDir(), "folder of "+name)
			if err := os.Mkdir(folder, 0o755); err != nil {
				t.Fatal(err)
			}
			content := triptest.Large(2, 2, 1)
			file, err := Create(filepath.Join(folder, name), content)
			if err != nil {
				t.Fatal(err)
			}
			content.Title = "Changed"
			if err := errors.Join(file.Save(context.Background(), content), file.SaveCopy(filepath.Join(folder, "copy of "+name)), file.Close()); err != nil {
				t.Fatal(err)
			}
			wantFolder(t, folder, name, "copy of "+name)
			for _, name := range []string{name, "copy of " + name} {
				again, err := OpenReadOnly(filepath.Join(folder, name))
				if err != nil {
					t.Fatal(err)
				}
				wantContent(t, again, content)
				again.Close()
			}
		})
	}
}

// wantFolder checks that a folder holds these files and nothing left over.
func wantFolder(t *testing.T, folder string, names ...string) {
	t.Helper()
	want := map[string]bool{}
	for _, name := range names {
		want[name] = true
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if !want[entry.Name()] {
			t.Errorf("%q is left over", entry.Name())
		}
		delete(want, entry.Name())
	}
	for name := range want {
		t.Errorf("%q is missing", name)
	}
}
